"""Sizes, flutes and angles in the find line: told from words, held against the book, and carried along."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from library.book.rows import Row, Rows
from library.book.search_text import Shared, search_text
from library.search.ranking import ranked
from library.search.size_in_names import is_called_by
from library.search.sizes import Size, taken_apart
from tests.library.search.finding_in_it import found, made, shipped


@pytest.mark.parametrize(
    ("text", "size"),
    [
        ("tap m12", Size("M12", True)),
        ("tap M12 x 1.5 bronze", Size("M12 x 1.5", True)),
        ("tap m12x", Size("M12", True)),
        ("1/2-13 stainless", Size("1/2-13", True)),
        ("5/8-11 unc tap", Size("5/8-11 UNC", True)),
        ("tap #10-32", Size("#10-32", True)),
        ("pipe tap g 1/4", Size("G 1/4", True)),
        ("1/4 npt", Size("1/4 NPT", True)),
        ("reamer 12", Size("12")),
        ("12.5 reamer", Size("12.5")),
        ("reamer 12mm", Size("12 mm")),
        ("reamer 12 h7", Size("12", tolerance="H7")),
        ("12H7 reamer", Size("12", tolerance="H7")),
        ("reamer 12.5 mm js8", Size("12.5 mm", tolerance="JS8")),
        ("reamer 1/2 in h8 plain", Size("1/2 in", tolerance="H8")),
        ("reamer 1/2 h8", Size("1/2 in", tolerance="H8")),
        ("tap m6", Size("M6", True)),
        ("10-32 tap", Size("#10-32", True)),
        ("2ba tap", Size("2BA", True)),
        ("8-32 unc stainless", Size("#8-32 UNC", True)),
        (".375 reamer", Size(".375 in")),
        ("0.2500 reamer", Size("0.2500 in")),
        ("reamer .5", Size(".5")),
        ("#7 drill", Size(".2010 in")),
        ("letter F drill", Size(".257 in")),
        ("no 10 tap", None),
        ("centre drill #3", None),
        ("135 degree drill", None),
        ("118 point drill", None),
        ("reamer 135", Size("135")),
        ("reamer 1/2", Size("1/2 in")),
        ("reamer 1-1/2 in", Size("1-1/2 in")),
        ('drill 3/8"', Size("3/8 in")),
        ("hand tap", None),
        ("multi 90 plain", None),
        ("drill 118 degree", None),
        ("18/8 tap", None),
        ("304 tap", None),
        ("6061 drill", None),
    ],
)
def test_a_size_is_told_from_a_word(text: str, size: Size | None) -> None:
    assert ranked(shipped(), text).size == size
    assert found(text)


def test_a_size_that_no_entry_has_takes_none_away() -> None:
    assert {row.id for row in found("tap m12")} == {row.id for row in found("tap")}
    assert {row.id for row in found("reamer 12")} == {row.id for row in found("reamer")}


def test_the_class_of_a_hole_finds_what_finishes_such_a_hole_and_nothing_else() -> None:
    assert {row.id for row in found("12 h7")} == {row.id for row in shipped() if row.family == "reamer"}
    assert {row.family for text in ("drill", "tap", "slot") for row in found(f"{text} 12 h7")} <= {"reamer"}
    assert found("countersink 12 h7") == []


def test_what_looks_like_a_class_and_is_none_stays_a_word() -> None:
    assert ranked(shipped(), "reamer 12 h77").size == Size("12")
    assert found("reamer 12 h77") == []


@pytest.mark.parametrize(
    "text",
    [
        "countersink 4 flutes",
        "4-flute countersink",
        "90 countersink 4 flute",
        "Four flutes countersink",
        "four-flute countersink",
    ],
)
def test_flutes_are_counted_and_no_word(text: str) -> None:
    rows = found(text)
    assert rows[0].title.startswith("Multi-flute countersink")
    said = shipped().values_of("flutes")
    numbers = ranked(shipped(), text).numbers
    # The book writes "2:4" where there may be four, and "1:1" where there is one flute.
    counted = [said[number] for number in numbers if number in said]
    assert counted.index("2:4") < counted.index("1:1"), "those that may have so many come first"
    assert {*numbers} == {*ranked(shipped(), "90 countersink" if "90" in text else "countersink").numbers}


@pytest.mark.parametrize(
    ("text", "without", "first"),
    [
        (
            "tap stainless spiral point 4 flutes 5/8-11",
            "tap stainless spiral point 5/8-11",
            "Spiral-point tap, austenitic stainless steel",
        ),
        ("end mill 12 mm 4 flutes", "end mill 12 mm", "End mill, high-speed steel, plain steel"),
        ("5 flutes bronze tap", "bronze tap", "Hand tap, bronze"),
        ("97-flute countersink", "countersink", "Multi-flute countersink, 82 degrees, plain steel"),
        ("drill 4 flutes 8 mm", "drill 8 mm", "Core drill"),
    ],
)
def test_a_number_of_flutes_hides_no_tool(text: str, without: str, first: str) -> None:
    assert found(text)[0].title == first
    assert {row.id for row in found(text)} == {row.id for row in found(without)}


def test_tools_of_whose_flutes_the_book_says_nothing_stay() -> None:
    assert {row.id for row in found("reamer 6 flutes")} >= {
        row.id for row in found("reamer") if row.family == "reamer"
    }


def test_a_tool_for_a_range_of_sizes_is_called_by_none_of_them() -> None:
    rows = made("Hand reamer over 1 in", "Counterbore for 1 in bolts")
    assert [is_called_by(rows, row, Size("1 in")) for row in range(2)] == [False, True]


def test_what_is_called_by_the_size_comes_first() -> None:
    assert found("counterbore m12")[0].title == "Counterbore for M12 cap screws"
    assert found("1/4 npt")[0].title == "Taper pipe tap, American (NPT)"
    assert found("m6")[1].family == "tap"


def test_a_number_that_entries_are_called_by_is_a_word() -> None:
    assert 0 < len(found("countersink 90")) < len(found("countersink"))
    assert all("90" in row.id for row in found("countersink 90"))


@pytest.mark.parametrize(("text", "unit", "written"), [("reamer 12", "mm", "12 mm"), ("reamer .5", "in", ".5 in"), ("reamer 40 thou", "mm", "40 thou"), ("tap m8", "in", "M8")])  # fmt: skip
def test_a_size_is_written_as_it_is_typed_with_the_unit_that_is_worked_in(
    text: str, unit: str, written: str
) -> None:
    size = ranked(shipped(), text).size
    assert size is not None
    assert size.written(unit) == written


@pytest.mark.parametrize("text", ["1" * 5000, "1/" * 3000, "m12 x " * 2000, "-" * 5000, "1 1/2-" * 2000])
def test_a_text_pasted_by_mistake_is_taken_apart_to_its_end(text: str) -> None:
    assert taken_apart(text).phrase == taken_apart(text.upper()).phrase


@pytest.mark.parametrize(
    ("text", "first", "last"),
    [
        ("reamer 12 plain", "Hand reamer, plain steel", "Hand reamer over 1 in, plain steel"),
        ("reamer 1 1/4 in plain", "Hand reamer over 1 in, plain steel", ""),
        ("reamer 32 mm plain", "Hand reamer over 1 in, plain steel", ""),
        ("centre drill 8", "Centre drill for work 6 to 10 mm", ""),
        ("centre drill 1/4 in", "Centre drill for work 6 to 10 mm", ""),
        ("drill 2.5 small", "Small drill, up to 3 mm", ""),
        ("drill 100 thou small", "Small drill, up to 3 mm", ""),
    ],
)
def test_a_range_of_sizes_in_a_title_is_held_against_the_size_that_is_sought(
    text: str, first: str, last: str
) -> None:
    titles = [row.title for row in found(text)]
    assert titles[0] == first
    assert not last or titles[-1] == last


@given(st.text('0123456789./- mminthou"x#', max_size=12))
def test_no_size_is_too_odd_to_be_held_against_a_range(text: str) -> None:
    ranked(shipped(), f"hand reamer {text}")


@pytest.mark.parametrize(
    ("text", "size"),
    [("drill 5", "5"), ("drill 10", "10"), ("jobber 5", "5"), ("hss drill 10", "10"), ("r1/2", "R1/2"), ("#30", ".1285 in")],
)  # fmt: skip
def test_a_number_that_other_tools_are_for_goes_along_as_the_size(text: str, size: str) -> None:
    hits = ranked(shipped(), text)
    assert hits.size is not None
    assert hits.size.text == size
    assert not is_called_by(shipped(), hits.numbers[0], hits.size)


def test_a_trapezoidal_thread_with_a_blank_in_its_name_goes_along() -> None:
    hits = ranked(shipped(), "tr 20x4")
    assert hits.size is not None
    assert not is_called_by(shipped(), hits.numbers[0], hits.size)


@pytest.mark.parametrize("text", ["step drill 4-20", "step drill 4 to 20 mm", "4 mm - 20 mm step drill"])
def test_the_first_and_the_last_step_are_no_size_of_the_tool(text: str) -> None:
    assert taken_apart(text).words == ("step", "drill")
    hits = ranked(shipped(), text)
    assert hits.size is None
    assert "do not go along" in hits.told


@pytest.mark.parametrize(
    ("text", "degrees"),
    [
        ("60 countersink", "60"),
        ("countersink 82 1/2 in", "82"),
        ("countersinks 90 12 mm 3 flutes", "90"),
        ("csk 100", "100"),
        ("chamfer tool 110", "110"),
        ("120 spot drill", "120"),
        ("90 spot drill 10 mm", "90"),
    ],
)
def test_a_usual_angle_beside_a_tool_that_is_called_by_it_finds_those_of_that_angle(
    text: str, degrees: str
) -> None:
    rows = found(text)
    assert rows
    assert all(f"{degrees} degrees" in row.title or "90-wood" in row.id for row in rows)
    assert ranked(shipped(), text).size != Size(degrees)
    assert not ranked(shipped(), text).told


def test_centre_drills_are_found_by_their_angle_which_is_not_the_work_they_are_for() -> None:
    rows = found("centre drill 60")
    assert rows[0].title == "Centre drill, type A, plain"
    assert {row.family for row in rows} == {"centre-drill"}
    assert ranked(shipped(), "centre drill 60").size is None


@pytest.mark.parametrize(
    ("text", "size", "told"),
    [
        ("spot drill 60 8", Size("8"), "None of 60 deg is among these; the first is of 90 deg."),
        (
            "45 countersink brass 10 mm",
            Size("10 mm"),
            "None of 45 deg is among these; the first is of 90 deg.",
        ),
    ],
)
def test_an_angle_that_no_tool_has_is_said_and_is_never_the_size(
    text: str, size: Size | None, told: str
) -> None:
    result = ranked(shipped(), text)
    assert (result.size, result.told) == (size, told)


@pytest.mark.parametrize("rest", ["", " 10 mm 3 flutes"])
def test_a_tool_of_the_angle_for_any_material_comes_before_one_of_another_angle(rest: str) -> None:
    text = f"60 countersink cast iron{rest}"
    assert found(text)[0].title == "Countersink, 60 degrees, for centre holes"
    assert ranked(shipped(), text).told == "No tool here is called 'cast iron'; these are for any material."


def test_a_number_that_is_no_usual_angle_is_the_size_of_a_countersink() -> None:
    assert ranked(shipped(), "countersink 12").size == Size("12")
    assert ranked(shipped(), "countersink 60 mm").size == Size("60 mm")
    assert ranked(shipped(), "reamer 60").size == Size("60")


def test_what_a_shop_calls_by_its_angle_is_found_where_no_angle_is_told_of_it() -> None:
    rows = Rows.of(
        [Row("entry", f"e{n}", title, "countersink", search=search_text([title])) for n, title in enumerate(["Long countersink 75", "Countersink 60", "Countersink 60 mm"])],
        shared=Shared({"countersink": search_text(["Countersinks", "countersink"])}),
    )  # fmt: skip
    assert [rows[number].title for number in ranked(rows, "countersink 60").numbers] == ["Countersink 60"]
