"""Which set-up an entry and a job get, what a shop lays over it, and what stands beside the entry."""

from __future__ import annotations

from pathlib import Path

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.guidance.model import ON_PAPER, setups
from library.guidance.setups import for_entry, for_job, setups_of, whole
from library.pages.as_text import as_text
from library.pages.entry import entry_page
from library.pages.reader import Reader

WIDEST = 96
"""Characters of a first sentence at most, so that it is a short line on paper; common practice, no source."""


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book()


def of_shop(folder: Path, text: str) -> Book:
    (folder / "ours.toml").write_text(f"schema = 1\n\n{text}")
    return open_book(folder)


# Common practice, no source: what is mostly ground on a tool.
@pytest.mark.parametrize(
    ("entry", "setup"),
    [
        ("tap-hand-plain-steel", "tap-chamfer-cam"),
        ("tap-spiral-point-plain-steel", "tap-spiral-point"),
        ("tap-forming", "tap-forming"),
        ("countersink-multi-flute-90-plain-steel", "countersink-face"),
        ("countersink-zero-flute-90-wood", "countersink-hole"),
        ("twist-drill-jobber-plain-steel", "twist-drill-point"),
        ("twist-drill-split-point", "twist-drill-split"),
        ("twist-drill-ground-down", "twist-drill-ground-down"),
        ("reamer-machine-plain-steel", "reamer-bevel"),
        ("reamer-hand-plain-steel", "reamer-hand"),
        ("counterbore-plain-steel", "counterbore-end"),
    ],
)
def test_an_entry_gets_the_set_up_of_what_is_mostly_ground_on_it(book: Book, entry: str, setup: str) -> None:
    found = for_entry(book, book.entries[entry])
    assert found is not None
    assert found.id == setup


@pytest.mark.parametrize(
    ("family", "surface", "method", "setup"),
    [
        ("tap", "chamfer", "cam", "tap-chamfer-cam"),
        ("tap", "chamfer", "tooth-rest-height", "tap-chamfer-flat"),
        ("countersink", "cone", "wheel-head-height", "countersink-cone-flat"),
        ("step-drill", "land", "cam", "step-drill-land-cam"),
        ("reamer", "bevel", "tooth-rest-height", "reamer-bevel"),
        ("reamer", "land", "", "reamer-land"),
        ("twist-drill", "lip", "work-head", "twist-drill-facet"),
        ("carbide-drill", "lip", "work-head", "carbide-drill-facet"),
        ("masonry-drill", "lip", "work-head", "masonry-drill-facet"),
        ("masonry-drill", "lip", "wheel-head-height", "masonry-drill-lip"),
    ],
)
def test_a_job_gets_the_set_up_of_its_surface_and_its_method(
    book: Book, family: str, surface: str, method: str, setup: str
) -> None:
    found = for_job(book, family, None, surface, method)
    assert found is not None
    assert found.id == setup


def test_a_surface_of_which_the_book_tells_nothing_gets_none(book: Book) -> None:
    assert for_job(book, "reamer", None, "lip", "cam") is None
    assert for_job(book, "no-such-family", None, "land", "cam") is None


def test_every_family_has_a_set_up_with_all_six_steps_of_the_paper_each_with_its_source(book: Book) -> None:
    for family in book.families:
        found = [one for one in setups_of(book, family) if set(ON_PAPER) <= set(one.lines)]
        assert found, family
        for one in found:
            assert all(line.citation.label != "missing" for line in one.lines.values()), one.id


def test_every_first_sentence_is_a_short_line(book: Book) -> None:
    for one in setups(book).values():
        for key, line in one.lines.items():
            assert len(line.in_short()) <= WIDEST, (one.id, key)


def test_a_shop_lays_one_step_over_the_shipped_ones_and_keeps_the_rest(tmp_path: Path) -> None:
    ours = '[[setup]]\nid = "tap-chamfer-cam"\nfeed = { text = "As we do it.", source = "shop" }\n'
    book = of_shop(tmp_path, ours)
    found = for_job(book, "tap", None, "chamfer", "cam")
    assert found is not None
    assert (found.lines["feed"].text, found.lines["feed"].citation.label) == ("As we do it.", "shop")
    assert found.lines["hold"].text.startswith("Between centres")
    assert found.layer == "shop"
    assert book.findings == ()


def test_a_family_that_is_like_another_is_ground_like_it_until_it_has_a_set_up_of_its_own(
    tmp_path: Path,
) -> None:
    spade = '[[family]]\nid = "spade-drill"\ntitle = "Spade drills"\nlike = "twist-drill"\n'
    book = of_shop(tmp_path, spade)
    assert setups_of(book, "spade-drill")[0].id == "twist-drill-point"
    own = '[[setup]]\nid = "spade"\ntitle = "Spade"\nfamily = "spade-drill"\nlike = "any-tool"\n'
    book = of_shop(tmp_path, spade + own)
    (found,) = setups_of(book, "spade-drill")
    assert found.lines["coolant"].text == setups(book)["any-tool"].lines["coolant"].text


def test_set_ups_that_follow_each_other_in_a_circle_end(tmp_path: Path) -> None:
    text = "".join(
        f'[[setup]]\nid = "{one}"\ntitle = "T"\nfamily = "tap"\nlike = "{other}"\n'
        f'{step} = {{ text = "{one}", source = "shop" }}\n'
        for one, other, step in (("a", "b", "hold"), ("b", "a", "read"))
    )
    book = of_shop(tmp_path, text)
    assert {key: line.text for key, line in whole(book, setups(book)["a"]).lines.items()} == {
        "hold": "a",
        "read": "b",
    }


def test_beside_the_entry_stand_the_steps_and_the_documents_they_rest_on(book: Book) -> None:
    text = " ".join(as_text(entry_page(book, book.entries["twist-drill-titanium"]), Reader(80)).split())
    assert "SET UP Point of a twist drill (C where unmarked). Hold: In the work head" in text
    assert "Set: Axis at 59 degrees to the wheel face for a 118 degree point, the lip level M[2]." in text
    assert "[2] Machinery Repairman" in text


def test_in_full_all_set_ups_of_the_family_stand_with_their_sources(book: Book) -> None:
    page = as_text(entry_page(book, book.entries["tap-hand-plain-steel"], sources=True), Reader(80))
    text = " ".join(page.split())
    for one in setups_of(book, "tap"):
        assert one.title in text
        for line in one.lines.values():
            assert " ".join(line.said().split()) in text
