"""Which surface a calculation works on, and how its relief is called there.

A calculation on a relief has the input ``surface``, or works always on one. Its ``relief_angle`` is the relief of that
surface in that surface's view. What is typed comes first: the surface itself, or the relief of one by its own
key. Otherwise it is the first of the surfaces that calculation and family share whose relief the entry gives, and
where it gives none the first of them; in the order of the calculation where that has one, else of the family.
Nothing is ever filled from one surface to another.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from geometry.calculation import Calculation
from geometry.edge.views import PLANES
from geometry.quantities import Quantity, quantity
from geometry.surfaces import SURFACES, Surface, surface_of_relief
from library.book.model import Book, Entry

FIELD = "surface"
"""The input that says the surface."""

LARGEST_FEED = "largest_feed"
"""A feed that holds for the surface on which it was found."""

LANDS = {"end": "end teeth"}
"""Surfaces whose land is another than that on the outside of the tool, and what it is the land of."""

RELIEF, SECOND_RELIEF = "relief_angle", "secondary_relief_angle"
"""The inputs that hold the relief of its first and second facet."""

CALLED = {
    RELIEF: "Relief",
    SECOND_RELIEF: "Second relief",
    "relief_lower_limit": "Least relief",
    "relief_upper_limit": "Most relief",
}
"""How a relief of a surface, and what will do of it, begins where the surface and its view are told."""


LAND = "land_width"
"""How far behind the edge the heel lies; on some surfaces it has to be said which land of the tool that is."""

LAND_OF_THE_POINT = {
    "lip": "Of the flank, from the lip at its outer corner back to the heel; not the land of the body.",
    "end": "Of the end tooth, from its edge at the outer corner back to the heel; not the land of the body.",
}
"""Where the land is measured, by surface, on tools whose body has a land too."""


def has_surface(sheet: Calculation) -> bool:
    """Whether a calculation works on a surface of the tool."""
    return sheet.field(FIELD) is not None or len(sheet.surfaces) == 1


def only_surface(sheet: Calculation) -> str:
    """The surface of a calculation that asks for none, because it works on one alone; empty for any other.

    Example:
        >>> from geometry.calculations import calculation
        >>> only_surface(calculation("drill-point")), only_surface(calculation("relief-drop"))
        ('lip', '')
    """
    served = sheet.surfaces or sheet.belongs_on
    return served[0] if len(served) == 1 else ""


def choices(sheet: Calculation, entry: Entry | None, book: Book | None) -> tuple[str, ...]:
    """The surfaces to choose from: those that calculation and family share, else those of the calculation."""
    family = book.families.get(entry.family) if book is not None and entry is not None else None
    accepted = sheet.surfaces or tuple(SURFACES)
    if family is None or not family.surfaces:
        return accepted
    ordered = sheet.surfaces or family.surfaces
    return tuple(one for one in ordered if one in family.surfaces) or accepted


def first(sheet: Calculation, entry: Entry | None, book: Book | None) -> str:
    """The surface of a tool when nobody says which; empty where its family does not tell."""
    shared = choices(sheet, entry, book)
    if sheet.field(FIELD) is None:
        return sheet.surfaces[0] if len(sheet.surfaces) == 1 else ""
    family = book.families.get(entry.family) if book is not None and entry is not None else None
    if entry is None or family is None or not set(shared) <= set(family.surfaces):
        return ""
    given = (one for one in shared if SURFACES[one].relief_key in entry.values)
    return next(given, shared[0])


def book_key(key: str, surface: str) -> str:
    """The key of the book that may fill an input, for a surface; empty where none may.

    Example:
        >>> book_key("secondary_relief_angle", "cone"), book_key("relief_angle", ""), book_key("flutes", "cone")
        ('second_cone_relief_angle', '', 'flutes')
    """
    if key not in (RELIEF, SECOND_RELIEF):
        return key
    if surface not in SURFACES:
        return ""
    return SURFACES[surface].relief_key if key == RELIEF else SURFACES[surface].second_key


def belongs(key: str, surface: str) -> Surface | None:
    """The surface that an input belongs to: its reliefs, and the angle at which its edge lies."""
    found = SURFACES.get(surface)
    return found if found is not None and key in (RELIEF, SECOND_RELIEF, found.edge_key) else None


def row_of(key: str, surface: str) -> Quantity:
    """The row of the vocabulary that tells how an input is measured: that of the surface's own relief, and which land it is.

    Example:
        >>> row_of("land_width", "lip").measured[:48]
        'Of the flank, from the lip at its outer corner b'
    """
    row = quantity(book_key(key, surface) or key)
    if key != LAND or surface not in LAND_OF_THE_POINT:
        return row
    return replace(row, measured=f"{LAND_OF_THE_POINT[surface]} {row.measured}")


def title_of(key: str, surface: str) -> str:
    """The title of a quantity; of a relief with its surface and its view, of a feed with the surface that it clears.

    The land behind teeth on the end of a tool is told from that on its outside.

    Example:
        >>> title_of("relief_angle", "cone"), title_of("flutes", "cone"), title_of("land_width", "end")
        ('Relief of the cone, square to the edge', 'Flutes', 'Land width, end teeth')
        >>> title_of("relief_lower_limit", "cone")
        'Least relief of the cone, square to the edge'
    """
    one = SURFACES.get(surface)
    if one is not None and key == LARGEST_FEED:
        return f"Largest feed: {one.title}"
    if key == "land_width" and surface in LANDS:
        return f"{quantity(key).title}, {LANDS[surface]}"
    if one is None or key not in CALLED:
        return quantity(key).title
    return f"{CALLED[key]} of the {one.title}, {PLANES[one.view]}"


def own_keys(sheet: Calculation, typed: Mapping[str, str]) -> tuple[dict[str, str], list[tuple[str, str]]]:
    """Take a relief typed by its surface's own key as the relief of that surface.

    Args:
        sheet: the calculation; one that does not work on a surface takes such a key as any other.
        typed: what was typed, by key.

    Returns:
        The texts with ``surface`` and the reliefs in the places of the calculation, and for each key
        that does not go with the others a sentence.
    """
    texts = dict(typed)
    wrong: list[tuple[str, str]] = []
    if not has_surface(sheet):
        return texts, wrong
    for key in typed:
        one = surface_of_relief(key)
        place = RELIEF if one is not None and key == one.relief_key else SECOND_RELIEF
        if (
            one is None
            or sheet.field(key) is not None
            or sheet.field(place) is None
            or not typed[key].strip()
        ):
            continue
        del texts[key]
        said = texts.get(FIELD, "").strip() or (sheet.surfaces[0] if sheet.field(FIELD) is None else "")
        if said and said != one.key:
            wrong.append(
                (
                    key,
                    f"{key} is the relief of the {one.title}, and the surface is {said}; "
                    "give the relief of that one.",
                )
            )
        elif texts.get(place, "").strip():
            wrong.append((key, f"{key}: {place} says the same; give one of them."))
        else:
            texts[place] = typed[key]
            if sheet.field(FIELD) is not None:
                texts[FIELD] = one.key
    return texts, wrong
