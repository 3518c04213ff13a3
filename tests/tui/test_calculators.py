"""What is typed into calculators, without a screen."""

from __future__ import annotations

from geometry.calculations import calculation
from library.book.model import Book, Entry, Measure
from library.equipment.model import Machine
from tui.session import Session
from tui.view import calculator_fields
from tui.view.text_line import TextLine


def session(*cams: float) -> Session:
    throws = tuple(Measure(f"{one:g} mm", one) for one in cams)
    return Session(book=Book({}, more={"machine": {"grey": Machine("grey", "Grey", cam_throws=throws)}}))


def test_the_cams_of_the_machine_in_hand_stand_where_a_calculation_asks_for_them() -> None:
    one, sheet = session(1.0, 1.6), calculation("cam-choice")
    form = one.calculators.form(Entry("t-12", "tap", "Tap"), sheet)
    assert form.texts() == {"cam_throws": "1 mm, 1.6 mm", "throw_per": "tooth"}
    one.calculators.compute(form)
    marks = {field.key: calculator_fields.mark(form, field) for field in form.fields}
    assert (marks["cam_throws"], marks["throw_per"], marks["diameter"]) == ("machine", "machine", "needed")
    # What a person makes of it stays when the sheet is opened again.
    form.typed["cam_throws"] = TextLine.ending("2.5 mm")
    again = one.calculators.form(Entry("t-12", "tap", "Tap"), sheet)
    assert again.texts()["cam_throws"] == "2.5 mm"
    assert not again.is_laid_out("cam_throws")


def test_no_other_calculation_and_no_machine_without_cams_types_anything() -> None:
    entry = Entry("t-12", "tap", "Tap")
    assert session(1.0).calculators.form(entry, calculation("relief-drop")).texts() == {}
    assert session().calculators.form(entry, calculation("cam-choice")).texts() == {}


def test_the_diameter_found_over_a_vee_stands_in_the_other_calculations_of_the_tool() -> None:
    one, entry = session(), Entry("t-12", "tap", "Tap")
    vee = one.calculators.form(entry, calculation("vee-reading"))
    vee.typed |= {"flutes": TextLine.ending("5"), "vee_reading": TextLine.ending("17.89 mm")}
    offset = one.calculators.form(entry, calculation("face-offset"))
    one.calculators.compute(offset)
    assert offset.answer is not None
    # By hand: 2 * 17.89 / (1 + 1 / sin 54) = 16.0013. Derived.
    assert offset.answer.inputs["diameter"].text == "16.001 mm"
    assert offset.is_handed("diameter")
    assert "diameter" not in offset.told()  # nobody typed it, and a card that is begun here works it out anew
    reamer = one.calculators.form(entry, calculation("reamer-size"))
    one.calculators.compute(reamer)
    assert reamer.given()["measured_diameter"] == "16.001 mm"
    offset.typed["diameter"] = TextLine.ending("15.9 mm")
    one.calculators.compute(offset)
    assert offset.answer.inputs["diameter"].text == "15.9 mm"


def test_a_vee_in_which_the_tool_rocks_hands_nothing_on_and_neither_does_another_tool() -> None:
    one, entry = session(), Entry("t-12", "tap", "Tap")
    vee = one.calculators.form(entry, calculation("vee-reading"))
    vee.typed |= {"flutes": TextLine.ending("5"), "vee_reading": TextLine.ending("17.89 mm")}
    other = one.calculators.form(Entry("t-13", "tap", "Tap"), calculation("face-offset"))
    one.calculators.compute(other)
    assert not other.handed
    vee.typed["vee_angle"] = TextLine.ending("90 deg")
    offset = one.calculators.form(entry, calculation("face-offset"))
    one.calculators.compute(offset)
    assert not offset.handed
