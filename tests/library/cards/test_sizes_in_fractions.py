"""Fractions of an inch of which only the last has its unit are the diameters of a step drill, as on its shank."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from library.book.opening import open_book
from library.cards.issues import issues_of
from library.cards.job import Job, work_out
from library.cards.model import Card, Tool


@pytest.fixture(scope="module")
def job() -> Job:
    book = open_book(Path("none"))
    return work_out(Card("2026-11-27-01", tool=Tool("S-1"), family="step-drill"), book)


def of_size(job: Job, size: str) -> Job:
    return work_out(replace(job.card, tool=Tool("S-1", size=size)), job.book)


@pytest.mark.parametrize("units", ["mm", "in"])
@pytest.mark.parametrize("size", ["1/4, 3/8, 1/2 in", "1/4 in, 3/8 in, 1/2 in"])
def test_the_unit_of_the_last_serves_all(job: Job, units: str, size: str) -> None:
    found = of_size(replace(job, card=replace(job.card, units=units)), size)
    assert found.known_text("diameter") == size
    filled = [one.answer.inputs["diameter"].value for one in found.steps if "diameter" in one.answer.inputs]
    counted = {round(float(value[-1] if isinstance(value, tuple) else value), 6) for value in filled}
    # A quarter of an inch at the point, 6.35 mm, and half an inch, 12.7 mm. By hand.
    assert counted
    assert counted <= {6.35, 12.7}
    assert not any("is a fraction" in str(one) for one in issues_of(found))


def test_fractions_of_a_millimetre_are_still_asked_about(job: Job) -> None:
    found = of_size(job, "1/4, 3/8 mm")
    assert found.known_text("diameter") == ""
    assert any("is a fraction" in str(one) for one in issues_of(found))


def test_millimetres_behind_the_last_hold_for_all_on_a_card_in_inches_too(job: Job) -> None:
    found = of_size(replace(job, card=replace(job.card, units="in")), "6, 8, 10 mm")
    filled = [one.answer.inputs["diameter"].value for one in found.steps if "diameter" in one.answer.inputs]
    counted = {float(value[-1] if isinstance(value, tuple) else value) for value in filled}
    assert counted
    assert counted <= {6.0, 10.0}
