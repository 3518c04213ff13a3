"""What the machine in hand and the wheels of the shop bring into the calculators."""

from __future__ import annotations

import pytest

from geometry.calculations import calculation
from library.book.model import Book, Entry, Measure
from library.equipment.model import Machine, Rating, Wheel
from tests.tui.without_a_screen import opened, session, word
from tui.session import Session
from tui.view import calculator_fields
from tui.view.text_line import TextLine


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


@pytest.mark.parametrize("how", ["empty", "backspace"])
def test_an_emptied_field_gets_back_what_the_machine_has_and_says_whose_that_is(how: str) -> None:
    one, sheet = session(1.0, 1.6), calculation("cam-choice")
    form = one.calculators.form(Entry("t-12", "tap", "Tap"), sheet)
    one.calculators.compute(form)
    marks = {field.key: field for field in form.fields}
    for key, typed, machine in (("throw_per", "turn", "tooth"), ("cam_throws", "2 mm", "1 mm, 1.6 mm")):
        form.focus = key
        form.type(typed)
        one.calculators.compute(form)
        assert calculator_fields.mark(form, marks[key]) == "typed"
        if how == "empty":
            form.clear()
        else:
            for _ in typed:
                form.edit("backspace")
        one.calculators.compute(form)
        assert form.line(key).text == machine
        assert calculator_fields.mark(form, marks[key]) == "machine"
        # Emptied where the machine has filled it already, it stays so.
        form.clear()
        assert form.line(key).text == machine


def test_after_another_machine_is_in_hand_an_emptied_field_gets_what_that_one_has() -> None:
    one, sheet, entry = session(1.0), calculation("cam-choice"), Entry("t-12", "tap", "Tap")
    form = one.calculators.form(entry, sheet)
    form.focus = "cam_throws"
    form.type("2 mm")
    one.book = session(0.5).book
    form = one.calculators.form(entry, sheet)
    assert form.line("cam_throws").text == "2 mm"
    form.clear()
    assert form.line("cam_throws").text == "0.5 mm"


def test_a_throw_is_counted_as_the_machine_in_hand_counts_it_wherever_that_is_asked() -> None:
    entry = Entry("c-82", "countersink", "Countersink")
    one = session(1.0, 1.6)
    looked_at = one.calculators.looked_at(entry, calculation("cone-relief"))
    assert looked_at.is_laid_out("throw_per")
    assert looked_at.texts() == {"throw_per": "tooth"}
    for name in ("cone-relief", "step-relief", "relief-drop"):
        form = one.calculators.form(entry, calculation(name))
        one.calculators.compute(form)
        assert form.texts() == {"throw_per": "tooth"}
        assert {calculator_fields.mark(form, field) for field in form.fields if field.key == "throw_per"} <= {
            "machine"
        }
    # Nobody typed it: there is nothing to keep in a draft, and nothing that was begun for the tool.
    assert not one.calculators.has_typed(entry)
    assert not one.calculators.draft(entry).fields


def test_no_other_calculation_and_no_machine_without_cams_types_anything() -> None:
    entry = Entry("t-12", "tap", "Tap")
    assert session(1.0).calculators.form(entry, calculation("vee-reading")).texts() == {}
    assert session().calculators.form(entry, calculation("cam-choice")).texts() == {}


def shop_of_wheels() -> Session:
    cup = Wheel("cup", "White cup", diameter=Measure("98 mm", 98.0), rated_speed=rated("25 m/s"))
    dish = Wheel("dish", "Dish", diameter=Measure("75 mm", 75.0), rated_speed=rated("6300 rpm"))
    bare = Wheel("bare", "Unmarked", diameter=Measure("60 mm", 60.0))
    grey = Machine("grey", "Grey", spindle_speeds=(Measure("2800 rpm", 293.2), Measure("5600 rpm", 586.4)))
    known: dict[str, dict[str, object]] = {
        "machine": {"grey": grey},
        "wheel": {one.id: one for one in (cup, dish, bare)},
    }
    return Session(book=Book({}, more=known))


def rated(text: str) -> Rating:
    return Rating(Measure(text), "rated_rotational_speed" if "rpm" in text else "rated_speed")


