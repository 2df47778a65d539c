"""Counts and monthly medians of real weather files, computed by other means than the program's.

python3 tests/soak/weather-files.py FOLDER > tests/soak/weather-files.json

FOLDER holds the samples by kind (isd-fixed, lcd, ...). Needs numpy. Only the standard library reads the files: slices and
csv, floats throughout. The rules it applies (which rows are no observations, what quality codes mean, what counts as
missing) are written down here once more, from the formats' documents, and not taken from the program.
"""

import csv
import gzip
import json
import re
import sys
from datetime import datetime, timedelta, timezone
from pathlib import Path

import numpy as np

NOT_OBSERVATIONS = {"SOD", "SOM", "SHEF", "PCP15", "PCP60", "COOPD", "COOPS", "BOGUS", "NSRDB"}
INHG = 33.86389
KT = 1852 / 3600
MPH = 1609.344 / 3600
FIELDS = ["t", "td", "alti", "slp", "p", "speed", "gust"]


def row(when, **values):
    """One observation; values out of what air near the ground can be are missing."""
    limits = {"t": (-90, 60), "td": (-90, 60), "alti": (850, 1100), "slp": (850, 1100), "p": (480, 1100),
              "speed": (0, 150), "gust": (0, 150)}
    out = {"when": when}
    for name in FIELDS:
        value = values.get(name)
        low, high = limits[name]
        out[name] = value if value is not None and low <= round(value, 2) <= high else None
    return out


def keeps(r):
    return any(r[name] is not None for name in ("t", "alti", "slp", "p", "speed"))


def usable(r):
    return (r["t"] is not None and r["td"] is not None and round(r["td"], 2) <= round(r["t"], 2) + 0.05 + 1e-9
            and any(r[name] is not None for name in ("alti", "slp", "p")))


def text_of(path):
    opener = gzip.open if path.suffix == ".gz" else open
    with opener(path, "rt", encoding="latin1", newline="") as file:
        return file.read()


def good(code):
    return code not in "37"


def isd_fixed(path):
    for line in text_of(path).splitlines():
        if line[41:46].strip() in NOT_OBSERVATIONS:
            continue
        when = datetime.strptime(line[15:27], "%Y%m%d%H%M").replace(tzinfo=timezone.utc)

        def value(at, length, missing, code, scale=10):
            digits = line[at:at + length]
            return None if digits.lstrip("+") == missing or not good(line[code]) else int(digits) / scale

        values = {"t": value(87, 5, "9999", 92), "td": value(93, 5, "9999", 98), "slp": value(99, 5, "99999", 104),
                  "speed": value(65, 4, "9999", 69)}
        groups = line[105:].split("REM")[0].split("EQD")[0]
        pressure = re.search(r"MA1(\d{5})(.)(\d{5})(.)", groups)
        if pressure:
            setting, c1, station, c2 = pressure.groups()
            values["alti"] = None if setting == "99999" or not good(c1) else int(setting) / 10
            values["p"] = None if station == "99999" or not good(c2) else int(station) / 10
        gust = re.search(r"OC1(\d{4})(.)", groups)
        if gust and gust.group(1) != "9999" and good(gust.group(2)):
            values["gust"] = int(gust.group(1)) / 10
        yield row(when, **values)


def isd_csv(path):
    for cells in csv.DictReader(text_of(path).splitlines()):
        if cells["REPORT_TYPE"].strip() in NOT_OBSERVATIONS:
            continue
        when = datetime.fromisoformat(cells["DATE"]).replace(tzinfo=timezone.utc)

        def value(name, part, missing):
            group = (cells.get(name) or "").split(",")
            if len(group) < part + 2 or group[part].lstrip("+") == missing or not good(group[part + 1]):
                return None
            return int(group[part]) / 10

        yield row(when, t=value("TMP", 0, "9999"), td=value("DEW", 0, "9999"), slp=value("SLP", 0, "99999"),
                  alti=value("MA1", 0, "99999"), p=value("MA1", 2, "99999"), speed=value("WND", 3, "9999"),
                  gust=value("OC1", 0, "9999"))


def isd_lite(path):
    for line in text_of(path).splitlines():
        y, m, d, h, t, td, slp, _, speed = (int(cell) for cell in line.split()[:9])
        tenth = lambda value: None if value == -9999 else value / 10
        yield row(datetime(y, m, d, h, tzinfo=timezone.utc), t=tenth(t), td=tenth(td), slp=tenth(slp), speed=tenth(speed))


