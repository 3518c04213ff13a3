"""What is typed into calculators, without a screen."""

from __future__ import annotations

from geometry.calculations import calculation
from library.book.model import Book, Entry, Measure
from library.equipment.model import Machine
from tui.session import Session
from tui.view.text_line import TextLine


def session(*cams: float) -> Session:
    throws = tuple(Measure(f"{one:g} mm", one) for one in cams)
    return Session(book=Book({}, more={"machine": {"grey": Machine("grey", "Grey", cam_throws=throws)}}))


def test_the_cams_of_the_machine_in_hand_stand_where_a_calculation_asks_for_them() -> None:
    one, sheet = session(1.0, 1.6), calculation("cam-choice")
    form = one.calculators.form(Entry("t-12", "tap", "Tap"), sheet)
    assert form.texts() == {"cam_throws": "1 mm, 1.6 mm", "throw_per": "tooth"}
    # What a person makes of it stays when the sheet is opened again.
    form.typed["cam_throws"] = TextLine.ending("2.5 mm")
    again = one.calculators.form(Entry("t-12", "tap", "Tap"), sheet)
    assert again.texts()["cam_throws"] == "2.5 mm"


def test_no_other_calculation_and_no_machine_without_cams_types_anything() -> None:
    entry = Entry("t-12", "tap", "Tap")
    assert session(1.0).calculators.form(entry, calculation("relief-drop")).texts() == {}
    assert session().calculators.form(entry, calculation("cam-choice")).texts() == {}
