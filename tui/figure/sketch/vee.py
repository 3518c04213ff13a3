"""Pictures of a tool in a vee, seen along its axis, and of what is read over it."""

from __future__ import annotations

import math

from tui.figure.sketch.model import (
    Arrow,
    Bow,
    Measure,
    Name,
    Part,
    Sketch,
    dots,
    line,
    part,
    polar,
    ring,
)

_R = 9.0


def _vee(half: float) -> tuple[Part, ...]:
    """A vee of so many degrees to each side, its apex in the middle."""
    return (line(polar((0, 0), 30.0, 90 + half), (0, 0), polar((0, 0), 30.0, 90 - half)),)


def _tool(half: float, flutes: int = 0, radius: float = _R) -> tuple[Part, ...]:
    """The circle of a tool that lies in the vee, with its edges as spokes, one of them on top."""
    centre = (0.0, radius / math.sin(math.radians(half)))
    spokes = (line(centre, polar(centre, radius, 90 + 360 * n / flutes)) for n in range(flutes))
    return (line(*ring(centre, radius)), *spokes)


def sketches() -> dict[str, Sketch]:
    """Quantities of a vee."""
    three = (*_vee(30), *_tool(30, 3))
    five = (*_vee(54), *_tool(54, 5))
    top = _R / math.sin(math.radians(30)) + _R
    higher = 11.0 / math.sin(math.radians(30)) + 11.0
    low = _R / math.sin(math.radians(54))
    master = _tool(30)
    return {
        "vee_angle": Sketch(three, (Bow((0, 0), 8.0, 60, 120, "vee", turns=False),)),
        "fitting_vee_angle": Sketch(
            five,
            (
                Bow((0, 0), 6.0, 36, 144, "fits"),
                part(polar((0, low), _R - 1.5, -54), polar((0, low), _R + 1.5, -54)),
                part(polar((0, low), _R - 1.5, -126), polar((0, low), _R + 1.5, -126)),
            ),
        ),
        "vee_reading": Sketch(
            three, (dots((0, 0), (26, 0)), dots((0, top), (26, top)), Measure((23, 0), (23, top), "reading"))
        ),
        "vee_difference": Sketch(
            (*_vee(30), *master, *_tool(30, 3, 11.0)),
            (
                dots((0, top), (22, top)),
                dots((0, higher), (22, higher)),
                Measure((20, top), (20, higher), "difference"),
                Name((-11, 24), "master", -1),
            ),
        ),
        "master_diameter": Sketch((*_vee(30), *master), (Measure((-_R, 18), (_R, 18), "master"),)),
        "vee_gain": Sketch(
            (*_vee(30), *master, *_tool(30, 0, 11.0)),
            (
                Arrow((0, top + 12), (0, higher + 0.5), "reads more"),
                Measure((_R, 18), (11.0, 22), "larger"),
            ),
        ),
    }
