"""Finding in the shipped book: the likeliest entry comes first, and a size goes along."""

from __future__ import annotations

from functools import cache

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from library.book.model import Book
from library.book.opening import open_book
from library.book.rows import Row, Rows
from library.book.search_text import Shared, search_text
from library.guidance.troubles import troubles_of
from library.search.finding import fitting
from library.search.query import parse
from library.search.ranking import ranked
from library.search.size_in_names import is_called_by
from library.search.sizes import Size, taken_apart


@cache
def the_book() -> Book:
    return open_book()


@cache
def shipped() -> Rows:
    rows = the_book().rows
    assert isinstance(rows, Rows)
    return rows


def found(text: str) -> list[Row]:
    return [shipped()[number] for number in ranked(shipped(), text).numbers]


def made(*titles: str) -> Rows:
    return Rows.of(
        Row("entry", f"e{n}", title, search=search_text([title])) for n, title in enumerate(titles)
    )


@pytest.mark.parametrize(
    "text", ["left-hand tap m10", "left hand tap", "lh tap", "left tap m10", "left taps", "tap m10 lh"]
)
def test_a_left_hand_tap_is_one_for_left_hand_threads(text: str) -> None:
    titles = [row.title for row in found(text)]
    assert {"left-hand-tap"} == {row.family for row in found(text)[:3]}
    flutes = "Left-hand spiral-flute tap for through holes"
    assert flutes not in titles or titles.index(flutes) > titles.index("Acme tap, left-hand, bronze nuts")


def test_a_left_hand_tap_comes_before_a_right_hand_one_whose_flutes_are_left_hand() -> None:
    titles = [row.title for row in found("left hand tap m12")]
    assert titles[0].startswith("Left-hand tap")
    assert titles.index("Left-hand spiral-flute tap for through holes") > max(
        place for place, title in enumerate(titles) if title.startswith("Left-hand tap")
    )


