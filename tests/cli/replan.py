#!/usr/bin/env python3
"""Re-plans of a job of two sections, from real log files to the page.

replan.py PROGRAM SOURCE    "wrong ..." a line for what differs; "SKIPPED ..." for what cannot be looked at

A flat pool of 10 by 5 m and 1.4 m deep, cut in half: 25 m2 of floor and 21 m2 of wall each, 46 m2. One painter does
20 m2 an hour: 2.3 h, in quarters 2 h 30 min, so that a morning of 08:00 to 11:00 holds one section. Recoat 20 to 24 h,
the first coat within 7 days of the etch, and after abrading 2 to 24 h (the trade's windows): every time below is worked
out by hand from these. Every hour is fit for painting unless a story makes it rain.
"""
import datetime
import json
import os
import subprocess
import sys
import tempfile
import urllib.parse

PROGRAM, SOURCE = os.path.abspath(sys.argv[1]), os.path.abspath(sys.argv[2])
try:
    from icalendar import Calendar
except ImportError:
    Calendar = None
    print("SKIPPED: python3-icalendar is not installed, so calendars are not read back by it")

JOB = {
    "basinwright": 1, "units": "metric", "job": {"number": "BW-7", "start": "2027-05-10"},
    "pool": {"outline": {"kind": "rectangle", "length": "10 m", "width": "5 m"},
             "floor": {"kind": "constant", "depth": "1.4 m"}, "tape_tolerance": "0 %"},
    "surfaces": [{"coating": "epoxy", "acetone_test": "untouched"}],
    "condition": {"lead_test": "clear"},
    "coating": {"coats": 2, "sections": [{"name": "deep", "to": "5 m"}, {"name": "shallow", "to": "0 m"}]},
}
SLOW = bool(os.environ.get("BASINWRIGHT_SLOW_BUILD"))
wrongs = 0
stories = 0


def wrong(*words):
    global wrongs
    wrongs += 1
    print("wrong", *words)


def same(what, got, wanted):
    if got != wanted:
        wrong(what, "is", got, "not", wanted)


class Story:
    """A log and a forecast of its own."""

    def __init__(self, folder, name, wet=(), painters=1):
        global stories
        stories += 1
        self.name = name
        self.at = os.path.join(folder, name)
        os.mkdir(self.at)
        with open(self.path("job.json"), "w", encoding="utf-8") as file:
            json.dump({**JOB, "crew": {"people": 3, "painters": painters}}, file)
        self.weather("weather.csv", wet)
        self.entries = []

    def path(self, name):
        return os.path.join(self.at, name)

    def weather(self, name, wet):
        hour = datetime.datetime(2027, 5, 1)
        with open(self.path(name), "w", encoding="utf-8") as file:
            file.write("time,air_temp_c,rh_pct,dew_point_c,rain_mm,wind_ms,cloud_pct,shell_temp_c\n")
            while hour < datetime.datetime(2027, 7, 20):
                text = hour.isoformat()[:16]
                rain = any(begin <= text <= end for begin, end in wet)
                file.write(f"{text},18,60,10,{1.5 if rain else 0},2,40,18\n")
                hour += datetime.timedelta(hours=1)

    def log(self, at, event, **values):
        self.entries.append({"at": f"2027-{at}", "event": event, **values})

    def work(self, task, start, end, **values):
        self.log(start, "started", task=task, **values)
        self.log(end, "finished", task=task, **values)

    def recorded(self, *more):
        text = "".join(json.dumps(entry) + "\n" for entry in self.entries)
        result = subprocess.run([PROGRAM, "record", self.path("job.json"), "--log", self.path("site.log"), "--now",
                                 "2027-07-01T00:00", *more, "-"], input=text, capture_output=True, text=True, timeout=60, check=False)
        if result.returncode != 0 or result.stdout.count("recorded as line") != len(self.entries):
            wrong(self.name, "record ends with", result.returncode, result.stderr[:400])

    def run(self, command, now, *more, weather="weather.csv", status=0):
        result = subprocess.run([PROGRAM, command, self.path("job.json"), "--weather", self.path(weather), "--quiet",
                                 *(["--log", self.path("site.log"), "--now", f"2027-{now}"] if now else []), *more],
                                capture_output=True, timeout=60, check=False)
        if result.returncode != status:
            wrong(self.name, command, now, "ends with", result.returncode, result.stderr.decode()[:400])
        return result.stdout.decode("utf-8")

    def text(self, command, now):
        """Unwrapped; nothing in a build too slow to make each page twice."""
        return "" if SLOW else self.run(command, now, "--format", "markdown")

    def page(self, command, now, *more, **how):
        return json.loads(self.run(command, now, "--format", "json", *more, **how) or "{}")


