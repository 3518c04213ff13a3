"""From a draft to the screen that it was typed on."""

from __future__ import annotations

from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from geometry.quantities import QUANTITIES
from library.drafts.draft_store import Kept
from tui import screens
from tui.screens.confirming import ask
from tui.screens.draft_names import name_of
from tui.screens.left_behind import JOB_CARD
from tui.screens.own_table_forms import DRAFTS, form_of_draft
from tui.screens.table_forms import FORMS_OF_AN_ENTRY, FORMS_OF_THE_BOOK
from tui.screens.texts_form import TEXTS, TextsForm
from tui.screens.value_form import ValueFormScreen
from tui.services.autosave import OF_THIS_RUN

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from library.book.model import Book
    from library.drafts.draft import Draft
    from tui.app import Heelclear
    from tui.screens.base_screen import BaseScreen
    from tui.screens.form import FormScreen
    from tui.session import Session


def screen_of(app: Heelclear, book: Book, draft: Draft) -> BaseScreen | None:
    """The screen that a draft was typed on, or nothing where its entry is gone.

    A form takes up the draft by itself when it is opened; a calculator and a card have it at once.
    """
    if draft.kind == JOB_CARD:
        cards = app.card_service
        return screens.CardScreen(app.session, book, cards, cards.brought_back(draft, book))
    if draft.kind in DRAFTS:
        return form_of_draft(app, draft)
    return _calculator(app.session, draft) if draft.kind == "calculator" else form_of(app.session, draft)


def is_there(app: Heelclear, draft: Draft) -> bool:
    """Whether the book has what a draft is about; a card is brought back whatever became of it."""
    if draft.kind == JOB_CARD:
        return True
    match draft.kind:
        case "calculator":
            return app.session.entry(draft.about) is not None
        case kind:
            form = form_of_draft(app, draft) if kind in DRAFTS else form_of(app.session, draft)
            return form is not None


def form_of(session: Session, draft: Draft) -> FormScreen | None:
    """The form that a draft was typed on, as it would be opened now."""
    if draft.kind == "table":
        return _table_form(session, draft)
    name, _, key = draft.about.rpartition(".")
    entry = session.entry(name)
    if entry is None:
        return None
    if draft.kind == "value" and key in QUANTITIES:
        return ValueFormScreen(session, entry, key)
    return TextsForm(session, entry, key) if draft.kind == "text" and key in TEXTS else None


def _table_form(session: Session, draft: Draft) -> FormScreen | None:
    name, _, about = draft.about.partition(".")
    if name in FORMS_OF_THE_BOOK:
        return FORMS_OF_THE_BOOK[name](session)
    entry = session.entry(about)
    return (
        FORMS_OF_AN_ENTRY[name](session, entry) if entry is not None and name in FORMS_OF_AN_ENTRY else None
    )


def _calculator(session: Session, draft: Draft) -> BaseScreen | None:
    entry = session.entry(draft.about)
    sheet = session.calculators.first(entry) if entry is not None else None
    if entry is None or sheet is None:
        return None
    session.calculators.take_up(entry, draft)
    return screens.CalculatorScreen(session, entry, sheet)


def without_unit(draft: Draft) -> str:
    """What is said of a draft that does not tell the unit of its numbers; empty where there is nothing to say."""
    if draft.kind != "calculator" or draft.units:
        return ""
    return "This draft is older and does not say its unit: numbers without one were read as millimetres. Look at them."


def of_this_run(draft: Draft) -> Kept:
    """A draft that was left in this run, as it stands in the list beside those of earlier ones."""
    return Kept(draft, OF_THIS_RUN)


def ask_to_leave(screen: BaseScreen, calculations: Sequence[str] = ()) -> None:
    """Leave the program; where something typed is lost with it, ask by name first.

    Args:
        screen: asks.
        calculations: titles of the tools for which figures are forgotten.
    """
    app = screen.heelclear
    lost = [
        f"{name_of(screen.session, one)} {one.fields.get('tool.name', '')}".strip()
        for one in app.autosave.not_kept()
    ]
    said = []
    if lost:
        said.append(f"Loses what no disk takes as a draft: {'; '.join(lost)}.")
    if calculations:
        said.append(f"Forgets what was typed into calculations for: {'; '.join(calculations)}.")
    if said:
        ask(screen, "Leave the program?", "Leave", " ".join(said), app.leave)
    else:
        app.leave()


OLD = timedelta(days=30)
"""Since when nobody has touched a draft that is old."""


def put_away_old(screen: BaseScreen, then: Callable[[], None] = lambda: None) -> None:
    """Ask whether to forget the drafts that nobody has touched for long.

    Args:
        screen: asks.
        then: done when they are forgotten.
    """
    put_away(screen, old_drafts(screen.session), then)


def old_drafts(session: Session) -> list[Kept]:
    """The drafts that nobody has touched for long."""
    long_ago = datetime.now() - OLD
    return [one for one in session.left_behind if one.draft.kept.replace(tzinfo=None) < long_ago]


def put_away(screen: BaseScreen, kept: Sequence[Kept], then: Callable[[], None] = lambda: None) -> None:
    """Ask by name whether to forget some drafts.

    Args:
        screen: asks.
        kept: the drafts; where there are none, that is said.
        then: done when they are forgotten.
    """
    wanted = list(kept)
    if not wanted:
        screen.say(f"No draft is older than {OLD.days} days.")
        return

    def drop() -> None:
        for one in wanted:
            screen.heelclear.autosave.forget(one)
            screen.session.left_behind.remove(one)
        screen.say(f"{len(wanted)} put away.")
        then()

    names = [f"{name_of(screen.session, one.draft)} of {one.draft.kept:%Y-%m-%d}" for one in wanted]
    what = f"{len(wanted)} drafts" if len(wanted) > 1 else names[0]
    ask(screen, f"Put {what} away?", "Put away", f"Forgotten for good: {'; '.join(names)}", drop)
