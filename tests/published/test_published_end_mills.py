"""What the book says of end mills and insert taps, against the rows of their documents, typed in a second time."""

from __future__ import annotations

import math

import pytest

from library.book.model import Book, Value
from library.book.opening import open_book


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book()


def span(book: Book, entry: str, key: str, document: str) -> tuple[float, float]:
    """What one document says for a value of an entry, in degrees or as a count: both ends, or its one figure twice."""
    value = book.entries[entry].values[key]
    (found,) = (one for one in (value, *value.also) if one.citation.document == document)
    return ends(found, not key.endswith("threads"))


def ends(value: Value, is_angle: bool) -> tuple[float, float]:
    numbers = [one.number for one in (value.low, value.usual, value.high) if one is not None]
    turned = [round(math.degrees(one), 6) if is_angle else one for one in numbers]
    return turned[0], turned[-1]


# A tool maker's catalogue of 2011, data for regrinding solid carbide mills, both rows of each kind in degrees:
# radial rake, radial primary relief, dish, axial primary relief, axial secondary relief.
@pytest.mark.parametrize(
    ("entry", "rows"),
    [
        ("end-mill-carbide-two-flute", ((12, 13, 2.5, 10, 17), (10, 12, 2, 10, 17))),
        ("slot-drill-carbide", ((12, 13, 2.5, 10, 17), (10, 12, 2, 10, 17))),
        ("end-mill-carbide-three-flute", ((12, 13, 2, 8, 16), (10, 12, 1.5, 7, 16))),
        ("end-mill-carbide-four-flute", ((11, 13.5, 1.5, 8, 16), (10, 12, 1.5, 7, 16))),
        ("end-mill-carbide-six-flute", ((10, 11, 1.5, 7, 16), (10, 10, 1.5, 7, 16))),
        (
            "end-mill-carbide-ball-nose",
            ((12, 11, None, 11, 22), (11, 11, None, 11, 22), (12, 11, None, 11, 23)),
        ),
        ("end-mill-carbide-corner-radius", ((12, 13.5, 3, 8, 17), (11, 13.5, 3, 8, 17), (10, 12, 3, 8, 17))),
        ("end-mill-roughing", ((12, 10, None, 7, 17), (11, 9, None, 7, 17))),
    ],
)
def test_carbide_mills_span_the_rows_of_the_catalogue(
    book: Book, entry: str, rows: tuple[tuple[float | None, ...], ...]
) -> None:
    keys = ("rake_angle", "land_relief_angle", "dish_angle", "end_relief_angle", "second_end_relief_angle")
    for key, column in zip(keys, zip(*rows, strict=True), strict=True):
        printed = [one for one in column if one is not None]
        if printed:
            assert span(book, entry, key, "end-mill-regrind-2011") == (min(printed), max(printed)), key
        else:
            assert key not in book.entries[entry].values


# TC 9-524, chapter 5: cutters under 3 in, 7 degrees for hard and 12 for soft materials; end teeth about 2.
@pytest.mark.parametrize(
    ("entry", "key", "degrees"),
    [
        ("end-mill-plain-steel", "land_relief_angle", 7),
        ("end-mill-aluminium-wrought", "land_relief_angle", 12),
        ("end-mill-brass-free-cutting", "land_relief_angle", 12),
        ("end-mill-plain-steel", "end_relief_angle", 2),
        ("slot-drill-plain-steel", "end_relief_angle", 2),
    ],
)
def test_steel_cutters_have_the_army_manuals_clearances(
    book: Book, entry: str, key: str, degrees: float
) -> None:
    assert span(book, entry, key, "army-tc-9-524") == (degrees, degrees)


# ASME B18.29.2M as given on an engineering page: 4 pitches for the chamfer of a plug tap, 2 for that of a bottoming tap.
@pytest.mark.parametrize(
    ("entry", "threads"),
    [("insert-tap-plug-plain-steel", 4), ("insert-tap-bottoming-aluminium-wrought", 2)],
)
def test_insert_taps_have_the_chamfers_of_the_drilling_depths(book: Book, entry: str, threads: int) -> None:
    assert span(book, entry, "chamfer_threads", "helical-insert-page") == (threads, threads)
