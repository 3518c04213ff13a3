"""The list of a large book is the same whether its files were parsed or only looked over."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from library.book import book_reader, opening
from library.book.model import Book
from library.book.opening import open_book, open_for_list
from library.book.plain_entries import plain_rows
from library.demo import BOOK

BAD = sorted((Path(__file__).parent / "bad").glob("*.toml"))
PLAIN = """schema = 1
# The shop's own.

[[entry]]
id = "own-{n}"
family = "tap"
title = "Own tap {n}"  # for the winch
work_material = "bronze"
rake_angle = {{ low = "3 deg", usual = "5 deg", source = "shop" }}
synonyms = ["one", "two"]
notes = \"\"\"
title = "not this one"
\"\"\"

[entry.thread_relief_angle]
usual = "4 deg"
source = "shop"
"""
LINES = st.sampled_from(
    [
        'id = "own-a"', 'id = "spiral-tap-bronze"', "id = 'own-b'", "id = 3", 'id = ""', '"id" = "own-c"', 'title = "A tap"',
        'title = "A \\u0041 tap"', "title = 'B tap'", 'title = ""', 'title = """C tap"""', "title = \"\"\"\nD tap\"\"\"",
        'title = "tab\there"', 'title = "\u202eturned"', 'title = "unclosed', 'family = "tap"', "family = 1", 'family = "none"',
        'work_material = "bronze"', 'work_material = ["bronze"]', 'notes = """\ntitle = "E"\n"""', 'notes = """open',
        'rake_angle = "5 deg"', 'rake_angle = { usual = "5 deg", usual = "6 deg" }', "rake_angle = 5 deg", "x-own = 007",
        "[entry.rake_angle]", 'usual = "5 deg"', "[[entry]]", "[entry]", "[[family]]", "[[entry]] # again", "# remark", "",
        "<<<<<<< mine", "entry = 3", "schema = 2", "= 1", "\u00e9 = 1", "[entry.title]",
    ]
)  # fmt: skip


