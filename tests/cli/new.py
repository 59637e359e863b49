"""Starter job files. Expected areas and volumes: plane geometry, written here by hand.
Usage: new.py PROGRAM SOURCE"""
import json, math, os, pty, subprocess, sys, tempfile

program = os.path.abspath(sys.argv[1])
os.chdir(tempfile.mkdtemp())
failed = []


def check(truth, words):
    if not truth:
        failed.append(words)


def run(*words, status=0):
    done = subprocess.run([program, *words], capture_output=True, text=True, stdin=subprocess.DEVNULL, timeout=120)
    check(done.returncode == status, f"status {done.returncode}, not {status}: {words} {done.stderr[:300]}")
    return done


def kidney_area(a, b, c, outer, inner):
    # Two end circles and two arcs that touch them: the polygon of the four centres plus and minus sectors.
    def meet(ra, rb, sign):
        x = (c * c + ra * ra - rb * rb) / (2 * c)
        return x, sign * math.sqrt(ra * ra - x * x)
    ox, oy = meet(outer - a, outer - b, -1)  # Outer arc: above, its centre below.
    ix, iy = meet(inner + a, inner + b, -1)  # Waist arc: below, its centre below.
    points = []
    def arc(cx, cy, r, t0, t1):
        n = 20000
        points.extend((cx + r * math.cos(t0 + (t1 - t0) * k / n), cy + r * math.sin(t0 + (t1 - t0) * k / n))
                      for k in range(n + 1))
    to = lambda x0, y0, x1, y1: math.atan2(y1 - y0, x1 - x0)
    up_a, up_b = to(ox, oy, 0, 0), to(ox, oy, c, 0)
    arc(ox, oy, outer, up_b, up_a)
    down_a, down_b = to(0, 0, ix, iy), to(c, 0, ix, iy)
    arc(0, 0, a, up_a, down_a + 2 * math.pi)
    arc(ix, iy, inner, to(ix, iy, 0, 0), to(ix, iy, c, 0))
    arc(c, 0, b, down_b, up_b)
    return 0.5 * sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in zip(points, points[1:] + points[:1]))


POOLS = {
    "rectangle": ({"length": 9.2, "width": 4.5}, 9.2 * 4.5),
    "rounded_rectangle": ({"length": 9, "width": 4, "corner-radius": 1}, 36 - (4 - math.pi)),
    "l_shape": ({"length": 10, "width": 6, "notch-length": 4, "notch-width": 3}, 60 - 12),
    "circle": ({"diameter": 5}, math.pi * 6.25),
    "stadium": ({"length": 10, "width": 4}, 6 * 4 + math.pi * 4),
    "ellipse": ({"length": 9, "width": 5}, math.pi * 4.5 * 2.5),
    "kidney": ({"shallow-radius": 2, "deep-radius": 2.5, "centres": 4.5, "outer-radius": 8, "inner-radius": 3},
               kidney_area(2, 2.5, 4.5, 8, 3)),
}
FOOT = 0.3048


def take_off(name):
    return json.loads(run("takeoff", name, "--format", "json").stdout)["takeoff"]


def outlines():
    symmetric = {"rectangle", "rounded_rectangle", "circle", "stadium", "ellipse"}
    for outline, (sizes, area) in POOLS.items():
        for units, scale, depths in (("metric", 1.0, ("0.9 m", "1.8 m")), ("us", FOOT, ("3 ft", "6 ft"))):
            name = f"{outline}-{units}.json"
            words = [w for key, v in sizes.items() for w in ("--" + key, str(v))]
            run("new", "--outline", outline, *words, "--units", units, "--shallow", depths[0], "--deep", depths[1],
                "--output", name)
            done = run("check", name)
            check(done.stdout == "" or "warning" in done.stdout, f"{name}: {done.stdout}")
            found = take_off(name)
            want = area * scale * scale
            check(abs(found["plan_area_m2"] - want) < 2e-4 * want, f"{name}: {found['plan_area_m2']}, not {want}")
            if outline in symmetric:  # An even slope: the mean depth of a symmetric plan is that of its middle.
                mean = (1.35 if units == "metric" else 4.5 * FOOT) - 0.1
                volume = found["water_volume_m3"]
                check(abs(volume - want * mean) < 1e-3 * want, f"{name}: {volume} m3, not {want * mean}")
    for name in ("rectangle-us.json", "kidney-metric.json"):
        run("jobsheet", name, "--today", "2027-01-04")


