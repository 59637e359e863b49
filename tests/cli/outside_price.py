"""The price of three examples worked again from the tape up, by hand formulas and exact decimals.

Usage: outside_price.py BASINWRIGHT SOURCE      nothing to say when every line agrees to the cent

Shares no code with the program: areas from the shapes' own formulas, quantities from the rules of
the trade in docs/method.md, packs by looking at every basket, money in Python's decimal. Only what
the calendar decides, days on site and days of hire, is data: outside_price.csv, read off the
programme.
"""
import csv
import itertools
import json
import math
import subprocess
import sys
from decimal import ROUND_FLOOR, ROUND_HALF_UP, Decimal

PROGRAM, SOURCE = sys.argv[1], sys.argv[2]
CENT = Decimal("0.01")
COSTS = ("materials", "consumables", "protection", "labour", "hire", "disposal", "travel", "fill water")
FOOT, GALLON, POUND = 0.3048, 3.785411784, 0.45359237
QUARTER_ROUND = math.pi / 2 - 2  # what a metre of cove takes off, over its radius


def cents(value):
    return Decimal(value).quantize(CENT, ROUND_HALF_UP)


def plain_pool():
    """9 x 4.5 m, 1.2 m deep up to 3 m, falling to 2.0 m at 7 m; band 0.15 m, cove 0.1 m."""
    floor = 4.5 * (3 + math.hypot(4, 0.8) + 2)
    sides = 3 * 1.05 + 4 * 1.45 + 2 * 1.85
    ends = 4.5 * (1.05 + 1.85)
    cove = QUARTER_ROUND * 0.1 * 27
    return {"walls": 2 * sides + ends + cove / 2, "floor": floor + cove / 2, "edge": 27.0,
            "water": 4.5 * 14 - 0.12 * 40.5 - (1 - math.pi / 4) * 0.01 * 27}


def pool_and_spa():
    """8 x 4 m with corners of 0.8 m, 1.4 m deep, cove 0.08 m; a round spa of 2.2 m, 0.95 m deep."""
    plan = 32 - (4 - math.pi) * 0.64
    edge = 24 - 8 * 0.8 + 2 * math.pi * 0.8
    cove = QUARTER_ROUND * 0.08 * edge
    spa = math.pi * 1.21, math.pi * 2.2
    return {"walls": edge * 1.25 + cove / 2 + spa[1] * 0.85, "floor": plan + cove / 2 + spa[0],
            "edge": edge + spa[1], "loose": 0.06,
            "water": plan * 1.3 - (1 - math.pi / 4) * 0.0064 * edge + spa[0] * 0.85}


def l_shape():
    """36 x 21.5 ft less a corner of 13 x 8 ft at the deep end; in feet. Depth 3.5 ft, 4.5 ft at 20 ft,
    7 ft at 36 ft. Band 0.5 ft, water 1/3 ft below the rim, cove 1/3 ft, 3 - 2 ft2 by name on the walls."""
    def depth(x):
        return 3.5 + x / 20 if x <= 20 else 4.5 + (x - 20) * 2.5 / 16

    def along(a, b):  # of depth over a stretch without a break
        return (depth(a) + depth(b)) / 2 * (b - a)

    slopes = math.hypot(1, 1 / 20), math.hypot(1, 2.5 / 16)
    strips = [(0, 20, 21.5), (20, 23, 21.5), (23, 36, 13.5)]
    floor = sum((b - a) * w * slopes[a >= 20] for a, b, w in strips)
    band = 0.5
    sides = 2 * (along(0, 20) + along(20, 23) + along(23, 36)) - band * 72
    ends = 21.5 * (depth(0) - band) + 13.5 * (depth(36) - band) + 8 * (depth(23) - band)
    edge = 2 * (36 + 21.5)
    cove = QUARTER_ROUND / 3 * edge
    volume = sum((along(a, b) - (b - a) / 3) * w for a, b, w in strips) - (1 - math.pi / 4) / 9 * edge
    cracks, divots = 11 * (0.5 / 12) ** 2, 4 * 0.5 * 0.25 / 12
    return {"walls": sides + ends + cove / 2 + 1, "floor": floor + cove / 2, "edge": edge, "loose": 0.04,
            "filler": (cracks + divots) * FOOT ** 3 * 1000, "repaired": 11 * 4 / 12 + 4 * 0.5,
            "water": volume * FOOT ** 3, "algae": True, "thin": True}


