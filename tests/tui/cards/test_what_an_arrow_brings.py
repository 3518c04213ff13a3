"""What arrows bring into the lines of a card, and to which line Enter goes after the drops."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.close import finished
from library.cards.issues import issues_of
from library.cards.job import work_out
from library.cards.model import Card, Inspection, Setting, Tool, Wanted
from library.cards.rows import row_of
from library.cards.store import load
from tui.view.card_form import CardForm


@pytest.fixture(scope="module")
def shipped() -> Book:
    return open_book()


def counterbore(**changes: object) -> Card:
    card = Card(
        id="2026-11-26-01",
        entry="counterbore-m8",
        family="counterbore",
        tool=Tool("C-8", flutes="3"),
        received={"land_width": ("3.5 mm",), "land_measured_as": ("arc",)},
        wanted={
            "diameter": Wanted("15 mm", "15 mm", "a user guide"),
            "end_relief_angle": Wanted("6 to 8 deg", "6 to 8 deg", "a user guide"),
        },
    )
    return replace(card, **changes)  # type: ignore[arg-type]


def ground(readings: tuple[str, ...] = ("0.41 mm", "0.41 mm", "0.42 mm"), wanted: str = "") -> Card:
    """The same with its relief, its dish, and what was measured after grinding."""
    card = counterbore()
    return replace(
        card,
        wanted={**card.wanted, "end_relief_angle": Wanted("7 deg", "6 to 8 deg")},
        settings={"end-teeth": Setting({"dish_angle": "0 deg"})},
        after={"drop": Inspection(readings, wanted)},
    )


def test_right_brings_the_size_that_the_book_has(shipped: Book) -> None:
    form = CardForm(shipped, counterbore())
    form.go_to("tool.size")
    assert "Right takes 15 mm" in form.row.hint
    form.edit("right")
    assert form.card.tool.size == "15 mm"


def test_a_record_has_the_size_of_the_book_where_nobody_wrote_another(shipped: Book) -> None:
    def size(card: Card) -> str:
        closed = finished(work_out(replace(card, result="scrapped"), shipped), date(2026, 11, 26))
        return row_of(closed).size

    assert size(counterbore()) == "15 mm"
    assert size(counterbore(tool=Tool("C-8", "14.8 mm"))) == "14.8 mm"


@pytest.mark.parametrize(("key", "taken"), [("right", "wheel-head-height"), ("left", "work-head")])
def test_an_arrow_on_a_choice_that_follows_takes_the_one_beside_it_at_once(
    shipped: Book, key: str, taken: str
) -> None:
    form = CardForm(
        shipped, counterbore(wanted={"surface": Wanted("land"), "relief_form": Wanted("eccentric")})
    )
    form.go_to("wanted.relief_method")
    assert form.row.default == "cam"
    form.edit(key)
    assert form.card.wanted["relief_method"].value == taken


def test_a_surface_is_changed_by_the_first_arrow_and_a_letter_takes_what_it_says(shipped: Book) -> None:
    form = CardForm(shipped, counterbore())
    form.go_to("wanted.surface")
    assert form.row.default == "end"
    form.edit("right")
    assert form.card.wanted["surface"].value == "land"
    form = CardForm(shipped, counterbore())
    form.go_to("wanted.surface")
    form.type("e")
    assert form.card.wanted["surface"].value == "end"


def test_where_there_is_one_choice_only_it_is_known_as_such(shipped: Book) -> None:
    form = CardForm(shipped, Card(family="countersink"))
    form.go_to("wanted.surface")
    assert form.only_choice == "cone"
    form.go_to("wanted.relief_method")
    assert form.only_choice == ""


def tap_at_the_yard(yard: Path, throw: str = "") -> CardForm:
    """A job whose cam follows from the need: of 1.6 mm, the next above 1.43 mm."""
    book = open_book(yard)
    card = replace(
        load(yard, "2026-03-11-01").card,
        status="draft",
        settings={"relief-drop": Setting({"chosen_throw": throw})} if throw else {},
    )
    form = CardForm(book, card)
    form.go_to("settings.relief-drop")
    form.open_calculation("relief-drop")
    form.go_to("settings.relief-drop.chosen_throw")
    return form


@pytest.mark.parametrize(
    ("typed", "key", "brought"),
    [
        ("", "right", "2.5 mm"),
        ("", "left", "1 mm"),
        ("1.43 mm", "right", "1.6 mm"),
        ("1.43 mm", "left", "1 mm"),
        ("2.5", "right", "5 mm"),
    ],
)
def test_an_arrow_brings_the_cam_next_to_the_one_that_stands_there(
    yard: Path, typed: str, key: str, brought: str
) -> None:
    form = tap_at_the_yard(yard, typed)
    assert typed or form.row.default == "1.6 mm"
    form.edit(key)
    assert form.in_hand.text == brought


def test_an_arrow_moves_in_a_throw_that_is_being_typed(yard: Path) -> None:
    form = tap_at_the_yard(yard)
    for letter in "14":
        form.type(letter)
    form.edit("left")
    form.type(".")
    assert form.in_hand.text == "1.4"


@pytest.mark.parametrize("card", [ground(), counterbore(after={"drop": Inspection(("0.41 mm",))})])
def test_enter_goes_from_the_drops_to_how_far_off_they_may_be(shipped: Book, card: Card) -> None:
    form = CardForm(shipped, replace(card, tool=replace(card.tool, flutes="1")))
    form.go_to("after.drop")
    form.go_on()
    assert form.row.way == "after.drop.tolerance"


def said(card: Card, book: Book) -> str:
    return " ".join(one.text for one in issues_of(work_out(card, book)) if one.way == "after.drop.wanted")


def test_a_wanted_drop_far_from_what_is_set_is_said(shipped: Book) -> None:
    # The head gives 7.5 sin(3.5 / 7.5) tan 7 = 0.414 mm.
    assert "0.015 mm" in said(ground(wanted="0.015 mm"), shipped)
    assert "what is set gives 0.414 mm" in said(ground(wanted="0.015 mm"), shipped)
    assert said(ground(wanted="0.40 mm"), shipped) == ""


def test_a_wanted_drop_far_from_every_reading_is_said_where_nothing_is_set(shipped: Book) -> None:
    card = counterbore(after={"drop": Inspection(("0.41 mm", "0.42 mm", "0.41 mm"), "0.015 mm")})
    assert "0.41 mm was read" in said(card, shipped)
    near = counterbore(after={"drop": Inspection(("0.41 mm", "0.42 mm", "0.41 mm"), "0.45 mm")})
    assert said(near, shipped) == ""


def test_a_tool_under_size_is_told_by_the_limit_that_stands_beside_it(shipped: Book) -> None:
    # 15 mm less 15 microns.
    card = ground()
    after = {"diameter": Inspection(("14.98 mm",), "15 mm", "+0 -0.015 mm")}
    found = issues_of(work_out(replace(card, after=after), shipped))
    (under,) = [one.text for one in found if "under size" in one.text]
    assert "less than the 14.985 mm it must have" in under
