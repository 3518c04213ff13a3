"""One move of the dividing head in words: turns and holes, and how far it is off its place."""

from __future__ import annotations

from collections.abc import Mapping

from geometry.sentences import Kind
from library.units.show import show


def assumed_head(outputs: Mapping[str, float]) -> str:
    """The dividing-head ratio behind the moves, where no machine names one and none was typed.

    Example:
        >>> assumed_head({"index_ratio": 40.0})
        ', for an assumed head of 40 to 1'
    """
    if "index_ratio" not in outputs:
        return ""
    return f", for an assumed head of {int(outputs['index_ratio'])} to 1"


def move_said(values: Mapping[str, float]) -> str:
    """One move of the crank in words.

    Example:
        >>> move_said({"index_turns": 6.0, "index_holes": 10.0, "index_circle": 15.0})
        '6 turns and 10 holes on the circle of 15'
        >>> move_said({"index_turns": 0.0, "index_holes": 10.0, "index_circle": 15.0, "index_error": -0.01})
        '10 holes on the circle of 15, 0.57 deg short of its place'
    """
    return crank_said(values) + _off(values.get("index_error", 0.0))


def _off(error: float) -> str:
    if not error:
        return ""
    return f", {show(abs(error), Kind.ANGLE)} {'past' if error > 0 else 'short of'} its place"


def off_the_place(values: Mapping[str, float]) -> str:
    """How far a move is off its place (an error in radians), in as few words as do.

    Example:
        >>> off_the_place({"index_error": 0.0})
        'exact'
    """
    error = values.get("index_error", 0.0)
    return f"{show(abs(error), Kind.ANGLE)} {'past' if error > 0 else 'short'}" if error else "exact"


def crank_said(values: Mapping[str, float], and_then: str = " and ") -> str:
    """Turns and holes of one move.

    Args:
        values: of the move: whole turns, holes, and their circle.
        and_then: between turns and holes.

    Example:
        >>> crank_said({"index_turns": 6.0, "index_holes": 10.0, "index_circle": 15.0}, " + ")
        '6 turns + 10 holes on the circle of 15'
    """
    turns, holes, circle = (int(values[f"index_{name}"]) for name in ("turns", "holes", "circle"))
    whole = f"{turns} turn{'' if turns == 1 else 's'}"
    beyond = f"{holes} hole{'' if holes == 1 else 's'} on the circle of {circle}"
    if not holes:
        return whole
    return f"{whole}{and_then}{beyond}" if turns else beyond
