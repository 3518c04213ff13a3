"""F7 on every screen that has something to be taken away: copied, or written into a new file in one of three forms."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

import pytest

from library.book.opening import open_book
from library.demo import lay_out
from tui.actions import EVERYWHERE, on_screen
from tui.app import Heelclear
from tui.session import Session

pytestmark = pytest.mark.depth
"""It takes long, and the server runs it."""

WAYS: dict[str, tuple[list[str], str]] = {
    "book": (["bronze spi"], "aluminium bronze"),
    "entry": (["bronze spi", "<enter>"], "aluminium bronze"),
    "calculator": (["bronze spi", "<f2>", "M12", "<enter>", "3.2", "<enter>"], "Lead over"),
    "compare": (["bronze", "<ctrl+t>", "<ctrl+t>", "<ctrl+k>"], "Side by side"),
    "cards": (["<f3>", "T-12-3"], "T-12-3"),
    "card": (["<f3>", "T-12-3", "<enter>"], "T-12-3"),
    "sheet": (["<f3>", "T-12-3", "<f7>", "<enter>"], "T-12-3"),
    "life": (["<f3>", "T-12-3", "<f8>", "life", "<enter>"], "T-12-3"),
    "batch": (["<f3>", "<ctrl+t>", "<ctrl+t>", "<f8>", "plan", "<enter>"], "grinder"),
    "cautions": (["<f4>"], "Wheel"),
    "glossary": (["<f8>", "words explained", "<enter>", "chatter"], "hatter"),
    "findings": (["<f8>", "problems", "<enter>"], "odd"),
    "help": (["?"], "This is the book"),
    "own-table": (["<f8>", "troubles", "<enter>", "burns reamer", "<enter>"], "Dress it"),
}
"""How to get to each of them from the book, and words of what is taken away."""

KINDS = (("text file", ".txt"), ("markdown", ".md"), ("web page", ".html"))
"""Forms of a file, by the words that find them; one screen after another is written in another of them."""

AtTheYard = Callable[..., AbstractAsyncContextManager[Any]]


@pytest.fixture
def at_the_yard(tmp_path: Path, hands_on: Any, monkeypatch: pytest.MonkeyPatch) -> AtTheYard:
    """Opens the program on the invented book, with one problem in it, in an empty folder."""
    shop, out = tmp_path / "ferry-yard", tmp_path / "out"
    lay_out(shop)
    (shop / "odd.toml").write_text(
        'schema = 1\n[[entry]]\nid = "odd"\nfamily = "tap"\ntitle = "Odd"\nrake_angle = "5"\n'
    )
    out.mkdir()
    monkeypatch.chdir(out)

    def opened() -> AbstractAsyncContextManager[Any]:
        app = Heelclear(Session(), lambda: open_book(shop), shop, tmp_path / "state")
        return hands_on(app, shop, (80, 24))  # type: ignore[no-any-return]

    return opened


def test_every_screen_that_prints_is_walked_to() -> None:
    assert set(WAYS) == {where for where in EVERYWHERE if "print" in on_screen(where)}


@pytest.mark.parametrize("where", WAYS)
async def test_what_is_in_front_is_copied_and_written_in_a_form(at_the_yard: AtTheYard, where: str) -> None:
    kind, suffix = KINDS[list(WAYS).index(where) % len(KINDS)]
    way, words = WAYS[where]
    async with at_the_yard() as hands:
        await hands.do(*way)
        assert where == hands.app.screen.WHERE
        asked = await hands.do("<f7>")
        assert asked.startswith("Print: ")
        assert hands.app.screen.WHERE == "print"
        assert "Sent to the clipboard" in await hands.do("copy", "<enter>")
        assert where == hands.app.screen.WHERE
        assert words in hands.app.clipboard
        assert "Written to" in await hands.do("<f7>", kind, "<enter>")
    (written,) = Path.cwd().iterdir()
    assert written.suffix == suffix
    text = written.read_text()
    assert words in text
    assert text.startswith("<!DOCTYPE html>") == (suffix == ".html")
    assert (text == hands.app.clipboard) == (suffix == ".txt")


async def test_a_file_that_is_there_is_never_written_over(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do(*WAYS["entry"][0], "<f7>", "text file", "<enter>")
        (first,) = Path.cwd().iterdir()
        first.write_text("mine")
        await hands.do("<f7>", "text file", "<enter>")
        assert first.read_text() == "mine"
        assert len(list(Path.cwd().iterdir())) == 2


async def test_a_folder_that_cannot_be_written_is_said_with_what_to_do(
    at_the_yard: AtTheYard, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*arguments: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr("tui.screens.print.write_new_file", refuse)
    async with at_the_yard() as hands:
        await hands.do(*WAYS["entry"][0], "<f7>", "text file", "<enter>")
        assert "could not be written: Permission denied." in hands.words()
        assert "Start in a folder in which you may write" in hands.words()


async def test_without_an_answer_there_is_nothing_to_print_and_that_is_said(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do("bronze spi", "<f2>")
        assert "There is no answer yet" in await hands.do("<f7>")


async def test_a_key_of_the_row_that_has_nothing_to_do_says_so(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do("<f8>", "machines", "<enter>")
        assert "There is nothing to print on this screen." in await hands.do("<f7>")
        assert "There is nothing to calculate on this screen." in await hands.do("<f2>")
        assert "There is nothing to change on this screen." in await hands.do("<f1>", "<f6>")
        assert "?Help F2 Calc" in await hands.do("<down>")
