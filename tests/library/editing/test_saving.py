"""Saving beside somebody else, being asked, and taking back."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pytest

from library.editing import changes as ask
from library.editing.document import EditRefused
from library.editing.merging import Choice
from library.editing.planning import plan
from library.editing.saving import Conflicts, Done, save, undone
from library.errors import SaveError


def entry(file: Path, name: str) -> dict[str, Any]:
    data = tomllib.loads(file.read_text())
    found: dict[str, Any] = next(one for one in data["entry"] if one["id"] == name)
    return found


def done(result: Done | Conflicts) -> Done:
    assert isinstance(result, Done), result
    return result


def asked(result: Done | Conflicts) -> Conflicts:
    assert isinstance(result, Conflicts), result
    return result


@pytest.fixture
def taps(shop: Path) -> Path:
    return shop / "taps.toml"


def set_rake(shop: Path, angle: str) -> ask.SetValue:
    return ask.SetValue("bronze-tap", "rake_angle", {"usual": angle})


def by_hand(file: Path, old: str, new: str) -> None:
    text = file.read_text()
    assert old in text
    file.write_text(text.replace(old, new))


def test_a_plan_is_saved_as_it_was_shown(shop: Path, taps: Path) -> None:
    made = plan(set_rake(shop, "5 deg"), shop)
    saved = done(save(made))
    assert taps.read_bytes() == made.after
    assert (saved.merged, saved.warning, saved.plan) == (False, "", made)


def test_a_new_folder_and_file_are_made_with_the_first_save(tmp_path: Path, shipped: Path) -> None:
    new = tmp_path / "deep" / "book"
    done(save(plan(ask.SetValue("gun-tap", "rake_angle", {"usual": "6 deg"}), new, shipped)))
    assert entry(new / "changes.toml", "gun-tap")["rake_angle"]["usual"] == "6 deg"


def test_another_key_changed_by_hand_meanwhile_is_kept_with_its_remarks(shop: Path, taps: Path) -> None:
    made = plan(set_rake(shop, "5 deg"), shop)
    by_hand(taps, 'title = "Tap for bronze"', 'title = "Bronze"  # shorter')
    by_hand(taps, "# Tried once.", "# Tried twice.")
    saved = done(save(made))
    assert saved.merged
    text = taps.read_text()
    assert '{usual="5 deg",   source = "shop"}  # measured in May' in text
    assert 'title = "Bronze"  # shorter' in text
    assert "# Tried twice." in text


def test_the_same_key_asks_and_until_then_nothing_is_saved(shop: Path, taps: Path) -> None:
    made = plan(set_rake(shop, "5 deg"), shop)
    by_hand(taps, "'4 deg'", "'6 deg'")
    theirs = taps.read_bytes()
    question = asked(save(made))
    assert taps.read_bytes() == theirs == question.theirs
    (conflict,) = question.conflicts
    assert [
        side["usual"] for side in (conflict.base, conflict.mine, conflict.theirs) if isinstance(side, dict)
    ] == [
        "4 deg",
        "5 deg",
        "6 deg",
    ]


@pytest.mark.parametrize(("side", "angle"), [("mine", "5 deg"), ("theirs", "6 deg")])
def test_the_answer_decides(shop: Path, taps: Path, side: Any, angle: str) -> None:
    made = plan(set_rake(shop, "5 deg"), shop)
    by_hand(taps, "'4 deg'", "'6 deg'")
    by_hand(taps, "# Tried once.", "# Tried twice.")
    question = asked(save(made))
    done(save(made, [Choice(question.conflicts[0], side)]))
    assert entry(taps, "bronze-tap")["rake_angle"]["usual"] == angle
    assert "# Tried twice." in taps.read_text()


def test_an_answer_is_asked_again_when_the_file_changed_once_more(shop: Path, taps: Path) -> None:
    made = plan(set_rake(shop, "5 deg"), shop)
    by_hand(taps, "'4 deg'", "'6 deg'")
    question = asked(save(made))
    by_hand(taps, "'6 deg'", "'7 deg'")
    again = asked(save(made, [Choice(question.conflicts[0], "mine")]))
    assert isinstance(again.conflicts[0].theirs, dict)
    assert again.conflicts[0].theirs["usual"] == "7 deg"


def test_both_wanting_the_same_is_no_question(shop: Path, taps: Path) -> None:
    made = plan(set_rake(shop, "5 deg"), shop)
    by_hand(taps, "'4 deg'", "'5 deg'")
    done(save(made))
    assert entry(taps, "bronze-tap")["rake_angle"]["usual"] == "5 deg"


def test_a_file_that_was_removed_meanwhile_is_a_question_for_my_entry_only(shop: Path, taps: Path) -> None:
    made = plan(set_rake(shop, "5 deg"), shop)
    taps.unlink()
    question = asked(save(made))
    assert [conflict.id for conflict in question.conflicts] == ["bronze-tap"]
    done(save(made, [Choice(question.conflicts[0], "theirs")]))
    assert not taps.exists()
    done(save(made, [Choice(question.conflicts[0], "mine")]))
    assert entry(taps, "bronze-tap")["title"] == "Tap for bronze"


def test_a_mistake_made_by_hand_meanwhile_keeps_the_file_as_it_is(shop: Path, taps: Path) -> None:
    made = plan(set_rake(shop, "5 deg"), shop)
    by_hand(taps, "'4 deg'", "4 deg")
    theirs = taps.read_bytes()
    with pytest.raises(EditRefused, match=r"taps\.toml, line 8"):
        save(made)
    assert taps.read_bytes() == theirs


def test_two_people_add_entries_to_the_same_new_file(tmp_path: Path) -> None:
    new = tmp_path / "book"
    one = plan(ask.AddEntry("a", "hob", "A"), new)
    other = plan(ask.AddEntry("b", "hob", "B"), new)
    done(save(one))
    assert done(save(other)).merged
    assert [found["id"] for found in tomllib.loads((new / "hob.toml").read_text())["entry"]] == ["a", "b"]


def test_two_people_add_the_same_id_and_are_asked_key_by_key(tmp_path: Path) -> None:
    new = tmp_path / "book"
    one = plan(ask.AddEntry("a", "hob", "A"), new)
    other = plan(ask.AddEntry("a", "hob", "B", {"notes": "n"}), new)
    done(save(one))
    question = asked(save(other))
    assert [(conflict.key, conflict.mine, conflict.theirs) for conflict in question.conflicts] == [
        ("title", "B", "A")
    ]
    done(save(other, [Choice(question.conflicts[0], "theirs")]))
    assert entry(new / "hob.toml", "a") == {"id": "a", "family": "hob", "title": "A", "notes": "n"}


def test_a_renamed_entry_keeps_what_somebody_else_changed_in_it(shop: Path, taps: Path) -> None:
    made = plan(ask.RenameEntry("bronze-tap", "red-tap"), shop)
    by_hand(taps, "'4 deg'", "'6 deg'")
    assert done(save(made)).merged
    assert entry(taps, "red-tap")["rake_angle"]["usual"] == "6 deg"
    assert "bronze-tap" not in taps.read_text()


def test_a_removed_entry_that_somebody_changed_is_a_question(shop: Path, taps: Path) -> None:
    made = plan(ask.RemoveEntry("bronze-tap"), shop)
    by_hand(taps, "'4 deg'", "'6 deg'")
    question = asked(save(made))
    assert question.conflicts[0].key == ""
    done(save(made, [Choice(question.conflicts[0], "mine")]))
    assert "bronze-tap" not in taps.read_text()


@pytest.mark.parametrize(
    "change",
    [
        ask.SetValue("bronze-tap", "rake_angle", {"usual": "5 deg"}),
        ask.RemoveEntry("brass-tap"),
        ask.RenameEntry("brass-tap", "yellow-tap"),
        ask.AddEntry("new", "tap", "New"),
        ask.AddFamily("hob", "Hobs"),
    ],
    ids=lambda change: type(change).__name__,
)
def test_a_save_is_taken_back_to_the_byte_and_that_too(shop: Path, change: ask.Change) -> None:
    def state() -> dict[str, bytes]:
        return {path.name: path.read_bytes() for path in shop.glob("*.toml")}

    before = state()
    saved = done(save(plan(change, shop)))
    after = state()
    assert after != before
    back = done(save(undone(saved)))
    assert state() == before
    assert back.plan.sentence.startswith("Taken back: ")
    done(save(undone(back)))
    assert state() == after


def test_taking_back_keeps_what_others_changed_since(shop: Path, taps: Path) -> None:
    saved = done(save(plan(set_rake(shop, "5 deg"), shop)))
    by_hand(taps, 'title = "Tap for bronze"', 'title = "Bronze"')
    done(save(undone(saved)))
    assert entry(taps, "bronze-tap")["rake_angle"]["usual"] == "4 deg"
    assert entry(taps, "bronze-tap")["title"] == "Bronze"


def test_taking_back_a_removed_entry_brings_its_remarks_back_beside_others_changes(
    shop: Path, taps: Path
) -> None:
    saved = done(save(plan(ask.RemoveEntry("bronze-tap"), shop)))
    by_hand(taps, 'usual = "1.5 mm"', 'usual = "1.6 mm"')
    done(save(undone(saved)))
    text = taps.read_text()
    assert "# measured in May" in text
    assert '"eyes",  # always' in text
    assert 'usual = "1.6 mm"' in text


def test_taking_back_asks_when_somebody_changed_the_same_since(shop: Path, taps: Path) -> None:
    saved = done(save(plan(set_rake(shop, "5 deg"), shop)))
    by_hand(taps, '"5 deg"', '"6 deg"')
    assert asked(save(undone(saved))).conflicts[0].key == "rake_angle"


def test_taking_back_a_new_file_leaves_what_others_put_into_it(tmp_path: Path) -> None:
    new = tmp_path / "book"
    saved = done(save(plan(ask.AddEntry("a", "hob", "A"), new)))
    done(save(plan(ask.AddEntry("b", "hob", "B"), new)))
    done(save(undone(saved)))
    assert [found["id"] for found in tomllib.loads((new / "hob.toml").read_text())["entry"]] == ["b"]


def test_a_file_out_of_the_book_is_not_written(tmp_path: Path, shop: Path) -> None:
    outside = tmp_path / "outside.toml"
    outside.write_text('schema = 1\n[[entry]]\nid = "far"\ntitle = "Far"\n')
    (shop / "link.toml").write_bytes(outside.read_bytes())
    made = plan(ask.SetText("far", "title", "Near"), shop)
    # Somebody puts a link in its place while the change is looked at.
    (shop / "link.toml").unlink()
    (shop / "link.toml").symlink_to(outside)
    with pytest.raises(SaveError, match="outside the book"):
        save(made)
    assert "Far" in outside.read_text()