@pytest.mark.parametrize(
    ("text", "family", "title"),
    [
        ("counters", "countersink", "ountersink"),
        ("drill", "twist-drill", "drill"),
        ("drills", "twist-drill", "drill"),
        ("jobber", "twist-drill", "Jobber drill"),
        ("hand tap", "tap", "Hand tap"),
        ("machine reamer plain", "reamer", "Machine reamer, plain steel"),
        ("tap m12", "tap", "Hand tap"),
        ("1/2-13 stainless", "tap", "stainless steel"),
        ("reamer 12", "reamer", "reamer"),
        ("burns", "countersink", "ountersink"),
        ("cuts large", "reamer", "reamer"),
        ("tears thread", "tap", "tap"),
        ("mild steel countersink", "countersink", "plain steel"),
        ("tap inox", "tap", "stainless steel"),
        ("aluminum tap", "tap", "aluminium"),
        ("csk", "countersink", "ountersink"),
        ("drill 6 stainless", "twist-drill", "austenitic stainless steel"),
        ("drill mild steel", "twist-drill", "Jobber drill, plain steel"),
        ("3 mm drill aluminium", "twist-drill", "wrought aluminium"),
        ("step drill stainless", "step-drill", "stainless steel"),
        ("3/8 drill", "twist-drill", "Jobber drill, plain steel"),
        ("drill 135", "twist-drill", "Jobber drill, plain steel"),
        ("135 split point", "twist-drill", "Split-point drill"),
        ("118 point drill", "twist-drill", "Jobber drill, plain steel"),
        ("ss drill", "twist-drill", "stainless steel"),
        ("ali drill", "twist-drill", "aluminium"),
        ("ally tap", "tap", "aluminium"),
        ("ci drill", "twist-drill", "grey cast iron"),
        ("inconel tap", "tap", "nickel alloy"),
        ("nylon drill", "twist-drill", "Twist drill, "),
        ("4140 tap", "tap", "alloy steel"),
        ("hss reamer", "reamer", "Hand reamer, plain steel"),
        ("lh acme tap", "acme-tap", "left-hand"),
        ("socket cap", "counterbore", "cap screws"),
        ("morse taper reamer", "reamer", "Taper reamer"),
        ("drill ground down smaller", "twist-drill", "Drill ground down in diameter"),
        ("drill made smaller 8.7 mm", "twist-drill", "Drill ground down in diameter"),
        ("drill ground undersize", "twist-drill", "Drill ground down in diameter"),
        ("odd-size drills", "twist-drill", "Drill ground down in diameter"),
        ("drill with reduced shank", "twist-drill", "Drill with a shank ground down"),
        ("drills turned down", "twist-drill", "Drill with a shank ground down"),
        ("small drill", "twist-drill", "Small drill, up to 3 mm"),
        ("spiral pointed tap 3 flutes", "tap", "Spiral-point tap, plain steel"),
        ("gun taps m8", "tap", "Spiral-point tap, plain steel"),
        ("4 fluted gun tap inox 5/8-11", "tap", "Spiral-point tap, austenitic stainless steel"),
        ("taper tap 1/2-13", "tap", "Hand tap, taper, plain steel"),
        ("taper tap m12 4 flutes", "tap", "Hand tap, taper, plain steel"),
        ("second tap m10", "tap", "Hand tap, second or plug, plain steel"),
        ("plug tap m8 4 flutes", "tap", "Hand tap, second or plug, plain steel"),
        ("bottom tap 1/4-20", "tap", "Hand tap, bottoming, plain steel"),
        ("thread repair tap m10", "insert-tap", "Insert tap, "),
        ("quick spiral drill", "twist-drill", "Drill of type S"),
        ("slow-spiral drill", "twist-drill", "Drill of type H"),
        ("worn drill", "twist-drill", "Jobber drill, plain steel"),
        ("blunt drill 10 mm", "twist-drill", "Jobber drill, plain steel"),
        ("dull tap", "tap", "Hand tap"),
        ("worn reamer 1/2", "reamer", "Hand reamer, plain steel"),
        ("6 fluted reamer", "reamer", "Hand reamer, plain steel"),
        ("end mill 4 fl 12 mm", "end-mill", "End mill, high-speed steel, plain steel"),
        ("slot drill 2 flute 8 mm", "slot-drill", "Slot drill, high-speed steel, plain steel"),
        ("3 flute countersink 90 aluminium", "countersink", "Multi-flute countersink, 90 degrees, wrought"),
        ("countersink 82 deg 1/2 in", "countersink", "Multi-flute countersink, 82 degrees, plain steel"),
        ("machine reamer 10 h7 stainless", "reamer", "Machine reamer, austenitic stainless steel"),
        ("chucking reamer .500", "reamer", "Machine reamer, plain steel"),
        ("expansion reamer", "reamer", "Adjustable hand reamer"),
        ("c'bore m10", "counterbore", "Counterbore for M10"),
        ("left handed tap 7/16", "left-hand-tap", "Left-hand tap"),
        ("core drill 4 flute", "twist-drill", "Core drill"),
        ("thin web drill", "twist-drill", "Drill with thinned web"),
        ("dull drill", "twist-drill", "Jobber drill, plain steel"),
        ("hole oversize", "twist-drill", "Jobber drill, plain steel"),
        ("drill for brass", "twist-drill", "free-cutting brass"),
        ("reamer", "reamer", "Hand reamer, plain steel"),
        ("countersink plain", "countersink", "Multi-flute countersink, 82 degrees, plain steel"),
        ("tap plain", "tap", "Hand tap, bottoming, plain steel"),
        ("tap for brass", "tap", "Hand tap, free-cutting brass"),
        ("taper tap", "tap", "Hand tap, taper, plain steel"),
        ("bottoming tap", "tap", "Hand tap, bottoming, plain steel"),
        ("m10x1", "tap", "Hand tap, bottoming, plain steel"),
        ("whitworth", "tap", "Hand tap, bottoming, plain steel"),
        ("unc tap", "tap", "Hand tap, bottoming, plain steel"),
        ("2ba tap", "tap", "British Association (BA)"),
        ("tap 3/4 bsp", "tap", "British (BSPP"),
        ("g1/2", "tap", "British (BSPP"),
        ("rc 1/2", "tap", "British (BSPT"),
        ("letter drill", "twist-drill", "Jobber drill, plain steel"),
        ("rougher", "end-mill", "Roughing end mill"),
        ("sharpen a drill", "twist-drill", "Jobber drill, plain steel"),
        ("reground reamer", "reamer", "Hand reamer, plain steel"),
        ("drill 4", "twist-drill", "Jobber drill, plain steel"),
        ("drill 5", "twist-drill", "Jobber drill, plain steel"),
        ("drill 10", "twist-drill", "Jobber drill, plain steel"),
        ("drill 25", "twist-drill", "Jobber drill, plain steel"),
        ("drill 3", "twist-drill", "Small drill, up to 3 mm"),
        ("jobber 5", "twist-drill", "Jobber drill, plain steel"),
        ("centre drill 8", "centre-drill", "for work 6 to 10 mm"),
        ("grade 5 drill", "twist-drill", "titanium"),
        ("hss drill 10", "twist-drill", "Jobber drill, plain steel"),
        ("hss end mill", "end-mill", "End mill, high-speed steel, plain steel"),
        ("carbide end mill 6", "end-mill", "End mill"),
        ("chamfer tool", "countersink", "ountersink"),
        ("tr 20 x 4", "acme-tap", "Trapezoidal tap, plain steel"),
        ("r1/2", "tap", "British (BSPT"),
        ("#30", "twist-drill", "Jobber drill, plain steel"),
        ("letter q", "twist-drill", "Jobber drill, plain steel"),
        ("step drill 4-20", "step-drill", "Step drill"),
        ("carbide drill steel", "carbide-drill", "Solid carbide drill, plain steel"),
        ("steel drill", "twist-drill", "Jobber drill, plain steel"),
        ("hardened steel drill", "twist-drill", "Twist drill, hardened steel"),
        ("carbide drill hardened steel", "carbide-drill", "Carbide drill, hardened steel"),
        ("1:50 reamer", "reamer", "Taper reamer"),
    ],
)
def test_the_first_ones_are_those_that_are_meant(text: str, family: str, title: str) -> None:
    first = found(text)[0]
    assert (first.family, title in first.title) == (family, True), first


