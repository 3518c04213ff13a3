"""From a draft to the screen it was typed on."""

from __future__ import annotations

from typing import TYPE_CHECKING

from tui.view.text_line import TextLine

if TYPE_CHECKING:
    from library.drafts.draft import Draft
    from tui.screens.board import Board
    from tui.screens.form import FormScreen
    from tui.session import Session


def recovered(session: Session, draft: Draft) -> Board | None:
    """The screen with everything that the draft holds, or nothing where its entry is gone."""
    if draft.kind == "calculator":
        return _calculator(session, draft)
    form = _form(session, draft)
    if form is not None:
        form.form.fill(draft.fields)
        form.form.wrong = form.complaints()
    return form


def _calculator(session: Session, draft: Draft) -> Board | None:
    from tui.screens.calculator import CalculatorScreen

    entry = session.entry(draft.about)
    sheet = session.sheet_for(entry) if entry is not None else None
    if entry is None or sheet is None:
        return None
    form = session.form(entry, sheet)
    form.typed.update({key: TextLine.ending(text) for key, text in draft.fields.items()})
    return CalculatorScreen(session, entry, sheet)


def _form(session: Session, draft: Draft) -> FormScreen | None:
    from tui.screens.table_forms import FORMS_OF_AN_ENTRY, FORMS_OF_THE_BOOK, TextsForm
    from tui.screens.value_form import ValueFormScreen

    name, _, rest = draft.about.partition(".")
    if draft.kind == "table" and name in FORMS_OF_THE_BOOK:
        return FORMS_OF_THE_BOOK[name](session)
    entry = session.entry(rest if draft.kind == "table" else name)
    if entry is None:
        return None
    if draft.kind == "table":
        return FORMS_OF_AN_ENTRY[name](session, entry) if name in FORMS_OF_AN_ENTRY else None
    return ValueFormScreen(session, entry, rest) if draft.kind == "value" else TextsForm(session, entry, rest)