def lcd(path):
    name = path.name
    metric = name.startswith("LCDv2")
    # Local standard time: Atlanta and Lebanon UTC-5, Lincoln UTC-6.
    ahead = timedelta(hours=-6 if metric else -5)
    lines = text_of(path).splitlines()
    header = next(csv.reader(lines[:1]))
    for cells in csv.reader(lines[1:]):
        first = {}
        for column, cell in zip(header, cells):
            first.setdefault(column, cell)
        if first["REPORT_TYPE"].strip() in NOT_OBSERVATIONS:
            continue
        stamp = first.get("DATE") or first["datetime"]
        when = datetime.fromisoformat(stamp).replace(tzinfo=timezone.utc) - ahead

        def number(column):
            match = re.fullmatch(r"(-?[\d.]+)[sV]?", first.get(column, "").strip())
            return float(match.group(1)) if match else None

        def value(column, convert):
            found = number(column)
            return found if found is None or metric else convert(found)

        celsius = lambda f: (f - 32) / 1.8
        inches = lambda x: x * INHG
        miles = lambda x: x * MPH
        yield row(when, t=value("HourlyDryBulbTemperature", celsius), td=value("HourlyDewPointTemperature", celsius),
                  alti=value("HourlyAltimeterSetting", inches), slp=value("HourlySeaLevelPressure", inches),
                  p=value("HourlyStationPressure", inches), speed=value("HourlyWindSpeed", miles),
                  gust=value("HourlyWindGustSpeed", miles))


def archive(path):
    lines = text_of(path).splitlines()
    header = [name.strip() for name in lines[0].split(",")]
    for line in lines[1:]:
        cells = dict(zip(header, line.split(",")))

        def value(name, convert=lambda x: x):
            cell = cells.get(name, "M").strip()
            return None if cell in ("M", "") else convert(float(cell))

        celsius = lambda f: (f - 32) / 1.8
        when = datetime.fromisoformat(cells["valid"]).replace(tzinfo=timezone.utc)
        t = value("tmpc") if "tmpc" in cells else value("tmpf", celsius)
        td = value("dwpc") if "dwpc" in cells else value("dwpf", celsius)
        yield row(when, t=t, td=td, alti=value("alti", lambda x: x * INHG), slp=value("mslp"),
                  speed=value("sknt", lambda x: x * KT), gust=value("gust", lambda x: x * KT))


def epw(path):
    lines = text_of(path).splitlines()
    ahead = timedelta(hours=float(lines[0].split(",")[8]))
    for line in lines[8:]:
        cells = line.split(",")
        y, m, d, h = (int(cell) for cell in cells[:4])
        when = datetime(y, m, d, tzinfo=timezone.utc) + timedelta(hours=h) - ahead
        value = lambda at, missing, scale=1: None if float(cells[at]) == missing else float(cells[at]) / scale
        yield row(when, t=value(6, 99.9), td=value(7, 99.9), p=value(9, 999999, 100), speed=value(21, 999))


def tmy3(path):
    lines = text_of(path).splitlines()
    ahead = timedelta(hours=float(next(csv.reader(lines[:1]))[3]))
    for cells in csv.DictReader(lines[1:]):
        m, d, y = (int(part) for part in cells["Date (MM/DD/YYYY)"].split("/"))
        hour = int(cells["Time (HH:MM)"][:2])
        when = datetime(y, m, d, tzinfo=timezone.utc) + timedelta(hours=hour) - ahead
        value = lambda name: None if float(cells[name]) == -9900 else float(cells[name])
        yield row(when, t=value("Dry-bulb (C)"), td=value("Dew-point (C)"), p=value("Pressure (mbar)"), speed=value("Wspd (m/s)"))


def reports(path):
    text = text_of(path)
    if "cycle" in path.name:
        found = re.findall(r"^(\d{4}/\d\d/\d\d \d\d:\d\d)\n(.*)$", text, re.M)
        found = [(datetime.strptime(stamp, "%Y/%m/%d %H:%M"), report) for stamp, report in found]
    else:
        found = re.findall(r"^(\d{12}) (.*)$", text, re.M)
        found = [(datetime.strptime(stamp, "%Y%m%d%H%M"), report) for stamp, report in found]
    for when, report in found:
        body, _, remarks = report.partition(" RMK ")
        whole = re.search(r"(?:^| )(M?\d\d)?/(M?\d\d)?(?= |A\d{4}|$)", body)
        tenths = re.search(r"(?:^|[ ])T([01])(\d{3})(?:([01])(\d{3}))?(?=[ =]|$)", remarks)
        setting = re.search(r"(?:^| |/|\d)A(\d{4})(?=[ ;=,]|$)", body)
        slp = re.search(r"(?:^| )SLP(\d{3})(?=[ =]|$)", remarks)
        wind = re.search(r"(?:^| )(?:\d{3}|VRB)(\d{2,3})(?:G(\d{2,3}))?KT(?= |$)", body)
        degree = lambda text: None if not text else (-1 if text[0] == "M" else 1) * int(text.lstrip("M"))
        t, td = (degree(whole.group(1)), degree(whole.group(2))) if whole else (None, None)
        if tenths:
            s1, v1, s2, v2 = tenths.groups()
            t = (-1 if s1 == "1" else 1) * int(v1) / 10
            if v2:
                td = (-1 if s2 == "1" else 1) * int(v2) / 10
        alti = int(setting.group(1)) / 100 * INHG if setting else None
        sea = None
        if slp:
            tail = int(slp.group(1)) / 10
            sea = min((900 + tail, 1000 + tail), key=lambda value: abs(value - (alti or 1000)))
        yield row(when.replace(tzinfo=timezone.utc), t=t, td=td, alti=alti, slp=sea,
                  speed=int(wind.group(1)) * KT if wind else None,
                  gust=int(wind.group(2)) * KT if wind and wind.group(2) else None)


