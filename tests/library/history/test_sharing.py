"""Two machines, one book: what each did comes together, and neither side is ever lost."""

from __future__ import annotations

import pytest

from library.editing import changes as ask
from library.editing.merging import Choice, Side
from library.editing.planning import plan
from library.editing.saving import save
from library.history.entry_history import history
from library.history.git import GitRefused
from library.history.merge_commits import FileChoice
from library.history.recording import record
from library.history.sharing import PullConflicts, Pulled, pull, push
from tests.library.history.two_machines import RunGit, Two, change, entries, pulled, rake, relief, tree_of


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


def both_changed_the_rake(shared: Two) -> PullConflicts:
    here, there = shared
    change(here, rake("5 deg"))
    push(tree_of(here))
    change(there, rake("6 deg"))
    change(there, relief("2 deg"))
    result = pull(tree_of(there))
    assert isinstance(result, PullConflicts)
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
    assert isinstance(again, PullConflicts)


def test_a_file_removed_here_and_changed_there_asks_for_the_changed_entry(shared: Two) -> None:
    here, there = shared
    change(here, rake("5 deg"))
    push(tree_of(here))
    (there / "taps.toml").unlink()
    record(tree_of(there), [there / "taps.toml"], "gone")
    result = pull(tree_of(there))
    assert isinstance(result, PullConflicts)
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
