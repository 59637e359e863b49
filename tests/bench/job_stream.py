"""Made-up job files, one a line: what the benches and long runs feed to `batch`.

    job_stream.py COUNT [SEED] >jobs.ndjson

Ordinary domestic pools: plan and depths to five centimetres, two or three coats, a crew of three or
four, a start within a fortnight, some with cracks, some on bare render. The same count and seed give
the same bytes.
"""
import json
import random
import sys


TESTED = {"coating": "epoxy", "acetone_test": "untouched", "tested_on": "2027-04-12",
          "places": "floor, deep wall, second step, old patch"}
BARE = {"coating": "none"}


def metres(dice, low, high):
    return f"{dice.randrange(round(low * 20), round(high * 20) + 1) / 20:.2f} m"


def job(dice, number):
    shallow, deep = metres(dice, 1.0, 1.4), metres(dice, 1.6, 2.4)
    length = dice.randrange(120, 241) / 20
    out = {
        "basinwright": 1, "units": "metric",
        "job": {"number": f"N-{number}", "client": {"name": f"Household {number}", "address": f"{number} Sample Lane"},
                "contractor": {"name": "Example Pool Painting", "address": "3 Yard Lane"},
                "start": f"2027-05-{dice.randrange(3, 17):02}"},
        "site": {"tap_flow": f"{dice.choice([15, 20, 25, 30])} L/min",
                 "mean_temperatures": {"5": "16 C", "6": "19 C"}},
        "pool": {"outline": {"kind": "rectangle", "length": f"{length:.2f} m", "width": metres(dice, 3, 5.5)},
                 "floor": {"kind": "breaks", "points": [[f"{length / 3:.2f} m", shallow],
                                                        [f"{length * 2 / 3:.2f} m", deep]]},
                 "rim_to_paint": "150 mm", "rim_to_water": "120 mm", "cove_radius": "100 mm"},
        "surfaces": [dict({"where": "all", "substrate": "render"}, **dice.choice([TESTED, TESTED, BARE]))],
        "condition": {"oils": dice.choice(["normal", "heavy"]), "lead_test": "clear"},
        "coating": {"coats": dice.choice([2, 2, 3]), "colour": "pale blue"},
        "crew": {"people": dice.choice([3, 3, 4]), "painters": 2, "hours": ["07:00", "16:00"]},
    }
    if dice.random() < 0.2:
        out["condition"]["cracks"] = [{"width": "3 mm", "length": metres(dice, 0.5, 3)}]
    return out


def write(count, seed, out):
    dice = random.Random(seed)
    for number in range(1, count + 1):
        out.write(json.dumps(job(dice, number)) + "\n")


if __name__ == "__main__":
    write(int(sys.argv[1]), int(sys.argv[2]) if len(sys.argv) > 2 else 1, sys.stdout)
