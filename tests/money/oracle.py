"""Random money sums worked with Python's decimal module.

Usage: oracle.py CASES     prints lines: operation, arguments, then after = the expected numbers
"""
import random
import sys
from decimal import ROUND_HALF_EVEN, ROUND_HALF_UP, Decimal, getcontext

random.seed(20240229)
getcontext().prec = 120  # no quotient here is that near to a tie without being one
RULES = {"away": ROUND_HALF_UP, "even": ROUND_HALF_EVEN}
ONE = Decimal(1)
WHOLE = 10**6  # percentages are in millionths


def whole(value, rule):
    return int(value.quantize(ONE, RULES[rule]))


def amount():
    return random.choice([
        lambda: random.randrange(-100, 101),
        lambda: random.randrange(0, 10**7),
        lambda: random.randrange(-(10**12), 10**12),
        lambda: random.choice([1, -1]) * 5 * random.randrange(1, 10**5),
    ])()


def percents():
    return random.choice([100000, 200000, 82500, 88750, 190000, 250000, random.randrange(0, WHOLE)])


def share(rule):
    a, r = amount(), random.choice([percents(), -percents()])
    return [a, r], [whole(Decimal(a) * r / WHOLE, rule)]


def scaled(rule):
    a, n, d = amount(), random.randrange(-10**6, 10**6), random.randrange(1, 10**4)
    return [a, n, d], [whole(Decimal(a) * n / d, rule)]


def gross(rule):
    a, r = amount(), percents()
    tax = whole(Decimal(a) * r / (WHOLE + r), rule)
    return [a, r], [a - tax, tax]


def markup(rule):
    a, r = amount(), percents()
    return [a, r], [whole(Decimal(a) * (WHOLE + r) / WHOLE, rule)]


def margin(rule):
    a, r = amount(), percents()
    return [a, r], [whole(Decimal(a) * WHOLE / (WHOLE - r), rule)]


def split(_rule):
    total = random.randrange(0, 10**random.randrange(1, 12))
    weights = [random.choice([0, 1, 1, 2, 3, random.randrange(10**6)])
               for _ in range(random.randrange(1, 8))]
    if not any(weights):
        weights[0] = 1
    exact = [Decimal(total) * w / sum(weights) for w in weights]
    parts = [int(e) for e in exact]
    over = [Decimal(total) * w % sum(weights) for w in weights]
    order = sorted(range(len(weights)), key=lambda i: (-over[i], i))
    for i in order[:total - sum(parts)]:
        parts[i] += 1
    return [total, *weights], parts


def plain(_rule):
    a, places = amount(), random.choice([0, 2, 3, 4])
    return [a, places], [format(Decimal(a).scaleb(-places), "f")]


for _ in range(int(sys.argv[1])):
    make = random.choice([share, scaled, gross, markup, margin, split, plain])
    rule = random.choice(["away", "even"])
    arguments, expected = make(rule)
    print(make.__name__, rule, *arguments, "=", *expected)
