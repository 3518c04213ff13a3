"""The head of the setup sheet: what stops stands above everything, then the tool, and what it is ground with."""

from __future__ import annotations

from library.calc.left_hand import LEFT_HAND
from library.cards.flute_count import flute_count
from library.cards.hand import is_left
from library.cards.how_ground import ground_of
from library.cards.issues import issues_of
from library.cards.job import Job
from library.equipment.abrasives import ABRASIVES
from library.guidance.wheels import recommended_for
from library.pages.page import Block, Checks, Facts, Said

STOPPED = "STOP: do not grind this before what is marked STOP below is put right."
"""The first line of a sheet on which a setting stops."""

STOPPED_AFTER = "STOP: this tool is not as it was wanted; see what is marked STOP below."
"""The first line of a sheet on which only a reading after grinding stops."""

NAMELESS = "Setup sheet"
"""The title while nothing is known of the tool."""


TO_WRITE = "________"
"""Where the wheel is written down by hand."""


def stops(job: Job, told: tuple[tuple[str, str], ...]) -> tuple[Block, ...]:
    """What stands before everything where anything stops: that it stops, and each reason.

    Args:
        job: the card worked out.
        told: the sentences that stop, with their state.
    """
    ways = [one.way for one in issues_of(job) if one.state == "stop"]
    if not ways:
        return (Checks(told),) if told else ()
    said = STOPPED if any(not way.startswith("after.") for way in ways) else STOPPED_AFTER
    return (Said((said,), "stop"), *((Checks(told),) if told else ()))


def title(job: Job) -> str:
    """The tool: its own name, and its thread or size; its family where it has none of them."""
    tool = job.card.tool
    words = (tool.name, tool.thread or tool.size)
    return ", ".join(word.strip() for word in words if word.strip()) or _family(job) or NAMELESS


def which(job: Job) -> str:
    """Which sheet it is, and whether it is a draft still."""
    card = job.card
    return f"{NAMELESS} {card.id}".rstrip() + ("" if card.done else " (draft)")


def who(job: Job) -> Facts:
    """What is wrong with which tool, and on which machine with which wheel it is ground; the id of the sheet tells the day."""
    card, tool, wheel = job.card, job.card.tool, job.wheel
    rated = f", rated {wheel.rated_speed.measure.text}" if wheel and wheel.rated_speed else ""
    begun = card.started.isoformat() if card.started else ""
    pairs = (
        ("Wrong with it", " ".join(card.wrong.split())),
        ("Family", _family(job)),
        ("Hand", LEFT_HAND if is_left(job) else ""),
        ("Size", tool.size if tool.thread else ""),
        ("Flutes", tool.flutes or _of_book(job)),
        ("For", _material(job)),
        ("Marks", tool.marks),
        ("Belongs to", tool.belongs_to),
        ("Machine", job.machine.title if job.machine else card.machine),
        ("Wheel", f"{wheel.title}{rated}" if wheel else card.wheel or _to_choose(job)),
        ("Entry", card.entry),
        ("Begun", "" if begun and card.id.startswith(begun) else begun),
        ("Done", card.finished.isoformat() if card.finished else ""),
        ("Again from", card.again),
    )
    return Facts(tuple(pair for pair in pairs if pair[1]))


def _to_choose(job: Job) -> str:
    """A line for the wheel where none is chosen, with what the book would have cut in it; empty of a record, and where the book has none."""
    found = () if job.card.done else recommended_for(job.book, ground_of(job))
    grains = dict.fromkeys(ABRASIVES[word] for one in found for word in one.abrasives)
    return f"{TO_WRITE}, of {' or '.join(grains)}" if grains else ""


def _of_book(job: Job) -> str:
    """The flutes that the job counts with where nobody wrote any of the tool; empty where it counts with none."""
    count = flute_count(job)
    return str(count.number) if count is not None else ""


def _family(job: Job) -> str:
    family = job.book.families.get(job.card.family)
    return family.title if family else job.card.family


def _material(job: Job) -> str:
    material = job.book.materials.get(job.card.tool.work_material)
    return material.title if material else job.card.tool.work_material
