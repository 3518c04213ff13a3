"""Verify an edit: the new text means what was asked for, and no other line has changed; else nothing is written."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from library.editing.document import Data, Document, EditRefused, read_data
from library.editing.in_place import Splice
from library.editing.steps import same
from library.files.file_state import LARGEST
from library.toml.limits import LONGEST_LINE, is_too_long


def prove(document: Document, new_text: str, expected: Data, splices: Sequence[Splice]) -> None:
    """Raise unless the new text means ``expected`` and every line that no splice touches is as it was.

    The text is read back by the reader that the book is opened with, and the lines are compared as they
    stand, without regard to how the splices were made.

    Args:
        document: the file as it was.
        new_text: its text afterwards.
        expected: the data that the new text must mean.
        splices: which pieces of the old text were meant to change.

    Raises:
        EditRefused: when a part of the proof fails.
    """
    _require_limits(document, new_text)
    data = read_data(document.bytes_with(new_text))
    if data is None:
        raise _unproved(document, "the new text could not be read")
    if not same(data, expected):
        raise _unproved(document, "the new text would mean something else")
    touched = _touched_lines(document.text, splices)
    untouched = [line for number, line in enumerate(_lines(document, document.text)) if number not in touched]
    if not _all_there(untouched, _lines(document, new_text)):
        raise _unproved(document, "other lines would change as well")


def _unproved(document: Document, reason: str) -> EditRefused:
    return EditRefused(
        f"{document.name} is written in a way that cannot be changed safely: {reason}. Nothing was written; "
        "change it in your editor."
    )


def _require_limits(document: Document, new_text: str) -> None:
    if len(document.bytes_with(new_text)) > LARGEST:
        raise EditRefused(
            f"{document.name} would become larger than 1 MiB; put some of its entries into another file."
        )
    for number, line in enumerate(new_text.split("\n"), 1):
        if is_too_long(line):
            raise EditRefused(
                f"{document.name}, line {number}, would be longer than {LONGEST_LINE} bytes; shorten the text, "
                "or put it into the notes, which may have several lines."
            )


def _touched_lines(text: str, splices: Sequence[Splice]) -> set[int]:
    """Numbers of the old lines, from 0, that have a part in a splice."""
    touched: set[int] = set()
    for splice in splices:
        if splice.start < splice.end:
            first = text.count("\n", 0, splice.start)
            touched.update(range(first, first + text.count("\n", splice.start, splice.end - 1) + 1))
    return touched


def _all_there(wanted: Iterable[str], lines: Iterable[str]) -> bool:
    """Whether the wanted lines are all among the lines, in the same order."""
    left = iter(lines)
    return all(line in left for line in wanted)


def _lines(document: Document, text: str) -> list[str]:
    """The lines with what ends them; a line end that is missing after the last one does not count."""
    return (text if text.endswith("\n") or not text else text + document.line_end).split("\n")
