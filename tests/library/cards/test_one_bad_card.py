"""A card that says something impossible is told of at its place, and never hides or stops another."""

from __future__ import annotations

from dataclasses import replace

import pytest

from library.book.model import Book
from library.cards.editing import edited
from library.cards.history import history
from library.cards.issues import issues_of
from library.cards.job import flutes_of, work_out
from library.cards.model import Card
from library.cards.planning import plan
from library.units.system import METRIC


@pytest.mark.parametrize(
    ("way", "text", "told_at", "sentence"),
    [
        ("tool.flutes", "3 +/- 1", "tool.flutes", "'3 +/- 1' is no number of flutes; count them: 1 to 60."),
        ("received.flutes", "3 +/- 1", "received.flutes", "what is counted has none, so write 3"),
        ("wanted.flutes", "3 +/- 1", "wanted.flutes", "what is counted has none, so write 3"),
        ("settings.lead-over-land.starts", "1 +/- 1", "settings.lead-over-land.starts", "so write 1"),
        ("settings.index-moves.index_ratio", "40 +/- 1", "settings.index-moves.index_ratio", "so write 40"),
    ],
)
def test_a_plus_or_minus_on_a_count_is_a_sentence_at_its_line(
    book: Book, job: Card, way: str, text: str, told_at: str, sentence: str
) -> None:
    found = issues_of(work_out(edited(job, way, text), book))
    told = [one.text for one in found if one.way == told_at]
    assert any(sentence in one for one in told), told


def test_what_is_counted_is_never_more_or_less() -> None:
    assert (flutes_of("3 +/- 1"), flutes_of("3")) == (None, 3)


@pytest.mark.parametrize("text", ["3 +/- 1", "1e99 +/- 1e99", "9" * 40, "\u00b1", "-0"])
def test_one_bad_card_neither_stops_a_plan_nor_the_life_of_a_tool(book: Book, job: Card, text: str) -> None:
    bad = edited(replace(job, id="2026-11-25-02"), "tool.flutes", text)
    bad = edited(bad, "settings.lead-over-land.starts", text)
    assert {turn.card.id for turn in plan([bad, job], book, METRIC).turns} == {bad.id, job.id}
    lived = history("T-14", [job, bad], book)
    assert [visit.card.id for visit in lived.visits] == [job.id, bad.id]
    # 11.97 mm as it came, read from the card itself.
    assert lived.visits[0].before == pytest.approx(11.97)
