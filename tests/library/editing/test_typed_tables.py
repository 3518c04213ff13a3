"""A machine and a wheel typed into a form: the file's own words come back, and only what was changed changes."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

from library.editing.changes import SetTable
from library.editing.document import EditRefused
from library.editing.planning import plan
from library.editing.typed_tables import as_typed, as_written, changed, complaints

YARD = """# Ours.
schema = 1

[[machine]]
id = "grey"
title = "The grey grinder"
plate_holes = [24, 28] # of the old head
x-place = "by the window"

[machine.graduations.tilt]
division = "15 min"
sets = ["wheel_tilt", "relief_angle"] # both
more = "to the right"

[[wheel]]
id = "cup"
title = "White cup"
rated_speed = "35 m/s"
dressed = 2026-11-03
"""


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    (tmp_path / "machines.toml").write_text(YARD)
    return tmp_path


def table(shop: Path, array: str) -> dict[str, object]:
    found: dict[str, object] = tomllib.loads((shop / "machines.toml").read_text())[array][0]
    return found


def test_what_stands_in_the_file_stands_in_the_form_and_back(shop: Path) -> None:
    for array in ("machine", "wheel"):
        texts = as_typed(array, table(shop, array))
        written = as_written(array, texts)
        assert {
            key: one for key, one in table(shop, array).items() if key in written and key != "graduations"
        } == {key: one for key, one in written.items() if key != "graduations"}
        assert complaints(array, "x", texts) == {}


def test_only_the_changed_key_of_a_machine_changes_and_comments_and_own_keys_stay(shop: Path) -> None:
    texts = as_typed("machine", table(shop, "machine"))
    fields = changed("machine", {**texts, "division of the tilt": "10 min", "index_ratio": "40"}, texts)
    made = plan(SetTable("machine", "grey", fields), shop)
    assert made.after is not None
    _, _, *lines = made.diff()
    assert [one for one in lines if one[:1] in "+-"] == [
        "+index_ratio = 40",
        '-division = "15 min"',
        '+division = "10 min"',
    ]


def test_a_graduation_that_is_emptied_goes_and_a_new_one_says_what_it_sets(shop: Path) -> None:
    texts = as_typed("machine", table(shop, "machine"))
    fields = changed(
        "machine", {**texts, "division of the tilt": "", "division of the table": "5 min"}, texts
    )
    made = plan(SetTable("machine", "grey", fields), shop)
    assert made.after is not None
    after = tomllib.loads(made.after.decode())["machine"][0]["graduations"]
    assert after == {"table": {"division": "5 min", "sets": ["swivel_angle"]}}


def test_a_new_wheel_comes_beside_others_and_its_day_is_a_day(shop: Path) -> None:
    texts = {"title": "Pink dish", "dressed": "2026-11-26", "rated_speed": "6500 ft/min"}
    made = plan(SetTable("wheel", "pink", as_written("wheel", texts), is_new=True), shop)
    assert made.after is not None
    assert "dressed = 2026-11-26\n" in made.after.decode()
    with pytest.raises(EditRefused, match="already"):
        plan(SetTable("wheel", "cup", {"title": "Another"}, is_new=True), shop)
    with pytest.raises(EditRefused, match="any more"):
        plan(SetTable("wheel", "gone", {"title": "Another"}), shop)


def test_what_the_book_would_not_read_is_told_at_its_line() -> None:
    wrong = complaints(
        "machine",
        "x",
        {"title": "M", "spindle_speeds": "2800", "division of the tilt": "3", "plate_holes": "15, many"},
    )
    assert set(wrong) == {"spindle_speeds", "division of the tilt", "plate_holes"}
    wrong = complaints("wheel", "x", {"title": "W", "rated_speed": "35", "dressed": "yesterday", "shape": ""})
    assert set(wrong) == {"rated_speed", "dressed"}
