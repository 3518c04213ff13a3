"""A line of the menu that can do nothing as the screen stands is not offered: each line, on every screen, is tried."""

from __future__ import annotations

import itertools
from collections.abc import Callable
from contextlib import AbstractAsyncContextManager, closing
from pathlib import Path
from typing import Any

import pytest

from library.book.opening import open_book
from library.demo import lay_out
from library.drafts.draft import Draft
from library.drafts.draft_store import Drafts
from tui.actions import on_screen
from tui.app import Heelclear
from tui.screens.actions import SHEET, ActionsScreen
from tui.screens.base_screen import BaseScreen, method_of
from tui.session import Session

AtTheYard = Callable[[], AbstractAsyncContextManager[Any]]


@pytest.fixture
def at_the_yard(tmp_path: Path, hands_on: Any) -> AtTheYard:
    """Opens the program on the invented book, each time as it was laid out."""
    numbers = itertools.count()

    def opened() -> AbstractAsyncContextManager[Any]:
        home = tmp_path / str(next(numbers))
        lay_out(home / "yard")
        with closing(Drafts(home / "state" / "drafts", book=home / "yard")) as drafts:
            for about in ("tap-spiral-point-aluminium-bronze.rake_angle", "gone.rake_angle"):
                drafts.keep(Draft("value", about, {"usual": "5 deg"}, {"usual": "4 deg"}))
        app = Heelclear(Session(), lambda: open_book(home / "yard"), home / "yard", home / "state")
        return hands_on(app, home / "yard", (80, 24))  # type: ignore[no-any-return]

    return opened


STATES: dict[str, tuple[str, ...]] = {
    "book": (),
    "book with nothing found": ("gear hob",),
    "book with marks": ("<ctrl+t>", "<ctrl+t>"),
    "book with a size": ("reamer 12 h7",),
    "entry": ("bronze spi", "<enter>"),
    "calculator": ("bronze spi", "<f2>"),
    "calculator without a reading": ("reamer 12 h7", "<f2>"),
    "calculator with an answer": ("dowel", "<f2>", "<f2>", "speed", "<enter>", "100 mm", "<down>", "3000"),
    "calculations": ("dowel", "<f2>", "<f2>"),
    "threads": ("bronze spi", "<f2>", "<f8>", "thread by", "<enter>"),
    "cautions": ("<f4>",),
    "help": ("<f1>",),
    "findings": ("<f8>", "problems", "<enter>"),
    "glossary": ("<f8>", "words explained", "<enter>"),
    "first-jobs": ("<f8>", "first jobs", "<enter>"),
    "machines": ("<f8>", "machines", "<enter>"),
    "machines, a new one": ("<f8>", "machines", "<enter>", "new mach"),
    "machines, a wheel": ("<f8>", "machines", "<enter>", "white cup"),
    "own-tables": ("<f8>", "troubles", "<enter>"),
    "own-tables, set-ups": ("<f8>", "set-ups", "<enter>"),
    "own-table": ("<f8>", "troubles", "<enter>", "<down>", "<enter>"),
    "own-table, a machine of the shop": ("<f8>", "machines", "<enter>", "<enter>"),
    "own-table, a text of a family": ("<f8>", "troubles", "<enter>", "how fail", "<enter>"),
    "changes": ("<f6>",),
    "changes of an entry": ("bronze spi", "<enter>", "<f6>"),
    "form": ("<f8>", "new tool", "<enter>"),
    "form with something in it": ("<f8>", "new tool", "<enter>", "Odd tool"),
    "value": ("bronze spi", "<enter>", "<f6>", "<enter>"),
    "compare": ("<ctrl+t>", "<ctrl+t>", "<ctrl+k>"),
    "drafts": ("<f8>", "unsaved", "<enter>"),
    "draft": ("<f8>", "unsaved", "<enter>", "aluminium", "<ctrl+k>"),
    "draft of what is gone": ("<f8>", "unsaved", "<enter>", "gone", "<ctrl+k>"),
    "review-change": ("bronze spi", "<enter>", "<f6>", "land width", "<enter>", "4 mm", "<ctrl+r>"),
    "print": ("<f7>",),
    "cards": ("<f3>",),
    "cards with nothing found": ("<f3>", "gear hob"),
    "cards with one mark": ("<f3>", "<ctrl+t>"),
    "cards with marks": ("<f3>", "<ctrl+t>", "<ctrl+t>"),
    "batch": ("<f3>", "<ctrl+t>", "<ctrl+t>", "<f8>", "plan", "<enter>"),
    "life": ("<f3>", "t-12", "<f8>", "life", "<enter>"),
    "card, new": ("bronze spi", "<ctrl+f>"),
    "card, empty": ("<f3>", "<ctrl+f>"),
    "card, draft": ("<f3>", "status:draft", "<enter>"),
    "card, closed": ("<f3>", "t-58", "<enter>"),
    "card, closed, its end": ("<f3>", "t-58", "<enter>", *["<ctrl+n>"] * 5),
    "card, settings": ("<f3>", "status:draft", "<enter>", *["<ctrl+n>"] * 3),
    "card, its end": ("<f3>", "status:draft", "<enter>", *["<ctrl+n>"] * 5),
    "card that teaches": ("<f3>", "d-87", "<enter>"),
    "sheet": ("<f3>", "<f7>", "<enter>"),
    "pick": ("<f3>", "status:draft", "<enter>", "<ctrl+n>", "<f6>"),
    "confirm": ("<ctrl+t>", "<f8>", "marks away", "<enter>"),
}  # fmt: skip
"""What is pressed to come to a screen, from the start."""

