"""How a machine or a wheel is written down: what to write, and where."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from tui.screens.reading import Reading
from tui.view.lines import EMPTY, Line, Piece, line, wrap

if TYPE_CHECKING:
    from tui.session import Session

FILES = {
    "machine": (
        "machines.toml",
        "Read every number off your own machine; those below only show how it is written.",
        """schema = 1

[[machine]]
id = "my-grinder"
title = "The grinder by the window"
index_ratio = 40
plate_holes = [15, 16, 18, 21]
spindle_speeds = ["2800 rpm", "4200 rpm"]

[machine.graduations.wheel-head]
division = "0.01 mm"
sets = ["wheel_head_height"]
more = "up"
less = "down"

[machine.graduations.tooth-rest]
title = "tooth rest"
division = "0.01 mm"
sets = ["tooth_rest_height"]
more = "down"
less = "up"

[machine.graduations.indicator]
division = "0.01 mm"
reads = ["drop"]
""",
    ),
    "wheel": (
        "wheels.toml",
        "Read the rating off the wheel itself; a wheel without a readable rating is not used.",
        """schema = 1

[[wheel]]
id = "white-cup"
title = "White cup wheel"
shape = "type-6-straight-cup"
diameter = "98 mm"
grit = "60"
rated_speed = "25 m/s"
dressed = 2026-11-25
""",
    ),
}
"""The file, what to mind, and a beginning, for a machine and for a wheel."""


class EquipmentScreen(Reading):
    """A beginning to copy.

    Args:
        session: what the program knows.
        what: ``machine`` or ``wheel``.
        shop: the shop's folder.
    """

    WHERE = "equipment"

    def __init__(self, session: Session, what: str, shop: Path) -> None:
        super().__init__(session)
        self._what = what
        self._shop = shop

    def title_text(self) -> str:
        """What is to be written."""
        return f"How a {self._what} is written down"

    def text(self, width: int) -> list[Line]:
        """Where to write, what to mind, and what to write."""
        name, mind, beginning = FILES[self._what]
        where = f"Write something like this with any editor into {self._shop / name}. The book is read again by itself."
        lines = [*wrap(where, width), EMPTY, *wrap(mind, width, "warn"), EMPTY]
        return [*lines, *(line(Piece(f"  {one}", "typed")) for one in beginning.splitlines())]
