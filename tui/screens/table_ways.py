"""What is done with a table of the book that is no entry: it is read, changed in a form, or its file opened."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

from tui import screens
from tui.screens.in_editor import open_file
from tui.screens.own_table_forms import open_form
from tui.view.text_line import TextLine

if TYPE_CHECKING:
    from collections.abc import Collection

    from library.issue import Place
    from tui.app import Heelclear
    from tui.screens.base_screen import BaseScreen
    from tui.screens.chooser import Chooser

FAMILY = "family"
"""The kind of a family, of which the page tells how its tools fail."""

NO_FORM = (
    "How these tools fail stands in the text of their family, which came with the program. A [[family]] of the same id "
    'with its own fails = "..." in a file of the shop\'s book is read in its place.'
)


def choose_new(screen: Chooser, known: Collection[str]) -> bool:
    """Choose the line that was not there before, if what is sought hides it by showing all again; say whether there is one.

    Args:
        screen: the list.
        known: the ids that were there before; none where nobody looked.
    """
    fresh = next((one.id for one in screen.choices() if one.id not in known), "") if known else ""
    if not fresh:
        return False
    if fresh not in [one.id for one in screen.found()]:
        screen.find = TextLine()
    ids = [one.id for one in screen.found()]
    screen.view.resize(len(ids), screen.view.height)
    screen.view.choose(ids.index(fresh))
    return True


def read_table(screen: BaseScreen, array: str, name: str) -> None:
    """Show a table of the book, to be read; the empty form of a new one.

    Args:
        screen: on which it was chosen.
        array: the kind of table.
        name: its id; empty for a new one.
    """
    if name:
        screen.app.push_screen(screens.OwnTableScreen(screen.session, array, name))
    else:
        open_form(screen.heelclear, array)


def change_table(app: Heelclear, array: str, name: str) -> None:
    """Open the form of a table; what a family says of how its tools fail is written in its file.

    Args:
        app: of the program.
        array: the kind of table.
        name: its id; empty for a new one.
    """
    if array != FAMILY:
        open_form(app, array, name)
    elif (place := own_place(app, array, name)) is not None:
        open_file(app, place)
    else:
        app.say(NO_FORM)


def open_file_of(app: Heelclear, array: str, name: str) -> None:
    """Open the file of a table in the editor, where the shop's book has a part of it.

    Args:
        app: of the program.
        array: the kind of table.
        name: its id.
    """
    place = own_place(app, array, name)
    if place is not None:
        open_file(app, place)
    elif array == FAMILY:
        app.say(NO_FORM)
    else:
        app.say(
            f"The shop's book has no line of this one yet. {app.session.keymap.told('change')} changes it in a form; then "
            "there is something of yours to open."
        )


def can_change(app: Heelclear, array: str, name: str) -> bool:
    """Whether there is a form for a table, or a file of the shop in which it is written."""
    return array != FAMILY or own_place(app, array, name) is not None


def own_place(app: Heelclear, array: str, name: str) -> Place | None:
    """Where the shop's book has a table; nothing where it has no part of it."""
    book = app.session.book
    if book is None:
        return None
    one = book.families.get(name) if array == FAMILY else book.more.get(array, {}).get(name)
    is_own = getattr(one, "layer", "") == "shop"
    return cast("Place", getattr(one, "place", None)) if is_own else None
