"""Nothing is shipped without a word on where it came from."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from geometry.quantities import QUANTITIES
from library.book.grades import DOCUMENTS

Table = dict[str, Any]
Tables = dict[str, list[Table]]

UNPUBLISHED = ("common practice", "from memory")
GUIDANCE = ("setup", "recommended_wheel", "unsuited_wheel", "symptom")
"""The tables that tell of the work."""

NOT_VALUES = {
    "id",
    "family",
    "title",
    "work_material",
    "tool_material",
    "synonyms",
    "cautions",
    "notes",
    "when",
    "except",
}


def values_of(entry: Table) -> Iterator[tuple[str, Table]]:
    """Every value of an entry, and every other source's value beside it."""
    for key, value in entry.items():
        if key in NOT_VALUES:
            continue
        yield f"{entry['id']}.{key}", value
        for other in value.get("also", []):
            yield f"{entry['id']}.{key}.also", other


def every_value(tables: Tables) -> Iterator[tuple[str, Table]]:
    for row in tables["entry"] + tables["rule"]:
        yield from values_of(row)


def test_every_key_of_an_entry_is_in_the_vocabulary(tables: Tables) -> None:
    rows = tables["entry"] + tables["rule"]
    strange = {key for row in rows for key in row if key not in NOT_VALUES | set(QUANTITIES)}
    assert strange == set()


def test_every_value_names_a_source_that_exists(tables: Tables) -> None:
    known = {source["id"] for source in tables["source"]} | set(UNPUBLISHED)
    assert [where for where, value in every_value(tables) if value.get("source") not in known] == []


def test_every_published_value_names_its_place_in_the_document(tables: Tables) -> None:
    placeless = [
        where
        for where, value in every_value(tables)
        if value["source"] not in UNPUBLISHED and not value.get("place")
    ]
    assert placeless == []


def lines_of(tables: Tables) -> Iterator[tuple[str, Table]]:
    """Every line of what is told of the work, each a table with its text and its source."""
    for kind in GUIDANCE:
        for row in tables[kind]:
            yield from ((f"{row['id']}.{key}", one) for key, one in row.items() if isinstance(one, dict))


def test_every_line_of_the_work_names_a_source_that_exists_and_its_place(tables: Tables) -> None:
    known = {source["id"] for source in tables["source"]}
    lines = list(lines_of(tables))
    assert len(lines) > 100
    for where, line in lines:
        assert line["source"] == "common practice" or (line["source"] in known and line["place"]), where


def test_no_safety_text_rests_on_memory(tables: Tables) -> None:
    assert [c["id"] for c in tables["caution"] if c.get("source") == "from memory"] == []


def test_every_caution_names_a_source_and_its_place(tables: Tables) -> None:
    known = {source["id"] for source in tables["source"]}
    for caution in tables["caution"]:
        if caution["source"] != "common practice":
            assert caution["source"] in known, caution["id"]
            assert caution.get("place"), caution["id"]


def test_every_published_caution_tells_the_year_of_its_text_or_that_none_is_printed(tables: Tables) -> None:
    years = {source["id"]: source["year"] for source in tables["source"]}
    for caution in tables["caution"]:
        if caution["source"] != "common practice":
            told = f"{caution['place']} {years[caution['source']]}"
            assert re.search(r"\b(1[89]|20)\d\d\b|n\.d\.", told), caution["id"]


def test_every_source_has_a_title_and_a_year_or_says_that_it_has_none(tables: Tables) -> None:
    for source in tables["source"]:
        assert source["title"], source["id"]
        assert re.search(r"\b(1[89]|20)\d\d|n\.d\.", source["year"]), source["id"]
        assert source["grade"] in DOCUMENTS.split(), source["id"]


def test_a_source_without_an_author_says_why_to_take_it_with_care(tables: Tables) -> None:
    careless = [row["id"] for row in tables["source"] if not row.get("by") and not row.get("caveat")]
    assert careless == []


def test_every_source_is_cited(tables: Tables, data_files: list[Path]) -> None:
    """A source that nothing rests on is a mistake, or a value that got lost."""
    cited: set[str] = set()

    def walk(node: object) -> None:
        if isinstance(node, dict):
            if isinstance(node.get("source"), str):
                cited.add(node["source"])
            for inner in node.values():
                walk(inner)
        elif isinstance(node, list):
            for inner in node:
                walk(inner)

    for file in data_files:
        walk(tomllib.loads(file.read_text(encoding="utf-8")))
    named_in_words = {"tool-supplier-taps", "tool-supplier-hook"}
    assert {source["id"] for source in tables["source"]} - cited - named_in_words == set()


def test_no_shipped_text_carries_an_address_a_trade_mark_or_a_firm(data_files: list[Path]) -> None:
    marks = re.compile(r"https?://|www\.|\.com\b|[®™©]|\b(Inc|Ltd|GmbH|LLC|Corp|AG)\b\.?")
    for file in data_files:
        assert not marks.search(file.read_text(encoding="utf-8")), file.name


def test_one_makers_or_dealers_page_says_that_it_is_no_general_rule(tables: Tables) -> None:
    for source in tables["source"]:
        if re.match(r"An? .*\b(maker|dealer|supplier|firm)'s\b", source["title"]):
            assert source.get("caveat"), source["id"]
