"""The setup sheet as it comes out of a printer: one page of A4 and of Letter, nothing cut, large enough, boxes to write in.

What is demanded of it, in points and millimetres, stands here as it was asked for; a browser measures and prints.
"""

from __future__ import annotations

import io
import re
from collections.abc import Iterator
from html import unescape
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

from library.book.model import Book
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.job import work_out
from library.cards.starting import again
from library.cards.store import load
from library.demo import lay_out
from library.setup_sheet.sheets import setup_sheet
from tests.library.setup_sheet import chromium
from tests.library.setup_sheet.cards_on_paper import OTHERS, RECORDS, jobs

PAPERS = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}
"""Width and height in mm (ISO 216; ANSI/ASME Y14.1, 8.5 by 11 in)."""

BESIDE = 20.0
"""Both margins at the sides, in mm."""


MEASURES = """
(() => {
  const wide = document.body.getBoundingClientRect(), faults = [];
  const mm = (one) => one / 96 * 25.4, pt = (one) => one * 0.75;
  for (const one of document.querySelectorAll('body *')) {
    const box = one.getBoundingClientRect();
    if (box.right > wide.right + 0.5 || box.left < wide.left - 0.5)
      faults.push('beside the paper: ' + one.outerHTML.slice(0, 80));
    if (one.scrollWidth > one.clientWidth + 1 && one.clientWidth)
      faults.push('cut: ' + one.outerHTML.slice(0, 80));
  }
  const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (texts.nextNode()) {
    const holder = texts.currentNode.parentElement;
    if (!texts.currentNode.data.trim() || holder.localName === 'title') continue;
    const drawn = holder.ownerSVGElement ? holder.getScreenCTM().a : 1;
    const size = pt(parseFloat(getComputedStyle(holder).fontSize) * drawn);
    if (size < 9.95) faults.push('small, ' + size + ': ' + texts.currentNode.data);
  }
  const pencil = document.querySelectorAll('.tick, .box, td.w'), numbers = document.querySelectorAll('.n, .read td + td');
  for (const one of pencil) {
    const box = one.getBoundingClientRect();
    if (mm(box.width) < 7 || mm(box.height) < 7) faults.push('a box of ' + mm(box.width) + ' by ' + mm(box.height));
  }
  for (const one of numbers)
    if (pt(parseFloat(getComputedStyle(one).fontSize)) < 12.95) faults.push('a small number: ' + one.textContent);
  const lines = [], seen = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (seen.nextNode()) {
    const one = seen.currentNode, range = document.createRange();
    if (!one.data.trim()) continue;
    range.selectNodeContents(one);
    // A line of letters is taller than they are: a fifth of it above and below them is blank.
    for (const box of range.getClientRects())
      lines.push({one, left: box.left + 1, right: box.right - 1, top: box.top + box.height / 5, bottom: box.bottom - box.height / 5});
  }
  for (const [place, a] of lines.entries())
    for (const b of lines.slice(place + 1))
      if (a.one !== b.one && a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
        faults.push('over each other: ' + a.one.data.trim() + ' / ' + b.one.data.trim());
  const caution = document.querySelector('.caution').getClientRects()[0].height;
  return {faults, pencil: pencil.length, numbers: numbers.length, caution: mm(caution)};
})()
"""
"""What is wrong with the page that is laid out, and how much there was to look at."""


