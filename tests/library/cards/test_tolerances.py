"""Tolerances as a shop writes them."""

from __future__ import annotations

import math

import pytest

from geometry.sentences import Kind
from library.cards.tolerances import tolerance
from library.units.read import UnitError


@pytest.mark.parametrize(
    ("text", "kind", "minus", "plus"),
    [
        ("0.02 mm", Kind.LENGTH, 0.02, 0.02),
        ("+/- 0.02 mm", Kind.LENGTH, 0.02, 0.02),
        ("\u00b1 0.02 mm", Kind.LENGTH, 0.02, 0.02),
        ("1 thou", Kind.LENGTH, 0.0254, 0.0254),
        ("+0 -0.03 mm", Kind.LENGTH, 0.03, 0),
        ("+0.01/-0.03 mm", Kind.LENGTH, 0.03, 0.01),
        ("-0.03 +0.01 mm", Kind.LENGTH, 0.03, 0.01),
        ("+0.01 mm, -1 thou", Kind.LENGTH, 0.0254, 0.01),
        ("-0 mm +0.05 mm", Kind.LENGTH, 0, 0.05),
        ("0 -.02 mm", Kind.LENGTH, 0.02, 0),
        ("0/-0.02 mm", Kind.LENGTH, 0.02, 0),
        ("+0 -.02 mm", Kind.LENGTH, 0.02, 0),
        ("-.02 0 mm", Kind.LENGTH, 0.02, 0),
        ("-0.02/0 mm", Kind.LENGTH, 0.02, 0),
        ("-1 thou, 0", Kind.LENGTH, 0.0254, 0),
        ("+.01 -.02 mm", Kind.LENGTH, 0.02, 0.01),
        ("0 mm +.03 mm", Kind.LENGTH, 0, 0.03),
        ("0 -30 min", Kind.ANGLE, math.radians(0.5), 0),
        ("1 deg 0 min", Kind.ANGLE, math.radians(1), math.radians(1)),
        ("+1 deg 0 min", Kind.ANGLE, math.radians(1), math.radians(1)),
        ("30 min", Kind.ANGLE, math.radians(0.5), math.radians(0.5)),
        ("+1 deg -30 min", Kind.ANGLE, math.radians(0.5), math.radians(1)),
    ],
)
def test_a_tolerance_goes_both_ways_or_each_its_own(text: str, kind: Kind, minus: float, plus: float) -> None:
    found = tolerance(text, kind)
    assert [found.minus, found.plus] == pytest.approx([minus, plus])


@pytest.mark.parametrize(
    ("text", "needle"),
    [
        ("0.02", "no unit"),
        ("tight", "number"),
        ("-0.02 mm", "how far above"),
        ("+0.01 mm +0.02 mm", "one way twice"),
        ("0.02 deg", "length"),
        ("+0 -0.03", "no unit"),
        ("0 -.02", "no unit"),
        (".02 0 mm", r"no tolerance; write it as \+0 -0.02 mm, each side with its sign"),
        ("+1 +2 thou", r"goes one way twice; write it as \+0 -1 thou\."),
        ("1 0 thou", r"is no tolerance; write it as \+0 -1 thou, each side"),
        ("+0.1 +0.2 mm", r"goes one way twice; write it as \+0 -0.02 mm\."),
        (".01 -.02 mm", r"'.01 -.02 mm' is no tolerance; write it as \+0 -0.02 mm"),
    ],
)
def test_what_is_no_tolerance_is_refused_with_a_sentence(text: str, needle: str) -> None:
    with pytest.raises(UnitError, match=needle):
        tolerance(text, Kind.LENGTH)
