"""Take-offs of the reference shells against an outside geometry library (shapely, over GEOS).

Outlines become polygons of many chords, floors are cut with the library's overlay and triangulated,
walls and risers are sampled. Nothing here comes from the project but the numbers it prints; the
outline is the row's own `outline_path`, not the measurements that the program reads.

Discretisation: an arc of radius R and angle t in chords of angle d, a full turn over CHORDS, is out by
R t d^2 / 24 in length and R^2 t d^2 / 12 in area; half as much again is allowed, and for a volume so
much times the deepest depth. Vertical faces are sampled every STEP metres, so each place where the
depth jumps is out by at most STEP times the deepest depth. What stands on either side of a line is
looked up NUDGE away from it, more than any chord lies off its arc.
"""
import bisect
import json
import math
import subprocess
import sys

from shapely.geometry import LineString, Point, Polygon, box
from shapely.ops import triangulate, unary_union
from shapely.prepared import prep

CHORDS = 720
STEP = 0.01
NUDGE = 1e-4
TURN = 2 * math.pi / CHORDS


def arc(p, q, bulge):
    """Points from p up to (not with) q."""
    if abs(bulge) < 1e-12:
        return [p]
    angle = 4 * math.atan(bulge)
    cx = (p[0] + q[0]) / 2 - (q[1] - p[1]) * (1 - bulge * bulge) / (4 * bulge)
    cy = (p[1] + q[1]) / 2 + (q[0] - p[0]) * (1 - bulge * bulge) / (4 * bulge)
    radius = math.hypot(p[0] - cx, p[1] - cy)
    start = math.atan2(p[1] - cy, p[0] - cx)
    count = max(1, math.ceil(abs(angle) / TURN))
    turn = [start + angle * i / count for i in range(count)]
    return [(cx + radius * math.cos(t), cy + radius * math.sin(t)) for t in turn]


def ring(path):
    points = []
    for i, (x, y, *bulge) in enumerate(path):
        after = path[(i + 1) % len(path)]
        points += arc((x, y), (after[0], after[1]), bulge[0] if bulge else 0.0)
    return points


def outline_of(path):
    if isinstance(path, dict):
        x, y, a, b = path["ellipse"]
        steps = [TURN * i for i in range(CHORDS)]
        return Polygon([(x + a * math.cos(t), y + b * math.sin(t)) for t in steps])
    return Polygon(ring(path))


def arcs_of(path):
    """(radius, angle) of every arc; an ellipse counts as its larger circle."""
    if isinstance(path, dict): return [(max(path["ellipse"][2:]), 2 * math.pi)]
    found = []
    for i, (x, y, *bulge) in enumerate(path):
        after = path[(i + 1) % len(path)]
        b = abs(bulge[0]) if bulge else 0.0
        if b == 0.0: continue
        chord = math.hypot(after[0] - x, after[1] - y)
        found.append((chord * (1 + b * b) / (4 * b), 4 * math.atan(b)))
    return found


def allowed_of(row, deepest):
    """(area, length, sampled) that the discretisation may be out by."""
    features = row["pool"].get("features", [])
    arcs = arcs_of(row["outline_path"])
    treads = 0
    for f in features:
        treads += len(f.get("depths", [f.get("depth")]))
        arcs += [(r, 2 * math.pi) for r in f.get("radii", [])]
        arcs += arcs_of(f["path"]) if "path" in f else []
    area = 1.5 * sum(r * r * t for r, t in arcs) * TURN**2 / 12 + 1e-9
    length = 1.5 * sum(r * t for r, t in arcs) * TURN**2 / 24 + 1e-9
    return area, length, STEP * deepest * (2 + 2 * treads)


