"""How much a source carries: one letter at the value, and what it means."""

from __future__ import annotations

from pathlib import Path

import pytest

from library.book.grades import DOCUMENTS, GRADES, explained, grade
from library.book.model import Citation, Source
from library.book.opening import open_book
from library.calc.citation import cited
from library.search.counting import counts

SOURCES = {
    letter: Source(letter, f"A document of grade {letter}", grade=letter) for letter in DOCUMENTS.split()
}


@pytest.mark.parametrize("letter", DOCUMENTS.split())
def test_a_document_has_the_letter_of_its_table(letter: str) -> None:
    assert grade(Citation("published", letter, "page 1"), SOURCES) == letter


def test_what_is_no_document_has_the_letter_of_its_kind() -> None:
    kinds = {"shop": "P", "common practice": "C", "from memory": "?", "missing": "?"}
    assert {kind: grade(Citation(kind), {}) for kind in kinds} == kinds  # type: ignore[arg-type]


def test_a_document_that_nobody_graded_is_never_taken_for_a_good_one() -> None:
    assert grade(Citation("published", "A leaflet"), {}) == "-"
    assert grade(Citation("published", "a"), {"a": Source("a", "A leaflet")}) == "-"


def test_a_source_that_speaks_of_something_else_says_so_at_the_value_and_in_words(tmp_path: Path) -> None:
    (tmp_path / "own.toml").write_text(
        'schema = 1\n[[source]]\nid = "leaflet"\ntitle = "A leaflet"\ngrade = "T"\n'
        '[[family]]\nid = "own"\ntitle = "Own"\nkind = "tap"\n'
        '[[entry]]\nid = "mine"\nfamily = "own"\ntitle = "Mine"\n'
        'rake_angle = { usual = "5 deg", source = "leaflet", place = "page 3", speaks_of = "taps for brass" }\n'
    )
    book = open_book(tmp_path)
    assert [str(one) for one in book.findings] == []
    citation = book.entries["mine"].values["rake_angle"].citation
    assert grade(citation, book.sources) == "Tx"
    assert cited(book, citation) == "A leaflet, page 3 (speaks of taps for brass)"
    found = counts(book, [book.entries["mine"]])["values by grade of source"]
    assert {name: number for name, number in found.items() if number} == {
        "T one maker": 1,
        "x of another tool, size or material": 1,
    }


def test_a_grade_that_there_is_not_is_told_of(tmp_path: Path) -> None:
    (tmp_path / "own.toml").write_text('schema = 1\n[[source]]\nid = "a"\ntitle = "A"\ngrade = "Z"\n')
    (finding,) = open_book(tmp_path).findings
    assert "'Z' is not one of S, M, B, b, T, W." in str(finding)


def test_the_letters_are_explained_the_strongest_first_and_only_those_that_are_used() -> None:
    assert list(GRADES) == list("SMBbTWPC-?")
    assert (
        explained(["?", "Bx", "S"])
        == "S standard or law, B book, ? guess, x of another tool, size or material"
    )
    assert explained([]) == ""


def test_every_document_of_the_shipped_book_has_a_grade() -> None:
    assert [one.id for one in open_book(None).sources.values() if one.grade not in DOCUMENTS.split()] == []
