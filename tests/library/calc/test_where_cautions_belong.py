"""Each shipped caution in one situation in which it stands, and in one in which it does not: nobody reads more than he needs."""

from __future__ import annotations

from dataclasses import dataclass, replace

import pytest

from geometry.calculations import calculation, calculation_names
from library.book.model import Book
from library.book.opening import open_book
from library.book.tool_materials import COBALT
from library.calc.cautions import LAST_WORD, cautions_for
from library.cards.job import work_out
from library.cards.model import Card, Tool
from library.pages.as_text import as_text
from library.pages.cautions import WHOSE_LAW, cautions_page
from library.pages.reader import Reader


@dataclass(frozen=True)
class At:
    """Where a person stands: at a calculation, an entry, with a wheel; on a card or not."""

    sheet: str = ""
    entry: str = ""
    abrasive: str = ""
    of: str = ""
    in_job: bool = False


TAP = At(entry="tap-hand-plain-steel")
INDEXING, SPEED, RELIEF = At("index-moves"), At("wheel-speed"), At("relief-drop")
REAMER = At(entry="reamer-hand-plain-steel")
HSS_DRILL, COBALT_DRILL = (At(entry="twist-drill-jobber-plain-steel", of=of) for of in ("", COBALT))
CARBIDE, TIPPED = At(entry="carbide-drill-plain-steel"), At(entry="carbide-drill-tipped-grey-iron")
MASONRY = At(entry="masonry-drill-masonry")
ALUMINIUM, MAGNESIUM = At(entry="twist-drill-aluminium-wrought"), At(entry="twist-drill-magnesium")

SITUATIONS: dict[str, tuple[At, At]] = {
    "wheel-rating": (TAP, INDEXING),
    "ring-test": (SPEED, INDEXING),
    "mounting": (SPEED, TAP),
    "wheel-change": (SPEED, TAP),
    "wheel-storage": (SPEED, At("wheel-speed", in_job=True)),
    "wheel-balance": (SPEED, RELIEF),
    "coolant-off": (SPEED, TAP),
    "magnesium-fire": (MAGNESIUM, ALUMINIUM),
    "aluminium-dust": (ALUMINIUM, HSS_DRILL),
    "one-metal-collector": (MAGNESIUM, ALUMINIUM),
    "titanium-fire": (At(entry="twist-drill-titanium"), MAGNESIUM),
    "beryllium-copper": (At(entry="twist-drill-beryllium-copper"), HSS_DRILL),
    "carbide-dust": (CARBIDE, COBALT_DRILL),
    "cobalt-dust": (COBALT_DRILL, HSS_DRILL),
    "cadmium-braze": (TIPPED, CARBIDE),
    "eyes": (SPEED, INDEXING),
    "hands": (INDEXING, At("vee-reading")),
    "guard-and-rest": (TAP, INDEXING),
    "pinch": (At("tooth-rest"), SPEED),
    "lifting": (INDEXING, TAP),
    "hearing": (SPEED, INDEXING),
    "side-grinding": (At("setting-height"), TAP),
    "stand-aside": (SPEED, RELIEF),
    "restart-after-jam": (TAP, MASONRY),
    "dressing": (SPEED, TAP),
    "diamond-wheel": (CARBIDE, HSS_DRILL),
    "diamond-on-steel": (
        At(entry="twist-drill-jobber-plain-steel", abrasive="diamond"),
        At(entry="twist-drill-jobber-plain-steel", abrasive="aluminium-oxide"),
    ),
    "dust": (TAP, INDEXING),
    "coolant": (TAP, MASONRY),
    "burning": (TAP, MASONRY),
    "grinding-cracks": (At("wear-stock"), RELIEF),
    "light-cut-on-a-land": (REAMER, TAP),
    "sharp-edges": (TAP, SPEED),
}
"""For each where it stands, and where it does not."""


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book()


def found_at(book: Book, at: At) -> list[str]:
    entry = book.entries[at.entry] if at.entry else None
    if entry is not None and at.of:
        entry = replace(entry, tool_material=at.of)
    sheet = calculation(at.sheet) if at.sheet else None
    found = cautions_for(sheet, entry, book, abrasive=at.abrasive, in_job=at.in_job)
    return [one.id for one in found]


def test_each_caution_stands_where_it_is_needed_and_not_elsewhere(book: Book) -> None:
    assert set(SITUATIONS) == set(book.cautions) - {LAST_WORD}
    for key, (there, not_there) in SITUATIONS.items():
        assert key in found_at(book, there), key
        assert key not in found_at(book, not_there), key


def test_fingers_are_warned_of_wherever_a_tooth_rest_is_set(book: Book) -> None:
    # What sets the height of the tooth rest, and nothing else.
    for name in calculation_names():
        sheet = calculation(name)
        assert ("pinch" in sheet.cautions) == ("tooth_rest_height" in sheet.outputs), name


def test_no_entry_has_the_cautions_of_fitting_a_wheel(book: Book) -> None:
    of_fitting = {
        "mounting",
        "wheel-change",
        "wheel-storage",
        "wheel-balance",
        "coolant-off",
        "hearing",
        "lifting",
    }
    for entry in book.entries.values():
        assert not of_fitting & {one.id for one in cautions_for(None, entry, book)}, entry.id


def test_a_mark_on_the_shank_says_more_than_the_entry(book: Book) -> None:
    def on_card(marks: str, wheel: str = "") -> set[str]:
        tool = Tool(name="A drill", marks=marks)
        card = Card(
            id="2026-11-26-01",
            entry="twist-drill-jobber-plain-steel",
            family="twist-drill",
            tool=tool,
            wheel=wheel,
        )
        return {one.id for one in work_out(card, book).cautions}

    assert "cobalt-dust" in on_card("HSS-E 8.5")
    assert "cobalt-dust" not in on_card("HSS 8.5")
    assert {"carbide-dust", "diamond-wheel"} <= on_card("VHM 8.5")
    assert "wheel-change" in on_card("")
    assert "wheel-storage" not in on_card("")


def test_a_mark_that_is_typed_later_is_heeded_at_once(book: Book) -> None:
    card = Card(
        id="2026-11-26-01",
        entry="twist-drill-jobber-plain-steel",
        family="twist-drill",
        tool=Tool(name="A drill"),
    )
    before = work_out(card, book)
    after = work_out(replace(card, tool=Tool(name="A drill", marks="HSS-Co5")), book, before)
    assert "cobalt-dust" not in {one.id for one in before.cautions}
    assert "cobalt-dust" in {one.id for one in after.cautions}


def test_whose_laws_they_are_is_said_once_and_only_below_a_law(book: Book) -> None:
    told = as_text(cautions_page(book.cautions.values(), book, "all of it"), Reader(400))
    assert told.count(WHOSE_LAW) == 1
    assert told.rstrip().endswith(WHOSE_LAW)
    habits = [one for one in book.cautions.values() if one.citation.label == "common practice"]
    assert habits
    assert WHOSE_LAW not in as_text(cautions_page(habits, book, "habits"), Reader(400))


@pytest.mark.parametrize(
    ("key", "place"),
    [
        ("ring-test", "1910.215(d)(1)"),
        ("mounting", "1910.215(c)(1)"),
        ("beryllium-copper", "1910.1024(b)"),
        ("wheel-change", "1910.147"),
        ("guard-and-rest", "amended 27 May 2009"),
    ],
)
def test_what_is_federal_law_names_its_paragraph_and_a_rule_its_own_year(
    book: Book, key: str, place: str
) -> None:
    citation = book.cautions[key].citation
    assert book.sources[citation.document].grade == "S"
    assert place in citation.place
