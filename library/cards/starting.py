"""Make a new card: from an entry of the book, from an earlier card, or empty."""

from __future__ import annotations

import re
from dataclasses import replace

from geometry.fit.hole import CLASSES
from geometry.sentences import Kind
from library.book.bands import entry_at
from library.book.model import Book, Entry, Value
from library.calc.by_family import is_threaded
from library.calc.citation import briefly
from library.calc.of_several import DIAMETER, one_of
from library.calc.ranges import is_range, said
from library.cards.chosen import chosen
from library.cards.model import Card, Setting, Wanted
from library.cards.shall_be import DROPS
from library.equipment.model import machines, the_only_one, wheels
from library.search.along import Along
from library.search.sizes import Size
from library.units.read import UnitError, read
from library.units.system import METRIC

OF_A_HOLE = "reamer-size"
"""The calculation that asks for the class of the hole."""

SOUGHT = "sought with this angle"
"""Why the angle of a tool is wanted otherwise than the book has it, where it was found by another one."""

HOLE_CLASS = "hole_tolerance"
"""The class of the hole, among what that calculation asks for."""


def empty(book: Book, family: str = "", units: str = "mm") -> Card:
    """A card with nothing on it but what goes without saying: the only machine and the only wheel of the shop.

    Args:
        book: with the shop's machines and wheels.
        family: the id of the tool's family, where it is known.
        units: ``mm`` or ``in``.
    """
    return Card(
        family=family, units=units, machine=the_only_one(machines(book)), wheel=the_only_one(wheels(book))
    )


def from_entry(book: Book, entry: Entry, units: str = "mm", size: Size | None = None) -> Card:
    """A card that wants what an entry recommends; each value with its source, as the book has it today.

    A later change of the book does not change the card.

    Args:
        book: gives the titles of the documents that are cited.
        entry: to begin from.
        units: ``mm`` or ``in``.
        size: of the tool, where it is known: of a value with bands that of the size is taken.
    """
    wanted = _wanted(book, entry, units, size)
    card = empty(book, entry.family, units)
    return replace(
        card, entry=entry.id, wanted=wanted, tool=replace(card.tool, work_material=entry.work_material)
    )


def for_its_size(card: Card, before: Card, book: Book) -> Card:
    """A card whose size was typed, with what the book has for that size; what a person has changed stays.

    Args:
        card: with the size.
        before: the same card before.
        book: as it is today.
    """
    now, then = _size_on(card), _size_on(before)
    entry = book.entries.get(card.entry) if now != then else None
    if entry is None or not any(value.bands for value in entry.values.values()):
        return card
    old, new = (_wanted(book, entry, card.units, size) for size in (then, now))
    wanted = {
        key: new[key] if one == old.get(key) and key in new else one for key, one in card.wanted.items()
    }
    return replace(card, wanted=wanted)


def _size_on(card: Card) -> Size | None:
    """The size of the tool on a card, or its thread."""
    if card.tool.size.strip():
        return Size(card.tool.size.strip())
    return Size(card.tool.thread.strip(), True) if card.tool.thread.strip() else None


def _of_the_tool(book: Book, entry: Entry, size: Size | None) -> Size | None:
    """A size that says the diameter of the tool of an entry; nothing where it is the thread of another thing."""
    is_its_own = size is None or not size.is_thread or is_threaded(book.families.get(entry.family))
    return size if is_its_own else None


def _wanted(book: Book, entry: Entry, units: str, size: Size | None) -> dict[str, Wanted]:
    """What an entry recommends for a size."""
    size = _of_the_tool(book, entry, size)
    if size is not None and any(value.bands for value in entry.values.values()):
        entry = entry_at(entry, _in_mm(size, units, book))
    return {
        key: found for key, value in entry.values.items() if (found := _from_book(book, value)) is not None
    }


def with_size(card: Card, size: Size) -> Card:
    """A card for a tool of a size, or of a thread, as if a person had written it there.

    Args:
        card: as it is begun.
        size: as the tool was looked for; a length without a unit is in that of the card. A class of the hole
            behind it goes into the calculation of the reamer's size.
    """
    text = size.written(card.units)
    tool = replace(card.tool, thread=text) if size.is_thread else replace(card.tool, size=text)
    card = replace(card, tool=tool)
    if not size.tolerance:
        return card
    return replace(card, settings={**card.settings, OF_A_HOLE: Setting({HOLE_CLASS: size.tolerance})})


_CLASS_BEHIND = re.compile(r"(?P<size>.*\d\D*?)\s*(?<=[\s\d])(?P<of_hole>[A-Za-z]{1,2}\d{1,2})")


