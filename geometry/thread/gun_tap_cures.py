"""What puts a gash right that ends too early, runs too far or leaves too little land: tried, with nothing wrong after it."""

from __future__ import annotations

import math
from collections.abc import Iterator

from geometry.calculation import Inputs
from geometry.cures import Step, Way, that_help, way
from geometry.preconditions import GeometryError
from geometry.sentences import Rounding, angle, length, ratio
from geometry.thread.gun_tap import LEAST_BEYOND, MOST_BEYOND, GunTap, gun_tap

READ = 0.03
"""What a chamfer is made shorter by (mm) where the end is cut too: a thou of an inch, to which the cut is read, and a bit."""

SHORTEST = 1.0
"""Threads in the chamfer under which none is advised: a bottoming tap has one to two (TM 9-254, 4-27)."""

NO_CUT = way("cut nothing off the end", "cut_back")


def ways_out(given: Inputs) -> tuple[Way, ...]:
    """The ways after which nothing is wrong with the gash: single changes, or else the first pair of changes that does.

    The end is cut off only where the gash is there already; one that is still to be ground is planned otherwise.

    Args:
        given: the inputs as they are.

    Returns:
        The ways; none where nothing that is named here helps.

    Example:
        >>> given = Inputs({"diameter": 10.0, "pitch": 1.5, "spiral_point_angle": math.radians(10),
        ...                 "chamfer_threads": 4.0, "threads_beyond": 4.0})
        >>> [one.says for one in ways_out(given)][0]
        'let it go {threads} threads past the chamfer'
    """

    def cures(other: Inputs) -> bool:
        return not gun_tap(other).faults

    found = that_help(_single(given), given, cures)
    if found:
        return found
    return next((pair for one in _pairs(given) if (pair := that_help([one], given, cures))), ())


def _longest(tap: GunTap) -> float:
    """How far the gash may run up the flute, in mm, as the land allows it."""
    return tap.deepest / math.tan(tap.after.angle)


def _over(tap: GunTap) -> float:
    """By how much the gash is too long, in mm, and so too deep or too far past the chamfer; below zero it is not."""
    return tap.after.length - min(_longest(tap), tap.chamfer + MOST_BEYOND * tap.pitch)


def _under(tap: GunTap) -> float:
    """By how much the gash is too short to go past the chamfer, in mm."""
    return tap.chamfer + LEAST_BEYOND * tap.pitch - tap.after.length


def _single(given: Inputs) -> Iterator[Way]:
    tap = gun_tap(given)
    if given.has("spiral_point_depth"):
        yield from _ground(given, tap)
    else:
        yield from _threads(tap)
        yield from _slope(given, tap)
    yield from _cut_less(given, tap)
    yield from _chamfer(given, tap)


def _threads(tap: GunTap) -> Iterator[Way]:
    says = "let it go {threads} threads past the chamfer"
    lost = (tap.before.length - tap.after.length) / tap.pitch
    if _under(tap) > 0:
        yield way(says, "threads_beyond", "threads", ratio(_up(LEAST_BEYOND + lost)))
    elif _over(tap) > 0:
        yield way(says, "threads_beyond", "threads", ratio(_down(tap.beyond - _over(tap) / tap.pitch + lost)))


def _slope(given: Inputs, tap: GunTap) -> Iterator[Way]:
    """The angle at which enough of the land is left.

    Derived: with ``X`` the length wanted, less what is cut off, and ``s`` ground off, the depth ``X tan(a) + s / cos(a)`` is
    ``W`` where ``W cos(a) - X sin(a) = s``.
    """
    if tap.after.depth <= tap.deepest:
        return
    along, stock = (
        tap.before.length - given.number_or("cut_back", 0.0),
        given.number_or("stock_per_sharpening", 0.0),
    )
    reach = math.hypot(along, tap.deepest)
    if stock < reach:
        slope = math.acos(stock / reach) - math.atan2(along, tap.deepest)
        if slope < given.number_or("least_spiral_point_angle", 0.0):
            return
        yield way(
            "lay the gash at {slope} to the axis", "spiral_point_angle", "slope", angle(slope, Rounding.DOWN)
        )


def _ground(given: Inputs, tap: GunTap) -> Iterator[Way]:
    """What a gash that is there is ground, or its end cut back."""
    stock, per_length = given.number_or("stock_per_sharpening", 0.0), math.sin(tap.after.angle)
    if (under := _under(tap)) > 0:
        more = length(stock + under * per_length, Rounding.UP)
        yield way("grind {stock} off the gash", "stock_per_sharpening", "stock", more)
    if (over := _over(tap)) > 0:
        back = length(given.number_or("cut_back", 0.0) + over, Rounding.UP)
        yield way("cut {back} off the end", "cut_back", "back", back)
        if stock > over * per_length:
            less = length(stock - over * per_length, Rounding.DOWN)
            yield way("grind only {stock} off the gash", "stock_per_sharpening", "stock", less)


def _cut_less(given: Inputs, tap: GunTap) -> Iterator[Way]:
    under = _under(tap)
    if under > 0 and given.number_or("cut_back", 0.0) > under:
        back = length(given.number("cut_back") - under, Rounding.DOWN)
        yield way("cut only {back} off the end", "cut_back", "back", back)


def _chamfer(given: Inputs, tap: GunTap) -> Iterator[Way]:
    """Fewer threads in the chamfer: a gash that is there goes past it, one that is planned gets shorter with it."""
    if not given.has("spiral_point_depth"):
        yield from _chamfer_of(given, tap, tap.chamfer - (tap.after.length - _longest(tap)))
    elif _under(tap) > 0:
        yield from _chamfer_of(given, tap, tap.chamfer - _under(tap))


def _chamfer_of(given: Inputs, tap: GunTap, long: float) -> Iterator[Way]:
    if not SHORTEST * tap.pitch <= long < tap.chamfer:
        return
    if given.has("chamfer_length"):
        says = "make the chamfer {chamfer} long"
        yield way(says, "chamfer_length", "chamfer", length(long, Rounding.DOWN))
    else:
        says = "have {chamfer} threads in the chamfer"
        yield way(says, "chamfer_threads", "chamfer", ratio(_down(long / tap.pitch)))


def _pairs(given: Inputs) -> Iterator[Way]:
    tap = gun_tap(given)
    first = [NO_CUT] if given.has("cut_back") else []
    if given.has("spiral_point_depth"):
        first += _chamfer_of(given, tap, _longest(tap) - LEAST_BEYOND * tap.pitch - READ)
    else:
        first += _threads(tap)
    for one in first:
        changed = given.but({step.key: _value(step) for step in one.steps})
        try:
            others = [*_single(changed)]
        except GeometryError:  # With the first change alone nothing would be left of the gash.
            continue
        for other in others:
            if other.steps[0].key != one.steps[0].key:
                yield Way(f"{one.says} and {other.says}", (*one.steps, *other.steps))


def _value(step: Step) -> float | None:
    return None if step.amount is None else step.amount.value


def _up(threads: float) -> float:
    return math.ceil(threads * 100 - 1e-9) / 100


def _down(threads: float) -> float:
    return math.floor(threads * 100 + 1e-9) / 100
