"""What each change would write, and where."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pytest

from library.editing import changes as ask
from library.editing.document import EditRefused
from library.editing.plan import Plan
from library.editing.planning import plan


def lines_of(made: Plan) -> list[str]:
    """The lines that a plan takes out and puts in, without their surroundings."""
    return [line for line in made.diff() if line[:1] in "+-" and line[:3] not in {"+++", "---"}]


def data_of(made: Plan) -> dict[str, Any]:
    assert made.after is not None
    return tomllib.loads(made.after.decode())


def test_one_field_of_a_value_changes_and_the_rest_of_the_line_stays_as_typed(shop: Path) -> None:
    made = plan(ask.SetValue("bronze-tap", "rake_angle", {"usual": "5 deg"}), shop)
    assert lines_of(made) == [
        """-rake_angle = {usual='4 deg',   source = "shop"}  # measured in May""",
        """+rake_angle = {usual="5 deg",   source = "shop"}  # measured in May""",
    ]
    assert made.sentence == "bronze-tap: rake angle usual 5 deg, source shop (in taps.toml)."


def test_a_range_and_a_note_are_added_in_the_usual_order(shop: Path) -> None:
    change = ask.SetValue("bronze-tap", "rake_angle", {"note": "worn wheel", "high": "6 deg", "low": "3 deg"})
    assert lines_of(plan(change, shop))[1] == (
        """+rake_angle = {low = "3 deg", usual = '4 deg', high = "6 deg", source = "shop", note = "worn wheel"}"""
        """  # measured in May"""
    )


def test_a_field_is_taken_out(shop: Path) -> None:
    made = plan(ask.SetValue("bronze-tap", "rake_angle", {"source": None}), shop)
    assert lines_of(made)[1] == "+rake_angle = {usual = '4 deg'}  # measured in May"


def test_a_new_value_goes_behind_the_last_one_and_before_cautions_and_notes(shop: Path) -> None:
    made = plan(ask.SetValue("bronze-tap", "land_width", {"usual": "0.25 D", "source": "shop"}), shop)
    assert lines_of(made) == ['+land_width = { usual = "0.25 D", source = "shop" }']
    assert made.after is not None
    before = made.after.decode().partition("land_width")[0]
    assert before.endswith("# measured in May\n")


def test_values_written_with_dots_and_as_tables_are_changed_where_they_stand(shop: Path) -> None:
    made = plan(ask.SetValue("brass-tap", "relief_angle", {"source": "shop", "high": "5 deg"}), shop)
    assert lines_of(made) == [
        '-relief_angle.source = "from memory"  # ask again',
        '+relief_angle.source = "shop"  # ask again',
        '+relief_angle.high = "5 deg"',
    ]
    made = plan(ask.SetValue("brass-tap", "land_width", {"usual": "1.6 mm", "note": "x"}), shop)
    assert lines_of(made) == ['-usual = "1.5 mm"', '+usual = "1.6 mm"', '+note = "x"']


def test_a_shipped_value_is_covered_by_one_in_the_shops_file_with_all_that_it_had(
    shop: Path, shipped: Path
) -> None:
    before = (shipped / "taps.toml").read_bytes()
    made = plan(
        ask.SetValue("gun-tap", "rake_angle", {"usual": "6 deg", "source": "shop", "place": None}),
        shop,
        shipped,
    )
    assert made.path == shop / "changes.toml"
    assert made.before is None
    assert data_of(made) == {
        "schema": 1,
        "entry": [
            {
                "id": "gun-tap",
                "rake_angle": {"low": "3 deg", "usual": "6 deg", "high": "8 deg", "source": "shop"},
            }
        ],
    }
    assert made.sentence.endswith("(in changes.toml, a new file).")
    assert (shipped / "taps.toml").read_bytes() == before


def test_a_shipped_measure_alone_counts_as_the_usual_one(shop: Path, shipped: Path) -> None:
    made = plan(ask.SetValue("gun-tap", "relief_angle", {"source": "shop"}), shop, shipped)
    assert data_of(made)["entry"][0]["relief_angle"] == {"usual": "4 deg", "source": "shop"}


def test_a_change_goes_to_the_file_that_has_the_entry_already(shop: Path, shipped: Path) -> None:
    (shop / "deep").mkdir()
    (shop / "deep" / "mine.toml").write_text('schema = 1\n[[entry]]\nid = "gun-tap"\ntitle = "Ours"\n')
    made = plan(ask.SetValue("gun-tap", "relief_angle", {"usual": "5 deg"}), shop, shipped)
    assert made.path == shop / "deep" / "mine.toml"
    assert made.sentence.endswith("(in deep/mine.toml).")


