"""What a screen gives to be copied, or to be written into a file."""

from __future__ import annotations

from library.pages.as_html import as_html
from library.pages.as_markdown import as_markdown
from library.pages.as_text import as_text
from library.pages.page import Page
from library.pages.reader import Reader
from tui.services.export import Printed

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
