#!/usr/bin/env python3
"""Seasons with jobs that have begun, and with past years, from real files to the page.

season.py PROGRAM SOURCE    "wrong ..." a line for what differs

Two flat pools of 10 by 5 m and 1.4 m deep, next door to one another, 92 m2 each in one section; three people, two of them
painters. Facts of the trade that the stories rest on: recoat 20 to 24 h, a lost recoat window is abraded and cleaned after
the maker's advice in writing, an etched shell is coated within 7 days or cleaned again, no coat in the rain. Every log is
written by `record`.
"""
import datetime
import json
import os
import subprocess
import sys
import tempfile

PROGRAM = os.path.abspath(sys.argv[1])
wrongs = 0


def wrong(*words):
    global wrongs
    wrongs += 1
    print("wrong", *words)


def same(what, got, wanted):
    if got != wanted:
        wrong(what, "is", got, "not", wanted)


def pool(number):
    return {"basinwright": 1, "units": "metric", "job": {"number": number, "start": "2027-05-10"},
            "pool": {"outline": {"kind": "rectangle", "length": "8 m", "width": "4 m"},
                     "floor": {"kind": "constant", "depth": "1.4 m"}, "tape_tolerance": "0 %"},
            "surfaces": [{"coating": "epoxy", "acetone_test": "untouched"}],
            "condition": {"lead_test": "clear"}, "coating": {"coats": 2}}


def hours(path, years, is_wet):
    """Mild hours that dry well; rain where it is said, from 06:00 to 18:00 of a day."""
    with open(path, "w", encoding="utf-8") as file:
        file.write("time,air_temp_c,rh_pct,dew_point_c,rain_mm,wind_ms,cloud_pct,shell_temp_c\n")
        for year in years:
            hour = datetime.datetime(year, 5, 1)
            while hour < datetime.datetime(year, 12, 31):
                rain = 1.5 if is_wet(hour) and 6 <= hour.hour < 18 else 0
                file.write(f"{hour.isoformat()[:16]},18,60,10,{rain},2,40,18\n")
                hour += datetime.timedelta(hours=1)


class Season:
    """Jobs A and B, crews, logs."""

    def __init__(self, folder, crews):
        self.at = folder
        for number in ("A", "B"):
            self.write(f"{number}.json", pool(number))
        self.write("crews.json", crews)

    def path(self, name):
        return os.path.join(self.at, name)

    def write(self, name, value):
        with open(self.path(name), "w", encoding="utf-8") as file:
            json.dump(value, file)

    def run(self, *more, status=0):
        done = subprocess.run([PROGRAM, "batch", "--programme", "--crews", self.path("crews.json"), self.path("A.json"),
                               self.path("B.json"), *more], capture_output=True, text=True, timeout=100, check=False)
        if done.returncode != status:
            wrong("a season", more, "ends with", done.returncode, done.stderr[:400])
        return done.stdout if status != 2 else done.stderr

    def page(self, *more, status=0):
        return json.loads(self.run("--format", "json", *more, status=status) or "{}")

    def record(self, job, log, entries):
        text = "".join(json.dumps(entry) + "\n" for entry in entries)
        done = subprocess.run([PROGRAM, "record", self.path(f"{job}.json"), "--log", self.path(log), "--quiet", "--now",
                               "2027-07-01T00:00", "-"], input=text, capture_output=True, text=True, timeout=60, check=False)
        if done.returncode != 0 or done.stdout.count("recorded as line") != len(entries):
            wrong("record ends with", done.returncode, done.stderr[:400])


def work(task, start, end):
    return [{"at": f"2027-05-{start}", "event": "started", "task": task},
            {"at": f"2027-05-{end}", "event": "finished", "task": task}]


def line(page, job):
    return next(row for row in page["jobs"] if row["job"] == job)


def stays(page, job):
    return [(day["from"], day["to"], day["work"]) for day in page["days"] if day["job"] == job]


CREWS = {"crews": [{"name": "North", "people": 3, "painters": 2}], "travel": {"usual": "5 min"},
         "jobs": [{"job": "A", "promised": "2027-06-20"}, {"job": "B", "promised": "2027-06-20"}]}
DONE = (work("set-out", "10T07:00", "10T08:30") + work("drain", "10T08:30", "10T12:00") +
        work("degrease", "10T12:00", "10T14:00") + work("abrade", "10T14:00", "11T12:00") +
        work("dust-removal", "11T12:00", "11T13:00") + work("pressure-clean", "11T13:00", "11T14:00") +
        work("etch-walls", "12T07:00", "12T08:00") + work("etch-floor", "12T08:00", "12T09:00") +
        work("neutralise", "12T09:00", "12T11:00") + work("dryness-test", "14T11:00", "15T07:00") +
        work("mask", "17T07:00", "17T07:30") + work("coat-1", "17T09:30", "17T10:45"))


