"""Calculations answered from typed text and from an entry of the book."""

from __future__ import annotations

import math

import pytest

from geometry.calculations import calculation
from library.book.model import Book, Caution, Citation, Entry, Family, Material, Measure, Value
from library.calc.answer import answer
from library.calc.cautions import cautions_for
from library.calc.report import as_data, cited
from library.units.system import INCH, METRIC

ENTRY = Entry(
    id="yard-tap",
    family="tap",
    title="Yard tap",
    work_material="bronze",
    values={
        "diameter": Value("diameter", usual=Measure("12 mm", 12.0)),
        "pitch": Value("pitch", usual=Measure("1.75 mm", 1.75)),
        "land_width": Value("land_width", usual=Measure("0.25 D", 0.25, per_diameter=True)),
        "chamfer_relief_angle": Value("chamfer_relief_angle", low=Measure("4 deg", math.radians(4))),
        "relief_form": Value("relief_form", usual=Measure("flat", word="flat")),
    },
    cautions=("dust",),
)
BOOK = Book(
    entries={"yard-tap": ENTRY},
    families={"tap": Family("tap", "Taps", cautions=("hands",))},
    materials={"bronze": Material("bronze", "Bronze", cautions=("fumes",))},
    cautions={
        name: Caution(name, name, f"Mind the {name}.", Citation("common practice"))
        for name in ("dust", "hands", "fumes", "eyes", "defer", "unused")
    },
)
AXIAL = calculation("lead-over-land")
DROP = calculation("relief-drop")


def test_what_is_typed_wins_over_the_entry_and_the_entry_over_the_default() -> None:
    found = answer(AXIAL, {"land_width": "3.2 mm"}, entry=ENTRY, book=BOOK)
    assert {key: one.origin for key, one in found.inputs.items()} == {
        "diameter": "entry",
        "pitch": "entry",
        "thread_taper": "default",
        "starts": "default",
        "hand": "default",
        "land_width": "given",
        "land_measured_as": "default",
    }
    assert found.result is not None
    # M12 x 1.75, land 3.2 as an arc: 1.75 * 3.2 / (pi * 12), by hand.
    assert found.result.outputs["lead_over_land"] == pytest.approx(0.14854, abs=5e-6)


def test_a_share_of_the_diameter_follows_the_diameter_that_was_typed() -> None:
    found = answer(AXIAL, {"diameter": "20 mm"}, entry=ENTRY)
    assert found.inputs["land_width"].value == 5.0
    assert found.inputs["land_width"].text == "0.25 D"
    without = answer(
        DROP, {}, entry=Entry("x", "tap", "x", values={"land_width": ENTRY.values["land_width"]})
    )
    assert "land_width" in {issue.key for issue in without.issues}


def test_a_word_of_the_entry_fills_a_choice() -> None:
    assert answer(DROP, {}, entry=ENTRY).inputs["relief_form"].value == "flat"


def test_threads_per_inch_typed_replace_the_pitch_of_the_entry() -> None:
    found = answer(
        AXIAL, {"threads_per_inch": "10", "land_width": "0.2 in", "diameter": "3/4 in"}, entry=ENTRY
    )
    assert "pitch" not in found.inputs
    assert found.result is not None
    # Common practice, no source: a 3/4-10 tap with a land of 0.200 in as an arc advances 0.0085 in.
    assert found.result.outputs["lead_over_land"] / 25.4 == pytest.approx(0.0085, abs=5e-5)


def test_a_value_in_the_unit_of_a_sister_quantity_goes_there() -> None:
    found = answer(AXIAL, {"pitch": "10 tpi", "land_width": "0.2 in", "diameter": "3/4 in"})
    assert found.inputs["threads_per_inch"].text == "10 tpi"
    speed = answer(
        calculation("wheel-speed"),
        {"wheel_diameter": "150", "surface_speed": "25 m/s", "rated_speed": "3600 rpm"},
    )
    assert "rated_rotational_speed" in speed.inputs
    assert not speed.issues


def test_every_trouble_is_told_at_once_and_names_its_key() -> None:
    found = answer(
        AXIAL, {"diameter": "0,5 mm", "land_widht": "3", "hand": "middle", "starts": "1.5", "pitch": "2"}
    )
    said = {issue.key: issue.text for issue in found.issues}
    assert set(said) == {"diameter", "land_widht", "hand", "starts", "land_width"}
    assert said["land_widht"].endswith("Did you mean land_width?")
    assert all(key in text for key, text in said.items() if key != "land_width")
    assert found.result is None


def test_an_out_of_range_value_says_what_was_given_and_what_would_be_accepted() -> None:
    (issue,) = answer(DROP, {"diameter": "12", "relief_angle": "60", "land_width": "2"}).issues
    assert issue.text == "relief_angle is 60.00 deg; it can be from 0.00 deg to 45.00 deg."


def test_a_tool_that_cannot_exist_is_refused_with_its_key_and_amounts() -> None:
    (issue,) = answer(
        DROP, {"diameter": "12", "relief_angle": "8", "land_width": "13", "land_measured_as": "chord"}
    ).issues
    assert issue.key == "land_width"
    assert "13.000 mm" in issue.text
    assert "chord" not in issue.text or "arc" in issue.text


def test_blank_fields_do_not_count() -> None:
    assert (
        answer(AXIAL, {"land_width": "  ", "diameter": ""}, entry=ENTRY).inputs["land_width"].origin
        == "entry"
    )


def test_words_may_be_shortened_to_their_first_letters() -> None:
    found = answer(AXIAL, {"hand": "L", "land_width": "3.2", "land_measured_as": "ch"}, entry=ENTRY)
    assert (found.inputs["hand"].value, found.inputs["land_measured_as"].value) == ("left", "chord")


