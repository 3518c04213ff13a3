"""Find lines as they are typed in shops: which tool comes first, which size goes along with it, and what is said."""

from __future__ import annotations

import pytest

from library.search.along import Along, angle_for, left_behind, size_for
from library.search.ranking import ranked
from library.search.sizes import with_its_unit
from tests.library.search.finding_in_it import shipped

LINES = [
    # What is typed, how the first tool is called, the size that goes along.
    ("twist", "Jobber drill, plain steel", ""),
    ("twist drill", "Jobber drill, plain steel", ""),
    ("twist drills 8 mm", "Jobber drill, plain steel", "8 mm"),
    ("twist drill brass", "Twist drill, free-cutting brass", ""),
    ("step drill", "Step drill, spiral flute, plain steel", ""),
    ("mild steel", "Hand tap, bottoming, plain steel", ""),
    ("plain steel", "Hand tap, bottoming, plain steel", ""),
    ("stainless", "Spiral-flute tap, austenitic stainless steel", ""),
    ("acme tap mild steel", "Acme tap, plain steel", ""),
    ("MACHINE TAP M12", "Spiral-flute tap, plain steel", "M12"),
    ("Machine Taps M8x1,25 6H", "Spiral-flute tap, plain steel", "M8x1.25 6H"),
    ("machine tap m12 stainless", "Spiral-flute tap, austenitic stainless steel", "M12"),
    ("cast iron machine tap m12 4 flutes", "Hand tap, grey cast iron", "M12"),
    ("grey iron machine tap m12 x 1.75", "Hand tap, grey cast iron", "M12 x 1.75"),
    ("insert tap cast iron m8", "Insert tap, plug, plain steel and cast iron", "M8"),
    ("tap bsp 3/8", "Parallel pipe tap, British (BSPP, G thread)", "3/8 BSP"),
    ("npt 3/4 tap", "Taper pipe tap, American (NPT)", "3/4 NPT"),
    ("unc 3/8 tap", "Hand tap, bottoming, plain steel", "3/8 UNC"),
    ("tap r 1/2", "Taper pipe tap, British (BSPT)", "R 1/2"),
    ("tr20x4 tap", "Trapezoidal tap, plain steel", "Tr20x4"),
    ("tap tr 16 x 4 bronze", "Trapezoidal tap, bronze nuts", "Tr 16 x 4"),
    ("acme 1-5 tap", "Acme tap, plain steel", "1-5 ACME"),
    ("acme tap tr 20x4", "Trapezoidal tap, plain steel", "Tr 20x4"),
    ("pipe tap 1/2", "Parallel pipe tap, British (BSPP, G thread)", ""),
    ("pipe taps 1", "Parallel pipe tap, British (BSPP, G thread)", ""),
    ("pipe tap 13.2 mm", "Parallel pipe tap, British (BSPP, G thread)", "13.2 mm"),
    ("thread former m6", "Thread-forming tap", "M6"),
    ("tap drill m6", "Jobber drill, plain steel", "M6"),
    ("tapping size drill 8.5", "Jobber drill, plain steel", "8.5"),
    ("drill m6", "Jobber drill, plain steel", "M6"),
    ("drill 10,5", "Jobber drill, plain steel", "10.5"),
    ("drill 10.5mm.", "Jobber drill, plain steel", "10.5 mm"),
    ("drill 1/4 in.", "Jobber drill, plain steel", "1/4 in"),
    ("drill \u00f810", "Jobber drill, plain steel", "10"),
    ("dia 12 drill", "Jobber drill, plain steel", "12"),
    ("12mm dia reamer", "Hand reamer, plain steel", "12 mm"),
    ("drill bits 13mm", "Jobber drill, plain steel", "13 mm"),
    ("drill 20x100", "Jobber drill, plain steel", "20"),
    ("DRILL 118 12", "Jobber drill, plain steel", "12"),
    ("drill 12 135 deg stainless", "Twist drill, austenitic stainless steel", "12"),
    ("drill 90", "Spotting drill, 90 degrees", ""),
    ("drill 90 mm", "Jobber drill, plain steel", "90 mm"),
    ("wire size 43 drill", "Small drill, up to 3 mm", ".0890 in"),
    ("reamer h7 10 stainless", "Machine reamer, austenitic stainless steel", "10 H7"),
    ("reamer 20 h7 6 flutes", "Hand reamer, plain steel", "20 H7"),
    ("reamer 10 cuts 0.03 too big", "Hand reamer, plain steel", "10"),
    ("morse taper reamer 2", "Taper reamer", ""),
    ("counterbore m6 11 mm", "Counterbore for M6 cap screws", "11 mm"),
    ("counterbore for m8 screw 15", "Counterbore for M8 cap screws", "15"),
    ("counterbore 11 x 6.6", "Counterbore with pilot, plain steel", "11"),
    ("counterbore pilot 9 15", "Counterbore with pilot, plain steel", "15"),
    ("counterbore 3/8 cap screw", "Counterbore with pilot, plain steel", "3/8 in"),
    ("countersink 90\u00b0 16.5", "Multi-flute countersink, 90 degrees, plain steel", "16.5"),
    ("countersink 75 12", "Multi-flute countersink, 82 degrees, plain steel", "12"),
    ("csk 90 m8 16.4", "Multi-flute countersink, 90 degrees, plain steel", "16.4"),
    ("countersink 60 deg 16 mm", "Countersink, 60 degrees, for centre holes", "16 mm"),
    ("subland countersink 90", "Subland drill for hole and countersink, plain steel", ""),
    ("subland drill 5 10 90", "Subland drill for hole and countersink, plain steel", "5"),
    ("reamer 6, 8", "Hand reamer, plain steel", "6"),
    ("step drill 5, 8, 11 mm 90 deg", "Step drill, spiral flute, plain steel", "11 mm"),
    ("endmills 10 mm carbide", "Ball-nose end mill, solid carbide", "10 mm"),
    ("1/4 20 tap", "Hand tap, bottoming, plain steel", "1/4-20"),
    ("tap 4 flutes spiral point 1/2 13 stainless", "Spiral-point tap, austenitic stainless steel", "1/2-13"),
    ("tap 10 24", "Hand tap, bottoming, plain steel", "#10-24"),
    ("m10-1.5 tap", "Hand tap, bottoming, plain steel", "M10x1.5"),
    ("tap m10*1.5", "Hand tap, bottoming, plain steel", "M10x1.5"),
    ("lh tap 20x1.5", "Left-hand tap, bottoming, plain steel", "M20 x 1.5"),
    ("trapezoidal tap 16x4", "Trapezoidal tap, plain steel", "Tr 16 x 4"),
    ("drill 3 1/2 mm", "Jobber drill, plain steel", "3 1/2 mm"),
    ("drill 10 mm 30 deg helix", "Drill of type H, slow helix, by size", "10 mm"),
    ("drill 10 helix 40", "Drill of type H, slow helix, by size", "10"),
    ("end mill 45 helix 12", "End mill, high-speed steel, aluminium", "12"),
    ("end mill 12 z4", "End mill, high-speed steel, plain steel", "12"),
    ("taper reamer 1 in 50", "Taper reamer", ""),
    ("slot drill 60", "Slot drill, high-speed steel, plain steel", "60"),
    ("drill 118 degrees 60", "Jobber drill, plain steel", "60"),
    ("drill 140 8", "Twist drill, aluminium bronze", "8"),
    ("90 deg drill", "Spotting drill, 90 degrees", ""),
    ("step drill 3 steps 6 8 10", "Step drill, spiral flute, plain steel", "6"),
    ("drill s275 10", "Jobber drill, plain steel", "10"),
    ("duralumin drill 5", "Twist drill, wrought aluminium", "5"),
    ("spiral point tap m8 alu", "Spiral-point tap, wrought aluminium", "M8"),
    ("spiral point tap alumin m8", "Spiral-point tap, wrought aluminium", "M8"),
    ("drill alumin", "Twist drill, wrought aluminium", ""),
    ("drill copp", "Twist drill, copper", ""),
    ("drill taper shank 32", "Jobber drill, plain steel", "32"),
    ("core drill cast iron", "Core drill", ""),
    ("spot drill brass 10", "Spotting drill, 90 degrees", "10"),
]