def starts(page, task):
    """Section -> start and end of a task, of the work that is still to do."""
    return {t["section"]: (t["start"][5:], t["end"][5:]) for t in page["programme"]["tasks"]
            if t["task"] == task and "done" not in t["held_by"]}


def deadline(page, section):
    return next((d for d in page["deadlines"] if d["section"] == section), {})


def words(text):
    return " ".join(text.replace("\\", "").split())


def says(story, text, *parts):
    for part in parts:
        if not SLOW and part not in words(text):
            wrong(story.name, "does not say:", part)


def two_sections(folder):
    """Monday the deep end at half past eight: its window ends half an hour into Tuesday's painting hours."""
    s = Story(folder, "two-sections")
    s.work("etch-floor", "05-20T08:00", "05-20T09:30")
    s.work("coat-1", "05-24T08:30", "05-24T11:00", section="deep")
    s.recorded()
    page = s.page("replan", "05-24T12:00")
    same("deep, second coat", starts(page, "coat-2")["deep"], ("05-25T08:00", "05-25T10:30"))
    same("shallow, first day", starts(page, "coat-1")["shallow"][0][:5], "05-26")
    same("shallow, second day", starts(page, "coat-2")["shallow"][0][:5], "05-27")
    deep, shallow = deadline(page, "deep"), deadline(page, "shallow")
    same("deep, from", deep["not_before"], "2027-05-25T04:30")
    same("deep, by", deep["by"], "2027-05-25T08:30")
    same("deep, last start", deep["last_start"], "2027-05-25T08:30")
    same("deep, state", deep["state"], "clear")
    same("deep, another morning", deep["next_chance"], None)
    same("etch, by", shallow["by"], "2027-05-27T09:30")
    text = s.text("replan", "05-24T12:00")
    says(s, text, "clear: planned Tue 25 May 08:00, 0 h 30 min in hand", "no second morning")
    says(s, text, "Coat 2, section deep must be started by Tue 25 May 08:30")
    if "is given up for" in words(text):
        wrong("the reserve is kept, and the page says it is given up")


def no_time_in_hand(folder):
    """At five past eight only five minutes of Tuesday's painting hours are left: the half hour is given up, and said."""
    s = Story(folder, "no-time-in-hand")
    s.work("etch-floor", "05-20T08:00", "05-20T09:30")
    s.work("coat-1", "05-24T08:05", "05-24T10:35", section="deep")
    s.recorded()
    page = s.page("replan", "05-24T12:00")
    deep = deadline(page, "deep")
    same("by", deep["by"], "2027-05-25T08:05")
    same("state", deep["state"], "short")
    text = s.text("replan", "05-24T12:00")
    says(s, text, "30 min kept in hand at both ends of a recoat window is given up for Coat 2, section deep")
    says(s, text, "short: planned Tue 25 May 08:00, only 0 h 05 min in hand")


def half_painted(folder):
    """Half of the shallow end was painted: 23 m2 are 1.15 h, in quarters 1 h 15 min."""
    s = Story(folder, "half-painted")
    s.work("etch-floor", "05-20T08:00", "05-20T09:30")
    s.work("coat-1", "05-24T08:30", "05-24T11:00", section="deep")
    s.work("coat-2", "05-25T08:00", "05-25T10:30", section="deep")
    s.log("05-26T08:00", "started", task="coat-1", section="shallow")
    s.log("05-26T09:15", "stopped", task="coat-1", section="shallow", share="50 %", text="squall")
    s.recorded()
    page = s.page("replan", "05-26T12:00")
    # The painted half must be begun by eight; the bare one by half past nine, seven days after the etch.
    same("painted part", starts(page, "coat-2")["shallow, painted part"], ("05-27T08:00", "05-27T09:15"))
    same("rest", starts(page, "coat-1")["shallow, rest"], ("05-27T09:15", "05-27T10:30"))
    # Its second coat between 20 and 24 h after that, in Friday's painting hours.
    last = starts(page, "coat-2")["shallow, rest"]
    if not "05-28T08:00" <= last[0] <= "05-28T09:15":
        wrong("the rest's second coat is at", last)
    same("painted part, by", deadline(page, "shallow, painted part")["by"], "2027-05-27T08:00")
    same("rest, by", deadline(page, "shallow, rest")["by"], "2027-05-27T09:30")


