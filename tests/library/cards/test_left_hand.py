"""A left-hand tool is told as one wherever something is set for it; its numbers are those of a right-hand one."""

from __future__ import annotations

from dataclasses import replace

import pytest

from geometry.calculations import calculation
from library.book.model import Book
from library.book.opening import open_book
from library.calc.answer import answer
from library.cards.editing import edited
from library.cards.hand import is_left
from library.cards.job import work_out
from library.cards.model import Card, Tool
from library.cards.planning import plan
from library.cards.starting import from_entry
from library.setup_sheet.sheets import setup_sheet
from library.units.system import METRIC
from tui.view.card_set_table import set_head
from tui.view.lines import text_of, width_of

LEFT_DRILL, RIGHT_DRILL, LEFT_TAP = (
    "left-hand-drill-plain-steel", "twist-drill-jobber-plain-steel", "left-hand-tap-plain-steel",
)  # fmt: skip


@pytest.fixture(scope="module")
def shipped() -> Book:
    return open_book()


def card_of(book: Book, entry: str, size: str = "8 mm") -> Card:
    begun = from_entry(book, book.entries[entry])
    return replace(begun, id=entry, tool=replace(begun.tool, name="X", size=size, flutes="2"))


def told(book: Book, name: str, entry: str, **typed: str) -> list[str]:
    found = answer(calculation(name), typed, entry=book.entries[entry], book=book)
    assert found.result is not None
    return [str(one.sentence) for one in found.result.checks if "LEFT-HAND" in str(one.sentence)]


@pytest.mark.parametrize(
    ("name", "typed"),
    [
        ("point-setup", {"diameter": "8 mm", "web_thickness": "1.2 mm"}),
        ("drill-point", {"diameter": "8 mm"}),
        ("relief-drop", {"diameter": "8 mm", "land_width": "2 mm"}),
        (
            "setting-height",
            {"surface": "land", "relief_angle": "8 deg", "diameter": "8 mm", "wheel_diameter": "100 mm"},
        ),
    ],
)
def test_the_calculator_says_once_that_the_sides_change_and_the_numbers_stay(
    shipped: Book, name: str, typed: dict[str, str]
) -> None:
    (said,) = told(shipped, name, LEFT_DRILL, **typed)
    assert "anticlockwise, seen from the shank" in said
    assert "roll, tilt, offset, height, cam and tooth rest" in said
    assert not told(shipped, name, RIGHT_DRILL, **typed)


def test_what_goes_to_no_side_says_nothing_of_it(shipped: Book) -> None:
    assert not told(shipped, "wheel-speed", LEFT_DRILL, wheel_diameter="100 mm", rotational_speed="2800 rpm")
    # It asks for the hand and names the end itself.
    assert not told(shipped, "wheel-tilt", LEFT_DRILL, diameter="8 mm", relief_angle="8 deg")


@pytest.mark.parametrize(("entry", "size"), [(LEFT_DRILL, "8 mm"), (LEFT_TAP, "12 mm")])
def test_the_sheet_and_the_page_of_the_settings_say_it(shipped: Book, entry: str, size: str) -> None:
    job = work_out(card_of(shipped, entry, size), shipped)
    paper = setup_sheet(job)
    assert "Hand: LEFT-HAND" in paper
    above, _, below = paper.partition("Set, in this order")
    assert "LEFT-HAND: it cuts turning anticlockwise" in below
    assert "LEFT-HAND: it cuts" not in above
    for width in (80, 100, 160):
        head = set_head(job, width)
        assert "LEFT-HAND, to the other side" in text_of(head)
        assert width_of(head) <= width


def test_a_right_hand_tool_says_nothing_of_it(shipped: Book) -> None:
    job = work_out(card_of(shipped, RIGHT_DRILL), shipped)
    assert "LEFT" not in setup_sheet(job)
    assert "LEFT" not in text_of(set_head(job, 80))


def test_a_card_of_a_family_alone_and_one_whose_hand_is_changed_are_known_too(shipped: Book) -> None:
    assert is_left(work_out(Card(family="left-hand-drill", tool=Tool("D", "8 mm")), shipped))
    assert not is_left(work_out(Card(family="twist-drill", tool=Tool("D", "8 mm")), shipped))
    assert is_left(work_out(Card(family="tap", tool=Tool("T", thread="M12 LH")), shipped))
    changed = edited(card_of(shipped, LEFT_DRILL), "wanted.hand", "right")
    assert not is_left(work_out(changed, shipped))


def test_a_batch_of_both_hands_changes_the_hand_from_tool_to_tool(shipped: Book) -> None:
    found = plan([card_of(shipped, RIGHT_DRILL), card_of(shipped, LEFT_DRILL)], shipped, METRIC)
    assert [{line.title: line.value for line in turn.changes}.get("Hand") for turn in found.turns] == [
        "right-hand", "LEFT-HAND, to the other side",
    ]  # fmt: skip
    assert "Half point angle" not in {line.title for line in found.stays}
    by_title = {line.title: line.value for line in found.turns[1].changes}
    assert by_title["Half point angle"] == "59.00 deg, to the other side"
    alike = plan([card_of(shipped, RIGHT_DRILL)] * 2, shipped, METRIC)
    assert "Hand" not in {line.title for line in alike.stays}