@pytest.mark.parametrize(("text", "title", "size"), LINES)
def test_the_first_tool_is_the_one_that_is_meant_and_takes_its_size_along(
    text: str, title: str, size: str
) -> None:
    found = ranked(shipped(), text)
    first = found.numbers[0]
    along = size_for(shipped(), first, found)
    assert (shipped()[first].title, along.told if along is not None else "") == (title, size)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("countersink 90 stainless 20 mm 3 flutes", "90 deg is sought as the angle."),
        ("countersink 90", "90 deg is sought as the angle; as a size write 90 mm."),
        ("countersink 118", "118 deg is sought as the angle; as a size write 118 mm."),
        ("countersink 75", "75 deg is sought as the angle; as a size write 75 mm."),
        ("countersink 130 12 mm", "130 deg is sought as the angle."),
        ("drill 60", "60 deg is sought as the angle; as a size write 60 mm."),
        ("counterbore 11 x 6.6", "6.6 does not go along."),
        ("counterbore 15 pilot 9", "pilot 9 does not go along."),
        ("hand tap m10 1.5", "1.5 does not go along."),
        ("reamer 1/2 .5005", ".5005 in does not go along."),
        ("morse taper reamer 2", "2 does not go along."),
        ("taper pin reamer 1/4 per foot .409 in", "1/4 per foot does not go along."),
        ("taper pin reamer 1/4 in per foot .409 in", "1/4 in per foot does not go along."),
        ("reamer oversize 0.02", "0.02 does not go along."),
        ("piloted countersink 100 #30", "100 deg is sought as the angle; as a size write 100 mm. #30 does not go along."),
        ("csk m8 16.4", "M8 does not go along."),
        ("pipe tap 1/2", "1/2 in is the name of a pipe thread and no diameter: write its series, such as 1/2 NPT or 1/2 BSPT."),
        ("subland drill 5 10 90", "90 deg is sought as the angle. 10 does not go along."),
        ("tap 8 deg", "8 deg does not go along."),
        ("drill 10 helix 40", "40 deg does not go along."),
        ("subland 118 90 6", "118 and 90 deg are sought as angles."),
        ("tap m12 x 1.5", ""),
        ("acme tr 20x4", "Tr 20x4 is a metric trapezoidal thread, of 30 degrees, and no Acme thread, of 29."),
        ("acme 1-5 tap", ""),
        ("tap tr 20x4", ""),
        ("counterbore m6 11 mm", ""),
    ],
)  # fmt: skip
def test_what_of_the_numbers_is_no_size_is_said(text: str, said: str) -> None:
    found = ranked(shipped(), text)
    first = found.numbers[0]
    assert left_behind(shipped(), first, found, Along(size_for(shipped(), first, found))) == said


