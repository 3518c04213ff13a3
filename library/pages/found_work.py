"""What a search found of the work, as a short page: symptoms, wheels, lines of set-ups."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from library.book.model import Book
from library.calc.cautions import cautions_of_families
from library.calc.citation import briefly
from library.guidance.finding import WORD_OF_LINE, Guidance, Line
from library.guidance.model import Symptom, setups
from library.guidance.told import Convert
from library.guidance.troubles import by_trouble
from library.pages import wheels
from library.pages.cautions import at_arms_length
from library.pages.page import Labelled, Page, Said, Section
from library.pages.troubles import sentences

FEW = 2
"""Wheels that are told whole; more stand one beside the other."""

MOST = 8
"""Lines that are told; for the others more words are asked for."""

FEW_SYMPTOMS = 6
"""Symptoms that are told, so that the answer stays short."""

SYMPTOMS_LEFT = "{count} more: name the tool too, such as 'heelclear find {trouble} reamer'."

MORE = "{count} more: name the tool too, such as 'heelclear find {word} reamer'."


CAUTIONS = "show ID --cautions"
"""Where they stand in full."""


def page_of(book: Book, found: Guidance, convert: Convert | None) -> Page:
    """What was found, the sources behind each line.

    Args:
        book: has the sources.
        found: what to tell.
        convert: writes lengths in the unit that is worked in.
    """
    parts = (*_troubles(book, found, convert), *_wheels(book, found, convert), *_lines(book, found, convert))
    warned = at_arms_length(cautions_of_families(_families(book, found), book), CAUTIONS) if parts else None
    return Page("", (*parts, Section("", (warned,))) if warned is not None else ())


def _families(book: Book, found: Guidance) -> Iterator[str]:
    """The families of which something is told."""
    for one in found.symptoms:
        yield from one.families
    for line in found.lines:
        if line.table in setups(book):
            yield setups(book)[line.table].family


def _troubles(book: Book, found: Guidance, convert: Convert | None) -> Iterator[Section]:
    """For each trouble what to measure and to change; where no tool was named, the likeliest of each family first."""
    rows = found.symptoms if found.for_family else _one_of_each(found.symptoms)
    shown = rows[:FEW_SYMPTOMS]
    for title, symptoms in by_trouble(shown).items():
        told = tuple(sentences(book, one, convert, with_family=not found.for_family) for one in symptoms)
        yield Section(title, (Said(told),))
    left = len(found.symptoms) - len(shown)
    if left:
        yield Section(
            "",
            (Said((SYMPTOMS_LEFT.format(count=left, trouble=found.symptoms[0].title.casefold()),), "quiet"),),
        )


def _one_of_each(found: Sequence[Symptom]) -> tuple[Symptom, ...]:
    """The symptoms with the first one of each family in front."""
    first: dict[tuple[str, ...], Symptom] = {}
    for one in found:
        first.setdefault(one.families, one)
    return (*first.values(), *(one for one in found if one not in first.values()))


def _wheels(book: Book, found: Guidance, convert: Convert | None) -> Iterator[Section]:
    if not found.wheels:
        return
    if len(found.wheels) <= FEW:
        yield from wheels.in_full(book, found.wheels, convert)
        return
    more = (
        "'heelclear find wheel carbide' and the like tell grit, grade, bond and infeed, with their sources."
    )
    yield Section("Recommended wheels", (wheels.side_by_side(found.wheels), Said((more,), "quiet")))


def _lines(book: Book, found: Guidance, convert: Convert | None) -> Iterator[Section]:
    if not found.lines:
        return
    told = tuple(
        (_label(one), f"{one.title}: {wheels.sourced(book, one.told, convert)}") for one in found.lines
    )
    blocks: list[Labelled | Said] = [Labelled(told[:MOST])]
    if len(told) > MOST:
        word = WORD_OF_LINE[found.lines[0].key].casefold()
        blocks.append(
            Said((MORE.format(count=len(told) - MOST, word=_asked_by(found.lines[0], word)),), "quiet")
        )
    yield Section("How it is ground", tuple(blocks))


def _label(one: Line) -> str:
    return WORD_OF_LINE[one.key].upper()


def _asked_by(one: Line, word: str) -> str:
    return {"feed": "infeed", "dress": "dressing"}.get(word, word)


def as_data(book: Book, found: Guidance) -> list[Mapping[str, object]]:
    """The same as plain data, one record for each wheel and line."""
    return [
        *(
            {
                "kind": "symptom",
                "id": one.id,
                "title": one.title,
                "families": list(one.families),
                "measure": one.measure.said() if one.measure is not None else "",
                "value": one.value,
                "way": one.way,
                "change": one.change.said() if one.change is not None else "",
                "source": briefly(book, one.change.citation) if one.change is not None else "",
            }
            for one in found.symptoms
        ),
        *(
            {
                "kind": "recommended wheel",
                "id": one.id,
                "title": one.title,
                "tool_materials": list(one.tool_materials),
                "operations": list(one.operations),
                "abrasives": list(one.abrasives),
                "shapes": list(one.shapes),
                **{
                    key: {"text": line.said(), "source": briefly(book, line.citation)}
                    for key, line in one.lines.items()
                },
            }
            for one in found.wheels
        ),
        *(
            {
                "kind": "line",
                "id": one.table,
                "title": one.title,
                "step": one.key,
                "text": one.told.said(),
                "source": briefly(book, one.told.citation),
            }
            for one in found.lines
        ),
    ]
