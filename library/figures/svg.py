"""A tooth as SVG for a printed sheet: circle, edge, face, land and heel, their depth drawn larger than it is.

Depth is measured square to the chord from edge to heel, and nothing is drawn wider than it is, so that a flat stays
straight and the circle becomes a higher arch; from a land of 45 degrees on nothing is exaggerated. Only what stands
outside the circle is filled.

Only lines, shapes and text: no script, no style sheet, nothing that is fetched from elsewhere.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from html import escape
from itertools import pairwise

from geometry.figure import Figure
from library.figures.proud import proud_parts
from library.sanitize import sanitize

WIDTH, HEIGHT = 520, 215
"""Of the drawing, in its own units, ten of which are a millimetre of the sheet."""

SIDE, TOP, BOTTOM = 86, 40, 8
"""Room for words at each side and above, and for the end of a line below."""

LETTERS = 36
"""The size of its words: ten points on the sheet."""

DEEPEST_SHARE = 0.45
"""How deep arch and deepest drop together are drawn, as a share of the way from edge to heel."""

TRUE_FROM = math.pi / 4
"""From this land angle on everything is drawn to scale."""

STEPS = (1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 100, 150, 200, 300, 400, 500, 1000)
"""How many times deeper a drop may be drawn; round numbers, so that a person can take them back in his head."""

FEW = 24
"""A profile with fewer points than this is cut finer before it is drawn."""

DASHES = ("", "18 10", "5 8")
"""The first profile is drawn whole, the others broken, so that they can be told apart in black."""

Point = tuple[float, float]


@dataclass(frozen=True)
class _View:
    """From the tooth to the paper.

    Attributes:
        radius: of the circle, in mm.
        land_angle: from edge to heel, in radians.
        times: how many times deeper everything is drawn.
        scale: units of paper for a millimetre.
        left: of the drawing, in mm.
        top: of the drawing, in mm.
    """

    radius: float
    land_angle: float
    times: float
    scale: float = 1.0
    left: float = 0.0
    top: float = 0.0

    def bench(self, angle: float, drop: float = 0.0) -> Point:
        """A place behind the edge in mm, the middle of the land uppermost, the edge on the left."""
        turned = angle - self.land_angle / 2
        out, chord = self.radius - drop, self.radius * math.cos(self.land_angle / 2)
        return out * math.sin(turned), -chord - self.times * (out * math.cos(turned) - chord)

    def paper(self, place: Point) -> Point:
        return (place[0] - self.left) * self.scale + SIDE, (place[1] - self.top) * self.scale + TOP

    def at(self, angle: float, drop: float = 0.0) -> Point:
        return self.paper(self.bench(angle, drop))


def exaggeration(figure: Figure) -> int:
    """How many times deeper the drops are drawn than they are.

    Example:
        >>> from geometry.figure import curve
        >>> exaggeration(Figure(6.0, 0.5, (curve("eccentric", 0.5, lambda angle: 0.3 * angle),)))
        4
    """
    deepest = max((abs(drop) for one in figure.curves for _, drop in one.points), default=0.0)
    if deepest <= 0 or figure.land_angle >= TRUE_FROM:
        return 1
    span = deepest + figure.radius * (1 - math.cos(figure.land_angle / 2))
    fitting = [step for step in STEPS if step * span <= DEEPEST_SHARE * figure.radius * figure.land_angle]
    return fitting[-1] if fitting else 1


def caption(figure: Figure) -> str:
    """What each line of the drawing is, and how deep the drops are drawn.

    Example:
        >>> from geometry.figure import curve
        >>> caption(Figure(6.0, 0.5, (curve("eccentric", 0.5, lambda angle: 0.3 * angle),)))
        'whole line: eccentric; thin line: the circle; drops drawn 4 times as deep, the circle too'
    """
    times = exaggeration(figure)
    names = [
        f"{('whole', 'broken', 'dotted')[min(n, 2)]} line: {one.name}" for n, one in enumerate(figure.curves)
    ]
    drawn = "drops drawn true" if times == 1 else f"drops drawn {times} times as deep, the circle too"
    return "; ".join([*names, "thin line: the circle", drawn])


def svg(figure: Figure, title: str) -> str:
    """Draw a tooth.

    Args:
        figure: circle, land and profiles, the chosen one first.
        title: for whoever cannot see the drawing.

    Returns:
        One ``<svg>`` element.
    """
    times = exaggeration(figure)
    view = _fitted(figure, times)
    parts = [
        *_metal(figure, view),
        _line(_arc(view, -0.12 * figure.land_angle, 1.12 * figure.land_angle), "2", "10 8"),
        *_profiles(figure, view),
        *_quarters(figure, view),
        *_words(figure, view),
    ]
    name = escape(sanitize(title))
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDTH} {HEIGHT}" role="img" aria-label="{name}" '
        f'font-family="Arial, Helvetica, Liberation Sans, sans-serif" font-size="{LETTERS}"><title>{name}</title>{"".join(parts)}</svg>'
    )


def _fitted(figure: Figure, times: float) -> _View:
    """The view in which circle, profiles and a piece of the face just fit on the paper."""
    view = _View(figure.radius, figure.land_angle, times)
    places = [
        view.bench(angle)
        for angle in (-0.12 * figure.land_angle, 0.0, figure.land_angle / 2, 1.12 * figure.land_angle)
    ]
    places += [view.bench(angle, drop) for one in figure.curves for angle, drop in _fine(one.points)]
    places += [_face_foot(figure, view), _heel_foot(figure, view)]
    left, right = min(x for x, _ in places), max(x for x, _ in places)
    top, bottom = min(y for _, y in places), max(y for _, y in places)
    scale = min((WIDTH - 2 * SIDE) / (right - left), (HEIGHT - TOP - BOTTOM) / (bottom - top))
    spare = (WIDTH - 2 * SIDE) / scale - (right - left)
    return _View(figure.radius, figure.land_angle, times, scale, left - spare / 2, top)


def _depth(figure: Figure) -> float:
    """How much of the tooth is shown below its land, in mm."""
    return 0.45 * figure.radius * min(figure.land_angle, 1.2)


def _face_foot(figure: Figure, view: _View) -> Point:
    """Where the face leaves the drawing: inward from the edge, leaning back under the land for a positive rake."""
    x, y = view.bench(0.0)
    lean = figure.rake_angle + figure.land_angle / 2
    return x + _depth(figure) * math.sin(lean), y + _depth(figure) * math.cos(lean)


def _heel_foot(figure: Figure, view: _View) -> Point:
    heel = figure.curves[0].points[-1] if figure.curves else (figure.land_angle, 0.0)
    x, y = view.bench(*heel)
    return x - 0.25 * _depth(figure), y + _depth(figure)


def _metal(figure: Figure, view: _View) -> list[str]:
    """Face and heel of the tooth, and what stands outside the circle, filled."""
    edge, foot = view.at(0.0), view.paper(_face_foot(figure, view))
    chosen = figure.curves[0].points if figure.curves else ((figure.land_angle, 0.0),)
    return [
        *(
            f'<polygon points="{_points([view.at(*place) for place in outline])}" fill="#000" stroke="none"/>'
            for outline in proud_parts(chosen)
        ),
        _line([edge, foot], "4"),
        _line([view.at(*chosen[-1]), view.paper(_heel_foot(figure, view))], "2.5"),
    ]


def _profiles(figure: Figure, view: _View) -> list[str]:
    found = []
    for number, one in enumerate(figure.curves):
        places = [view.at(*place) for place in _fine(one.points)]
        found.append(_line(places, "3" if number else "5", DASHES[min(number, 2)]))
    return found


def _fine(points: Sequence[Point]) -> list[Point]:
    """A profile with enough points that what is even round the circle is drawn round."""
    if len(points) >= FEW:
        return list(points)
    found = list(points[:1])
    for (angle, drop), (next_angle, next_drop) in pairwise(points):
        for step in range(1, FEW + 1):
            share = step / FEW
            found.append((angle + share * (next_angle - angle), drop + share * (next_drop - drop)))
    return found


def _quarters(figure: Figure, view: _View) -> list[str]:
    """Short strokes outside the circle where the indicator is read: edge, quarters and heel."""
    length = 14 / view.scale
    found = []
    for quarter in range(5):
        angle = figure.land_angle * quarter / 4
        outside = -length / view.times
        found.append(_line([view.at(angle, outside / 3), view.at(angle, outside)], "2.5"))
    return found


def _words(figure: Figure, view: _View) -> list[str]:
    edge, heel = view.at(0.0), view.at(figure.land_angle)
    return [
        _text((edge[0] - 12, edge[1] - 4), "edge", "end"),
        _text((heel[0] + 12, heel[1] - 4), "heel", "start"),
    ]


def _arc(view: _View, start: float, end: float) -> list[Point]:
    return [view.at(start + (end - start) * step / 48) for step in range(49)]


def _points(places: Sequence[Point]) -> str:
    return " ".join(f"{x:.2f},{y:.2f}" for x, y in places)


def _line(places: Sequence[Point], width: str, dash: str = "") -> str:
    broken = f' stroke-dasharray="{dash}"' if dash else ""
    return f'<polyline points="{_points(places)}" fill="none" stroke="#000" stroke-width="{width}"{broken}/>'


def _text(place: Point, words: str, anchor: str) -> str:
    x, y = place
    return f'<text x="{x:.1f}" y="{y:.1f}" text-anchor="{anchor}">{escape(sanitize(words))}</text>'
