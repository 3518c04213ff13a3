"""From a draft to the screen it was typed on."""

from __future__ import annotations

from typing import TYPE_CHECKING

from tui.view.text_line import TextLine

if TYPE_CHECKING:
    from library.drafts.draft import Draft
    from tui.screens.board import Board
    from tui.screens.form import FormScreen
    from tui.session import Session


def screen_of(session: Session, draft: Draft) -> Board | None:
    """The screen that a draft was typed on, or nothing where its entry is gone.

    A form takes up the draft by itself when it is opened; a calculator has it at once.
    """
    return _calculator(session, draft) if draft.kind == "calculator" else form_of(session, draft)


def form_of(session: Session, draft: Draft) -> FormScreen | None:
    """The form that a draft was typed on, as it would be opened now."""
    if draft.kind == "table":
        return _table_form(session, draft)
    name, _, key = draft.about.rpartition(".")
    entry = session.entry(name)
    if entry is None:
        return None
    from geometry.quantities import QUANTITIES
    from tui.screens.texts_form import TEXTS, TextsForm
    from tui.screens.value_form import ValueFormScreen

    if draft.kind == "value" and key in QUANTITIES:
        return ValueFormScreen(session, entry, key)
    return TextsForm(session, entry, key) if draft.kind == "text" and key in TEXTS else None


def _table_form(session: Session, draft: Draft) -> FormScreen | None:
    from tui.screens.table_forms import FORMS_OF_AN_ENTRY, FORMS_OF_THE_BOOK

    name, _, about = draft.about.partition(".")
    if name in FORMS_OF_THE_BOOK:
        return FORMS_OF_THE_BOOK[name](session)
    entry = session.entry(about)
    return (
        FORMS_OF_AN_ENTRY[name](session, entry) if entry is not None and name in FORMS_OF_AN_ENTRY else None
    )


def _calculator(session: Session, draft: Draft) -> Board | None:
    from tui.screens.calculator import CalculatorScreen

    entry = session.entry(draft.about)
    sheet = session.sheet_for(entry) if entry is not None else None
    if entry is None or sheet is None:
        return None
    form = session.form(entry, sheet)
    form.typed.update({key: TextLine.ending(text) for key, text in draft.fields.items()})
    return CalculatorScreen(session, entry, sheet)
