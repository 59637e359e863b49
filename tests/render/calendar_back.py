#!/usr/bin/env python3
"""Reads a calendar with the icalendar library, and prints what it found.

calendar_back.py FILE    "name field hexadecimal text" a line, in the order of the file

Ends with 77 where the library is not installed.
"""
import sys

try:
    from icalendar import Calendar
except ImportError:
    sys.exit(77)


def hexed(text):
    return text.encode("utf-8").hex() or "-"


def main(path):
    with open(path, "rb") as file:
        calendar = Calendar.from_ical(file.read())
    print("VCALENDAR", "VERSION", hexed(str(calendar["VERSION"])))
    for part in calendar.walk():
        for field in ("UID", "SUMMARY", "DESCRIPTION", "LOCATION", "STATUS", "ACTION"):
            if part.name != "VCALENDAR" and field in part:
                print(part.name, field, hexed(str(part[field])))
        for field in ("DTSTART", "DTEND", "DUE"):
            if field in part:
                print(part.name, field, hexed(part[field].dt.isoformat()))
        if "TRIGGER" in part:
            print(part.name, "TRIGGER", hexed(str(int(part["TRIGGER"].dt.total_seconds()))))


if __name__ == "__main__":
    main(sys.argv[1])
