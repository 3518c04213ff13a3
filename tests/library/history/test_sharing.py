"""Two machines, one book: what each did comes together, and neither side is ever lost."""

from __future__ import annotations

import os
import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from library.editing import changes as ask
from library.editing.merging import Choice, Side
from library.editing.planning import plan
from library.editing.saving import Done, save
from library.history.following import history
from library.history.git import GitRefused
from library.history.joining import FileChoice
from library.history.recording import record
from library.history.sharing import PullAsked, Pulled, other_copy, pull, push
from library.history.work_tree import WorkTree, find_work_tree

RunGit = Callable[..., str]
Two = tuple[Path, Path]


def tree_of(folder: Path) -> WorkTree:
    found = find_work_tree(folder)
    assert found is not None
    return found


def change(folder: Path, what: ask.Change) -> None:
    done = save(plan(what, folder))
    assert isinstance(done, Done)
    assert record(tree_of(folder), [done.plan.path], done.plan.sentence)


def rake(angle: str) -> ask.SetValue:
    return ask.SetValue("gun-tap", "rake_angle", {"usual": angle})


def relief(angle: str) -> ask.SetValue:
    return ask.SetValue("gun-tap", "relief_angle", {"usual": angle})


def entries(folder: Path, file: str = "taps.toml") -> dict[str, dict[str, Any]]:
    return {entry["id"]: entry for entry in tomllib.loads((folder / file).read_text())["entry"]}


def pulled(folder: Path) -> Pulled:
    result = pull(tree_of(folder))
    assert isinstance(result, Pulled), result
    return result


def test_what_one_pushed_the_other_pulls(shared: Two) -> None:
    here, there = shared
    change(here, rake("5 deg"))
    push(tree_of(here))
    assert pulled(there) == Pulled(1)
    assert entries(there)["gun-tap"]["rake_angle"]["usual"] == "5 deg"
    assert pulled(there) == Pulled(0)


def test_changes_of_different_keys_come_together_with_all_remarks(shared: Two, run_git: RunGit) -> None:
    here, there = shared
    change(here, rake("5 deg"))
    text = (here / "taps.toml").read_text().replace("# Taps of this shop.", "# Taps of both shops.")
    (here / "taps.toml").write_text(text)
    record(tree_of(here), [here / "taps.toml"], "remark")
    push(tree_of(here))
    change(there, relief("2 deg"))
    change(there, ask.AddEntry("new-tap", "tap", "New"))
    assert pulled(there) == Pulled(2, joined=True)
    text = (there / "taps.toml").read_text()
    assert "# Taps of both shops." in text
    assert 'rake_angle = { usual = "5 deg", source = "shop" }  # May' in text
    assert entries(there)["gun-tap"]["relief_angle"]["usual"] == "2 deg"
    assert "new-tap" in entries(there)
    assert run_git(there, "status", "--porcelain") == ""
    push(tree_of(there))
    assert pulled(here).commits == 3
    assert (here / "taps.toml").read_text() == text


def test_both_adding_at_the_same_place_is_no_conflict(shared: Two) -> None:
    here, there = shared
    change(here, ask.AddEntry("a-tap", "tap", "A"))
    push(tree_of(here))
    change(there, ask.AddEntry("b-tap", "tap", "B"))
    pulled(there)
    assert list(entries(there)) == ["gun-tap", "hand-tap", "a-tap", "b-tap"]


def both_changed_the_rake(shared: Two) -> PullAsked:
    here, there = shared
    change(here, rake("5 deg"))
    push(tree_of(here))
    change(there, rake("6 deg"))
    change(there, relief("2 deg"))
    result = pull(tree_of(there))
    assert isinstance(result, PullAsked)
    return result


def test_the_same_key_asks_and_until_then_nothing_here_changes(shared: Two, run_git: RunGit) -> None:
    _, there = shared
    result = both_changed_the_rake(shared)
    (found,) = result.conflicts
    assert found.path == there / "taps.toml"
    assert [side["usual"] for side in (found.conflict.base, found.conflict.mine, found.conflict.theirs)] == [  # type: ignore[index]
        "4 deg",
        "6 deg",
        "5 deg",
    ]
    assert entries(there)["gun-tap"]["rake_angle"]["usual"] == "6 deg"
    assert run_git(there, "status", "--porcelain") == ""
    assert run_git(there, "for-each-ref", "refs/heelclear") == ""


