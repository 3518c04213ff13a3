"""What stands at the right of a card on a wide screen: a drawing, what the tool came with, and its earlier cards."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import zip_longest

from geometry.calculation import Result
from geometry.edge.views import PLANES
from geometry.quantities import QUANTITIES, quantity
from geometry.role import HEEL
from geometry.sentences import Kind
from geometry.surfaces import SURFACES
from library.calc.surfaces import LAND, LANDS, title_of
from library.calc.taper_reamers import DIRECTION
from library.cards.history import Visit
from library.cards.inspecting import received_reliefs
from library.cards.job import Job
from library.cards.shall_be import DROPS, indicator_points, relief_key
from library.units.show import show
from library.units.system import Display
from tui.figure.alphabet import Alphabet
from tui.figure.panel import LOWEST, drawings, stacked
from tui.figure.quantity_figures import has_sketch
from tui.figure.sketch.section import drop_of, land_of
from tui.view.card_readings import in_short
from tui.view.card_row import Row
from tui.view.figure_page import drawn_as, quantity_figure
from tui.view.lines import EMPTY, Line, Piece, fit, line, padded, rule, wrap

MOST_VISITS = 6
"""Earlier cards of the tool that are shown, the last ones."""


STILL = 9
"""Lines of the picture in the empty half of a narrow screen, its name among them."""


LEAST_TEXT = 8
"""Cells of the narrowest column of words."""


class Drawn:
    """Draws the answer of a calculation, once while it, the room and the characters stay the same.

    Args:
        alphabet: the characters to draw with.
    """

    def __init__(self, alphabet: Alphabet) -> None:
        self._alphabet = alphabet
        self._last: tuple[Result, str, int, int] | None = None
        self._lines: list[Line] = []
        self._pictured: tuple[str, int, int] | None = None
        self._picture: list[Line] = []

    def picture(self, key: str, width: int, height: int) -> list[Line]:
        """The picture of a quantity under its name; nothing where it has none, or no room."""
        if self._pictured != (key, width, height):
            self._picture = quantity_figure(key, width, height, self._alphabet)
            self._pictured = (key, width, height)
        return self._picture

    def lines(self, result: Result, display: Display, width: int, height: int) -> list[Line]:
        """The most telling drawing of an answer, in so many cells and lines."""
        last = self._last
        if last is None or last[0] is not result or last[1:] != (display.lengths, width, height):
            self._lines = stacked(drawings(result, display)[:1], width, height, self._alphabet)
            self._last = (result, display.lengths, width, height)
        return self._lines


def side_lines(
    job: Job, row: Row, visits: Sequence[Visit], left: int | None, width: int, height: int, drawn_by: Drawn
) -> list[Line]:
    """The drawing as high as the rest leaves room, then what the tool came with, then its life.

    Args:
        job: the card worked out.
        row: the line in hand.
        visits: the earlier cards of the tool, the oldest first.
        left: sharpenings that are left; nothing where nobody knows.
        width: in cells.
        height: in lines.
        drawn_by: draws.
    """
    below = [*_came_with(job, width), *_life(job, visits, left, width)]
    room = height - len(below) - (1 if below else 0)
    drawn = _drawing(job, row, width, room, drawn_by) if room >= LOWEST else []
    return [*drawn, *([EMPTY] if drawn and below else []), *below][:height]


def still_lines(
    job: Job,
    section: str,
    visits: Sequence[Visit],
    left: int | None,
    width: int,
    height: int,
    drawn_by: Drawn,
) -> list[Line]:
    """What stands in the empty half of a narrow screen: the same for every line of a step, so that no key redraws it.

    While the tool is measured or planned it is how its relief is read or lies; after grinding what it came with, and its life.

    Args:
        job: the card worked out.
        section: the part of the card that is in hand.
        visits: the earlier cards of the tool, the oldest first.
        left: sharpenings that are left; nothing where nobody knows.
        width: in cells.
        height: in lines, at most.
        drawn_by: draws.
    """
    told = [*_came_with(job, width), *_life(job, visits, left, width)] if section == "after" else []
    if len(told) > height:
        told = _came_with(job, width)
    if len(told) > height:
        return []
    room = min(height - len(told) - (1 if told else 0), STILL)
    named = relief_key(job) if section == "wanted" else _drop_read(job)
    drawn = drawn_by.picture(named, width, room) if named and room >= STILL else []
    return [*told, *([EMPTY] if told and drawn else []), *drawn]


def _drop_read(job: Job) -> str:
    """The name of the picture of the drop that is read behind an edge, which along the axis is that of its surface."""
    return _axial_drop(job) or ("drop" if job.choice.surface else "")


def _axial_drop(job: Job) -> str:
    """The name of the picture of a drop along the axis on the surface of the job; empty where it is read otherwise, or has none."""
    named = drop_of(job.choice.surface) if indicator_points(job) == "along-the-axis" else ""
    return named if named and has_sketch(named) else ""


def _drawing(job: Job, row: Row, width: int, room: int, drawn_by: Drawn) -> list[Line]:
    """The small drawing of the quantity in hand, then the tooth of the calculation in hand, else of the job."""
    result = _result(job, row.key if row.section == "settings" else "")
    named = _pictured(job, row)
    small = drawn_by.picture(named, width, room // 2 if result else room) if named else []
    small = [*small, EMPTY] if small else []
    large = drawn_by.lines(result, job.display, width, room - len(small)) if result else []
    return [*small, *large]


def _pictured(job: Job, row: Row) -> str:
    """The name of the picture of the quantity in hand: a drop along the axis, or a land, has that of its surface."""
    named = _axial_drop(job) if row.quantity in DROPS else ""
    if row.quantity == LAND and job.choice.surface in LANDS:
        named = land_of(job.choice.surface)
    if named and has_sketch(named):
        return named
    tapers = next((one.answer for one in job.steps if DIRECTION in one.answer.inputs), None)
    return drawn_as(row.quantity, tapers)


def _result(job: Job, name: str) -> Result | None:
    """The answer of the calculation in hand where it has a drawing, else that of the heel; nothing that must not be ground."""
    steps = [job.step(name) if name else None, job.doing(HEEL), *job.steps]
    for step in steps:
        found = step.answer.result if step is not None and step.works and not step.stopped else None
        if found is not None and (found.figure is not None or found.side is not None):
            return found
    return None


def _came_with(job: Job, width: int) -> list[Line]:
    """What was measured on the tool as it came, and the relief that this means."""
    pairs = [
        (title_of(key, job.choice.surface), in_short(key, found))
        for key, found in job.card.received.items()
        if key in QUANTITIES and any(one.strip() for one in found) and quantity(key).kind is not Kind.CHOICE
    ]
    found = received_reliefs(job) if pairs else ()
    angles = list(dict.fromkeys(form for one in found for form in one.angles))
    for form in angles:
        ends = [one.angles[form] for one in found if form in one.angles]
        least, most = (show(one, Kind.ANGLE) for one in (min(ends), max(ends)))
        name = f"Relief, if {form}" if len(angles) > 1 else "Relief"
        pairs.append((name, most if least == most else f"{least.partition(' ')[0]} to {most}"))
    if not pairs:
        return []
    surface = SURFACES.get(job.choice.surface) if angles else None
    view = (
        wrap(f"of the {surface.title}, {PLANES[surface.view]}", width, "quiet", first="  ", rest="  ")
        if surface
        else []
    )
    # Names take half the room, and what short numbers leave of the rest.
    widest = max(width // 2 + 2, width - max(len(text) for _, text in pairs))
    room = min(max(len(title) for title, _ in pairs) + 2, widest, max(width - LEAST_TEXT, 0))
    told = []
    for title, text in pairs:
        names, texts = wrap(title, max(room - 1, 1), "quiet"), wrap(text, width - room)
        told += [
            line(*padded(one, room), *other) for one, other in zip_longest(names, texts, fillvalue=EMPTY)
        ]
    return [line(Piece("CAME WITH", "head")), *told, *view]


def _life(job: Job, visits: Sequence[Visit], left: int | None, width: int) -> list[Line]:
    """A line for each earlier card of the tool: the day, its size before and after, time and result."""
    if not visits and left is None:
        return []
    told = [line(Piece(f"{job.card.tool.name or 'This tool'} BEFORE", "head"))] if visits else []
    for one in visits[-MOST_VISITS:]:
        day = one.card.started.isoformat() if one.card.started else one.card.id
        sizes = " > ".join(_size(job, size) for size in (one.before, one.after) if size is not None)
        told.append(
            line(
                Piece(f"{day}  ", "quiet"),
                fit(f"{sizes}  {one.card.ended}".strip(), max(width - 12, 0)).rstrip(),
            )
        )
    if left is not None:
        told += wrap(f"{left} sharpening{'' if left == 1 else 's'} left.", width)
    return [*([rule(width)] if told else []), *told]


def _size(job: Job, size: float) -> str:
    return show(size, Kind.LENGTH, job.display).partition(" ")[0]
