"""The book in git, from the screens: history, a commit for each save, pulling, pushing, and both sides kept."""

from __future__ import annotations

import subprocess
import time
from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

import psutil
import pytest

from library.history.trust import trust

pytestmark = pytest.mark.depth
"""It takes long, and the server runs it."""

Program = Callable[[], AbstractAsyncContextManager[Any]]
Git = Callable[..., str]


@pytest.fixture
def git(monkeypatch: pytest.MonkeyPatch) -> Git:
    """Runs git in a folder, as a person does by hand."""
    monkeypatch.setenv("GIT_CONFIG_NOSYSTEM", "1")
    for name in ("AUTHOR", "COMMITTER"):
        monkeypatch.setenv(f"GIT_{name}_NAME", "Ada")
        monkeypatch.setenv(f"GIT_{name}_EMAIL", "ada@example.org")

    def run(folder: Path, *words: str) -> str:
        done = subprocess.run(["git", *words], cwd=folder, capture_output=True, text=True, check=True)
        return done.stdout

    return run


@pytest.fixture
def remote(shop: Path, tmp_path: Path, git: Git) -> Path:
    """The shop's folder in git, and the copy that others push to."""
    copy = tmp_path / "remote.git"
    git(tmp_path, "init", "-q", "--bare", "--initial-branch=main", str(copy))
    git(shop, "init", "-q", "--initial-branch=main")
    (shop / ".gitignore").write_text(".lock\n.heelclear-*\n")
    git(shop, "add", "-A")
    git(shop, "commit", "-q", "-m", "The book as it was")
    git(shop, "remote", "add", "origin", str(copy))
    git(shop, "push", "-q", "-u", "origin", "main")
    return copy


@pytest.fixture
def other(remote: Path, tmp_path: Path, git: Git) -> Callable[[str, str], None]:
    """Another machine: changes a text of the book there and pushes it."""
    clone = tmp_path / "other"
    git(tmp_path, "clone", "-q", str(remote), str(clone))

    def change(old: str, new: str) -> None:
        git(clone, "pull", "-q", "--rebase")
        file = clone / "taps.toml"
        text = file.read_text()
        assert old in text
        file.write_text(text.replace(old, new))
        git(clone, "commit", "-q", "-a", "-m", "From the other machine")
        git(clone, "push", "-q")

    return change


async def _set_relief(hands: Any, number: str = "5 deg") -> str:
    await hands.open("bronze")
    await hands.choose("chamfer relief")
    await hands.type(number)
    await hands.press("ctrl+r")
    shown: str = await hands.press("enter")
    await hands.press("f9", "f9", "ctrl+u")
    return shown


async def _share(hands: Any, what: str) -> str:
    """Take one of the lines for git."""
    await hands.press("f6")
    await hands.until(lambda: "Asking git" not in hands.shown())
    shown: str = await hands.choose(what)
    return shown


@pytest.mark.usefixtures("remote")
async def test_each_save_is_one_commit_once_the_shop_wants_that(
    program: Program, shop: Path, git: Git
) -> None:
    async with program() as hands:
        await hands.press("f6")
        await hands.until(lambda: "Asking git" not in hands.shown())
        assert "Commit each save Off." in hands.words()
        assert "From now on every save is recorded" in await hands.choose("commit each save")
        assert "Commit each save On." in hands.words()
        await hands.press("f9")
        assert "Saved. It is recorded in git." in await _set_relief(hands)
    assert git(shop, "log", "-1", "--format=%s") == (
        "bronze-tap: chamfer relief angle usual 5 deg, source shop (in taps.toml).\n"
    )
    assert git(shop, "show", "--format=", "--name-only", "HEAD") == "taps.toml\n"


@pytest.mark.usefixtures("remote")
async def test_what_was_changed_without_recording_can_be_recorded_later(
    program: Program, shop: Path, git: Git
) -> None:
    async with program() as hands:
        await _set_relief(hands)
        assert git(shop, "log", "--format=%s") == "The book as it was\n"
        await hands.press("f6")
        await hands.until(lambda: "Asking git" not in hands.shown())
        assert "Changed and not recorded in git yet: taps.toml." in await hands.type("record now")
        assert "Recorded: 1 file." in await hands.press("enter")
        assert "Everything is recorded in git." in hands.shown()
    assert git(shop, "status", "--porcelain") == ""


async def test_push_and_pull_bring_both_machines_to_the_same_book(
    program: Program, shop: Path, remote: Path, git: Git, other: Callable[[str, str], None]
) -> None:
    other('"Tap for brass"', '"Tap for brass, long"')
    async with program() as hands:
        await _set_relief(hands)
        await _share(hands, "record now")
        assert "Pull them first, then push again." in " ".join((await hands.choose("push")).split())
        assert "1 commit came in and joined with yours" in await hands.choose("pull")
        assert "Sent to the other copy." in await hands.choose("push")
        assert "Nothing new was there." in await hands.choose("pull")
        assert "Tap for brass, long" in await hands.press("f9")
    text = git(remote, "show", "main:taps.toml")
    assert '"5 deg"' in text
    assert '"Tap for brass, long"' in text
    assert "# measured in May" in text
    assert text == (shop / "taps.toml").read_text()


