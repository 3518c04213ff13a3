"""Enter and the keys of the steps go to what is wrong on a step of a card, and past it where a person leaves it so."""

from __future__ import annotations

from typing import Any

import pytest

from library.book.model import Book
from library.cards.inspecting import received_reliefs
from tests.begun_cards import begun_bare
from tests.tui.cards.conftest import form_at
from tui.view.card_form import CardForm

MOST_KEYS = 40
"""More than a step has lines: who is led on so often without leaving it is trapped."""


def form_of(book: Book, entry: str, at: str, **texts: str) -> CardForm:
    return form_at(book, begun_bare(book, entry, **texts), at)


def fill(form: CardForm, *texts: str) -> None:
    """Type each text, with Enter behind it."""
    for text in texts:
        form.put(text)
        form.go_on()


def way_on(form: CardForm) -> list[str]:
    """The lines that Enter goes to until it leaves the step."""
    step, ways = form.step, []
    while form.go_on() and form.step == step:
        ways.append(form.row.way)
        assert len(ways) < MOST_KEYS, "nobody gets past it"
    return ways


def test_enter_that_would_leave_a_step_goes_first_to_what_cannot_be_read_above(yard_book: Book) -> None:
    form = form_of(yard_book, "tap-spiral-point-aluminium-bronze", "received.diameter")
    fill(form, "11,98", "3.2", "chord")
    assert form.row.way == "received.drop"
    fill(form, "0.2")
    assert form.row.way == "received.diameter"
    # Who leaves it so is not held there.
    assert way_on(form) == []
    assert form.row.section == "wanted"


def test_several_faults_of_a_step_come_in_their_order_and_each_once(yard_book: Book) -> None:
    form = form_of(yard_book, "reamer-hand-plain-steel", "received.diameter", **{"tool.flutes": "6"})
    fill(form, "12,1", "1,2", "chord")
    form.go_to("received.drop")
    form.put("abc")
    ways = way_on(form)
    assert [one for one in ways if one in {"received.diameter", "received.land_width", "received.drop"}] == [
        "received.diameter", "received.land_width", "received.drop",
    ]  # fmt: skip


def test_a_fault_after_grinding_is_gone_back_to_before_the_end(yard_book: Book) -> None:
    form = form_of(yard_book, "reamer-hand-plain-steel", "after.drop", **{"tool.flutes": "6"})
    form.put("x")
    assert "after.drop" in way_on(form)


def test_a_fault_that_was_put_right_is_not_gone_back_to(yard_book: Book) -> None:
    form = form_of(yard_book, "tap-spiral-point-aluminium-bronze", "received.diameter")
    fill(form, "11,98", "3.2", "chord")
    form.go_to("received.diameter")
    fill(form, "11.98")
    fill(form, "0.2")
    assert form.row.section == "wanted"


@pytest.mark.parametrize("by", [1, -1])
def test_the_keys_of_the_steps_land_on_the_first_fault(yard_book: Book, by: int) -> None:
    form = form_of(
        yard_book, "reamer-machine-plain-steel", "received.drop" if by > 0 else "settings",
        **{"wanted.bevel_relief_angle": "95 deg"},
    )  # fmt: skip
    form.go_to("wanted.margin_width")
    form.change_step(-by)
    form.change_step(by)
    assert form.row.way == "wanted.bevel_relief_angle"


def test_the_settings_begin_at_a_calculation_that_cannot_answer_and_come_back_to_what_was_passed(
    yard_book: Book,
) -> None:
    form = form_of(
        yard_book, "reamer-machine-plain-steel", "wanted.indicator_points",
        **{"wanted.bevel_relief_angle": "95 deg"},
    )  # fmt: skip
    form.go_on()
    while form.step != 3:
        form.go_on()
    assert form.row.key == "bevel-lead"
    assert "settings.wheel-speed.wheel_diameter" in way_on(form)


def test_what_cannot_be_read_is_named_in_place_of_what_follows_from_it(yard_book: Book) -> None:
    form = form_of(
        yard_book, "tap-spiral-point-aluminium-bronze", "received.drop",
        **{"received.diameter": "11,98", "received.land_width": "3.2 mm", "received.drop": "0.2 mm"},
    )  # fmt: skip
    (found,) = received_reliefs(form.job)
    assert found.trouble == "Diameter: '11,98' has a comma; write the decimal with a point: 11.98."


def test_a_comma_that_may_part_two_readings_is_asked_about_both_ways(yard_book: Book) -> None:
    form = form_of(
        yard_book, "reamer-hand-plain-steel", "received.land_width", **{"received.land_width": "1,2 mm"}
    )
    (fault,) = form.faults_at(form.row)
    assert (
        "write 1.2 mm with a point for a decimal, or 1, 2 mm with a blank for several numbers" in fault.text
    )
    form.go_to("received.diameter")
    form.put("12,1 mm")
    (fault,) = form.faults_at(form.row)
    assert fault.text.endswith("write the decimal with a point: 12.1 mm.")


async def test_on_the_screen_enter_lands_on_the_comma_and_goes_past_it(at_the_yard: Any) -> None:
    async with at_the_yard() as hands:
        await hands.do(
            "bronze spi",
            "<ctrl+f>",
            "<ctrl+n>",
            "<down>",
            "11,98",
            "<enter>",
            "3.2",
            "<enter>",
            "c",
            "<enter>",
        )
        shown = await hands.do("8", "<enter>")
        assert "> Diameter             11,98" in shown
        assert "[Wanted]" in await hands.do("<enter>")
        assert "> Diameter             11,98" in await hands.do("<ctrl+p>")