class Floor:
    """Cells (polygon, depth as c + gx x + gy y) and vertical drops (line, height)."""

    def __init__(self, floor):
        self.cells, self.drops = [], []
        far = 1e3
        whole = box(-far, -far, far, far)
        kind = floor["kind"]
        if kind == "constant":
            self.cells = [(whole, (floor["depth"], 0.0, 0.0))]
        elif kind == "breaks":
            self.by_breaks(floor, far)
        elif kind == "hopper":
            self.by_hopper(floor, whole)
        else:
            self.by_triangles(floor)
        self.quick = [(prep(cell), plane) for cell, plane in self.cells]

    def by_breaks(self, floor, far):
        turn = math.radians(floor.get("axis_deg", 0.0))
        u = (math.cos(turn), math.sin(turn))
        ox, oy = floor.get("origin", (0.0, 0.0))

        def strip(s0, s1):
            at = lambda s, t: (ox + s * u[0] - t * u[1], oy + s * u[1] + t * u[0])
            return Polygon([at(s0, -far), at(s1, -far), at(s1, far), at(s0, far)])

        def plane(s0, d0, slope):
            gx, gy = slope * u[0], slope * u[1]
            return (d0 - slope * s0 - gx * ox - gy * oy, gx, gy)

        points = floor["points"]
        self.cells.append((strip(-far, points[0][0]), (points[0][1], 0.0, 0.0)))
        for (s0, d0), (s1, d1) in zip(points, points[1:]):
            if s1 == s0:
                line = LineString(list(strip(s0, s0 + 1).exterior.coords)[3:5])
                self.drops.append((line, abs(d1 - d0)))
            else:
                self.cells.append((strip(s0, s1), plane(s0, d0, (d1 - d0) / (s1 - s0))))
        self.cells.append((strip(points[-1][0], far), (points[-1][1], 0.0, 0.0)))

    def by_hopper(self, floor, whole):
        base, depth = floor["base_depth"], floor["depth"]
        a, b, c, d = floor["outer"]
        e, f, g, h = floor["inner"]
        fall = depth - base
        self.cells = [(whole.difference(box(a, b, c, d)), (base, 0.0, 0.0)),
                      (box(e, f, g, h), (depth, 0.0, 0.0))]

        def face(corners, at, run, axis):
            slope = fall / run
            plane = (base - slope * at, slope if axis == 0 else 0.0, slope if axis else 0.0)
            self.cells.append((Polygon(corners), plane))

        if e > a: face([(a, b), (e, f), (e, h), (a, d)], a, e - a, 0)
        if c > g: face([(c, b), (c, d), (g, h), (g, f)], c, g - c, 0)
        if f > b: face([(a, b), (c, b), (g, f), (e, f)], b, f - b, 1)
        if d > h: face([(a, d), (e, h), (g, h), (c, d)], d, h - d, 1)

    def by_triangles(self, floor):
        points = floor["points"]
        for triangle in floor["triangles"]:
            (x0, y0, d0), (x1, y1, d1), (x2, y2, d2) = (points[i] for i in triangle)
            twice = (x1 - x0) * (y2 - y0) - (x2 - x0) * (y1 - y0)
            gx = ((d1 - d0) * (y2 - y0) - (d2 - d0) * (y1 - y0)) / twice
            gy = ((x1 - x0) * (d2 - d0) - (x2 - x0) * (d1 - d0)) / twice
            cell = Polygon([(x0, y0), (x1, y1), (x2, y2)])
            self.cells.append((cell, (d0 - gx * x0 - gy * y0, gx, gy)))

    def depth(self, x, y):
        p = Point(x, y)
        for cell, (c, gx, gy) in self.quick:
            if cell.intersects(p): return c + gx * x + gy * y
        # Just past a corner of the triangles: the nearest cell goes on.
        _, (c, gx, gy) = min(self.cells, key=lambda cell: cell[0].distance(p))
        return c + gx * x + gy * y


