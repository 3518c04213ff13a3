"""Generated texts mean the same to the library and to a second parser that shares nothing with it; or both refuse."""

from __future__ import annotations

import math
import random
import re
from collections import Counter
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.sentences import Kind
from library.units.read import Reading, UnitError, read, read_many
from library.units.system import Display
from tests.library.units.second_parser import UNITS, Meaning, Unclear, meaning

KINDS = {
    "length": Kind.LENGTH, "angle": Kind.ANGLE, "area": Kind.AREA, "speed": Kind.SPEED, "rotation": Kind.ROTATION,
    "threads": Kind.PER_LENGTH, "count": Kind.COUNT, "ratio": Kind.RATIO, "percent": Kind.PERCENT,
}  # fmt: skip
IN_GEOMETRY = {"angle": math.pi / 180, "rotation": 2 * math.pi / 60, "threads": 1 / 25.4}
"""What one of the second parser's units is in those of geometry, where that is not the same."""


def _number(chance: random.Random) -> str:
    whole, part = str(chance.choice([0, 1, 3, 8, 12, 45, 60, 118, 1000])), str(chance.choice([0, 5, 25, 125]))
    return chance.choice(
        [whole, f"{whole}.{part}", f".{part}", f"{whole}.", f"{whole}/{chance.choice([0, 2, 8, 12, 64, 100])}",
         f"{whole}-1/2", f"{whole} 3/8", f"{whole}e-{chance.choice([1, 3])}", f"{whole},{part}", f"{whole}:{part}"]
    )  # fmt: skip


def _sexagesimal(chance: random.Random) -> str:
    deg, minute, second = (
        chance.choice(one) for one in (["deg", "\u00b0", "deg "], ["min", "'", ""], ["sec", '"', ""])
    )
    blank = chance.choice(["", " "])
    parts = [f"{chance.choice([0, 3, 8])}{blank}{deg}", f"{chance.choice([0, 30, 45, 61, 4.5])}{blank}{minute}",
             f"{chance.choice([0, 15, 45, 75])}{blank}{second}"]  # fmt: skip
    if chance.random() < 0.4:
        del parts[chance.choice([1, 2])]
    return blank.join(parts)


def _one(chance: random.Random, kind: str) -> str:
    if kind == "angle" and chance.random() < 0.4:
        return _sexagesimal(chance)
    units = [*UNITS[kind], *(["", ""] if kind != "count" else [""]), chance.choice(["mm", "deg", "xy"])]
    sign = chance.choice(["", "", "", "-", "+", "- "])
    return sign + _number(chance) + chance.choice(["", " ", "  "]) + chance.choice(units)


def _text(chance: random.Random, kind: str) -> str:
    text = _one(chance, kind)
    if chance.random() < 0.4:
        text += chance.choice(["+/-", " +/- ", " \u00b1 ", " +- "]) + _one(chance, kind)
    return text


def _list(chance: random.Random, kind: str) -> str:
    texts = [_text(chance, kind) for _ in range(chance.choice([1, 2, 2, 3]))]
    return chance.choice([", ", ",", "; ", " , "]).join(texts)


ALIKE = {"-": "\u2212", "'": "\u2032\u2019", '"': "\u2033\u201d", "/": "\u2044", " ": "\u00a0\u2009\u202f\t"}
"""What a text holds that was copied out of a book, by what it holds when it is typed."""


def _as_printed(chance: random.Random, text: str) -> str:
    """The same text with some of its signs as a book prints them; the second parser gets the one that was typed."""
    if chance.random() < 0.7:
        return text
    text = text.replace("um", chance.choice(["um", "\u00b5m", "\u03bcm"]))
    parts = re.split(r"(\+/-|\+-)", text)
    parts[::2] = ["".join(_printed_sign(chance, sign) for sign in part) for part in parts[::2]]
    return "".join(parts)


def _printed_sign(chance: random.Random, sign: str) -> str:
    return chance.choice(ALIKE[sign]) if sign in ALIKE and chance.random() < 0.5 else sign


def _second(text: str, kind: str, worked_in: str, *, many: bool) -> tuple[Meaning, ...] | None:
    try:
        return meaning(text, kind, worked_in, many=many)
    except Unclear:
        return None


def _first(text: str, kind: str, worked_in: str, *, many: bool) -> tuple[Reading, ...] | None:
    display = Display("in" if worked_in == "in" else "mm")
    try:
        if many:
            return read_many(text, KINDS[kind], display, whole=kind == "count")
        return (read(text, KINDS[kind], display, whole=kind == "count"),)
    except UnitError:
        return None


def _is_same(found: Reading, meant: Meaning, kind: str) -> bool:
    unit = IN_GEOMETRY.get(kind, 1.0)
    pairs = [(found.number, meant.number)]
    if (found.half_width is None) is not (meant.half_width is None):
        return False
    if found.half_width is not None and meant.half_width is not None:
        pairs.append((found.half_width, meant.half_width))
    return all(math.isclose(one, float(other) * unit, rel_tol=1e-13, abs_tol=0.0) for one, other in pairs)


def compare(seed: int, texts: int) -> Counter[str]:
    """Hold the two against each other over some texts; how many were read and how many refused."""
    chance = random.Random(seed)
    told: Counter[str] = Counter()
    for _ in range(texts):
        kind, worked_in, many = chance.choice([*KINDS]), chance.choice(["mm", "in"]), chance.random() < 0.4
        text = (_list if many else _text)(chance, kind)
        printed = _as_printed(chance, text)
        found = _first(printed, kind, worked_in, many=many)
        meant = _second(text, kind, worked_in, many=many)
        where = f"seed {seed}: {printed!r} for {kind}, worked in {worked_in}, {'a list' if many else 'one'}"
        assert (found is None) is (meant is None), f"{where}: read as {found}, meant {meant}"
        told["refused" if found is None else "read"] += 1
        if found is not None and meant is not None:
            assert len(found) == len(meant), where
            same = all(_is_same(one, other, kind) for one, other in zip(found, meant, strict=True))
            assert same, f"{where}: read as {found}, meant {meant}"
    return told


@given(st.integers(0, 2**32))
def test_some_hundred_texts_mean_the_same_to_a_second_parser(seed: int) -> None:
    compare(seed, 25)


@pytest.mark.depth
@given(st.integers(0, 2**32))
def test_fifty_thousand_texts_mean_the_same_to_a_second_parser(seed: int) -> None:
    told = compare(seed, 250)
    assert min(told.values()) > 10, "most texts were of one sort, so that little was compared"


# Derived by hand, so that the second parser is not believed on its own word.
@pytest.mark.parametrize(
    ("text", "kind", "worked_in", "number", "half_width"),
    [
        ("1-1/2 in", "length", "mm", Fraction(381, 10), None),
        ("8 deg 45 sec", "angle", "mm", 8 + Fraction(1, 80), None),
        ('8\u00b030"', "angle", "mm", 8 + Fraction(1, 120), None),
        ("3 deg 30", "angle", "mm", Fraction(7, 2), None),
        ("0.5 +/- 0.005 in", "length", "mm", Fraction(127, 10), Fraction(127, 1000)),
        ("0.5 +/- 0.005", "length", "in", Fraction(127, 10), Fraction(127, 1000)),
    ],
)
def test_the_second_parser_itself_gives_what_was_reckoned_by_hand(
    text: str, kind: str, worked_in: str, number: Fraction, half_width: Fraction | None
) -> None:
    assert meaning(text, kind, worked_in) == (Meaning(number, half_width),)