def test_numbers_without_a_unit_follow_the_unit_that_is_worked_in() -> None:
    metric = answer(DROP, {"diameter": "12.7", "relief_angle": "7", "land_width": "2.032"}, display=METRIC)
    inch = answer(DROP, {"diameter": "0.5", "relief_angle": "7", "land_width": "0.080"}, display=INCH)
    assert metric.result is not None
    assert inch.result is not None
    for key, value in metric.result.outputs.items():
        assert inch.result.outputs[key] == pytest.approx(value, rel=1e-12)


def test_cautions_come_from_calculation_entry_family_and_material_and_the_deferring_one_is_last() -> None:
    keys = [caution.id for caution in cautions_for(DROP, ENTRY, BOOK)]
    assert set(keys) == {"eyes", "hands", "dust", "fumes", "defer"}
    assert len(keys) == 5
    assert keys[-1] == "defer"


def test_the_data_of_an_answer_is_unrounded_in_millimetres_and_degrees() -> None:
    found = answer(
        DROP, {"diameter": "12", "relief_angle": "8", "land_width": "2", "relief_form": "flat"}, book=BOOK
    )
    data = as_data(found, BOOK)
    assert data["calculation"] == "relief-drop"
    assert data["inputs"]["diameter"] == {"value": 12.0, "unit": "mm", "from": "given", "text": "12"}
    assert data["inputs"]["relief_angle"]["value"] == pytest.approx(8.0)
    assert data["inputs"]["land_measured_as"] == {
        "value": "arc",
        "unit": "",
        "from": "default",
        "text": "arc",
    }
    # geometry.md's construction by hand: 6 - 6 cos 8 / cos(19.0986 - 8).
    assert data["outputs"]["heel_drop"]["value"] == pytest.approx(-0.0548499, abs=1e-7)
    assert data["outputs"]["land_angle"]["unit"] == "deg"
    assert [station["fraction"] for station in data["stations"]] == [0.0, 0.25, 0.5, 0.75, 1.0]
    assert data["stations"][-1]["angle"] == pytest.approx(math.degrees(1 / 3))
    assert data["stations"][-1]["drop"] == data["outputs"]["heel_drop"]["value"]
    assert data["checks"][0]["state"] == "stop"
    assert {"key", "text", "source"} == set(data["cautions"][0])


def test_lengths_are_given_in_inches_where_that_is_worked_in() -> None:
    found = answer(
        DROP, {"diameter": "0.5", "relief_angle": "7", "land_width": "0.08"}, book=BOOK, display=INCH
    )
    data = as_data(found, BOOK, INCH)
    assert data["inputs"]["diameter"]["value"] == pytest.approx(0.5)
    # 0.08 tan 7 degrees, by hand.
    assert data["outputs"]["heel_drop"]["value"] == pytest.approx(0.0098228, abs=1e-7)
    assert data["outputs"]["heel_drop"]["unit"] == "in"


def test_a_source_is_written_with_its_document_and_place() -> None:
    assert cited(BOOK, Citation("published", "Some Handbook", "table 4")) == "Some Handbook, table 4"
    assert cited(BOOK, Citation("missing")) == "no source given"


def test_a_stop_within_the_plus_or_minus_is_told_first() -> None:
    typed = {
        "diameter": "12 mm",
        "relief_angle": "8 deg",
        "land_width": "1.6 mm +/- 0.1",
        "relief_form": "flat",
    }
    found = answer(DROP, typed)
    assert found.result is not None
    # The flat is back on the circle after 12 mm x 8 deg = 1.6755 mm of arc: 1.6 clears and 1.7 does not.
    assert found.result.checks[0].state == "watch"
    assert "Within your +/-" in str(found.result.checks[0].sentence)
    closer = answer(DROP, typed | {"land_width": "1.6 mm +/- 0.05"})
    assert closer.result is not None
    assert all("Within your +/-" not in str(check.sentence) for check in closer.result.checks)


def test_what_is_read_off_the_tool_is_not_filled_from_the_entry() -> None:
    found = answer(calculation("relief-from-reading"), {"drop": "0.28 mm"}, entry=ENTRY)
    assert "land_width" not in found.inputs
    assert "relief_form" not in found.inputs
    assert [issue.key for issue in found.issues] == ["land_width"]


@pytest.mark.parametrize(
    ("typed", "states"),
    [("11.9 mm", []), ("10.5 mm", ["watch"]), (".023 in", ["stop"]), ("20 mm", ["stop"])],
)
def test_a_diameter_that_the_tool_of_the_entry_cannot_have_is_doubted(typed: str, states: list[str]) -> None:
    found = answer(
        DROP, {"diameter": typed, "relief_angle": "4 deg", "land_width": ".1 mm"}, entry=ENTRY, book=BOOK
    )
    assert found.result is not None
    told = [one for one in found.result.checks if str(one.sentence).startswith("A diameter of ")]
    assert [one.state for one in told] == states
    assert all(found.result.checks[0] is one for one in told if one.state == "stop")


def test_on_a_cone_a_smaller_circle_may_be_measured_and_is_not_doubted() -> None:
    sink = Entry(
        "sink", "countersink", "Sink", values={"diameter": Value("diameter", usual=Measure("20 mm", 20.0))}
    )
    texts = {"surface": "cone", "included_angle": "90 deg", "relief_angle": "8 deg", "land_width": "1 mm"}
    for diameter, doubted in (("8 mm", False), ("25 mm", True)):
        found = answer(DROP, {**texts, "diameter": diameter}, entry=sink)
        assert found.result is not None
        assert (
            any(
                "cannot be" in str(one.sentence) or "A diameter of" in str(one.sentence)
                for one in found.result.checks
            )
            == doubted
        )
