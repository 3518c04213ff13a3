"""What a draft is of, and what its lines are called, in the words of the shop."""

from __future__ import annotations

from typing import TYPE_CHECKING

from geometry.quantities import QUANTITIES
from tui.screens.left_behind import JOB_CARD
from tui.screens.texts_form import TEXTS
from tui.view.table_blanks import NOUNS, blanks_for

if TYPE_CHECKING:
    from collections.abc import Mapping

    from library.drafts.draft import Draft
    from tui.session import Session


def name_of(session: Session, draft: Draft) -> str:
    """What a draft is of, by the titles of the book where it has them.

    Args:
        session: has the book.
        draft: of any form, calculator or card.
    """
    about = draft.about
    if draft.kind == JOB_CARD:
        return f"Job card: {about}" if is_new_card(draft) else f"Job card {about}"
    match draft.kind:
        case "calculator":
            return f"Calculations for {_title(session, about)}"
        case "value" | "text":
            name, _, key = about.rpartition(".")
            what = TEXTS.get(key) or (QUANTITIES[key].title if key in QUANTITIES else key)
            return f"{what}: {_title(session, name)}"
        case "table":
            form, _, name = about.partition(".")
            return f"{form}: {_title(session, name)}" if name else _with_title(form, draft.fields)
        case "equipment" | "own-table":
            return _of_own_table(session, draft)
        case _:
            return about


def is_new_card(draft: Draft) -> bool:
    """Whether a draft is of a job card that was never saved."""
    return draft.kind == JOB_CARD and draft.about.startswith("new card")


def label_of(draft: Draft, key: str) -> str:
    """What a line of a draft is called.

    Example:
        >>> from library.drafts.draft import Draft
        >>> label_of(Draft("job-card", "2026-03-11-01", {}), "received.land_width")
        'received, land width'
        >>> label_of(Draft("own-table", "New symptom", {}), "first_source")
        'first source'
    """
    array, _, name = draft.about.removeprefix("New ").partition(".")
    if draft.kind in ("equipment", "own-table") and array in NOUNS:
        labels = {one.key: one.label for one in blanks_for(array, None, name)}
        if key in labels:
            return labels[key][:1].lower() + labels[key][1:]
    return ", ".join(_words(part) for part in key.split("."))


def _words(key: str) -> str:
    return QUANTITIES[key].title.lower() if key in QUANTITIES else key.replace("_", " ").replace("-", " ")


def _title(session: Session, name: str) -> str:
    """The title of an entry; its id where the book has it no more."""
    entry = session.entry(name)
    return entry.title if entry is not None else name


def _with_title(what: str, fields: Mapping[str, str]) -> str:
    title = fields.get("title", "").strip()
    return f"{what}: {title}" if title else what


def _of_own_table(session: Session, draft: Draft) -> str:
    """Such as ``New trouble: Squeals``, by the title that was typed, or that stands in the book."""
    is_new = draft.about.startswith("New ")
    array, _, name = draft.about.removeprefix("New ").partition(".")
    noun = NOUNS.get(array, array.replace("_", " "))
    if is_new:
        return _with_title(f"New {noun}", draft.fields)
    book = session.book
    known = book.more.get(array, {}).get(name) if book is not None else None
    title = draft.fields.get("title", "").strip() or getattr(known, "title", "") or name
    return f"{noun[:1].upper()}{noun[1:]}: {title}"
