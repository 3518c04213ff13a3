"""Somebody's book that is a git repository: looking runs nothing of it, and more is done only in a trusted book."""

from __future__ import annotations

import os
from contextlib import suppress
from pathlib import Path

import pytest

from library.book import folders
from library.editing.planning import plan
from library.editing.saving import save
from library.history import trust
from library.history.entry_history import history
from library.history.git import GitRefused
from library.history.programs import Setting, settings_that_run
from library.history.recording import record
from library.history.sharing import pull, push
from library.history.work_tree import NotTrusted
from tests.library.history.conftest import TAPS
from tests.library.history.two_machines import RunGit, change, pulled, rake, tree_of

# By git's own handbook: every setting by which git runs a program, as far as a book can hold it.
RUN_BY_MORE_THAN_LOOKING = (
    "gpg.program",
    "gpg.ssh.program",
    "gpg.ssh.defaultKeyCommand",
    "filter.mine.clean",
    "filter.mine.smudge",
    "filter.mine.process",
    "filter.a=b.clean",
    "core.hooksPath",
    "core.sshCommand",
    "core.gitProxy",
    "core.alternateRefsCommand",
    "credential.helper",
    "credential.https://shop.example.helper",
    "remote.origin.uploadpack",
    "remote.origin.receivepack",
    "remote.origin.vcs",
    "submodule.part.update",
    "hook.mine.command",
)
NEVER_RUN = (
    "diff.external",
    "diff.mine.command",
    "diff.mine.textconv",
    "merge.mine.driver",
    "core.fsmonitor",
    "core.pager",
    "pager.log",
    "pager.status",
    "core.editor",
    "sequence.editor",
    "core.askPass",
    "alias.log",
    "alias.status",
    "alias.commit",
    "interactive.diffFilter",
    "trailer.mine.command",
)
HOOKS = (
    "pre-commit",
    "commit-msg",
    "post-commit",
    "post-index-change",
    "reference-transaction",
    "post-merge",
    "post-checkout",
    "pre-push",
)


@pytest.fixture
def marker(tmp_path: Path) -> Path:
    """The file that is there once any of the programs was run."""
    return tmp_path / "it-was-run"


@pytest.fixture
def script(tmp_path: Path, marker: Path) -> str:
    """A program that leaves the marker."""
    (tmp_path / "evil").mkdir()
    path = tmp_path / "evil" / "run"
    path.write_text(f"#!/bin/sh\necho \"$0 $*\" >> '{marker}'\nexit 1\n")
    path.chmod(0o755)
    return str(path)


