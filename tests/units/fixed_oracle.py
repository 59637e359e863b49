"""Random doubles and what they are with N decimals, by Python's decimal module.

Usage: fixed_oracle.py CASES     prints lines: hexadecimal double, decimals, expected text
"""
import random
import struct
import sys
from decimal import ROUND_HALF_UP, Context, Decimal

random.seed(4711)
wide = Context(prec=400)


def a_double():
    kind = random.randrange(4)
    if kind == 0:  # a decimal half, the case that binary rounding gets wrong
        return random.randrange(10**6) / 1000 + 0.0005
    if kind == 1:
        return random.uniform(-1e4, 1e4)
    if kind == 2:
        return random.choice([-1, 1]) * 10.0 ** random.uniform(-25, 25)
    while True:
        value = struct.unpack("<d", random.randbytes(8))[0]
        if value == value and abs(value) < 1e60:
            return value


for _ in range(int(sys.argv[1])):
    value, places = a_double(), random.randrange(0, 8)
    rounded = Decimal(repr(value)).quantize(Decimal(1).scaleb(-places), ROUND_HALF_UP, wide)
    if rounded == 0:
        rounded = abs(rounded)
    print(value.hex(), places, format(rounded, "f"))