def begun(folder):
    season = Season(folder, CREWS)
    season.record("A", "a.log", DONE)
    log = f"A={season.path('a.log')}"

    # Work that goes on is taken to end as planned: nobody can be at B before, nor anywhere before now.
    page = season.page("--log", log, "--now", "2027-05-10T13:00")
    for job in ("A", "B"):
        if any(start < "2027-05-10T13:00" for start, _, _ in stays(page, job)):
            wrong("somebody works before now", stays(page, job)[0])
    if any("Drain" in work_done or "Set out" in work_done for _, _, work_done in stays(page, "A")):
        wrong("what is done is done again", stays(page, "A"))
    same("the first day of a begun job", line(page, "A")["first_day"], "2027-05-10")

    # An hour after the first coat the second follows on the next morning, 20 to 24 h later, whatever else there is.
    page = season.page("--log", log, "--now", "2027-05-17T11:00")
    second = [s for s in stays(page, "A") if "Coat 2" in s[2]]
    same("mornings of the second coat", len(second), 1)
    same("the day of the second coat", second[0][0][:10], "2027-05-18")
    same("nothing is lost", page.get("lost", []), [])

    # Two mornings later the window is lost: abraded and cleaned before the coat, held by the maker's advice.
    now = ("--now", "2027-05-19T06:00")
    page = season.page("--log", log, *now)
    same("what is lost", page["lost"], [{"job": "A", "section": None, "task": "rework", "advised": False}])
    days = stays(page, "A")
    rework = next(i for i, s in enumerate(days) if "Abrade and clean" in s[2])
    coat = next(i for i, s in enumerate(days) if "Coat 2" in s[2])
    if rework > coat or coat - rework > 1:
        wrong("the coat does not follow its cleaning", days)
    text = " ".join(season.run("--log", log, *now, "--format", "text").replace("\u2502", " ").split())
    for words in ("HOLD POINT (makers-advice)", "provisional", "hold_released hold=makers-advice by=NAME",
                  "waits for the maker's advice"):
        if words not in text:
            wrong("the page does not say", words)
    # As replan has it alone: the same coat, the same day full, when nothing else is in the way.
    alone = subprocess.run([PROGRAM, "replan", season.path("A.json"), "--log", season.path("a.log"), *now, "--quiet",
                            "--format", "json"], capture_output=True, text=True, timeout=60, check=False)
    tasks = json.loads(alone.stdout)["programme"]["tasks"]
    fill = next(t for t in tasks if t["task"] == "start-up" or t["task"] == "fill")
    if line(page, "A")["full"] < fill["start"][:10]:
        wrong("full before replan has it", line(page, "A")["full"], fill)
    advised = DONE + [{"at": "2027-05-19T05:30", "event": "hold_released", "hold": "makers-advice", "by": "M. Sample"}]
    season.record("A", "advised.log", advised)
    page = season.page("--log", f"A={season.path('advised.log')}", *now)
    same("the advice is there", [row["advised"] for row in page["lost"]], [True])

    # The etch runs out after 7 days: the bare shell is cleaned again, no maker is asked.
    season.record("B", "b.log", [e for e in DONE if e["at"] < "2027-05-13"])
    page = season.page("--log", f"B={season.path('b.log')}", "--now", "2027-05-24T06:00")
    same("an etch that ran out", [(row["job"], row["task"]) for row in page["lost"]], [("B", "clean-again")])

    # Two begun jobs whose second coats want the same hour of the same morning: neither is left without dates.
    season.record("B", "both.log", DONE)
    page = season.page("--log", log, "--log", f"B={season.path('both.log')}", "--now", "2027-05-17T11:00")
    for job in ("A", "B"):
        if not line(page, job).get("full"):
            wrong(job, "has no dates beside the other")

    # Left lying over a winter, and over years: what is left is booked from now on, for both.
    for now in ("2028-05-08T06:00", "2031-05-12T06:00"):
        page = season.page("--log", log, "--now", now)
        same("what a winter takes", [(row["job"], row["task"]) for row in page["lost"]], [("A", "rework")])
        for job in ("A", "B"):
            if not line(page, job).get("full") or any(now[:10] > to[:10] and "Coat 2" in what for _, to, what in stays(page, job)):
                wrong(job, "is not booked on from", now, line(page, job), stays(page, job))
    season.run("--log", f"C={season.path('a.log')}", status=1)
    season.run("--log", f"A={season.path('none.log')}", status=4)
    season.run("--log", season.path("a.log"), status=2)