@pytest.fixture(scope="module")
def yard(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("demo") / "yard"
    lay_out(folder)
    return folder


@pytest.fixture(scope="module")
def book(yard: Path) -> Book:
    return open_book(yard)


@pytest.fixture(scope="module")
def browser() -> Iterator[chromium.Browser]:
    path = chromium.found()
    if not path:
        pytest.skip("there is no Chromium on this machine (apt-get install chromium), so no sheet is printed")
    with chromium.started(path) as running:
        yield running


def words_of(html: str) -> list[str]:
    text = re.sub(r"<(style|title)>.*?</\1>|<[^>]*>", " ", html, flags=re.DOTALL)
    return unescape(text).split()


def pages_of(pdf: bytes) -> int:
    return len(PdfReader(io.BytesIO(pdf)).pages)


def measured(browser: chromium.Browser, html: str) -> dict[str, Any]:
    browser.show(html)
    return dict(browser.measured(MEASURES, min(width for width, _ in PAPERS.values()) - BESIDE))


def test_every_shipped_family_has_a_card_here_and_those_of_other_families_have_sizes(
    yard: Path, book: Book
) -> None:
    found = jobs(yard, book)
    assert {job.card.family for job in found.values()} == set(open_book().families)
    assert all(found[name].card.received for name in OTHERS)


@pytest.mark.parametrize("name", ["reamer-machine-plain-steel", "tap-hand-alloy-steel"])
def test_each_of_six_flutes_has_its_box_in_the_table(yard: Path, book: Book, name: str) -> None:
    html = setup_sheet(jobs(yard, book)[name], "html")
    tables = html.count('<table class="read">')
    assert tables == 1
    assert html.count('<th class="w">6</th>') == tables


@pytest.mark.parametrize(
    ("name", "said"),
    [
        # One throw for all steps of 6, 8 and 10 mm: what is read is that of the largest.
        ("2026-08-17-01", "Read at 10.000 mm diameter, zero at the edge; drop: indicator at the axis -"),
        ("subland-drill-countersink-plain-steel", "Read at 12.000 mm diameter"),
        ("2026-03-11-01", "Read, widest land, flute 1, zero at the edge; drop: indicator at the axis"),
        # The drop of the chamfer is read at the axis, the lead of the thread along it, on another land.
        ("2026-03-11-01", "Lead, no box, indicator along the axis, on the thread land: "),
    ],
)
def test_the_readings_of_a_tool_with_steps_say_on_which_of_them(
    yard: Path, book: Book, name: str, said: str
) -> None:
    assert said in setup_sheet(jobs(yard, book)[name])


@pytest.mark.depth
def test_each_sheet_is_one_page_of_either_paper_and_nothing_is_cut_or_small(
    browser: chromium.Browser, yard: Path, book: Book
) -> None:
    faults = []
    for name, job in jobs(yard, book).items():
        html = setup_sheet(job, "html")
        found = measured(browser, html)
        faults += [f"{name}: {fault}" for fault in found["faults"]]
        # Lines of ten points, with what the frame takes: two where some are left out, and three for all of them.
        if found["caution"] > (2 if "F4 on the card" in html else 3) * 10 * 1.2 * 0.353 + 2.2:
            faults.append(f"{name}: cautions of {found['caution']} mm")
        assert found["pencil"] > 5
        assert found["numbers"] > 5
        for paper, (width, height) in PAPERS.items():
            pages = PdfReader(io.BytesIO(browser.printed(width, height))).pages
            if len(pages) != 1:
                faults.append(f"{name}: {len(pages)} pages of {paper}")
        printed = "".join(pages[0].extract_text().split())
        lost = {word for word in words_of(html) if word not in printed}
        faults += [f"{name} without: {lost}"] if lost else []
    assert faults == [], "\n".join(faults)


@pytest.mark.depth
def test_what_does_not_fit_would_be_noticed(browser: chromium.Browser, yard: Path, book: Book) -> None:
    long = setup_sheet(work_out(edited(load(yard, RECORDS[1]).card, "notes", "turn it " * 500), book), "html")
    browser.show(long)
    assert pages_of(browser.printed(*PAPERS["A4"])) == 2
    wide = long.replace("</body>", '<p style="font-size: 9pt; width: 200mm">small and wide</p></body>')
    faults = " ".join(measured(browser, wide)["faults"])
    assert "beside the paper" in faults
    assert "small, 9: small and wide" in faults
    assert "a box of" in " ".join(measured(browser, long.replace("7.1mm", "6.9mm"))["faults"])
    laid = long.replace("</body>", '<p style="margin-top: -8pt">one line upon another</p></body>')
    assert "/ one line upon another" in " ".join(measured(browser, laid)["faults"])


@pytest.mark.depth
def test_a_sheet_that_stops_is_one_page_too(browser: chromium.Browser, yard: Path, book: Book) -> None:
    card = edited(
        again(load(yard, RECORDS[1]).card, book), "settings.wheel-speed.rotational_speed", "9000 rpm"
    )
    browser.show(setup_sheet(work_out(card, book), "html"))
    for paper in PAPERS.values():
        assert pages_of(browser.printed(*paper)) == 1