def answers_stand_where_they_belong():
    run("new", "--length", "30 ft 6 in", "--width", "15", "--units", "us", "--depth", "5 ft", "--tile-band", "6 in",
        "--surface", "other", "--acetone-test", "softened", "--lead-test", "clear", "--coats", "3", "--number", "Q-7",
        "--client", 'A "B" C', "--address", "9 Sample Lane", "--contractor", "Example", "--start", "2027-05-03",
        "--output", "all.json")
    job = json.load(open("all.json"))
    check(list(job) == ["basinwright", "units", "job", "site", "pool", "surfaces", "condition", "coating", "terms"],
          f"order: {list(job)}")
    check(job["pool"] == {"outline": {"kind": "rectangle", "length": "30 ft 6 in", "width": 15},
                          "floor": {"kind": "constant", "depth": "5 ft"}, "rim_to_paint": "6 in"}, str(job["pool"]))
    check(job["job"]["client"] == {"name": 'A "B" C', "address": "9 Sample Lane"}, str(job["job"]))
    check(job["surfaces"][0]["coating"] == "other" and job["coating"]["coats"] == 3, "surface or coats lost")
    first = next(iter(json.loads(open(sys.argv[2] + "/src/readers/demonstration_rates.json").read())["coating_systems"]))
    run("new", "--length", "8 m", "--width", "4 m", "--depth", "1.4 m", "--coating", first, "--output", "named.json")
    check(json.load(open("named.json"))["coating"]["system"] == first, "coating system lost")


def refusals():
    def says(words, *texts):
        done = run("new", *words, status=2)
        for text in texts:
            check(text in done.stderr, f"{words}: not said: {text}; {done.stderr}")
        check(done.stdout == "", "something on standard output")
    says([], "--length, --width", "--depth")
    says(["--length", "9 m", "--width", "4 m"], "--depth")
    says(["--outline", "circle", "--length", "9 m", "--depth", "1 m"], "--length is no measurement", "--diameter")
    says(["--outline", "circel", "--diameter", "9 m", "--depth", "1 m"], 'Did you mean "circle"?')
    says(["--length", "9,2 m", "--width", "4 m", "--depth", "1 m"], "--length:", "comma")
    says(["--length", "9 metrs", "--width", "4 m", "--depth", "1 m"], "--length:", "did you mean metre")
    says(["--length", "9", "--width", "4", "--depth", "1", "--shallow", "1"], "--depth is for a level floor")
    says(["--length", "9", "--width", "4", "--depth", "1", "--coating", "no such thing"], "--coating:", "It has:")
    says(["--length", "9", "--width", "4", "--depth", "1", "--coats", "two"], "--coats:")
    open("mine.json", "w").write("mine")
    good = ["--length", "9", "--width", "4", "--depth", "1", "--output"]
    says(good + ["mine.json"], "--force")
    check(open("mine.json").read() == "mine", "written over without being asked")
    run("new", *good, "mine.json", "--force")
    check("rectangle" in open("mine.json").read(), "--force did not write")
    run("new", *good, "missing/mine.json", status=4)
    check(json.loads(run("new", *good, "-").stdout)["pool"]["outline"]["length"] == 9, "standard output")
    check(not [f for f in os.listdir(".") if "XXX" in f or f.startswith("mine.json.")], "something half-written")


def on_a_terminal():
    """The questions, with two answers that are taken only when they are right."""
    leader, follower = pty.openpty()
    done = subprocess.Popen([program, "new", "--units", "metric"], stdin=follower, stdout=follower, stderr=follower)
    os.close(follower)
    # Outline (a slip, then right), length (a slip, then right), width (nothing, then right), shallow, deep, then Enter to the end.
    lines = ["rectangel", "rectangle", "9,2 m", "9.2 m", "", "4.5 m", "0.9 m", "1.8 m"] + [""] * 10 + ["", "asked.json"]
    os.write(leader, ("\n".join(lines) + "\n").encode())
    said = b""
    try:
        while chunk := os.read(leader, 4096):
            said += chunk
    except OSError:
        pass  # The other side has closed.
    check(done.wait(60) == 0, f"on a terminal: {said.decode()}")
    check(b'Did you mean "rectangle"?' in said and b"comma" in said, f"slips are not told: {said.decode()}")
    check(b"an estimate will do" in said, f"no answer is not told: {said.decode()}")
    check(os.path.exists("asked.json"), f"no file: {os.listdir('.')} {said.decode()}")
    check(json.load(open("asked.json"))["pool"]["floor"]["points"] == [["0 m", "0.9 m"], ["9.2 m", "1.8 m"]], "floor")
    run("check", "asked.json")


outlines()
answers_stand_where_they_belong()
refusals()
on_a_terminal()
print("\n".join(failed))
sys.exit(bool(failed))
