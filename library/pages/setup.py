"""How a tool is ground, as parts of a page: beside an entry, on a card with its numbers, and in six short lines on paper."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from library.book.model import Book, Citation
from library.calc.citation import briefly, cited
from library.guidance.model import AT_A_GLANCE, ON_PAPER, STEPS, Setup
from library.guidance.told import Told
from library.pages.page import Labelled, Said, Section, Sources

Number = Callable[[str], str]
"""Gives the number of a quantity with its unit, or nothing."""

LABEL = "SET UP"

UNMARKED = "common practice"
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


def beside_entry(setup: Setup, tag: Callable[[Citation], str], *, by_lines: bool = False) -> tuple[str, str]:
    """A set-up behind one label, each line with the tag of its source.

    Args:
        setup: what to tell.
        tag: gives the tag of a source.
        by_lines: tells each step whole on a line of its own; else what is read at a glance stands in one paragraph.
    """
    lines = []
    told = _steps(setup, whole=by_lines)
    for key, one in told:
        said = one.said() if by_lines else one.in_short()
        behind = "" if one.citation.label == UNMARKED else f" {tag(one.citation)}"
        lines.append(f"{STEPS[key]}: {said.removesuffix('.')}{behind}.")
    unmarked = any(one.citation.label == UNMARKED for _, one in told)
    title = f"{setup.title} ({tag(Citation(UNMARKED))} where unmarked)." if unmarked else f"{setup.title}."
    return LABEL, ("\n" if by_lines else " ").join((title, *lines))


def in_full(book: Book, found: Sequence[Setup]) -> Iterator[Section]:
    """Set-ups whole, each step with its source in words."""
    for setup in found:
        told = tuple(
            (STEPS[key].upper(), f"{one.said()} [{cited(book, one.citation)}]")
            for key, one in setup.lines.items()
        )
        yield Section(setup.title, (Labelled(told),), part=True)


def on_card(book: Book, setup: Setup, number: Number) -> tuple[Said, Labelled]:
    """A set-up under its title with the numbers of the job, each step with its source in short."""
    told = tuple(
        (STEPS[key].upper(), f"{one.said(number)} [{briefly(book, one.citation)}]")
        for key, one in setup.lines.items()
    )
    return Said((setup.title,), "strong"), Labelled(told)


def on_paper(book: Book, setup: Setup, number: Number) -> tuple[Labelled, Sources]:
    """At most six short lines with the numbers of the job, and below them once where they came from."""
    chosen = {key: setup.lines[key] for key in ON_PAPER if key in setup.lines}
    marks: dict[str, str] = {}
    told = []
    for key, one in chosen.items():
        mark = marks.setdefault(briefly(book, one.citation), f"({len(marks) + 1})")
        told.append((STEPS[key], f"{one.in_short(number)} {mark}"))
    return Labelled(tuple(told)), Sources({mark: source for source, mark in marks.items()})