@pytest.fixture(autouse=True)
def every_book_is_large(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(opening, "LARGE", 0)


def _rows(book: Book) -> list[tuple[object, ...]]:
    """What a list shows of each entry; of the shop's own the whole entry too."""
    return [
        (row.id, row.title, row.family, row.work_material, row.layer, book.entries.get(row.id) if row.layer == "shop" else None)
        for row in book.rows
    ]  # fmt: skip


def _same_as_parsed(shop: Path) -> None:
    listed = open_for_list(shop)
    assert _rows(listed) == _rows(open_book(shop, afresh=True))
    assert _rows(open_for_list(shop)) == _rows(listed)


def _laid(folder: Path, **files: str) -> Path:
    folder.mkdir(exist_ok=True)
    for name, text in files.items():
        (folder / f"{name}.toml").write_text(text, encoding="utf-8", errors="surrogateescape")
    return folder


def test_plain_files_are_not_parsed_and_their_rows_are_the_same(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    second = PLAIN.format(n=2).partition("\n\n")[2]
    shop = _laid(tmp_path / "shop", a=f"{PLAIN.format(n=1)}\n{second}", b=PLAIN.format(n=3))
    read = vars(book_reader)["_read"]

    def only_shipped(path: Path, *rest: object) -> object:
        assert not path.is_relative_to(shop), f"{path.name} was parsed"
        return read(path, *rest)

    with monkeypatch.context() as patch:
        patch.setattr(book_reader, "_read", only_shipped)
        listed = open_for_list(shop)
    own = [(row.id, row.title) for row in listed.rows if row.layer == "shop"]
    assert own == [("own-1", "Own tap 1"), ("own-2", "Own tap 2"), ("own-3", "Own tap 3")]
    assert listed.entries["own-3"].values["rake_angle"].usual is not None
    _same_as_parsed(shop)


def test_the_demonstration_s_list_is_the_same() -> None:
    _same_as_parsed(BOOK)


@pytest.mark.parametrize("notes", ['"""\ntitle = "Not this"\n"""', '"""\nid = "nor-this"\n""" # """'])
def test_lines_inside_a_long_text_are_not_taken_for_those_of_the_entry(tmp_path: Path, notes: str) -> None:
    text = f'schema = 1\n[[entry]]\nid = "own-a"\nfamily = "tap"\nnotes = {notes}\nsynonyms = ["b"]\n'
    assert plain_rows(text, "shop", {}) is not None
    _same_as_parsed(_laid(tmp_path / "shop", a=text))


def test_a_plain_entry_over_a_shipped_one_takes_from_it_what_it_does_not_say(tmp_path: Path) -> None:
    name = open_book(None).rows[0].id
    _same_as_parsed(_laid(tmp_path / "shop", a=f'schema = 1\n\n[[entry]]\nid = "{name}"\nnotes = "Ours."\n'))


@pytest.mark.depth
@pytest.mark.parametrize("one_in", [4, pytest.param(1, marks=pytest.mark.depth)])
def test_every_bad_file_lists_the_same(tmp_path: Path, one_in: int) -> None:
    assert len(BAD) > 20
    for number, path in enumerate(BAD[::one_in]):
        shop = tmp_path / str(number)
        shop.mkdir()
        (shop / "own.toml").write_bytes(path.read_bytes())
        (shop / "plain.toml").write_text(PLAIN.format(n=1))
        listed = open_for_list(shop)
        assert _rows(listed) == _rows(open_book(shop)), path.name


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.lists(LINES, max_size=12), st.lists(LINES, max_size=6), st.sampled_from(["\n", "\r\n"]))
def test_whatever_lines_a_file_has_its_list_is_the_same(
    tmp_path_factory: pytest.TempPathFactory, lines: list[str], more: list[str], end: str
) -> None:
    begun = ["schema = 1", "[[entry]]", 'id = "own-x"', 'family = "tap"']
    text = end.join([*begun, *lines, "", "[[entry]]", 'id = "own-y"', *more, ""])
    shop = tmp_path_factory.mktemp("shop")
    (shop / "own.toml").write_bytes(text.encode())
    assert _rows(open_for_list(shop)) == _rows(open_book(shop)), text


def test_a_small_book_is_read_in_full_so_that_the_screens_have_it_at_once(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(opening, "LARGE", 1 << 20)
    monkeypatch.setattr(
        book_reader, "plain_rows", lambda *args: pytest.fail("a small book was only looked over")
    )
    shop = _laid(tmp_path / "shop", a=PLAIN.format(n=1))
    assert ("own-1", "Own tap 1") in [(row.id, row.title) for row in open_for_list(shop).rows]


def test_a_changed_file_is_looked_over_again(tmp_path: Path) -> None:
    shop = _laid(tmp_path / "shop", a=PLAIN.format(n=1))
    os.utime(shop / "a.toml", (1_700_000_000, 1_700_000_000))
    open_for_list(shop)
    _laid(shop, a=PLAIN.format(n=1).replace("Own tap", "Our tap"))
    os.utime(shop / "a.toml", (1_700_000_000, 1_700_000_000))
    assert "Our tap 1" in [row[1] for row in _rows(open_for_list(shop))]


@pytest.mark.parametrize(
    "spoil",
    ['title = "a\\nb"', "title = 'x'", 'title = "x"\ntitle = "y"', "id = 1", 'title = """x"""', "[entry.title]", "[[family]]",
     "[entry]", "title = x", "rake_angle = 5 deg", 'title = "\u200bx"'],
)  # fmt: skip
def test_what_can_be_read_in_two_ways_is_not_plain(spoil: str) -> None:
    assert plain_rows('schema = 1\n[[entry]]\nid = "a"\nfamily = "tap"\n', "shop", {}) is not None
    text = f'schema = 1\n[[entry]]\nid = "a"\nfamily = "tap"\n{spoil}\n'
    found = plain_rows(text, "shop", {})
    assert found is None or spoil == 'title = """x"""'
