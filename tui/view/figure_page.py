"""The drawings of a result: beside the numbers of the calculator, and large on a page of their own."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from geometry.calculation import Result
from geometry.quantities import quantity
from library.book.model import Entry
from library.pages.answer import checks
from library.units.show import show_answer
from library.units.system import Display
from tui.figure.alphabet import Alphabet
from tui.figure.panel import NARROWEST, abreast, drawings, stacked
from tui.figure.quantity_figures import FIGURES, HIGHEST
from tui.view.form import Form
from tui.view.lines import EMPTY, Line, Piece, filled, line, wrap
from tui.view.page_lines import part_lines

NUMBERS, WIDE_NUMBERS = 80, 113
"""Columns of the numbers where drawings stand beside them: on a screen of usual width, and on a wide one."""

_WIDE, _WIDEST = 150, 70
_CHECKS = 3
"""Rows kept for the checks under large drawings, taken up or not, so that the drawings stay where they are."""

_LEAST_LARGE = 8
"""Rows of the large drawings below which the checks under them give way."""

_ROOMY = 16
"""Rows of a page from which one of them may stay empty."""


def column_width(width: int, gap: int) -> int:
    """Columns for drawings beside the numbers; 0 where they have no room there.

    Example:
        >>> column_width(80, 3), column_width(120, 3), column_width(200, 3)
        (0, 37, 70)
    """
    numbers = NUMBERS if width < _WIDE else WIDE_NUMBERS
    left = min(width - numbers - gap, _WIDEST)
    return left if left >= NARROWEST else 0


def figure_column(form: Form, display: Display, width: int, height: int, alphabet: Alphabet) -> list[Line]:
    """What stands beside the numbers: the drawings of the answer, else that of the quantity in hand."""
    result = _result(form)
    drawn = stacked(drawings(result, display), width, height, alphabet) if result is not None else []
    if height - len(drawn) > HIGHEST + 3:
        drawn += [EMPTY, *quantity_figure(form.focus)] if drawn else quantity_figure(form.focus)
    return filled(drawn, height)


def large_figures(
    field: Line,
    waiting: Sequence[Line],
    form: Form,
    display: Display,
    width: int,
    height: int,
    alphabet: Alphabet,
) -> list[Line]:
    """The drawings as large as they go, under the field in hand and the first outputs.

    Args:
        field: the field in hand as a line.
        waiting: what is still to be given or fixed, where there is no answer yet.
        form: what is filled in.
        display: the units.
        width: in cells.
        height: in lines.
        alphabet: the characters to draw with.
    """
    result = _result(form)
    if result is None:
        return filled([field, *waiting, EMPTY, *quantity_figure(form.focus)], height)
    head = [field, *_outputs(result, display, width), *([EMPTY] if height >= _ROOMY else [])]
    room = height - len(head)
    under = max(0, min(_CHECKS + 1, room - _LEAST_LARGE))
    wanted = drawings(result, display)
    drawn = abreast(wanted, width, room - under, alphabet)
    if not wanted:
        drawn = [*wrap("This calculation has no drawing.", width), EMPTY, *quantity_figure(form.focus)]
    meaning = part_lines([(checks(result.checks, display),)], width)
    return filled([*head, *drawn, EMPTY, *meaning], height)


def quantity_figure(key: str) -> list[Line]:
    """The small drawing of a quantity under its name; nothing where it has none."""
    drawing = FIGURES.get(key)
    if drawing is None:
        return []
    return [line(Piece(quantity(key).title, "quiet")), *(line(one) for one in drawing)]


def _outputs(result: Result, display: Display, width: int) -> list[Line]:
    """The first two outputs in one line, or one where two have no room."""
    said = [
        f"{quantity(key).title} {show_answer(value, quantity(key), display)}"
        for key, value in result.outputs.items()
    ]
    both = "  ".join(said[:2])
    return [line(Piece("  " + (both if len(both) + 2 <= width else said[0]), "strong"))] if said else []


def _result(form: Form) -> Result | None:
    """The answer, its tooth with the rake of the book where the calculation does not ask for one."""
    result = form.answer.result if form.answer is not None else None
    if result is None or result.figure is None or result.figure.rake_angle or form.entry is None:
        return result
    return replace(result, figure=replace(result.figure, rake_angle=_usual_rake(form.entry)))


def _usual_rake(entry: Entry) -> float:
    value = entry.values.get("rake_angle")
    return value.usual.number if value is not None and value.usual is not None else 0.0
