"""A book in which hundreds of cards are recorded for each change of an entry: git is asked no more than for a small one."""

from __future__ import annotations

import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest

from library.history.entry_history import MOST_COMMITS, history
from library.history.git import Answer, Git
from library.history.recording import record
from library.history.sharing import pull, push
from tests.library.history.conftest import TAPS
from tests.library.history.two_machines import RunGit, change, rake, relief, tree_of

FEW, MANY = 3, MOST_COMMITS + 20


def _commit(number: int, name: str, text: str) -> Iterator[bytes]:
    yield f"commit refs/heads/main\ncommitter Ann <ann@shop.example> {1_700_000_000 + number} +0000\n".encode()
    yield f"data 1\nx\nM 100644 inline book/{name}\ndata {len(text.encode())}\n{text}\n\n".encode()


def laid(folder: Path, cards: int) -> Path:
    """A book whose rake angle was changed once, and with so many commits of cards after that."""
    (folder / "book").mkdir(parents=True)
    subprocess.run(["git", "init", "-q", "-b", "main", "."], cwd=folder, check=True)
    stream = [*_commit(0, "taps.toml", TAPS), *_commit(1, "taps.toml", TAPS.replace("4 deg", "5 deg"))]
    for number in range(cards):
        card = f'schema = 1\n\n[[card]]\nid = "c{number}"\nentry = "gun-tap"\n'
        stream += _commit(number + 2, f"cards/2026/c{number}.toml", card)
    subprocess.run(["git", "fast-import", "--quiet"], cwd=folder, check=True, input=b"".join(stream))
    subprocess.run(["git", "reset", "-q", "--hard"], cwd=folder, check=True)
    return folder / "book"


@pytest.fixture
def asked(monkeypatch: pytest.MonkeyPatch) -> list[tuple[str, int]]:
    """What git was asked, and how many objects for."""
    told: list[tuple[str, int]] = []
    ask = Git.ask

    def noted(self: Git, *arguments: str, given: bytes = b"", **rest: object) -> Answer:
        told.append((arguments[0], given.count(b"\n") if "cat-file" in arguments else 0))
        return ask(self, *arguments, given=given, **rest)  # type: ignore[arg-type]

    monkeypatch.setattr(Git, "ask", noted)
    return told


def test_an_old_change_of_an_entry_is_found_behind_any_number_of_cards(
    tmp_path: Path, asked: list[tuple[str, int]]
) -> None:
    read = {}
    for cards in (FEW, MANY):
        tree = tree_of(laid(tmp_path / str(cards), cards))
        asked.clear()
        last, begin = history(tree, "gun-tap")
        assert [one.key for one in last.changes] == ["rake_angle"]
        assert "title" in [one.key for one in begin.changes]
        read[cards] = list(asked)
    assert read[FEW] == read[MANY]
    assert sum(objects for _, objects in read[MANY]) == 2


@pytest.mark.depth
def test_recording_pulling_and_pushing_start_git_as_often_with_many_cards_as_with_few(
    tmp_path: Path, run_git: RunGit, asked: list[tuple[str, int]]
) -> None:
    read = {}
    for cards in (FEW, MANY):
        top = tmp_path / str(cards)
        book = laid(top, cards)
        run_git(tmp_path, "clone", "-q", "--bare", str(top), f"{cards}.git")
        run_git(top, "remote", "add", "origin", str(tmp_path / f"{cards}.git"))
        run_git(tmp_path, "clone", "-q", str(tmp_path / f"{cards}.git"), f"{cards} there")
        other = tmp_path / f"{cards} there" / "book"
        change(other, relief("7 deg"))
        push(tree_of(other))
        asked.clear()
        change(book, rake("6 deg"))
        assert record(tree_of(book), [book / "taps.toml"], "nothing new") == ""
        pull(tree_of(book))
        push(tree_of(book))
        assert "6 deg" in (book / "taps.toml").read_text()
        assert "7 deg" in (book / "taps.toml").read_text()
        read[cards] = list(asked)
    assert read[FEW] == read[MANY]
