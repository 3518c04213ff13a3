"""How many flutes the tool of a card has, and who says so: the card, else the calculations, which have it of the book."""

from __future__ import annotations

from dataclasses import dataclass

from library.cards.job import Job, flutes_of


@dataclass(frozen=True)
class FluteCount:
    """A number of flutes.

    Attributes:
        number: of them.
        counted: whether somebody counted them on the tool, and wrote it on the card.
        whose: who has it where nobody counted, as the middle of a sentence: ``the book has``.
    """

    number: int
    counted: bool
    whose: str = ""


def flute_count(job: Job) -> FluteCount | None:
    """The number of flutes by which the tool is indexed, and how many readings go with it; nothing where none is known.

    Args:
        job: the card worked out.
    """
    typed = job.card.tool.flutes
    if typed.strip():
        number = flutes_of(typed)
        return FluteCount(number, counted=True) if number is not None else None
    for step in job.steps:
        filled = step.answer.inputs.get("flutes") if step.in_use else None
        if filled is not None and filled.origin != "default" and isinstance(filled.value, float):
            wanted = job.card.wanted.get("flutes")
            is_of_book = filled.origin == "entry" and not (wanted is not None and wanted.changed)
            whose = "the book has" if is_of_book else "the card counts with"
            return FluteCount(int(filled.value), counted=False, whose=whose)
    return None
