"""Another copy in a folder of this machine: nothing of its own is run by pulling or pushing until it is trusted."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest

from library.book import folders
from library.history import trust
from library.history.git import GitRefused
from library.history.sharing import pull, push
from tests.each import each
from tests.library.history.two_machines import RunGit, change, rake, tree_of
from tui.main import main

RECEIVING = ("pre-receive", "update", "post-receive", "post-update", "reference-transaction", "proc-receive",
             "push-to-checkout", "post-index-change")  # fmt: skip
"""By git's own handbook: the hooks of a copy that something is sent to."""

SETTINGS = (
    "core.hooksPath",
    "core.fsmonitor",
    "core.alternateRefsCommand",
    "filter.mine.smudge",
    "hook.mine.command",
)
"""Its settings by which git may run something when it receives."""

Script = Callable[[Path], Path]


@pytest.fixture
def marker(tmp_path: Path) -> Path:
    """The file that is there once any of the programs was run."""
    return tmp_path / "it-was-run"


@pytest.fixture
def script(marker: Path) -> Script:
    """Lays a program that leaves the marker at a path."""

    def lay(path: Path) -> Path:
        path.parent.mkdir(exist_ok=True)
        path.write_text(f"#!/bin/sh\necho \"$0 $*\" >> '{marker}'\n")
        path.chmod(0o755)
        return path

    return lay


@pytest.fixture(autouse=True)
def _own_state(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(folders, "state_folder", lambda: tmp_path / "own state")


def test_pulling_runs_nothing_of_the_other_copy_and_pushing_only_when_it_is_trusted(
    shared: tuple[Path, Path], tmp_path: Path, script: Script, marker: Path, run_git: RunGit
) -> None:
    shop, other = shared
    copy = tmp_path / "shared.git"
    change(other, rake("7 deg"))
    push(tree_of(other))
    for name in RECEIVING:
        script(copy / "hooks" / name)
    run_git(copy, "config", "uploadpack.packObjectsHook", str(script(tmp_path / "evil" / "run")))
    pull(tree_of(shop))
    change(shop, rake("6 deg"))
    with pytest.raises(
        GitRefused, match=r"hook post-receive.*Nothing was sent.*heelclear trust .*shared\.git"
    ):
        push(tree_of(shop))
    assert not marker.exists(), marker.read_text()
    assert run_git(copy, "rev-parse", "main") != tree_of(shop).head()
    assert main(["trust", str(copy)]) == 0
    push(tree_of(shop))
    assert run_git(copy, "rev-parse", "main") == tree_of(shop).head()
    ran = {Path(line.split()[0]).name for line in marker.read_text().splitlines()}
    assert {"pre-receive", "update", "post-receive", "post-update"} <= ran
    assert main(["trust", "--withdraw", str(copy)]) == 0
    change(shop, rake("8 deg"))
    with pytest.raises(GitRefused, match="Nothing was sent"):
        push(tree_of(shop))


@pytest.mark.depth
@each("key", SETTINGS)
def test_each_setting_of_the_other_copy_that_names_a_program_is_asked_about(
    key: str, shared: tuple[Path, Path], tmp_path: Path, run_git: RunGit, script: Script, marker: Path
) -> None:
    shop, _ = shared
    copy = tmp_path / "shared.git"
    script(tmp_path / "evil" / "post-receive")
    run_git(copy, "config", key, str(tmp_path / "evil"))
    with pytest.raises(GitRefused, match=f"(?i){key}.*Nothing was sent"):
        push(tree_of(shop))
    assert not marker.exists()
    run_git(copy, "config", "--unset", key)
    push(tree_of(shop))


@pytest.mark.depth
@each(
    "way", ["file://{copy}", "{short}", "{copy}/", "{link}", "pushurl", "instead", "second", "path", "line"]
)
def test_the_other_copy_is_found_however_its_address_is_written(
    way: str, shared: tuple[Path, Path], tmp_path: Path, run_git: RunGit, script: Script, marker: Path
) -> None:
    shop, _ = shared
    copy, link = tmp_path / "shared.git", tmp_path / "a link"
    script(copy / "hooks" / "post-receive")
    if not link.is_symlink():
        link.symlink_to(copy)
    odd = tmp_path / "a\nb"
    if not odd.is_symlink():
        odd.symlink_to(copy)
    clean = tmp_path / "clean.git"
    if not clean.exists():
        run_git(tmp_path, "clone", "-q", "--bare", str(copy), str(clean))
    settings = {
        "pushurl": [("remote.origin.url", str(clean)), ("remote.origin.pushurl", str(copy))],
        "instead": [("remote.origin.url", "/odd/b"), (f"url.{copy}.insteadOf", "/odd/b")],
        "second": [("remote.origin.pushurl", str(clean)), ("remote.origin.pushurl", str(copy))],
        "line": [("remote.origin.url", str(odd))],
        "path": [("branch.main.remote", str(copy))],
    }.get(way, [("remote.origin.url", way.format(copy=copy, short=str(copy)[:-4], link=link))])
    for key, value in settings:
        run_git(shop, "config", "--add" if way == "second" else "--replace-all", key, value)
    if way == "path":
        trust.trust(tree_of(shop).top)
    with pytest.raises(GitRefused, match="Nothing was sent"):
        push(tree_of(shop))
    assert not marker.exists()
    for key, _ in settings:
        run_git(shop, "config", "--unset-all", key, check=False)
    run_git(shop, "config", "remote.origin.url", str(copy))


def test_a_copy_with_files_of_its_own_is_asked_about_by_the_folder_that_a_person_knows(
    shared: tuple[Path, Path], tmp_path: Path, run_git: RunGit, script: Script, marker: Path
) -> None:
    shop, other = shared
    run_git(other, "config", "receive.denyCurrentBranch", "updateInstead")
    script(other.parent / ".git" / "hooks" / "push-to-checkout")
    run_git(shop, "config", "remote.origin.url", str(other.parent))
    change(shop, rake("6 deg"))
    with pytest.raises(GitRefused, match=f"heelclear trust {other.parent}$"):
        push(tree_of(shop))
    assert not marker.exists()
    assert main(["trust", str(other)]) == 0
    push(tree_of(shop))
    assert marker.exists()


def test_a_copy_without_programs_or_of_another_machine_or_nowhere_needs_no_question(
    shared: tuple[Path, Path], tmp_path: Path, run_git: RunGit, script: Script
) -> None:
    shop, _ = shared
    copy = tmp_path / "shared.git"
    os.rename(script(tmp_path / "evil" / "x"), copy / "hooks" / "post-receive.sample")
    change(shop, rake("6 deg"))
    push(tree_of(shop))
    for address in (str(tmp_path / "gone.git"), "shop.example.invalid:book.git"):
        run_git(shop, "config", "core.sshCommand", "false")
        trust.trust(tree_of(shop).top)
        run_git(shop, "config", "remote.origin.url", address)
        with pytest.raises(GitRefused, match="could not be reached"):
            push(tree_of(shop))
