"""Tables typed into a form: the file's own words come back, and only what was changed changes."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

from geometry.calculations import calculation
from library.book.folders import shipped_folder
from library.book.model import Book
from library.book.opening import open_book
from library.editing.changes import SetTable
from library.editing.document import EditRefused
from library.editing.plan import Plan
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


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book()


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    (tmp_path / "machines.toml").write_text(YARD)
    return tmp_path


def table(shop: Path, array: str) -> dict[str, object]:
    found: dict[str, object] = tomllib.loads((shop / "machines.toml").read_text())[array][0]
    return found


@pytest.mark.parametrize("name", ["point-setup", "end-teeth"])
def test_a_machine_made_in_the_form_has_a_scale_for_every_setting_of_its_work_head(name: str) -> None:
    scales = ("work-head", "work-head-roll", "work-head-tilt")
    made = as_written("machine", {"title": "M", **{f"division of the {one}": "1 deg" for one in scales}})
    graduations = made["graduations"]
    assert isinstance(graduations, dict)
    assert list(graduations) == list(scales)
    covered = {key for one in graduations.values() for key in one["sets"]}
    assert set(calculation(name).role.sets) <= covered
    # A swivel alone says nothing of the roll.
    assert "roll_angle" not in graduations["work-head"]["sets"]


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


def lines_changed(made: Plan) -> list[str]:
    _, _, *lines = made.diff()
    return [one for one in lines if one[:1] in "+-"]


def shipped(tmp_path: Path) -> Path:
    folder = tmp_path / "came-with-it"
    folder.mkdir()
    (folder / "setups.toml").write_text(
        'schema = 1\n\n[[setup]]\nid = "chamfer"\ntitle = "Chamfer"\nfamily = "tap"\n'
        'hold = { text = "Between centres.", source = "manual", place = "page 3" }\n'
        'feed = { text = "By touches.", source = "common practice" }\n'
    )
    return folder


def test_one_line_of_a_shipped_set_up_is_covered_in_the_shops_own_file_and_the_rest_stays_shipped(
    tmp_path: Path,
) -> None:
    below = shipped(tmp_path)
    texts = as_typed("setup", tomllib.loads((below / "setups.toml").read_text())["setup"][0])
    assert texts["hold"] == "Between centres."
    assert texts["hold source"] == "manual, page 3"
    now = {**texts, "hold": "In the collet.", "hold source": "shop"}
    made = plan(SetTable("setup", "chamfer", changed("setup", now, texts)), tmp_path / "shop", below)
    assert made.after is not None
    assert made.path.name == "setups.toml"
    assert tomllib.loads(made.after.decode())["setup"] == [
        {"id": "chamfer", "hold": {"text": "In the collet.", "source": "shop"}}
    ]


def test_a_new_source_alone_keeps_the_shipped_words_and_a_line_that_goes_gives_them_back(
    tmp_path: Path,
) -> None:
    below, shop = shipped(tmp_path), tmp_path / "shop"
    texts = as_typed("setup", tomllib.loads((below / "setups.toml").read_text())["setup"][0])
    fields = changed("setup", {**texts, "hold source": "manual, page 4"}, texts)
    made = plan(SetTable("setup", "chamfer", fields), shop, below)
    assert made.after is not None
    (table,) = tomllib.loads(made.after.decode())["setup"]
    assert table["hold"] == {"text": "Between centres.", "source": "manual", "place": "page 4"}
    shop.mkdir()
    (shop / "own.toml").write_text(
        'schema = 1\n\n[[setup]] # ours\nid = "chamfer"\nfeed = "In one pass." # no\nx-by = "the old hand"\n'
    )
    back = plan(SetTable("setup", "chamfer", {"feed": None}), shop, below)
    assert lines_changed(back) == ['-feed = "In one pass." # no']


def test_words_without_a_source_get_one_and_what_the_shop_keeps_beside_them_stays(tmp_path: Path) -> None:
    (tmp_path / "s.toml").write_text(
        'schema = 1\n\n[[symptom]]\nid = "s"\ntitle = "Squeals"\nmeasure = "The land."\n'
        'change = { text = "Oil.", source = "shop", x-since = 1998 } # it helps\n'
    )
    texts = as_typed("symptom", tomllib.loads((tmp_path / "s.toml").read_text())["symptom"][0])
    now = {**texts, "measure source": "shop", "change": "More oil."}
    made = plan(SetTable("symptom", "s", changed("symptom", now, texts)), tmp_path)
    assert lines_changed(made) == [
        '-measure = "The land."',
        '-change = { text = "Oil.", source = "shop", x-since = 1998 } # it helps',
        '+measure = { text = "The land.", source = "shop" }',
        '+change = { text = "More oil.", source = "shop", x-since = 1998 } # it helps',
    ]


def test_a_standard_thread_is_covered_where_the_shop_has_none_of_it_and_anything_else_is_not(
    tmp_path: Path,
) -> None:
    fields = changed("thread", {"tap_drill": "10.4 mm", "source": "shop"}, {})
    made = plan(SetTable("thread", "m12", fields, covers=True), tmp_path)
    assert made.after is not None
    assert tomllib.loads(made.after.decode())["thread"] == [
        {"id": "m12", "tap_drill": "10.4 mm", "source": "shop"}
    ]
    with pytest.raises(EditRefused, match="no thread 'm12' in the shop's book any more"):
        plan(SetTable("thread", "m12", fields), tmp_path)
    assert complaints("thread", "m12", {"tap_drill": "12.5 mm", "source": "shop"}).keys() == {"tap_drill"}
    assert complaints("thread", "own", {"title": "Own", "pitch": "1 mm", "source": ""}).keys() >= {"source"}


def test_every_table_that_came_with_the_program_stands_in_its_form_without_a_complaint(book: Book) -> None:
    kinds = ("setup", "recommended_wheel", "unsuited_wheel", "symptom")
    folder = shipped_folder()
    tables = [
        (array, table)
        for path in (folder / f"{name}.toml" for name in ("setups", "recommended-wheels", "symptoms"))
        for array in kinds
        for table in tomllib.loads(path.read_text(encoding="utf-8")).get(array, [])
    ]
    assert len({array for array, _ in tables}) == 4
    for array, table in tables:
        texts = as_typed(array, table)
        assert {**as_written(array, texts), "id": table["id"]} == table
    for array in kinds:
        found = next(table for kind, table in tables if kind == array)
        assert complaints(array, found["id"], as_typed(array, found), book) == {}


@pytest.mark.parametrize(
    ("array", "texts", "wrong"),
    [
        ("setup", {"title": "S", "family": "tapp"}, "family"),
        ("setup", {"title": "S", "hold": "So.", "hold source": ""}, "hold source"),
        ("setup", {"title": "S", "hold": "By {rake}.", "hold source": "shop"}, "hold"),
        ("setup", {"title": "S", "hold": "", "hold source": "shop"}, "hold"),
        ("setup", {"title": "S", "like": "nobody"}, "like"),
        ("symptom", {"title": "S", "value": "rake"}, "value"),
        ("symptom", {"title": "S", "change": "So.", "change source": "a-book-that-is-not-there"}, "change source"),
        ("recommended_wheel", {"title": "W", "abrasives": "sand"}, "abrasives"),
        ("unsuited_wheel", {"title": "W", "shapes": "type-99"}, "shapes"),
    ],
)  # fmt: skip
def test_what_is_wrong_in_a_line_is_told_at_that_line(
    book: Book, array: str, texts: dict[str, str], wrong: str
) -> None:
    assert complaints(array, "as-typed", texts, book).keys() == {wrong}


def test_signs_that_no_text_has_are_not_brought_into_a_form() -> None:
    texts = as_typed("setup", {"title": "A\x1b[31m", "hold": {"text": "B\x07", "source": "shop\x9b"}})
    assert not {"\x1b", "\x07", "\x9b"} & set("".join(texts.values()))
