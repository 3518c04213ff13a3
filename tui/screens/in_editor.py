"""Handing the terminal to the person's own editor: for a file of the book, and for the notes of an entry."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress
from typing import TYPE_CHECKING

from library.editing.changes import SetText
from library.errors import no_room
from library.issue import Place
from tui.screens.change_flow import ChangeRequest, preview
from tui.services.editor import NONE_NAMED

if TYPE_CHECKING:
    from pathlib import Path

    from library.book.model import Entry
    from library.editing.merging import Choice
    from tui.app import Heelclear
    from tui.services.book_service import FieldConflicts


def open_file(app: Heelclear, place: Place) -> None:
    """Open a file of the book at a line, then read the book again."""
    if not app.editor.is_named():
        app.say(f"{NONE_NAMED} Or open {place.file} in another window; it is line {place.line}.")
    elif _run(app, place):
        app.read_again("The book was read again.")


def write_notes(app: Heelclear, entry: Entry) -> None:
    """Have the notes of an entry written in the editor, and show what that would change in the book."""
    if not app.editor.is_named():
        app.say(NONE_NAMED)
        return
    file = app.editor.file_of_notes(entry)
    try:
        app.editor.begin_notes(entry)
        if _run(app, Place(file, 1)):
            _take(app, entry, file, {"notes": entry.notes})
    except UnicodeDecodeError:
        app.say(f"The notes cannot be taken from {file}: it is no text in UTF-8.")
    except OSError as error:
        app.say(f"The notes cannot be taken from {file}: {no_room(error, file) or f'{error.strerror}.'}")


def _take(app: Heelclear, entry: Entry, file: Path, began: dict[str, object]) -> None:
    text = file.read_text(encoding="utf-8")
    if text.strip() == str(began["notes"]).strip():
        file.unlink()
        app.say("The notes were not changed.")
        return

    def answered(conflicts: FieldConflicts, choices: Sequence[Choice]) -> None:
        theirs = next(iter(conflicts.by_field.values())).theirs
        if choices[0].side == "mine":
            _take(app, entry, file, {"notes": theirs or ""})
        else:
            app.say(f"The notes stay as somebody else saved them; yours are in {file}.")

    def saved() -> None:
        with suppress(OSError):
            file.unlink()

    preview(app, ChangeRequest(SetText(entry.id, "notes", text), began, answered, saved))


def _run(app: Heelclear, place: Place) -> bool:
    """Run the editor; returns whether it ended well, and says so where it did not."""
    app.autosave.keep_now()
    with app.suspend():
        refusal = app.editor.run(place)
    app.repaint()
    if refusal:
        app.read_again(refusal)
    return not refusal
