"""A page with what stands at its foot, as one screen shows both."""

from __future__ import annotations

from library.units.system import METRIC, Display
from tui.view.calculator_page import CalculatorPage
from tui.view.lines import Line, filled


def whole(
    page: CalculatorPage, width: int, height: int, display: Display = METRIC, *, large: bool = False
) -> list[Line]:
    """The calculator between its title and its keys, exactly ``height`` lines."""
    foot = page.foot(display, width, height + 2)
    return filled([*page.body(display, width, max(height - len(foot), 0), large=large), *foot], height)
