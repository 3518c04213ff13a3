"""Copies that cannot be reached, that refuse, that move meanwhile, or that hold odd names."""

from __future__ import annotations

import os
import re
import tomllib
from pathlib import Path
from typing import Any

import pytest

from library.editing import changes as ask
from library.editing.planning import plan
from library.editing.saving import save
from library.history.git import GitRefused
from library.history.recording import record
from library.history.sharing import Pulled, other_copy, pull, push
from library.history.trust import trust
from tests.library.history.two_machines import RunGit, Two, change, entries, pulled, rake, relief, tree_of


def both_changed_the_rake(shared: Two) -> None:
    here, there = shared
    change(here, rake("5 deg"))
    push(tree_of(here))
    change(there, rake("6 deg"))


def test_pushing_over_what_others_pushed_is_refused(shared: Two, run_git: RunGit) -> None:
    here, there = shared
    change(here, rake("5 deg"))
    push(tree_of(here))
    change(there, relief("2 deg"))
    with pytest.raises(GitRefused, match="Pull them first"):
        push(tree_of(there))
    pulled(there)
    push(tree_of(there))
    assert run_git(there, "rev-parse", "HEAD") == run_git(there, "rev-parse", "origin/main")


def test_without_another_copy_there_is_a_sentence(shop: Path, run_git: RunGit, tmp_path: Path) -> None:
    for action in (pull, push):
        with pytest.raises(GitRefused, match="no other copy to share with"):
            action(tree_of(shop))
    run_git(shop, "remote", "add", "one", str(tmp_path))
    run_git(shop, "remote", "add", "two", str(tmp_path))
    with pytest.raises(GitRefused, match="several other copies"):
        push(tree_of(shop))


def test_the_first_push_to_an_empty_copy_makes_it_the_one_that_is_followed(
    shop: Path, run_git: RunGit, tmp_path: Path
) -> None:
    run_git(tmp_path, "init", "-q", "--bare", "empty.git")
    run_git(shop, "remote", "add", "usb-stick", str(tmp_path / "empty.git"))
    assert pulled(shop) == Pulled(0)
    assert not other_copy(tree_of(shop)).is_followed
    push(tree_of(shop))
    assert other_copy(tree_of(shop)).is_followed


def test_a_book_without_a_commit_pulls_its_first_ones(shop: Path, run_git: RunGit, tmp_path: Path) -> None:
    new = tmp_path / "new"
    run_git(tmp_path, "init", "-q", "-b", "main", "new")
    run_git(new, "remote", "add", "origin", str(shop.parent))
    assert pulled(new) == Pulled(1)
    assert (new / "book" / "taps.toml").exists()
    with pytest.raises(GitRefused, match="no common beginning"):
        unrelated(shop, run_git, tmp_path)


def unrelated(shop: Path, run_git: RunGit, tmp_path: Path) -> None:
    other = tmp_path / "other"
    run_git(tmp_path, "init", "-q", "-b", "main", "other")
    (other / "a.toml").write_text("schema = 1\n")
    run_git(other, "add", ".")
    run_git(other, "commit", "-q", "-m", "Other")
    run_git(other, "remote", "add", "origin", str(shop.parent))
    pull(tree_of(other))


