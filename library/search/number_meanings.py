"""What the numbers of a search mean for what it found: an angle, a name of the tool, or its size."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

from library.book.rows import Rows
from library.search.by_angle import DRILL, OF_A_DRILL, called_by_angle, has_an_angle, is_an_angle, of_angle
from library.search.by_value import POINTS, with_point
from library.search.size_patterns import STEPS
from library.search.sizes import Size, Sought
from library.search.step_sizes import IS_STEPPED

HAVE_STEPS = STEPS | {"subland"}
"""Words for tools with steps, whose shoulders have an angle of their own."""


class Meant(NamedTuple):
    """What the numbers mean.

    Attributes:
        found: the rows that have the angles, or are called by the numbers.
        sizes: the others, in the order in which they stand there.
        angles: degrees that those have.
        absent: degrees that none has.
        lost: degrees beside a tool that is not called by any.
    """

    found: Sequence[int]
    sizes: tuple[Size, ...] = ()
    angles: tuple[str, ...] = ()
    absent: tuple[str, ...] = ()
    lost: tuple[str, ...] = ()


def meanings(
    rows: Rows,
    sought: Sought,
    words: Sequence[str],
    found: Sequence[int],
    called_by: Callable[[str, Sequence[int]], list[int] | None],
) -> Meant:
    """Tell angles and names from sizes.

    Args:
        rows: of the book.
        sought: what is searched for.
        words: of it that say something.
        found: the numbers of the rows that have them.
        called_by: those of some rows that are called by a number.
    """
    if not sought.numbers and not sought.degrees:
        return Meant(found)
    families = rows.words.families
    by_angle = called_by_angle(words, families)
    drills = called_by_angle(words, families, (DRILL,))
    sizes: list[Size] = []
    angles: list[str] = []
    absent: list[str] = []
    lost: list[str] = []
    has_steps = not HAVE_STEPS.isdisjoint(words)
    has_angles = any(rows.words.groups[row] in drills and has_an_angle(rows, row) for row in found)
    for place, number in enumerate([*sought.degrees, *sought.numbers]):
        is_told = place < len(sought.degrees)
        # One angle is enough, but for a tool with steps: what stands beside it is the size.
        taken = angles + absent
        is_free = not sought.degrees and (not taken or (has_steps and number not in taken))
        if by_angle and (is_told or (is_free and is_an_angle(number, sought.size, sought.numbers))):
            held, is_angle = of_angle(rows, number, found, by_angle), True
        elif is_angle := is_told or (is_free and has_angles and number in OF_A_DRILL):
            held = of_angle(rows, number, found, ()) | {*(called_by(number, found) or ())}
            if number not in POINTS and has_steps:
                held |= _of_any_shoulder(rows, found)
        else:
            held = with_point(rows, number).intersection(found) if number in POINTS else set()
            held |= {*(called_by(number, found) or ())}
        if held:
            found = [row for row in found if row in held]
        if is_angle:
            (angles if held else absent if by_angle or drills else lost).append(number)
        elif not held:
            sizes.append(Size(number))
    return Meant(found, tuple(sizes), tuple(angles), tuple(absent), tuple(lost))


def _of_any_shoulder(rows: Rows, found: Sequence[int]) -> set[int]:
    """Tools with steps of which the book does not say which angle their shoulders have."""
    said = rows.values_of("included_angle")
    return {row for row in rows.values_of(IS_STEPPED).keys() & {*found} if row not in said}
