"""The one widget: it holds lines, and repaints those that changed."""

from __future__ import annotations

from collections.abc import Callable

from rich.segment import Segment
from textual.geometry import Region, Size
from textual.strip import Strip
from textual.widget import Widget

from library.sanitize import sanitize
from tui.ascii_text import in_ascii
from tui.theme import Theme
from tui.view.lines import EMPTY, Line, Piece

Draw = Callable[[int, int], list[Line]]

EDGE = Piece(" │ ", "rule")
"""Between a pane and the one at its left."""


class Pane(Widget, inherit_bindings=False):
    """Lines of text over a part of the screen, drawn line by line.

    All text goes through ``sanitize`` here, so that nothing can reach the terminal as a control
    sequence, and none of it is ever read as markup.
    """

    DEFAULT_CSS = "Pane { width: 1fr; height: 1fr; }"
    ALLOW_SELECT = False

    def __init__(
        self, look: Theme, draw: Draw, name: str = "", edge: Callable[[], bool] = lambda: False
    ) -> None:
        """Make a pane.

        Args:
            look: how roles are shown.
            draw: gives the lines for a width and a height.
            name: by which the style sheet knows it.
            edge: says whether a line parts it from what stands at its left.
        """
        super().__init__(id=name or None)
        self._look = look
        self._draw = draw
        self._edge = edge
        self._drawn_for: Size | None = None
        self._lines: list[Line] = []

    def show(self) -> None:
        """Draw again; only lines that differ from the shown ones are painted."""
        if self._drawn_for is None:
            return
        old, self._lines = self._lines, self._drawn()
        if len(old) != len(self._lines) and self.styles.is_auto_height:
            self.refresh(layout=True)
            return
        count = max(len(old), len(self._lines))
        changed = [y for y in range(count) if _at(old, y) != _at(self._lines, y)]
        if changed:
            self.refresh(*(Region(0, y, self.size.width, 1) for y in changed))

    @property
    def text(self) -> list[str]:
        """The words of each line shown, as they are sent to the terminal."""
        return ["".join(self._clean(piece.text) for piece in one).rstrip() for one in self._lines]

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        """As many lines as there are, where the style sheet leaves the height to them."""
        return len(self._draw(width, viewport.height))

    def render_line(self, y: int) -> Strip:
        """One line as cells; the first one asked for at a new size has all of them drawn."""
        if self._drawn_for != self.size:
            self._drawn_for = self.size
            self._lines = self._drawn()
        styles = self._look.styles
        segments = [Segment(self._clean(piece.text), styles[piece.role]) for piece in _at(self._lines, y)]
        return Strip(segments).adjust_cell_length(self.size.width, styles["plain"])

    def _drawn(self) -> list[Line]:
        width, height = self.size
        if not self._edge():
            return self._draw(width, height)
        lines = self._draw(max(width - len(EDGE.text), 1), height)
        return [(EDGE, *one) for one in [*lines, *[EMPTY] * (height - len(lines))]]

    def _clean(self, text: str) -> str:
        return in_ascii(sanitize(text)) if self._look.ascii else sanitize(text)


def _at(lines: list[Line], y: int) -> Line:
    return lines[y] if y < len(lines) else EMPTY
