"""A card leads whoever fills it in: what an arrow brings, where the indicator points, what is to be chosen, what is missing."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from library.book.model import Book
from library.cards.editing import edited
from library.cards.inspecting import received_reliefs
from library.cards.job import work_out
from tests.begun_cards import begun
from tests.tui.cards.conftest import form_at
from tui.view.card_form import CardForm
from tui.view.card_page import CardPage
from tui.view.lines import text_of

LANDS = {
    "tool.flutes": "4",
    "received.land_width": "3.2, 3.2, 3.1, 3.0 mm",
    "received.drop": "0.20, 0.21, 0.20, 0.20 mm",
}


def keys(action: str) -> str:
    return {"previous": "Ctrl+P"}.get(action, action)


def shown(form: CardForm, width: int = 80, height: int = 22) -> str:
    return "\n".join(text_of(one) for one in CardPage(form, keys=keys).draw(width, height))


def beside(form: CardForm) -> str:
    lines = (text_of(one).partition("│")[2] for one in CardPage(form, keys=keys).draw(80, 22))
    return " ".join(" ".join(lines).split())


@pytest.mark.parametrize("entry", ["twist-drill-jobber-plain-steel", "stub-drill-plain-steel"])
def test_an_arrow_brings_the_two_flutes_of_a_drill_and_says_so(yard_book: Book, entry: str) -> None:
    form = form_at(yard_book, begun(yard_book, entry), "tool.flutes")
    assert "Right takes 2, as the book has it." in form.row.hint
    form.brings(1)
    assert form.card.tool.flutes == "2"


def test_a_core_drill_keeps_the_flutes_of_its_own_and_brings_none(yard_book: Book) -> None:
    form = form_at(yard_book, begun(yard_book, "twist-drill-core"), "tool.flutes")
    assert form.row.hint == "Count its edges; the book has 3 to 4."
    assert not form.brings(1)
    none = form_at(yard_book, begun(yard_book, "reamer-hand-plain-steel"), "tool.flutes")
    assert none.row.hint == "Count its edges; the book has no number for this tool."


def test_flutes_stand_as_the_book_has_them_and_only_a_tool_of_one_is_not_asked_for_them(
    yard_book: Book,
) -> None:
    form = form_at(yard_book, begun(yard_book, "countersink-single-flute-90-plain-steel"), "tool.flutes")
    assert (form.row.default, form.row.giver, form.row.wants) == ("1", "book", False)
    form = form_at(yard_book, begun(yard_book, "twist-drill-jobber-plain-steel"), "tool.flutes")
    assert (form.row.default, form.row.giver, form.row.wants) == ("2", "book", True)


@pytest.mark.parametrize(
    ("entry", "points"),
    [("counterbore-m8", "along the axis"), ("end-mill-plain-steel", "along the axis"),
     ("twist-drill-jobber-plain-steel", "along the axis"), ("tap-hand-plain-steel", "at the axis")],
)  # fmt: skip
@pytest.mark.parametrize("way", ["received.drop", "after.drop"])
def test_the_line_of_the_drop_says_where_the_indicator_points(
    yard_book: Book, entry: str, points: str, way: str
) -> None:
    text = shown(form_at(yard_book, begun(yard_book, entry, **LANDS), way))
    assert f"Indicator {points}, zero at the edge, the tool turned on." in " ".join(text.split())


def test_the_picture_of_a_drop_on_an_end_is_that_along_the_axis(yard_book: Book) -> None:
    for entry, title in (
        ("counterbore-m8", "Indicator drop along the axis"),
        ("tap-hand-plain-steel", "Indicator drop"),
    ):
        form = form_at(yard_book, begun(yard_book, entry, **LANDS), "received.drop")
        first = shown(form, 120, 33).splitlines()[1]
        assert first.rpartition("│")[2].strip() == title


def test_an_end_came_with_the_flat_that_a_work_head_makes(yard_book: Book) -> None:
    card = begun(yard_book, "counterbore-m8", **{**LANDS, "tool.size": "15 mm"})
    assert {form for one in received_reliefs(work_out(card, yard_book)) for form in one.angles} == {"flat"}
    told = edited(card, "received.relief_form", "eccentric")
    assert {form for one in received_reliefs(work_out(told, yard_book)) for form in one.angles} == {
        "eccentric"
    }


def test_a_range_of_the_relief_that_is_ground_is_to_be_chosen_within(yard_book: Book) -> None:
    form = form_at(yard_book, begun(yard_book, "counterbore-m8"), "wanted.end_relief_angle")
    assert form.row.wants
    assert form.row.hint.startswith("To be chosen, 6 to 8 deg: a range sets nothing.")
    form.go_to("wanted.rake_angle")
    assert "choose 6 to 8 deg" in shown(form)
    form.go_to("wanted.end_relief_angle")
    form.brings(1)
    assert (form.card.wanted["end_relief_angle"].value, form.row.wants) == ("6 deg", False)


def test_an_empty_line_promises_nothing_that_the_book_does_not_have(yard_book: Book) -> None:
    form = form_at(yard_book, begun(yard_book, "counterbore-m8"), "wanted.rake_angle")
    assert "the book has" not in form.row.hint
    form.go_to("wanted.diameter")
    assert "emptied, it is what the book has" in form.row.hint


def test_a_range_that_sets_nothing_is_left_alone(yard_book: Book) -> None:
    rows = form_at(yard_book, begun(yard_book, "twist-drill-jobber-plain-steel"), "wanted.surface").rows
    (margin,) = (row for row in rows if row.way == "wanted.margin_width")
    assert not margin.wants


def test_what_a_calculation_wants_of_another_step_is_named_with_the_step_and_its_key(yard_book: Book) -> None:
    text = shown(
        form_at(
            yard_book,
            begun(yard_book, "counterbore-m8", **{"wanted.surface": "land"}),
            "settings.wheel-speed",
        )
    )
    said = " ".join(text.split())
    assert "for want of rake angle, on step 3, Wanted (Ctrl+P goes back)" in said
    drill = form_at(yard_book, begun(yard_book, "twist-drill-ground-down"), "settings.wheel-speed")
    below = [text for row in drill.rows for text in row.below if text.startswith("for want of")]
    assert any("land width, on step 2, Received" in text for text in below)


def test_a_card_on_which_nothing_was_measured_yet_says_what_is_to_be_measured(yard_book: Book) -> None:
    card = begun(yard_book, "tap-hand-plain-steel", **{"tool.thread": "M12"})
    said = beside(form_at(yard_book, card, "result"))
    assert "Nothing was measured after grinding yet." in said
    assert "Still to be measured on the page After: indicator drop at the heel, diameter." in said
    assert "Nothing keeps the card open" not in said
    measured = edited(card, "after.diameter", "11.9 mm")
    assert "Nothing was measured" not in beside(form_at(yard_book, measured, "result"))


async def test_who_closes_a_card_without_a_reading_is_told_so(at_the_yard: Any, yard: Path) -> None:
    async with at_the_yard() as hands:
        await hands.type("tap hand plain steel")
        await hands.press("ctrl+f")
        await hands.press("f8")
        await hands.type("close the card")
        await hands.press("enter")
        assert "Nothing was measured after grinding." in hands.shown()


def test_readings_of_four_lands_keep_their_unit_in_the_narrow_column(yard_book: Book) -> None:
    card = begun(
        yard_book, "tap-hand-plain-steel",
        **{**LANDS, "tool.thread": "M12", "received.diameter": "11.98 mm", "after.drop": "0.34 mm"},
    )  # fmt: skip
    text = shown(form_at(yard_book, card, "after.drop"))
    lines = [line.partition("│")[2].strip() for line in text.splitlines()]
    assert "mm" not in lines
    assert "0.340, 0.340, 0.329, 0.319 mm" in lines


def test_nothing_on_the_pages_of_a_card_is_cut_at_eighty_columns(yard_book: Book) -> None:
    for entry in (
        "tap-spiral-point-aluminium-bronze", "reamer-machine-stainless-austenitic", "counterbore-m8",
        "countersink-multi-flute-90-plain-steel", "twist-drill-ground-down", "step-drill-spiral-flute-plain-steel",
        "end-mill-plain-steel",
    ):  # fmt: skip
        form = CardForm(yard_book, begun(yard_book, entry, **{**LANDS, "tool.size": "12 mm"}))
        for step in range(6):
            form.change_step(step - form.step)
            for way in [row.way for row in form.rows]:
                form.go_to(way)
                # The line of the steps has the worst of the step in short; its sentence stands below in full.
                lines = CardPage(form, keys=keys).draw(80, 22)[1:]
                assert not [text for one in lines if "…" in (text := text_of(one))], (entry, way)


def test_enter_goes_back_to_what_a_line_that_was_added_below_has_jumped_over(yard_book: Book) -> None:
    form = form_at(yard_book, begun(yard_book, "ferry-hatch-dowel-drill"), "received")
    form.put("Too big")
    while form.focus != "received.land_width":
        assert form.go_on()
    form.put("3.1 mm")
    form.go_on()
    assert form.focus == "received.land_measured_as"
    form.open("received", "body_diameter")
    form.put("9 mm")
    assert form.go_on()
    assert form.focus == "received.drop"
    # Who leaves it empty has seen it: it stops nobody twice.
    assert form.go_on()
    assert form.row.section == "wanted"
    form.go_to("received.body_diameter")
    form.go_on()
    assert form.row.section == "wanted"
