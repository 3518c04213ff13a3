"""The schema of ``[[thread]]``: its keys, how each is read, and what has to be said of a thread."""

from __future__ import annotations

from typing import cast

from library.book.diagnostics import Location, shown
from library.book.fields import Reader, one_line, words
from library.book.shapes import Merged, Shape
from library.equipment.readers import chosen, counted, measured
from library.shop_threads.model import OwnThread

LENGTHS = (
    "diameter",
    "pitch_diameter",
    "minor_diameter",
    "screw_minor_diameter",
    "front_pitch_diameter",
    "tap_drill",
)
"""Measures across a thread, from the largest on."""

OF_ITS_OWN = ("title", "series", "thread_form", "thread_taper", "citation", "unread", "id")
"""Fields that are no field of a thread, or are looked at apart."""


def _text(key: str) -> Reader:
    """A reader for one measure, kept as the text that was written; empty where it cannot be read."""
    read = measured(key)

    def take(raw: object, location: Location) -> str:
        found = read(raw, location)
        return found.text if found is not None else ""  # type: ignore[attr-defined]

    return take


def _series(raw: object, location: Location) -> str | None:
    from library.threads.reading import all_series

    text = one_line(raw, location)
    if text is None or text in all_series():
        return text
    near = location.near(text, all_series())
    fix = f"Did you mean {shown(near)}?" if near else "Leave it out, and give thread_form instead."
    location.complain(f"There is no series of threads {shown(text)}.", fix, "warning")
    return None


def _made(merged: Merged) -> OwnThread:
    fields = dict(merged.fields)
    said = {key: value for key, value in fields.items() if key not in OF_ITS_OWN}
    own = {key: fields[key] for key in OF_ITS_OWN if key in fields}
    return OwnThread(**own, said=said, extra=merged.extra, layer=merged.layer, place=merged.place)  # type: ignore[arg-type]


def _look_over(made: object, location: Location) -> None:
    """Complain of a thread that cannot be one, as far as what it says could be read."""
    from library.shop_threads.laying import laid
    from library.threads.reading import all_threads

    own = cast(OwnThread, made)
    wrong_already = "" in own.said.values() or own.unread
    if own.said.get("pitch") and own.said.get("threads_per_inch"):
        location.at("threads_per_inch").complain(
            "This gives the pitch as well as threads per inch.", "Leave one of them out."
        )
    if wrong_already:
        return
    thread = laid(own)
    if own.id not in all_threads():
        for key, words_of in (("diameter", "no diameter"), ("pitch", "neither a pitch nor threads per inch")):
            if not (getattr(thread, key) or (key == "pitch" and thread.threads_per_inch)):
                location.complain(f"This [[thread]] has {words_of}.", f'Add {key} = "..." with its unit.')
    _want_order(own, location)


def _want_order(own: OwnThread, location: Location) -> None:
    """Whether the diameters of a thread, and the pitch in them, are as large as they can be."""
    from geometry.sentences import Kind
    from library.shop_threads.laying import laid
    from library.units.read import read

    thread = laid(own)

    def number(text: str) -> float:
        return read(text, Kind.LENGTH).number if text else 0.0

    largest = number(thread.diameter)
    for key in (*LENGTHS[1:], "pitch"):
        size = number(getattr(thread, key))
        if largest and size >= largest:
            there = key if key in own.said else "diameter"
            location.at(there).complain(
                f"The {key.replace('_', ' ')}, {getattr(thread, key)}, is not smaller than the diameter, {thread.diameter}.",
                "Measure both again; the diameter is that over the crests.",
            )


THREAD = Shape(
    "thread",
    {
        "title": one_line,
        "synonyms": words,
        "series": _series,
        "thread_form": chosen("thread_form"),
        "thread_taper": chosen("thread_taper"),
        **{key: _text("diameter") for key in LENGTHS},
        "pitch": _text("pitch"),
        "threads_per_inch": _text("threads_per_inch"),
        "starts": counted("starts"),
        "hand": chosen("hand"),
        "flutes": counted("flutes"),
        "other_tap_drills": words,
        "note": one_line,
    },
    _made,
    required=(),
    is_cited=True,
    tells_unread=True,
    look_over=_look_over,
)

SHAPES = (THREAD,)
"""To be laid beside the tables that the book itself knows."""
