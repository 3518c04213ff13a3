"""Who gave which value when, and one commit for one save."""

from __future__ import annotations

import os
import subprocess
from pathlib import Path
from typing import Any

import pytest

from library.editing import changes as ask
from library.editing.planning import plan
from library.editing.saving import Done, save
from library.history.entry_history import KeyChange, history
from library.history.git import Git, GitRefused
from library.history.recording import record
from library.history.trust import trust
from library.history.work_tree import find_work_tree
from tests.library.history.two_machines import RunGit, tree_of


def set_rake(shop: Path, angle: str, entry: str = "gun-tap") -> Done:
    done = save(plan(ask.SetValue(entry, "rake_angle", {"usual": angle}), shop))
    assert isinstance(done, Done)
    return done


def recorded(shop: Path, angle: str, entry: str = "gun-tap") -> str:
    done = set_rake(shop, angle, entry)
    return record(tree_of(shop), [done.plan.path], done.plan.sentence)


def test_a_folder_without_git_is_no_work_tree(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(tmp_path.parent))
    assert find_work_tree(tmp_path) is None
    assert find_work_tree(tmp_path / "gone") is None


def test_without_the_program_the_book_works_as_without_git(shop: Path) -> None:
    assert find_work_tree(shop, program="no-such-git") is None
    with pytest.raises(GitRefused, match="could not be started"):
        Git(shop, "no-such-git").ask("status")


