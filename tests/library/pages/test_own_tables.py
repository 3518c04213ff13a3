"""Tables of the book that are no entries, each as a page to be read."""

from __future__ import annotations

from pathlib import Path

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.pages.as_text import as_text
from library.pages.own_tables import own_table_page
from library.pages.reader import Reader

YARD = Path(__file__).parents[3] / "library/demo/ferry-yard"


@pytest.fixture(scope="module")
def yard() -> Book:
    return open_book(YARD)


def text_of(book: Book, array: str, name: str) -> str:
    page = own_table_page(book, array, name)
    assert page is not None
    return " ".join(as_text(page, Reader(100)).split())


@pytest.mark.parametrize(
    ("array", "name", "words"),
    [
        ("symptom", "reamer-chatters-spacing", ("TOOLS Reamers.", "LOOK AT How the teeth are spaced", "page 541", "Other causes of it LOOK AT The relief behind the land", "VALUE Land relief: less.")),
        ("symptom", "drill-drifts", ("Twist drills, Stub drills", "ALSO wanders")),
        ("family", "reamer", ("FAILS It wears at the outer corner", "KNOWN Chatters, Cuts large")),
        ("setup", "tap-chamfer-cam", ("FOR Taps, chamfer, cam.", "HOLD Between centres", "CHECK Indicator on the chamfer")),
        ("recommended_wheel", "hss-relief", ("GRINDS relief of teeth", "GRADE Soft, H to K", "page 284")),
        ("unsuited_wheel", "diamond-on-steel", ("WATCH Hot steel", "TAKE Take aluminium oxide")),
        ("machine", "grey-grinder", ("DIVIDES 40 turns", "SPEEDS 2800 rpm", "WHEEL HEAD one division is 0.01 mm", "The shop's own (grey-grinder).")),
        ("wheel", "white-cup-100", ("RATED 25 m/s", "SIZE 98 mm")),
        ("thread", "m12", ("OUTSIDE 12 mm", "PITCH 1.75 mm", "DRILL 10.2 mm or 10.3 mm", "SOURCE ISO 261")),
    ],
)  # fmt: skip
def test_a_table_is_read_as_a_page(yard: Book, array: str, name: str, words: tuple[str, ...]) -> None:
    text = text_of(yard, array, name)
    assert [one for one in words if one not in text] == []


def test_a_wheel_without_a_rating_says_so_first(tmp_path: Path) -> None:
    (tmp_path / "w.toml").write_text('schema = 1\n\n[[wheel]]\nid = "bare"\ntitle = "Bare"\n')
    assert "RATED None is written down." in text_of(open_book(tmp_path), "wheel", "bare")


def test_every_table_of_the_book_is_a_page(yard: Book) -> None:
    arrays = ("symptom", "setup", "recommended_wheel", "unsuited_wheel", "machine", "wheel", "thread")
    tables = [(array, name) for array in arrays for name in yard.more.get(array, {})]
    assert len(tables) > 100
    assert [one for one in tables if own_table_page(yard, *one) is None] == []
