"""Reads a calendar file from standard input with Python's icalendar and writes
its events as JSON, one list. Anything that library finds wrong is an error."""

import json
import sys
from datetime import date, datetime, timedelta

from icalendar import Calendar

text = sys.stdin.buffer.read()
calendar = Calendar.from_ical(text)
events = []
for part in calendar.walk():
    if part.errors:
        sys.exit(f"{part.name}: {part.errors}")
    if part.name != "VEVENT":
        continue
    for needed in ("UID", "DTSTAMP", "DTSTART", "DTEND", "SUMMARY"):
        if needed not in part:
            sys.exit(f"an event without {needed}")
    start, end, stamp = (part.decoded(name) for name in ("DTSTART", "DTEND", "DTSTAMP"))
    # A day is no moment: an all-day event has dates, its stamp a time in UTC.
    if not all(type(day) is date for day in (start, end)):
        sys.exit(f"no all-day event: {start!r} to {end!r}")
    if not isinstance(stamp, datetime) or stamp.utcoffset() != timedelta(0):
        sys.exit(f"a stamp without UTC: {stamp!r}")
    events.append(
        {
            "uid": str(part["UID"]),
            "start": start.isoformat(),
            "end": end.isoformat(),
            "stamp": stamp.isoformat(),
            "summary": str(part["SUMMARY"]),
            "description": str(part.get("DESCRIPTION", "")),
            "busy": str(part.get("TRANSP", "")),
        }
    )
if not ("VERSION" in calendar and "PRODID" in calendar):
    sys.exit("no VERSION or no PRODID")
json.dump(events, sys.stdout)