def test_variables_that_point_to_another_book_are_not_heeded(
    shop: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("GIT_DIR", str(tmp_path / "elsewhere"))
    monkeypatch.setenv("GIT_INDEX_FILE", str(tmp_path / "index"))
    assert tree_of(shop).prefix == "book/"
    assert recorded(shop, "5 deg")
    assert not (tmp_path / "index").exists()


def test_each_commit_shows_who_when_and_the_value_before_and_after(shop: Path) -> None:
    recorded(shop, "5 deg")
    recorded(shop, "1 deg", "hand-tap")
    recorded(shop, "6 deg")
    last, first, begin = history(tree_of(shop), "gun-tap")
    assert last.changes == (
        KeyChange("rake_angle", {"usual": "5 deg", "source": "shop"}, {"usual": "6 deg", "source": "shop"}),
    )
    assert first.message == "gun-tap: rake angle usual 5 deg, source shop (in taps.toml)."
    assert first.who == "Ann Grinder"
    assert first.when <= last.when
    assert {change.key for change in begin.changes} == {"id", "family", "title", "rake_angle", "relief_angle"}
    assert all(change.before is None for change in begin.changes)


def test_a_table_of_another_kind_has_its_history_too(shop: Path, run_git: RunGit) -> None:
    file = shop / "setups.toml"
    for text in ("Slowly.", "Slower."):
        line = f'feed = {{ text = "{text}", source = "shop" }}'
        file.write_text(f'schema = 1\n\n[[setup]]\nid = "gun-tap"\n{line}\n')
        run_git(shop, "add", ".")
        run_git(shop, "commit", "-q", "-m", text)
    last, begin = history(tree_of(shop), "gun-tap", "setup")
    feed = [{"text": text, "source": "shop"} for text in ("Slowly.", "Slower.")]
    assert last.changes == (KeyChange("feed", *feed),)
    assert begin.message == "Slowly."


def test_an_entry_is_followed_into_another_file(shop: Path, run_git: RunGit) -> None:
    recorded(shop, "5 deg")
    (shop / "taps.toml").rename(shop / "- moved\n; taps.toml")
    run_git(shop, "add", "-A", ".")
    run_git(shop, "commit", "-q", "-m", "Move")
    recorded(shop, "6 deg")
    assert [revision.message[:13] for revision in history(tree_of(shop), "gun-tap")] == [
        "gun-tap: rake",
        "gun-tap: rake",
        "Begin",
    ]


def test_an_entry_that_was_removed_ends_with_its_values_gone(shop: Path) -> None:
    done = save(plan(ask.RemoveEntry("hand-tap"), shop))
    assert isinstance(done, Done)
    record(tree_of(shop), [done.plan.path], done.plan.sentence)
    gone = history(tree_of(shop), "hand-tap")[0]
    assert KeyChange("title", "Hand tap", None) in gone.changes


def test_a_merge_is_listed_only_for_what_neither_side_had(shop: Path, run_git: RunGit) -> None:
    run_git(shop, "checkout", "-q", "-b", "side")
    recorded(shop, "5 deg")
    run_git(shop, "checkout", "-q", "main")
    recorded(shop, "6 deg")
    run_git(shop, "merge", "-q", "side", check=False)
    text = (shop / "taps.toml").read_text()
    head, _, rest = text.partition("<<<<<<<")
    (shop / "taps.toml").write_text(
        head
        + 'rake_angle = { usual = "7 deg", source = "shop" }  # May\n'
        + rest.partition(">>>>>>> side\n")[2]
    )
    run_git(shop, "commit", "-q", "-a", "-m", "Both")
    merge = history(tree_of(shop), "gun-tap")[0]
    assert merge.message == "Both"
    assert [change.after for change in merge.changes] == [{"usual": "7 deg", "source": "shop"}]
    assert len(history(tree_of(shop), "gun-tap")) == 4


def test_broken_and_foreign_states_of_a_file_are_no_obstacle(shop: Path, run_git: RunGit) -> None:
    for raw in (b"half [\n", b"\xff\xfe", b"[[entry]]\nid = 'gun-tap'\nrake_angle = \"9 deg\"\n"):
        (shop / "taps.toml").write_bytes(raw)
        run_git(shop, "commit", "-q", "-a", "-m", "by hand \x1b[2J")
    newest, gone, _ = history(tree_of(shop), "gun-tap")
    assert KeyChange("rake_angle", None, "9 deg") in newest.changes
    assert KeyChange("title", "Gun tap", None) in gone.changes
    assert "\x1b" not in newest.message


def test_before_the_first_commit_there_is_no_history(tmp_path: Path, run_git: RunGit) -> None:
    run_git(tmp_path, "init", "-q", ".")
    assert history(tree_of(tmp_path), "gun-tap") == ()


def test_a_save_is_one_commit_of_that_file_and_what_was_staged_stays_staged(
    shop: Path, run_git: RunGit
) -> None:
    (shop / "drills.toml").write_text("schema = 1\n")
    (shop.parent / "readme.txt").write_text("changed\n")
    run_git(shop.parent, "add", "book/drills.toml", "readme.txt")
    staged = run_git(shop.parent, "diff", "--cached")
    number = recorded(shop, "5 deg")
    assert run_git(shop, "show", "--name-only", "--format=%H", number).split() == [number, "book/taps.toml"]
    assert run_git(shop.parent, "diff", "--cached") == staged


def test_a_new_file_and_a_removed_one_are_recorded(shop: Path, run_git: RunGit) -> None:
    done = save(plan(ask.AddEntry("hob-1", "hob", "Hob"), shop))
    assert isinstance(done, Done)
    assert record(tree_of(shop), [done.plan.path], done.plan.sentence)
    (shop / "hob.toml").unlink()
    assert record(tree_of(shop), [shop / "hob.toml"], "gone")
    assert run_git(shop, "status", "--porcelain") == ""


def test_nothing_new_is_no_commit(shop: Path, run_git: RunGit) -> None:
    before = run_git(shop, "rev-parse", "HEAD")
    assert record(tree_of(shop), [shop / "taps.toml"], "nothing") == ""
    assert run_git(shop, "rev-parse", "HEAD") == before


@pytest.mark.parametrize(
    "name", ["--all.toml", ":(top)x.toml", "a\nb.toml", "*.toml", " .toml", "é.toml", "\udcff.toml"]
)
def test_a_hostile_file_name_is_only_a_name(shop: Path, run_git: RunGit, name: str) -> None:
    (shop.parent / "readme.txt").write_text("changed\n")
    (shop / name).write_text('[[entry]]\nid = "odd"\ntitle = "Odd"\n')
    assert record(tree_of(shop), [shop / name], f"{name} #1")
    assert len(history(tree_of(shop), "odd")) == 1
    assert run_git(shop.parent, "diff", "--name-only") == "readme.txt"
    assert tree_of(shop).uncommitted() == ()


def test_a_message_is_kept_as_it_is(shop: Path, run_git: RunGit) -> None:
    set_rake(shop, "5 deg")
    record(tree_of(shop), [shop / "taps.toml"], "# one -m two\n")
    assert run_git(shop, "log", "-1", "--format=%B").strip() == "# one -m two"


def test_a_hook_that_refuses_is_quoted_and_the_file_stays_saved_and_unstaged(
    shop: Path, run_git: RunGit
) -> None:
    hook = shop.parent / ".git" / "hooks" / "pre-commit"
    hook.parent.mkdir(exist_ok=True)
    hook.write_text("#!/bin/sh\necho 'No commits on Fridays' >&2\nexit 1\n")
    hook.chmod(0o755)
    trust(shop.parent)
    with pytest.raises(GitRefused, match=r"saved in its file, but not recorded .*No commits on Fridays"):
        recorded(shop, "5 deg")
    assert '"5 deg"' in (shop / "taps.toml").read_text()
    (shop / "new.toml").write_text("schema = 1\n")
    with pytest.raises(GitRefused):
        record(tree_of(shop), [shop / "new.toml"], "new")
    assert run_git(shop, "status", "--porcelain").split("\n") == [" M book/taps.toml", "?? book/new.toml"]


def test_a_hook_that_never_ends_is_ended(shop: Path) -> None:
    hook = shop.parent / ".git" / "hooks" / "pre-commit"
    hook.parent.mkdir(exist_ok=True)
    hook.write_text("#!/bin/sh\nsleep 60\n")
    hook.chmod(0o755)
    trust(shop.parent)
    set_rake(shop, "5 deg")
    with pytest.raises(GitRefused, match=r"took longer than 0\.5 seconds"):
        tree_of(shop).git.ask("commit", "-q", "-a", "-m", "x", seconds=0.5)


def test_without_an_identity_the_sentence_says_how_to_give_one(
    shop: Path, run_git: RunGit, monkeypatch: pytest.MonkeyPatch
) -> None:
    for name in [name for name in os.environ if name.startswith(("GIT_AUTHOR", "GIT_COMMITTER"))]:
        monkeypatch.delenv(name)
    run_git(shop, "config", "user.useConfigOnly", "true")
    with pytest.raises(GitRefused, match=r"does not know who you are.*user\.name"):
        recorded(shop, "5 deg")


def test_at_no_branch_nothing_is_committed(shop: Path, run_git: RunGit) -> None:
    run_git(shop, "checkout", "-q", "--detach")
    before = run_git(shop, "rev-parse", "HEAD")
    with pytest.raises(GitRefused, match="at no branch"):
        recorded(shop, "5 deg")
    assert run_git(shop, "rev-parse", "HEAD") == before


def test_another_git_at_work_gets_its_sentence(shop: Path) -> None:
    set_rake(shop, "5 deg")
    (shop.parent / ".git" / "index.lock").write_text("")
    with pytest.raises(GitRefused, match="Another git command is at work"):
        record(tree_of(shop), [shop / "taps.toml"], "x")


def test_a_file_outside_the_book_is_not_committed(shop: Path) -> None:
    with pytest.raises(GitRefused, match="does not lie in the book"):
        record(tree_of(shop), [shop.parent / "readme.txt"], "x")


@pytest.mark.parametrize("count", [20, pytest.param(100, marks=pytest.mark.depth)])
def test_many_commits_are_gone_through_with_a_few_calls_of_git(
    count: int, shop: Path, run_git: RunGit, monkeypatch: pytest.MonkeyPatch
) -> None:
    for number in range(count):
        (shop / "taps.toml").write_text(
            (shop / "taps.toml").read_text().replace(f'"{number + 3} deg"', f'"{number + 4} deg"', 1)
        )
        run_git(shop, "commit", "-q", "-a", "-m", str(number))
    tree = tree_of(shop)
    calls: list[object] = []
    started = subprocess.Popen

    def noted(*given: Any, **how: Any) -> object:
        calls.append(given)
        return started(*given, **how)

    monkeypatch.setattr(subprocess, "Popen", noted)
    found = history(tree, "gun-tap")
    assert len(found) >= count // 2
    assert 0 < len(calls) <= 3 + (count + 1) // 32
