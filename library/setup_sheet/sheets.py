"""Render the setup sheet of a card as text, Markdown or HTML."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from library.cards.job import Job
from library.pages.as_html import as_html
from library.pages.as_markdown import as_markdown
from library.pages.as_text import as_text
from library.pages.page import Page
from library.setup_sheet.composing import compose
from library.units.system import Display

FORMATS: Mapping[str, Callable[[Page], str]] = {"text": as_text, "markdown": as_markdown, "html": as_html}
"""The forms by the name that the command line knows them by."""


def setup_sheet(job: Job, form: str = "text", display: Display | None = None) -> str:
    """The page to carry to the machine; as Markdown, which no paper bounds, nothing is left out of it.

    Args:
        job: the card worked out.
        form: ``text``, ``markdown`` or ``html``.
        display: the units of lengths; those of the card where nothing else is asked for.

    Raises:
        KeyError: for a form that there is not.
    """
    return FORMATS[form](compose(job, display or job.display, one_page=form != "markdown"))
