"""What a screen gives to be copied, or to be written into a file."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from library.pages.as_html import as_html
from library.pages.as_markdown import as_markdown, plain
from library.pages.as_text import as_text
from library.pages.entry import entry_page
from library.pages.page import Page, Said, Section
from library.pages.reader import Reader
from tui.services.export import Printed

if TYPE_CHECKING:
    from library.book.model import Entry
    from tui.session import Session

MAIL = Reader(76)
"""What is copied or kept as text fits a mail and a printed page."""


def printed_page(page: Page, name: str) -> Printed:
    """A page as it is taken away.

    Args:
        page: what is in front.
        name: of its file, without an ending.
    """
    forms = {"markdown": as_markdown, "html": as_html}

    def form(kind: str) -> str:
        return forms[kind](page) if kind in forms else as_text(page, MAIL)

    return Printed(page.title, name, form)


def printed_entry(session: Session, entry: Entry) -> Printed | None:
    """An entry with its sources and its cautions in full; nothing before the book is read."""
    if session.book is None:
        return None
    page = entry_page(session.book, entry, session.display, sources=True, cautions=True)
    return printed_page(page, entry.id)


def printed_text(title: str, lines: Sequence[str], name: str) -> Printed:
    """Lines as they stand on the screen, each of them kept.

    Args:
        title: what they are.
        lines: no wider than a page.
        name: of the file, without an ending.
    """
    text = "\n".join(lines) + "\n"
    whole = f"{title}\n{'=' * len(title)}\n\n{text}"

    def form(kind: str) -> str:
        if kind == "markdown":
            return f"# {plain(title)}\n\n" + "".join(f"    {one}".rstrip() + "\n" for one in lines)
        if kind == "html":
            return as_html(Page(title, (Section("", (Said((text,)),)),)))
        return whole

    return Printed(title, name, form)
