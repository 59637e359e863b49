#!/usr/bin/env python3
"""Makes examples/plain-pool.weather.csv: five invented weeks of hours from real days.

Usage: make_example_weather.py FOLDER >examples/plain-pool.weather.csv
FOLDER holds seattle-weather.csv and seattle-weather-hourly-normals.csv of the npm package
vega-datasets 3.2.1 (data folder): data of the U.S. Government, in the public domain.

Real: each day's rain, highest and lowest temperature and mean wind. Made up, from a fixed seed:
the hours at which the rain falls and the cloud. Synthesised, as the data has no humidity: the dew
point, from the day's lowest temperature. The days are moved to another year and another month.
"""
import csv
import datetime
import math
import random
import sys

FIRST_REAL_DAY = datetime.date(2013, 5, 18)
FIRST_DAY = datetime.date(2027, 5, 3)
DAYS = 35
SEED = 2027
CLOUD = {"sun": 25, "drizzle": 85, "rain": 90, "fog": 80, "snow": 90}


def rows(path):
    with open(path, newline="", encoding="utf-8") as file:
        return list(csv.DictReader(file))


def real_days(folder):
    by_date = {row["date"]: row for row in rows(folder + "/seattle-weather.csv")}
    # A day more on both ends: hours lie between the noons of two days.
    return [by_date[(FIRST_REAL_DAY + datetime.timedelta(days=d)).isoformat()] for d in range(-1, DAYS + 1)]


def shapes(folder):
    """Of each month and day, 24 pairs: how far up from the night's low, and the wind over its mean."""
    days = {}
    for row in rows(folder + "/seattle-weather-hourly-normals.csv"):
        days.setdefault(row["date"][5:10], {})[int(row["date"][11:13])] = (float(row["temperature"]), float(row["wind"]))
    out = {}
    for day, hours in days.items():
        if len(hours) < 24:
            continue
        low = min(t for t, _ in hours.values())
        high = max(t for t, _ in hours.values())
        mean = sum(w for _, w in hours.values()) / 24
        out[day] = [((hours[h][0] - low) / (high - low), hours[h][1] / mean) for h in range(24)]
    return out


def rain_by_hour(tenths, draw):
    """The day's rain in tenths of a millimetre over one unbroken shower; the sum is kept."""
    hours = [0] * 24
    if tenths == 0:
        return hours
    length = max(1, min(18, tenths, round(2 * math.sqrt(tenths / 10))))
    start = int(draw() * (24 - length + 1))
    weights = [0.25 + draw() for _ in range(length)]
    total = sum(weights)
    left = tenths - length
    for i, weight in enumerate(weights):
        hours[start + i] = 1 + math.floor(left * weight / total)
    hours[start + length // 2] += tenths - sum(hours)
    return hours


def humidity(air, dew):
    """Magnus, with the coefficients of the WMO guide (17.62, 243.12)."""
    def vapour(t):
        return math.exp(17.62 * t / (243.12 + t))
    return round(100 * vapour(dew) / vapour(air))


def between(values, day, hour):
    """A daily value at an hour: straight lines from noon to noon."""
    position = day + (hour - 12) / 24
    before = math.floor(position)
    share = position - before
    return values[before] * (1 - share) + values[before + 1] * share


def main():
    folder = sys.argv[1]
    days = real_days(folder)
    shape = shapes(folder)
    draw = random.Random(SEED).random
    low = [float(d["temp_min"]) for d in days]
    high = [float(d["temp_max"]) for d in days]
    wind = [float(d["wind"]) for d in days]
    dew_point = [float(d["temp_min"]) - (0.5 if float(d["precipitation"]) > 0 else 2.0) for d in days]
    print("time,air_temp_c,rh_pct,dew_point_c,rain_mm,wind_ms,cloud_pct")
    for d in range(1, DAYS + 1):
        date = FIRST_DAY + datetime.timedelta(days=d - 1)
        rain = rain_by_hour(round(float(days[d]["precipitation"]) * 10), draw)
        for hour in range(24):
            up, gust = shape[days[d]["date"][5:10]][hour]
            bottom = between(low, d, hour)
            air = round(bottom + (between(high, d, hour) - bottom) * up, 1)
            dew = min(round(between(dew_point, d, hour), 1), round(air - 0.2, 1))
            cloud = CLOUD[days[d]["weather"]] + 20 * (draw() - 0.5) + (5 if rain[hour] else 0)
            print(f"{date}T{hour:02d}:00,{air:.1f},{humidity(air, dew)},{dew:.1f},{rain[hour] / 10:.1f},"
                  f"{between(wind, d, hour) * gust:.1f},{min(100, round(cloud))}")


main()
