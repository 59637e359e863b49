#!/usr/bin/env python3
"""Forty made years of days from four real ones, to standard output.

Usage: forty_years.py seattle.days.csv >forty-years.csv

Each calendar week of each made year is that week of one of the four real years, drawn from a fixed
seed: spells within a week are real, their order over weeks is not. Leap days are left out.
"""
import csv
import datetime
import random
import sys

FIRST_YEAR = 1981
YEARS = 40
SEED = 2027
DAYS_IN_WEEK = 7


def main():
    with open(sys.argv[1], newline="", encoding="utf-8") as file:
        rows = list(csv.reader(file))
    by_date = {row[0]: row[1:] for row in rows[1:]}
    real = sorted({date[:4] for date in by_date})
    draw = random.Random(SEED).random
    print(",".join(rows[0]))
    for year in range(FIRST_YEAR, FIRST_YEAR + YEARS):
        # A common year's days; a leap day has no fellow in most years.
        days = [datetime.date(2015, 1, 1) + datetime.timedelta(days=d) for d in range(365)]
        for number, day in enumerate(days):
            if number % DAYS_IN_WEEK == 0:
                of = real[int(draw() * len(real))]
            month_day = day.isoformat()[4:]
            print(",".join(["%d%s" % (year, month_day)] + by_date[of + month_day]))


main()
