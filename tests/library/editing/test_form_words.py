"""What is wrong in a form is told in the words of the form: its lines and what belongs there, no word of the files."""

from __future__ import annotations

import re

import pytest

from library.book.opening import open_book
from library.editing.divisions import DIVISION
from library.editing.typed_tables import TABLES, as_written, complaints
from library.equipment.usual_graduations import GRADUATIONS
from tui.view.table_blanks import blanks_for

OF_FILES = re.compile(r"\[\[|= \"|\{ |\b[a-z]+_[a-z_]+\b")
"""A bracket, an assignment or a key, as only the files have them."""

TYPED = (
    "x",
    "15, 16, 18",
    "15; 16",
    "8/12 mm",
    "3,5 mm",
    "-1",
    "0",
    "5 kg",
    "15 min",
    "0.01 mm",
    "1/0",
    "rake",
    "'a; b'",
)

LINES = [(array, blank.key) for array in TABLES for blank in blanks_for(array, None) if blank.key != "value"]


@pytest.mark.parametrize(("array", "key"), LINES)
def test_no_fault_of_a_form_has_a_word_of_the_files(array: str, key: str) -> None:
    texts = {blank.key: "" for blank in blanks_for(array, None)} | {"title": "Grey", "id": "grey"}
    for typed in TYPED:
        for said in complaints(array, "grey", texts | {key: typed}, open_book(None)).values():
            assert not OF_FILES.search(said.replace(typed, "")), said
            assert said == said.strip()


@pytest.mark.parametrize(
    ("name", "typed", "said"),
    [
        ("cross-slide", "15 min", "'15 min' is an angle. A length is wanted here, such as 0.01 mm."),
        ("work-head-tilt", "0.01 mm", "'0.01 mm' is a length. An angle is wanted here, such as 15 min."),
        ("indicator", "1 deg", "'1 deg' is an angle. A length is wanted here, such as 0.01 mm."),
        ("tilt", "15", "'15' has no unit. Write it as 8 deg or 3 deg 30 min."),
        ("tilt", "0 deg", "A division of '0 deg' is none. Write what one line is worth."),
    ],
)
def test_a_division_is_told_by_what_its_line_wants(name: str, typed: str, said: str) -> None:
    assert complaints("machine", "grey", {"title": "Grey", DIVISION + name: typed}) == {DIVISION + name: said}


def test_a_division_may_be_written_in_degrees_and_minutes() -> None:
    assert complaints("machine", "grey", {"title": "Grey", DIVISION + "tilt": "0 deg 15 min"}) == {}


def test_hole_circles_are_parted_by_semicolons_too() -> None:
    assert as_written("machine", {"plate_holes": "15; 16, 18"}) == {"plate_holes": [15, 16, 18]}


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("15, 16", "'15, 16' is a list. One value is wanted here, such as 4."),
        ("15; 16", "'15; 16' is a list. One value is wanted here, such as 4."),
        ("15,16", "'15,16' has a comma. What is counted is one whole number, such as 4."),
    ],
)
def test_a_list_where_one_number_is_wanted_is_called_so(typed: str, said: str) -> None:
    assert complaints("machine", "grey", {"title": "Grey", "index_ratio": typed}) == {"index_ratio": said}


def test_the_work_head_of_a_new_machine_sets_the_bevel_as_it_sets_the_chamfer() -> None:
    sets = GRADUATIONS["work-head"]["sets"]
    assert isinstance(sets, list)
    assert {"bevel_angle", "chamfer_angle"} <= set(sets)


def test_the_name_of_a_quantity_may_be_typed_with_blanks() -> None:
    assert as_written("symptom", {"value": "Rake angle"}) == {"value": "rake_angle"}
    assert complaints("symptom", "grey", {"title": "Grey", "value": "rake angle"}, open_book(None)) == {}


def test_a_thread_without_its_measures_is_told_so_in_their_lines() -> None:
    texts = {blank.key: "" for blank in blanks_for("thread", None)} | {"title": "Grey", "source": "shop"}
    found = complaints("thread", "grey", texts, open_book(None))
    assert found == {
        "diameter": "This line must not be empty.",
        "pitch": "Fill in this line, or that of the threads per inch.",
    }


def test_a_source_without_a_text_is_told_in_the_line_of_the_text() -> None:
    found = complaints("setup", "grey", {"title": "Grey", "hold": "", "hold source": "shop"}, open_book(None))
    assert found["hold"] == (
        "There is no text here, and the line below says where it is from. Write the text, or empty that line."
    )


def test_a_quantity_that_there_is_not_does_not_bring_all_of_them() -> None:
    (said,) = complaints("symptom", "grey", {"title": "Grey", "value": "x"}, open_book(None)).values()
    assert said == (
        "There is no quantity 'x'. Write its name in the files, such as rake_angle; the words explained have them all."
    )


def test_the_line_of_a_movement_gives_an_example_that_it_takes() -> None:
    hints = {one.key: one.hint for one in blanks_for("machine", None) if one.key.startswith(DIVISION)}
    for key, hint in hints.items():
        example = hint.partition("with its unit: ")[2].partition(". ")[0]
        assert complaints("machine", "grey", {"title": "Grey", key: example}) == {}
