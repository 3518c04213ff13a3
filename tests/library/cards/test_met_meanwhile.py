"""What stands under the id of an open card is looked at before anything typed here is laid on it."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from library.cards.met_meanwhile import AnotherCard, ClosedMeanwhile, is_another, look_at
from library.cards.model import DONE, Card, Tool
from library.cards.saving import save_merged
from library.cards.store import create, load
from library.errors import SaveError

TAP = Card(family="tap", tool=Tool(name="T-4"))


@pytest.mark.parametrize(
    ("before", "now", "another"),
    [
        ({"tool.name": "T-4"}, {"tool.name": "R-9"}, True),
        ({"tool.name": "T-4"}, {"tool.name": " t-4 "}, False),
        ({"tool.name": "T-4", "wrong": "dull"}, {"tool.name": "T-44", "wrong": "dull"}, False),
        ({"tool.name": "T-4", "wrong": "dull"}, {"tool.name": "T-44", "wrong": "chipped"}, True),
        ({"family": "tap"}, {"family": "reamer"}, True),
        ({"entry": "a"}, {"entry": "b"}, True),
        ({}, {"again": "2026-11-20-01"}, True),
        ({}, {"tool.name": "T-4", "family": "tap"}, False),
        ({"tool.name": "T-4", "minutes": "5"}, {"tool.name": "T-4", "minutes": "9"}, False),
    ],
)
def test_two_states_are_two_cards_where_they_are_of_two_tools_or_begun_otherwise(
    before: dict[str, str], now: dict[str, str], another: bool
) -> None:
    assert is_another(before, now) is another


def test_a_record_takes_nothing_and_one_that_both_closed_alike_is_no_matter(tmp_path: Path) -> None:
    opened = create(tmp_path, TAP, date(2026, 11, 25))
    theirs = replace(opened, card=replace(opened.card, status=DONE))
    with pytest.raises(ClosedMeanwhile, match="was closed as a record meanwhile"):
        look_at(opened, replace(opened.card, notes="mine"), theirs)
    look_at(opened, theirs.card, theirs)
    with pytest.raises(AnotherCard, match="is another card meanwhile, R-9, tap"):
        look_at(opened, opened.card, replace(theirs, card=replace(theirs.card, tool=Tool(name="R-9"))))


def test_a_file_that_somebody_broke_meanwhile_is_told_of_and_left(tmp_path: Path) -> None:
    opened = create(tmp_path, TAP, date(2026, 11, 25))
    opened.path.write_text(broken := opened.path.read_text() + "[[card\n")
    with pytest.raises(SaveError, match=r"cannot be read.*Nothing was saved"):
        save_merged(tmp_path, opened, replace(opened.card, notes="mine"))
    assert opened.path.read_text() == broken


def test_a_number_that_was_given_up_is_not_given_again(tmp_path: Path) -> None:
    first = create(tmp_path, TAP, date(2026, 11, 25))
    first.path.unlink()
    again = create(tmp_path, TAP, date(2026, 11, 25), given_up={first.card.id})
    assert load(tmp_path, again.card.id).card.id == "2026-11-25-02"
