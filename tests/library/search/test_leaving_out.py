"""Where nothing is found, the words are named without which something is."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache

import pytest

from library.book.opening import open_book
from library.book.rows import Rows
from library.search.leaving_out import MOST, LeftOut, found_without, leaving_out, without
from library.search.ranking import ranked


@cache
def shipped() -> Rows:
    rows = open_book().rows
    assert isinstance(rows, Rows)
    return rows


def test_one_word_in_the_way_is_named() -> None:
    left_out = without(shipped(), "countersink multi zirconium")
    assert left_out == LeftOut(("zirconium",), found=len(ranked(shipped(), "countersink multi").numbers))
    assert left_out.found > 0
    assert left_out.told == f"Without 'zirconium' there are {left_out.found}."


def test_where_leaving_out_one_word_does_not_help_those_are_named_that_do_together() -> None:
    text = "my reamer burns zirconium bush"
    for word in text.split():
        assert not ranked(shipped(), text.replace(word, "")).numbers, "no single word may be enough"
    left_out = without(shipped(), text)
    rest = [word for word in text.split() if word not in left_out.words]
    assert len(left_out.words) == 2
    assert left_out.found == len(ranked(shipped(), " ".join(rest)).numbers) > 0
    assert left_out.told == "Without {!r} and {!r} there are {}.".format(*left_out.words, left_out.found)


@pytest.mark.parametrize("text", ["zirconium", "zirconium hafnium", "drill " * MOST + "zirconium"])
def test_no_word_is_named_where_none_helps_or_nobody_could_read_which(text: str) -> None:
    assert without(shipped(), text).told == ""


def test_words_of_which_each_is_found_alone_and_which_mean_another_thing_side_by_side_are_named() -> None:
    """A number before "flutes" is their number, and alone it is a size."""

    def find(words: Sequence[str]) -> list[int]:
        return [] if {"97", "flutes"} <= {*words} else [1, 2]

    assert leaving_out(["countersink", "97", "flutes"], find) in (
        LeftOut(("97",), 2),
        LeftOut(("flutes",), 2),
    )


@pytest.mark.parametrize(
    ("text", "words"),
    [
        # What would be found without the kind or the work material is another tool, though there may be more of it.
        ("helical reamer stainless carbide", ("helical", "carbide")),
        ("tap titanium chipbreaker", ("chipbreaker",)),
        ("tap stainless spiral point chipbreaker", ("chipbreaker",)),
        ("piloted counterbore brass", ("piloted", "brass")),
    ],
)
def test_the_kind_and_then_the_work_material_are_left_out_last(text: str, words: tuple[str, ...]) -> None:
    assert not ranked(shipped(), text).numbers
    assert without(shipped(), text).words == words


def test_the_unit_of_a_size_is_no_word_of_its_own() -> None:
    left_out = without(shipped(), "countersink 60 cast iron 10 mm centre hole 60")
    assert set(left_out.words) == {"60", "centre", "hole"}
    assert without(shipped(), "reamer zirconium 1/2 in 6 flutes").words == ("zirconium",)


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("tpa m12", "tap"),
        ("reemer 10", "reamer"),
        ("countersnik 90", "countersink"),
        ("drill mild stel", "steel"),
        ("tap m12 casti iron", "cast"),
        ("drll 8", "drill"),
        ("gear cutter", ""),
        ("core drill 20 cast iron", ""),
        ("shell reamer 40", ""),
        ("mt3 reamer", ""),
    ],
)
def test_a_word_of_the_book_that_is_near_a_slip_is_named_and_a_known_word_is_no_slip(
    text: str, meant: str
) -> None:
    left_out = without(shipped(), text)
    assert left_out.words
    assert left_out.meant == ((meant,) if meant else ())
    assert not meant or f"near it in the book is {meant!r}" in left_out.told


def test_near_a_slip_that_stands_alone_a_word_of_the_book_is_named_too() -> None:
    assert without(shipped(), "Reemers").told == "Near it in the book is 'reamers'."
    assert without(shipped(), "reamer") == LeftOut()


def test_words_that_stop_everything_are_left_out_where_the_tool_is_named_and_it_is_said() -> None:
    text = "step drill zirconium 20"
    nothing = ranked(shipped(), text)
    assert not nothing.numbers
    rest = found_without(shipped(), text, nothing)
    assert [*rest.numbers] == [*ranked(shipped(), "step drill 20").numbers]
    assert rest.size is not None
    assert rest.size.text == "20"
    assert rest.told == "No step drill here is called 'zirconium'; these were found without that word."


def test_of_a_slip_that_is_left_out_the_word_of_the_book_is_named() -> None:
    text = "tap m12 casti iron"
    rest = found_without(shipped(), text, ranked(shipped(), text))
    assert rest.told.endswith("Near it in the book is 'cast'.")


@pytest.mark.parametrize("text", ["gear cutter", "zirconium", "plain steel zirconium"])
def test_nothing_else_is_shown_where_no_tool_is_named(text: str) -> None:
    nothing = ranked(shipped(), text)
    assert not nothing.numbers
    assert found_without(shipped(), text, nothing) == nothing
