"""The shop's small registry against pint's full one, which is kept by others."""

from __future__ import annotations

import math

import pint
import pytest

from geometry.sentences import Kind
from library.units.convert import ANGLE_UNITS, from_geometry, to_geometry
from library.units.registry import AT_HAND, LINEAR, by_pint, exact_factor

# What each unit of ours is called in pint's own definitions, and the base to compare in.
FULL_NAMES = {
    (Kind.LENGTH, "mm"): ("mm", "mm"),
    (Kind.LENGTH, "cm"): ("cm", "mm"),
    (Kind.LENGTH, "um"): ("um", "mm"),
    (Kind.LENGTH, "in"): ("inch", "mm"),
    (Kind.LENGTH, "thou"): ("thou", "mm"),
    (Kind.LENGTH, "tenths"): ("0.0001 inch", "mm"),
    (Kind.AREA, "mm2"): ("mm**2", "mm**2"),
    (Kind.AREA, "in2"): ("inch**2", "mm**2"),
    (Kind.SPEED, "m/s"): ("m/s", "mm/s"),
    (Kind.SPEED, "mm/s"): ("mm/s", "mm/s"),
    (Kind.SPEED, "m/min"): ("m/min", "mm/s"),
    (Kind.SPEED, "ft/min"): ("ft/min", "mm/s"),
    (Kind.ROTATION, "rpm"): ("rpm", "turn/s"),
    (Kind.PER_LENGTH, "tpi"): ("1/inch", "1/mm"),
    (Kind.PER_LENGTH, "per mm"): ("1/mm", "1/mm"),
}


def test_every_unit_is_worth_what_pint_s_own_definitions_say() -> None:
    full: pint.UnitRegistry[float] = pint.UnitRegistry()
    ours = {(kind, unit) for kind, units in LINEAR.items() for unit in units}
    assert ours == set(FULL_NAMES)
    for (kind, unit), (name, base) in FULL_NAMES.items():
        assert float(exact_factor(kind, unit)) == pytest.approx(full(name).to(base).magnitude, rel=1e-12)


def test_what_is_at_hand_is_exactly_what_pint_would_say() -> None:
    assert {key: by_pint(*key) for key in AT_HAND} == AT_HAND


def test_angles_are_worth_what_pint_s_own_definitions_say() -> None:
    full: pint.UnitRegistry[float] = pint.UnitRegistry()
    names = {"deg": "degree", "min": "arcminute", "sec": "arcsecond", "rad": "radian"}
    for unit, name in names.items():
        assert ANGLE_UNITS[unit] == pytest.approx(full(name).to("radian").magnitude, rel=1e-12)


def test_there_and_back_in_every_unit() -> None:
    for kind, units in LINEAR.items():
        for unit in units:
            for number in (0.0, 1.0, -2.5, 1e-6, 12345.678):
                assert from_geometry(to_geometry(number, kind, unit), kind, unit) == pytest.approx(
                    number, rel=1e-14
                )
    assert from_geometry(to_geometry(8, Kind.ANGLE, "deg"), Kind.ANGLE, "deg") == pytest.approx(8, rel=1e-15)
    assert from_geometry(math.pi, Kind.ROTATION, "rpm") == pytest.approx(30.0)
