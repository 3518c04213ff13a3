"""What the tool shall have, on the setup sheet: each value with where it is from."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.edge.views import PLANES
from geometry.quantities import QUANTITIES
from geometry.role import HEEL
from geometry.sentences import Kind
from geometry.surfaces import SURFACES, surface_of_relief
from library.calc.in_units import in_units_of
from library.calc.surfaces import RELIEF, SECOND_RELIEF, title_of
from library.cards.chosen import CHOSEN_ONCE, WORK_HEAD
from library.cards.heels import at_each_heel
from library.cards.job import Job
from library.cards.last_facet import last_facet
from library.cards.shall_be import indicator_said, number_of
from library.cards.step import Step
from library.cards.within_book import within_book
from library.pages.page import Block, Facts, Sources
from library.setup_sheet.given import given_for
from library.units.over_a_hundred import title_over
from library.units.show import show
from library.units.system import Display


def wanted(job: Job, display: Display) -> Iterator[Block]:
    """What the tool shall have, as far as the job is worked out from it; the sources are told below, each once."""
    used = {
        key
        for step in job.steps
        if step.works
        for key, who in step.provenance.items()
        if who in {"wanted", "typed"}
    }
    used |= {key for step in job.steps if step.works for key in _reliefs_used(step)}
    sources: dict[str, str] = {}
    diameter = number_of(job.known_text("diameter"), "diameter", job)
    pairs = []
    for key, one in job.card.wanted.items():
        called = title_over(title(key), display)
        if (
            key in CHOSEN_ONCE
            or not one.value.strip()
            or (key not in used and key not in job.card.after and not one.changed and one.book)
        ):
            continue
        # What the book has stands in the unit of the card; what a person typed stands as he typed it.
        text, of_book = (in_units_of(key, each, display) for each in (one.value, one.book))
        text = one.value if one.changed else text
        said = "; ".join(part for part in (_with_view(key, text), _reads(job, key, display)) if part)
        if one.changed or not one.book:
            was = f"the book has {of_book}" if one.book else ""
            if within_book(key, one, diameter):
                was = f"within the book's {of_book}"
            why = "; ".join(part for part in (was, one.reason) if part) or "decided on this card"
            pairs.append((called, f"{said} ({why})"))
        else:
            mark = sources.setdefault(one.source, _letter(len(sources))) if one.source else ""
            pairs.append((called, f"{said} [{mark}]" if mark else said))
    given = given_for(job)
    counted = (("Counted with", given),) if given else ()
    if pairs or counted:
        yield Facts((*pairs, *(_chosen(job) if pairs else ()), *counted))
    if sources:
        yield Sources({f"[{mark}]": source for source, mark in sources.items()})


def _reliefs_used(step: Step) -> Iterator[str]:
    """The reliefs of the book that fill a calculation under the name of its relief."""
    surface = SURFACES.get(step.answer.surface)
    for key, filled in step.answer.inputs.items():
        if filled.origin == "entry" and surface is not None and key in (RELIEF, SECOND_RELIEF):
            yield surface.relief_key if key == RELIEF else surface.second_key
        field = step.sheet.field(key)
        if filled.origin == "entry" and field is not None:
            yield from field.fill_from


def _with_view(key: str, text: str) -> str:
    """A relief with the view in which it is given; anything else as it is."""
    surface = surface_of_relief(key)
    return f"{text}, {PLANES[surface.view]}" if surface is not None else text


def _reads(job: Job, key: str, display: Display) -> str:
    """What the indicator reads at the heel for the wanted relief of the surface that is ground, and where it points."""
    surface, step = surface_of_relief(key), job.doing(HEEL)
    if surface is None or key != surface.relief_key or surface.key != job.choice.surface:
        return ""
    if step is None or not step.works or step.stopped or step.answer.result is None:
        return ""
    cam = job.by_cam
    heel = step.answer.result.outputs["heel_drop"] if cam is None else cam.wanted_heel
    if heel is None:
        return ""
    last = last_facet(job)
    facet = f" of {last.said}" if last is not None else ""
    read = at_each_heel(job, display, first=cam is not None) or show(heel, Kind.LENGTH, display)
    return f"indicator {indicator_said(job)} reads {read} at the heel{facet}"


def _chosen(job: Job) -> tuple[tuple[str, str], ...]:
    """What was chosen once for the whole job."""
    surface = SURFACES.get(job.choice.surface)
    return (
        *((("Surface ground", surface.title),) if surface is not None else ()),
        *((("Made by", _made_by(job)),) if job.choice.method else ()),
    )


def _made_by(job: Job) -> str:
    """How the relief is made; an end is not rolled but tilted."""
    if job.choice.surface == "end" and job.choice.method == WORK_HEAD:
        return "tilt of the work head"
    return METHODS[job.choice.method]


METHODS = {
    "cam": "a cam",
    "wheel-head-height": "the height of the wheel head",
    "tooth-rest-height": "the height of the tooth rest",
    "inclined-wheel": "an inclined wheel",
    "work-head": "roll and swivel of the work head",
}
"""How the relief is made, in words."""


def _letter(number: int) -> str:
    """A mark for a source: a, b, c, and after z aa, ab.

    Example:
        >>> _letter(0), _letter(26)
        ('a', 'aa')
    """
    return _letter(number // 26 - 1) + _letter(number % 26) if number > 25 else chr(ord("a") + number)


def title(key: str, surface: str = "") -> str:
    """What a quantity is called on a surface; its own key where nobody knows it."""
    return title_of(key, surface) if key in QUANTITIES else key
