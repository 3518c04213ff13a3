"""Cautions in two lines: the most dangerous first, none broken, and those without room counted."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from library.pages.caution_words import caution_lines
from library.pages.page import SEPARATOR, CautionWords
from library.pages.reader import Reader, text_of

WORDS = ("under marked speed", "ring wheel", "goggles", "no gloves", "guard on", "mind edges")
SOME = st.lists(st.from_regex(r"[a-z]{1,12}( [a-z]{1,9})?", fullmatch=True), min_size=1, max_size=14)


def told(words: tuple[str, ...], width: int, more: str = "F4 in full") -> list[str]:
    return [text_of(one) for one in caution_lines(CautionWords(words, more), Reader(width))]


def seen(lines: list[str]) -> list[str]:
    """The words of both lines, without the head and without what stands at the right end."""
    rest = [*(line[9:] for line in lines[:-1]), re.sub(r" *(\+\d+  )?F4 in full$", "", lines[-1][9:])]
    return [word for line in rest for word in line.strip().split(SEPARATOR) if word]


def test_what_has_room_stands_in_its_order_and_the_rest_is_counted() -> None:
    assert told(WORDS, 48) == [
        "CAUTION  under marked speed | ring wheel",
        "         goggles | no gloves      +2  F4 in full",
    ]


def test_where_all_have_room_none_is_counted() -> None:
    assert told(WORDS, 98) == [
        "CAUTION  under marked speed | ring wheel | goggles | no gloves | guard on | mind edges  F4 in full"
    ]
    assert told(WORDS, 97) == [
        "CAUTION  under marked speed | ring wheel | goggles | no gloves | guard on | mind edges",
        " " * 87 + "F4 in full",
    ]


@given(words=SOME, width=st.integers(30, 160))
def test_two_lines_within_the_width_have_the_first_words_whole_and_count_all_others(
    words: list[str], width: int
) -> None:
    lines = told(tuple(words), width)
    assert len(lines) <= 2
    assert max(map(len, lines)) <= width
    found = seen(lines)
    assert found == words[: len(found)]
    counted = re.search(r"\+(\d+)  F4 in full$", lines[-1])
    assert len(found) + (int(counted[1]) if counted else 0) == len(words)


@pytest.mark.parametrize("width", [1, 8, 18, 20, 28])
def test_no_width_is_too_small(width: int) -> None:
    lines = told(WORDS, width, "show ID --cautions")
    assert 1 <= len(lines) <= 2
    assert max(map(len, lines)) <= max(width, 17)


def test_on_paper_every_one_stands() -> None:
    lines = told(WORDS, 40, more="")
    assert " ".join(" ".join(lines).split()) == (
        "CAUTION under marked speed | ring wheel goggles | no gloves | guard on mind edges"
    )
    assert max(map(len, lines)) <= 40


def test_where_there_is_none_nothing_is_said() -> None:
    assert caution_lines(CautionWords((), "F4 in full"), Reader(80)) == []


def test_on_paper_it_is_told_where_all_of_them_stand_only_where_some_find_no_room() -> None:
    few = CautionWords(("goggles on", "no gloves"), "all: F4", where_cut=True)
    assert [text_of(one) for one in caution_lines(few, Reader(40))] == ["CAUTION  goggles on | no gloves"]
    assert few.within(60) == (few.words, 0)
    many = CautionWords(few.words * 9, "all: F4", where_cut=True)
    assert text_of(caution_lines(many, Reader(40))[-1]).endswith("all: F4")
    # CAUTION, all: F4 and +99 leave 50 - 17 = 33 characters: three of ten, ten and nine with two bars between them are 35.
    assert many.within(50) == (few.words, 16)
