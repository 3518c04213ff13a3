"""What the program itself wants only after the first frame, each loaded when it is first asked for.

from tui import later
later.show(1.0, Kind.LENGTH, display)
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from tui.doors import lazily

if TYPE_CHECKING:
    from library.drafts.shelf import Drafts as Drafts
    from library.units.show import show as show
    from tui.services.book_service import BookService as BookService
    from tui.services.card_service import CardService as CardService
    from tui.services.editor import Editor as Editor
    from tui.services.git_service import GitService as GitService

LATER = {
    "BookService": "tui.services.book_service",
    "CardService": "tui.services.card_service",
    "Drafts": "library.drafts.shelf",
    "Editor": "tui.services.editor",
    "GitService": "tui.services.git_service",
    "show": "library.units.show",
}
"""Every such thing, and the module that it lies in."""

if not TYPE_CHECKING:
    __getattr__ = lazily(LATER)
