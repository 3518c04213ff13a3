"""A land in a wrong unit, which nobody sees by itself: hardly a land, or with its drop a relief that no tool has."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.plausible import MOST_RELIEF
from geometry.sentences import Kind, Rounding
from geometry.usual_land import is_hardly_a_land, is_usual
from library.cards.inspecting import Relief, received_reliefs, reliefs_after
from library.cards.job import Job
from library.cards.model import Readings
from library.cards.shall_be import number_of
from library.units.convert import to_geometry
from library.units.grammar import UnitError, parse
from library.units.several import in_short
from library.units.show import show

LAND = "land_width"

IN_WORDS = {"in": "inches", "mm": "millimetres", "thou": "thou"}
"""Units in which a land may have been meant."""


@dataclass(frozen=True)
class Doubt:
    """One reading that is hardly meant so.

    Attributes:
        reading: which one, counted from 1; 0 where it is of several at once.
        said: what is doubted and what may have been meant, in sentences.
    """

    reading: int
    said: str


def narrow_lands(job: Job, lands: Readings, diameters: Readings) -> Iterator[Doubt]:
    """The doubt of lands that are hardly lands on a tool of this diameter; one for all, as they were typed in one unit.

    Args:
        job: the card worked out.
        lands: as typed.
        diameters: the readings of the diameter from the same time.
    """
    diameter, narrow = _diameter(job, diameters), _narrow(job, lands, diameters)
    if diameter is None or not narrow:
        return
    are = "are hardly lands" if len(narrow) > 1 else "is hardly a land"
    on = show(diameter, Kind.LENGTH, job.display)
    said = f"{in_short(Kind.LENGTH, tuple(narrow.values()))} on a tool of {on} {are}, from edge to heel."
    meant = _meant(job, next(iter(narrow.values())), diameter)
    again = "them" if len(narrow) > 1 else "it"
    yield Doubt(
        next(iter(narrow)) if len(narrow) == 1 else 0,
        f"{said} {meant}See the unit and the decimal point, or measure {again} again.",
    )


def _narrow(job: Job, lands: Readings, diameters: Readings) -> dict[int, str]:
    """The lands that are hardly lands, as typed, by which one, counted from 1."""
    diameter, found = _diameter(job, diameters), {}
    for place, text in enumerate(lands, 1):
        width = number_of(text, LAND, job)
        if diameter is None or width is None or width <= 0:
            continue
        if is_hardly_a_land(width, diameter, job.choice.surface):
            found[place] = text
    return found


def steep_reliefs(job: Job, way: str, diameters: Readings) -> Iterator[Doubt]:
    """The drops that with their land are a relief that hardly any tool has, whichever form it has.

    Args:
        job: the card worked out.
        way: to the drop on the card.
        diameters: the readings of the diameter from the same time.
    """
    received = way.startswith("received")
    lands = job.card.received.get(LAND, ())
    if not received and LAND in job.card.after:
        lands = job.card.after[LAND].readings
    narrow = _narrow(job, lands, diameters)
    for one in received_reliefs(job) if received else reliefs_after(job):
        place = one.flute if len(lands) > 1 else 1
        if one.angles and min(one.angles.values()) > MOST_RELIEF and place not in narrow:
            land = lands[place - 1] if place <= len(lands) else ""
            yield Doubt(one.flute, _too_steep(job, one, land, _diameter(job, diameters)))


def _too_steep(job: Job, one: Relief, land: str, diameter: float | None) -> str:
    relief = show(min(one.angles.values()), Kind.ANGLE, job.display, Rounding.DOWN)
    most = show(MOST_RELIEF, Kind.ANGLE, job.display)
    over = f" over a land of {land}" if land else ""
    meant = _meant(job, land, diameter, " for the land") if land and diameter is not None else ""
    return (
        f"{one.text}{over} would be a relief of {relief}, and hardly any tool has more than {most}. {meant}See the units and the "
        "decimal points of both, or measure them again."
    )


def _meant(job: Job, text: str, diameter: float, what: str = "") -> str:
    """In which unit the number would be a land as tools have it, as a question; empty where it would be in none."""
    try:
        typed = parse(text, Kind.LENGTH)
    except UnitError:
        return ""
    own = typed.unit or job.display.unit(Kind.LENGTH)
    for unit, words in IN_WORDS.items():
        width = to_geometry(typed.number, Kind.LENGTH, unit)
        if unit != own and is_usual(width, diameter):
            return f"Were {words} meant{what}? That would be {show(width, Kind.LENGTH, job.display)}. "
    return ""


def _diameter(job: Job, diameters: Readings) -> float | None:
    """In mm, as measured, else as known; nothing where nobody can tell, or where it is none."""
    texts = [text for text in (*diameters, job.known_text("diameter")) if text.strip()]
    found = number_of(texts[0], "diameter", job) if texts else None
    return found if found is not None and found > 0 else None
