"""A slow disk or a far machine never holds up the screen, and what is refused loses nothing."""

from __future__ import annotations

import threading
from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

import pytest

from library.editing.saving import Done

Program = Callable[[], AbstractAsyncContextManager[Any]]
Files = Callable[[], dict[str, str]]


class SlowDisk:
    """Saving that waits until it is let go."""

    def __init__(self, save: Callable[..., Any]) -> None:
        self._save = save
        self.begun = threading.Event()
        self.let_go = threading.Event()

    def __call__(self, *arguments: Any) -> Any:
        self.begun.set()
        assert self.let_go.wait(60)
        return self._save(*arguments)


async def _before_saving(hands: Any, monkeypatch: pytest.MonkeyPatch) -> SlowDisk:
    await hands.open("bronze")
    await hands.choose("chamfer relief")
    await hands.type("5 deg")
    await hands.press("ctrl+r")
    slow = SlowDisk(hands.app.book_service.save)
    monkeypatch.setattr(hands.app.book_service, "save", slow)
    await hands.press_meanwhile("enter")
    await hands.until(slow.begun.is_set)
    return slow


async def test_while_a_save_takes_long_it_is_said_and_every_key_is_answered(
    program: Program, monkeypatch: pytest.MonkeyPatch, files: Files
) -> None:
    async with program() as hands:
        slow = await _before_saving(hands, monkeypatch)
        await hands.until(lambda: hands.lines()[-1] == "Saving.")
        await hands.press_meanwhile("enter")
        assert "Saving. Wait until that has ended." in hands.shown()
        await hands.press_meanwhile("f9")
        assert hands.field("Usual") == "5 deg"
        slow.let_go.set()
        await hands.settle()
        assert "Saved." in hands.shown()
        assert hands.app.screen.WHERE == "changes"
    assert '"5 deg"' in files()["taps.toml"]


async def test_what_is_typed_while_an_earlier_state_is_being_saved_is_not_lost(
    program: Program, monkeypatch: pytest.MonkeyPatch, files: Files
) -> None:
    async with program() as hands:
        slow = await _before_saving(hands, monkeypatch)
        await hands.press_meanwhile("f9", "space", *"30", "space", *"min")
        slow.let_go.set()
        await hands.settle()
        assert "Saved." in hands.shown()
        assert hands.field("Usual") == "5 deg 30 min"
        assert "somebody else" not in hands.shown().casefold()
        assert "Before saving" in await hands.press("ctrl+r")
        await hands.press("enter")
    assert '"5 deg 30 min"' in files()["taps.toml"]


async def test_a_refused_save_keeps_the_form_with_all_that_was_typed(
    program: Program, shop: Path, tmp_path: Path
) -> None:
    outside = tmp_path / "outside.toml"
    async with program() as hands:
        await hands.open("bronze")
        await hands.choose("chamfer relief")
        await hands.type("5 deg")
        await hands.press("ctrl+r")
        outside.write_text((shop / "taps.toml").read_text())
        (shop / "taps.toml").unlink()
        (shop / "taps.toml").symlink_to(outside)
        before = outside.read_text()
        await hands.press("enter")
        assert "which is outside the book's folder" in hands.words()
        await hands.press("f9")
        assert hands.field("Usual") == "5 deg"
        assert outside.read_text() == before
        (shop / "taps.toml").unlink()
        (shop / "taps.toml").write_text(before)
        await hands.press("ctrl+r")
        assert "Saved." in await hands.press("enter")


async def test_a_folder_that_cannot_be_made_is_told_and_the_form_stays(program: Program, shop: Path) -> None:
    async with program() as hands:
        await hands.open("spiral")
        await hands.choose("rake")
        await hands.type("6 deg")
        await hands.press("ctrl+r")
        (shop / "taps.toml").unlink()
        shop.rmdir()
        shop.write_text("no folder")
        assert "could not be saved" in " ".join((await hands.press("enter")).split())
        await hands.press("f9")
        assert hands.field("Usual") == "6 deg"


async def test_a_fault_of_the_system_is_told_and_ends_nothing(
    program: Program, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fail(*_: object) -> Done:
        raise OSError(5, "Input/output error")

    async with program() as hands:
        await hands.open("bronze")
        await hands.choose("chamfer relief")
        await hands.type("5 deg")
        monkeypatch.setattr(hands.app.book_service, "plan", fail)
        assert "Input/output error" in await hands.press("ctrl+r")
        assert hands.field("Usual") == "5 deg"
