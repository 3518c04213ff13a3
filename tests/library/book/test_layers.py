"""The shop's keys cover the shipped ones one by one, and nothing covers what the shop could not write rightly."""

from __future__ import annotations

from pathlib import Path

import pytest

from library.book import opening
from library.book.model import Book, Entry
from library.book.opening import open_book

SHIPPED = """
schema = 1
[[family]]
id = "tap"
title = "Taps"
kind = "tap"
what = "Tools that cut a thread."
order = "Face first."
[[caution]]
id = "eyes"
title = "Eyes"
text = "Wear glasses."
source = "common practice"
[[entry]]
id = "hand-tap"
family = "tap"
title = "Hand tap"
synonyms = ["taper tap"]
rake_angle = { low = "3 deg", usual = "5 deg", source = "common practice", note = "For steel." }
chamfer_relief_angle = { usual = "4 deg", source = "common practice" }
notes = "As shipped."
"""


@pytest.fixture
def shipped(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    folder = tmp_path / "shipped"
    folder.mkdir()
    (folder / "taps.toml").write_text(SHIPPED)
    monkeypatch.setattr(opening, "SHIPPED", folder)
    return folder


def with_shop(tmp_path: Path, text: str) -> Book:
    folder = tmp_path / "shop"
    folder.mkdir(exist_ok=True)
    (folder / "ours.toml").write_text("schema = 1\n" + text)
    return open_book(folder)


def hand_tap(book: Book) -> Entry:
    return book.entries["hand-tap"]


@pytest.mark.usefixtures("shipped")
def test_a_shop_entry_needs_only_what_it_changes(tmp_path: Path) -> None:
    book = with_shop(
        tmp_path, '[[entry]]\nid = "hand-tap"\nrake_angle = { usual = "8 deg", source = "shop" }\n'
    )
    entry = hand_tap(book)
    assert book.findings == ()
    assert (entry.family, entry.title, entry.notes, entry.synonyms) == (
        "tap",
        "Hand tap",
        "As shipped.",
        ("taper tap",),
    )
    assert entry.layer == "shop"
    assert entry.place.file.name == "ours.toml"
    assert entry.place.line == 2


@pytest.mark.usefixtures("shipped")
def test_a_value_tells_its_layer_and_what_it_replaced(tmp_path: Path) -> None:
    text = '[[entry]]\nid = "hand-tap"\n  rake_angle = { usual = "8 deg", source = "shop" }\n'
    ours = hand_tap(with_shop(tmp_path, text)).values["rake_angle"]
    assert ours.usual is not None
    assert (ours.usual.text, ours.layer, ours.citation.label) == ("8 deg", "shop", "shop")
    assert (ours.place.line, ours.place.column) == (4, 3)
    assert ours.replaces is not None
    assert ours.replaces.usual is not None
    assert (ours.replaces.usual.text, ours.replaces.layer, ours.replaces.note) == (
        "5 deg",
        "shipped",
        "For steel.",
    )


@pytest.mark.usefixtures("shipped")
def test_a_value_is_covered_as_a_whole_so_that_its_source_speaks_for_all_of_it(tmp_path: Path) -> None:
    ours = hand_tap(
        with_shop(tmp_path, '[[entry]]\nid = "hand-tap"\nrake_angle = { usual = "8 deg", source = "shop" }\n')
    )
    assert ours.values["rake_angle"].low is None
    assert ours.values["rake_angle"].note == ""


@pytest.mark.usefixtures("shipped")
def test_other_values_stay_shipped(tmp_path: Path) -> None:
    other = hand_tap(with_shop(tmp_path, '[[entry]]\nid = "hand-tap"\nnotes = "Ours."\n')).values[
        "chamfer_relief_angle"
    ]
    assert (other.layer, other.replaces) == ("shipped", None)


@pytest.mark.usefixtures("shipped")
@pytest.mark.parametrize(
    "line", ["rake_angle = 3,5 deg", 'rake_angle = { usual = "3 mm", source = "shop" }', "rake_angle = 7"]
)
def test_what_the_shop_wrote_wrongly_is_shown_as_unread_and_not_as_shipped(line: str, tmp_path: Path) -> None:
    book = with_shop(tmp_path, f'[[entry]]\nid = "hand-tap"\n{line}\n')
    ours = hand_tap(book).values["rake_angle"]
    assert ours.unread
    assert ours.first() is None
    assert ours.layer == "shop"
    assert ours.replaces is not None
    assert len(book.findings) == 1


@pytest.mark.usefixtures("shipped")
@pytest.mark.parametrize(
    "value",
    [
        '{ low = "3 deg", usual = "7", high = "9 deg", source = "shop" }',
        '{ low = "3 deg", usual = "4 mm", high = "9 deg", source = "shop" }',
        '{ low = 3, usual = "7 deg", source = "shop" }',
        '{ low = "3 deg", usaul = "7 deg", high = "9 deg", source = "shop" }',
    ],
)
def test_what_is_left_of_a_range_is_not_taken_for_the_usual_value(value: str, tmp_path: Path) -> None:
    book = with_shop(tmp_path, f'[[entry]]\nid = "hand-tap"\nrake_angle = {value}\n')
    ours = hand_tap(book).values["rake_angle"]
    assert ours.unread
    assert (ours.low, ours.usual, ours.high) == (None, None, None)
    assert ours.citation.label == "shop"
    assert len(book.findings) == 1


@pytest.mark.usefixtures("shipped")
@pytest.mark.parametrize(
    "lines",
    [
        ['low = "3 deg"', 'usual = "7 deg', 'high = "9 deg"', 'source = "shop"'],
        ["low = 3,5", 'usual = "7 deg"', 'source = "shop"'],
        ['usual = "7 deg"', 'source = = "shop"'],
    ],
)
def test_a_line_that_is_lost_in_the_table_of_a_value_leaves_that_value_unread(
    lines: list[str], tmp_path: Path
) -> None:
    table = "\n".join(
        ["[entry.rake_angle]", *lines, "[entry.land_width]", 'usual = "2 mm"', 'source = "shop"']
    )
    book = with_shop(tmp_path, f'[[entry]]\nid = "hand-tap"\n{table}\n')
    values = hand_tap(book).values
    assert values["rake_angle"].unread
    assert values["rake_angle"].first() is None
    assert values["land_width"].first() is not None
    (finding,) = book.findings
    assert finding.way.startswith("hand-tap.rake_angle.")


@pytest.mark.usefixtures("shipped")
def test_a_table_that_cannot_be_read_hides_the_shipped_numbers_but_not_the_entry(tmp_path: Path) -> None:
    book = with_shop(
        tmp_path, '[[entry] x\nid = "hand-tap"\nrake_angle = { usual = "8 deg", source = "shop" }\n'
    )
    entry = hand_tap(book)
    assert entry.unread
    assert entry.title == "Hand tap"
    assert {value.unread for value in entry.values.values()} == {True}
    assert len(book.findings) == 1


@pytest.mark.usefixtures("shipped")
def test_families_and_cautions_are_layered_key_by_key_too(tmp_path: Path) -> None:
    book = with_shop(
        tmp_path,
        '[[family]]\nid = "tap"\norder = "Point first."\n[[caution]]\nid = "eyes"\ntext = "Goggles."\n',
    )
    family, caution = book.families["tap"], book.cautions["eyes"]
    assert (family.title, family.texts["order"], family.layer) == ("Taps", "Point first.", "shop")
    assert (caution.text, caution.title, caution.citation.label) == ("Goggles.", "Eyes", "common practice")
    assert book.findings == ()


@pytest.mark.usefixtures("shipped")
def test_the_shops_own_keys_are_kept_as_they_are_and_never_questioned(tmp_path: Path) -> None:
    entry = hand_tap(
        with_shop(tmp_path, '[[entry]]\nid = "hand-tap"\nx-bin = { row = 3, box = ["a", 1.5] }\n')
    )
    assert entry.extra == {"x-bin": {"row": 3, "box": ["a", 1.5]}}


@pytest.mark.usefixtures("shipped")
def test_two_files_of_the_shop_with_the_same_id_are_told_of_and_the_first_counts(tmp_path: Path) -> None:
    shop = tmp_path / "shop"
    shop.mkdir()
    (shop / "b.toml").write_text('schema = 1\n[[entry]]\nid = "hand-tap"\nnotes = "second"\n')
    (shop / "a.toml").write_text('schema = 1\n[[entry]]\nid = "hand-tap"\nnotes = "first"\n')
    book = open_book(shop)
    assert hand_tap(book).notes == "first"
    assert [(finding.place.file.name, finding.way) for finding in book.findings] == [
        ("b.toml", "hand-tap.id")
    ]


@pytest.mark.usefixtures("shipped")
def test_without_a_shop_folder_the_shipped_book_opens_clean() -> None:
    assert hand_tap(open_book()).layer == "shipped"
    assert open_book(Path("/nowhere/at/all")).findings == ()


def test_the_shipped_book_has_no_problem() -> None:
    assert [str(finding) for finding in open_book().findings] == []