def test_an_arrow_brings_the_next_wheel_of_the_shop_with_its_rating_and_says_which_it_is() -> None:
    shop, entry = shop_of_wheels(), Entry("r", "reamer", "Reamer")
    form = opened(shop, entry, "wheel-speed")
    form.focus = "wheel_diameter"
    seen = []
    for _ in range(4):
        form.edit("right")
        shop.calculators.compute(form)
        of = form.whence.of_what("wheel_diameter", form.in_hand.text)
        assert of is not None
        seen.append((of.whose, form.texts()))
    assert seen == [
        ("White cup", {"wheel_diameter": "98 mm", "rated_speed": "25 m/s"}),
        ("Dish", {"wheel_diameter": "75 mm", "rated_rotational_speed": "6300 rpm"}),
        ("Unmarked", {"wheel_diameter": "60 mm"}),
        ("White cup", {"wheel_diameter": "98 mm", "rated_speed": "25 m/s"}),
    ]
    assert (word(form, "wheel_diameter"), word(form, "rated_speed")) == ("wheel", "wheel")


def test_what_was_measured_of_a_wheel_stays_when_an_arrow_brings_its_rating() -> None:
    shop, entry = shop_of_wheels(), Entry("r", "reamer", "Reamer")
    form = opened(shop, entry, "wheel-speed")
    form.focus = "wheel_diameter"
    form.type("96.5")
    form.move(1)
    form.focus = "rated_speed"
    form.edit("left")
    shop.calculators.compute(form)
    assert form.texts() == {"wheel_diameter": "96.5", "rated_speed": "25 m/s"}
    assert (word(form, "wheel_diameter"), word(form, "rated_speed")) == ("typed", "wheel")
    # In a diameter that was typed an arrow moves, to change a part of it.
    form.focus = "wheel_diameter"
    form.edit("right")
    assert form.in_hand == TextLine.ending("96.5")
    # Speeds are the machine's.
    form.focus = "rotational_speed"
    for text in ("2800 rpm", "5600 rpm", "2800 rpm"):
        form.edit("right")
        assert form.in_hand.text == text
    shop.calculators.compute(form)
    assert word(form, "rotational_speed") == "machine"


def test_in_a_shop_without_wheels_an_arrow_brings_nothing() -> None:
    shop, entry = session(1.0), Entry("r", "reamer", "Reamer")
    form = opened(shop, entry, "wheel-speed")
    form.focus = "wheel_diameter"
    form.edit("right")
    assert form.texts() == {}


def test_a_wheel_that_was_brought_is_as_the_shop_has_it_now_and_one_that_is_gone_stays_as_a_persons_own() -> (
    None
):
    shop, entry = shop_of_wheels(), Entry("r", "reamer", "Reamer")
    form = opened(shop, entry, "wheel-speed")
    form.focus = "wheel_diameter"
    form.edit("right")
    worn = Wheel("cup", "White cup", diameter=Measure("95 mm", 95.0), rated_speed=rated("25 m/s"))
    shop.book = Book({}, more={"wheel": {"cup": worn}})
    again = opened(shop, entry, "wheel-speed")
    assert again.texts() == {"wheel_diameter": "95 mm", "rated_speed": "25 m/s"}
    assert (word(again, "wheel_diameter"), word(again, "rated_speed")) == ("wheel", "wheel")
    shop.book = Book({})
    gone = opened(shop, entry, "wheel-speed")
    assert gone.texts() == {"wheel_diameter": "95 mm", "rated_speed": "25 m/s"}
    assert word(gone, "wheel_diameter") == "typed"


def test_cams_that_the_machine_has_no_more_stand_nowhere() -> None:
    one, sheet, entry = session(1.0, 1.6), calculation("cam-choice"), Entry("t-12", "tap", "Tap")
    assert "cam_throws" in one.calculators.form(entry, sheet).texts()
    one.book = session().book
    assert one.calculators.form(entry, sheet).texts() == {}
    # Looked at beside the list it is the same.
    one.book = session(2.5).book
    assert one.calculators.looked_at(entry, sheet).texts()["cam_throws"] == "2.5 mm"