def ghcnh(path):
    lines = text_of(path).splitlines()
    header = lines[0].split("|")
    names = {"t": "temperature", "td": "dew_point_temperature", "p": "station_level_pressure",
             "slp": "sea_level_pressure", "alti": "altimeter", "speed": "wind_speed", "gust": "wind_gust"}
    for line in lines[1:]:
        cells = line.split("|")
        if len(cells) < len(header):
            continue
        cells = dict(zip(header, cells))
        when = datetime(*(int(cells[name]) for name in ("Year", "Month", "Day", "Hour", "Minute")), tzinfo=timezone.utc)
        values = {}
        for ours, theirs in names.items():
            code, source = cells[theirs + "_Quality_Code"], cells[theirs + "_Source_Code"]
            bad = "35" if source in ("220", "221", "222", "223", "347", "348") else "37"
            if cells[theirs] != "" and not any(mark in bad for mark in code[:1]):
                values[ours] = float(cells[theirs])
        yield row(when, **values)


def new_york(path):
    for cells in csv.DictReader(text_of(path).splitlines()):
        if cells["origin"] != "EWR":
            continue
        value = lambda name, convert=lambda x: x: None if cells[name] == "NA" else convert(float(cells[name]))
        celsius = lambda f: (f - 32) / 1.8
        yield row(datetime.fromisoformat(cells["time_hour"].replace("Z", "+00:00")), t=value("temp", celsius),
                  td=value("dewp", celsius), slp=value("pressure"), speed=value("wind_speed", lambda x: x * MPH),
                  gust=value("wind_gust", lambda x: x * MPH))


def model(path):
    for cells in csv.DictReader(text_of(path).splitlines()):
        when = datetime.fromisoformat(cells["time"]).replace(tzinfo=timezone.utc) + timedelta(hours=4)
        yield row(when, t=float(cells["temperature_2m"]), td=float(cells["dewpoint_2m"]), slp=float(cells["pressure_msl"]),
                  p=float(cells["surface_pressure"]), speed=float(cells["windspeed_10m"]) / 3.6,
                  gust=float(cells["windgusts_10m"]) / 3.6)


READERS = [("isd-fixed/*.gz", isd_fixed), ("isd-global-hourly/*.gz", isd_csv), ("isd-lite/*.gz", isd_lite), ("lcd/*.csv", lcd),
           ("asos-csv/*", archive), ("epw-tmy/*.epw", epw), ("epw-tmy/*.CSV", tmy3), ("raw-metar/*.txt", reports),
           ("ghcnh/*.psv", ghcnh), ("hourly-other/nyc*.csv", new_york), ("hourly-other/openmeteo*.csv", model)]


def summary(rows):
    kept = [r for r in rows if keeps(r)]
    months = {}
    for r in kept:
        months.setdefault(r["when"].strftime("%Y-%m"), []).append(r)
    medians = {}
    for month, own in sorted(months.items()):
        medians[month] = {"count": len(own), **{
            name: None if not any(r[name] is not None for r in own)
            else round(float(np.median([r[name] for r in own if r[name] is not None])), 4) for name in FIELDS}}
    return {"observations": len(kept), "usable": sum(usable(r) for r in kept), "months": medians}


# Nothing of a foreign station's figures is kept, only counts.
FOREIGN = {"014160-99999-2016.gz"}


def kept_summary(path, reader):
    found = summary(list(reader(path)))
    return {**found, "months": {}} if path.name in FOREIGN else found


if __name__ == "__main__":
    folder = Path(sys.argv[1])
    print(json.dumps({path.relative_to(folder).as_posix(): kept_summary(path, reader)
                      for pattern, reader in READERS for path in sorted(folder.glob(pattern))}, separators=(",", ":")))
