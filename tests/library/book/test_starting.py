"""A new book explains itself, is clean, and covers nothing that was there."""

from __future__ import annotations

import resource
import tomllib
from collections.abc import Callable
from pathlib import Path

import pytest

from library.book.opening import open_book
from library.book.starting import NotStarted, new_book
from library.calc.by_family import sheets_for
from library.demo import lay_out


def test_a_new_book_is_clean_and_says_nothing_yet(tmp_path: Path) -> None:
    made = new_book(tmp_path / "our" / "book")
    assert sorted(path.name for path in made) == [".gitattributes", ".gitignore", "ours.toml"]
    book = open_book(tmp_path / "our" / "book")
    assert book.findings == ()
    assert {row.layer for row in book.rows} == {"shipped"}


def test_the_example_in_the_starter_is_good_when_its_remarks_are_taken_away(tmp_path: Path) -> None:
    (starter,) = (path for path in new_book(tmp_path / "book") if path.suffix == ".toml")
    lines = starter.read_text().splitlines()
    begin = next(number for number, line in enumerate(lines) if line == "# [[entry]]")
    end = next(number for number, line in enumerate(lines) if line.startswith("# A measure stands"))
    source = next(number for number, line in enumerate(lines) if line == "# [[source]]")
    family = lines.index("# [[family]]")
    example = lines[begin : end - 1] + lines[source : source + 4] + lines[family:]
    text = "schema = 1\n" + "\n".join(line.removeprefix("# ").removeprefix("#") for line in example) + "\n"
    assert len(tomllib.loads(text)["entry"][0]) == 10
    starter.write_text(text)
    book = open_book(starter.parent)
    assert [str(finding) for finding in book.findings] == []
    assert book.entries["bronze-bushing-tap"].values["rake_angle"].citation.label == "shop"
    assert sheets_for(book.families["flat-drill"]) == sheets_for(book.families["twist-drill"])


def test_the_entry_that_the_starter_names_is_in_the_shipped_book(tmp_path: Path) -> None:
    (starter,) = (path for path in new_book(tmp_path / "book") if path.suffix == ".toml")
    named = next(line.split()[-1] for line in starter.read_text().splitlines() if "heelclear show" in line)
    assert named in open_book().entries


def test_a_folder_with_a_book_is_left_as_it_is(tmp_path: Path) -> None:
    (tmp_path / "taps").mkdir()
    (tmp_path / "taps" / "ours.toml").write_text("schema = 1\n")
    with pytest.raises(NotStarted, match=r"There is a book in .* already\. Name another folder\."):
        new_book(tmp_path)
    assert sorted(path.name for path in tmp_path.rglob("*")) == ["ours.toml", "taps"]


def test_files_of_git_that_are_there_stay(tmp_path: Path) -> None:
    (tmp_path / ".gitignore").write_text("mine\n")
    assert [path.name for path in new_book(tmp_path)] == ["ours.toml", ".gitattributes"]
    assert (tmp_path / ".gitignore").read_text() == "mine\n"


def test_a_file_in_the_way_is_told_of(tmp_path: Path) -> None:
    (tmp_path / "book").write_text("")
    with pytest.raises(NotStarted, match="is a file"):
        new_book(tmp_path / "book")
    with pytest.raises(NotStarted, match="could not be begun: Not a directory"):
        new_book(tmp_path / "book" / "deeper")


@pytest.mark.parametrize("begin", [new_book, lay_out])
def test_a_full_disk_leaves_no_half_written_file(begin: Callable[[Path], list[Path]], tmp_path: Path) -> None:
    before = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (50, before[1]))
    try:
        with pytest.raises(NotStarted, match="Name another folder"):
            begin(tmp_path / "book")
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, before)
    assert [path for path in tmp_path.rglob("*") if path.is_file()] == []
    assert begin(tmp_path / "book")
