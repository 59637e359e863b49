"""Random purchases of whole packs, solved by the integer-programming solver of GLPK.

Usage: solver.py CASES [GLPSOL]   prints lines: mode needs | id:size:price:stock:batch ... = answer

The answer is "cost size packs", or "none" where the stock does not reach. Cost is minimised first,
then with it the size, then with both the number of packs: three models a case, each whole numbers
throughout. Packs of one batch are bought batch by batch and the best kept.
"""
import os
import random
import subprocess
import sys
import tempfile

random.seed(20270519)
GLPSOL = sys.argv[2] if len(sys.argv) > 2 else "glpsol"
WORK = tempfile.mkdtemp(prefix="packs-")


def terms(parts):
    return " + ".join(f"{c} {name}" for c, name in parts if c) or "0 x0_0"


def model(objective, needs, packs, fixed):
    names = [[f"x{j}_{k}" for k in range(len(packs))] for j in range(len(needs))]

    def total(of):
        return [(of(p), names[j][k]) for j in range(len(needs)) for k, p in enumerate(packs)]

    lines = ["minimize", " z: " + terms(total(objective)), "subject to"]
    for j, need in enumerate(needs):
        lines.append(f" n{j}: " + terms([(p["size"], names[j][k]) for k, p in enumerate(packs)]) + f" >= {need}")
    for k, p in enumerate(packs):
        if p["stock"] is not None:
            lines.append(f" s{k}: " + terms([(1, names[j][k]) for j in range(len(needs))]) + f" <= {p['stock']}")
    for i, (of, value) in enumerate(fixed):
        lines.append(f" f{i}: " + terms(total(of)) + f" = {value}")
    lines += ["general", " " + " ".join(n for row in names for n in row), "end", ""]
    return "\n".join(lines)


class Unsolved(Exception):
    """The solver gave up or broke off: nothing is known of the case."""


def solve(text):
    """The objective of the best whole solution, or None where there is none."""
    problem, answer = os.path.join(WORK, "problem.lp"), os.path.join(WORK, "answer")
    with open(problem, "w", encoding="ascii") as file:
        file.write(text)
    for options in ([], ["--nopresol", "--gomory"]):
        run = subprocess.run([GLPSOL, "--lp", problem, "-w", answer, "--tmlim", "20", *options],
                             stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=False)
        if run.returncode:
            continue
        with open(answer, encoding="ascii") as file:
            status = next(line.split() for line in file if line.startswith("s mip"))
        if status[4] == "o":
            return round(float(status[5]))
        if status[4] == "n":
            return None
    raise Unsolved


def best(needs, packs):
    if not packs:
        return None
    fixed = []
    for of in (lambda p: p["price"], lambda p: p["size"], lambda p: 1):
        value = solve(model(of, needs, packs, fixed))
        if value is None:
            return None
        fixed.append((of, value))
    return tuple(value for _, value in fixed)


def case():
    mode = random.choice(["pooled", "apart", "batch"])
    unit = random.choice([1, 100, 250, 500])
    packs = []
    for i in range(random.randrange(1, 7)):
        size = random.randrange(1, 40) * unit + (random.randrange(0, 3) if unit == 1 else 0)
        price = max(1, size * random.randrange(60, 140) // 100 + random.randrange(0, 50))
        stock = random.choice([None, None, random.randrange(0, 6)])
        batch = random.choice("AB") if mode == "batch" else ""
        packs.append({"id": f"p{i}", "size": size, "price": price, "stock": stock, "batch": batch})
    coats = random.randrange(1, 4) if mode != "pooled" else 1
    needs = [random.randrange(1, 120) * unit - random.randrange(0, unit) for _ in range(coats)]
    if mode == "batch":
        answers = [best(needs, [p for p in packs if p["batch"] == b]) for b in "AB"]
        answer = min((a for a in answers if a), default=None)
    else:
        answer = best(needs, packs)
    text = " ".join(":".join([p["id"], str(p["size"]), str(p["price"]),
                              "-" if p["stock"] is None else str(p["stock"]), p["batch"] or "-"]) for p in packs)
    return f"{mode} {' '.join(map(str, needs))} | {text} = {' '.join(map(str, answer)) if answer else 'none'}"


wanted, unsolved = int(sys.argv[1]), 0
while wanted:
    try:
        print(case())
        wanted -= 1
    except Unsolved:
        unsolved += 1
if unsolved:
    print(f"the solver gave up on {unsolved} cases, which were drawn again", file=sys.stderr)
