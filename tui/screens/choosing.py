"""What the field in hand can hold, as a list, where it is one of several."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from tui import screens
from tui.screens.chooser import Choice

if TYPE_CHECKING:
    from tui.screens.base_screen import BaseScreen
    from tui.view.fields import Fields


def list_choices(screen: BaseScreen, title: str, form: Fields, put: Callable[[str], None]) -> bool:
    """List the choices of the field in hand.

    Args:
        screen: that the field stands on.
        title: of the field.
        form: has it in hand.
        put: lets the chosen one stand there.

    Returns:
        Whether there is anything to list.
    """
    now = form.chosen()
    choices = [
        Choice(one, form.words(one), "This stands there now." if one == now else "")
        for one in form.choices()
        if one
    ]
    if choices:
        screen.app.push_screen(screens.PickScreen(screen.session, title, choices, put, now))
    return bool(choices)
