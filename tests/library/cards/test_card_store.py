"""Cards on the disk."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from library.cards import store
from library.cards.editing import edited
from library.cards.index import card_rows
from library.cards.model import SCHEMA, Card
from library.cards.store import NoCard, card_path, create, load, save
from library.cards.writing import as_toml
from library.errors import ChangedMeanwhile, SaveError
from library.files.bounds import Bounds

DAY = date(2026, 11, 25)


def test_a_new_card_gets_the_next_number_of_its_day_and_a_folder_for_its_year(tmp_path: Path) -> None:
    book = tmp_path / "book"
    ids = [create(book, Card(notes=str(number)), DAY).card.id for number in range(3)]
    assert ids == ["2026-11-25-01", "2026-11-25-02", "2026-11-25-03"]
    assert (book / "cards" / "2026" / "2026-11-25-03.toml").is_file()
    assert load(book, "2026-11-25-02").card.notes == "1"
    assert load(book, "2026-11-25-02").card.started == DAY


def test_a_number_taken_between_the_look_and_the_saving_is_not_written_over(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    create(tmp_path, Card(notes="theirs"), DAY)
    monkeypatch.setattr(Path, "exists", lambda _: False)
    mine = create(tmp_path, Card(notes="mine"), DAY)
    monkeypatch.undo()
    assert mine.card.id == "2026-11-25-02"
    assert load(tmp_path, "2026-11-25-01").card.notes == "theirs"


def test_saving_keeps_the_id_and_changes_the_rest(tmp_path: Path) -> None:
    opened = create(tmp_path, Card(), DAY)
    saved = save(tmp_path, opened, replace(opened.card, id="other", result="good"))
    assert saved.card.id == "2026-11-25-01"
    assert load(tmp_path, "2026-11-25-01").card.result == "good"
    # And again from what saving gave back.
    save(tmp_path, saved, replace(saved.card, minutes="12"))
    assert load(tmp_path, "2026-11-25-01").card.minutes == "12"


def test_a_card_changed_by_somebody_else_is_not_written_over(tmp_path: Path) -> None:
    opened = create(tmp_path, Card(), DAY)
    save(tmp_path, opened, replace(opened.card, notes="theirs"))
    with pytest.raises(ChangedMeanwhile):
        save(tmp_path, opened, replace(opened.card, notes="mine"))
    assert load(tmp_path, opened.card.id).card.notes == "theirs"


def test_a_card_of_a_newer_program_is_not_written_over(tmp_path: Path) -> None:
    opened = create(tmp_path, Card(), DAY)
    newer = opened.path.read_text().replace("schema = 1", f"schema = {SCHEMA + 1}")
    opened.path.write_text(newer)
    again = load(tmp_path, opened.card.id)
    with pytest.raises(SaveError, match="newer Heelclear"):
        save(tmp_path, again, replace(again.card, notes="x"))
    assert opened.path.read_text() == newer


def test_comments_and_order_that_a_person_wrote_stay(tmp_path: Path) -> None:
    opened = create(tmp_path, Card(family="tap", notes="a # is no comment", result="good"), DAY)
    by_hand = (
        "# the winch tap\nschema = 1\nx-seen = true\n\n[[card]]\nresult = 'good'   # after two passes\n"
        'id = "2026-11-25-01"\nfamily = "tap"\nstarted = 2026-11-25\nstatus = "draft"\nunits = "mm"\n'
        'notes = "a # is no comment"\n'
    )
    opened.path.write_text(by_hand)
    again = load(tmp_path, opened.card.id)
    changed = edited(edited(again.card, "notes", "none"), "received.drop", "0.3 mm")
    saved = save(tmp_path, again, changed)
    text = saved.path.read_text()
    assert saved.card == changed
    assert text.startswith(by_hand[: by_hand.index("notes")])
    assert "# after two passes" in text
    assert "x-seen = true" in text


def test_a_file_with_something_beside_its_card_keeps_it(tmp_path: Path) -> None:
    opened = create(tmp_path, Card(), DAY)
    opened.path.write_text(as_toml(opened.card) + '\n[[x-photo]]\nfile = "a.jpg"\n')
    again = load(tmp_path, opened.card.id)
    save(tmp_path, again, replace(again.card, result="good"))
    assert '[[x-photo]]\nfile = "a.jpg"' in opened.path.read_text()
    assert load(tmp_path, opened.card.id).card.result == "good"


def test_two_cards_in_one_file_are_left_to_the_person(tmp_path: Path) -> None:
    opened = create(tmp_path, Card(), DAY)
    opened.path.write_text(opened.path.read_text() + '\n[[card]]\nid = "other"\n')
    again = load(tmp_path, opened.card.id)
    with pytest.raises(SaveError, match="holds 2 cards"):
        save(tmp_path, again, again.card)


def test_a_card_that_would_not_read_back_is_not_saved(tmp_path: Path) -> None:
    opened = create(tmp_path, Card(), DAY)
    before = opened.path.read_bytes()
    with pytest.raises(SaveError, match="would not read back"):
        save(tmp_path, opened, replace(opened.card, result="x" * 5000))
    assert opened.path.read_bytes() == before


def test_a_folder_that_cannot_be_made_is_told(tmp_path: Path) -> None:
    (tmp_path / "cards").write_text("a file")
    with pytest.raises(SaveError, match="cards"):
        create(tmp_path, Card(), DAY)


@pytest.mark.parametrize("wrong", ["", "../x", "a/b", ".hidden", "x" * 80])
def test_an_id_that_no_card_can_have_is_refused(wrong: str) -> None:
    with pytest.raises(NoCard, match="no id"):
        card_path(Path("book"), wrong)


def test_a_card_that_is_not_there_is_told(tmp_path: Path) -> None:
    with pytest.raises(NoCard, match="no card 2026-01-01-01"):
        load(tmp_path, "2026-01-01-01")
    path = card_path(tmp_path, "2026-01-01-01")
    path.mkdir(parents=True)
    with pytest.raises(NoCard, match="folder"):
        load(tmp_path, "2026-01-01-01")


def test_a_file_without_a_card_is_told_and_never_written_over(tmp_path: Path) -> None:
    path = card_path(tmp_path, "2026-01-01-01")
    path.parent.mkdir(parents=True)
    path.write_text("schema = 1\n")
    opened = store.load_file(path, Bounds(tmp_path))
    assert "holds no card" in opened.read_only
    with pytest.raises(SaveError):
        save(tmp_path, opened, Card())


def test_reading_changes_no_byte_and_no_time(tmp_path: Path) -> None:
    path = create(tmp_path, Card(), DAY).path
    before = path.stat()
    load(tmp_path, "2026-11-25-01")
    after = path.stat()
    assert (before.st_mtime_ns, before.st_ctime_ns) == (after.st_mtime_ns, after.st_ctime_ns)


def test_a_file_that_a_hand_broke_is_no_empty_card_in_the_list_and_says_where_it_is_broken(
    tmp_path: Path,
) -> None:
    opened = create(tmp_path, Card(received={"drop": ("0.28 mm",)}), DAY)
    line = opened.path.read_text().count("\n") + 1
    opened.path.write_text(opened.path.read_text() + "[[card\n")
    again = load(tmp_path, opened.card.id)
    assert again.broken
    assert f"cannot be read (line {line}, column 1: The brackets" in again.read_only
    (row,) = card_rows(tmp_path)
    assert (row.id, row.ended) == (opened.card.id, "unreadable")
    assert "unreadable" in row.text


def test_a_file_that_holds_nothing_is_broken_and_a_whole_one_is_not(tmp_path: Path) -> None:
    opened = create(tmp_path, Card(), DAY)
    assert not opened.broken
    opened.path.write_text("schema = 1\n")
    assert load(tmp_path, opened.card.id).broken
    assert [row.status for row in card_rows(tmp_path)] == ["unreadable"]