def test_back_to_shipped_takes_the_whole_entry_out_when_nothing_else_is_left(
    shop: Path, shipped: Path
) -> None:
    file = shop / "changes.toml"
    file.write_text('schema = 1\n\n[[entry]]\nid = "gun-tap"\nrake_angle = "6 deg"\nrelief_angle = "5 deg"\n')
    made = plan(ask.RemoveValue("gun-tap", "rake_angle"), shop, shipped)
    assert lines_of(made) == ['-rake_angle = "6 deg"']
    assert "back to shipped" in made.sentence
    file.write_text('schema = 1\n\n[[entry]]\nid = "gun-tap"\nrake_angle = "6 deg"\n')
    assert plan(ask.RemoveValue("gun-tap", "rake_angle"), shop, shipped).after == b"schema = 1\n"


def test_there_is_nothing_to_take_back_where_the_shop_says_nothing(shop: Path, shipped: Path) -> None:
    with pytest.raises(EditRefused, match="nothing to take back"):
        plan(ask.RemoveValue("gun-tap", "rake_angle"), shop, shipped)


def test_a_list_keeps_the_remarks_inside_it(shop: Path) -> None:
    made = plan(ask.SetText("bronze-tap", "cautions", ["eyes", "fine-dust", "hands"]), shop)
    assert [line[1:].strip() for line in lines_of(made)] == ['"hands",']
    with pytest.raises(
        EditRefused, match=r"cautions of 'bronze-tap' in taps\.toml, line 9, has remarks inside"
    ):
        plan(ask.SetText("bronze-tap", "cautions", ["hands"]), shop)


def test_notes_of_several_lines_are_written_as_several_lines(shop: Path) -> None:
    made = plan(ask.SetText("brass-tap", "notes", 'First.\nSays "stop" and C:\\taps.\n'), shop)
    assert lines_of(made)[:2] == ['+notes = """', "+First."]
    assert data_of(made)["entry"][1]["notes"] == 'First.\nSays "stop" and C:\\taps.\n'


def test_a_new_entry_goes_to_the_file_of_its_family(shop: Path) -> None:
    made = plan(ask.AddEntry("steel-tap", "tap", "Tap for steel", {"rake_angle": {"usual": "8 deg"}}), shop)
    assert made.path == shop / "taps.toml"
    assert lines_of(made) == [
        "+",
        "+[[entry]]",
        '+id = "steel-tap"',
        '+family = "tap"',
        '+title = "Tap for steel"',
        '+rake_angle = { usual = "8 deg" }',
    ]


def test_a_new_entry_of_a_new_family_gets_a_file_of_its_own(shop: Path) -> None:
    made = plan(ask.AddEntry("hob-1", "gear ../hob", "A hob"), shop)
    assert made.path == shop / "gear----hob.toml"
    assert made.after is not None
    assert made.after.startswith(b"schema = 1\n\n[[entry]]\n")


def test_an_id_that_is_taken_in_either_layer_is_refused(shop: Path, shipped: Path) -> None:
    for taken in ("gun-tap", "brass-tap"):
        with pytest.raises(EditRefused, match=f"'{taken}' already"):
            plan(ask.AddEntry(taken, "tap", "x"), shop, shipped)
        with pytest.raises(EditRefused, match=f"'{taken}' already"):
            plan(ask.CopyEntry("bronze-tap", taken, "x"), shop, shipped)
    with pytest.raises(EditRefused, match="family 'tap' already"):
        plan(ask.AddFamily("tap", "Taps"), shop, shipped)


def test_a_copy_has_what_both_layers_say(shop: Path, shipped: Path) -> None:
    (shop / "changes.toml").write_text(
        '[[entry]]\nid = "gun-tap"\nrelief_angle = { usual = "5 deg", source = "shop" }\n'
    )
    copied = data_of(plan(ask.CopyEntry("gun-tap", "gun-tap-2", "Copy"), shop, shipped))["entry"][-1]
    assert copied["id"] == "gun-tap-2"
    assert copied["title"] == "Copy"
    assert copied["relief_angle"] == {"usual": "5 deg", "source": "shop"}
    assert copied["rake_angle"]["place"] == "table 3"


def test_an_entry_of_the_shop_is_renamed_and_a_shipped_one_is_not(shop: Path, shipped: Path) -> None:
    made = plan(ask.RenameEntry("brass-tap", "yellow-tap"), shop, shipped)
    assert lines_of(made) == ['-id = "brass-tap"', '+id = "yellow-tap"']
    with pytest.raises(EditRefused, match="keeps its id; copy it"):
        plan(ask.RenameEntry("gun-tap", "mine"), shop, shipped)


def test_an_entry_is_removed_with_its_tables_and_the_remark_above_stays(shop: Path) -> None:
    made = plan(ask.RemoveEntry("brass-tap"), shop)
    assert made.after is not None
    assert made.after.decode().endswith("# not a remark\n'''\n\n# Tried once.\n")
    made = plan(ask.RemoveEntry("bronze-tap"), shop)
    assert made.after is not None
    assert made.after.decode().startswith("# The shop's own taps.\nschema = 1\n\n# Tried once.\n[[entry]]\n")