@pytest.fixture(autouse=True)
def _own_state(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(folders, "state_folder", lambda: tmp_path / "own state")


def _value(key: str, script: str) -> str:
    if key == "core.hooksPath":
        return str(Path(script).parent)
    return f"!{script}" if key.startswith(("submodule", "alias")) else script


def _attributes(shop: Path) -> None:
    """Every file has the filter, the differ and the joiner that the settings name."""
    info = shop.parent / ".git" / "info"
    info.mkdir(exist_ok=True)
    (info / "attributes").write_text("* filter=mine diff=mine merge=mine\nreadme.txt filter=a=b\n")


def _looked_at(shop: Path) -> None:
    """All that a person can look at; the file is such that git must read it to see whether it changed."""
    (shop / "taps.toml").write_text(TAPS.replace("4 deg", "5 deg"))
    os.utime(shop / "taps.toml", (1, 1))
    tree = tree_of(shop)
    assert [path.name for path in tree.uncommitted()] == ["taps.toml"]
    assert history(tree, "gun-tap")
    assert tree.branch() == "refs/heads/main"


def _hook(shop: Path, script: str, name: str) -> None:
    path = shop.parent / ".git" / "hooks" / name
    path.parent.mkdir(exist_ok=True)
    path.write_text(Path(script).read_text())
    path.chmod(0o755)


def test_looking_runs_nothing_that_the_book_names(
    shared: tuple[Path, Path], run_git: RunGit, script: str, marker: Path
) -> None:
    shop, _ = shared
    for key in (*RUN_BY_MORE_THAN_LOOKING, *NEVER_RUN):
        run_git(shop, "config", key, _value(key, script))
    for key in ("log.showSignature", "commit.gpgSign", "filter.mine.required", "submodule.recurse"):
        run_git(shop, "config", key, "true")
    for name in HOOKS:
        _hook(shop, script, name)
        (Path(script).parent / name).symlink_to(script)
    _attributes(shop)
    _looked_at(shop)
    assert not marker.exists(), marker.read_text()
    tree = tree_of(shop)
    for attempt in (lambda: record(tree, [shop / "taps.toml"], "x"), lambda: pull(tree), lambda: push(tree)):
        with pytest.raises(NotTrusted, match="heelclear trust"):
            attempt()
    assert not marker.exists(), marker.read_text()


def test_each_setting_that_names_a_program_is_asked_about(shop: Path, run_git: RunGit, script: str) -> None:
    more = shop.parent / "more"
    for key in (*RUN_BY_MORE_THAN_LOOKING, *NEVER_RUN):
        run_git(shop, "config", "--file", str(more), key, _value(key, script))
    run_git(shop, "config", "include.path", "../more")
    asked = {name.casefold() for name in tree_of(shop).asks if not name.startswith("hook ")}
    assert asked == {key.casefold() for key in RUN_BY_MORE_THAN_LOOKING}


@pytest.mark.parametrize(
    ("key", "value"),
    [
        ("remote.origin.url", "ext::sh -c x"),
        ("remote.origin.url", "../beside.git"),
        ("remote.origin.pushurl", "odd::x"),
        ("url.ext::x.insteadof", "https://"),
        ("branch.main.remote", "./beside"),
        ("branch.main.remote", "--upload-pack=x"),
        ("protocol.ext.allow", "always"),
        ("submodule.recurse", "true"),
    ],
)
def test_an_address_that_is_a_program_or_came_with_the_book_is_asked_about(key: str, value: str) -> None:
    assert settings_that_run((Setting("local", key, value),)) == (key,)
    assert settings_that_run((Setting("worktree", key, value),)) == (key,)
    assert settings_that_run((Setting("global", key, value),)) == ()


@pytest.mark.parametrize(
    ("key", "value"),
    [
        ("remote.origin.url", "https://shop.example/book.git"),
        ("remote.origin.url", "ann@shop.example:book.git"),
        ("remote.origin.url", "/srv/book.git"),
        ("branch.main.remote", "origin"),
        ("submodule.part.update", "checkout"),
        ("commit.gpgsign", "true"),
    ],
)
def test_what_ordinary_books_hold_is_not_asked_about(key: str, value: str) -> None:
    assert settings_that_run((Setting("local", key, value),)) == ()


def test_a_signed_commit_is_shown_without_its_program(
    shop: Path, run_git: RunGit, script: str, marker: Path
) -> None:
    raw = run_git(shop, "cat-file", "commit", "HEAD").replace(
        "\n\n", "\ngpgsig -----BEGIN PGP SIGNATURE-----\n \n x\n -----END PGP SIGNATURE-----\n\n", 1
    )
    (shop.parent / "commit").write_text(f"{raw}\n")
    number = run_git(shop, "hash-object", "-t", "commit", "-w", str(shop.parent / "commit"))
    run_git(shop, "update-ref", "HEAD", number)
    run_git(shop, "config", "gpg.program", script)
    run_git(shop, "config", "log.showSignature", "true")
    assert history(tree_of(shop), "gun-tap")
    assert not marker.exists()
    # So that the test could fail: git by itself runs it.
    run_git(shop, "log", "-1")
    assert marker.exists()


@pytest.mark.parametrize("name", ["clean", pytest.param("process", marks=pytest.mark.depth)])
def test_a_filter_is_not_run_to_see_what_changed(
    shop: Path, run_git: RunGit, script: str, marker: Path, name: str
) -> None:
    run_git(shop, "config", f"filter.mine.{name}", script)
    run_git(shop, "config", "filter.mine.required", "true")
    _attributes(shop)
    _looked_at(shop)
    assert not marker.exists()
    run_git(shop, "status", check=False)
    assert marker.exists()


def test_no_part_of_the_history_is_fetched_by_looking(
    shop: Path, run_git: RunGit, script: str, marker: Path
) -> None:
    run_git(shop, "config", "remote.origin.url", f"{shop.parent}/none.git")
    run_git(shop, "config", "remote.origin.uploadpack", script)
    run_git(shop, "config", "remote.origin.promisor", "true")
    blob = run_git(shop, "rev-parse", "HEAD:book/taps.toml")
    (shop.parent / ".git" / "objects" / blob[:2] / blob[2:]).unlink()
    with suppress(GitRefused):
        history(tree_of(shop), "gun-tap")
    assert not marker.exists()
    run_git(shop, "cat-file", "-p", blob, check=False)
    assert marker.exists()


def test_settings_of_a_book_within_the_book_are_not_heeded(
    shop: Path, run_git: RunGit, script: str, marker: Path
) -> None:
    part = shop / "part"
    part.mkdir()
    run_git(part, "init", "-q", "-b", "main", ".")
    (part / "more.toml").write_text(TAPS)
    run_git(part, "add", ".")
    run_git(part, "commit", "-q", "-m", "x")
    run_git(shop, "add", "part")
    run_git(shop, "commit", "-q", "-m", "y")
    run_git(part, "config", "filter.mine.clean", script)
    (part / ".git" / "info" / "attributes").write_text("* filter=mine\n")
    os.utime(part / "more.toml", (1, 1))
    _looked_at(shop)
    assert not marker.exists()
    run_git(shop, "status", check=False)
    assert marker.exists()


def test_hooks_are_run_only_in_a_book_that_is_trusted(
    shared: tuple[Path, Path], script: str, marker: Path
) -> None:
    shop, _ = shared
    for name in HOOKS:
        _hook(shop, script, name)
    assert tree_of(shop).asks == tuple(f"hook {name}" for name in sorted(HOOKS))
    save(plan(rake("6 deg"), shop))
    with pytest.raises(NotTrusted, match="hook commit-msg"):
        record(tree_of(shop), [shop / "taps.toml"], "x")
    assert not marker.exists()
    trust.trust(tree_of(shop).top)
    with pytest.raises(GitRefused):
        record(tree_of(shop), [shop / "taps.toml"], "x")
    assert marker.exists()
    assert trust.withdraw(tree_of(shop).top)
    assert tree_of(shop).asks


def test_an_ordinary_book_is_recorded_pulled_and_pushed_without_a_question(
    shared: tuple[Path, Path], run_git: RunGit
) -> None:
    shop, other = shared
    for key, value in (("alias.st", "status"), ("core.editor", "nano"), ("user.name", "Bea"),
                       ("submodule.recurse", "false"), ("core.autocrlf", "input")):  # fmt: skip
        run_git(shop, "config", key, value)
    change(shop, rake("6 deg"))
    push(tree_of(shop))
    pulled(other)
    assert tree_of(shop).asks == ()
    assert not (folders.state_folder()).exists()


def test_hooks_and_programs_that_the_person_named_for_all_his_books_need_no_question(
    shop: Path, tmp_path: Path, run_git: RunGit, script: str, marker: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    mine = tmp_path / "gitconfig"
    monkeypatch.setenv("GIT_CONFIG_GLOBAL", str(mine))
    run_git(shop, "config", "--global", "core.hooksPath", str(Path(script).parent))
    run_git(shop, "config", "--global", "gpg.program", script)
    (Path(script).parent / "post-commit").symlink_to(script)
    change(shop, rake("6 deg"))
    assert marker.exists()


def test_a_book_is_trusted_by_its_path_and_what_is_spoilt_trusts_none(tmp_path: Path) -> None:
    trust.trust(tmp_path / "a")
    trust.trust(tmp_path / "b\nc")
    assert trust.is_trusted(tmp_path / "x" / ".." / "a")
    assert trust.is_trusted(tmp_path / "b\nc")
    assert not trust.is_trusted(tmp_path / "a" / "b")
    assert trust.withdraw(tmp_path / "a")
    assert not trust.withdraw(tmp_path / "a")
    file = folders.state_folder() / trust.FILE
    file.write_text("[" * 100_000)
    assert not trust.is_trusted(tmp_path / "a")
    file.unlink()
    os.mkfifo(file)
    assert not trust.is_trusted(tmp_path / "a")