def footprints_of(features, path, outline):
    """(polygon, depth) of every tread, bench and block."""
    found = []
    for f in features:
        kind = f["kind"]
        if kind in ("straight_steps", "bench", "round_steps"):
            (x0, y0, *_), (x1, y1, *_) = path[f["wall"]], path[(f["wall"] + 1) % len(path)]
            run = math.hypot(x1 - x0, y1 - y0)
            u = ((x1 - x0) / run, (y1 - y0) / run)
            at = lambda s, t: (x0 + s * u[0] - t * u[1], y0 + s * u[1] + t * u[0])

            def reach(s0, s1, t):
                return Polygon([at(s0, 0), at(s1, 0), at(s1, t), at(s0, t)])

        if kind == "straight_steps":
            out = 0.0
            for tread, depth in zip(f["treads"], f["depths"]):
                out += tread
                found.append((reach(f["from"], f["from"] + f["width"], out), depth))
        elif kind == "bench":
            found.append((reach(f["from"], f["from"] + f["length"], f["width"]), f["depth"]))
        elif kind in ("round_steps", "corner_steps"):
            centre = at(f["at"], 0) if kind == "round_steps" else path[f["corner"]][:2]
            for radius, depth in zip(f["radii"], f["depths"]):
                disc = Point(centre).buffer(radius, resolution=CHORDS // 4)
                found.append((disc.intersection(outline), depth))
        else:
            found.append((Polygon(ring(f["path"])), f["depth"]))
    return found


def polygons(shape):
    if shape.is_empty: return []
    if shape.geom_type == "Polygon": return [shape]
    return [p for g in getattr(shape, "geoms", []) for p in polygons(g)]


def triangles_of(polygon):
    """Delaunay triangles of the vertices, cut off at the polygon."""
    inside = prep(polygon)
    for triangle in triangulate(polygon):
        if inside.contains(triangle):
            yield triangle
        else:
            yield from polygons(triangle.intersection(polygon))


def lifted(points, plane):
    """Area in space of a plane polygon over its plan, by Newell's rule."""
    c, gx, gy = plane
    p = [(x, y, c + gx * x + gy * y) for x, y in points]
    n = [0.0, 0.0, 0.0]
    for (ax, ay, az), (bx, by, bz) in zip(p, p[1:] + p[:1]):
        n[0] += (ay - by) * (az + bz)
        n[1] += (az - bz) * (ax + bx)
        n[2] += (ax - bx) * (ay + by)
    return 0.5 * math.sqrt(sum(v * v for v in n))


def over(shape, plane, water):
    """(area in space, volume below the water line) of a floor plane over a plan."""
    area = volume = 0.0
    c, gx, gy = plane
    for polygon in polygons(shape):
        for piece in triangles_of(polygon):
            points = list(piece.exterior.coords)[:-1]
            area += lifted(points, plane)
            middle = piece.centroid
            volume += piece.area * (c + gx * middle.x + gy * middle.y - water)
    return area, volume


def samples(points):
    """(middle, length, unit normal to the left) along a closed ring."""
    for (x0, y0), (x1, y1) in zip(points, points[1:]):
        run = math.hypot(x1 - x0, y1 - y0)
        if run == 0.0: continue
        n = (-(y1 - y0) / run, (x1 - x0) / run)
        count = max(1, math.ceil(run / STEP))
        for i in range(count):
            t = (i + 0.5) / count
            yield (x0 + t * (x1 - x0), y0 + t * (y1 - y0)), run / count, n


def measure(row):
    pool = row["pool"]
    outline = outline_of(row["outline_path"])
    if not outline.exterior.is_ccw: outline = Polygon(list(outline.exterior.coords)[::-1])
    floor = Floor(pool["floor"])
    blocks = sorted(footprints_of(pool.get("features", []), row["outline_path"], outline),
                    key=lambda b: b[1])
    quick = [(prep(b), d) for b, d in blocks]
    band, water = pool.get("rim_to_paint", 0.0), pool.get("rim_to_water", 0.0)

    def top(x, y):
        p = Point(x, y)
        return next((d for b, d in quick if b.contains(p)), None)

    def depth(x, y):
        tread = top(x, y)
        return floor.depth(x, y) if tread is None else tread

    out = dict.fromkeys(("floor_area_m2", "tread_area_m2", "water_volume_before_cove_m3",
                         "wall_area_m2", "riser_area_m2", "cove_length_m"), 0.0)
    covered = unary_union([b for b, _ in blocks]) if blocks else Polygon()
    bare = outline.difference(covered)
    for cell, plane in floor.cells:
        area, volume = over(bare.intersection(cell), plane, water)
        out["floor_area_m2"] += area
        out["water_volume_before_cove_m3"] += volume
    for line, height in floor.drops:
        out["floor_area_m2"] += height * line.intersection(bare).length
    above = Polygon()
    for block, d in blocks:
        area, volume = over(block.difference(above), (d, 0.0, 0.0), water)
        out["tread_area_m2"] += area
        out["water_volume_before_cove_m3"] += volume
        above = above.union(block)
    for (x, y), run, (nx, ny) in samples(list(outline.exterior.coords)):
        inside = (x + NUDGE * nx, y + NUDGE * ny)
        out["wall_area_m2"] += run * (depth(*inside) - band)
        if top(*inside) is None: out["cove_length_m"] += run
    pool_area = prep(outline)
    edges = []  # each piece of an edge once, though nested steps share their sides
    for block, _ in blocks:
        edges.append(LineString(block.exterior.coords))
    for line in polygons_lines(unary_union(edges)) if edges else []:
        for (x, y), run, (nx, ny) in samples(list(line.coords)):
            a, b = (x + NUDGE * nx, y + NUDGE * ny), (x - NUDGE * nx, y - NUDGE * ny)
            if pool_area.contains(Point(a)) and pool_area.contains(Point(b)):
                out["riser_area_m2"] += run * abs(depth(*a) - depth(*b))
    out["plan_area_m2"] = outline.area
    out["perimeter_m"] = outline.exterior.length
    return out


def polygons_lines(shape):
    return [shape] if shape.geom_type == "LineString" else list(shape.geoms)


def taken_off(program, row):
    job = json.dumps({"pool": row["pool"]})
    result = subprocess.run([program, "takeoff", "-", "--format", "json", "--quiet"], input=job,
                            capture_output=True, text=True, timeout=60, check=False)
    if result.returncode != 0: raise SystemExit(f"{row['name']}: {result.stderr}")
    return json.loads(result.stdout)["takeoff"]


def main(program, reference):
    with open(reference, encoding="utf-8") as file:
        rows = [row for row in json.load(file)["rows"] if "outline_path" in row]
    missed = 0
    worst = {}
    for row in rows:
        ours = taken_off(program, row)
        deepest = ours["deepest_m"]
        area, length, sampled = allowed_of(row, deepest)
        for key, value in measure(row).items():
            size = max(1.0, abs(value))
            allowed = 1.2 * area  # floors slope, at most by a tenth or two
            if key == "perimeter_m": allowed = length
            if key == "water_volume_before_cove_m3": allowed = area * deepest
            if key in ("wall_area_m2", "riser_area_m2", "cove_length_m"): allowed = sampled
            off = abs(ours[key] - value)
            worst[key] = max(worst.get(key, 0.0), off / size)
            if off > allowed:
                missed += 1
                print(f"{row['name']} {key}: {ours[key]} against {value}, {off:.3g} off, {allowed:.3g} allowed")
    print(f"{len(rows)} shells, {missed} figures missed; farthest, as a share: "
          + ", ".join(f"{key} {share:.1e}" for key, share in worst.items()))
    return 1 if missed or len(rows) < 12 else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], sys.argv[2]))
