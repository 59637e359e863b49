#!/usr/bin/env python3
"""Fresh random programmes, solved by a constraint solver and compared with ours.

    schedules_by_constraints.py BASINWRIGHT_REFERENCE COUNT [SEED]

Needs `minizinc` with Gecode (Debian packages of these names). Each row has the form of
tests/reference/schedules.json, whose `description` is the model: it is written here a second time,
gates and calendars included, and solved for the four objective values one after the other. Only
rows that the solver proves within its time are compared. The rows go to BASINWRIGHT_REFERENCE,
which says of each whether the program finds the same.
"""
import datetime
import json
import pathlib
import random
import subprocess
import sys
import tempfile

MODEL = pathlib.Path(__file__).with_name("schedules_by_constraints.mzn")
SECONDS = 60
START = datetime.datetime(2027, 5, 3)


def weather(dice, hours):
    air, shell, dew, rain = [], [], [], []
    day, damp, cold = 18, 9, dice.choice([0, 0, 0, 0, 0, 6])
    for h in range(hours):
        if h % 24 == 0:
            day = max(9, min(31, day + dice.randint(-4, 4))) - cold * dice.randint(0, 1)
            damp = day - dice.randint(6, 14)
        wave = (0, 1, 2, 3, 4, 5, 6, 5, 4, 3, 2, 1)[(h - 4) % 24 // 2]
        air.append(round(day - 4 + wave + dice.randint(0, 9) / 10, 1))
        shell.append(round(day - 2 + wave / 2, 1))
        dew.append(round(damp + dice.randint(0, 9) / 10, 1))
        rain.append(0.0)
    for _ in range(dice.randint(0, hours // 90)):
        at = dice.randrange(hours)
        for h in range(at, min(hours, at + dice.randint(1, 5))):
            rain[h] = round(dice.randint(1, 20) / 10, 1)
    return {"air_c": air, "shell_c": shell, "dew_c": dew, "rain_mm": rain}


def row(dice, number):
    days = dice.randint(10, 14)
    hours = 24 * days
    coats = dice.choice([2, 2, 2, 3])
    sections = 1 if coats == 3 else dice.choice([1, 2])
    longest = 3 if sections == 1 else 2
    recoat = [[least, least + dice.choice([4, 4, 6, 28])]
              for least in (dice.choice([4, 16, 20, 20]) for _ in range(coats - 1))]
    prep = [{"id": "drain", "slots": dice.randint(4, 20), "unattended": True},
            {"id": "degrease", "slots": dice.randint(1, 4), "rain_ok": True},
            {"id": "abrade", "slots": dice.randint(2, 8), "lag_min": dice.choice([0, 0, 12])},
            {"id": "etch", "slots": dice.randint(1, 4), "one_shift": True,
             "rain_ok": dice.random() < 0.5},
            {"id": "neutralise", "slots": dice.randint(1, 2), "one_shift": True, "rain_ok": True,
             "lag_max": dice.choice([0, 2, 4])}]
    etch = {"anchor": "etch", "max_days": dice.choice([3, 4, 7]), "dry_h": dice.choice([6, 16, 24])}
    if dice.random() < 0.6:
        etch["reclean"] = {"slots": dice.randint(1, 4)}
    result = {
        "name": f"r{number}", "start": START.isoformat(timespec="minutes"), "hours": hours,
        "weather": weather(dice, hours),
        "calendar": {"weekdays": dice.choice([[0, 1, 2, 3, 4], [0, 1, 2, 3, 4, 5]]), "from": 7, "to": 16,
                     "holidays": [(START + datetime.timedelta(dice.randrange(days))).date().isoformat()]
                     if dice.random() < 0.4 else []},
        "paint_hours": {"default": dice.choice([[8, 11], [8, 12], [7, 13]])},
        "limits": {"air_min": 10, "air_max": dice.choice([26, 30]), "air_after_h": 6, "shell_min": 10,
                   "dew_margin": 3, "rain_mm": 0.1, "rain_free_after_h": dice.choice([6, 12])},
        "cost": {"crew": 3, "rate_cents_h": 4200, "attendance_cents": dice.choice([0, 8500]),
                 "weekday_pct": {"5": 150, "6": 200}},
        "prep": prep, "etch": etch,
        "coats": {"names": [f"coat{j + 1}" for j in range(coats)], "recoat": recoat,
                  "sections": [{"id": f"sec{q}", "slots": [dice.randint(1, longest) for _ in range(coats)]}
                               for q in range(sections)]},
        # Weeks of cure only move the finish: a day or two keep the horizon short.
        "fill": {"summer_lag_h": dice.choice([24, 30]), "winter_lag_h": 48, "summer_months": [5]},
    }
    if dice.random() < 0.6:
        result["coats"]["rework"] = {"slots": [dice.randint(1, 4) for _ in range(sections)], "dry_h": 2,
                                     "max_h": 24}
    return result


class Data:
    """The row as arrays over its hours."""

    def __init__(self, row):
        self.row, self.hours = row, row["hours"]
        self.when = [START + datetime.timedelta(hours=h) for h in range(self.hours)]
        self.date = [(t.date() - START.date()).days for t in self.when]
        calendar = row["calendar"]
        works = [t.weekday() in calendar["weekdays"] and t.date().isoformat() not in calendar["holidays"]
                 for t in self.when]
        self.work = [w and calendar["from"] <= t.hour < calendar["to"] for w, t in zip(works, self.when)]
        limits, sky = row["limits"], row["weather"]
        self.wet = [mm >= limits["rain_mm"] for mm in sky["rain_mm"]]
        self.dry = [w and not wet for w, wet in zip(self.work, self.wet)]
        first, last = row["paint_hours"]["default"]
        self.paint = [works[h] and first <= self.when[h].hour < last and self.gate(h, limits, sky)
                      for h in range(self.hours)]
        cost = row["cost"]
        self.pay = [cost["crew"] * cost["rate_cents_h"] * cost["weekday_pct"].get(str(t.weekday()), 100) // 100
                    for t in self.when]

    def gate(self, h, limits, sky):
        air_end, rain_end = h + limits["air_after_h"], h + limits["rain_free_after_h"]
        if max(air_end, rain_end) >= self.hours:
            return False
        hundredths = lambda c: round(c * 100)
        air = all(limits["air_min"] * 100 <= hundredths(c) <= limits["air_max"] * 100
                  for c in sky["air_c"][h:air_end + 1])
        shell = hundredths(sky["shell_c"][h])
        dew = shell - hundredths(sky["dew_c"][h]) >= limits["dew_margin"] * 100
        return air and dew and shell >= limits["shell_min"] * 100 and not any(self.wet[h:rain_end + 1])

    def resumed(self, slots, open_slots):
        """By start: the end, the labour and the dates of the next `slots` open slots."""
        places = [h for h in range(self.hours) if open_slots[h]]
        index = {h: i for i, h in enumerate(places)}
        table = []
        for h in range(self.hours):
            taken = places[index[h]:index[h] + slots] if h in index else []
            table.append(self.entry(taken, slots))
        return table

    def unbroken(self, slots, open_slots, one_date=False):
        table = []
        for h in range(self.hours):
            taken = [k for k in range(h, min(self.hours, h + slots)) if open_slots[k]]
            fits = len(taken) == slots and not (one_date and self.date[taken[0]] != self.date[taken[-1]])
            table.append(self.entry(taken if fits else [], slots))
        return table

    def entry(self, taken, slots):
        if len(taken) != slots:
            return (-1, 0, ())
        return (taken[-1] + 1, sum(self.pay[k] for k in taken), tuple(sorted({self.date[k] for k in taken})))

    def unattended(self, slots):
        return [(h + slots if self.work[h] and h + slots <= self.hours else -1, 0, ())
                for h in range(self.hours)]

    def task(self, task):
        open_slots = self.work if task.get("rain_ok") else self.dry
        if task.get("unattended"):
            return self.unattended(task["slots"])
        return (self.unbroken if task.get("one_shift") else self.resumed)(task["slots"], open_slots)

    def fill(self):
        rule, slots = self.row["fill"], []
        for end in range(self.hours + 1):
            summer = end > 0 and self.when[end - 1].month in rule["summer_months"]
            slot = end + rule["summer_lag_h" if summer else "winter_lag_h"]
            while slot < self.hours and not self.work[slot]:
                slot += 1
            slots.append(slot if 0 < end and slot < self.hours else -1)
        return slots

    def rain_free(self):
        dry = self.row["etch"]["dry_h"]
        return [not any(self.wet[max(0, h - dry):h]) for h in range(self.hours)]


def listed(values):
    return "[" + ",".join(str(v).lower() if isinstance(v, bool) else str(v) for v in values) + "]"


def instance(row):
    data, coats = Data(row), row["coats"]
    names, sections = coats["names"], coats["sections"]
    acts = [data.task(t) for t in row["prep"]]
    acts += [data.unbroken(s["slots"][j], data.paint, True) for j in range(len(names)) for s in sections]
    rework = coats.get("rework")
    for _ in range(len(names) - 1):
        acts += [data.resumed(rework["slots"][q] if rework else 1, data.dry) for q in range(len(sections))]
    reclean = row["etch"].get("reclean")
    acts.append(data.resumed(reclean["slots"] if reclean else 1, data.dry))
    days = data.date[-1] + 1
    never = data.hours
    fields = {
        "H": data.hours, "D": days, "N": len(row["prep"]), "C": len(names), "S": len(sections),
        "end_of": [e for act in acts for e, _, _ in act],
        "pay_of": [p for act in acts for _, p, _ in act],
        "on_date": [d in dates for act in acts for _, _, dates in act for d in range(days)],
        "lag_min": [t.get("lag_min", 0) for t in row["prep"]],
        "lag_max": [t.get("lag_max", never) for t in row["prep"]],
        "anchor": [t["id"] for t in row["prep"]].index(row["etch"]["anchor"]) + 1,
        "limit": 24 * row["etch"]["max_days"], "dry": row["etch"]["dry_h"],
        "rain_free": data.rain_free(), "date": data.date,
        "recoat_min": [w[0] for w in coats["recoat"]], "recoat_max": [w[1] for w in coats["recoat"]],
        "may_rework": rework is not None, "rework_dry": rework["dry_h"] if rework else 0,
        "rework_max": rework["max_h"] if rework else 0, "may_reclean": reclean is not None,
        "fill": data.fill(), "attendance": row["cost"]["attendance_cents"],
    }
    return "".join(f"{k} = {listed(v) if isinstance(v, list) else listed([v])[1:-1]};\n" for k, v in fields.items())


def ask(text, goal, fixed):
    """The least value of a goal under the values fixed; None: there is none; '?': not proven."""
    with tempfile.NamedTemporaryFile("w", suffix=".dzn") as file:
        file.write(text + "".join(f"fixed_{k} = {fixed.get(k, -1)};\n" for k in ("finish", "splits", "reworks")))
        file.write(f"goal = {('finish', 'splits', 'reworks', 'cost').index(goal) + 1};\n")
        file.flush()
        run = subprocess.run(["minizinc", "--solver", "gecode", "--time-limit", str(SECONDS * 1000), MODEL,
                              file.name], capture_output=True, text=True)
    if "UNSATISFIABLE" in run.stdout:
        return None
    if "==========" not in run.stdout:
        if run.returncode != 0 or "rror" in run.stderr:
            sys.exit(run.stdout + run.stderr)
        return "?"
    return int(run.stdout.split("value=")[-1].split()[0])


def solved(row):
    text, fixed = instance(row), {}
    for goal in ("finish", "splits", "reworks", "cost"):
        value = ask(text, goal, fixed)
        if value is None and not fixed:
            return {"status": "infeasible"}
        if value is None or value == "?":
            return None
        fixed[goal] = value
    return {"status": "optimal", "refill_slot": fixed["finish"], "split_coats": fixed["splits"],
            "reworks": fixed["reworks"], "labour_cents": fixed["cost"]}


def main():
    program, count = sys.argv[1], int(sys.argv[2])
    seed = int(sys.argv[3]) if len(sys.argv) > 3 else 1
    rows, unproven = [], 0
    for number in range(count):
        one = row(random.Random(seed * 100000 + number), number)
        expected = solved(one)
        if expected is None:
            unproven += 1
            continue
        one["expected"] = expected
        rows.append(one)
    feasible = [r for r in rows if r["expected"]["status"] == "optimal"]
    print(f"{count} rows, {len(rows)} proven: {len(feasible)} with a programme, "
          f"{sum(r['expected']['split_coats'] > 0 for r in feasible)} with split coats, "
          f"{sum(r['expected']['reworks'] > 0 for r in feasible)} with reworks; {unproven} not proven in time")
    with tempfile.NamedTemporaryFile("w", suffix=".json") as file:
        json.dump({"subject": "schedules", "tolerance": 0, "rows": rows}, file)
        file.flush()
        done = subprocess.run([program, file.name], text=True, capture_output=True)
        print(done.stdout.strip()[-3000:])
    sys.exit(done.returncode)


if __name__ == "__main__":
    main()
