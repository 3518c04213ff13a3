"""An answer as plain text, to copy or to keep in a file."""

from __future__ import annotations

from library.book.model import Book
from library.calc.fill import shown
from library.calc.report import cited
from library.calc.surfaces import title_of
from library.units.system import Display
from tui.view.answer_lines import check_lines, output_lines, row_lines, station_lines
from tui.view.form import Form
from tui.view.lines import EMPTY, Line, line, text_of, wrap

WIDTH = 76
"""Cells of the text; it fits a mail and a printed page."""

_ORIGINS = {"given": "typed", "entry": "from the book", "default": "default"}


def result_text(form: Form, book: Book | None, display: Display) -> str:
    """What was given, what came out, and the cautions with their sources; empty while there is no answer."""
    answer = form.answer
    if answer is None or answer.result is None:
        return ""
    lines: list[Line] = [line(form.sheet.title)]
    lines += [line(form.entry.title)] if form.entry is not None else []
    lines.append(EMPTY)
    for field in answer.fields:
        value = answer.inputs.get(field.key)
        if value is not None:
            said = shown(field.key, value.value, display)
            whence = _ORIGINS[value.origin] + (f": {value.text}" if value.text != said else "")
            lines.append(line(f"{title_of(field.key, answer.surface):<32}{said:<20}{whence}"))
    parts = (
        output_lines(answer, answer.result, display, 52),
        station_lines(answer.result, display, WIDTH),
        row_lines(answer.result, display, WIDTH),
        check_lines(answer.result, display, WIDTH),
    )
    for part in parts:
        lines += [EMPTY, *part] if part else []
    lines += [EMPTY, line("Before you grind")]
    for caution in answer.cautions:
        source = f" [{cited(book, caution.citation)}]" if book is not None else ""
        lines += wrap(f"{caution.text}{source}", WIDTH, first="  ", rest="    ")
    return "\n".join(text_of(one).rstrip() for one in lines) + "\n"
