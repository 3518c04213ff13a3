"""On the settings nothing is cut while there is room, and a line looks the same in hand and out of it."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from library.book.model import Book
from library.cards.editing import edited
from library.cards.model import Card, Inspection, Tool, Wanted
from library.cards.store import load
from library.demo import BOOK
from library.pages.readings_on_the_way import OnTheWay
from library.setup_sheet.sheets import setup_sheet
from tui.view.card_form import CardForm
from tui.view.card_page import CardPage
from tui.view.card_row import Row, Told
from tui.view.card_set_table import field_line, heading_lines, read_lines
from tui.view.lines import text_of
from tui.view.text_line import TextLine

LONG = "Indicator drop of the heel for a relief"


def card_of(name: str, **texts: str) -> Card:
    card = replace(load(Path(BOOK), name).card, status="draft", finished=None)
    for way, text in texts.items():
        card = edited(card, way, text)
    return card


def page(book: Book, card: Card, way: str) -> CardPage:
    form = CardForm(book, card)
    form.go_to(way)
    return CardPage(form)


def shown(of: CardPage, width: int = 80, height: int = 22) -> str:
    return "\n".join(text_of(one) for one in of.draw(width, height))


def heading(one: Told, width: int = 78) -> list[str]:
    row = Row("settings.a", one.title, told=(one,), heading=True)
    return [text_of(line).rstrip() for line in heading_lines(row, {}, width, in_hand=False)]


def test_a_long_title_takes_the_room_that_the_numbers_leave_and_goes_on_below() -> None:
    assert heading(Told(LONG, note="needs input"))[0].startswith(f"     {LONG} ")
    assert "thread land: lead over land " in heading(Told("thread land: lead over land", "0.151 mm"))[0]
    cut = heading(Told(LONG, "", "not to be set", "STOP"))
    assert " ".join(" ".join(cut).replace("not to be set", "").replace("STOP", "").split()) == LONG
    assert all(len(line) <= 78 for line in cut)


def test_a_long_note_takes_the_room_that_the_divisions_leave() -> None:
    (told,) = heading(Told("Chamfer angle", "6.99 deg", "14 div", "+0.01 deg chamfer"), 80)
    assert told.endswith("14 div            +0.01 deg chamfer")


def test_a_row_of_what_is_read_has_its_name_in_full() -> None:
    name = "thread land: lead along the axis"
    found = OnTheWay(
        "at the axis", ("edge", "1/4", "1/2", "3/4", "heel"), ((name, "mm", ("0.000",) * 5),), "", ()
    )
    lines = [text_of(one) for one in read_lines(found, 80)]
    assert any(name in one for one in lines)
    assert all(len(one) <= 80 for one in lines)


@pytest.mark.parametrize("text", [".3", "12.5 mm", "a text that is much longer"])
def test_what_is_typed_stands_in_hand_where_it_stands_afterwards(text: str) -> None:
    row = Row("settings.a.b", "Stock", text, wants=True)
    in_hand = text_of(field_line(row, TextLine.ending(text), 80))
    after = text_of(field_line(row, None, 80))
    assert in_hand.index(text) == (after.index(text) if len(text) <= 14 else in_hand.index(text))


@pytest.mark.parametrize(
    "row", [Row("a.b.c", "Stock", wants=True), Row("a.b.c", "Axial throw", default="0 mm", giver="default")]
)
def test_an_empty_line_looks_the_same_in_hand_and_out_of_it(row: Row) -> None:
    in_hand, after = (text_of(field_line(row, typed, 80)) for typed in (TextLine(), None))
    assert in_hand[2:].rstrip() == after[2:].rstrip()


def test_before_a_speed_is_given_the_one_that_is_allowed_is_in_sight(yard_book: Book) -> None:
    # Derived: the white cup of 100 mm is rated at 25 m/s; the grinder has 3600 and 5600 rpm about its 4775 rpm.
    card = card_of("2026-03-11-01", **{"settings.wheel-speed.rotational_speed": ""})
    text = shown(page(yard_book, card, "settings.wheel-speed.rotational_speed"))
    step_line, hint = text.splitlines()[0], text.splitlines()[-6:]
    assert "Run at 3600 rpm or slower" in step_line
    assert "Run at 3600 rpm or slower" in " ".join(hint)


def test_in_inches_the_rating_keeps_its_verdict_and_examples_are_in_inches(yard_book: Book) -> None:
    card = replace(card_of("2026-03-11-01"), units="in")
    speed = next(
        one for one in shown(page(yard_book, card, "settings.wheel-speed")).splitlines() if "ft/min" in one
    )
    assert speed.rstrip().endswith("ok (rated 25 m/s)")
    within = shown(page(yard_book, card, "after.diameter.tolerance"))
    assert "0.001 in, or +0 -0.001 in" in within
    assert " mm" not in within.rpartition("How far off")[2].partition("CAUTION")[0]
    taper = Wanted("at most 0.1 mm", "at most 0.1 mm", "common practice")
    form = CardForm(yard_book, Card(family="tap", units="in", wanted={"back_taper": taper}))
    form.go_to("wanted.rake_angle")
    told = " ".join(one.partition("│")[0].strip() for one in shown(CardPage(form)).splitlines())
    # Derived: 0.1 / 25.4 and 100 / 25.4.
    assert "at most 0.0039 in" in told
    assert "(3.94 in)" in told


def test_in_inches_the_way_of_a_back_taper_is_told_in_inches_on_every_page_and_on_the_sheet(
    yard_book: Book,
) -> None:
    taper = Wanted("1 thou", "1 thou", "common practice")
    asked = Card(
        family="tap",
        units="in",
        tool=Tool("T-1", "1/2 in", flutes="4"),
        received={"back_taper": ("1 thou",)},
        wanted={"back_taper": taper},
        after={"back_taper": Inspection(("1 thou",))},
    )
    form = CardForm(yard_book, asked)
    for section in ("received", "wanted", "after"):
        form.go_to(f"{section}.back_taper")
        assert form.row.label == "Back taper over 100 mm (3.94 in)"
    sheet = setup_sheet(form.job)
    assert sheet.count("Back taper over 100 mm") == sheet.count("Back taper over 100 mm (3.94 in)") == 2
    form = CardForm(yard_book, replace(asked, units="mm"))
    form.go_to("after.back_taper")
    assert form.row.label == "Back taper over 100 mm"


def test_what_stands_in_a_line_goes_on_below_where_its_column_is_too_narrow(yard_book: Book) -> None:
    reason = "what the cam of 2.5 gives on the largest step"
    card = card_of("2026-08-17-01")
    way = next(f"wanted.{key}" for key, one in card.wanted.items() if one.reason)
    card = edited(card, f"{way}.reason", reason)
    left = [one.partition("│")[0] for one in shown(page(yard_book, card, way)).splitlines()]
    at = next(at for at, one in enumerate(left) if one.strip().startswith("why"))
    assert " ".join(" ".join(left[at : at + 3]).split()).startswith(f"why {reason}")
    # A default with its giver goes on below too, in hand and out of it.
    for where in ("received.diameter", "received.land_width"):
        left = [one.partition("│")[0] for one in shown(page(yard_book, card, where)).splitlines()]
        assert "6 mm, 8 mm, 10 mm (tool)" in " ".join(" ".join(left).split())


def test_what_a_reading_may_be_goes_below_the_head_where_both_find_no_room() -> None:
    may_be = "0.0202 in to 0.0222 in (20.2 thou to 22.2 thou)"
    rows = (("drop", "in", ("0.000",) * 5),)
    found = OnTheWay("at the axis", ("edge", "1/4", "1/2", "3/4", "heel"), rows, may_be, ())
    lines = [text_of(one) for one in read_lines(found, 80)]
    assert "indicator at the axis, zero at the edge" in lines[0]
    assert any(f"may be {may_be}" in one for one in lines)


def test_a_setting_has_its_number_once_and_what_was_typed_for_it_says_so() -> None:
    row = Row("settings.a.radial_throw", "  Radial throw", "4 mm")
    own = text_of(field_line(row, None, 80, 3))
    under = text_of(field_line(row, None, 80, 3, is_above=True))
    assert own.split()[0] == "3"
    assert under.split() == ["Radial", "throw", "4", "mm", "typed", "for", "setting", "3"]
    assert under.index("4 mm") == own.index("4 mm")
