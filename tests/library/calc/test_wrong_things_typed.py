"""What is typed wrong is told in a sentence: what is wrong, where, and what to do."""

from __future__ import annotations

import pytest

from geometry.calculations import calculation, calculation_names
from library.book.model import Citation, Entry, Measure, Value
from library.calc.answer import Answer, answer
from library.calc.field_titles import name_in
from library.calc.wording import by_title
from library.units.system import METRIC
from tui.view.lines import text_of
from tui.view.verdict import verdict


def told(name: str, typed: dict[str, str], entry: Entry | None = None) -> list[str]:
    """What is wrong, not what is missing."""
    return [one.text for one in answered(name, typed, entry).issues if not one.missing]


def answered(name: str, typed: dict[str, str], entry: Entry | None = None) -> Answer:
    return answer(calculation(name), typed, entry=entry)


@pytest.mark.parametrize(
    ("name", "key", "text", "sentence"),
    [
        ("lead-over-land", "land_width", "M10x1", "'M10x1' is the name of a thread, which goes into diameter; a number is wanted here, such as 3.2 mm, 1/8 in or 40 thou."),
        ("tap-limits", "pitch", "M10x1", "'M10x1' is the name of a thread, which goes into nominal_diameter; a number is wanted here, such as 3.2 mm, 1/8 in or 40 thou."),
        ("wheel-speed", "rotational_speed", "M10x1", "'M10x1' is the name of a thread; a number is wanted here, such as 3000 rpm."),
        ("index-moves", "flutes", "12,5", "'12,5' has a comma; what is counted is one whole number, such as 4."),
        ("index-moves", "flutes", "5 kg", "'5 kg' has a unit; what is counted has none, such as 4."),
        ("face-offset", "diameter", "1/4/2", "'1/4/2' is no number; write one such as 3.2 mm, 1/8 in or 40 thou."),
        ("cone-relief", "included_angle", "90, 90 deg", "'90, 90 deg' is a list of 2; one value is wanted here, such as 8 deg or 3 deg 30 min."),
        ("drill-point", "diameter", "6, 8, 10", "'6, 8, 10' is a list of 3; one value is wanted here, such as 3.2 mm, 1/8 in or 40 thou."),
        ("drill-point", "point_angle", "1/0", "'1/0' has a zero under its line, which is no number; write one such as 8 deg or 3 deg 30 min."),
    ],
)  # fmt: skip
def test_a_sentence_says_what_is_wrong_where_and_what_to_do(
    name: str, key: str, text: str, sentence: str
) -> None:
    assert told(name, {key: text}) == [f"{key}: {sentence}"]


def test_a_fraction_that_is_one_sign_is_read() -> None:
    for text, mm in (("\u00bd in", 12.7), ("1\u00bd in", 38.1), ("\u215b in", 3.175)):
        assert answered("face-offset", {"diameter": text}).inputs["diameter"].value == pytest.approx(mm)


def test_what_is_wrong_with_the_diameter_is_not_told_again_of_a_share_of_it() -> None:
    land = Value("land_width", usual=Measure("0.25 D", 0.25, per_diameter=True), citation=Citation("shop"))
    found = told(
        "lead-over-land", {"diameter": "-5"}, Entry("one", "tap", "One", values={"land_width": land})
    )
    assert found == ["diameter is -5.000 mm; it can be from 0.050 mm to 500.00 mm."]


def test_a_relief_is_called_as_its_field_is() -> None:
    found = answered("relief-drop", {"surface": "land", "relief_angle": "wide"})
    first = " ".join(text_of(one).strip() for one in verdict(found, METRIC, 80, 3).lines)
    assert first.split() == (
        [
            "FIX",
            "Relief",
            "of",
            "the",
            "land:",
            "'wide'",
            "does",
            "not",
            "begin",
            "with",
            "a",
            "number,",
            "such",
            "as",
            "8",
            "deg",
            "or",
            "3",
            "deg",
            "30",
            "min.",
        ]
    )
    assert by_title("relief_angle: what.") == "Relief angle: what."


@pytest.mark.parametrize(
    ("name", "typed", "says"),
    [
        ("wheel-speed", {"wheel_diameter": "150", "rotational_speed": "0"}, "A wheel that stands grinds nothing, and one that turns less than once in a minute as good as stands."),
        ("wheel-speed", {"wheel_diameter": "150", "surface_speed": "0"}, "A wheel that stands grinds nothing, and one that turns less than once in a minute as good as stands."),
        ("wheel-speed", {"wheel_diameter": "150", "rotational_speed": ".65"}, "A wheel that stands grinds nothing, and one that turns less than once in a minute as good as stands."),
        ("wheel-speed", {"wheel_diameter": "150", "rotational_speed": "3000", "rated_rotational_speed": "0.5"}, "No wheel is rated for nothing, or for less than one turn in a minute."),
        ("wheel-speed", {"wheel_diameter": "150", "rotational_speed": "3000", "rated_speed": "0"}, "Read the greatest speed off the wheel itself"),
        ("unequal-spacing", {"flutes": "1"}, "Give two flutes or more."),
        ("drill-point", {"diameter": "12", "point_angle": "118", "chisel_edge_angle": "0"}, "must be more than 0.00 deg and less than 180.00 deg."),
        ("reamer-land", {"diameter": "12", "land_width": "0", "land_measured_as": "arc", "margin_width": "0.2", "relief_angle": "7"}, "Measure the land."),
        ("step-relief", {"diameter": "12", "included_angle": "90, 90", "flutes": "2", "radial_throw": "1", "axial_throw": "0"}, "Give the diameters of all steps from the point up."),
        ("drill-web", {"diameter": "12", "web_thickness": "1.8", "second_web": "2.6", "web_distance": "0.01", "length_ground_off": "30"}, "Measure the second web, its distance, and what is ground off again."),
    ],
)  # fmt: skip
def test_a_measure_that_cannot_be_is_told_with_what_to_do(
    name: str, typed: dict[str, str], says: str
) -> None:
    (found,) = told(name, typed)
    assert found.endswith(says) or says in found


def test_the_fault_of_the_field_in_hand_is_told_before_those_of_the_others() -> None:
    found = answered("wheel-speed", {"wheel_diameter": "wide", "rated_speed": "fast"})
    for key, title in (("wheel_diameter", "Wheel diameter"), ("rated_speed", "Rated surface speed")):
        first = text_of(verdict(found, METRIC, 80, 3, key).lines[0])
        assert first.startswith(f" FIX    {title}: ")


def test_no_two_fields_have_one_name_in_a_sentence_about_both() -> None:
    typed = {"radial_chamfer_relief": "8", "axial_chamfer_relief": "8", "square_chamfer_relief": "8"}
    found = answered("tap-chamfer", {"diameter": "10", "pitch": "1.5", **typed})
    told = " ".join(text_of(one).strip() for one in verdict(found, METRIC, 200, 9).lines)
    for view in ("square to the axis", "along the axis", "square to the edge"):
        assert f"chamfer relief, {view}" in told


@pytest.mark.parametrize("name", calculation_names())
def test_the_fields_of_a_calculation_have_titles_of_their_own(name: str) -> None:
    sheet = calculation(name)
    for surface in sheet.surfaces if sheet.field("surface") else ("",):
        called = [name_in(sheet, one.key, surface) for one in sheet.inputs]
        assert len(set(called)) == len(called)