@pytest.mark.parametrize(("side", "angle"), [("mine", "6 deg"), ("theirs", "5 deg")])
def test_the_answer_decides_and_the_other_side_stays_in_the_history(
    shared: Two, side: Side, angle: str
) -> None:
    here, there = shared
    (found,) = both_changed_the_rake(shared).conflicts
    result = pull(tree_of(there), [FileChoice(found.path, Choice(found.conflict, side))])
    assert result == Pulled(1, joined=True)
    assert entries(there)["gun-tap"]["rake_angle"]["usual"] == angle
    assert entries(there)["gun-tap"]["relief_angle"]["usual"] == "2 deg"
    values = [str(revision.changes) for revision in history(tree_of(there), "gun-tap")]
    assert any("6 deg" in value for value in values)
    assert any("5 deg" in value for value in values)
    push(tree_of(there))
    pulled(here)
    assert entries(here)["gun-tap"]["rake_angle"]["usual"] == angle


def test_an_answer_is_asked_again_when_the_other_side_moved_on(shared: Two) -> None:
    here, there = shared
    (found,) = both_changed_the_rake(shared).conflicts
    change(here, rake("7 deg"))
    push(tree_of(here))
    again = pull(tree_of(there), [FileChoice(found.path, Choice(found.conflict, "mine"))])
    assert isinstance(again, PullAsked)


def test_a_file_removed_here_and_changed_there_asks_for_the_changed_entry(shared: Two) -> None:
    here, there = shared
    change(here, rake("5 deg"))
    push(tree_of(here))
    (there / "taps.toml").unlink()
    record(tree_of(there), [there / "taps.toml"], "gone")
    result = pull(tree_of(there))
    assert isinstance(result, PullAsked)
    assert [(found.conflict.id, found.conflict.mine) for found in result.conflicts] == [("gun-tap", None)]
    (found,) = result.conflicts
    pull(tree_of(there), [FileChoice(found.path, Choice(found.conflict, "theirs"))])
    assert list(entries(there)) == ["gun-tap"]


def test_other_files_are_joined_line_by_line_or_left_to_a_person(shared: Two, run_git: RunGit) -> None:
    here, there = shared
    for folder, old, new in ((here, "one", "ONE"), (there, "two", "TWO")):
        readme = folder.parent / "readme.txt"
        readme.write_text(readme.read_text().replace(old, new))
        run_git(folder, "commit", "-q", "-a", "-m", new)
    push(tree_of(here))
    assert pulled(there).joined
    assert (there.parent / "readme.txt").read_text() == "ONE\n\n\n\n\nTWO\n"
    for folder, new in ((here, "1"), (there, "2")):
        (folder.parent / "readme.txt").write_text(new)
        run_git(folder, "commit", "-q", "-a", "-m", new)
    run_git(here, "push", "-q", "-f", "origin", "main")
    with pytest.raises(GitRefused, match=r"readme\.txt.*by hand with git pull"):
        pull(tree_of(there))
    assert (there.parent / "readme.txt").read_text() == "2"


def test_a_copy_with_a_mistake_in_it_is_joined_by_lines_or_named(shared: Two, run_git: RunGit) -> None:
    here, there = shared
    broken = (here / "taps.toml").read_text().replace('"Hand tap"', "Hand tap")
    (here / "taps.toml").write_text(broken)
    run_git(here, "commit", "-q", "-a", "-m", "half")
    push(tree_of(here))
    change(there, rake("5 deg"))
    assert pulled(there).joined
    text = (there / "taps.toml").read_text()
    assert '"5 deg"' in text
    assert "title = Hand tap" in text


def test_changes_that_are_not_in_git_yet_are_not_overwritten(shared: Two) -> None:
    here, there = shared
    change(here, rake("5 deg"))
    push(tree_of(here))
    save(plan(relief("2 deg"), there))
    before = (there / "taps.toml").read_bytes()
    assert tree_of(there).uncommitted() == (there / "taps.toml",)
    with pytest.raises(GitRefused, match=r"^taps\.toml in the book changed and is not in git yet"):
        pull(tree_of(there))
    assert (there / "taps.toml").read_bytes() == before


def test_an_unsaved_file_that_nobody_else_changed_is_no_obstacle(shared: Two) -> None:
    here, there = shared
    change(here, rake("5 deg"))
    push(tree_of(here))
    (there / "own.toml").write_text("schema = 1\n")
    assert pulled(there) == Pulled(1)
    assert (there / "own.toml").exists()


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