def test_all_twist_drills_come_before_all_other_drills() -> None:
    families = [row.family for row in found("drill")]
    twist = families.count("twist-drill")
    assert twist > 30
    assert set(families[:twist]) == {"twist-drill"}
    assert "step-drill" in families[twist:]


def test_all_hand_taps_come_before_a_left_hand_tap() -> None:
    titles = [row.title for row in found("hand tap")]
    left = titles.index("Left-hand spiral-flute tap for through holes")
    hand = [place for place, title in enumerate(titles) if title.startswith("Hand tap")]
    assert max(hand) < left


@pytest.mark.parametrize("text", ["hand tap plain", "hand tap plain m6"])
def test_with_more_words_hand_taps_still_come_before_left_hand_ones(text: str) -> None:
    assert found(text)[0].title.startswith("Hand tap")


@pytest.mark.parametrize("text", ["chatter", "chatters"])
def test_a_trouble_finds_the_tools_of_which_it_is_told(text: str) -> None:
    assert {"countersink", "reamer"} <= {row.family for row in found(text)}


@pytest.mark.parametrize(
    ("text", "trouble", "called", "first"),
    [
        ("burns reamer", "Burns the edge at the grinder", "reamer", "Hand reamer, plain steel"),
        ("burnt reamer", "Burns the edge at the grinder", "reamer", "Hand reamer, plain steel"),
        ("chatters reamer", "Chatters", "reamer", "Hand reamer, plain steel"),
        ("reamer oversize", "Cuts large", "reamer", "Hand reamer, plain steel"),
        (
            "chatter countersink",
            "Chatters",
            "countersink",
            "Multi-flute countersink, 82 degrees, plain steel",
        ),
        ("countersink burns", "Burns", "countersink", "Multi-flute countersink, 82 degrees, plain steel"),
        ("tap breaks", "Breaks", "tap", "Hand tap, bottoming, plain steel"),
        ("tears thread", "Tears the thread", "tap", "Hand tap, bottoming, plain steel"),
        ("tears the thread", "Tears the thread", "tap", "Hand tap, bottoming, plain steel"),
        ("drill wanders", "Drifts", "drill", "Jobber drill, plain steel"),
        ("drill burns", "Burns", "drill", "Jobber drill, plain steel"),
        ("drill too big", "Cuts large", "drill", "Jobber drill, plain steel"),
        ("drill cuts large", "Cuts large", "drill", "Jobber drill, plain steel"),
        ("step drill chatter", "Chatters", "step drill", "Step drill, spiral flute, plain steel"),
        ("centre drill chattering", "Chatters", "centre drill", "Centre drill, type A, plain"),
        ("burns", "Burns", "", ""),
        ("bell-mouthed", "Bell mouth", "", "Hand reamer, plain steel"),
        ("bellmouth", "Bell mouth", "", "Hand reamer, plain steel"),
        ("stripped thread", "Tears the thread", "tap", "Hand tap, bottoming, plain steel"),
        ("snapped tap", "Breaks", "hand tap", "Hand tap, bottoming, plain steel"),
        ("stuck tap", "Jams on the way back", "tap", "Hand tap, bottoming, plain steel"),
        ("drill won't cut", "Rubs and does not cut", "twist drill", "Jobber drill, plain steel"),
        ("drill overheating", "Burns", "twist drill", "Jobber drill, plain steel"),
        ("reamer howls", "Chatters", "reamer", "Hand reamer, plain steel"),
    ],
)
def test_a_trouble_and_a_tool_find_every_entry_that_carries_it(
    text: str, trouble: str, called: str, first: str
) -> None:
    book = the_book()
    named = {row.id for row in shipped() if not called or f" {called}" in f" {row.title.casefold()}"}
    carry = {one for one in book.families if trouble in troubles_of(book, one)}
    wanted = {row.id for row in shipped() if row.family in carry} & named
    rows = found(text)
    assert len(wanted) > 3
    assert wanted <= {row.id for row in rows}
    assert not first or rows[0].title == first


