"""Histories and plans of cards as text for a person."""

from __future__ import annotations

from geometry.calculations import calculation_doing
from geometry.role import LASTING
from geometry.sentences import Kind
from library.cards.history import History
from library.cards.planning import Plan
from library.cards.settings_lines import SettingLine
from library.units.show import show
from library.units.system import Display
from tui.commands.printing import line, paragraph, table


def life(found: History, display: Display) -> None:
    """Print the life of a tool, the oldest card first."""

    def size(value: float | None) -> str:
        return "" if value is None else show(value, Kind.LENGTH, display)

    rows = [("card", "came with", "left with", "min", "result")]
    rows += [
        (visit.card.id, size(visit.before), size(visit.after), visit.card.minutes, visit.card.result)
        for visit in found.visits
    ]
    table(rows, indent="", right=(1, 2, 3))
    line()
    if found.size is not None:
        line(f"Last measured: {size(found.size)}.")
    if found.left is None:
        line(
            f"Sharpenings left: not known; answer the calculation {calculation_doing(LASTING).name} on a card of this tool."
        )
    else:
        line(f"Sharpenings left: {found.left}, as of card {found.left_as_of}.")


def batch(found: Plan) -> None:
    """Print a batch in the order in which it is ground."""
    line("Set once, and leave")
    _settings(found.stays)
    for number, turn in enumerate(found.turns, 1):
        line()
        edges = f", {turn.flutes} flutes" if turn.flutes else ""
        left = (
            ""
            if turn.left is None
            else f", {turn.left} sharpening{'' if turn.left == 1 else 's'} left after it"
        )
        line(f"{number}. {turn.card.id}  {turn.card.title}{edges}{left}")
        _settings(turn.changes)
        if not turn.changes:
            line("   nothing to change")
    line()
    saved = found.changes_as_given - found.changes
    many = "1 setting changes" if found.changes == 1 else f"{found.changes} settings change"
    said = f"{many} between the cards"
    paragraph(
        f"{said}, {saved} fewer than in the order named."
        if saved
        else f"{said}; the order named is as good as any."
    )


def _settings(lines: tuple[SettingLine, ...]) -> None:
    table([(one.title, one.value, one.graduation) for one in lines], indent="   ")