def window_lost(folder):
    """Rain all Tuesday morning: the deep end's window is lost. The shallow end, bare, wants 48 h without rain: Thursday
    14:00; its two coats want two mornings in a row, and nobody works at weekends: Monday and Tuesday."""
    s = Story(folder, "window-lost", wet=[("2027-05-25T05:00", "2027-05-25T13:00")])
    s.work("etch-floor", "05-24T08:00", "05-24T08:25")
    s.work("coat-1", "05-24T08:30", "05-24T11:00", section="deep")
    s.recorded()
    page = s.page("replan", "05-25T12:00")
    same("lost", page["lost"]["sections"], ["deep"])
    same("etch lost", page["lost"]["etch"], False)
    same("state", deadline(page, "deep")["state"], "lost")
    same("shallow, first", starts(page, "coat-1")["shallow"][0][:5], "05-31")
    same("shallow, second", starts(page, "coat-2")["shallow"][0][:5], "06-01")
    # The deep end's second coat 2 to 24 h after it was abraded.
    begin, end = (datetime.datetime.fromisoformat("2027-" + t) for t in starts(page, "rework")["deep"])
    coat = datetime.datetime.fromisoformat("2027-" + starts(page, "coat-2")["deep"][0])
    if not (datetime.timedelta(hours=2) <= coat - end <= datetime.timedelta(hours=24)
            and begin >= datetime.datetime(2027, 5, 25, 14)):
        wrong("abraded from", begin, "to", end, "and coated at", coat)
    # 46 m2 at 3.5 m2 an hour and cleaned at 60: 13.9 h by three, 4 h 45 min each; 37.00 an hour.
    remedy = page["remedies"][0]
    same("hours", remedy["person_hours"], 14.25)
    same("wages", remedy["wages"], "527.25")
    text = s.text("replan", "05-25T12:00")
    says(s, text, "Section deep: The recoat window is lost", "HOLD POINT (makers-advice)",
         "Wages only: discs, hire and travel are not in them.")
    # The crew's sheet from here on: what is made good is a step with the maker's advice and the gloss as hold points.
    sheet = s.page("checklist", "05-25T12:00")
    steps = [t for t in sheet["checklist"]["steps"] if t["task"] == "rework"]
    same("steps", [(t["section"], [h["code"] for h in t["holds"]]) for t in steps], [("deep", ["makers-advice", "no-gloss"])])
    same("what is over", [t for t in sheet["checklist"]["steps"] if t["task"] in ("drain", "etch-floor") or t["start"] < "2027-05-25"], [])
    same("the first day's number", sheet["checklist"]["steps"][0]["day"] > 1, True)
    # Abraded on Thursday: on Friday morning its coat is a go, and the window is that of the abrading.
    s.entries = []
    s.log("05-26T07:00", "hold_released", hold="makers-advice", by="M. Sample")
    s.work("rework", "05-27T10:40", "05-27T15:20", section="deep")
    s.recorded()
    page = s.page("replan", "05-27T18:00")
    same("nothing is lost any more", page["lost"]["sections"], [])
    same("after abrading, by", deadline(page, "deep")["by"], "2027-05-28T15:20")
    same("after abrading, from", deadline(page, "deep")["not_before"], "2027-05-27T17:20")
    same("after abrading, state", deadline(page, "deep")["state"], "clear")
    today = s.page("today", "05-28T06:00")
    # No gloss was signed for before the abrading, if ever: it is signed for again.
    same("signed again", today["open_holds"].count("no-gloss") >= 1, True)
    same("Friday's task", [t["go"] for t in today["tasks"] if t["section"] == "deep" and t["task"] == "coat-2"], [True])
    # Not painted by Friday afternoon, the cleaned surface is old too: abraded once more, never painted over.
    late = s.page("replan", "05-28T16:00")
    same("lost again", late["lost"]["sections"], ["deep"])
    same("abraded again", "deep" in starts(late, "rework"), True)


