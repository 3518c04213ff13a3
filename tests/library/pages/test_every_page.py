"""Every page says the same on a screen, as text, as Markdown and as HTML, within its width and without any markup of others."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import replace
from html import unescape

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculations import calculation
from library.book.model import Book, Citation, Entry, Measure, Value
from library.book.opening import open_book
from library.calc.answer import answer
from library.calc.wording import span
from library.pages.answer import answer_page
from library.pages.as_html import as_html
from library.pages.as_markdown import as_markdown
from library.pages.as_text import as_text
from library.pages.cautions import cautions_page
from library.pages.comparison import comparison_page
from library.pages.entry import entry_page
from library.pages.glossary import glossary_page
from library.pages.page import Page
from library.pages.reader import Reader
from library.units.system import METRIC
from tests.examples import every_third_at_once

POISON = "\x1b]52;c;cm0=\x07<script>alert(1)</script> [/bold] | `rm` \u202e"


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book()


def pages(book: Book) -> dict[str, Page]:
    """One page of each kind, of the first tap that is shipped and of a land of 12 mm with 8 degrees."""
    one, other = [entry for entry in book.entries.values() if entry.family == "tap"][:2]
    typed = {"diameter": "12 mm +/- 0.1", "relief_angle": "8", "land_width": "2", "relief_form": "flat"}
    found = answer(calculation("relief-drop"), typed, book=book)
    return {
        "entry": entry_page(book, one),
        "entry in full": entry_page(book, one, sources=True, cautions=True),
        "answer": answer_page(found, book, METRIC),
        "comparison": comparison_page(book, (one, other), sources=True),
        "glossary": glossary_page("land", {"land_width": ("|<-- land -->|",)}),
        "cautions": cautions_page(found.cautions, book, "a tap"),
    }


NAMES = ("entry", "entry in full", "answer", "comparison", "glossary", "cautions")
FORMS: dict[str, Callable[[Page], str]] = {"text": as_text, "markdown": as_markdown, "html": as_html}


def words(form: str, page: Page) -> str:
    """What a page says, without the signs of its form."""
    text = FORMS[form](page)
    if form == "html":
        text = unescape(re.sub("<style>.*?</style>|<[^>]*>", " ", text, flags=re.DOTALL))
    return " ".join(text.replace("\\", "").replace("**", "").split())


@pytest.mark.parametrize("form", FORMS)
def test_each_form_has_the_values_of_an_entry_with_their_sources(book: Book, form: str) -> None:
    page = pages(book)["entry in full"]
    told = words(form, page)
    (entry,) = [one for one in book.entries.values() if one.title == page.title]
    assert all(span(value) in told for value in entry.values.values())
    assert told.count("Source: ") >= len(entry.values)
    assert "Before you grind" in told


@pytest.mark.parametrize("form", FORMS)
def test_each_form_has_the_numbers_of_an_answer(book: Book, form: str) -> None:
    told = words(form, pages(book)["answer"])
    # D 12, 8 degrees, an arc of 2: the flat heel stands 0.05485 proud of the circle; derived.
    assert "-0.055 mm" in told
    assert "STOP The flat, carried on to the heel, stands 0.055 mm proud" in told
    assert "typed: 12 mm +/- 0.1" in told


@pytest.mark.parametrize("form", FORMS)
def test_each_form_has_the_words_and_the_comparison(book: Book, form: str) -> None:
    made = pages(book)
    assert "land_width" in words(form, made["glossary"])
    assert "Hook along the chord" in words(form, made["comparison"])


@pytest.mark.parametrize("name", every_third_at_once(NAMES))
@given(st.integers(34, 160))
def test_no_line_is_wider_than_its_reader(name: str, width: int) -> None:
    lines = as_text(pages(SHIPPED)[name], Reader(width)).splitlines()
    assert max(map(len, lines)) <= width


SHIPPED = open_book()


def poisoned() -> Iterator[Page]:
    value = Value("rake_angle", usual=Measure(POISON, 0.1), citation=Citation("shop"), note=POISON)
    entry = Entry("bad", POISON, POISON, POISON, values={"rake_angle": value}, notes=POISON)
    yield entry_page(Book({}), entry)
    yield comparison_page(Book({}), (entry, replace(entry, id="worse")), sources=True)


@pytest.mark.parametrize("form", FORMS)
def test_nothing_that_a_book_holds_is_a_command_or_markup(form: str) -> None:
    for page in poisoned():
        text = FORMS[form](page)
        assert not set(text) & {"\x1b", "\x07", "\u202e"}
        assert "alert(1)" in text
        if form == "html":
            assert "<script" not in text
        if form == "markdown":
            assert not re.search(r"(?<!\\)[`<]", text)