@pytest.mark.parametrize("degrees", ["60", "75", "82", "90", "100", "118", "120", "130", "135"])
def test_a_countersink_is_found_by_every_usual_angle_which_goes_along_where_the_book_has_another(
    degrees: str,
) -> None:
    rows = shipped()
    found = ranked(rows, f"countersink {degrees}")
    first = found.numbers[0]
    assert "countersink" in rows[first].title.casefold()
    assert rows[first].id.startswith("countersink-")
    assert found.sizes == ()
    is_of_it = degrees in rows[first].title
    assert angle_for(rows, first, found) == (("", "") if is_of_it else (f"{degrees} deg", "included_angle"))


def test_a_countersink_of_so_many_millimetres_is_still_one() -> None:
    found = ranked(shipped(), "countersink 75 mm")
    along = size_for(shipped(), found.numbers[0], found)
    assert along is not None
    assert along.told == "75 mm"


def test_the_diameters_of_a_list_that_goes_along_as_a_whole_are_not_told_as_left_behind() -> None:
    from library.search.sizes import Size

    found = ranked(shipped(), "step drill 6, 8, 10 mm")
    assert left_behind(shipped(), found.numbers[0], found, Along(Size("6, 8, 10 mm"))) == ""


@pytest.mark.parametrize(
    ("text", "told"),
    [
        (
            "cast iron machine tap m12",
            "No tap for cast iron here is called 'machine'; these were found without that word.",
        ),
        ("machine tap brass m6", "No tool here is called 'machine'; the word is a part of other words here."),
        ("gun drill 8", "No tool here is called 'gun'; the word is a part of other words here."),
        (
            "hand tap alu m8",
            "No tool here is called 'alu'; these are for any material.",
        ),
        ("gun tap brass m5", "No tool here is called 'brass'; the word stands in what is told of these."),
        (
            "core drill cast iron",
            "No tool here is called 'cast iron'; these are for any material.",
        ),
        ("drill taper", "No drill here is called 'taper'; these were found without that word."),
        (
            "drill taper shank 32",
            "No drill here is called 'taper' or 'shank'; these were found without those words.",
        ),
        ("spot drill steel 10", ""),
        ("spot drill 90 10", ""),
        ("spot facer 20", ""),
        ("machine tap m12", ""),
        ("step spiral plain", ""),
    ],
)
def test_a_word_that_is_the_name_of_other_tools_alone_is_said_to_be_none_of_these(
    text: str, told: str
) -> None:
    assert ranked(shipped(), text).told == told


