"""On a card the cursor goes to what is wrong, the worst stands on the line of the steps, and a result is chosen."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from library.book.model import Book
from library.cards.editing import edited
from library.cards.history import visit_of
from library.cards.issues import issues_of
from library.cards.job import work_out
from library.cards.model import Card, Inspection, Tool
from library.cards.results import USUAL, known_results
from library.cards.rows import CardRow
from library.cards.starting import from_entry
from library.cards.store import load
from library.demo import BOOK
from tests.tui.cards.conftest import AtTheYard
from tui.view.card_form import CardForm
from tui.view.card_page import CardPage
from tui.view.lines import text_of, width_of

EMPTY = Book({})
A_TAP = ("bronze spi", "<ctrl+f>", "T-77", "<enter>", "M12", "<enter>", "<right>", "<enter>")


def open_again(name: str, book: Book) -> CardForm:
    return CardForm(book, replace(load(BOOK, name).card, status="draft"))


def test_enter_goes_to_a_wrong_line_each_time_and_to_what_is_on_watch_once(yard_book: Book) -> None:
    form = open_again("2026-03-11-01", yard_book)
    form.go_to("settings.wheel-speed")
    form.go_on()
    # Only the cam is on watch: it gives 7.27 degrees where 6.5 are wanted.
    assert form.row.way == "settings.relief-drop.chosen_throw"
    form.go_to("settings.wheel-speed")
    form.go_on()
    assert form.step != 3
    form.go_to("received.land_width")
    form.put("9,9 mm")
    for _ in range(2):
        form.go_to("wrong#0")
        form.go_on()
        assert form.row.way == "received.land_width"


@pytest.mark.parametrize("size", [(80, 22), (120, 34), (160, 46), (60, 22)])
def test_the_worst_of_a_step_stands_on_the_line_of_the_steps(yard_book: Book, size: tuple[int, int]) -> None:
    form = open_again("2026-03-11-01", yard_book)
    form.go_to("settings.wheel-speed")
    shown = [text_of(one) for one in CardPage(form).draw(*size)]
    assert "[Set!]" in shown[0]
    if size[0] >= 80:
        assert "WATCH  cam 1.6 mm gives 7.27" in shown[0]
    form.go_to("after.drop")
    form.put(".2, .41, .40")
    shown = [text_of(one) for one in CardPage(form).draw(*size)]
    assert "[After!]" in shown[0]
    assert "STOP" in shown[0] or size[0] < 80
    assert any(
        one.startswith("STOP: Indicator drop, flute 1: .2 mm is") or "flute 1: .2 mm is" in one
        for one in shown
    )


def test_what_has_no_line_of_its_own_is_told_at_the_first() -> None:
    form = CardForm(EMPTY, Card(entry="gone"))
    assert "no entry 'gone'" in " ".join(one.text for one in form.faults_at(form.rows[0]))


def test_settings_stand_in_columns_with_their_divisions_and_what_is_read_below(yard_book: Book) -> None:
    form = open_again("2026-03-11-01", yard_book)
    form.go_to("settings.wheel-speed")
    lines = CardPage(form).draw(80, 22)
    shown = [text_of(one) for one in lines]
    assert all(width_of(one) <= 80 for one in lines)
    # 40 turns of the crank for 3 flutes are 13 and a third; a third of 66 is 22.
    index = next(one for one in shown if " Index " in one)
    face = next(one for one in shown if " Face offset " in one)
    assert "13 turns + 22  holes, 66 circle" in index
    assert "0.313 mm  31 div away" in face
    # Numbers end in one column.
    assert index.index("22  ") + 2 == face.index("mm  ") + 2
    read = next(number for number, one in enumerate(shown) if one.startswith("READ"))
    assert shown[read + 1].split() == ["edge", "1/4", "1/2", "3/4", "heel"]
    assert shown[read + 3].split()[:3] == ["chamfer:", "drop", "mm"]
    assert sum("CAUTION" in one for one in shown) == 1


def test_nothing_that_stops_has_a_number_to_set(yard_book: Book) -> None:
    form = open_again("2026-03-11-01", yard_book)
    form.go_to("settings.size-loss.stock_per_sharpening")
    form.put("11.85")
    row = next(one for one in form.rows if one.way == "settings.size-loss")
    assert [(one.value, one.divisions, one.note) for one in row.told] == [("", "not to be set", "STOP")]


@pytest.mark.parametrize("width", [100, 110, 120, 130, 140, 160])
def test_a_long_name_of_what_it_came_with_never_runs_into_its_number(yard_book: Book, width: int) -> None:
    card = edited(
        Card(family="reamer", tool=Tool("R", size="20 mm", flutes="6")), "received.back_diameter", "20.01 mm"
    )
    form = CardForm(yard_book, edited(card, "received.taper_length", "100 mm"))
    form.go_to("received.back_diameter")
    right = [text_of(one) for one in CardPage(form).draw(width, 34)]
    (told,) = (
        one.rpartition("\u2502")[2] for one in right if one.rstrip().endswith(" 20.01 mm") and "\u2502" in one
    )
    assert "Diamete" in told
    if width >= 120:
        assert "Diameter at the back " in told


def test_a_wide_screen_has_drawing_what_it_came_with_and_the_life_at_the_right(yard_book: Book) -> None:
    form = open_again("2026-03-11-01", yard_book)
    before = visit_of(load(BOOK, "2025-10-14-01").card)
    page = CardPage(form, visits=lambda tool, card_id: [before] if tool == "T-12-3" else [])
    for step in (
        "tool.name",
        "received.drop",
        "wanted.surface",
        "settings.relief-drop",
        "after.drop",
        "result",
    ):
        form.go_to(step)
        for width, height in ((120, 34), (160, 46), (100, 22)):
            lines = page.draw(width, height)
            assert len(lines) == height
            assert all(width_of(one) <= width for one in lines)
            right = "\n".join(text_of(one)[81:] for one in lines)
            assert "CAME WITH" in right
            # The relief of a tap's chamfer is given square to the axis, as one looks at the tap from its end.
            if width > 100:
                assert "of the chamfer, square to the axis" in right
            assert "T-12-3 BEFORE" in right
            assert "2025-10-14" in right
    assert "CAME WITH" not in "\n".join(text_of(one) for one in page.draw(99, 34))


def test_a_result_is_one_that_the_shop_knows() -> None:
    rows = [
        CardRow("a", "done", result="to the museum"),
        CardRow("b", "done", result="60"),
        CardRow("c", "done", result="good"),
    ]
    assert known_results(rows) == (*USUAL, "to the museum")
    wrong = [one for one in issues_of(work_out(Card(result="60"), EMPTY)) if one.key == "result"]
    assert [one.severity for one in wrong] == ["error"]
    assert not [
        one for one in issues_of(work_out(Card(result="to the museum"), EMPTY)) if one.key == "result"
    ]


async def test_a_number_typed_into_the_result_is_none_and_remarks_have_a_line(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do(*A_TAP)
        form: Any = hands.app.screen.form
        form.go_to("result")
        assert "No choice here is '60'" in await hands.do("60")
        assert "This line keeps no number: Down and Up go to one that does." in hands.words()
        assert form.card.result == ""
        await hands.do("<right>", "<down>", "sent with the van")
        assert (form.card.result, form.card.remarks) == ("good", "sent with the van")
        form.go_to("result")
        await hands.do("<f6>", "scrapped", "<enter>")
        assert form.card.result == "scrapped"


def test_an_old_result_that_no_list_has_stays_and_can_be_changed() -> None:
    form = CardForm(EMPTY, Card(result="as new", tool=Tool("T-1"), after={"drop": Inspection()}))
    form.go_to("result")
    assert form.row.choices[-1] == "as new"
    form.edit("right")
    assert form.card.result == ""


def test_a_card_that_is_opened_again_stands_at_the_first_line_that_wants_something(yard_book: Book) -> None:
    draft = load(BOOK, "2026-11-20-01").card
    for way, text, first in (
        ("tool.marks", "", "tool.marks"),
        ("tool.marks", "none", "received.diameter"),
        ("received.diameter", "wide", "received.diameter"),
        ("received.diameter", "9 mm", "received.drop"),
    ):
        draft = edited(draft, way, text)
        form = CardForm(yard_book, draft)
        form.go_on_with()
        assert form.row.way == first
    form.go_on_with("after.diameter")
    assert (form.step, form.row.way) == (4, "after.diameter")
    record = CardForm(yard_book, load(BOOK, "2026-03-11-01").card)
    record.go_on_with()
    assert record.row is record.rows[0]
    assert record.step == 0


def test_going_back_to_a_step_finds_the_line_in_which_it_was_left(yard_book: Book) -> None:
    form = open_again("2026-03-11-01", yard_book)
    form.go_to("settings.lead-over-land")
    form.change_step(1)
    form.change_step(-1)
    assert form.row.way == "settings.lead-over-land"


def test_going_back_from_what_waits_for_another_page_finds_the_line_that_it_waits_for(
    yard_book: Book,
) -> None:
    card = from_entry(yard_book, yard_book.entries["tap-hand-plain-steel"])
    form = CardForm(yard_book, edited(card, "received.diameter", "9.98 mm"))
    form.go_to("wanted.surface")
    form.go_to("settings.face-offset")
    # The book has no rake of such taps, but a hook, and the card one line for both.
    assert "for want of hook along the chord, on step 3, Wanted" in " ".join(form.row.below)
    form.change_step(-1)
    assert form.row.way == "wanted.hook_angle"


def worst_at(form: CardForm, width: int = 80) -> str:
    return text_of(CardPage(form).draw(width, 22)[0])


def test_the_worst_of_a_step_is_told_in_whole_clauses_and_without_its_line_where_that_leaves_no_room(
    yard_book: Book,
) -> None:
    card = from_entry(yard_book, yard_book.entries["tap-spiral-point-aluminium-bronze"])
    form = CardForm(yard_book, edited(card, "received.diameter", "11,98 mm"))
    form.go_to("received.diameter")
    assert worst_at(form).rstrip().endswith("STOP  '11,98 mm' has a comma")
    form.put("wide")
    assert worst_at(form).rstrip().endswith("STOP  'wide' does not begin with a …")
    assert "STOP  Diameter: 'wide' does not begin with a number" in worst_at(form, 110)


def test_a_half_sentence_that_says_nothing_by_itself_is_no_clause(yard_book: Book) -> None:
    card = from_entry(yard_book, yard_book.entries["tap-spiral-point-aluminium-bronze"])
    form = CardForm(yard_book, edited(card, "received.drop", "0.2, 0.2 mm"))
    form.go_to("received.drop")
    assert "there are 2 readings, and th" in worst_at(form)
