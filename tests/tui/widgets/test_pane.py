"""The one widget: it paints what changed, cleans every text, and keeps to ASCII where it has to."""

from __future__ import annotations

import pytest
from textual.app import App, ComposeResult
from textual.geometry import Region

from tui.theme import Theme, theme
from tui.view.lines import Line, Piece, line
from tui.widgets.pane import Pane


class Shows(App[None]):
    """A program that is one pane."""

    def __init__(self, how: Theme) -> None:
        super().__init__(ansi_color=True)
        self.lines: list[Line] = []
        self.pane = Pane(how, lambda width, height: self.lines)

    def compose(self) -> ComposeResult:
        yield self.pane


async def test_only_lines_that_changed_are_painted_again(monkeypatch: pytest.MonkeyPatch) -> None:
    app = Shows(theme())
    app.lines = [line("one"), line("two"), line("three")]
    async with app.run_test(size=(20, 5)):
        painted: list[Region] = []
        monkeypatch.setattr(app.pane, "refresh", lambda *regions: painted.extend(regions))
        app.lines = [line("one"), line("TWO"), line("three"), line("four")]
        app.pane.show()
        assert [(region.y, region.height) for region in painted] == [(1, 1), (3, 1)]


async def test_nothing_is_painted_where_nothing_changed(monkeypatch: pytest.MonkeyPatch) -> None:
    app = Shows(theme())
    app.lines = [line("one")]
    async with app.run_test(size=(20, 5)):
        painted: list[Region] = []
        monkeypatch.setattr(app.pane, "refresh", lambda *regions: painted.extend(regions))
        app.pane.show()
        assert painted == []


async def test_control_characters_and_markup_of_any_text_are_only_shown() -> None:
    app = Shows(theme())
    app.lines = [line(Piece("depth [mm]\x1b]0;x\x07 [bold]b[/bold] \u202e"))]
    async with app.run_test(size=(60, 5)):
        text = app.pane.render_line(0).text.rstrip()
        assert (
            text
            == "depth [mm]\N{REPLACEMENT CHARACTER}]0;x\N{REPLACEMENT CHARACTER} [bold]b[/bold] \N{REPLACEMENT CHARACTER}"
        )


async def test_a_terminal_of_ascii_gets_ascii_of_the_same_width() -> None:
    app = Shows(theme(ascii_only=True))
    app.lines = [line("── Größe … 刃 ±0.1")]
    async with app.run_test(size=(40, 5)):
        strip = app.pane.render_line(0)
        assert strip.text.isascii()
        assert strip.text.rstrip() == "-- Gr??e ~ ?? +0.1"


async def test_every_line_fills_the_width_and_lines_that_are_not_there_are_blank() -> None:
    app = Shows(theme())
    app.lines = [line("a line that is longer than the pane is wide")]
    async with app.run_test(size=(10, 3)):
        assert [app.pane.render_line(y).cell_length for y in range(3)] == [10, 10, 10]
        assert app.pane.render_line(2).text == " " * 10
