"""What the book knows of a machine, of a wheel and of a thread, line by line."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from geometry.quantities import QUANTITIES
from geometry.sentences import Kind
from library.book.model import Book, Measure
from library.calc.citation import cited
from library.equipment.abrasives import ABRASIVES
from library.equipment.model import Graduation, Reach, machines, wheels
from library.guidance.told import Convert
from library.shop_threads.laying import own_threads
from library.threads import Thread, all_threads

Told = tuple[str, Iterable[tuple[str, str]]] | None
"""A title, and labels with their texts."""

NO_RATING = "None is written down. A wheel without a readable rating is not used."


def machine_parts(book: Book, name: str, convert: Convert | None) -> Told:
    """A machine: dividing head, speeds, cams, and what each movement is read and set in."""
    one = machines(book).get(name)
    if one is None:
        return None
    per = "one turn of the tool" if one.throw_per == "turn" else "one tooth to the next"
    parts = [
        (
            "DIVIDES",
            f"{one.index_ratio} turns of the crank for one of the spindle" if one.index_ratio else "",
        ),
        ("CIRCLES", ", ".join(map(str, one.plate_holes))),
        ("SPEEDS", ", ".join(speed.text for speed in one.spindle_speeds)),
        ("CAMS", ", ".join(_length(throw, convert) for throw in one.cam_throws)),
        ("CAM SET", _reach(one.cam_throw_range, convert)),
        ("THROW", f"Counted for {per}" if one.has_cams else ""),
        ("TILTS", _reach(one.head_tilt, convert)),
        *((graduation.title.upper(), _graduation(graduation)) for graduation in one.graduations.values()),
        ("NOTE", one.note),
    ]
    return one.title, parts


def _graduation(one: Graduation) -> str:
    uses = (("sets", one.sets), ("reads", one.reads))
    parts = (
        f"one division is {one.division.text}",
        f"one turn of the handle {one.per_turn.text}" if one.per_turn is not None else "",
        *(f"{word} {', '.join(_titles(keys))}" for word, keys in uses if keys),
    )
    return "; ".join(part for part in parts if part)


def _titles(keys: Iterable[str]) -> Iterator[str]:
    return (QUANTITIES[key].title.lower() if key in QUANTITIES else key for key in keys)


def wheel_parts(book: Book, name: str, convert: Convert | None) -> Told:
    """A wheel: its rating first, then what is marked on it."""
    one = wheels(book).get(name)
    if one is None:
        return None
    parts = [
        ("RATED", one.rated_speed.measure.text if one.rated_speed is not None else NO_RATING),
        ("SHAPE", one.shape),
        ("SIZE", _length(one.diameter, convert)),
        ("NEW", _length(one.new_diameter, convert)),
        ("GRAIN", ABRASIVES.get(one.abrasive, one.abrasive)),
        ("GRIT", one.grit),
        ("GRADE", one.grade),
        ("BOND", one.bond),
        ("DRESSED", one.dressed.isoformat() if one.dressed is not None else ""),
        ("NOTE", one.note),
    ]
    return one.title, parts


def thread_parts(book: Book, name: str, convert: Convert | None) -> Told:
    """A thread: its sizes as the shop has them, else as the table has them, and where the table is from."""
    own = {one.id: one for one in own_threads(book)}
    one = own.get(name) or all_threads().get(name)
    return (one.title, list(_of_thread(book, one))) if one is not None else None


def _of_thread(book: Book, one: Thread) -> Iterator[tuple[str, str]]:
    yield "TABLE", one.series.title
    yield "OUTSIDE", one.diameter
    yield "PITCH", one.pitch or one.threads_per_inch
    yield "STARTS", str(one.starts) if one.starts != 1 else ""
    yield "HAND", one.hand
    yield "DRILL", " or ".join(drill for drill in (one.tap_drill, *one.other_tap_drills) if drill)
    yield "FLANKS", f"{one.pitch_diameter} pitch diameter" if one.pitch_diameter else ""
    yield "NUT", f"{one.minor_diameter} minor diameter" if one.minor_diameter else ""
    yield "BOLT", f"{one.screw_minor_diameter} minor diameter" if one.screw_minor_diameter else ""
    yield "FRONT", f"{one.front_pitch_diameter} pitch diameter" if one.front_pitch_diameter else ""
    yield "FLUTES", str(one.flutes) if one.flutes else ""
    yield "ALSO", ", ".join(one.synonyms)
    yield "NOTE", one.note
    own = getattr(book.more.get("thread", {}).get(one.id), "citation", None)
    found = [own] if own is not None else [origin.citation for origin in one.series.origins.values()]
    yield "SOURCE", "; ".join(dict.fromkeys(cited(book, citation, caveat=False) for citation in found))


def _length(one: Measure | None, convert: Convert | None) -> str:
    """A length as it is written, and in the unit that is worked in where that is another."""
    if one is None:
        return ""
    written = convert(one.number, Kind.LENGTH) if convert is not None else one.text
    return one.text if written.split()[-1:] == one.text.split()[-1:] else f"{one.text} ({written})"


def _reach(reach: Reach, convert: Convert | None) -> str:
    ends = [end.text for end in (reach.low, reach.high) if end is not None]
    return (
        " to ".join(ends)
        if len(ends) == 2
        else "".join(f"{'from' if reach.low else 'up to'} {end}" for end in ends)
    )
