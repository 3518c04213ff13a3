"""What others changed since a person began is asked about, and nothing else is."""

from __future__ import annotations

from pathlib import Path

import pytest

from library.editing.changes import SetTable, SetText, SetValue
from library.editing.concurrent_edit import concurrent_edits
from library.editing.document import EditRefused
from library.editing.merging import Conflict


def test_a_field_that_both_changed_to_something_else_is_a_conflict(shop: Path) -> None:
    change = SetValue("bronze-tap", "rake_angle", {"usual": "6 deg"})
    found = concurrent_edits(change, {"usual": "3 deg", "source": "shop"}, shop)
    assert found == {"usual": Conflict("entry", "bronze-tap", "rake_angle usual", "3 deg", "6 deg", "4 deg")}


@pytest.mark.parametrize(
    ("fields", "began"),
    [
        ({"usual": "6 deg"}, {"usual": "4 deg"}),
        ({"usual": "4 deg"}, {"usual": "3 deg"}),
        ({"note": "Look."}, {"usual": "3 deg", "source": "from memory"}),
        ({"note": None}, {"note": ""}),
    ],
    ids=["nobody else changed it", "both to the same", "others changed other fields", "empty is nothing"],
)
def test_all_else_needs_no_question(shop: Path, fields: dict[str, object], began: dict[str, object]) -> None:
    assert concurrent_edits(SetValue("bronze-tap", "rake_angle", fields), began, shop) == {}


def test_a_value_that_others_took_out_is_a_conflict_and_a_new_one_too(shop: Path) -> None:
    gone = concurrent_edits(SetValue("bronze-tap", "land_width", {"usual": "2 mm"}), {"usual": "1 mm"}, shop)
    assert gone["usual"].theirs is None
    new = concurrent_edits(
        SetValue("bronze-tap", "rake_angle", {"usual": "6 deg", "source": "shop"}), {}, shop
    )
    assert list(new) == ["usual"]
    assert new["usual"].base is None


def test_the_shipped_value_counts_where_the_shop_has_none(shop: Path, shipped: Path) -> None:
    change = SetValue("gun-tap", "rake_angle", {"usual": "6 deg"})
    assert concurrent_edits(change, {"usual": "5 deg"}, shop, shipped) == {}
    (shop / "own.toml").write_text('[[entry]]\nid = "gun-tap"\nrake_angle = "7 deg"\n')
    assert concurrent_edits(change, {"usual": "5 deg"}, shop, shipped)["usual"].theirs == "7 deg"


def test_a_text_is_compared_as_a_whole(shop: Path) -> None:
    change = SetText("bronze-tap", "cautions", ["eyes"])
    assert concurrent_edits(change, {"cautions": ["eyes", "fine-dust"]}, shop) == {}
    found = concurrent_edits(change, {"cautions": ["fine-dust"]}, shop)
    assert found["cautions"].theirs == ["eyes", "fine-dust"]
    assert concurrent_edits(SetText("bronze-tap", "synonyms", ["tap"]), {"synonyms": []}, shop) == {}


def test_an_entry_that_is_gone_is_left_to_the_plan_to_refuse(shop: Path) -> None:
    assert concurrent_edits(SetText("lost", "title", "A"), {"title": "B"}, shop) == {}


def test_a_file_that_cannot_be_read_is_refused(shop: Path) -> None:
    (shop / "taps.toml").write_text('[[entry]]\nid = "bronze-tap"\ntitle = \n')
    with pytest.raises(EditRefused, match="line 3"):
        concurrent_edits(SetText("bronze-tap", "title", "A"), {"title": "B"}, shop)


def test_a_text_that_a_person_saw_with_marks_in_it_is_still_the_one_in_the_file(shop: Path) -> None:
    file = shop / "taps.toml"
    file.write_text(file.read_text().replace('"Tap for bronze"', '"Tap \\u202e for bronze"'))
    change = SetText("bronze-tap", "title", "Tap for bell metal")
    assert concurrent_edits(change, {"title": "Tap \ufffd for bronze"}, shop) == {}


WHEEL = (
    'schema = 1\n\n[[wheel]]\nid = "cup"\ntitle = "White cup"\nrated_speed = "30 m/s"\ndiameter = "98 mm"\n'
)
BEGAN = {"title": "White cup", "rated_speed": "35 m/s", "diameter": "100 mm"}


def test_a_line_of_a_wheel_that_both_changed_is_asked_about_and_no_other_is(tmp_path: Path) -> None:
    (tmp_path / "wheels.toml").write_text(WHEEL)
    found = concurrent_edits(SetTable("wheel", "cup", {"rated_speed": "25 m/s"}), BEGAN, tmp_path)
    assert found == {"rated_speed": Conflict("wheel", "cup", "rated_speed", "35 m/s", "25 m/s", "30 m/s")}
    assert concurrent_edits(SetTable("wheel", "cup", {"grit": "60"}), BEGAN, tmp_path) == {}
    assert concurrent_edits(SetTable("wheel", "cup", {"diameter": "98 mm"}), BEGAN, tmp_path) == {}
    gone = concurrent_edits(SetTable("wheel", "cup", {"diameter": None}), BEGAN, tmp_path)
    assert (gone["diameter"].mine, gone["diameter"].theirs) == (None, "98 mm")


def test_of_words_with_a_source_each_is_compared_by_itself(tmp_path: Path) -> None:
    (tmp_path / "s.toml").write_text(
        'schema = 1\n\n[[symptom]]\nid = "s"\ntitle = "S"\nchange = { text = "Oil.", source = "from memory" }\n'
    )
    began = {"change": "Oil.", "change source": "shop"}
    mine = SetTable("symptom", "s", {"change": {"text": "More oil."}})
    assert concurrent_edits(mine, began, tmp_path) == {}
    both = SetTable("symptom", "s", {"change": {"text": "More oil.", "source": "common practice"}})
    assert list(concurrent_edits(both, began, tmp_path)) == ["change source"]
