"""What a calculation of a job card still wants, and where on the card it is asked for."""

from __future__ import annotations

import itertools

from geometry.quantities import quantity
from geometry.surfaces import surface_of_relief
from library.calc.surfaces import title_of
from library.cards.edge_set import sets_edge
from library.cards.edge_wanted import edges_of, titled
from library.cards.job import Job
from library.cards.provenance import TYPED_ONCE
from library.cards.step import Step
from library.equipment.drawer_advice import keys_named
from tui.view.card_quantity_rows import MEASURED, decided_on, measured_on, wanted_as


def for_want_of(job: Job, step: Step) -> list[str]:
    """What it wants that has its line on another step, with its number, its name and the key, or further up on this one."""
    surface, asked, above = step.answer.surface, _asked_once(job, step), asked_above(job, step)
    elsewhere: dict[str, list[str]] = {}
    for key in missing(step):
        if key not in above and is_asked_elsewhere(job, step, key):
            own = wanted_as(job, step, key)
            title = title_of(key if surface_of_relief(own) else own, surface).lower()
            elsewhere.setdefault(_asked_on(job, step, key), []).append(title)
    here = [_called_above(job, step, key) for key in missing(step) if key in asked]
    found = [title_of(key, surface).lower() for key in missing(step) if key in above - asked]
    wants = [f"{', '.join(titles)}, on {page}" for page, titles in elsewhere.items()]
    if wants:
        wants[-1] += " ({previous} goes back)"
    wants += [f"{', '.join(here)}, asked for above"] if here else []
    wants += [f"{', '.join(found)}, which is found above"] if found else []
    return [f"for want of {'; '.join(wants)}"] if wants else []


def _called_above(job: Job, step: Step, key: str) -> str:
    """What the line further up is called in which an input is asked for once: one for several edges has a name of its own."""
    before = itertools.takewhile(lambda one: one is not step, job.steps)
    asking = next((one for one in before if one.in_use and key in missing(one)), None)
    edges = edges_of(asking, key) if asking is not None else None
    return (titled(edges) if edges is not None else title_of(key, step.answer.surface)).lower()


def missing(step: Step) -> list[str]:
    """What is still to be given; of alternatives the first."""
    return [one.key for one in step.answer.issues if one.missing and one.key]


def awaited(job: Job, step: Step) -> list[str]:
    """The lines of other steps of the card that a calculation waits for, by their ways."""
    keys = [wanted_as(job, step, key) for key in missing(step) if is_asked_elsewhere(job, step, key)]
    return [f"{section}.{key}" for key in keys for section in ("wanted", "received", "tool")]


def where_numbers_go(job: Job, step: Step, *, under: bool) -> str:
    """What is said of a number typed on the line of a calculation, which keeps none: where the one that is advised belongs.

    Args:
        job: the card worked out.
        step: the calculation.
        under: whether lines that keep one stand under it.
    """
    bad = (one for one in step.checks if one.state in {"watch", "stop"})
    named = dict.fromkeys(key for one in bad for key in keys_named(one))
    pages: dict[str, list[str]] = {}
    for key in named:
        if is_asked_elsewhere(job, step, key):
            title = quantity(wanted_as(job, step, key)).title.lower()
            pages.setdefault(_asked_on(job, step, key), []).append(title)
    told = [f"{', '.join(titles)}: on {page}" for page, titles in pages.items()]
    here = ["Down goes to the lines of this calculation"] if under else []
    said = "; ".join((*here, *told)) or "{calculate} shows the lines of this calculation"
    return f"This line keeps no number. {said[0].upper()}{said[1:]}."


def is_asked_elsewhere(job: Job, step: Step, key: str) -> bool:
    """Whether an input has its line on another step of the card: a relief by the key of its surface."""
    own = wanted_as(job, step, key)
    return surface_of_relief(own) is not None or _stands_elsewhere(job, own)


def stands_elsewhere(job: Job, step: Step, key: str) -> bool:
    """Whether an input has its line on another step of the card as it is now: a second relief only where one is wanted."""
    return _stands_elsewhere(job, wanted_as(job, step, key))


def _stands_elsewhere(job: Job, own: str) -> bool:
    decided = decided_on(job.family, job.choice.surface)
    return own in {*measured_on(job.kind), *decided, *job.card.wanted, "flutes"}


def _asked_on(job: Job, step: Step, key: str) -> str:
    """On which earlier step an input has its line, with its number and its name."""
    own = wanted_as(job, step, key)
    if own in MEASURED or (own in measured_on(job.kind) and own not in job.card.wanted):
        return "step 2, Received"
    is_count = own == "flutes" and own not in job.card.wanted
    return "step 1, Tool" if is_count else "step 3, Wanted"


def asked_above(job: Job, step: Step) -> set[str]:
    """What needs no line in a calculation: it is asked for once further up, or follows there from what is asked for."""
    before = [*itertools.takewhile(lambda one: one is not step, job.steps)]
    edges = {
        key for key in missing(step) if (setter := sets_edge(before, key)) is not None and not setter.works
    }
    return _asked_once(job, step) | edges


def _asked_once(job: Job, step: Step) -> set[str]:
    """What is one number for the whole job, and has its empty line in a calculation further up."""
    before = itertools.takewhile(lambda one: one is not step, job.steps)
    return {key for one in before if one.in_use for key in missing(one) if key in TYPED_ONCE}
