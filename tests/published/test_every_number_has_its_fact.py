"""Every number of the book stands in a row of facts, with its source and its place; how a row is written is in facts/README.md."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest

from library.book.grades import DOCUMENTS
from tests.published.fact_rows import (
    NOT_AGAIN,
    Cited,
    Fact,
    amount,
    are_alike,
    cited,
    documents,
    facts,
    figures,
    figures_said,
    shipped,
)

STRONGEST = DOCUMENTS.split()[:2]
"""Standard or law, and military or national manual."""


def values() -> list[Cited]:
    """The values of the book that rest on a document."""
    return [one for one in cited() if one.quantity]


def lines() -> list[Cited]:
    """The lines of set-ups, wheels and troubles that rest on a document and have a number in them."""
    return [one for one in cited() if one.text and figures(one.text)]


def cautions() -> list[dict[str, str]]:
    """The cautions that rest on a document and have a number in them."""
    rest_on_one = [one for one in shipped()["caution"] if one["source"] != "common practice"]
    return [one for one in rest_on_one if figures(one["text"])]


@cache
def by_place() -> dict[tuple[str, str, str], Fact]:
    """The rows of values by source, place and quantity."""
    return {(fact.source, fact.place, fact.quantity): fact for fact in facts() if fact.quantity}


def of_value(value: Cited) -> list[Fact]:
    """The row that a value rests on: same source, place, quantity and numbers."""
    fact = by_place().get((value.source, value.place, value.quantity))
    return [fact] if fact is not None and are_alike(fact.amounts, value.amounts) else []


def of_line(line: Cited) -> list[Fact]:
    """The rows that a line of text rests on: same source and place."""
    at = (line.source, line.place)
    return [fact for fact in facts() if fact.says and not fact.caution and (fact.source, fact.place) == at]


def of_caution(name: str) -> list[Fact]:
    return [fact for fact in facts() if fact.caution == name]


def all_said(rows: list[Fact]) -> set[str]:
    """The numbers that some rows say together."""
    return set().union(*(figures_said(fact.says) for fact in rows))


def told(value: Cited) -> str:
    return f"{value.where}: {value.source}, {value.place}: {' / '.join(value.measures)}"


def test_every_published_value_has_its_row_of_facts() -> None:
    assert len(values()) > 200
    assert [told(value) for value in values() if not of_value(value)] == []


def test_what_a_document_is_said_to_speak_of_stands_in_its_row() -> None:
    strange = [
        f"{told(value)}: speaks of {value.speaks_of}"
        for value in values()
        if not any(value.speaks_of in fact.of for fact in of_value(value))
    ]
    assert strange == []


def test_every_number_in_a_line_of_the_work_has_its_row_of_facts() -> None:
    assert len(lines()) > 10
    unsaid = {one.where: figures(one.text) - all_said(of_line(one)) for one in lines()}
    assert {where: missing for where, missing in unsaid.items() if missing} == {}


def test_every_number_of_a_caution_has_its_row_of_facts() -> None:
    assert len(cautions()) > 3
    unsaid = {one["id"]: figures(one["text"]) - all_said(of_caution(one["id"])) for one in cautions()}
    assert {name: missing for name, missing in unsaid.items() if missing} == {}


def test_a_caution_names_a_place_that_one_of_its_rows_has() -> None:
    for caution in cautions():
        own = [fact for fact in of_caution(caution["id"]) if fact.source == caution["source"]]
        assert [fact for fact in own if fact.place in caution["place"]], caution["id"]


def test_every_row_of_facts_is_used_by_the_book() -> None:
    used = [fact for value in values() for fact in of_value(value)]
    used += [fact for line in lines() for fact in of_line(line)]
    used += [fact for caution in cautions() for fact in of_caution(caution["id"])]
    idle = set(facts()) - set(used)
    assert sorted(f"{fact.source}, {fact.place}: {fact.quantity or fact.says}" for fact in idle) == []


def test_every_row_of_facts_says_how_it_was_read() -> None:
    known = {source["id"] for source in shipped()["source"]}
    assert {fact.source for fact in facts() if not fact.caution} <= known
    assert [fact for fact in facts() if not fact.read] == []


def test_how_every_document_of_the_strongest_grades_was_read_is_told_and_none_is_taken_over() -> None:
    read = {document["id"]: document.get("read", "") for document in documents()}
    assert len(read) == len(documents())
    strongest = {source["id"] for source in shipped()["source"] if source["grade"] in STRONGEST}
    assert len(strongest) > 12
    assert [name for name in strongest if not read.get(name)] == []
    assert [one for one in facts() if one.source in strongest and one.read.startswith(NOT_AGAIN)] == []


def test_a_place_of_a_document_prints_one_thing_of_one_quantity() -> None:
    assert len(facts()) == len(set(facts()))
    assert len(by_place()) == len([fact for fact in facts() if fact.quantity])


def test_a_number_a_source_or_a_place_that_is_changed_in_the_book_has_no_row_any_more() -> None:
    for value in values():
        number = next(one for one in value.measures if one)
        other_number = f"1{number}" if number[0].isdigit() else f"not {number}"
        changed = tuple(other_number if one == number else one for one in value.measures)
        for other in (
            replace(value, measures=changed),
            replace(value, source=f"{value.source}-2"),
            replace(value, place=f"{value.place}, below"),
        ):
            assert not of_value(other), told(other)


@pytest.mark.parametrize(
    ("text", "kind", "number"),
    [
        ("59 deg each side", "an angle", 2.0594885),
        ("1 deg 47 min each side", "an angle", 0.0622501),
        ("3/4 in to the foot", "a count or a ratio", 0.0625),
        ("1 in 16", "a count or a ratio", 0.0625),
        ("1 in 1000", "a length", 0.1),
        ("1/64 in", "a length", 0.396875),
        ("1-1/2 in", "a length", 38.1),
        ("5 % of D", "a share of the diameter", 0.05),
    ],
)
def test_the_arithmetic_of_the_rows_is_that_of_the_shop(text: str, kind: str, number: float) -> None:
    # Derived: 118 x pi / 180, (3 + 34/60) x pi / 180, 0.75 / 12, 1 / 16, a thousandth of 100 mm, 25.4 / 64, 1.5 x 25.4.
    found = amount(text)
    assert isinstance(found, tuple)
    assert found[0] == kind
    assert found[1] == pytest.approx(number, abs=1e-7)


def test_the_figures_of_a_text_are_its_numbers_without_shapes_of_wheels_and_rounded_millimetres() -> None:
    assert figures("at most 1/8 in (3 mm), D64, type 6 or 11, 0.020 mm") == {"1/8", "64", "0.02"}
    assert figures("at most 1/8 in (2 mm)") == {"1/8", "2"}
    assert figures_said("1500 m/min") == {"1500", "25"}