def test_a_word_of_a_material_that_nobody_named_is_no_name_of_a_tool() -> None:
    """Plain steel is called machine steel too, which makes no hand tap a machine tap."""
    titles = [shipped()[row].title for row in ranked(shipped(), "machine tap").numbers]
    assert max(map(titles.index, ("Spiral-point tap, plain steel", "Spiral-flute tap, plain steel"))) < min(
        place for place, title in enumerate(titles) if title.startswith("Hand tap")
    )


@pytest.mark.parametrize(
    "text", ["machine tap stainless", "stainless machine tap m8", "tap 1/4-20 through hole"]
)
def test_no_tool_of_another_kind_stands_before_those_that_are_named(text: str) -> None:
    families = [shipped()[row].family for row in ranked(shipped(), text).numbers]
    last = max(place for place, family in enumerate(families) if family.endswith("tap"))
    assert all(family.endswith("tap") for family in families[:last])


def test_while_a_tap_may_yet_become_a_tap_drill_the_drills_are_found() -> None:
    before = ranked(shipped(), "tap dril").numbers
    assert shipped()[ranked(shipped(), "tap drill", before).numbers[0]].family == "twist-drill"


def test_the_unit_goes_behind_a_number_with_a_decimal_comma() -> None:
    size = ranked(shipped(), "drill 10,5 brass").size
    assert size is not None
    assert with_its_unit("drill 10,5 brass", size, "mm") == "drill 10.5 mm brass"


def test_a_part_of_a_word_in_a_sentence_finds_nothing() -> None:
    """The notes of left-hand taps have the word value, which is no aluminium."""
    assert not any(
        shipped()[row].family == "left-hand-tap" for row in ranked(shipped(), "hand tap alu").numbers
    )


def test_tools_for_a_range_of_work_stand_in_the_order_of_their_sizes() -> None:
    rows = shipped()
    in_order = ["to 4 mm", "over 4 to 6 mm", "6 to 10 mm", "10 to 25 mm", "25 to 63 mm", "63 to 100 mm"]
    titles = [f"Centre drill for work {one}" for one in in_order]
    in_book = [rows[at].title for at in range(len(rows)) if rows[at].title in titles]
    assert in_book == titles
    found = [rows[at].title for at in ranked(rows, "centre drill work").numbers]
    assert found[: len(titles)] == titles