@pytest.mark.parametrize(
    ("key", "kept"), [(("down", "enter"), "5 deg"), (("down", "down", "enter"), "9 deg")]
)
async def test_the_same_value_on_both_machines_is_asked_about_and_both_stay_in_the_history(
    program: Program, shop: Path, git: Git, other: Callable[[str, str], None], key: tuple[str, ...], kept: str
) -> None:
    other("'4 deg'", "'9 deg'")
    async with program() as hands:
        await _set_relief(hands)
        await _share(hands, "record now")
        asked = await hands.choose("pull")
        assert "chamfer relief angle of bronze-tap" in asked
        assert "Saved by somebody else, in the other copy" in asked
        assert '"5 deg"' in (shop / "taps.toml").read_text()
        assert "1 commit came in and joined with yours" in await hands.press(*key)
        await hands.press("f9")
        await hands.open("bronze")
        assert f"{kept}; the shop" in hands.shown()
        history = await hands.choose("history")
        assert "chamfer relief angle usual: 4 deg -> 5 deg" in history
        assert "chamfer relief angle usual: 4 deg -> 9 deg" in history
        assert "From the other machine" in history
        assert "Ada" in history
    assert kept in git(shop, "show", "HEAD:taps.toml")


async def test_going_back_from_the_question_of_a_pull_changes_nothing(
    program: Program, shop: Path, git: Git, other: Callable[[str, str], None]
) -> None:
    other("'4 deg'", "'9 deg'")
    async with program() as hands:
        await _set_relief(hands)
        await _share(hands, "record now")
        head = git(shop, "rev-parse", "HEAD")
        await hands.choose("pull")
        await hands.press("f9")
        assert git(shop, "rev-parse", "HEAD") == head
        assert '"5 deg"' in (shop / "taps.toml").read_text()


async def test_a_copy_that_cannot_be_reached_is_told_and_the_work_goes_on(
    program: Program, shop: Path, remote: Path, git: Git
) -> None:
    git(shop, "remote", "set-url", "origin", str(remote.with_name("gone.git")))
    async with program() as hands:
        await _share(hands, "pull")
        assert "could not be reached" in hands.words()
        assert "Saved." in await _set_relief_from_here(hands)


async def _set_relief_from_here(hands: Any) -> str:
    await hands.press("f9")
    return await _set_relief(hands)


@pytest.mark.usefixtures("remote")
async def test_a_slow_copy_does_not_hold_up_the_screen_and_leaving_does_not_wait_for_it(
    program: Program, shop: Path, git: Git, tmp_path: Path
) -> None:
    waits = tmp_path / "waits.sh"
    waits.write_text("#!/bin/sh\necho begun > " + str(tmp_path / "begun") + "\nexec sleep 600\n")
    waits.chmod(0o755)
    git(shop, "config", "core.sshCommand", str(waits))
    git(shop, "remote", "set-url", "origin", "ssh://nowhere.invalid/book.git")
    trust(shop)
    before = _running()
    async with program() as hands:
        await hands.press("f6")
        await hands.until(lambda: "Asking git" not in hands.shown())
        await hands.type("pull")
        await hands.press_meanwhile("enter")
        await hands.until((tmp_path / "begun").exists)
        await hands.until(lambda: hands.lines()[-1] == "Pulling from the other copy.")
        await hands.press_meanwhile("f9", *"bronze")
        assert "Find: bronze" in hands.shown()
        assert _running() - before
        hands.app.leave()
    end = time.monotonic() + 60
    while _running() - before and time.monotonic() < end:
        time.sleep(0.05)
    assert not _running() - before


def _running() -> set[psutil.Process]:
    """The programs that this one has started and that have not ended; other tests keep some for the next ones."""
    return {child for child in psutil.Process().children() if child.status() != psutil.STATUS_ZOMBIE}


@pytest.mark.usefixtures("remote")
async def test_a_hook_of_the_book_is_run_once_it_is_trusted_and_what_it_refuses_is_said(
    program: Program, shop: Path, git: Git
) -> None:
    hook = shop / ".git" / "hooks" / "pre-commit"
    hook.parent.mkdir(exist_ok=True)
    refused = shop / "refused"
    hook.write_text(f"#!/bin/sh\n: > '{refused}'\necho 'error: not on a Friday' >&2\nexit 1\n")
    hook.chmod(0o755)
    async with program() as hands:
        asked = " ".join((await _share(hands, "record now")).split())
        assert "Trust this book, and let git run hook pre-commit?" in asked
        assert "Go back" in asked
        await hands.press("enter")
        assert "Commit each save Off." in hands.words()
        assert not refused.exists()
        await hands.choose("commit each save")
        assert "From now on every save is recorded" in await hands.sure()
        await hands.press("f9")
        said = " ".join((await _set_relief(hands)).split())
        assert "Saved. The change is saved in its file, but not recorded in git." in said
        assert "not on a Friday" in said
    assert '"5 deg"' in (shop / "taps.toml").read_text()
