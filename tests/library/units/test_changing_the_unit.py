"""Between millimetres and inches whatever was typed keeps its meaning; what has a unit stays as it was typed."""

from __future__ import annotations

import random
from collections import Counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.sentences import Kind
from library.units.read import in_other_unit, with_units
from library.units.system import INCH, METRIC, Display
from tests.library.units.second_parser import Meaning, Unclear, meaning
from tests.library.units.test_second_parser import KINDS, _list


def _meant(text: str, kind: str, worked_in: str) -> tuple[Meaning, ...] | None:
    try:
        return meaning(text, kind, worked_in, many=True)
    except Unclear:
        return None


def _switched(seed: int, texts: int) -> Counter[str]:
    chance = random.Random(seed)
    told: Counter[str] = Counter()
    for _ in range(texts):
        kind, old = (
            chance.choice(["length", "length", "area", "speed", "angle"]),
            chance.choice([METRIC, INCH]),
        )
        text, new = _list(chance, kind), old.other()
        before = _meant(text, kind, old.lengths)
        after = in_other_unit(text, KINDS[kind], old, new)
        if before is None:
            assert after == text
            continue
        where = f"seed {seed}: {text!r} in {old.lengths} became {after!r} in {new.lengths}"
        assert _meant(after, kind, new.lengths) == before, where
        assert in_other_unit(after, KINDS[kind], new, old) == after, where
        told["stayed" if after == text else "got its unit"] += 1
    return told


@given(st.integers(0, 2**32))
def test_whatever_was_typed_means_the_same_in_the_other_unit(seed: int) -> None:
    """The second parser tells the meaning before and after."""
    _switched(seed, 25)


@pytest.mark.depth
@given(st.integers(0, 2**32))
def test_fifty_thousand_texts_mean_the_same_in_the_other_unit(seed: int) -> None:
    told = _switched(seed, 250)
    assert min(told["stayed"], told["got its unit"]) > 0


@pytest.mark.parametrize(
    ("text", "old", "becomes"),
    [
        ("3.2, 25", METRIC, "3.2, 25 mm"),
        ("1.75 +/- 1", METRIC, "1.75 mm +/- 1"),
        ("1/4, 1/2", INCH, "1/4, 1/2 in"),
        ("118/12, 12 in", METRIC, "118/12, 12 in"),
        ("118/12, 12", INCH, "118/12, 12 in"),
        ("1/4, 8 mm", INCH, "1/4 in, 8 mm"),
        ("1/4 +/- 1 ,8 mm", INCH, "1/4 in +/- 1 ,8 mm"),
        ("3.2; 25 +/- 0.1", METRIC, "3.2; 25 mm +/- 0.1"),
        ("1" * 40, METRIC, "1" * 40 + " mm"),
        ("3.2 mm", METRIC, "3.2 mm"),
        ("40 thou", METRIC, "40 thou"),
        ("3.2 +/- 0.1 mm", METRIC, "3.2 +/- 0.1 mm"),
        ("wide", METRIC, "wide"),
        ("M12", METRIC, "M12"),
        ("0", METRIC, "0"),
        ("", METRIC, ""),
    ],
)
def test_only_a_number_without_a_unit_gets_one(text: str, old: Display, becomes: str) -> None:
    assert in_other_unit(text, Kind.LENGTH, old, old.other()) == becomes


def test_what_is_the_same_in_both_stays_as_it_was_typed() -> None:
    assert in_other_unit("8", Kind.ANGLE, METRIC, INCH) == "8"
    assert in_other_unit("4, 6", Kind.COUNT, METRIC, INCH) == "4, 6"


def test_a_number_that_is_carried_elsewhere_gets_the_unit_it_went_by() -> None:
    assert with_units("8", Kind.ANGLE, METRIC) == "8 deg"
    assert with_units("0.2", Kind.LENGTH, INCH) == "0.2 in"
    assert with_units("12 +/- 1 thou", Kind.LENGTH, METRIC) == "12 +/- 1 thou"