def test_a_shipped_entry_is_not_removed_but_the_shops_changes_of_it_are(shop: Path, shipped: Path) -> None:
    with pytest.raises(EditRefused, match="cannot be removed"):
        plan(ask.RemoveEntry("gun-tap"), shop, shipped)
    (shop / "changes.toml").write_text('[[entry]]\nid = "gun-tap"\ntitle = "Ours"\n')
    assert "all of it back to shipped" in plan(ask.RemoveEntry("gun-tap"), shop, shipped).sentence


def test_a_new_family_goes_to_the_file_that_has_families(shop: Path) -> None:
    assert plan(ask.AddFamily("hob", "Hobs"), shop).path == shop / "families.toml"
    (shop / "z.toml").write_text('[[family]]\nid = "saw"\ntitle = "Saws"\n')
    made = plan(ask.AddFamily("hob", "Hobs", {"what": "Worms that cut.", "synonyms": ["gear hob"]}), shop)
    assert made.path == shop / "z.toml"
    assert data_of(made)["family"][1]["synonyms"] == ["gear hob"]


def test_planning_writes_nothing(shop: Path, shipped: Path) -> None:
    before = {path: (path.read_bytes(), path.stat().st_mtime_ns) for path in shop.rglob("*")}
    plan(ask.SetValue("gun-tap", "rake_angle", {"usual": "6 deg"}), shop, shipped)
    plan(ask.RemoveEntry("brass-tap"), shop, shipped)
    assert {path: (path.read_bytes(), path.stat().st_mtime_ns) for path in shop.rglob("*")} == before


def test_a_folder_that_is_not_there_yet_is_no_obstacle(tmp_path: Path, shipped: Path) -> None:
    made = plan(ask.SetValue("gun-tap", "rake_angle", {"usual": "6 deg"}), tmp_path / "new", shipped)
    assert made.path == tmp_path / "new" / "changes.toml"
    assert not (tmp_path / "new").exists()


def test_a_file_with_a_mistake_is_named_with_its_line_and_nothing_is_changed(shop: Path) -> None:
    (shop / "taps.toml").write_text('schema = 1\n[[entry]]\nid = "bronze-tap"\nrake_angle = 0,5\n')
    with pytest.raises(EditRefused, match=r"taps\.toml, line 4: .*Nothing can be changed in this file until"):
        plan(ask.SetValue("bronze-tap", "rake_angle", {"usual": "5 deg"}), shop)


def test_a_mistake_in_another_file_is_no_obstacle(shop: Path) -> None:
    (shop / "aaa.toml").write_text("half [\n")
    assert plan(ask.SetValue("bronze-tap", "rake_angle", {"usual": "5 deg"}), shop).after


def test_an_id_in_two_files_is_a_question_for_a_person(shop: Path) -> None:
    (shop / "more.toml").write_text('[[entry]]\nid = "bronze-tap"\n')
    with pytest.raises(EditRefused, match=r"stands in more\.toml and in taps\.toml"):
        plan(ask.SetValue("bronze-tap", "rake_angle", {"usual": "5 deg"}), shop)


def test_an_entry_that_is_gone_gets_a_sentence(shop: Path) -> None:
    with pytest.raises(EditRefused, match="no entry 'gone' any more"):
        plan(ask.SetValue("gone", "rake_angle", {"usual": "5 deg"}), shop)


def test_a_line_that_the_book_would_not_read_is_not_written(shop: Path) -> None:
    with pytest.raises(EditRefused, match="longer than 4096 bytes"):
        plan(ask.SetValue("bronze-tap", "rake_angle", {"note": "é" * 2100}), shop)
    with pytest.raises(EditRefused, match="no file can hold"):
        plan(ask.SetValue("bronze-tap", "rake_angle", {"note": "\udc80"}), shop)


def test_windows_line_ends_and_a_byte_order_mark_are_kept(shop: Path) -> None:
    file = shop / "taps.toml"
    old = b"\xef\xbb\xbf" + file.read_bytes().replace(b"\n", b"\r\n")
    file.write_bytes(old)
    made = plan(ask.SetText("bronze-tap", "notes", "one\ntwo\n"), shop)
    assert made.after is not None
    assert made.after.startswith(b"\xef\xbb\xbf#")
    assert made.after.count(b"\n") == made.after.count(b"\r\n") == old.count(b"\n")
    added = plan(ask.AddEntry("new", "tap", "New"), shop).after
    assert added is not None
    assert added.startswith(old)
    assert b"\n" not in added.replace(b"\r\n", b"")


def test_the_diff_shows_no_control_sequence(shop: Path) -> None:
    made = plan(ask.SetText("bronze-tap", "title", "\x1b[2J[red]"), shop)
    assert "\x1b" not in "".join(made.diff())
    assert "\x1b" not in made.sentence
