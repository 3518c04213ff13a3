"""Several programs at one job card: different places are all kept, and one place is never written over unseen."""

from __future__ import annotations

import subprocess
import sys
from collections import Counter
from datetime import date
from pathlib import Path

import pytest

from library.cards import saving
from library.cards.editing import edited
from library.cards.model import Card
from library.cards.saving import SavedCard, save_merged
from library.cards.store import NoCard, create, load, save
from library.errors import SaveError
from tui.main import main

pytestmark = pytest.mark.depth
"""It takes long, and the server runs it."""

DAY = date(2026, 11, 25)
ID = "2026-11-25-01"
PLACES = ("minutes", "result", "tool.belongs_to", "received.drop")


@pytest.fixture
def book(tmp_path: Path) -> Path:
    """A shop with one card."""
    create(tmp_path / "book", Card(family="tap"), DAY)
    return tmp_path / "book"


def written(book: Path, saves: int, *places: str) -> Counter[str]:
    """What came of so many saves of each place by a program of its own."""
    script = Path(__file__).with_name("card_setting_run.py")
    command = [sys.executable, str(script), str(book), ID, str(saves), *places]
    done = subprocess.run(command, capture_output=True, text=True, timeout=280, check=False)
    assert done.returncode == 0, done.stderr
    return Counter(done.stdout.splitlines())


@pytest.mark.parametrize("saves", [5, pytest.param(100, marks=pytest.mark.depth)])
def test_four_programs_that_write_different_places_of_one_card_are_never_refused(
    book: Path, saves: int
) -> None:
    assert written(book, saves, *PLACES) == {f"{place} 0": saves for place in PLACES}
    card = load(book, ID).card
    assert (card.minutes, card.result, card.tool.belongs_to) == (str(saves),) * 3
    assert card.received["drop"] == (f"{saves} mm",)


def other(book: Path, way: str, text: str) -> None:
    """Somebody else writes on the card."""
    theirs = load(book, ID)
    save(book, theirs, edited(theirs.card, way, text))


@pytest.fixture
def between(monkeypatch: pytest.MonkeyPatch) -> list[tuple[Path, str, str]]:
    """What somebody else writes between the reading and the saving, one place at each try."""
    to_write: list[tuple[Path, str, str]] = []

    def saved(*given: object) -> object:
        if to_write:
            other(*to_write.pop(0))
        return save(*given)  # type: ignore[arg-type]

    monkeypatch.setattr(saving, "save", saved)
    return to_write


def test_another_place_is_kept_too_and_the_same_place_is_refused_with_what_stands_there(
    book: Path, between: list[tuple[Path, str, str]], capsys: pytest.CaptureFixture[str]
) -> None:
    between += [(book, "result", "good"), (book, "tool.belongs_to", "crane")]
    assert main(["--library", str(book), "card-set", ID, "minutes=20"]) == 0
    card = load(book, ID).card
    assert (card.minutes, card.result, card.tool.belongs_to) == ("20", "good", "crane")
    between += [(book, "minutes", "25")]
    assert main(["--library", str(book), "card-set", ID, "minutes=30", "result=fair"]) == 2
    told = " ".join(capsys.readouterr().err.split())
    assert f"minutes of card {ID} was changed meanwhile by somebody else, to '25'. Nothing was saved" in told
    card = load(book, ID).card
    assert (card.minutes, card.result) == ("25", "good")


def test_a_card_that_somebody_closed_meanwhile_is_not_written_on(
    book: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def closed_first(*given: object) -> object:
        monkeypatch.setattr(saving, "save", save)
        path = load(book, ID).path
        path.write_text(path.read_text().replace('status = "draft"', 'status = "done"'))
        return save(*given)  # type: ignore[arg-type]

    monkeypatch.setattr(saving, "save", closed_first)
    assert main(["--library", str(book), "card-set", ID, "minutes=20"]) == 2
    assert "was closed meanwhile by somebody else" in " ".join(capsys.readouterr().err.split())
    assert load(book, ID).card.minutes == ""


def test_one_who_is_always_overtaken_gives_up_with_a_sentence(
    book: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    opened, tries = load(book, ID), []

    def overtaken(*given: object) -> object:
        tries.append(given)
        other(book, "result", str(len(tries)))
        return save(*given)  # type: ignore[arg-type]

    monkeypatch.setattr(saving, "save", overtaken)
    monkeypatch.setattr(saving, "MOST_TRIES", 3)
    with pytest.raises(SaveError, match="changed meanwhile"):
        save_merged(book, opened, edited(opened.card, "minutes", "20"))
    assert len(tries) == 3


def test_a_card_that_was_taken_away_is_told(book: Path) -> None:
    opened = load(book, ID)
    opened.path.unlink()
    with pytest.raises(NoCard, match="no card 2026-11-25-01"):
        save_merged(book, opened, edited(opened.card, "minutes", "20"))


def test_a_save_that_nobody_came_between_is_not_called_merged(book: Path) -> None:
    opened = load(book, ID)
    saved = save_merged(book, opened, edited(opened.card, "minutes", "20"))
    assert isinstance(saved, SavedCard)
    assert not saved.merged
