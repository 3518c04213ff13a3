"""What the book tells of the work is found by the words of the work, and by nothing else."""

from __future__ import annotations

import json

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.guidance.finding import guidance
from tui.main import main


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book()


@pytest.mark.parametrize(
    "words",
    ["wheel", "grit", "coolant", "infeed", "dress", "dressing", "wheel for carbide", "spark-out", "diamond"],
)
def test_the_words_of_the_work_find_something(book: Book, words: str) -> None:
    assert guidance(book, words.split())


@pytest.mark.parametrize("words", ["gun tap", "reamer", "m12", "hand tap set", "deburring", ""])
def test_words_that_are_none_of_the_work_find_entries_alone(book: Book, words: str) -> None:
    assert not guidance(book, words.split())


def test_the_tool_may_be_named_too(book: Book) -> None:
    found = guidance(book, ["infeed", "reamers"])
    assert {one.table for one in found.lines} == {"reamer-bevel", "reamer-land"}
    found = guidance(book, ["wheel", "carbon", "faces"])
    assert [one.id for one in found.wheels] == ["carbon-face"]
    assert not guidance(book, ["infeed", "no-such-tool"])


def test_wheels_are_found_by_the_tool_that_they_grind(book: Book) -> None:
    of_reamers = {one.table for one in guidance(book, ["grit", "reamer"]).lines}
    assert "hss-relief" in of_reamers
    assert not any(name.startswith("carbide") for name in of_reamers)
    assert "carbide-relief" in {one.table for one in guidance(book, ["grit", "carbide", "drill"]).lines}
    assert {one.id for one in guidance(book, ["wheel", "for", "tap"]).wheels} >= {"hss-relief", "hss-face"}
    assert not guidance(book, ["grit", "no-such-tool"])


def test_lines_with_the_same_words_stand_once(book: Book) -> None:
    texts = [one.told.text for one in guidance(book, ["coolant"]).lines]
    assert len(texts) == len(set(texts)) > 3


def test_find_prints_the_answer_first_with_its_source_and_few_entries_below(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["find", "infeed", "reamer"]) == 0
    out = capsys.readouterr().out
    assert out.startswith("How it is ground\n  FEED   Bevel lead of a reamer: One light pass")
    assert "[common practice, no source]" in " ".join(out.split())
    assert main(["find", "dressing", "reamer"]) == 0
    out = capsys.readouterr().out
    assert out.startswith("How it is ground\n  DRESS  Bevel lead of a reamer: True and dress before")
    assert "(NAVEDTRA 14345), page 284" in " ".join(out.split())
    assert main(["find", "wheel"]) == 0
    assert len(capsys.readouterr().out.splitlines()) <= 32
    assert main(["find", "wheel", "--json"]) == 0
    kinds = {one.get("kind", "entry") for one in json.loads(capsys.readouterr().out)}
    assert kinds == {"entry", "recommended wheel"}


def test_an_inch_shop_reads_inches(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["--units", "in", "find", "infeed", "tap"]) in {0, 1}
    out = " ".join(capsys.readouterr().out.split())
    # Derived: 0.02 / 25.4 = 0.00079.
    assert "Rough 0.0008 in" in out
    assert " mm" not in out.partition("Plain steel")[0]
