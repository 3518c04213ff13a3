"""The picture of a surface behind its edge, in the section in which its relief is given, and the tools it lies on."""

from __future__ import annotations

import math

from tui.figure.sketch.model import Arrow, Bow, Measure, Name, Part, Path, Sketch, dots, line, moved, part

RELIEF, SECOND = 16.0, 34.0
"""Of the drawn surface and of the second facet behind it, in degrees; large enough to be seen."""

_REACH = 24.0


def fallen(across: float, degrees: float = RELIEF) -> tuple[float, float]:
    """A place behind the edge on a surface that falls at an angle."""
    return across, -across * math.tan(math.radians(degrees))


def surface(*, second: bool = False) -> tuple[Part, ...]:
    """Edge, face and the ground surface, one facet or two, under the level way of the edge."""
    corner = fallen(9.0)
    heel = (_REACH, corner[1] + fallen(_REACH - 9.0, SECOND)[1]) if second else fallen(_REACH)
    ground = ((0.0, 0.0), corner, heel) if second else ((0.0, 0.0), heel)
    return (
        dots((0.0, 0.0), (_REACH + 2, 0.0)),
        line((1.5, -13.0), *ground, (_REACH, -15.0)),
        Name((0.0, 0.0), "edge", -1),
    )


def first_angle(text: str = "relief") -> tuple[Part, ...]:
    """The relief of the first facet, marked."""
    return (Bow((0.0, 0.0), 19.0, 0.0, -RELIEF, text),)


def second_angle(text: str = "second") -> tuple[Part, ...]:
    """The relief of the second facet, marked against the way of the edge."""
    corner = fallen(9.0)
    return (dots(corner, (_REACH, corner[1])), Bow(corner, 13.0, 0.0, -SECOND, text))


_TOOLS: dict[str, tuple[tuple[Path, ...], Path]] = {
    "land": (
        (line((0, 6), (20, 6)), line((0, 0), (20, 0)), line((4, 0), (10, 6)), line((11, 0), (17, 6))),
        part((4, 0), (10, 6)),
    ),
    "thread": (
        (line((0, 2), (0, 5)), line((20, 5), (20, 2))),
        part((0, 5), (2, 7), (4, 5), (6, 7), (8, 5), (10, 7), (12, 5), (14, 7), (16, 5), (18, 7), (20, 5)),
    ),
    "chamfer": (
        (line((0, 0), (0, 2)), line((10, 6), (12, 5), (14, 7), (16, 5), (18, 7), (20, 5))),
        part((0, 2), (2, 3.4), (4, 2.8), (6, 5), (8, 4), (10, 6)),
    ),
    "cone": ((line((8, 7), (20, 7)), line((8, -7), (20, -7)), line((0, 0), (8, -7))), part((0, 0), (8, 7))),
    "shoulder": (
        (line((0, 0), (0, 3), (9, 3)), line((12, 7), (20, 7))),
        part((9, 3), (12, 7)),
    ),
    "lip": (
        (line((6, 7), (20, 7)), line((6, -7), (20, -7)), line((0, 0), (6, -7))),
        part((0, 0), (6, 7)),
    ),
    "bevel": (
        (line((0, 0), (0, 3)), line((4, 6), (20, 6))),
        part((0, 3), (4, 6)),
    ),
    "end": (
        (line((0, 6), (20, 6)), line((0, 0), (0, 0.5))),
        part((0, 0.5), (0, 6)),
    ),
}
"""The side of a tool with the surface that is asked for, drawn thick; the point is at the left."""


def tool_side(name: str) -> tuple[tuple[Part, ...], tuple[Part, ...]]:
    """A tool from the side at the left of the section: the tool, and its surface."""
    outlines, thick = _TOOLS[name]
    axis = dots((-2, 0), (22, 0))
    return moved((axis, *outlines), -32.0, -9.0), moved((thick,), -32.0, -9.0)


def of_surface(name: str, *, second: bool = False) -> Sketch:
    """The relief of a surface of a tool: where it is, and its angle."""
    tool, thick = tool_side(name)
    angles = second_angle() if second else first_angle()
    return Sketch((*tool, *surface(second=second)), (*thick, *angles))


def drop_of(name: str) -> str:
    """The name of the picture of a drop that is read along the axis on a surface.

    Example:
        >>> drop_of("end")
        'end-drop'
    """
    return f"{name}-drop"


