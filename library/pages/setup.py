"""How a tool is ground, as parts of a page: beside an entry, on a card with its numbers, and in six short lines on paper."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence

from library.book.model import Book, Citation, Label
from library.calc.citation import briefly, cited
from library.guidance.model import AT_A_GLANCE, STEPS, Setup
from library.guidance.told import Convert, Told
from library.pages.page import Labelled, Said, Section

Number = Callable[[str], str]
"""Gives the number of a quantity with its unit, or nothing."""


def _unknown(key: str) -> str:
    """The number of a quantity where there is no job."""
    return ""


LABEL = "SET UP"

UNMARKED: Label = "common practice"
"""The source of most lines, which is told once and not behind each of them."""


def citations(setup: Setup | None, *, whole: bool = False) -> tuple[Citation, ...]:
    """The sources of the lines of a set-up that stand beside an entry, in their order.

    Args:
        setup: nothing where the book has none.
        whole: of all its steps, and not only of those at a glance.
    """
    return tuple(one.citation for _, one in _steps(setup, whole=whole)) if setup is not None else ()


def _steps(setup: Setup, *, whole: bool) -> list[tuple[str, Told]]:
    return [(key, one) for key, one in setup.lines.items() if whole or key in AT_A_GLANCE]


def beside_entry(
    setup: Setup, tag: Callable[[Citation], str], convert: Convert | None, *, by_lines: bool = False
) -> tuple[str, str]:
    """A set-up behind one label, each line with the tag of its source.

    Args:
        setup: what to tell.
        tag: gives the tag of a source.
        convert: writes lengths in the unit that is worked in, once units are loaded.
        by_lines: tells each step whole on a line of its own; else what is read at a glance stands in one paragraph.
    """
    lines = []
    told = _steps(setup, whole=by_lines)
    for key, one in told:
        said = one.said(_unknown, convert) if by_lines else one.in_short(_unknown, convert)
        behind = "" if one.citation.label == UNMARKED else f" {tag(one.citation)}"
        lines.append(f"{STEPS[key]}: {said.removesuffix('.')}{behind}.")
    unmarked = any(one.citation.label == UNMARKED for _, one in told)
    title = f"{setup.title} ({tag(Citation(UNMARKED))} where unmarked)." if unmarked else f"{setup.title}."
    return LABEL, ("\n" if by_lines else " ").join((title, *lines))


def in_full(book: Book, found: Sequence[Setup], convert: Convert | None) -> Iterator[Section]:
    """Set-ups whole, each step with its source in words."""
    for setup in found:
        told = tuple(
            (STEPS[key].upper(), f"{one.said(_unknown, convert)} [{cited(book, one.citation)}]")
            for key, one in setup.lines.items()
        )
        yield Section(setup.title, (Labelled(told),), part=True)


def on_card(book: Book, setup: Setup, number: Number, convert: Convert) -> tuple[Said, Labelled]:
    """A set-up under its title with the numbers of the job, each step with its source in short."""
    told = tuple(
        (STEPS[key].upper(), f"{one.said(number, convert)} [{briefly(book, one.citation)}]")
        for key, one in setup.lines.items()
    )
    return Said((setup.title,), "strong"), Labelled(told)


def on_paper(book: Book, setup: Setup, number: Number, convert: Convert, steps: Iterable[str]) -> Said:
    """Six short lines at most, run together, with the numbers of the job; behind them once where they came from.

    Args:
        book: has the sources.
        setup: what to tell.
        number: gives the numbers of the job.
        convert: writes the lengths that are no numbers of the job.
        steps: those that there is room for.
    """
    marks: dict[str, str] = {}
    told = []
    for key in steps:
        one = setup.lines.get(key)
        if one is None:
            continue
        mark = "" if one.citation.label == UNMARKED else briefly(book, one.citation)
        behind = f" {marks.setdefault(mark, f'({len(marks) + 1})')}" if mark else ""
        told.append(f"{STEPS[key]}: {one.in_short(number, convert).removesuffix('.')}{behind}.")
    sources = [f"{mark} {source}" for source, mark in marks.items()]
    if len(marks) < len(told):
        sources.append(("else " if marks else "") + cited(book, Citation(UNMARKED)))
    return Said((f"{' '.join(told)} [{'; '.join(sources)}]",))
