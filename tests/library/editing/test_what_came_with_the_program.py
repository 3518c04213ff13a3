"""What came with the program is never written, and another version of it leaves every file of the shop as it is."""

from __future__ import annotations

import os
from datetime import date
from pathlib import Path

import pytest

from library.book import folders, opening
from library.book.opening import open_book, quick_rows
from library.cards.index import card_rows
from library.cards.model import Card, Tool
from library.cards.store import create, load, save_all
from library.cards.store import save as save_card
from library.demo import BOOK
from library.editing import changes as ask
from library.editing.document import EditRefused
from library.editing.planning import plan
from library.editing.saving import Done, save
from library.errors import SaveError
from library.files import of_the_program
from library.files.safe_write import ANYTHING, write_safely
from library.files.write_together import NotTogether
from library.history.auto_commit import set_commits_each_save
from tests.folder_pictures import snapshot, written

DAY = date(2026, 11, 26)

FIRST = """\
schema = 1

[[family]]
id = "tap"
title = "Taps"
kind = "tap"
what = "Tools that cut a thread."

[[entry]]
id = "hand-tap"
family = "tap"
title = "Hand tap"
rake_angle = { usual = "4 deg", source = "common practice" }
land_width = { usual = "2 mm", source = "common practice" }

[[entry]]
id = "old-tap"
family = "tap"
title = "Old tap"
rake_angle = { usual = "4 deg", source = "common practice" }
"""
NEXT = FIRST.replace('"4 deg"', '"6 deg"').replace('"2 mm"', '"3 mm"').replace("old-tap", "renamed-tap")

CHANGES: tuple[ask.Change, ...] = (
    ask.SetValue("hand-tap", "rake_angle", {"usual": "9 deg", "source": "shop"}),
    ask.SetValue("old-tap", "flutes", {"usual": 3, "source": "shop"}),
    ask.SetText("hand-tap", "title", "Our hand tap"),
    ask.SetText("old-tap", "title", "Our old tap"),
    ask.SetTable("family", "tap", {"fails": "Its chamfer rubs."}),
    ask.CopyEntry("hand-tap", "our-tap", "Our tap"),
    ask.AddEntry("new-tap", "tap", "New tap"),
    ask.AddFamily("awl", "Awls"),
    ask.RemoveValue("hand-tap", "rake_angle"),
    ask.RenameEntry("old-tap", "other-tap"),
    ask.RemoveEntry("old-tap"),
    ask.RenameEntry("our-tap", "second-tap"),
    ask.RemoveEntry("new-tap"),
)
"""Every way to change a book, most of them of what came with the program; to remove that takes the shop's own lines over it away."""


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    (tmp_path / "shop").mkdir()
    return tmp_path / "shop"