def test_of_a_trouble_alone_its_own_tools_come_before_kin_and_before_every_tool() -> None:
    families = list(dict.fromkeys(row.family for row in found("burns")))
    assert families.index("twist-drill") < families.index("spade-drill") < families.index("reamer")


@pytest.mark.parametrize(("text", "material"), [("inox", "stainless-austenitic"), ("mild steel", "plain-steel"), ("aluminum", "aluminium-wrought")])  # fmt: skip
def test_a_material_is_found_by_another_name(text: str, material: str) -> None:
    assert found(text)[0].work_material in {material, "stainless-martensitic"}
    entries = [row for row in shipped() if row.work_material == material]
    assert {row.id for row in entries} <= {row.id for row in found(text)}


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


@pytest.mark.parametrize("text", ["countersink 4 flutes", "4-flute countersink", "90 countersink 4 flute"])
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


@given(st.sampled_from(range(138)), st.sampled_from([str, str.upper, str.casefold]))
def test_a_search_by_a_whole_title_puts_it_first(number: int, spelled: type[str]) -> None:
    row = shipped()[number % len(shipped())]
    assert found(spelled(row.title))[0].title == row.title


WORDS = st.sampled_from(["hand", "tap", "taps", "M3", "1/2-13", "12", "1/4 in", "90 degrees", "(NPT)", "left-hand", "no. 5", "x", "3,5"])  # fmt: skip


@given(st.lists(st.lists(WORDS, min_size=1, max_size=4).map(" ".join), min_size=1, max_size=8))
def test_so_does_a_search_by_the_title_of_a_shop(titles: list[str]) -> None:
    rows = made(*titles)
    for title in titles:
        first = rows[ranked(rows, title).numbers[0]].title
        assert " ".join(first.split()) == " ".join(title.split())


@given(st.lists(st.sampled_from([*"tapdril m12/-.", "hand "]), max_size=10))
@example(["1", "-", "t"])  # What was a number is now the beginning of a word.
def test_letter_by_letter_finds_the_same_in_the_same_order(letters: list[str]) -> None:
    text, hits = "", ranked(shipped(), "").numbers
    for letter in letters:
        text += letter
        hits = ranked(shipped(), text, hits).numbers
    assert list(hits) == list(ranked(shipped(), text).numbers)


def test_a_word_counts_most_in_a_title_then_in_other_names_then_in_what_is_told() -> None:
    rows = Rows.of(
        [
            Row("entry", "told", "One", search=search_text(["One"], (), "It may squeal.")),
            Row("entry", "named", "Two", search=search_text(["Two"], ["squeal stopper"])),
            Row("entry", "part", "Three", search=search_text(["Squealer"])),
            Row("entry", "whole", "Four", search=search_text(["A squeal"])),
            Row("entry", "shared", "Five", "loud", search=search_text(["Five"])),
        ],
        Shared({"loud": search_text(["Squeal"], ["squeal"])}),
    )
    assert [rows[number].id for number in ranked(rows, "squeal").numbers] == ["whole", "shared", "part", "named", "told"]  # fmt: skip


def test_conditions_and_words_are_ranked_together() -> None:
    rows = [shipped()[number] for number in fitting(shipped(), parse("drill point>120")).numbers]
    assert rows[0].family == "twist-drill"
    assert all("point_angle=" in row.ranges for row in rows)


def test_the_list_has_sizes_in_their_order() -> None:
    titles = [row.title for row in shipped() if row.title.startswith("Counterbore for M")]
    assert titles == [f"Counterbore for M{size} cap screws" for size in (3, 4, 5, 6, 8, 10, 12)]


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
    ("text", "words"),
    [
        ("lathe tool", ("lathe", "tool")),
        ("fixture", ("fixture",)),
        ("hand tap", ()),
        ("chatters", ()),
        ("fix", ()),
    ],
)
def test_words_by_which_no_tool_is_called_are_said_to_be_so(text: str, words: tuple[str, ...]) -> None:
    hits = ranked(shipped(), text)
    assert hits.numbers
    assert hits.only_told == words
    assert all(word in hits.told for word in words)


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
        ("60 countersink cast iron", None, "There is none of 60 deg; this is of 90 deg."),
        (
            "60 countersink cast iron 10 mm 3 flutes",
            Size("10 mm"),
            "There is none of 60 deg; this is of 90 deg.",
        ),
        ("spot drill 60 8", Size("8"), "None of 60 deg is among these; the first is of 90 deg."),
        ("45 countersink brass 10 mm", Size("10 mm"), "There is none of 45 deg; this is of 90 deg."),
    ],
)
def test_an_angle_that_no_tool_has_is_said_and_is_never_the_size(
    text: str, size: Size | None, told: str
) -> None:
    result = ranked(shipped(), text)
    assert (result.size, result.told) == (size, told)


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
