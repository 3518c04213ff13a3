"""The invented ferry yard: it shows what a shop's book can hold, and says that it is invented."""

from __future__ import annotations

from pathlib import Path

import pytest

from library.book.opening import open_book
from library.book.starting import NotStarted
from library.cards.store import load
from library.demo import BOOK, lay_out

CARDS = ("2026-03-11-01", "2026-06-02-01", "2026-11-20-01")


@pytest.fixture(scope="module")
def yard(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("demo") / "yard"
    lay_out(folder)
    return folder


def test_every_file_says_that_it_is_invented() -> None:
    files = list(BOOK.rglob("*.toml"))
    assert len(files) >= 5
    for file in files:
        assert "invented" in file.read_text(encoding="utf-8").lower(), file.name


def test_it_changes_shipped_values_and_keeps_the_others(yard: Path) -> None:
    ours = open_book(yard).entries["tap-spiral-point-aluminium-bronze"]
    rake = ours.values["rake_angle"]
    assert rake.layer == "shop"
    assert rake.replaces is not None
    assert rake.replaces.usual != rake.usual
    assert ours.values["flutes"].layer == "shipped"


def test_it_has_entries_of_its_own_with_a_key_that_only_the_shop_knows(yard: Path) -> None:
    tap = open_book(yard).entries["ferry-ramp-hinge-tap"]
    assert tap.layer == "shop"
    assert tap.extra["x-drawer"] == "third from the top"


def test_it_shows_a_conflict_as_two_sourced_values_and_a_sentence(yard: Path) -> None:
    relief = open_book(yard).entries["ferry-hatch-dowel-drill"].values["land_relief_angle"]
    assert relief.disagreement
    assert [other.citation.label for other in relief.also] == ["shop"]
    assert relief.citation.label == "published"


def test_it_has_problems_on_purpose_in_one_file_only_and_keeps_the_good_beside_them(yard: Path) -> None:
    book = open_book(yard)
    assert len(book.findings) == 3
    assert {finding.place.file.name for finding in book.findings} == {"a-slip.toml"}
    assert book.entries["ferry-rail-countersink"].values["included_angle"].usual is not None


@pytest.mark.parametrize("card", CARDS)
def test_its_job_cards_read_without_a_word(yard: Path, card: str) -> None:
    opened = load(yard, card)
    assert opened.findings == ()
    assert opened.card.entry in open_book(yard).entries


def test_a_second_laying_out_never_writes_over_the_first(yard: Path) -> None:
    kept = (yard / "ferry-yard.toml").read_bytes()
    with pytest.raises(NotStarted, match="already"):
        lay_out(yard)
    assert (yard / "ferry-yard.toml").read_bytes() == kept