def alone(folder):
    """A season of one job has the dates of its job sheet; with another job beside it is full no earlier."""
    season = Season(folder, CREWS)
    sheet = subprocess.run([PROGRAM, "jobsheet", season.path("A.json"), "--today", "2027-05-03", "--format", "json"],
                           capture_output=True, text=True, timeout=60, check=False)
    full = json.loads(sheet.stdout)["programme"]["refill_done"][:10]
    season.write("one.json", {"crews": CREWS["crews"]})
    done = subprocess.run([PROGRAM, "batch", "--programme", "--crews", season.path("one.json"), season.path("A.json"),
                           "--today", "2027-05-03", "--format", "json"], capture_output=True, text=True, timeout=60, check=False)
    one = json.loads(done.stdout)
    same("the day on which a job alone is full", line(one, "A")["full"], full)
    same("a job alone is proven", one["season"]["optimal"], True)
    two = season.page("--today", "2027-05-03")
    if min(line(two, job)["full"] for job in ("A", "B")) < full:
        wrong("two jobs are full before one", two["jobs"])


def helps(folder):
    """Two pools that are the same: whoever takes the other's place takes its lateness, too."""
    season = Season(folder, {"crews": [{"name": "North", "people": 2, "painters": 2}],
                             "jobs": [{"job": "A", "promised": "2027-05-28"},
                                      {"job": "B", "promised": "2027-05-28", "priority": 9}]})
    page = season.page("--today", "2027-05-03")
    late = {job: line(page, job)["days_late"] for job in ("A", "B")}
    if not 0 < late["B"] < late["A"]:
        wrong("what counts nine times is not less late", late)
    found = {(row["job"], row["help"]): row for row in page["late"]}
    swap = found.get(("A", "swap"), {})
    same("A in the place of B", (swap.get("days_late"), swap.get("pay")), (late["B"], "B"))
    same("all of it", swap.get("season_late"), late["B"] + 9 * late["A"])
    # Five days of nine hours at 37.00 an hour, the wage of the demonstration's rate book.
    week = found.get(("B", "painter-week"), {})
    same("a painter for a week", week.get("cost"), "1665.00")
    if week.get("days_late", late["B"]) >= late["B"]:
        wrong("a painter for a week is told and does not help", week)
    for row in page["late"]:
        if row["days_late"] is not None and row["days_late"] >= late[row["job"]]:
            wrong("told as a help and is none", row)


