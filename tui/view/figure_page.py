"""The drawings of a result: beside the numbers of the calculator, and large on a page of their own."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from geometry.calculation import Result
from geometry.quantities import QUANTITIES, quantity
from library.book.model import Entry
from library.calc.answer import Answer
from library.calc.field_titles import title_in
from library.calc.surfaces import LANDS, title_of
from library.calc.taper_reamers import grows
from library.units.show import show_answer
from library.units.system import Display
from tui.figure.alphabet import Alphabet
from tui.figure.panel import NARROWEST, abreast, drawings, stacked
from tui.figure.quantity_figures import SMALL, has_picture, has_sketch, picture_lines
from tui.figure.sketch.cone import grown_of, without_growth
from tui.figure.sketch.section import land_of
from tui.view.form import Form
from tui.view.lines import EMPTY, Line, Piece, filled, line, wrap

NUMBERS, WIDE_NUMBERS = 80, 113
"""Columns of the numbers where drawings stand beside them: on a screen of usual width, and on a wide one."""

_WIDE, _WIDEST = 150, 70
_CHECKS = 3
"""Rows kept for the checks under large drawings, taken up or not, so that the drawings stay where they are."""

_LEAST_LARGE = 8
"""Rows of the large drawings below which the checks under them give way."""

_LEAST_PICTURE = 7
"""Rows of the lowest picture of a quantity."""

_LOWEST = 12
"""Rows that the picture of a quantity takes before the checks under it, where the answer has no drawing."""

_ROOMY = 16
"""Rows of a page from which one of them may stay empty."""


_LARGEST_PICTURE = (100, 30)
"""Columns and rows of a quantity's picture where the screen has more."""


def has_drawing(form: Form) -> bool:
    """Whether there is anything to draw: of the answer, or of the quantity in hand where the answer has nothing.

    Where it is not so, the key for large drawings does nothing and need not be shown.

    Args:
        form: what is filled in.
    """
    result = form.answer.result if form.answer is not None else None
    drawn = result is not None and (result.figure is not None or result.side is not None)
    return drawn or has_picture(pictured(form))


def pictured(form: Form) -> str:
    """The quantity whose picture belongs to the field in hand: of a relief that of its surface, in whose view it is drawn, and so of a land."""
    if form.focus == "land_width" and form.surface in LANDS:
        return land_of(form.surface)
    own = form.slot(form.focus)
    return own if has_picture(own) else form.focus


def drawn_as(named: str, found: Answer | None) -> str:
    """The name of a picture, on a tool that cuts a taper the one that is larger toward the back.

    Args:
        named: of the quantity in hand.
        found: the calculation that says which way the tool tapers; nothing where none does.
    """
    grown = grown_of(named)
    return grown if found is not None and grows(found.inputs) and has_sketch(grown) else named


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
    room = height - len(drawn) - (1 if drawn else 0)
    if room >= _LEAST_PICTURE + 1:
        below = _figure_in_hand(form, width, room, alphabet)
        drawn += [EMPTY, *below] if drawn and below else below
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
        waiting: what the verdict above has no room for: what is still to be given or fixed, and the other checks.
        form: what is filled in.
        display: the units.
        width: in cells.
        height: in lines.
        alphabet: the characters to draw with.
    """
    result = _result(form)
    if result is None:
        head = [field, *waiting, EMPTY]
        return filled([*head, *_figure_in_hand(form, width, height - len(head), alphabet)], height)
    head = [field, *_outputs(result, display, width), *([EMPTY] if height >= _ROOMY else [])]
    room = height - len(head)
    under = max(0, min(_CHECKS + 1, room - _LEAST_LARGE))
    if wanted := drawings(result, display):
        drawn = abreast(wanted, width, room - under, alphabet)
    else:
        drawn = _figure_in_hand(form, width, max(room - under, min(room, _LOWEST)), alphabet)
        drawn = drawn or wrap("This calculation has no drawing.", width)
    return filled([*head, *drawn, EMPTY, *waiting], height)


def _figure_in_hand(form: Form, width: int, height: int, alphabet: Alphabet) -> list[Line]:
    """The picture of the field in hand under its name, that of a relief with its surface and its view."""
    title = title_in(form.sheet, form.focus, form.surface)
    return quantity_figure(drawn_as(pictured(form), form.answer), width, height, alphabet, title)


def quantity_figure(key: str, width: int, height: int, alphabet: Alphabet, title: str = "") -> list[Line]:
    """The picture of a quantity under its name, as large as it goes; nothing where it has none, or no room.

    Args:
        key: of the quantity.
        width: in cells.
        height: in lines, that of the name included.
        alphabet: of the picture.
        title: to stand over it instead of the quantity's own.
    """
    head = wrap(title or _name_of(key), width, "quiet")
    columns, rows = min(width, _LARGEST_PICTURE[0]), min(height - len(head), _LARGEST_PICTURE[1])
    drawn = picture_lines(key, columns, min(rows, max(columns // 2, SMALL[1])), alphabet)
    return [*head, *drawn] if drawn else []


def _name_of(key: str) -> str:
    """What a picture is of: a quantity, or a drop or a land on one surface."""
    if without_growth(key) in QUANTITIES:
        return quantity(without_growth(key)).title
    surface, _, what = key.rpartition("-")
    return title_of("land_width" if key == land_of(surface) else f"axial_{what}", surface)


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
    found = (entry.values.get(key) for key in ("rake_angle", "hook_angle"))
    return next((value.usual.number for value in found if value is not None and value.usual is not None), 0.0)
