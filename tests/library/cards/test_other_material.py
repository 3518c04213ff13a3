"""A card begun from an entry for another material than it says: whose values it wants, and where the right ones are."""

from __future__ import annotations

import pytest

from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.issues import issues_of
from library.cards.job import work_out
from library.cards.model import Card
from library.cards.starting import from_entry

BOOK = open_book()
PLAIN = "countersink-multi-flute-90-plain-steel"


def told(card: Card) -> list[tuple[str, str]]:
    found = issues_of(work_out(card, BOOK))
    return [(one.way, one.text) for one in found if "work material is" in one.text]


def begun(entry: str, material: str) -> Card:
    return edited(from_entry(BOOK, BOOK.entries[entry]), "tool.work_material", material)


@pytest.mark.parametrize("material", ["stainless-austenitic", "Stainless", "Stainless steel, austenitic"])
def test_the_relief_of_another_material_is_told_with_the_entry_that_the_book_has_for_it(
    material: str,
) -> None:
    ((way, said),) = told(begun(PLAIN, material))
    assert way == "wanted.cone_relief_angle"
    assert "This is of 'Multi-flute countersink, 90 degrees, plain steel'" in said
    assert "the book has 'Single-flute countersink, 90 degrees, austenitic stainless steel'" in said


@pytest.mark.parametrize(
    ("entry", "material"),
    [
        (PLAIN, "plain-steel"),
        (PLAIN, "mild steel"),
        (PLAIN, ""),
        (PLAIN, "what the foundry sends"),
        ("countersink-rose", "stainless-austenitic"),
    ],
)
def test_nothing_is_told_of_its_own_material_of_none_of_an_unknown_one_and_of_a_tool_for_any(
    entry: str, material: str
) -> None:
    assert told(begun(entry, material)) == []


def test_once_a_person_has_said_what_it_shall_be_nothing_is_told() -> None:
    card = begun(PLAIN, "stainless-austenitic")
    kept = [key for key in ("cone_relief_angle", "rake_angle") if key in card.wanted]
    for key in kept:
        card = edited(edited(card, f"wanted.{key}", "11 deg"), f"wanted.{key}.reason", "tried")
    assert told(card) == []