def binds(folder):
    """What the crews file binds a job to: a crew, a first day, the day its kits are on the yard, long ways."""
    season = Season(folder, CREWS)
    today = ("--today", "2027-05-03")
    free = season.page(*today)

    def told(**of_a):
        season.write("crews.json", {**CREWS, "jobs": [{"job": "A", "promised": "2027-06-20", **of_a}, CREWS["jobs"][1]]})
        return season.page(*today)

    page = told(materials="2027-06-07")
    coats = [start[:10] for start, _, what in stays(page, "A") if "Coat" in what]
    if not coats or min(coats) < "2027-06-07":
        wrong("coated before the kits are on the yard", coats)
    if min(start[:10] for start, _, _ in stays(page, "A")) >= "2027-06-07":
        wrong("nothing is prepared while the kits are on their way", stays(page, "A"))
    page = told(not_before="2027-05-25")
    if line(page, "A")["first_day"] < "2027-05-25":
        wrong("begun before its first day", line(page, "A"))

    # Both bind A to a day after its promise: what helps is the binding taken away.
    for key, help_ in (("materials", "materials"), ("not_before", "not-before")):
        page = told(**{key: "2027-06-10", "promised": line(free, "A")["full"]})
        rows = {row["help"]: row for row in page["late"] if row["job"] == "A"}
        if help_ not in rows or rows[help_]["days_late"] >= line(page, "A")["days_late"]:
            wrong("what binds the job is no help when taken away", help_, page["late"])
        words = {"materials": "Kits ordered earlier", "not_before": "Begun before"}[key]
        if words not in season.run(*today, "--format", "text"):
            wrong("the page does not say", words)

    # Four hours between the pools and none: never sooner with the long way.
    for time in ("4 h", "5 min"):
        season.write("crews.json", {**CREWS, "travel": {"usual": "5 min", "between": [{"from": "A", "to": "B", "time": time}]}})
        last = max(row["full"] for row in season.page(*today)["jobs"])
        same("full by " + time, last >= max(row["full"] for row in free["jobs"]), True)
    same("a way of five minutes told or usual", last, max(row["full"] for row in free["jobs"]))

    crews = {"crews": [dict(CREWS["crews"][0], name=name) for name in ("North", "South")],
             "jobs": [{"job": "A", "crew": "South"}, {"job": "B", "crew": "South"}]}
    season.write("crews.json", crews)
    page = season.page(*today)
    same("the crew they are bound to", [row["crew"] for row in page["jobs"]], ["South", "South"])
    crews["jobs"][1]["crew"] = "North"
    season.write("crews.json", crews)
    page = season.page(*today)
    same("a crew each, and both as early as alone", [row["crew"] for row in page["jobs"]], ["South", "North"])
    same("both full on a day", line(page, "A")["full"], line(page, "B")["full"])
    agenda = season.run(*today, "--format", "ics", "--crew", "North")
    if "SUMMARY:B" not in agenda or "SUMMARY:A" in agenda or season.run(*today, "--format", "ics").count("BEGIN:VEVENT") <= agenda.count(
            "BEGIN:VEVENT"):
        wrong("the calendar of one crew is not its own", agenda[:400])
    if "no crew \"East\"" not in season.run(*today, "--format", "ics", "--crew", "East", status=2):
        wrong("a crew that there is not")

    # A job that must stop has no dates, and holds up nobody.
    stop = pool("A")
    stop["condition"]["lead_test"] = "found"
    season.write("A.json", stop)
    page = season.page(*today, status=3)
    same("a job that must stop", (line(page, "A")["crew"], line(page, "A")["full"]), ("stopped", None))
    same("the other one", line(page, "B")["full"], line(free, "A")["full"])
    season.write("A.json", {"basinwright": 1})
    season.run(*today, status=1)


def years(folder):
    """A promise that the season just keeps in dry weather is kept in the years that are dry while it matters."""
    season = Season(folder, CREWS)
    dry = season.page("--today", "2027-05-03")
    fulls = {job: line(dry, job)["full"] for job in ("A", "B")}
    CREWS_PROMISED = {**CREWS, "jobs": [{"job": job, "promised": full} for job, full in fulls.items()]}
    season.write("crews.json", CREWS_PROMISED)
    # Dry; rain on every day of May; rain in September only; nothing but rain.
    for name, year, is_wet in (("dry", 2011, lambda t: False), ("may", 2012, lambda t: t.month == 5),
                               ("autumn", 2013, lambda t: t.month == 9), ("rain", 2014, lambda t: True)):
        hours(season.path(name + ".csv"), [year], is_wet)
    files = [word for name in ("dry", "may", "autumn", "rain") for word in ("--years", season.path(name + ".csv"))]
    page = season.page("--today", "2027-05-03", *files)
    for job in ("A", "B"):
        row = line(page, job)
        same("years of " + job, (row["years_kept"], row["years"]), (2, 4))
    one = season.page("--today", "2027-05-03", *files[:2])
    same("one dry year", [line(one, job)["years_kept"] for job in ("A", "B")], [1, 1])
    if "2 of 4 years" not in season.run("--today", "2027-05-03", *files, "--format", "markdown"):
        wrong("the page does not say in how many years")
    # A year whose file ends in June says nothing about what comes after.
    short = season.path("short.csv")
    with open(season.path("dry.csv"), encoding="utf-8") as whole, open(short, "w", encoding="utf-8") as file:
        file.write("".join(text for text in whole if text[:4] == "time" or text[5:7] < "07"))
    page = season.page("--today", "2027-05-03", "--years", short)
    if "years_kept" in line(page, "A") or [row["year"] for row in page["left_out"]] != [2011]:
        wrong("a year that ends early is not left out", page.get("left_out"))
    # A job that has begun, its window lost in no year or in all: what is done stays.
    season.record("A", "a.log", DONE)
    season.write("crews.json", CREWS)
    page = season.page("--log", f"A={season.path('a.log')}", "--now", "2027-05-17T11:00", *files)
    row = line(page, "A")
    same("years of a begun job", row["years"], 4)
    if row["years_kept"] < 2:
        wrong("a begun job is late in dry years", row)


def main():
    for story in (alone, begun, helps, binds, years):
        with tempfile.TemporaryDirectory() as folder:
            story(folder)
    print(f"{wrongs} wrong")
    return 1 if wrongs else 0


sys.exit(main())
