"""Finding in the shipped book: the likeliest entry comes first, and a size goes along."""

from __future__ import annotations

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from library.book.rows import Row, Rows
from library.book.search_text import Shared, search_text
from library.guidance.troubles import troubles_of
from library.search.finding import fitting
from library.search.query import parse
from library.search.ranking import ranked
from tests.library.search.finding_in_it import found, made, shipped, the_book


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
