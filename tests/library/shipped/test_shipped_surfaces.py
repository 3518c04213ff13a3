"""Every relief of the shipped book belongs to one surface, and every family says which surfaces it has."""

from __future__ import annotations

import pytest

from geometry.surfaces import SURFACES, surface_of_relief
from library.book.model import Book
from library.book.opening import open_book
from library.book.retired import OF_NO_SURFACE


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book()


# Common practice, no source: a tap is sharpened on its chamfer, a machine reamer on its bevel lead.
@pytest.mark.parametrize(
    ("family", "first"),
    [
        ("tap", "chamfer"),
        ("countersink", "cone"),
        ("step-drill", "shoulder"),
        ("twist-drill", "lip"),
        ("reamer", "bevel"),
        ("counterbore", "end"),
        ("centre-drill", "lip"),
        ("subland-drill", "shoulder"),
    ],
)
def test_a_family_names_the_surface_that_is_mostly_ground_first(book: Book, family: str, first: str) -> None:
    assert book.families[family].surfaces[0] == first


def test_every_family_has_surfaces_and_only_known_ones(book: Book) -> None:
    for family in book.families.values():
        assert family.surfaces, family.id
        assert set(family.surfaces) <= set(SURFACES), family.id


def test_no_relief_of_the_book_is_without_a_surface(book: Book) -> None:
    for entry in book.entries.values():
        assert not set(OF_NO_SURFACE) & set(entry.values), entry.id


def test_an_entry_gives_reliefs_only_of_surfaces_that_its_family_has(book: Book) -> None:
    told = 0
    for entry in book.entries.values():
        for key in entry.values:
            surface = surface_of_relief(key)
            if surface is not None:
                told += 1
                assert surface.key in book.families[entry.family].surfaces, (entry.id, key)
    assert told > 100


@pytest.mark.parametrize(
    ("entry", "key", "degrees"),
    [
        ("countersink-multi-flute-82-plain-steel", "cone_relief_angle", 8),
        ("tap-hand-plain-steel", "chamfer_relief_angle", 6),
        ("twist-drill-ground-down", "land_relief_angle", 10),
        ("twist-drill-ground-down", "lip_relief_angle", 12),
        ("reamer-hand-plain-steel", "second_land_relief_angle", 15),
        ("deburring-cone-any", "cone_relief_angle", 6),
        ("step-drill-straight-flute-sheet-metal", "shoulder_relief_angle", 8),
        ("counterbore-grey-iron", "land_relief_angle", 7),
    ],
)
def test_a_value_kept_its_number_when_it_was_given_its_surface(
    book: Book, entry: str, key: str, degrees: int
) -> None:
    """The numbers are those that the book had under one common name for all surfaces."""
    usual = book.entries[entry].values[key].usual
    assert usual is not None
    assert usual.text == f"{degrees} deg"


def test_a_relief_that_no_source_gives_a_view_of_says_so(book: Book) -> None:
    """Reliefs at the chamfer of a tap were written down without one."""
    taps = [entry for entry in book.entries.values() if "chamfer_relief_angle" in entry.values]
    assert len(taps) > 30
    for entry in taps:
        assert "does not say in which view" in entry.values["chamfer_relief_angle"].note, entry.id
