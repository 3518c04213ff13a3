"""What is typed into calculators, without a screen."""

from __future__ import annotations

from dataclasses import replace

import pytest

from geometry.calculations import calculation
from library.book.model import Entry, Family, Measure, Value
from library.search.along import Along
from library.search.sizes import Size
from tests.tui.without_a_screen import along, opened, session, word
from tui.view import calculator_fields
from tui.view.text_line import TextLine


def test_the_throw_that_a_countersink_needs_is_one_number_in_both_of_its_calculations() -> None:
    entry, shop = Entry("c-90", "countersink", "Countersink"), session(1.0, 5.0)
    told = {"included_angle": "90 deg", "diameter": "19.05 mm", "flutes": "3", "relief_angle": "9 deg"}
    found = []
    for name, key in (("cone-relief", "needed_radial_throw"), ("cam-choice", "throw_per_tooth")):
        form = shop.calculators.form(entry, calculation(name))
        form.typed["surface"] = TextLine.ending("cone")
        form.typed |= {form.slot(one): TextLine.ending(text) for one, text in told.items()}
        shop.calculators.compute(form)
        assert form.answer is not None
        assert form.answer.result is not None
        found.append(form.answer.result.outputs[key])
    # 9.525 tan 9 / cos 45 * 2 pi / 3 = 4.468 mm from tooth to tooth. Derived.
    assert found == [pytest.approx(4.468, abs=5e-4)] * 2


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


def test_the_class_behind_a_thread_goes_along_and_opens_the_limits_of_the_tap() -> None:
    shop, entry = session(), Entry("t-half", "tap", "Tap")
    book = shop.book
    assert book is not None
    shop.book = replace(book, families={"tap": Family("tap", "Tap", kind="tap")})
    shop.calculators.carry(entry, Along(Size("1/2-13 2B", True)))
    sheet = shop.calculators.first(entry)
    assert sheet is not None
    assert sheet.name == "tap-limits"
    form = shop.calculators.form(entry, sheet)
    shop.calculators.compute(form)
    assert form.answer is not None
    assert form.answer.result is not None
    assert form.answer.inputs["thread_class"].value == "2B"
    assert any("recommends a tap marked" in str(one.sentence) for one in form.answer.result.checks)
    form.focus = "tap_limit"
    form.edit("right")
    assert form.in_hand.text == "H1"


def test_a_number_of_flutes_that_was_sought_stands_in_the_calculation_and_not_that_of_the_book() -> None:
    three = Value("flutes", Measure("2", 2.0), Measure("3", 3.0), Measure("6", 6.0))
    one, entry = session(1.0, 5.0), Entry("c-90", "countersink", "Countersink", values={"flutes": three})
    looked_at = one.calculators.looked_at(entry, calculation("cam-choice"), Along(None, 4))
    assert looked_at.answer is not None
    assert looked_at.answer.inputs["flutes"].value == 4
    assert not one.calculators.tools_typed_for()  # A look types nothing.
    one.calculators.carry(entry, Along(None, 4))
    form = one.calculators.form(entry, calculation("cam-choice"))
    one.calculators.compute(form)
    assert form.answer is not None
    assert form.answer.inputs["flutes"].value == 4
    (flutes,) = [field for field in form.fields if field.key == "flutes"]
    assert calculator_fields.mark(form, flutes) == "typed"
    # What a person makes of it stays, also where a size is sought with it, until another number is sought.
    form.typed["flutes"] = TextLine.ending("5")
    for sought, stands in (
        (Along(Size("20"), 4), "5"),
        (Along(Size("20")), "5"),
        (Along(Size("20"), 6), "6"),
    ):
        one.calculators.carry(entry, sought)
        assert form.texts()["flutes"] == stands
    assert form.texts()["diameter"] == "20 mm"


def test_a_size_that_a_tool_was_found_with_is_told_as_nominal_where_it_is_measured_and_counts_elsewhere() -> (
    None
):
    calculators = session().calculators
    entry = Entry("r", "reamer", "Reamer")
    calculators.carry(entry, Along(Size("12", tolerance="H7")))
    elsewhere = calculators.form(entry, calculation("relief-drop"))
    measured = calculators.form(entry, calculation("measured-tool"))
    calculators.compute(measured)
    assert elsewhere.texts()["diameter"] == "12 mm"
    assert "diameter" in measured.needed()
    measured.focus = "diameter"
    assert measured.is_nominal("diameter")
    measured.edit("backspace")
    measured.clear()
    assert elsewhere.texts()["diameter"] == "12 mm"
    # What is typed counts, also where it is just the nominal size, and stands in the other calculations too.
    for text in ("12 mm", "12.008"):
        measured.clear()
        for letter in text:
            measured.type(letter)
        calculators.compute(measured)
        assert measured.value("diameter") is not None
        assert not measured.is_nominal("diameter")
        assert elsewhere.texts()["diameter"] == text
    calculators.fill(entry, {"diameter": "12 mm"})
    assert measured.texts()["diameter"] == "12 mm"
    calculators.carry(entry, Along(Size("1/2 in")))
    calculators.compute(measured)
    assert measured.is_nominal("diameter")


def test_a_size_that_was_only_sought_is_told_as_nominal_until_somebody_types_one() -> None:
    shop, entry = session(), Entry("r", "reamer", "Reamer")
    shop.calculators.carry(entry, along("12"))
    form = opened(shop, entry, "relief-drop")
    assert (form.texts()["diameter"], word(form, "diameter")) == ("12 mm", "nominal")
    form.focus = "diameter"
    form.edit("right")
    assert word(form, "diameter") == "nominal"
    # Typed it is a person's own, also where it is the same to the letter.
    for letter in "12 mm":
        form.type(letter)
    form.leave()
    for letter in "12 mm":
        form.type(letter)
    shop.calculators.compute(form)
    assert (form.texts()["diameter"], word(form, "diameter")) == ("12 mm", "typed")


