"""The steps of a job card in their order, from the tool to the end of the job, each with its rows."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from library.calc.cautions import Doing
from library.cards.job import Job
from tui.view.card_after_rows import after_rows
from tui.view.card_quantity_rows import received_rows, wanted_rows
from tui.view.card_row import Opened, Row
from tui.view.card_settings_rows import settings_rows
from tui.view.card_tool_rows import end_rows, tool_rows


@dataclass(frozen=True)
class CardStep:
    """One step.

    Attributes:
        title: in a word.
        rows: gives its lines.
        sections: the parts of a card whose problems belong here.
        doing: what is done there, by which its cautions are ordered.
    """

    title: str
    rows: Callable[[Job, Opened], list[Row]]
    sections: frozenset[str]
    doing: Doing


STEPS = (
    CardStep(
        "Tool", tool_rows, frozenset({"tool", "family", "machine", "wheel", "entry", "units"}), "mounting"
    ),
    CardStep("Received", received_rows, frozenset({"received", "wrong"}), "handling"),
    CardStep("Wanted", wanted_rows, frozenset({"wanted"}), "handling"),
    CardStep("Set", settings_rows, frozenset({"settings"}), "grinding"),
    CardStep("After", after_rows, frozenset({"after"}), "grinding"),
    CardStep("End", end_rows, frozenset({"notes", "minutes", "result", "remarks"}), "handling"),
)
"""In the order of a job; any of them may be left out or come back to."""


def step_of(way: str) -> int:
    """The number of the step, from 0, on which a place of a card is.

    Example:
        >>> step_of("received.drop"), step_of("notes#1")
        (1, 5)
    """
    section = way.partition(".")[0].partition("#")[0]
    return next((number for number, step in enumerate(STEPS) if section in step.sections), 0)


def last_typed(now: Mapping[str, str], started: Mapping[str, str] | None) -> str:
    """The place farthest on of a card in which something was typed; empty where there is none.

    Args:
        now: the texts of the card.
        started: those that it had when it was begun; nothing where nobody knows.

    Example:
        >>> last_typed({"minutes": "20", "tool.size": "M12"}, {"tool.size": "M10"})
        'minutes'
    """
    if started is None:
        return ""
    typed = [way for way in {**now, **started} if now.get(way, "") != started.get(way, "")]
    return sorted(typed, key=step_of)[-1] if typed else ""