def needs(area, book, kits, coats, shape):
    """Litres and kilograms by item, from the rules of docs/method.md; US books are in ft2 and gallons."""
    if book["currency"] == "USD":
        out = {"hypochlorite": area * 0.012 * GALLON * 12.5 / 125,
               "degreaser": area / 180 * GALLON * 16 / (16 + 640),
               "filler": shape["filler"],
               # Of the wash's chlorine: 1.9 g a gram (AWWA), and a fifth more to carry.
               "thiosulfate": area * 0.012 * GALLON * 0.0125 * 1.9 * 1.2,
               "acid": area * 0.026 * GALLON / 3,
               "bicarbonate": area / 190,
               "thinner": 5 * GALLON / 128 * kits}
    else:
        out = {"degreaser": area / 4.5 * 0.5 / 20.5, "acid": area * 1.05 / 3, "bicarbonate": area * 5 / 90}
    out["coating"] = kits * coats
    return list(out.items()) + new_water(shape["water"], book) + [
        # No acid spent: 363.7 g HCl a litre of 31.45 % (CRC), 84.007 / 36.461 of bicarbonate for each gram.
        ("bicarbonate", out["acid"] * 0.3637 * 84.007 / 36.461 / (0.99 if book["currency"] == "USD" else 1))]


def new_water(water, book):
    """Doses of `water` cubic metres: 3 mg/L of chlorine from 125 g/L, 30 mg/L of stabiliser; in the US job
    also alkalinity from 62 to 100 and hardness from 96 to 200 mg/L by equivalents, 77 % flake, and acid to bring pH 8.1
    down, which is less than the smallest can."""
    doses = [("liquid chlorine", water * 3 / 125), ("stabiliser", water * 0.03)]
    if book["currency"] == "USD":
        doses += [("bicarbonate", water * 38 * 84.007 / 50.044 / 0.99 / 1000),
                  ("calcium chloride", water * 104 * 147.01 / 100.09 / 1000), ("acid", 0.5)]
    return doses


def litres(text):
    value, unit = text.split(" ", 1)
    scale = {"L": 1, "mL": 0.001, "kg": 1, "US gal": GALLON, "US qt": GALLON / 4, "US pt": GALLON / 8, "lb": POUND}
    return float(value) * scale[unit]


def cheapest(need, packs):
    """Every basket up to what one size alone would take."""
    sizes = [litres(p["size"]) for p in packs]
    prices = [Decimal(p["price"]) for p in packs]
    most = [range(math.ceil(need / s) + 1) for s in sizes]
    return min(sum(n * p for n, p in zip(counts, prices)) for counts in itertools.product(*most)
               if sum(n * s for n, s in zip(counts, sizes)) >= need - 1e-6)


def materials(wanted, book, system):
    total = Decimal(0)
    for item, need in wanted:
        name = item if item not in ("coating", "thinner") or not system else (
            system if item == "coating" else system + " thinner")
        packs = book["packs"].get(name) or book["packs"]["hypochlorite"]  # liquid chlorine is the same liquid
        if item == "coating":  # whole kits of one batch, the cheapest that has enough
            total += min(need * Decimal(p["price"]) for p in packs if p.get("stock", need) >= need)
        else:
            total += cheapest(need, packs)
    return total


METRIC_HOURS = {"set_out": 4, "dryness_test": 1, "refit": 3, "fill": 1, "start_up": 3, "handover": 1, "daily_set_up": 0.5}
METRIC_RATES = {"degrease": 12, "loose_paint": 10, "abrade": 3.5, "dust_removal": 60, "pressure_clean": 23, "etch": 10,
                "neutralise": 15, "mask": 20, "vacuum": 40, "coat": 20, "unmask": 40}


def wages(shape, area, coats, people, days, book):
    given = book.get("productivity")
    number = {k: float(v.split()[0]) for k, v in given.items()} if given else METRIC_RATES
    fixed = dict(METRIC_HOURS)
    if given:
        fixed.update({k: number[k] for k in fixed if k != "daily_set_up"})
    hours = [fixed[k] for k in ("set_out", "dryness_test", "refit", "fill", "start_up", "handover")]
    hours += [area / number[k] for k in ("degrease", "abrade", "dust_removal", "pressure_clean", "neutralise", "unmask")]
    hours += [shape["walls"] / number["etch"], shape["floor"] / number["etch"], shape["edge"] / number["mask"]]
    hours += [coats * area / number["vacuum"]] + [area / number["coat"]] * coats
    hours += [fixed["daily_set_up"] * days * people]
    if "loose" in shape:
        hours.append(shape["loose"] * area / number["loose_paint"])
    if "repaired" in shape:
        hours += [shape["repaired"] / number["repair"], area / number["chlorine_wash"]]
    wage = Decimal(book["labour"]["hour"])
    return sum(cents(Decimal(repr(h)) * wage) for h in hours)


