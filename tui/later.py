"""What the program itself wants only after the first frame, each loaded when it is first asked for.

from tui import later
later.show(1.0, Kind.LENGTH, display)
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from tui.doors import lazily

if TYPE_CHECKING:
    from tomllib import loads as loads

    from library.drafts.draft_store import Drafts as Drafts
    from library.search.finding import by_condition as by_condition
    from library.shop_threads.laying import threads_called as threads_called
    from library.units.show import show as show
    from tui.calculators import Calculators as Calculators
    from tui.services.book_service import BookService as BookService
    from tui.services.card_service import CardService as CardService
    from tui.services.editor import Editor as Editor
    from tui.services.git_service import GitService as GitService

LATER = {
    "BookService": "tui.services.book_service",
    "Calculators": "tui.calculators",
    "CardService": "tui.services.card_service",
    "Drafts": "library.drafts.draft_store",
    "Editor": "tui.services.editor",
    "GitService": "tui.services.git_service",
    "by_condition": "library.search.finding",
    "loads": "tomllib",
    "show": "library.units.show",
    "threads_called": "library.shop_threads.laying",
}
"""Every such thing, and the module that it lies in."""

if not TYPE_CHECKING:
    __getattr__ = lazily(LATER)
