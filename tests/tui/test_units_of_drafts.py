"""A draft is taken up in the unit that it was typed in, whatever unit is worked in then."""

from __future__ import annotations

from dataclasses import replace

import pytest

from geometry.calculations import calculation
from library.book.model import Entry
from library.calc.answer import answer
from library.cards.bare_numbers import in_the_units_of
from library.cards.merging import merge
from library.cards.model import Card, Setting
from library.drafts.draft import Draft, from_bytes, to_bytes
from library.units.system import INCH, METRIC, Display
from tui.calculators import Calculators
from tui.screens.draft_screens import without_unit
from tui.session import Session
from tui.view.text_line import TextLine

ENTRY = Entry("gun-tap", "tap", "Gun tap")
TYPED = {"diameter": "12, 14", "land_width": "3.2 +/- 0.1", "relief_angle": "8", "pitch": "10 tpi"}


def _draft(typed: dict[str, str], display: Display) -> Draft:
    """What the calculator keeps of what was typed, through its file."""
    calculators = Calculators(Session(display=display))
    form = calculators.form(ENTRY, calculation("relief-drop"))
    form.typed.update({key: TextLine.ending(text) for key, text in typed.items()})
    return from_bytes(to_bytes(calculators.draft(ENTRY)))


def _taken_up(draft: Draft, display: Display) -> dict[str, str]:
    calculators = Calculators(Session(display=display))
    calculators.take_up(ENTRY, draft)
    return {key: line.text for key, line in calculators.form(ENTRY, calculation("relief-drop")).typed.items()}


@pytest.mark.parametrize(("then", "now", "unit"), [(METRIC, INCH, "mm"), (INCH, METRIC, "in")])
def test_numbers_of_a_draft_mean_what_they_meant_when_they_were_typed(
    then: Display, now: Display, unit: str
) -> None:
    draft = _draft(TYPED, then)
    assert _taken_up(draft, then) == TYPED
    assert _taken_up(draft, now) == {
        "diameter": f"12, 14 {unit}",
        "land_width": f"3.2 {unit} +/- 0.1",
        "relief_angle": "8",
        "pitch": "10 tpi",
    }


def test_a_relief_found_from_a_draft_in_inches_is_the_same_on_a_screen_in_millimetres() -> None:
    sheet = calculation("relief-from-reading")
    typed = {"diameter": "0.5", "drop": "0.002", "land_width": "0.04", "relief_form": "flat"}
    before = answer(sheet, typed, display=INCH).result
    after = answer(sheet, _taken_up(_draft(typed, INCH), METRIC), display=METRIC).result
    assert before is not None
    assert after is not None
    assert after.outputs == before.outputs


def test_an_older_draft_is_read_in_millimetres_and_that_is_said() -> None:
    older = replace(_draft(TYPED, METRIC), units="")
    assert _taken_up(older, INCH)["diameter"] == "12, 14 mm"
    assert "read as millimetres" in without_unit(older)
    assert without_unit(_draft(TYPED, METRIC)) == ""


def test_what_nobody_opened_keeps_its_meaning_too_when_the_unit_changes() -> None:
    session = Session(display=METRIC)
    session.calculators.take_up(ENTRY, _draft({"land_width": "3.2"}, METRIC))
    session.switch_units()
    assert session.calculators.draft(ENTRY).fields == {"land_width": "3.2 mm"}
    assert session.calculators.draft(ENTRY).units == "in"


BASE = Card(
    id="2026-11-25-01",
    family="tap",
    units="mm",
    settings={"relief-drop": Setting({"land_width": "3.2"})},
)


def _land(card: Card) -> float:
    """The land that the card is worked out with, in mm."""
    display = Display("in" if card.units == "in" else "mm")
    typed = card.settings["relief-drop"].typed["land_width"]
    value = (
        answer(calculation("relief-drop"), {"land_width": typed}, display=display).inputs["land_width"].value
    )
    assert isinstance(value, float)
    return value


def test_a_card_that_somebody_else_put_into_inches_keeps_the_meaning_of_what_was_typed_in_millimetres() -> (
    None
):
    theirs = replace(in_the_units_of(BASE, "in"), remarks="Theirs.")
    merged = merge(BASE, replace(BASE, notes="Mine."), theirs)
    assert isinstance(merged, Card)
    assert (merged.notes, merged.remarks) == ("Mine.", "Theirs.")
    assert _land(merged) == 3.2


def test_a_number_typed_in_inches_keeps_its_meaning_on_a_card_that_was_saved_in_millimetres_meanwhile() -> (
    None
):
    base = replace(BASE, units="in", settings={})
    mine = replace(base, settings={"relief-drop": Setting({"land_width": "0.125"})})
    merged = merge(base, mine, in_the_units_of(base, "mm"))
    assert isinstance(merged, Card)
    # 0.125 in is 3.175 mm.
    assert _land(merged) == 3.175


def test_a_value_typed_beside_a_list_comes_back_in_its_place_and_with_its_unit() -> None:
    calculators = Calculators(Session())
    calculators.form(ENTRY, calculation("step-relief")).typed["diameter"] = TextLine.ending("6, 8")
    point = calculators.form(ENTRY, calculation("drill-point"))
    point.type("6.02")
    again = Calculators(Session(display=INCH))
    again.take_up(ENTRY, from_bytes(to_bytes(calculators.draft(ENTRY))))
    assert again.form(ENTRY, calculation("drill-point")).texts() == {"diameter": "6.02 mm"}
    assert again.form(ENTRY, calculation("step-relief")).texts() == {"diameter": "6, 8 mm"}
