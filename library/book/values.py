"""Parse and validate one recommended value: its range, its source, and what other sources say."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import lru_cache
from itertools import pairwise
from math import inf

from geometry.evaluate import unfit
from geometry.quantities import QUANTITIES, Quantity
from geometry.sentences import Kind
from library.book.bands import HOLES, overlapping
from library.book.diagnostics import Location, nearest, shown
from library.book.fields import one_line, want_known
from library.book.model import LABELS, Band, Citation, Label, Measure, Value
from library.book.retired import RETIRED, fix_for
from library.units.read import Reading, UnitError, read

MEASURES = ("low", "usual", "high")
KEYS = (*MEASURES, "source", "place", "speaks_of", "note", "also", "disagreement", "bands")
"""What the table of a value may hold."""

_OF_A_BAND = ("over", "from", "to", "hole", *MEASURES, "source", "place", "speaks_of", "note")
"""What the table of a band may hold."""

MOST_UNKNOWN = 20
"""Unknown keys in one value above which nothing of it is taken."""

_NO_SOURCE = ("This value has no source.",
              'Add source = "shop", "common practice", "from memory" or the id of a [[source]].')  # fmt: skip
_WORDS: Mapping[str, Label] = {label: label for label in LABELS if label != "published"}


def value(raw: object, location: Location, row: Quantity) -> Value:
    """Read the value of one quantity.

    Args:
        raw: what stands at the key: a measure alone, or a table with a range and a source.
        location: of the key.
        row: the quantity.

    Returns:
        The value; marked unread, and without a number, where a part of its range could not be read: what is left
        of a range is not what the shop wrote, and would be taken for the usual value.
    """
    if isinstance(raw, Mapping):
        return _from_table(raw, location, row)
    found = _measure(raw, location, row)
    if found is not None:
        location.complain(*_NO_SOURCE, "warning")
    return Value(
        row.key, usual=found, layer=location.table.layer, place=location.place(), unread=found is None
    )


def unread(key: str, location: Location) -> Value:
    """A value whose line could not be read."""
    return Value(key, layer=location.table.layer, place=location.place(), unread=True)


def citation(table: Mapping[str, object], location: Location) -> Citation:
    """Read ``source``, ``place`` and ``speaks_of`` of a value or a caution."""
    place = one_line(table["place"], location.at("place")) if "place" in table else None
    if "source" not in table:
        location.complain(*_NO_SOURCE, "warning")
        return Citation("missing", "", place or "")
    source = one_line(table["source"], location.at("source"))
    if not source:
        return Citation("missing", "", place or "")
    if source in _WORDS:
        return Citation(_WORDS[source], "", place or "")
    is_known = want_known("source", source, location.at("source"), frozenset(_WORDS))
    if is_known and not place:
        fix = 'Add place = "the chapter, section, table or page".'
        location.at("source").complain("A published source is named without a place in it.", fix, "warning")
    return Citation("published", source, place or "", _line(table, "speaks_of", location))


def _from_table(table: Mapping[str, object], location: Location, row: Quantity) -> Value:
    is_whole = _want_known_keys(table, location)
    bands = _bands(table.get("bands", []), location.at("bands"), row)
    return replace(_own(table, location, row, is_whole=is_whole and bands is not None), bands=bands or ())


def _own(table: Mapping[str, object], location: Location, row: Quantity, *, is_whole: bool) -> Value:
    """A value without its bands."""
    measures = {key: _measure(table[key], location.at(key), row) for key in MEASURES if key in table}
    if not measures:
        location.complain("This value has neither low, usual nor high.", "Give one of them.")
    _want_order(measures, location)
    is_whole = is_whole and bool(measures) and None not in measures.values()
    measures = measures if is_whole else {}
    return Value(
        row.key,
        measures.get("low"),
        measures.get("usual"),
        measures.get("high"),
        citation=citation(table, location),
        note=_line(table, "note", location),
        also=_also(table.get("also", []), location.at("also"), row),
        disagreement=_line(table, "disagreement", location),
        layer=location.table.layer,
        place=location.place(),
        unread=not is_whole,
    )


def _line(table: Mapping[str, object], key: str, location: Location) -> str:
    return (one_line(table[key], location.at(key)) or "") if key in table else ""


def _also(raw: object, location: Location, row: Quantity) -> tuple[Value, ...]:
    if not isinstance(raw, list):
        location.complain(f"This is {shown(raw)}; a list of values is wanted.",
                      'Write it as [ { usual = "...", source = "..." } ].')  # fmt: skip
        return ()
    return tuple(value(one, location.at(number), row) for number, one in enumerate(raw))


def _bands(raw: object, location: Location, row: Quantity) -> tuple[Band, ...] | None:
    """The bands; nothing where nobody can tell for which size one of them is, for it may be the one that is wanted."""
    if not isinstance(raw, list):
        location.complain(f"This is {shown(raw)}; a list of bands is wanted.",
                      'Write it as [ { to = "3 mm", usual = "...", source = "..." } ].')  # fmt: skip
        return None
    found = [_band(one, location.at(number), row) for number, one in enumerate(raw)]
    bands = tuple(band for band in found if band is not None)
    for number, other in overlapping(bands) if len(bands) == len(found) else ():
        wrong = f"This band and the one {bands[number].in_words} are meant for the same tools."
        location.at(other).complain(wrong, "Let the one end where the other begins.", "warning")
    return bands if len(bands) == len(found) else None


def _band(raw: object, location: Location, row: Quantity) -> Band | None:
    if not isinstance(raw, Mapping):
        location.complain(f"This is {shown(raw)}; a band is wanted.",
                      'Write it as { to = "3 mm", usual = "...", source = "..." }.')  # fmt: skip
        return None
    is_whole = _want_known_keys(raw, location, "band", _OF_A_BAND)
    ends = {key: _end(raw[key], location.at(key)) for key in ("over", "from", "to") if key in raw}
    hole = raw.get("hole", "")
    if "hole" in raw and hole not in HOLES:
        location.at("hole").complain(f"This is {shown(hole)}.", f"It can be {' or '.join(HOLES)}.")
        return None
    start, to = ends.get("over") or ends.get("from"), ends.get("to")
    if len(ends) == 3:
        location.at("from").complain(
            "This band begins twice, with over and with from.", "Take one of them away."
        )
        return None
    if None in ends.values() or (not ends and not hole):
        if not ends:
            location.complain("Nothing says for which tools this band is.", "Add over, from, to or hole.")
        return None
    if start is not None and to is not None and start.number >= to.number:
        location.at("to").complain(
            f"to is {shown(to.text)}, not more than where the band begins, {shown(start.text)}.",
            "Put the larger one into to.",
        )
        return None
    own = _own(raw, location, row, is_whole=is_whole)
    return Band(start, to, str(hole), own, is_over="from" not in ends)


def _end(raw: object, location: Location) -> Measure | None:
    """A diameter with which a band begins or ends."""
    found = _measure(raw, location, QUANTITIES["diameter"])
    if found is not None and found.per_diameter:
        location.complain(f"{shown(found.text)} is no size of a tool.", "Write a length, such as 3 mm.")
        return None
    return found


def _want_known_keys(
    table: Mapping[str, object], location: Location, what: str = "value", known: tuple[str, ...] = KEYS
) -> bool:
    """Complain of keys that no value has; false where one of them looks like a part of the range."""
    unknown = [key for key in table if key not in known and not key.startswith("x-")]
    for key in unknown:
        near = location.near(key, known)
        fix = f"Did you mean {near}?" if near else f"A {what} takes {', '.join(known)}."
        location.at(key).complain(f"A {what} has no key {shown(key)}.", fix, "warning")
    told = _OF_A_BAND[:7] if what == "band" else MEASURES
    return len(unknown) <= MOST_UNKNOWN and not any(nearest(key, known) in told for key in unknown)


def _measure(raw: object, location: Location, row: Quantity) -> Measure | None:
    if row.kind is Kind.CHOICE:
        return _choice(raw, location, row)
    if isinstance(raw, bool) or not isinstance(raw, int | float | str):
        location.complain(f"This is {shown(raw)}; a number with its unit is wanted.", "Write it in quotes.")
        return None
    text = raw if isinstance(raw, str) else repr(raw)
    found = _reading(text, row)
    if isinstance(found, str):
        _complain_of(found, location)
        return None
    if found.half_width is not None:
        location.complain(f"{shown(text)} has a +/-.", "Give low and high instead.")
        return None
    return Measure(text, found.number, "", found.per_diameter)


@lru_cache(maxsize=4096)
def _reading(text: str, row: Quantity) -> Reading | str:
    """What a text means, or a sentence on why it means nothing."""
    try:
        of_diameter = row.kind is Kind.LENGTH
        found = read(text, row.kind, of_diameter=of_diameter, unit_wanted=True, whole=row.whole)
    except UnitError as error:
        return str(error)
    if found.per_diameter:
        sensible = (0.0 if row.low >= 0 else -inf) <= found.number < inf
        return found if sensible else f"{row.key} is {text}; a share of the diameter is not below zero."
    wrong = unfit(row, found.number)
    return str(wrong) if wrong else found


def _choice(raw: object, location: Location, row: Quantity) -> Measure | None:
    if location.keys and location.keys[-1] in {"low", "high"}:
        location.complain("A choice has no range.", 'Write it as usual = "...".')
        return None
    if not isinstance(raw, str):
        location.complain(
            f"This is {shown(raw)}; a word is wanted.", f"It can be {' or '.join(row.choices)}."
        )
        return None
    wrong = unfit(row, raw)
    if wrong and raw in RETIRED:
        location.complain(f"This is {shown(raw)}.", fix_for(raw, "", ""))
        return None
    if wrong:
        _complain_of(str(wrong), location)
        return None
    return Measure(raw, word=raw)


def _complain_of(sentence: str, location: Location) -> None:
    """Pass on a sentence whose second half, after a semicolon, says what to do."""
    wrong, _, fix = sentence.partition("; ")
    location.complain(wrong if wrong.endswith(".") else wrong + ".", fix[:1].upper() + fix[1:])


def _want_order(measures: Mapping[str, Measure | None], location: Location) -> None:
    """Complain where low, usual and high do not rise."""
    given = [(key, found) for key in MEASURES if (found := measures.get(key)) is not None]
    for (key, one), (next_key, other) in pairwise(given):
        if one.per_diameter == other.per_diameter and one.number > other.number:
            location.at(next_key).complain(
                f"{next_key} is {shown(other.text)}, less than {key}, which is {shown(one.text)}.",
                "Put the smaller one first.",
            )
