"""The one place that uses names private to Textual: it sends only the cells that changed, and knows more keys.

Textual sends every line of every region that was refreshed. Over a slow line that is most of the
wait, so the update is laid over a picture of the terminal, and only what differs is sent. With a
Textual whose names have another shape, or with ``HEELCLEAR_PAINT=lines`` in the environment,
Textual's own way is used; it shows the same. What is pasted is made plain before Textual reads it.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Iterator
from functools import lru_cache
from typing import cast
from weakref import WeakKeyDictionary

from rich.color import ColorSystem
from rich.console import Console, RenderableType
from rich.segment import Segment
from rich.style import Style
from rich.text import Text
from textual import _xterm_parser, constants
from textual._ansi_sequences import ANSI_SEQUENCES_KEYS
from textual._compositor import ChopsUpdate, CompositorUpdate, LayoutUpdate
from textual._xterm_parser import XTermParser
from textual.app import App
from textual.keys import Keys
from textual.message import Message
from textual.screen import Screen

from tui.changed_cells import ChangedCells
from tui.function_keys import is_sco, sequences
from tui.pasted import PlainPastes

_SYSTEMS = {
    "standard": ColorSystem.STANDARD,
    "256": ColorSystem.EIGHT_BIT,
    "truecolor": ColorSystem.TRUECOLOR,
}


def know_function_keys(term: str = "") -> None:
    """Let the sequences of the keys with a number be known in every mode that a terminal may send them in.

    Args:
        term: the name of the terminal; some of the sequences of SCO mean something else everywhere else.
    """
    known = cast("dict[str, object]", ANSI_SEQUENCES_KEYS)
    for sequence, key in sequences(term).items():
        known[sequence] = (Keys(key),)
    if is_sco(term):
        constants.DISABLE_KITTY_KEY = True  # type: ignore[misc]
        _xterm_parser.SPECIAL_SEQUENCES.discard(_xterm_parser.FOCUSOUT)


def take_pastes_as_text() -> None:
    """Let no escape sequence in what is pasted be taken as a key, a click or a report of the terminal.

    Textual looks for these within a paste too.
    """
    if not hasattr(XTermParser.feed, "is_plain"):
        XTermParser.feed = _with_plain_pastes(XTermParser.feed)  # type: ignore[method-assign,assignment]


def _with_plain_pastes(
    feed: Callable[[XTermParser, str], Iterable[Message]],
) -> Callable[[XTermParser, str], Iterable[Message]]:
    filters: WeakKeyDictionary[XTermParser, PlainPastes] = WeakKeyDictionary()

    def fed(parser: XTermParser, data: str) -> Iterable[Message]:
        harmless = filters.setdefault(parser, PlainPastes()).through(data) if data else ""
        return feed(parser, harmless) if harmless or not data else ()

    fed.is_plain = True  # type: ignore[attr-defined]
    return fed


def has_the_names() -> bool:
    """Whether this Textual has the names that are used here, in the shape that is used here."""
    shapes = (
        (App._display, ("self", "screen", "renderable")),
        (ChopsUpdate.__init__, ("self", "chops", "spans", "chop_ends")),
        (LayoutUpdate.__init__, ("self", "strips", "region")),
        (CompositorUpdate.render_segments, ("self", "console")),
    )
    return all(method.__code__.co_varnames[: len(names)] == names for method, names in shapes)


def is_wanted() -> bool:
    """Whether only changed cells are sent."""
    return os.environ.get("HEELCLEAR_PAINT") != "lines" and has_the_names()


class SparingApp(App[None], inherit_bindings=False):
    """A program that sends only the cells that changed."""

    def __init__(self) -> None:
        super().__init__(ansi_color=True)
        self._cells: ChangedCells | None = None
        self._sparing = is_wanted()

    def forget_cells(self) -> None:
        """Send every cell with the next frame: something else may have written on the terminal."""
        if self._cells is not None:
            self._cells.forget()

    def last_words(self, error: BaseException) -> str:
        """What to print after the program failed with ``error``."""
        raise NotImplementedError

    def _fatal_error(self) -> None:
        """Say in a paragraph what happened; Textual would print the contents of variables, whatever they hold."""
        if self._exception is not None:
            self._exit_renderables.append(Text(self.last_words(self._exception)))
        self._close_messages_no_wait()

    def _display(self, screen: Screen[object], renderable: RenderableType | None) -> None:
        if self._sparing and isinstance(renderable, (ChopsUpdate, LayoutUpdate)):
            width, height = screen.outer_size
            if self._cells is None or (self._cells.width, self._cells.height) != (width, height):
                self._cells = ChangedCells(width, height)
            renderable = _Change(renderable, self._cells)  # type: ignore[assignment]
        super()._display(screen, renderable)


class _Change(CompositorUpdate):
    """An update of the screen that becomes bytes only when it is sent, so that none is left out."""

    def __init__(self, update: ChopsUpdate | LayoutUpdate, cells: ChangedCells) -> None:
        self.update = update
        self.cells = cells

    def render_segments(self, console: Console) -> str:
        system = _SYSTEMS.get(console.color_system or "")
        for x, y, segments in _strips(self.update):
            self.cells.put(x, y, ((text, _codes(style, system)) for text, style, _ in segments if text))
        return self.cells.changes()


def _strips(update: ChopsUpdate | LayoutUpdate) -> Iterator[tuple[int, int, list[Segment]]]:
    """Column, row and content of every piece of an update."""
    if isinstance(update, LayoutUpdate):
        for y, strips in enumerate(update.strips, update.region.y):
            yield update.region.x, y, [segment for strip in strips for segment in strip]
        return
    for y, first, last in update.spans:
        for end, (x, strip) in zip(update.chop_ends[y], update.chops[y].items(), strict=False):
            if strip is not None and x <= last and end > first:
                yield x, y, list(strip.crop(0, min(end, last) - x))


@lru_cache(maxsize=256)
def _codes(style: Style | None, system: ColorSystem | None) -> str:
    """The codes of a style; none for the terminal's own colours, to which every reset returns."""
    if style is None:
        return ""
    prefix, _, _ = style.render("\0", color_system=system).partition("\0")
    codes = prefix.removeprefix("\x1b[").removesuffix("m").split(";")
    return ";".join(code for code in codes if code not in {"39", "49"})