def test_an_address_that_leads_nowhere_and_one_that_asks_for_a_password_end_with_a_sentence(
    shop: Path, run_git: RunGit, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    run_git(shop, "remote", "add", "origin", str(tmp_path / "nowhere.git"))
    with pytest.raises(GitRefused, match="could not be reached"):
        pull(tree_of(shop))
    asking = tmp_path / "asking-ssh"
    asking.write_text(
        "#!/bin/sh\n(exec 3</dev/tty) || { echo 'Permission denied (password).' >&2; exit 255; }\nread answer </dev/tty\n"
    )
    asking.chmod(0o755)
    monkeypatch.setenv("GIT_SSH", str(asking))
    run_git(shop, "remote", "set-url", "origin", "ssh://shop.invalid/book.git")
    with pytest.raises(GitRefused, match="did not let you in, and this program never asks for a password"):
        push(tree_of(shop))


def test_at_no_branch_and_in_a_merge_nothing_is_pulled(shared: Two, run_git: RunGit) -> None:
    here, there = shared
    both_changed_the_rake(shared)
    run_git(there, "fetch", "-q")
    run_git(there, "merge", "-q", "origin/main", check=False)
    with pytest.raises(GitRefused, match="A merge was begun"):
        pull(tree_of(there))
    run_git(there, "merge", "--abort")
    run_git(here, "checkout", "-q", "--detach")
    for action in (pull, push):
        with pytest.raises(GitRefused, match="at no branch"):
            action(tree_of(here))


def test_a_hook_that_refuses_the_push_is_quoted(shared: Two, run_git: RunGit) -> None:
    here, _ = shared
    hook = Path(run_git(here, "remote", "get-url", "origin")) / "hooks" / "pre-receive"
    hook.parent.mkdir(exist_ok=True)
    hook.write_text("#!/bin/sh\necho 'The book is closed' >&2\nexit 1\n")
    hook.chmod(0o755)
    trust(hook.parents[1])
    change(here, rake("5 deg"))
    with pytest.raises(GitRefused, match="The book is closed"):
        push(tree_of(here))


def test_a_commit_made_here_while_joining_is_not_lost(shared: Two, run_git: RunGit, monkeypatch: Any) -> None:
    here, there = shared
    change(here, rake("5 deg"))
    push(tree_of(here))
    change(there, relief("2 deg"))
    from library.history import sharing

    real: Any = vars(sharing)["join"]
    rounds: list[Any] = []

    def join_while_somebody_commits(*given: Any) -> Any:
        made = real(*given)
        if not rounds:
            change(there, ask.AddEntry("quick-tap", "tap", "Quick"))
        rounds.append(made)
        return made

    monkeypatch.setattr(sharing, "join", join_while_somebody_commits)
    assert pulled(there).joined
    assert len(rounds) == 2
    assert {"gun-tap", "hand-tap", "quick-tap"} == set(entries(there))
    assert entries(there)["gun-tap"]["rake_angle"]["usual"] == "5 deg"


@pytest.mark.depth
def test_hostile_file_names_are_joined_like_others(shared: Two) -> None:
    here, there = shared
    names = ["-x.toml", "a\nb.toml", ":(top)t.toml", "\udcff.toml"]
    start = 'schema = 1\n[[entry]]\nid = "{0}"\nrake_angle = "1 deg"\nrelief_angle = "1 deg"\n'
    paths = [here / name for name in names]
    for number, path in enumerate(paths):
        path.write_text(start.format(f"e{number}"))
    record(tree_of(here), paths, "odd")
    push(tree_of(here))
    pulled(there)
    for folder, key in ((here, "rake_angle"), (there, "relief_angle")):
        for number in range(len(names)):
            change(folder, ask.SetValue(f"e{number}", key, {"usual": "2 deg"}))
    push(tree_of(here))
    assert pulled(there).joined
    for name in names:
        (entry,) = tomllib.loads((there / name).read_text())["entry"]
        assert entry["rake_angle"] == entry["relief_angle"] == {"usual": "2 deg"}
    assert os.listdir(there) != []


@pytest.mark.parametrize("lock", ["refs/heads/main.lock", "index.lock"])
def test_a_lock_that_a_broken_off_git_left_is_named_with_what_to_do(shared: Two, lock: str) -> None:
    here, _ = shared
    path = here.parent / ".git" / lock
    path.write_text("")
    save(plan(rake("5 deg"), here))
    with pytest.raises(
        GitRefused, match=rf"broken off and left its lock.* remove the file {re.escape(str(path))},"
    ):
        record(tree_of(here), [here / "taps.toml"], "x")
    path.unlink()
    assert record(tree_of(here), [here / "taps.toml"], "x")


def test_what_was_committed_when_git_was_broken_off_before_its_list_is_recorded(
    shared: Two, run_git: RunGit
) -> None:
    here, _ = shared
    save(plan(rake("5 deg"), here))
    (here / "new.toml").write_text("schema = 1\n")
    index = here.parent / ".git" / "index"
    before = index.read_bytes()
    paths = [here / "taps.toml", here / "new.toml"]
    assert record(tree_of(here), paths, "x")
    index.write_bytes(before)
    assert tree_of(here).uncommitted() != ()
    assert record(tree_of(here), paths, "x") == ""
    assert run_git(here, "status", "--porcelain") == ""


def test_a_pull_that_was_broken_off_between_two_files_goes_on(shared: Two, run_git: RunGit) -> None:
    """The first of them is the new one already, of the other only the way out is left."""
    here, there = shared
    change(here, rake("5 deg"))
    (here / "sub").mkdir()
    (here / "sub" / "new.toml").write_text("schema = 1\n")
    record(tree_of(here), [here / "sub" / "new.toml"], "new")
    push(tree_of(here))
    (there / "taps.toml").write_bytes((here / "taps.toml").read_bytes())
    (there / ".heelclear-0123456789abcdef.saving").write_text("half")
    assert pulled(there) == Pulled(2)
    assert run_git(there, "status", "--porcelain") == ""
    assert not list(there.glob(".heelclear-*"))
    assert (there / "sub" / "new.toml").read_text() == "schema = 1\n"
