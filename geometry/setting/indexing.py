"""Indexing by a crank and plates: whole turns and holes for each move, and what they leave over.

One hole of a circle of ``H`` holes turns the spindle of a head with ratio ``N`` by one part in ``N H`` of a
turn. Whatever is not a whole number of such parts is met to the nearest hole, counted from the first edge
and not from the last, so that the error never grows beyond half a hole.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from geometry.preconditions import GeometryError, refuse, require_positive
from geometry.sentences import angle, count

CIRCLES = (24, 25, 28, 30, 34, 37, 38, 39, 41, 42, 43, 46, 47, 49, 51, 53, 54, 57, 58, 59, 62, 66)
"""The circles of one plate, both sides: US Army Ordnance course OD1644-8, figure 11, index plate and sector."""

TURN_TOLERANCE = math.radians(0.05)
"""How far a list of angles may miss a whole turn, so that sevenths of a turn may be typed to two decimals."""

EXACT = 1e-9
"""An error in radians that is only the rounding of an angle typed in degrees; it moves an edge by nothing."""

LEAST_SPACING = math.radians(1)
"""Edges closer than this are one edge."""


@dataclass(frozen=True)
class Move:
    """One move of the crank.

    Attributes:
        turns: whole turns.
        holes: spaces them, the one the pin starts from not counted.
        angle: how far it turns the tool, in radians.
        error: how far past its place the tool then stands, counted from the first edge, in radians.
    """

    turns: int
    holes: int
    angle: float
    error: float


def needed_circle(divisions: int, ratio: int) -> int:
    """The smallest circle that divides the turn evenly; every multiple of it does too.

    Relation: the move ``N / Z`` in lowest terms has this denominator.

    Args:
        divisions: how many edges, from one.
        ratio: turns of the crank for one of the spindle, from one.

    Returns:
        The number of holes.

    Raises:
        GeometryError: when either is below one.

    Example:
        >>> needed_circle(6, 40)
        3
    """
    divisions, ratio = _whole("flutes", divisions), _whole("index_ratio", ratio)
    return divisions // math.gcd(divisions, ratio)


def exact_circles(divisions: int, ratio: int, circles: Sequence[int]) -> tuple[int, ...]:
    """Those of ``circles`` that divide the turn evenly, the largest first.

    Args:
        divisions: how many edges, from one.
        ratio: turns of the crank for one of the spindle, from one.
        circles: numbers of holes, each from one.

    Returns:
        The circles, which may be none.

    Raises:
        GeometryError: when a number is below one.

    Example:
        >>> exact_circles(6, 40, (18, 20, 39))
        (39, 18)
    """
    needed = needed_circle(divisions, ratio)
    return tuple(
        holes for holes in sorted(circles, reverse=True) if _whole("plate_holes", holes) % needed == 0
    )


def worst_even_error(divisions: int, ratio: int, circle: int) -> float:
    """The greatest error of evenly spaced edges on a circle, each met to the nearest hole.

    Relation: the places fall on all multiples of one part in ``q`` of a hole, ``q`` the denominator of
    ``N H / Z`` in lowest terms, so the worst of them is ``floor(q / 2) / q`` of a hole away.

    Args:
        divisions: how many edges, from one.
        ratio: turns of the crank for one of the spindle, from one.
        circle: number of holes, from one.

    Returns:
        The error in radians, from zero.

    Raises:
        GeometryError: when a number is below one.

    Example:
        >>> worst_even_error(7, 40, 49)
        0.0
    """
    steps = _whole("index_ratio", ratio) * _whole("plate_holes", circle)
    parts = _whole("flutes", divisions) // math.gcd(divisions, steps)
    return (parts // 2) / parts * 2 * math.pi / steps


def even_moves(divisions: int, ratio: int, circle: int) -> tuple[Move, ...]:
    """Every move from edge to edge, once round, each edge met to the nearest hole.

    Args:
        divisions: how many edges, from one.
        ratio: turns of the crank for one of the spindle, from one.
        circle: number of holes, from one.

    Returns:
        As many moves as edges; the last comes back to the first edge without error.

    Raises:
        GeometryError: when a number is below one.

    Example:
        >>> first = even_moves(7, 40, 21)[0]
        >>> first.turns, first.holes
        (5, 15)
    """
    divisions = _whole("flutes", divisions)
    steps = _whole("index_ratio", ratio) * _whole("plate_holes", circle)
    part = 2 * math.pi / steps
    found, before = [], 0
    for place in range(1, divisions + 1):
        reached = (2 * place * steps + divisions) // (2 * divisions)
        error = (reached * divisions - place * steps) / divisions * part
        found.append(_move(reached - before, circle, part, error))
        before = reached
    return tuple(found)


def listed_moves(places: Sequence[float], ratio: int, circle: int) -> tuple[Move, ...]:
    """The moves to places given as angles from the first edge, each met to the nearest hole.

    Args:
        places: angles in radians from the first edge, rising.
        ratio: turns of the crank for one of the spindle, from one.
        circle: number of holes, from one.

    Returns:
        One move for each place.

    Raises:
        GeometryError: when a number is below one.

    Example:
        >>> [move.holes for move in listed_moves([math.radians(0.9)], 40, 20)]
        [2]
    """
    part = 2 * math.pi / (_whole("index_ratio", ratio) * _whole("plate_holes", circle))
    found, before = [], 0
    for place in places:
        reached = math.floor(place / part + 0.5)
        error = reached * part - place
        found.append(_move(reached - before, circle, part, 0.0 if abs(error) < EXACT else error))
        before = reached
    return tuple(found)


def worst_listed_error(places: Sequence[float], ratio: int, circle: int) -> float:
    """The greatest error of the places given, each met to the nearest hole.

    Args:
        places: angles in radians from the first edge.
        ratio: turns of the crank for one of the spindle, from one.
        circle: number of holes, from one.

    Returns:
        The error in radians, from zero.

    Raises:
        GeometryError: when a number is below one.

    Example:
        >>> round(math.degrees(worst_listed_error([math.radians(0.4)], 40, 23)) * 60, 2)
        0.52
    """
    part = 2 * math.pi / (_whole("index_ratio", ratio) * _whole("plate_holes", circle))
    worst = max(abs(math.floor(place / part + 0.5) * part - place) for place in places)
    return 0.0 if worst < EXACT else worst


def places_of(spacing: Sequence[float]) -> tuple[float, ...]:
    """Where the edges stand, as angles from the first, for a list of spacings once round.

    Args:
        spacing: from each edge to the next, in radians, each at least ``LEAST_SPACING``.

    Returns:
        As many angles; the last is the whole turn exactly.

    Raises:
        GeometryError: when the angles miss a whole turn by more than ``TURN_TOLERANCE``.

    Example:
        >>> [round(math.degrees(place), 6) for place in places_of([math.radians(a) for a in (100, 140, 120)])]
        [100.0, 240.0, 360.0]
    """
    if min(spacing) < LEAST_SPACING * (1 - EXACT):
        raise refuse("spacing_angles", "Two edges only {small} apart are one edge; every angle must be {least} or more.", {
            "small": angle(min(spacing)), "least": angle(LEAST_SPACING)})  # fmt: skip
    whole = math.fsum(spacing)
    if abs(whole - 2 * math.pi) > TURN_TOLERANCE:
        raise refuse(
            "spacing_angles",
            "The angles add up to {whole} and not to a whole turn of {turn}; they are {off} {way}.",
            {
                "whole": angle(whole),
                "turn": angle(2 * math.pi),
                "off": angle(abs(whole - 2 * math.pi)),
                "way": "over" if whole > 2 * math.pi else "short",
            },
        )
    reached = [math.fsum(spacing[:edge]) for edge in range(1, len(spacing))]
    return (*reached, 2 * math.pi)


def _move(holes: int, circle: int, part: float, error: float) -> Move:
    turns, beyond = divmod(holes, circle)
    return Move(turns, beyond, holes * part, error)


def _whole(key: str, number: int) -> int:
    if require_positive(key, number) != int(number):
        raise GeometryError("This must be a whole number.", key)
    return int(number)


def same_count(spacing: Sequence[float], flutes: int) -> None:
    """See that there is one angle for each edge.

    Args:
        spacing: the angles given.
        flutes: how many edges the tool has.

    Raises:
        GeometryError: when their numbers differ.
    """
    if len(spacing) != flutes:
        raise refuse(
            "spacing_angles",
            "Give one angle for each of the {flutes} edges, not {given}.",
            {"flutes": count(flutes), "given": count(len(spacing))},
        )