def class_taken_out(card: Card) -> Card:
    """A card whose size was typed with the class of the hole behind it, each where it belongs.

    Args:
        card: of a tool that is made for a hole.

    Example:
        >>> from library.cards.model import Tool
        >>> of_a_reamer = class_taken_out(Card(family="reamer", tool=Tool(size="12 mm h7")))
        >>> of_a_reamer.tool.size, of_a_reamer.settings["reamer-size"].typed
        ('12 mm', {'hole_tolerance': 'H7'})
        >>> class_taken_out(Card(family="reamer", tool=Tool(size="12 mm"))).settings
        {}
    """
    found = _CLASS_BEHIND.fullmatch(card.tool.size.strip())
    if found is None or (of_hole := found["of_hole"].upper()) not in CLASSES:
        return card
    before = card.settings.get(OF_A_HOLE, Setting())
    return replace(
        card,
        tool=replace(card.tool, size=Size(found["size"]).written(card.units)),
        settings={**card.settings, OF_A_HOLE: replace(before, typed={**before.typed, HOLE_CLASS: of_hole})},
    )


def found_with(card: Card, along: Along) -> Card:
    """A card with what its entry was found by, as if a person had written it there.

    Args:
        card: as it is begun.
        along: size, number of flutes and angle of the tool, as far as they stood in the search.
    """
    if along.angle and (book := card.wanted.get(along.angle_of)) is not None:
        wanted = replace(book, value=along.angle, reason=SOUGHT)
        card = replace(card, wanted={**card.wanted, along.angle_of: wanted})
    if along.flutes is not None:
        card = replace(card, tool=replace(card.tool, flutes=str(along.flutes)))
    return with_size(card, along.size) if along.size is not None else card


def _in_mm(size: Size, units: str, book: Book) -> float | None:
    """A size, or the diameter of a thread; nothing where it is neither."""
    from library.shop_threads.laying import own_threads
    from library.threads import NotChosen, choose

    try:
        text = choose(size.text, own_threads(book)).diameter if size.is_thread else size.written(units)
        # A tool with steps goes by its largest, as everywhere.
        text = one_of(DIAMETER, text, METRIC, at_point=False) or text
        return read(text, Kind.LENGTH, METRIC).number
    except (NotChosen, UnitError):
        return None


def _from_book(book: Book, value: Value) -> Wanted | None:
    """A value of the book as it is wanted; a range stays a range, of which a person takes something."""
    text = said(value) if is_range(value) else value.usual.text if value.usual is not None else ""
    source = briefly(book, value.citation) + (f", {value.band}" if value.band else "")
    return Wanted(text, text, source) if text else None


def again(card: Card, book: Book) -> Card:
    """A new card for the same job: the tool, what is wanted and what was typed stay, everything measured is empty.

    What was measured of the tool is left out, for it has been ground since; the tolerances stay, that of a reading at
    the heel only where the same surface is ground, which may have followed from what was measured.

    Args:
        card: the earlier one.
        book: says which surface is ground.
    """
    settings = {name: Setting(one.typed, {}, one.skipped) for name, one in card.settings.items()
                if one.typed or one.skipped}  # fmt: skip
    after = {
        key: replace(one, readings=(), judged_by="")
        for key, one in card.after.items()
        if one.wanted or one.tolerance
    }
    begun = Card(
        family=card.family,
        entry=card.entry,
        again=card.id,
        units=card.units,
        machine=card.machine,
        wheel=card.wheel,
        tool=card.tool,
        wanted=card.wanted,
        settings=settings,
        after=after,
    )
    return for_its_surface(begun, begun, _surface_ground(card, book), _surface_ground(begun, book))


def _surface_ground(card: Card, book: Book) -> str:
    return chosen(card, book, None, None).surface


def for_its_surface(card: Card, begun: Card, then: str, now: str) -> Card:
    """A card with what was carried over for the reading at the heel only while the surface is ground that it was for.

    What a person wrote there himself stays, and so do readings.

    Args:
        card: as it is.
        begun: as it was begun, with what was carried over.
        then: the surface that it was for.
        now: the surface that is ground.

    Example:
        >>> from library.cards.model import Inspection
        >>> carried = Card(after={"drop": Inspection(tolerance="0.01 mm")})
        >>> other = for_its_surface(carried, carried, "land", "end")
        >>> other.after, for_its_surface(other, carried, "land", "land") == carried
        ({}, True)
    """
    carried = {key: one for key, one in begun.after.items() if key in DROPS and not one.readings}
    after = dict(card.after)
    for key, one in carried.items():
        if now != then and after.get(key) == one:
            del after[key]
        elif now == then and key not in after:
            after = {key: one, **after}
    return card if after == dict(card.after) else replace(card, after=after)
