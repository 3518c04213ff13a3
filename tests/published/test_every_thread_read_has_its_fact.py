"""The thread tables against the rows of facts of the open hole table, source and place with them."""

from __future__ import annotations

import tomllib
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from tests.published.fact_rows import FACTS, SHIPPED, amount

TABLES = SHIPPED.parent / "threads" / "tables"


@cache
def series_of_facts() -> dict[str, dict[str, Any]]:
    found = tomllib.loads((FACTS / "threads.toml").read_text("utf-8"))["series"]
    return {one["series"]: one for one in found}


@cache
def table(path: Path) -> dict[str, Any]:
    return tomllib.loads(path.read_text("utf-8"))


def millimetres(text: str) -> float:
    """A length of the tables, or the pitch of so many threads to the inch."""
    if text.endswith(" tpi"):
        return 25.4 / float(text.removesuffix(" tpi"))
    found = amount(text)
    assert isinstance(found, tuple)
    assert found[0] == "a length"
    return found[1]


def is_as_printed(printed: str, text: str) -> bool:
    """Whether a length, rounded or cut off to the digits that are printed, is the printed one."""
    unit = 10.0 ** -len(printed.partition(".")[2])
    return (
        abs(float(printed) - millimetres(text)) < unit
        if "." in printed
        else millimetres(text) == float(printed)
    )


@pytest.mark.parametrize(
    "name",
    [
        "iso-metric-coarse",
        "unified-coarse",
        "unified-fine",
        "british-pipe-parallel",
        "whitworth",
        "british-fine",
    ],
)
def test_a_series_has_the_diameters_pitches_and_drills_of_the_table_that_it_cites(name: str) -> None:
    facts, read = series_of_facts()[name], table(TABLES / f"{name}.toml")
    for line in facts["cited"]:
        cited = read["series"][line]
        assert cited["source"] == facts["source"]
        assert cited["place"].startswith(facts["place"])
    assert facts["read"]
    threads = {synonym: one for one in read["thread"] for synonym in one["synonyms"]}
    for synonym, diameter, pitch, drill in facts["rows"]:
        row = threads[synonym]
        assert not diameter or is_as_printed(diameter, row["diameter"]), synonym
        assert not pitch or is_as_printed(pitch, row.get("pitch") or row["threads_per_inch"]), synonym
        assert not drill or millimetres(row["tap_drill"]) == pytest.approx(float(drill)), synonym


def test_no_series_of_facts_is_left_out() -> None:
    assert len(series_of_facts()) == 6
    assert all((TABLES / f"{name}.toml").exists() for name in series_of_facts())
