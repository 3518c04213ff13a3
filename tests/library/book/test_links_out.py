"""A link that leads out of the book's folder is told of, and nothing that it leads to is shown; others are followed."""

from __future__ import annotations

from pathlib import Path

import pytest

from library.book.opening import open_book, quick_rows
from library.cards.index import card_rows
from library.cards.store import NoCard, load
from library.demo import lay_out
from tui.main import main

SECRET = "keeper:x:0:0:nobody-may-know:/root\n"
GOOD = 'schema = 1\n[[entry]]\nid = "good"\nfamily = "tap"\ntitle = "Good"\n'
CARD = "2026-06-02-01"


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    folder = tmp_path / "shop"
    folder.mkdir()
    (folder / "good.toml").write_text(GOOD)
    return folder


@pytest.fixture
def elsewhere(tmp_path: Path) -> Path:
    folder = tmp_path / "elsewhere"
    folder.mkdir()
    (folder / "accounts").write_text(SECRET)
    (folder / "theirs.toml").write_text(GOOD.replace('"good"', '"theirs"') + SECRET)
    return folder


def checked(folder: Path, capsys: pytest.CaptureFixture[str]) -> str:
    assert main(["--library", str(folder), "check"]) == 1
    return capsys.readouterr().out


def test_a_file_that_is_a_link_out_of_the_book_is_told_of_and_not_shown(
    shop: Path, elsewhere: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (shop / "ours.toml").symlink_to(elsewhere / "accounts")
    said = checked(shop, capsys)
    assert said.startswith(
        f"{shop}/ours.toml:1:1: This is a link that leads out of the book's folder, to {elsewhere}/accounts, "
        "and was not read. "
    )
    assert "nobody-may-know" not in said
    assert "1 problem found" in said


def test_a_folder_that_is_a_link_out_of_the_book_is_told_of_once_and_nothing_in_it_is_read(
    shop: Path, elsewhere: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (shop / "taps").symlink_to(elsewhere)
    said = checked(shop, capsys)
    assert said.count("leads out of the book's folder") == 1
    assert "nobody-may-know" not in said
    assert "theirs" not in open_book(shop).entries
    assert "theirs" not in [row.id for row in quick_rows(shop)]


def test_a_relative_link_that_climbs_out_is_outside_too(shop: Path, elsewhere: Path) -> None:
    (shop / "ours.toml").symlink_to("../elsewhere/theirs.toml")
    (told,) = open_book(shop).findings
    assert "leads out of the book's folder" in told.wrong
    assert "theirs" not in open_book(shop).entries


def test_links_that_stay_in_the_book_are_followed(shop: Path) -> None:
    (shop / "kept").mkdir()
    (shop / "kept" / "more.txt").write_text(GOOD.replace('"good"', '"more"'))
    (shop / "more.toml").symlink_to("kept/more.txt")
    (shop / "last").symlink_to(shop / "kept")
    (shop / "kept" / "last.toml").write_text(GOOD.replace('"good"', '"last"'))
    (shop / "kept" / "good.toml").write_text("schema = 1\n")
    book = open_book(shop)
    assert {"good", "more", "last"} <= set(book.entries)
    assert not [one for one in book.findings if "leads out" in one.wrong]


def test_a_book_whose_folder_is_itself_a_link_is_read_whole(tmp_path: Path) -> None:
    lay_out(tmp_path / "server" / "yard")
    (tmp_path / "book").symlink_to(tmp_path / "server" / "yard")
    (tmp_path / "server" / "yard" / "again.toml").symlink_to(tmp_path / "book" / "wheels.toml")
    book = open_book(tmp_path / "book")
    assert "ferry-ramp-hinge-tap" in book.entries
    assert not [one for one in book.findings if "leads out" in one.wrong]
    assert load(tmp_path / "book", CARD).card.id == CARD
    assert len(card_rows(tmp_path / "book")) == 6


def test_a_card_that_is_a_link_out_of_the_book_is_told_of_and_not_shown(
    shop: Path, elsewhere: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (shop / "cards" / "2026").mkdir(parents=True)
    (shop / "cards" / "2026" / f"{CARD}.toml").symlink_to(elsewhere / "theirs.toml")
    with pytest.raises(NoCard, match=r"is a link that leads out of the book's folder, to .*theirs\.toml"):
        load(shop, CARD)
    said = checked(shop, capsys)
    assert "leads out of the book's folder" in said
    assert "nobody-may-know" not in said
    assert [row.status for row in card_rows(shop)] == ["unreadable"]


def test_a_folder_of_cards_that_is_a_link_out_of_the_book_is_not_read(shop: Path, elsewhere: Path) -> None:
    lay_out(elsewhere / "yard")
    (shop / "cards").symlink_to(elsewhere / "yard" / "cards")
    with pytest.raises(NoCard, match="leads out"):
        load(shop, CARD)
    assert {row.status for row in card_rows(shop)} == {"unreadable"}