def test_a_diameter_typed_as_measured_goes_along_in_place_of_the_nominal_one_and_says_whence() -> None:
    shop, entry = session(), Entry("r", "reamer", "Reamer")
    shop.calculators.carry(entry, along("12", "H7"))
    size = opened(shop, entry, "reamer-size")
    size.typed["measured_diameter"] = TextLine.ending("12.006")
    form = opened(shop, entry, "relief-drop")
    assert (form.given()["diameter"], word(form, "diameter")) == ("12.006 mm", "found")
    assert "diameter as measured" in form.handed_by["diameter"]
    assert "diameter" not in form.told()
    # An emptying key has nothing to take away, and the nominal size of the hole stays.
    form.focus = "diameter"
    form.clear()
    form.edit("backspace")
    assert opened(shop, entry, "reamer-size").texts()["nominal_diameter"] == "12 mm"
    form.type("11.9")
    shop.calculators.compute(form)
    assert (form.given()["diameter"], word(form, "diameter")) == ("11.9", "typed")


@pytest.mark.parametrize(
    ("sheet", "measured", "diameter"),
    [
        ("relief-drop", "12.5", "12 mm"),
        ("relief-drop", "12.006", "12.006 mm"),
        ("relief-facets", "12.1", "12 mm"),  # it asks for the body: the diameter is the new one
    ],
)
def test_a_diameter_as_measured_that_is_ground_down_is_none_to_set_by(
    sheet: str, measured: str, diameter: str
) -> None:
    shop, entry = session(), Entry("r", "reamer", "Reamer")
    shop.calculators.carry(entry, along("12", "H7"))
    size = opened(shop, entry, "reamer-size")
    size.typed["measured_diameter"] = TextLine.ending(measured)
    assert opened(shop, entry, sheet).given()["diameter"] == diameter


@pytest.mark.parametrize("faulty", ["wide", "8 deg", "-1 mm"])
def test_a_faulty_measured_diameter_goes_nowhere_and_neither_does_one_over_the_name_of_a_thread(
    faulty: str,
) -> None:
    shop, entry = session(), Entry("r", "reamer", "Reamer")
    shop.calculators.carry(entry, along("12"))
    size = opened(shop, entry, "reamer-size")
    size.typed["measured_diameter"] = TextLine.ending(faulty)
    assert opened(shop, entry, "relief-drop").given()["diameter"] == "12 mm"
    size.typed["measured_diameter"] = TextLine.ending("11.98")
    shop.calculators.carry(entry, Along(Size("M12", True)))
    # Its pitch would be lost.
    assert opened(shop, entry, "lead-over-land").given()["diameter"] == "M12"


def test_what_was_typed_before_the_tool_was_sought_anew_stands_there_as_kept() -> None:
    shop, entry = session(), Entry("r", "reamer", "Reamer")
    calculators = shop.calculators
    assert calculators.come_to(entry, 1) == ()
    calculators.carry(entry, along("12", "H7"))
    form = opened(shop, entry, "relief-drop")
    form.focus = "land_width"
    form.type("2")
    size = opened(shop, entry, "reamer-size")
    size.typed["measured_diameter"] = TextLine.ending("12.006")
    # Whoever only looked at the list finds all as it was.
    assert calculators.come_to(entry, 1) == ()
    form = opened(shop, entry, "relief-drop")
    assert word(form, "land_width") == "typed"
    # With the find line changed, or another tool between, it may be another tool.
    assert set(calculators.come_to(entry, 2)) == {"land_width", "measured_diameter"}
    form = opened(shop, entry, "relief-drop")
    assert (form.texts()["land_width"], word(form, "land_width")) == ("2", "kept")
    # What was measured of the tool before takes no place of the size that is sought now.
    assert (form.given()["diameter"], word(form, "diameter")) == ("12 mm", "nominal")
    form.focus = "land_width"
    form.type("3")
    shop.calculators.compute(form)
    assert word(form, "land_width") == "typed"
    calculators.come_to(Entry("t", "tap", "Tap"), 2)
    assert set(calculators.come_to(entry, 2)) == {"land_width", "measured_diameter"}


def test_what_follows_from_figures_that_are_kept_is_told_as_kept_too() -> None:
    shop, entry = session(), Entry("t-12", "tap", "Tap")
    vee = opened(shop, entry, "vee-reading")
    vee.typed |= {"flutes": TextLine.ending("5"), "vee_reading": TextLine.ending("17.89 mm")}
    shop.calculators.compute(vee)
    assert word(opened(shop, entry, "face-offset"), "diameter") == "found"
    shop.calculators.come_to(entry, 1)
    assert word(opened(shop, entry, "face-offset"), "diameter") == "kept"


def test_starting_over_forgets_what_was_typed_and_not_what_the_tool_was_found_with() -> None:
    shop, entry = session(1.0), Entry("r", "reamer", "Reamer")
    shop.calculators.carry(entry, Along(Size("12"), 6))
    form = opened(shop, entry, "cam-choice")
    form.focus = "land_width"
    form.type("2")
    shop.calculators.start_over(entry)
    form = opened(shop, entry, "cam-choice")
    assert form.texts() == {"diameter": "12 mm", "flutes": "6", "cam_throws": "1 mm", "throw_per": "tooth"}
    assert shop.calculators.draft(entry).fields.keys() == {"diameter", "nominal_diameter", "flutes"}
