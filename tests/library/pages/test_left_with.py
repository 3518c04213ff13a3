"""With what a tool was left last time: the last card before the one in hand that has readings after grinding."""

from __future__ import annotations

from library.cards.model import Card, Inspection
from library.pages.as_text import as_text
from library.pages.left_with import left_with
from library.pages.page import Page, Section


def card(name: str, **after: tuple[str, ...]) -> Card:
    return Card(
        id=name,
        after={key: Inspection(texts) for key, texts in after.items()},
        chosen={"surface": "chamfer"},
    )


EARLIER = (
    card("2026-01-05-01", diameter=("11.98 mm",)),
    card("2026-02-05-01", diameter=("11.95 mm",), drop=("0.41 mm", "0.40 mm")),
    card("2026-03-05-01"),
)


def said(now: str = "") -> str:
    return as_text(Page("", (Section("", left_with(EARLIER, now)),)))


def test_the_last_one_that_was_measured_is_told_with_what_was_ground() -> None:
    text = said()
    assert "Left with last time, 2026-02-05-01, chamfer ground" in text
    assert "11.95 mm" in text
    assert "0.41, 0.40 mm" in text


def test_no_card_behind_the_one_in_hand_counts() -> None:
    assert "11.98 mm" in said("2026-02-05-01")
    assert left_with(EARLIER, "2026-01-05-01") == ()
