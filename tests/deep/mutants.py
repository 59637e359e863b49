#!/usr/bin/env python3
"""Changes one number, sign or comparison at a time in the calculation rooms and runs the fast tests.

    mutants.py SOURCE BUILD COUNT [SEED]

SOURCE is a clean clone that nobody else works in, BUILD its build folder (Debug saves time). A mutant
is killed when the room's own tests, or those of the whole thread, fail or hang. Each one that
survives is printed with its place and change; docs/reliability.md answers them.
"""
import pathlib
import random
import re
import subprocess
import sys

ROOMS = ("money units dates trace shell materials weather preparation coverage chemistry purchase schedule "
         "sequence quote odds sitelog job").split()
# The room's own tests, then the whole thread's; each in seconds before it counts as hung.
THREAD = (("golden", 120), ("properties", 240))
CHANGES = [
    (r" < ", " <= "), (r" > ", " >= "), (r" <= ", " < "), (r" >= ", " > "), (r" == ", " != "), (r" != ", " == "),
    (r"(?<=[\w\)\]]) \+ (?=[\w\(])", " - "), (r"(?<=[\w\)\]]) - (?=[\w\(])", " + "),
    (r"(?<=[\w\)\]]) \* (?=[\w\(])", " / "), (r"(?<=[\w\)\]]) / (?=[\w\(])", " * "),
    (r"&&", "||"), (r"\|\|", "&&"),
    (r"(?<![\w.\"'])(\d+\.\d+)(?![\w.])", lambda m: repr(float(m.group(1)) * 1.25 or 0.25)),
    (r"(?<![\w.\"'{\[])([1-9]\d?)(?![\w.'\"\]])", lambda m: str(int(m.group(1)) + 1)),
]
SKIP = re.compile(r"^\s*(//|#|\*|template|case |using |namespace)|static_assert|std::string|\"|operator|<=>|throw ")


def places(source):
    found = []
    for room in ROOMS:
        for path in sorted((source / "src" / room).glob("*.cpp")):
            for number, line in enumerate(path.read_text(encoding="utf-8").split("\n")):
                if SKIP.search(line):
                    continue
                code = line.split("//")[0]
                for pattern, new in CHANGES:
                    for match in re.finditer(pattern, code):
                        text = new(match) if callable(new) else new
                        found.append((room, path, number, match.span(), text))
    return found


def build(folder, target):
    return subprocess.run(["cmake", "--build", folder, "-j2", "--target", target], stdout=subprocess.DEVNULL,
                          stderr=subprocess.DEVNULL, check=False).returncode == 0


def passes(program, seconds):
    try:
        return subprocess.run([program, "-a"], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, timeout=seconds,
                              check=False).returncode == 0
    except subprocess.TimeoutExpired:
        return False


def verdict(folder, room):
    """Killed by which tests; nothing when it survives; False when it is no program."""
    own = folder / f"tests/test_{room}"
    if own.exists():
        if not build(folder, f"test_{room}"):
            return False
        if not passes(own, 180):
            return room
    for theme, seconds in THREAD:
        if not build(folder, f"test_{theme}"):
            return False
        if not passes(folder / f"tests/test_{theme}", seconds):
            return theme
    return None


def main():
    source, folder, count = pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2]), int(sys.argv[3])
    dice = random.Random(int(sys.argv[4]) if len(sys.argv) > 4 else 1)
    candidates = places(source)
    dice.shuffle(candidates)
    print(f"{len(candidates)} places in {len(ROOMS)} rooms", flush=True)
    made = killed = 0
    for room, path, number, (start, end), text in candidates:
        if made == count:
            break
        before = path.read_text(encoding="utf-8")
        lines = before.split("\n")
        line = lines[number]
        lines[number] = line[:start] + text + line[end:]
        path.write_text("\n".join(lines), encoding="utf-8")
        try:
            by = verdict(folder, room)
        finally:
            path.write_text(before, encoding="utf-8")
        if by is False:
            continue  # Does not compile: not a mutant.
        made += 1
        killed += by is not None
        if by is None:
            print(f"SURVIVES {path.relative_to(source)}:{number + 1}: {line.strip()}  ->  {lines[number].strip()}", flush=True)
        if made % 20 == 0:
            print(f"{killed} of {made} killed", flush=True)
    print(f"{killed} of {made} killed", flush=True)


main()