def on_purpose(folder):
    """The same rain under a sheet that allows a window to be missed: nothing is lost, nobody writes to the maker."""
    s = Story(folder, "on-purpose", wet=[("2027-05-25T05:00", "2027-05-25T13:00")])
    with open(s.path("rates.json"), "w", encoding="utf-8") as file:
        json.dump({"basinwright_rates": 1, "currency": "EUR", "labour": {"hour": "37.00"},
                   "coating_systems": {"Own": {"planned_rework": True, "strong_etch": True}}}, file)
    with open(s.path("job.json"), encoding="utf-8") as file:
        job = json.load(file)
    job["coating"]["system"] = "Own"
    with open(s.path("job.json"), "w", encoding="utf-8") as file:
        json.dump(job, file)
    rates = ["--rates", s.path("rates.json")]
    s.work("etch-floor", "05-24T08:00", "05-24T08:25")
    s.work("coat-1", "05-24T08:30", "05-24T11:00", section="deep")
    s.recorded(*rates)
    page = s.page("replan", "05-25T12:00", *rates)
    same("nothing lost", page["lost"]["sections"], [])
    same("state", deadline(page, "deep")["state"], "planned")
    same("abraded", "deep" in starts(page, "rework"), True)
    today = s.page("today", "05-26T06:00", *rates)
    same("a go without the maker", [(t["task"], t["go"]) for t in today["tasks"] if t["section"] == "deep"], [("rework", True)])
    same("nothing to sign of the maker", "makers-advice" in today["open_holds"], False)
    sheet = s.page("checklist", "05-26T06:00", *rates)
    same("holds", {h["code"] for t in sheet["checklist"]["steps"] if t["task"] == "rework" for h in t["holds"]}, {"no-gloss"})


def half_lost(folder):
    """Half the deep end on Monday by two painters, then rain all Tuesday: only that half is abraded, in half the hours."""
    s = Story(folder, "half-lost", wet=[("2027-05-25T03:00", "2027-05-25T20:00")], painters=2)
    s.work("etch-floor", "05-20T08:00", "05-20T09:30")
    s.log("05-24T08:30", "started", task="coat-1", section="deep")
    s.log("05-24T09:15", "stopped", task="coat-1", section="deep", share="50 %")
    s.recorded()
    page = s.page("replan", "05-25T12:00")
    same("lost", page["lost"]["sections"], ["deep, painted part"])
    # 23 m2 at 3.5 and cleaned at 60 are 6.95 h, by three 2.32 h, in quarters 2 h 30 min.
    same("hours", [(r["section"], r["person_hours"]) for r in page["remedies"]], [("deep, painted part", 7.5)])
    # 45 min for half a section, 1 h 15 min for a whole one: what is bare on Wednesday, all second coats on Thursday.
    same("first coats", {k: v[0][:5] for k, v in starts(page, "coat-1").items()},
         {"deep, rest": "05-26", "shallow": "05-26"})
    same("second coats", {k: v[0][:5] for k, v in starts(page, "coat-2").items()},
         {"deep, painted part": "05-27", "deep, rest": "05-27", "shallow": "05-27"})


def etch_expired(folder):
    """Nothing was painted within seven days of the etch: clean again, 48 h dry, then paint."""
    s = Story(folder, "etch-expired")
    s.work("etch-floor", "05-20T08:00", "05-20T09:30")
    s.work("neutralise", "05-20T09:30", "05-20T11:00")
    s.work("dryness-test", "05-23T07:00", "05-23T23:00")
    s.work("mask", "05-24T07:00", "05-24T07:30")
    s.recorded()
    page = s.page("replan", "05-28T06:00")
    same("lost", page["lost"]["etch"], True)
    # 92 m2 at 23 m2 an hour by three: 1 h 20 min. Monday's coat needs 48 h before it, so Friday it is.
    again = starts(page, "clean-again")[None]
    same("cleaned on", again[0][:5], "05-28")
    same("first coat on", min(starts(page, "coat-1").values())[0][:5], "05-31")
    same("state", deadline(page, "deep")["state"], "lost")
    says(s, s.text("replan", "05-28T06:00"), "The etch holds no longer")
    sheet = s.page("checklist", "05-28T06:00")
    same("dry again", [h["code"] for t in sheet["checklist"]["steps"] if t["task"] == "clean-again" for h in t["holds"]], ["plastic-sheet"])
    today = s.page("today", "05-28T06:00")
    same("Friday's task", [(t["task"], t["go"]) for t in today["tasks"]], [("clean-again", True)])
    # Cleaned, it holds for seven days from then on.
    s.entries = []
    s.work("clean-again", "05-28T07:00", "05-28T08:20")
    s.recorded()
    page = s.page("replan", "05-28T12:00")
    same("nothing is lost any more", page["lost"]["etch"], False)
    same("first coat still on", min(starts(page, "coat-1").values())[0][:5], "05-31")
    same("by", min(d["by"] for d in page["deadlines"]), "2027-06-04T08:20")


def entries(text):
    """Identifier, its signs decoded -> component."""
    found = {}
    for part in Calendar.from_ical(text).walk():
        if part.name in ("VEVENT", "VTODO"):
            uid = urllib.parse.unquote(str(part["UID"]))
            if uid in found:
                wrong("an identifier stands twice:", uid)
            found[uid] = part
    return found


def task_of(uid):
    return uid.removeprefix("BW-7-task-").removesuffix("@basinwright.invalid")


