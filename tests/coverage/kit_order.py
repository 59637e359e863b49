"""Chance that a coat takes more kits than there are, worked exactly with Python's fractions.

Usage: kit_order.py CASES   prints lines: kits cover_low cover_high spread areas... = chance

The area is spread evenly over its range and so is the cover. The chance is the share of that
rectangle above the line area = kits x cover, found by clipping the rectangle as a polygon
(Sutherland-Hodgman) and taking the area of what is left (shoelace): no closed form. Areas that are
painted apart are looked at one kit at a time: the kits needed for all of them at a stretch of the
areas grow one by one, and the line is where they first exceed the kits there are.
"""
import random
import sys
from fractions import Fraction

random.seed(20270411)


def clip(polygon, inside):
    """Keeps the side of the polygon where `inside` (a linear function) is positive."""
    out = []
    for (here, there) in zip(polygon, polygon[1:] + polygon[:1]):
        a, b = inside(here), inside(there)
        if a >= 0:
            out.append(here)
        if (a > 0) != (b > 0) and a != b:
            t = a / (a - b)
            out.append((here[0] + t * (there[0] - here[0]), here[1] + t * (there[1] - here[1])))
    return out


def size(polygon):
    double = sum(p[0] * q[1] - q[0] * p[1] for p, q in zip(polygon, polygon[1:] + polygon[:1]))
    return abs(double) / 2


def reach(areas, kits):
    """The largest stretch of the areas, over the cover of a kit, that the kits still do."""
    steps = sorted({Fraction(n) / a for a in areas for n in range(kits + 1)})
    best = Fraction(0)
    for step in steps:  # at a step each area takes exactly ceil(area x step)
        if sum(-((-a * step) // 1) for a in areas) <= kits:
            best = step
    return best


def chance(kits, low, high, spread, areas):
    middle = sum(areas)
    line = reach(areas, kits) * middle  # short when area > line x cover
    box = [(middle - spread, low), (middle + spread, low), (middle + spread, high), (middle - spread, high)]
    return size(clip(box, lambda p: p[0] - line * p[1])) / size(box)


for _ in range(int(sys.argv[1])):
    areas = [Fraction(random.randrange(50, 900), 10) for _ in range(random.choice([1, 1, 2, 3, 5]))]
    low = Fraction(random.randrange(150, 260), 10)
    high = low + Fraction(random.randrange(1, 90), 10)
    spread = sum(areas) * Fraction(random.randrange(1, 60), 1000)
    likely = sum(-(-a * 2 // (low + high)) for a in areas)
    kits = max(len(areas), int(likely) + random.randrange(-2, 3))
    value = chance(kits, low, high, spread, areas)
    print(kits, *(repr(float(x)) for x in [low, high, spread, *areas]), "=", repr(float(value)))
