"""Density altitude by month and hour, and around two dates, of six real years, computed by other means than the program's.

python3 tests/soak/day-figures.py FOLDER > tests/soak/day-figures.json

FOLDER holds the samples by kind (isd-fixed, ...). Needs numpy. Files are read by weather-files.py beside this one; the rules
(which report stands for an hour, which days belong to a window, moist air, the standard atmosphere) are written down here
once more, from the documents, in plain floats. Quantiles are numpy's default, type R-7. Suspect values count, and so do
those that the program would flag as spikes or stuck: the program is asked the same way.
"""

import importlib.util
import json
import sys
from datetime import date, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import numpy as np

spec = importlib.util.spec_from_file_location("files", Path(__file__).with_name("weather-files.py"))
files = importlib.util.module_from_spec(spec)
spec.loader.exec_module(files)

ELEVATION_M = 1655.0
ZONE = ZoneInfo("America/Denver")
DATES = [(7, 19), (1, 3)]
SHARES = [0.5, 0.9]


def pressure(r):
    """Station pressure, else from the setting, else from sea-level pressure and temperature (README of the samples)."""
    if r["p"] is not None:
        return r["p"]
    if r["alti"] is not None:
        return 1013.25 * ((r["alti"] / 1013.25) ** 0.190263 - 0.0065 * ELEVATION_M / 288.15) ** (1 / 0.190263)
    return r["slp"] * np.exp(-9.80665 * ELEVATION_M / (287.05287 * (r["t"] + 273.15 + 0.0065 * ELEVATION_M / 2)))


def density_altitude(r):
    """WMO-No. 8 (2018) annex 4.B for the vapour; ICAO Doc 7488 for the altitude of equal density."""
    p, t, td = pressure(r), r["t"], min(r["td"], r["t"])
    e = 6.112 * np.exp(17.62 * td / (243.12 + td)) * (1.0016 + 3.15e-6 * p - 0.074 / p)
    density = (p - (1 - 0.62198) * e) * 100 / (287.05287 * (t + 273.15))
    return 288.15 / 0.0065 * (1 - (density / 1.225) ** (1 / (9.80665 / (287.05287 * 0.0065) - 1)))


def hours(rows):
    """Of each full hour of the clock the nearest usable report within 30 minutes; a repeated hour in its first run."""
    by_minute = {}
    for r in rows:
        if files.usable(r) and r["when"] not in by_minute:
            by_minute[r["when"]] = r
    times = sorted(by_minute)
    nearest = {}
    for when in times:
        # Denver's clock differs from UTC by whole hours, so its full hours are UTC's.
        for hour in {when.replace(minute=0), when.replace(minute=0) + timedelta(hours=1)}:
            away = abs(when - hour)
            if away <= timedelta(minutes=30) and (hour not in nearest or away < abs(nearest[hour] - hour)):
                nearest[hour] = when
    seen = set()
    for hour in sorted(nearest):
        local = hour.astimezone(ZONE)
        name = (local.date(), local.hour)
        if name not in seen:
            seen.add(name)
            yield local.date(), local.hour, density_altitude(by_minute[nearest[hour]])


def figures(values):
    return [len(values)] + [round(float(np.quantile(values, q)), 2) if values else None for q in SHARES]


def main(folder):
    rows = []
    for year in range(2008, 2014):
        rows += [r for r in files.isd_fixed(Path(folder) / f"isd-fixed/725650-03017-{year}.gz") if files.keeps(r)]
    found = list(hours(rows))
    cells = [[[] for _ in range(24)] for _ in range(12)]
    for day, hour, value in found:
        cells[day.month - 1][hour].append(value)
    around = {}
    for month, day_of_month in DATES:
        for width in (7, 8, 9, 10):
            near = [[] for _ in range(24)]
            for day, hour, value in found:
                if any(abs((day - date(day.year + y, month, day_of_month)).days) <= width for y in (-1, 0, 1)):
                    near[hour].append(value)
            if all(len(each) >= 100 for each in near):
                break
        around[f"{month:02}-{day_of_month:02}"] = {"halfWidthDays": width, "hours": [figures(each) for each in near]}
    json.dump({"season": [[figures(cell) for cell in month] for month in cells], "days": around}, sys.stdout, separators=(",", ":"))


main(sys.argv[1])
