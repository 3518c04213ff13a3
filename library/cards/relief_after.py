"""The relief found after grinding, beside the range that the book has for it: a flute may pass by its drop and lie outside."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from geometry.sentences import Kind
from geometry.surfaces import SURFACES
from library.book.model import Value
from library.calc.past_the_range import past
from library.calc.ranges import is_range, read_range, said
from library.cards.inspecting import Relief, reliefs_after
from library.cards.job import Job
from library.cards.model import Inspection, Readings
from library.cards.reading_issues import card_issue
from library.cards.shall_be import DROPS, number_of, relief_key
from library.issue import Issue
from library.units.show import show

MICRON = 0.001
"""In mm, by how much a drop may be read wrong at least; common practice, no source."""

Past = tuple[int, float, str]
"""A flute, the relief found on it in radians, and which end of the book's range that is past, in words."""


def relief_after(job: Job) -> Iterator[Issue]:
    """A watch on the flutes whose relief, by their readings after grinding, lies outside the range of the book.

    Of an end that the wanted value or the chosen cam passes nothing is said, for there that tells already.

    Args:
        job: the card worked out; a closed one is held against the range that it was closed with.
    """
    found = _outside(job)
    for end in dict.fromkeys(end for _, _, end in found):
        flutes = [(flute, angle) for flute, angle, one in found if one == end]
        numbers = _listed([str(flute) for flute, _ in flutes])
        angles = _listed([show(angle, Kind.ANGLE, job.display) for _, angle in flutes])
        one_of = f", flute{'s' if len(flutes) > 1 else ''} {numbers}" if len(reliefs_after(job)) > 1 else ""
        surface = SURFACES[job.choice.surface].title
        how = "set more and grind it again" if end.startswith("less") else "set less and grind the land again"
        yield card_issue(
            f"after.{_drop_of(job)}",
            f"Relief on the {surface}{one_of}: {angles} found, {end}. To bring it into the range, {how}; or leave it so on "
            "purpose and say why in the notes.",
            "warning",
            flutes[0][0] if one_of else 0,
        )


def range_then(job: Job) -> dict[str, str]:
    """The range of the book that a relief found after grinding lies outside, by its quantity, for the record of that day.

    Args:
        job: the card worked out, as it is closed.

    Returns:
        Empty where no relief lies outside.
    """
    value = _range(job)
    return {value.key: said(value)} if value is not None and _outside(job) else {}


def _outside(job: Job) -> list[Past]:
    value, found = _range(job), reliefs_after(job)
    # What is not past an end as it was read is past none where it was read otherwise too: most keys end here.
    if value is None or not any(past(value, angle) for one in found for angle in one.angles.values()):
        return []
    less, more = ({one.flute: one for one in _read_otherwise(job, way)} for way in (-1, 1))
    # A reading from which no relief can be told, such as one that is half typed, lies outside of nothing.
    told = [one for one in found if one.angles and one.flute in less and one.flute in more]
    past_it = (_past(value, one, less[one.flute], more[one.flute]) for one in told)
    return [one for one in past_it if one is not None]


def _past(value: Value, found: Relief, less: Relief, more: Relief) -> Past | None:
    """A relief past an end of the range, also where it was read a little wrong, and in every form that it may have."""
    reads = [*less.angles.values(), *found.angles.values(), *more.angles.values()]
    ends = {past(value, one) for one in reads}
    end = ends.pop() if len(ends) == 1 else ""
    return (found.flute, next(iter(found.angles.values())), end) if end else None


def _range(job: Job) -> Value | None:
    """The range of the relief that is ground, without an end that is passed on purpose or by the cam; nothing where none is known."""
    key = relief_key(job)
    wanted = job.card.wanted.get(key)
    # A record of an older program has no range of its day, and stays as it was.
    value = read_range(key, job.card.chosen.get(key, "")) if job.card.done else _of_book(job, key)
    if value is None or wanted is None:
        return None
    aimed = (number_of(wanted.value, key, job), job.by_cam.given if job.by_cam is not None else None)
    ends = {past(value, one)[:4] for one in aimed if one is not None}
    return replace(
        value, low=None if "less" in ends else value.low, high=None if "more" in ends else value.high
    )


def _of_book(job: Job, key: str) -> Value | None:
    """What the entry says of a relief, as long as it says what it said when the card was begun."""
    entry, wanted = job.book.entries.get(job.card.entry), job.card.wanted.get(key)
    value = entry.values.get(key) if entry is not None else None
    if value is None or wanted is None:
        return None
    was = said(value) if is_range(value) else value.usual.text if value.usual is not None else ""
    return value if was and was == wanted.book.strip() else None


def _drop_of(job: Job) -> str:
    """The quantity whose readings tell the relief."""
    return next((key for key in ("drop", "heel_drop") if key in job.card.after), "drop")


def _read_otherwise(job: Job, way: int) -> Sequence[Relief]:
    """The reliefs, had each drop been read wrong by what an indicator does: half a division of it, and a micron at least."""
    key = _drop_of(job)
    scale = job.machine.reading_graduation(key) if job.machine is not None else None
    off = way * max(MICRON, scale.division.number / 2 if scale is not None else 0.0)
    after = {
        name: replace(one, readings=_moved(job, name, one, off)) if name in DROPS else one
        for name, one in job.card.after.items()
    }
    return reliefs_after(replace(job, card=replace(job.card, after=after)))


def _moved(job: Job, key: str, one: Inspection, off: float) -> Readings:
    numbers = [number_of(text, key, job) for text in one.readings]
    return tuple(
        text if number is None else f"{max(number + off, 0.0):.9f} mm"
        for text, number in zip(one.readings, numbers, strict=True)
    )


def _listed(words: Sequence[str]) -> str:
    return " and ".join(part for part in (", ".join(words[:-1]), words[-1]) if part)