def version(folder: Path, text: str, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Data of a version of the program, taken in place of those that came with this one."""
    folder.mkdir()
    (folder / "taps.toml").write_text(text)
    monkeypatch.setattr(opening, "SHIPPED", folder)
    return folder


def changed(shop: Path, shipped: Path, changes: tuple[ask.Change, ...]) -> int:
    """Save the changes one after the other; how many were saved."""
    count = 0
    for one in changes:
        try:
            count += isinstance(save(plan(one, shop, shipped)), Done)
        except EditRefused as refused:
            assert "came with the program" in refused.sentence
    return count


def test_every_way_of_changing_goes_into_the_shop_s_own_files(
    shop: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shipped = version(tmp_path / "program", FIRST, monkeypatch)
    before = snapshot([shipped])
    assert changed(shop, shipped, CHANGES) == len(CHANGES) - 1, "what came with the program keeps its id"
    assert written(snapshot([shipped])) == written(before)
    assert open_book(shop).entries["second-tap"].title == "Our tap"


def test_a_newer_program_changes_no_file_of_the_shop_and_covers_none_of_its_values(
    shop: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shipped = version(tmp_path / "first", FIRST, monkeypatch)
    changed(shop, shipped, CHANGES[:6])
    create(shop, Card(family="tap", entry="old-tap", tool=Tool("T-1")), DAY)
    (shop / "own.toml").write_text('schema = 1   # by hand\nx-rack = 3\n\n[[jig]]\nid = "a"\nwhat = 3\n')
    open_book(shop)
    snapshot([shop])
    before = snapshot([shop])

    newer = version(tmp_path / "next", NEXT, monkeypatch)
    book = open_book(shop)
    assert [row.tool for row in card_rows(shop)] == ["T-1"]
    assert [row.id for row in quick_rows(shop)]
    hand, old = book.entries["hand-tap"], book.entries["old-tap"]
    usual = {key: one.usual.text for key, one in hand.values.items() if one.usual is not None}
    assert usual == {"rake_angle": "9 deg", "land_width": "3 mm"}, (
        "the shop's where it has one, else the newer one"
    )
    assert hand.title == "Our hand tap"
    assert old.title == "Our old tap", "what the shop wrote of an entry that is gone is still there"
    assert snapshot([shop]) == before

    assert changed(shop, newer, (ask.SetValue("hand-tap", "rake_angle", {"usual": "10 deg"}),)) == 1
    now = snapshot([shop])
    others = [path for path in before if path.is_file() and path.name != "changes.toml"]
    assert [path for path in others if now[path][:2] != before[path][:2]] == []
    lines = [one[shop / "changes.toml"][0].decode().splitlines() for one in (before, now)]
    assert [(old, new) for old, new in zip(*lines, strict=True) if old != new] == [
        (
            'rake_angle = { usual = "9 deg", source = "shop" }',
            'rake_angle = { usual = "10 deg", source = "shop" }',
        )
    ]


@pytest.fixture
def program(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A program's own folder, with data that a person may name as the book by mistake."""
    monkeypatch.setattr(of_the_program, "PROGRAM", tmp_path / "program")
    (tmp_path / "program").mkdir()
    shipped = version(tmp_path / "program" / "shipped", FIRST, monkeypatch)
    (shipped / "cards").mkdir()
    (shipped / "cards" / "a.toml").write_text('schema = 1\n\n[[card]]\nid = "a"\n')
    return shipped


def test_the_program_s_own_data_taken_as_the_book_are_read_and_never_written(
    program: Path, shop: Path
) -> None:
    before = snapshot([program.parent])
    assert open_book(program).entries["hand-tap"].title == "Hand tap"
    for one in CHANGES[:8]:
        with pytest.raises(
            SaveError, match=r"came with the program and is never changed.*heelclear new-book"
        ):
            save(plan(one, program, program))
    card = load(program, "a")
    with pytest.raises(SaveError, match="came with the program"):
        create(program, Card(family="tap"), DAY)
    with pytest.raises(SaveError, match="came with the program"):
        save_card(program, card, Card("a", notes="Ours."))
    with pytest.raises(NotTogether, match="came with the program"):
        save_all(program, [(card, Card("a", notes="Ours."))])
    with pytest.raises(SaveError, match="came with the program"):
        set_commits_each_save(program, wanted=True)
    assert written(snapshot([program.parent])) == written(before)


def test_a_book_around_the_program_s_own_folder_is_written_and_that_folder_is_not(program: Path) -> None:
    around = program.parent.parent
    before = snapshot([program.parent])
    change = ask.SetValue("hand-tap", "rake_angle", {"usual": "9 deg", "source": "shop"})
    with pytest.raises(SaveError, match="came with the program"):
        save(plan(change, around))
    assert create(around, Card(family="tap"), DAY).path.is_relative_to(around / "cards")
    os.symlink(program / "cards" / "a.toml", around / "linked.toml")
    with pytest.raises(SaveError, match="came with the program"):
        write_safely(around / "linked.toml", b"mine", root=around, expected=ANYTHING)
    assert written(snapshot([program.parent])) == written(before)


def test_the_data_that_came_with_this_program_and_its_demonstration_lie_in_that_folder() -> None:
    assert folders.shipped_folder().resolve().is_relative_to(of_the_program.PROGRAM)
    assert BOOK.resolve().is_relative_to(of_the_program.PROGRAM)