def taxes(lines, net, tax):
    """Each rate on its part of the net, which is shared out as the costs are: largest remainder, the general rate first."""
    others = tax.get("other_rates", [])
    costs = [sum(v for k, v in lines.items() if k in COSTS and not any(k.replace(" ", "_") in o["on"] for o in others))]
    costs += [sum(v for k, v in lines.items() if k.replace(" ", "_") in o["on"]) for o in others]
    exact = [net * c / sum(costs) for c in costs]
    parts = [e.quantize(CENT, ROUND_FLOOR) for e in exact]
    for i in sorted(range(len(parts)), key=lambda i: parts[i] - exact[i])[:int((net - sum(parts)) / CENT)]:
        parts[i] += CENT
    rates = [Decimal(r["rate"].split()[0]) / 100 for r in [tax, *others]]
    return sum(cents(p * r) for p, r in zip(parts, rates))


def price(name, shape, data):
    with open(f"{SOURCE}/examples/{name}.json", encoding="utf-8") as file:
        job = json.load(file)
    own = name == "l-shape-us"
    rates = f"{SOURCE}/examples/{name}.rates.json" if own else f"{SOURCE}/src/readers/demonstration_rates.json"
    with open(rates, encoding="utf-8") as file:
        book = json.load(file)
    area = shape["walls"] + shape["floor"]
    coats = job["coating"].get("coats", 2)
    system = job["coating"].get("system")
    kits = math.ceil(area / (255 if own else 22.5))  # the middle of 230..280 ft2, of 20..25 m2
    people = job.get("crew", {}).get("people", 3)
    painters = job.get("crew", {}).get("painters", 2)
    basis = {"job": 1, "day": data["days"], "person": people, "painter": painters, "painted_area": area,
             "abraded_area": area, "etched_area": area, "edge": shape["edge"],
             "coat_session": coats, "kit": kits * coats}

    def counted(rules):
        return sum(math.ceil(r.get("rate", 1) * basis[r["per"]] - 1e-9) * Decimal(r["price"]) for r in rules)

    lines = {"materials": materials(needs(area, book, kits, coats, shape), book, system),
             "consumables": counted(book["consumables"]),
             "protection": counted(book["protection"]),
             "labour": wages(shape, area, coats, people, data["days"], book),
             "hire": sum(Decimal(h["day"]) * data.get(h.get("task", "days"), 0) for h in book["hire"]),
             "disposal": Decimal(book["disposal"]),
             "travel": Decimal(book["overheads"]["travel"]) * data["days"]}
    if own:  # by the hundred cubic feet
        lines["fill water"] = cents(Decimal(repr(shape["water"] / (100 * FOOT ** 3))) * Decimal(job["refill"]["water_price"]))
    over = {k: Decimal(v.split()[0]) / 100 for k, v in book["overheads"].items() if "%" in v}
    lines["contingency"] = cents(sum(lines.values()) * over["contingency"])
    cost = sum(lines.values())
    if "margin" in over:
        lines["margin"] = cents(cost / (1 - over["margin"])) - cost
    else:
        lines["mark-up"] = cents(cost * (1 + over["markup"])) - cost
    net = sum(lines.values())
    tax = taxes(lines, net, book["tax"])
    return {k: v for k, v in lines.items() if v}, net, tax, (rates if own else None)


def program(name, rates):
    command = [PROGRAM, "jobsheet", f"{SOURCE}/examples/{name}.json", "--today", "2027-01-04", "--format", "json", "--quiet"]
    return json.loads(subprocess.run(command + (["--rates", rates] if rates else []), stdout=subprocess.PIPE, check=True).stdout)


def main():
    data = {}
    with open(f"{SOURCE}/tests/cli/outside_price.csv", newline="", encoding="utf-8") as file:
        for row in csv.DictReader(file):
            data.setdefault(row["example"], {})[row["what"]] = int(row["value"])
    wrong = 0
    for name, shape in (("plain-pool", plain_pool()), ("l-shape-us", l_shape()), ("pool-and-spa", pool_and_spa())):
        lines, net, tax, rates = price(name, shape, data[name])
        theirs = program(name, rates)["price"]
        pairs = [(what, amount) for what, amount in lines.items()]
        got = {line["what"]: Decimal(line["amount"]) for line in theirs["lines"]}
        if set(got) != set(lines):
            print(f"{name}: lines {sorted(got)} and {sorted(lines)}")
            wrong += 1
        got.update({"net": Decimal(theirs["net"]), "tax": Decimal(theirs["tax"]), "total": Decimal(theirs["total"]),
                    "stages": sum(Decimal(s["amount"]) for s in theirs["stages"])})
        for what, amount in pairs + [("net", net), ("tax", tax), ("total", net + tax), ("stages", net + tax)]:
            if got.get(what) != amount:
                print(f"{name}: {what} is {got.get(what)}, by hand {amount}")
                wrong += 1
    return 1 if wrong else 0


sys.exit(main())
