"""A book with problems by the thousand: every one is counted, and as many are told as anybody can want."""

from __future__ import annotations

from pathlib import Path

import pytest

from library.book import book_reader, diagnostics
from library.book.opening import open_book


def _with_problems(folder: Path, count: int, mistake: str) -> Path:
    """A shop's file with so many entries, each with one problem."""
    folder.mkdir(exist_ok=True)
    entries = (
        f'\n[[entry]]\nid = "odd-{number}"\nfamily = "tap"\ntitle = "Odd {number}"\n{mistake}\n'
        for number in range(count)
    )
    (folder / "odd.toml").write_text("schema = 1\n" + "".join(entries))
    return folder


def _own(folder: Path) -> list[str]:
    found = open_book(folder, afresh=True).findings
    return [one.where for one in found if one.place.file.is_relative_to(folder)]


@pytest.mark.parametrize("mistake", ['rake_angle = "5"', "rake_angle = 5 deg"], ids=["no unit", "no TOML"])
@pytest.mark.parametrize("count", [1200, pytest.param(10_000, marks=pytest.mark.depth)])
def test_every_problem_is_told(tmp_path: Path, count: int, mistake: str) -> None:
    told = _own(_with_problems(tmp_path / "shop", count, mistake))
    assert told == [f"odd-{number}" for number in range(count)]


def test_problems_beyond_those_that_are_told_are_counted_all_the_same(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    for module in (diagnostics, book_reader):
        monkeypatch.setattr(module, "MOST_FINDINGS", 50)
    shop = _with_problems(tmp_path / "shop", 80, 'rake_angle = "5"')
    for found in (open_book(shop, afresh=True), open_book(shop)):
        own = [one for one in found.findings if one.place.file.is_relative_to(shop)]
        (last,) = [one for one in own if not one.where]
        assert last.wrong == "There are 30 more problems in this file than the 50 that are told here."
        assert sum(one.counts for one in own) == 80
        assert found.problem_count == 80 + sum(one.counts for one in found.findings if one not in own)