def calendar(folder):
    """RFC 5545, 3.8.4.7 and 3.8.7.4: the same UID for the same thing, a SEQUENCE that rises; 3.8.1.11: CANCELLED."""
    if Calendar is None:
        return
    s = Story(folder, "calendar", wet=[("2027-05-25T05:00", "2027-05-26T02:00")])
    s.weather("dry.csv", ())
    with open(s.path("sheet.json"), "w", encoding="utf-8") as file:
        file.write(s.run("jobsheet", None, "--today", "2027-05-03", "--format", "json", weather="dry.csv"))
    first = entries(s.run("jobsheet", None, "--today", "2027-05-03", "--format", "ics", weather="dry.csv"))
    s.work("etch-floor", "05-20T08:00", "05-20T09:30")
    s.work("coat-1", "05-24T08:05", "05-24T10:35", section="deep")
    s.recorded()
    was = ["--was", s.path("sheet.json")]
    wet = entries(s.run("replan", "05-24T18:00", "--format", "ics", *was))
    missing = [uid for uid in first if "-order-" not in uid and uid not in wet]
    same("identifiers of the first plan that a re-plan has not", missing, [])
    same("SEQUENCE of the first plan", {part.get("SEQUENCE", 0) for part in first.values()}, {0})
    # The forecast takes the window: abrading is new. When it turns dry again, abrading is cancelled.
    abrade = [uid for uid in wet if task_of(uid).startswith("rework")]
    same("abrading", [task_of(uid) for uid in abrade], ["rework/deep"])
    with open(s.path("wet.json"), "w", encoding="utf-8") as file:
        file.write(s.run("replan", "05-24T18:00", "--format", "json", *was))
    dry = entries(s.run("replan", "05-24T20:00", "--format", "ics", "--was", s.path("wet.json"), weather="dry.csv"))
    same("identifiers of the re-plan that the next has not", [uid for uid in wet if uid not in dry and str(wet[uid].get("STATUS")) != "CANCELLED"], [])
    same("abrading that is not needed", [str(dry[uid]["STATUS"]) for uid in abrade], ["CANCELLED"])
    if not min(p["SEQUENCE"] for p in dry.values()) > max(p["SEQUENCE"] for p in wet.values()) > 0:
        wrong("SEQUENCE does not rise")
    by_task = {task_of(uid): part for uid, part in dry.items()}
    same("deep end, first coat", by_task["coat-1/deep"]["DTSTART"].dt.isoformat(), "2027-05-24T08:15:00")
    same("deep end, second coat", by_task["coat-2/deep"]["DTSTART"].dt.isoformat(), "2027-05-25T08:00:00")
    # The window closes 24 h after 08:05, to the minute, and rings before; in the rain it closes after the abrading.
    window = "BW-7-window-coat-1/deep@basinwright.invalid"
    same("window", dry[window]["DTSTART"].dt.isoformat(), "2027-05-25T08:05:00")
    same("alarm", [part.name for part in dry[window].subcomponents], ["VALARM"])
    end = wet[abrade[0]]["DTEND"].dt + datetime.timedelta(hours=24)
    same("window in the rain", wet[window]["DTSTART"].dt, end)
    # The window is met: its alarm must not ring any more.
    s.entries = []
    s.work("coat-2", "05-25T08:00", "05-25T10:30", section="deep")
    s.log("05-26T08:00", "started", task="coat-1", section="shallow")
    s.log("05-26T09:15", "stopped", task="coat-1", section="shallow", share="50 %")
    s.recorded()
    half = entries(s.run("replan", "05-26T12:00", "--format", "ics", *was, weather="dry.csv"))
    same("window that was met", str(half[window]["STATUS"]), "CANCELLED")
    same("alarms of it", half[window].subcomponents, [])
    by_task = {task_of(uid): part for uid, part in half.items()}
    # What is painted keeps the section's entry, the rest has one of its own.
    same("painted part", by_task["coat-1/shallow"]["DTSTART"].dt.isoformat(), "2027-05-26T08:00:00")
    rest = by_task["coat-1/shallow, rest"]["DTSTART"].dt.isoformat()
    if not "2027-05-27T09:15" <= rest[:16] <= "2027-05-27T09:30":
        wrong("the rest is painted at", rest)


def main():
    with tempfile.TemporaryDirectory() as folder:
        for story in (two_sections, no_time_in_hand, half_painted, window_lost, on_purpose, half_lost, etch_expired, calendar):
            story(folder)
    print(stories, "stories,", wrongs, "wrong")
    return 1 if wrongs or stories < 5 else 0


if __name__ == "__main__":
    sys.exit(main())
