"""The freeform example by a million points: the outline of its tape measurements walked in small straight steps.

Nothing of the project is used: arcs by bulge = tan(angle / 4), depths by straight lines between the floor's points.
Prints perimeter, plan, sloped floor, walls below the band, and water to its level before the cove, in metres.
"""
import math

POINTS = [(0, 0, 0), (6, 0, 0.3), (9, 3, 0), (9, 6, 0.5), (5, 8, -0.2), (1.5, 6.5, 0.2), (-0.5, 3, 0)]
FLOOR = [(1, 1.1), (4.5, 1.5), (7.5, 2.2)]  # along y
BAND, LEVEL, STEPS = 0.2, 0.15, 150_000


def depth(y):
    if y <= FLOOR[0][0]:
        return FLOOR[0][1]
    for (a, da), (b, db) in zip(FLOOR, FLOOR[1:]):
        if y <= b:
            return da + (db - da) * (y - a) / (b - a)
    return FLOOR[-1][1]


def slant(y):
    for (a, da), (b, db) in zip(FLOOR, FLOOR[1:]):
        if a < y < b:
            return math.hypot(1, (db - da) / (b - a))
    return 1.0


def walk():
    """Points of the outline, one small step after the other."""
    for i, (x0, y0, bulge) in enumerate(POINTS):
        x1, y1, _ = POINTS[(i + 1) % len(POINTS)]
        chord = math.hypot(x1 - x0, y1 - y0)
        for k in range(STEPS):
            t = k / STEPS
            if bulge == 0:
                yield x0 + t * (x1 - x0), y0 + t * (y1 - y0)
                continue
            angle = 4 * math.atan(bulge)
            radius = chord / (2 * math.sin(angle / 2))
            # The centre lies to the left of a counter-clockwise arc's chord.
            away = radius * math.cos(angle / 2)
            cx = (x0 + x1) / 2 - away * (y1 - y0) / chord
            cy = (y0 + y1) / 2 + away * (x1 - x0) / chord
            turn = math.atan2(y0 - cy, x0 - cx) + t * angle
            yield cx + abs(radius) * math.cos(turn), cy + abs(radius) * math.sin(turn)


perimeter = plan = floor = walls = water = 0.0
points = list(walk())
for (x0, y0), (x1, y1) in zip(points, points[1:] + points[:1]):
    step = math.hypot(x1 - x0, y1 - y0)
    middle = (y0 + y1) / 2
    perimeter += step
    walls += step * (depth(middle) - BAND)
    # Green's theorem with x dy: a strip across the pool at this y.
    strip = (x0 + x1) / 2 * (y1 - y0)
    plan += strip
    floor += strip * slant(middle)
    water += strip * (depth(middle) - LEVEL)
print(f"{perimeter:.5f} {plan:.5f} {floor:.5f} {walls:.5f} {water:.5f}")
