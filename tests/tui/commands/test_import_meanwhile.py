"""Readings taken in while somebody else writes on the same cards: different places are all kept, or nothing is saved."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from library.cards import saving
from library.cards.editing import edited
from library.cards.model import Card
from library.cards.store import create, load, save, save_all
from tui.main import main

DAY = date(2026, 11, 25)
FIRST, SECOND = "2026-11-25-01", "2026-11-25-02"
Between = list[tuple[str, str, str]]


@pytest.fixture
def book(tmp_path: Path) -> Path:
    """A shop with two cards."""
    for _ in range(2):
        create(tmp_path / "book", Card(family="tap"), DAY)
    return tmp_path / "book"


@pytest.fixture
def between(book: Path, monkeypatch: pytest.MonkeyPatch) -> Between:
    """What somebody else writes between the reading and the saving: card, place and text, one at each try."""
    to_write: Between = []

    def all_saved(*given: object) -> None:
        if to_write:
            card, way, text = to_write.pop(0)
            theirs = load(book, card)
            changed = (
                edited(theirs.card, way, text) if way != "status" else replace(theirs.card, status="done")
            )
            save(book, theirs, changed)
        save_all(*given)  # type: ignore[arg-type]

    monkeypatch.setattr(saving, "save_all", all_saved)
    return to_write


@pytest.fixture
def table(tmp_path: Path) -> Path:
    file = tmp_path / "readings.csv"
    rows = [f"{card},after,drop,{flute},0.4{flute} mm" for card in (FIRST, SECOND) for flute in (1, 2)]
    file.write_text("\n".join(["card,when,quantity,flute,reading", *rows, ""]))
    return file


def drops(book: Path) -> list[tuple[str, ...]]:
    cards = (load(book, name).card for name in (FIRST, SECOND))
    return [card.after["drop"].readings if "drop" in card.after else () for card in cards]


def test_what_others_wrote_in_other_places_meanwhile_is_kept_too(
    book: Path, between: Between, table: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    between += [(FIRST, "minutes", "20"), (SECOND, "result", "good"), (FIRST, "received.drop", "0.2 mm")]
    assert main(["--library", str(book), "card-import", str(table)]) == 0
    assert "4 readings on 2 cards." in capsys.readouterr().out
    assert drops(book) == [("0.41 mm", "0.42 mm")] * 2
    first = load(book, FIRST).card
    assert (first.minutes, first.received["drop"]) == ("20", ("0.2 mm",))
    assert load(book, SECOND).card.result == "good"


def test_where_others_wrote_in_the_same_place_nothing_is_saved_on_any_card(
    book: Path, between: Between, table: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    between += [(SECOND, "after.drop", "0.5 mm")]
    assert main(["--library", str(book), "card-import", str(table)]) == 2
    told = " ".join(capsys.readouterr().err.split())
    assert f"after.drop of card {SECOND} was changed meanwhile by somebody else, to '0.5 mm'" in told
    assert told.endswith("Nothing was saved, on no card.")
    assert drops(book) == [(), ("0.5 mm",)]


def test_a_card_that_was_closed_or_taken_away_meanwhile_keeps_all_from_being_saved(
    book: Path,
    between: Between,
    table: Path,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    between += [(SECOND, "status", "done")]
    assert main(["--library", str(book), "card-import", str(table)]) == 2
    told = " ".join(capsys.readouterr().err.split())
    assert f"Card {SECOND} was closed meanwhile by somebody else. Nothing was saved, on no card." in told
    save(book, opened := load(book, SECOND), replace(opened.card, status="draft"))

    def taken_away(*given: object) -> None:
        load(book, SECOND).path.unlink(missing_ok=True)
        save_all(*given)  # type: ignore[arg-type]

    monkeypatch.setattr(saving, "save_all", taken_away)
    assert main(["--library", str(book), "card-import", str(table)]) == 2
    told = " ".join(capsys.readouterr().err.split())
    assert f"There is no card {SECOND}." in told
    assert told.endswith("Nothing was saved, on no card.")
    assert load(book, FIRST).card.after == {}


def test_one_who_is_always_overtaken_gives_up_with_a_sentence(
    book: Path,
    between: Between,
    table: Path,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(saving, "MOST_TRIES", 3)
    between += [(FIRST, "minutes", str(number)) for number in range(3)]
    assert main(["--library", str(book), "card-import", str(table)]) == 2
    assert "changed meanwhile" in capsys.readouterr().err
    assert not between
    assert drops(book) == [(), ()]
