"""Converts values with pint, a general units library, and prints what comes out as exact fractions.

In, on standard input: lines of `number<TAB>unit<TAB>unit`, with the symbols of the program under test.
Out: a line `top/bottom` for each. Exact: pint counts in fractions, its definitions being read as such.
"""

import sys
from fractions import Fraction

import pint

units = pint.UnitRegistry(non_int_type=Fraction, autoconvert_offset_to_baseunit=True)
NAMES = {
    "N·m": "newton * meter",
    "cN·m": "centinewton * meter",
    "lbf·in": "force_pound * inch",
    "lbf·ft": "force_pound * foot",
    "ozf·in": "force_ounce * inch",
    "kgf·cm": "force_kilogram * centimeter",
    "kgf·m": "force_kilogram * meter",
    "N": "newton",
    "lbf": "force_pound",
    "kgf": "force_kilogram",
    "g": "gram",
    "kg": "kilogram",
    "oz": "ounce",
    "lb": "pound",
    "mm": "millimeter",
    "cm": "centimeter",
    "m": "meter",
    "in": "inch",
    "ft": "foot",
    "Ω": "ohm",
    "mΩ": "milliohm",
    "kΩ": "kiloohm",
    "MΩ": "megaohm",
    "V": "volt",
    "mV": "millivolt",
    "A": "ampere",
    "mA": "milliampere",
    "°C": "degree_Celsius",
    "°F": "degree_Fahrenheit",
    "ms": "millisecond",
    "s": "second",
    "min": "minute",
    "h": "hour",
    "d": "day",
    "%": "percent",
    "MPa": "megapascal",
}

for line in sys.stdin:
    number, written, wanted = line.rstrip("\n").split("\t")
    value = units.Quantity(Fraction(number), units.parse_units(NAMES[written]))
    print(Fraction(value.to(units.parse_units(NAMES[wanted])).magnitude))
