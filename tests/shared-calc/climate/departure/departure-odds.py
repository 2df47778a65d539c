"""Days that meet joint limits around dates of the year, counted with numpy and the standard library.

python3 departure-odds.py > departure-odds.json (then formatted as every file)

An invented record of eight years (the formulas are those of invented-record.ts) is held against density altitude and
crosswind together. The rules are written down here once more: a day without wind is no observation, a variable wind counts
fully, the gust counts where there is one; a window of +-7 days widens to +-21 until each hour asked has its days, hours
that never can left aside; 29 February is 1 March in other years. Years are drawn anew 20,000 times for the interval.
"""

import json
from datetime import date, datetime, timedelta, timezone

import numpy as np

START = datetime(2012, 1, 1, tzinfo=timezone.utc)
COUNT = int((datetime(2020, 1, 1, tzinfo=timezone.utc) - START).total_seconds() // 3600)
i = np.arange(COUNT, dtype=np.int64)
i = i[i % 41 != 0]
hour = i % 24
t = 15 + 12 * np.sin(2 * np.pi * (i / 24 - 105) / 365.25) + 7 * np.sin(2 * np.pi * (hour - 9) / 24) + ((i * 7919) % 97 - 48) / 12
da = 1372 + 36 * (t - 6)
speed = np.where(i % 29 == 0, np.nan, ((i * 31) % 13) * 0.7)
direction = np.where(i % 37 == 0, np.nan, ((i * 53) % 36) * 10.0)
strong = np.where(i % 3 == 0, 1.4 * speed, speed)
days = [(START + timedelta(hours=int(k))).date() for k in i]
ordinal = np.array([d.toordinal() for d in days])


def centre(year, month, day):
    return date(year, 3, 1) if (month, day) == (2, 29) and year % 4 != 0 else date(year, month, day)


def crosswind(heading):
    across = np.abs(strong * np.sin(np.radians(direction - heading)))
    return np.where(np.isnan(direction) & (speed > 0), strong, np.where(speed == 0, 0.0, across))


def case(month, day, share, da_most, cross_most, heading, hours):
    cross = crosswind(heading)
    seen = ~np.isnan(cross)
    met = seen & (da <= da_most) & (cross <= cross_most)
    off = np.full(len(i), 99)
    of_year = np.zeros(len(i), dtype=int)
    for year in range(2011, 2022):
        d = ordinal - centre(year, month, day).toordinal()
        near = np.abs(d) <= 21
        off[near] = d[near]
        of_year[near] = year
    needed = round(10 / (1 - share))
    count = lambda h, half: int(np.sum(seen & (hour == h) & (np.abs(off) <= half)))
    hopeful = [h for h in hours if count(h, 21) >= needed]
    half = 7
    while half < 21 and any(count(h, half) < needed for h in hopeful):
        half += 1
    inside = np.abs(off) <= half
    rows = []
    rng = np.random.default_rng(7)
    years = sorted({int(y) for y in of_year[inside & seen]})
    drawn = rng.integers(0, len(years), size=(20000, len(years)))
    for h in range(24):
        at = inside & (hour == h) & seen
        n = np.array([np.sum(at & (of_year == y)) for y in years])
        k = np.array([np.sum(at & met & (of_year == y)) for y in years])
        again = k[drawn].sum(1) / n[drawn].sum(1)
        low, high = np.quantile(again, [0.05, 0.95])
        rows.append({"hour": h, "days": int(n.sum()), "met": int(k.sum()),
                     "failsDa": int(np.sum(at & (da > da_most))), "failsCross": int(np.sum(at & (cross > cross_most))),
                     "da": float(np.quantile(da[at], share)), "low": float(low), "high": float(high)})
    return {"month": month, "day": day, "share": share, "daMost": da_most, "crossMost": cross_most, "heading": heading,
            "hours": hours, "halfDays": half, "years": len(years), "rows": rows}


cases = [
    case(7, 19, 0.9, 2150.0, 6.0, 250, list(range(6, 21))),
    case(7, 19, 0.5, 1950.0, 3.0, 161, list(range(6, 21))),
    case(1, 1, 0.9, 1500.0, 6.0, 70, list(range(8, 17))),
    case(2, 29, 0.75, 1480.0, 5.0, 341, list(range(7, 18))),
    case(12, 28, 0.95, 1700.0, 7.5, 250, list(range(8, 17))),
]
print(json.dumps(cases, indent=1))
