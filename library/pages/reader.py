"""The width and roles that a page is laid out for, and the styled runs of its lines."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from typing import NamedTuple

from library.pages.page import Role
from library.pages.texts import wrapped
from library.sanitize import sanitize


class Run(NamedTuple):
    """Some text in one role."""

    text: str
    role: Role = "plain"


Line = tuple[Run, ...]
EMPTY: Line = ()


@dataclass(frozen=True)
class Reader:
    """The medium that a page is laid out for.

    Attributes:
        width: of a line.
        clean: makes a text harmless there.
        measure: how much of a line a text takes.
    """

    width: int = 80
    clean: Callable[[str], str] = sanitize
    measure: Callable[[str], int] = len

    def lines(self, text: str, role: Role = "plain", first: str = "", rest: str = "") -> list[Line]:
        """A text in lines of one role."""
        return [(Run(one, role),) for one in wrapped(text, self.width, first, rest, self.clean)]

    def padded(self, text: str, width: int, *, right: bool = False) -> str:
        """A text as wide as its column; one that is wider stays whole."""
        blanks = " " * (width - self.measure(text))
        return blanks + text if right else text + blanks

    def widest(self, texts: Iterable[str]) -> int:
        """How much the widest of some texts takes."""
        return max(map(self.measure, texts), default=0)

    def narrower(self, by: int) -> Reader:
        """The same with so much less room."""
        return replace(self, width=self.width - by)


def text_of(line: Line) -> str:
    """The words of a line without their roles."""
    return "".join(run.text for run in line)


def beside(left: Sequence[Line], right: Sequence[Line], width: int, reader: Reader) -> list[Line]:
    """Two columns as one, each line of the left one filled up to ``width``."""
    found: list[Line] = []
    for place in range(max(len(left), len(right))):
        one = left[place] if place < len(left) else EMPTY
        other = right[place] if place < len(right) else EMPTY
        blanks = " " * (width - reader.measure(text_of(one)))
        found.append((*one, Run(blanks), *other) if other else one)
    return found