AWAY = ("suspend", "quit")
"""What leaves the program."""

NO_EDITOR = "names an editor"
"""Where no editor is named, a line that opens a file says so, and which line of which file it is."""

TOLD_ANYWAY = {
    "repaint": "shows the same again",
    "save": "says which faults of the form come first",
}
"""What may leave the screen as it is, and why it is offered all the same."""


def state(app: Any) -> tuple[object, ...]:
    """What a line may change: the screens on top of each other, and what the one in front shows over its last lines."""
    screen = app.screen
    shown = tuple(map(repr, screen.body(100, 60))) if hasattr(screen, "body") else ()
    return (
        [id(one) for one in app.screen_stack],
        screen.title_text(),
        screen.state_text(),
        shown,
        tuple(app.session.page.marked),
        tuple(app.session.marked_cards),
        tuple(app.session.first_steps.left),
        app.session.machine,
        app._return_code,
    )


def is_its_own(screen: BaseScreen, name: str) -> bool:
    """Whether a screen does something in its own way; what all do alike is tried in the book alone."""
    here = on_screen(screen.WHERE)
    if name not in here or here[name].opens:
        return False
    return getattr(type(screen), method_of(here[name])) is not getattr(
        BaseScreen, method_of(here[name]), None
    )


async def lines_that_do_nothing(at_the_yard: AtTheYard, keys: tuple[str, ...]) -> list[tuple[str, str]]:
    """Each offered line that left everything as it was, with the sentence that came of it."""
    found = []
    async with at_the_yard() as hands:
        await hands.do(*keys)
        await hands.until(lambda: hands.app.session.left_behind or keys)
        below = hands.app.screen
        if below.WHERE == "menu":
            return []
        names = [
            one.id
            for one in ActionsScreen(hands.app.session, below).choices()
            if keys == () or is_its_own(below, one.id)
        ]
    for name in names:
        if name in AWAY or name.startswith(SHEET):
            continue
        async with at_the_yard() as hands:
            await hands.do(*keys)
            screen, before = hands.app.screen, state(hands.app)
            await hands.press("f8")
            menu = hands.app.screen
            assert isinstance(menu, ActionsScreen)
            menu.take(next(one for one in menu.choices() if one.id == name))
            await hands.settle()
            is_told = name in TOLD_ANYWAY or NO_EDITOR in screen.said
            if hands.app.is_running and state(hands.app) == before and not is_told:
                found.append((name, screen.said))
    return found


@pytest.mark.depth
@pytest.mark.parametrize("where", STATES)
async def test_whatever_the_menu_offers_does_something(at_the_yard: AtTheYard, where: str) -> None:
    assert await lines_that_do_nothing(at_the_yard, STATES[where]) == []
