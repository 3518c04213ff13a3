"""One thing that is wrong: in a file of the book, on a card, or with an input of a calculation.

Whatever the library validates is answered with issues, so that screens, commands and sheets show them in one way.
Geometry has its own ``Problem`` below this: it knows no text and no unit, only sentences with amounts in them.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from library.sanitize import sanitize

Severity = Literal["error", "warning", "missing"]
"""An ``error`` keeps a value from being read, a card from being closed, a calculation from answering; a ``warning`` does
not; ``missing`` is an error of a form that is only not filled in yet."""


@dataclass(frozen=True)
class Place:
    """Where in a file something stands; line and column count from 1."""

    file: Path
    line: int = 1
    column: int = 1


NOWHERE = Place(Path())
"""The place of what no file holds."""


@dataclass(frozen=True)
class Issue:
    """What is wrong, where, and what to do.

    Attributes:
        where: what it is a part of: the id of a table of the book, the way to a part of a card, the name of a
            calculation; empty for a whole file or a whole card.
        key: which key, quantity or input of it; empty where it is about the whole.
        severity: whether it stops anything.
        wrong: what is wrong, one sentence or more.
        fix: what to do, a sentence; empty where ``wrong`` says it.
        place: file, line and column of what was read from a file.
        flute: which flute, from 1, of what was measured at each; 0 where it is about none.
        counts: how many problems it stands for; more than one where there are more than are told.

    Example:
        >>> issue = Issue("spiral-tap", "rake_angle.low", "error", "It has no unit.", "Write 8 deg.")
        >>> print(issue)
        spiral-tap.rake_angle.low: It has no unit. Write 8 deg.
    """

    where: str
    key: str
    severity: Severity
    wrong: str
    fix: str = ""
    place: Place = NOWHERE
    flute: int = 0
    counts: int = 1

    def __str__(self) -> str:
        """The issue as one line: ``file:line:column: where.key: what is wrong. What to do.``."""
        spot = f"{self.place.file}:{self.place.line}:{self.place.column}" if self.place != NOWHERE else ""
        return sanitize(": ".join(part for part in (spot, self.way, self.text) if part))

    @property
    def way(self) -> str:
        """The way to what is wrong, such as ``spiral-tap.rake_angle`` or ``received.drop``."""
        return ".".join(part for part in (self.where, self.key) if part)

    @property
    def text(self) -> str:
        """What is wrong and what to do."""
        return f"{self.wrong} {self.fix}".strip()

    @property
    def missing(self) -> bool:
        """Whether something is only not there yet, so that a form need not shout."""
        return self.severity == "missing"

    @property
    def state(self) -> Literal["stop", "watch"]:
        """How it stands among the checks of a calculation: what is missing stops nothing by itself."""
        return "stop" if self.severity == "error" else "watch"