def land_of(name: str) -> str:
    """The name of the picture of the land behind the edges of a surface.

    Example:
        >>> land_of("end")
        'end-land'
    """
    return f"{name}-land"


def _land(name: str) -> Sketch:
    """The land behind the edge of a surface, from edge to heel, and where it lies on the tool."""
    tool, thick = tool_side(name)
    ends = (dots((0.0, 0.0), (0.0, 5.0)), dots(fallen(_REACH), (_REACH, 5.0)))
    return Sketch((*tool, *surface()), (*thick, *ends, Measure((0.0, 4.0), (_REACH, 4.0), "land")))


def _read_along(name: str) -> Sketch:
    """What an indicator reads behind the edge of a surface along the axis, and where it points on the tool."""
    tool, thick = tool_side(name)
    pointing = Arrow((-39.0, -4.5), (-31.0, -4.5), "")
    read_at = 16.0
    return Sketch((*tool, *surface()), (*thick, pointing, Measure(fallen(read_at), (read_at, 0.0), "drop")))


def sketches() -> dict[str, Sketch]:
    """The reliefs of all surfaces, and what is read along the axis on those that lie across it."""
    found = {
        "relief_angle": Sketch(surface(), (Bow((0.0, 0.0), 19.0, 0.0, -RELIEF, "relief angle"),)),
        "secondary_relief_angle": Sketch(surface(second=True), second_angle("secondary")),
        "primary_land": Sketch(
            surface(second=True),
            (
                part((0.0, 0.0), fallen(9.0)),
                Measure((0.0, 4.0), (9.0, 4.0), "primary land"),
                dots(fallen(9.0), (9.0, 5.0)),
                dots((0.0, 0.0), (0.0, 5.0)),
            ),
        ),
        "compare_by": Sketch(
            surface(),
            (
                Bow((0.0, 0.0), 14.0, 0.0, -RELIEF, "angle"),
                dots(fallen(_REACH), (_REACH + 12, fallen(_REACH)[1])),
                dots((_REACH, 0.0), (_REACH + 12, 0.0)),
                Measure((_REACH + 10, fallen(_REACH)[1]), (_REACH + 10, 0.0), "or drop"),
            ),
        ),
        "least_relief_angle": _limit(),
        "greatest_relief_angle": _greatest(),
        "relief_lower_limit": _end_of_range("at least", -RELIEF / 2),
        "relief_upper_limit": _end_of_range("at most", -RELIEF * 1.5),
    }
    for name in _TOOLS:
        word = "axial" if name == "axial" else name
        found[f"{word}_relief_angle"] = of_surface(name)
        found[f"second_{word}_relief_angle"] = of_surface(name, second=True)
    return (
        found | {drop_of(name): _read_along(name) for name in ("end", "lip")} | {land_of("end"): _land("end")}
    )


def _end_of_range(said: str, angle: float) -> Sketch:
    """A limit of the relief beside the surface that keeps it."""
    end = (_REACH * math.cos(math.radians(angle)), _REACH * math.sin(math.radians(angle)))
    return Sketch(surface(), (dots((0.0, 0.0), end), Bow((0.0, 0.0), 19.0, 0.0, angle, said)))


def _limit() -> Sketch:
    """The relief that no shoulder of a step tool may fall short of."""
    steps = (line((0, 0), (0, 2), (5, 2)), line((7, 4), (12, 4)), line((14, 7), (20, 7)))
    shoulders = (part((5, 2), (7, 4)), part((12, 4), (14, 7)))
    base = moved((dots((-2, 0), (22, 0)), *steps), -32.0, -9.0)
    marks = (dots((0.0, 0.0), fallen(_REACH, 10.0)), Bow((0.0, 0.0), 19.0, 0.0, -10.0, "at least"))
    return Sketch((*base, *surface()), (*moved(shoulders, -32.0, -9.0), *marks))


def _greatest() -> Sketch:
    """The relief at the small end of a cone."""
    tool = (
        line((8, 7), (20, 7)),
        line((8, -7), (20, -7)),
        line((2, -2), (8, -7)),
        line((2, -2), (2, 2), (8, 7)),
    )
    base = moved((dots((-2, 0), (22, 0)), *tool), -32.0, -9.0)
    marks = moved((part((2, -2), (2, 2)),), -32.0, -9.0)
    return Sketch((*base, *surface()), (*marks, *first_angle("steepest")))
