"""Quantile ranks, rank intervals and score intervals worked with Python's fractions and math.comb.

Usage: oracle.py CASES     prints one line for the normal quantile, then CASES lines of
    ranks N PART WHOLE LEVEL_PART LEVEL_WHOLE RANK LOW HIGH COVERAGE    (0: no bound)
    share COUNT N LOW HIGH
"""
import random
import sys
from decimal import Decimal, getcontext
from fractions import Fraction
from math import ceil, comb
from statistics import NormalDist

random.seed(20270403)
getcontext().prec = 50
Z = NormalDist().inv_cdf(0.975)


def probability():
    return random.choice([
        lambda: random.choice([(1, 2), (8, 10), (9, 10), (80, 100), (19, 20), (1, 20), (2, 3)]),
        lambda: (random.randrange(1, 100), 100),
        lambda: (random.randrange(1, 10**6), 10**6),
    ])()


def ranks():
    n = random.choice([random.randrange(1, 13), random.randrange(1, 61), random.randrange(1, 151)])
    part, whole = probability()
    level = random.choice([(9, 10), (9, 10), (95, 100), (1, 2), (99, 100), (8, 10)])
    p = Fraction(part, whole)
    tail = (1 - Fraction(*level)) / 2
    ways = [comb(n, k) * part**k * (whole - part)**(n - k) for k in range(n + 1)]
    limit = tail * whole**n
    low = max((rank for rank in range(1, n + 1) if sum(ways[:rank]) <= limit), default=0)
    high = min((rank for rank in range(1, n + 1) if sum(ways[rank:]) <= limit), default=0)
    coverage = Fraction(sum(ways[low:high if high else n + 1]), whole**n)
    print("ranks", n, part, whole, *level, ceil(n * p), low, high, repr(float(coverage)))


def share():
    n = random.randrange(1, 200)
    k = random.choice([0, n, random.randrange(n + 1)])
    # The roots of (k/n - p)^2 = z^2 p (1 - p) / n, with 50 digits.
    z2, x, n_ = Decimal(Z) ** 2, Decimal(k) / n, Decimal(n)
    a, b, c = 1 + z2 / n_, -(2 * x + z2 / n_), x * x
    root = max(Decimal(0), b * b - 4 * a * c).sqrt()
    print("share", k, n, repr(float((-b - root) / (2 * a))), repr(float((-b + root) / (2 * a))))


print("normal", repr(Z))
for _ in range(int(sys.argv[1])):
    random.choice([ranks, share])()
