"""What every setup sheet promises: the numbers of the job, the cautions, boxes for every flute, and nothing harmful."""

from __future__ import annotations

import math
import re
from dataclasses import replace
from datetime import date
from html.parser import HTMLParser
from xml.etree import ElementTree

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from library.book.model import Book
from library.cards.close import finished
from library.cards.editing import edited
from library.cards.job import work_out
from library.cards.model import Card, Inspection, Setting, Tool, Wanted
from library.pages import as_html, as_markdown
from library.pages.cautions import DEFERS
from library.pages.texts import in_ascii
from library.setup_sheet.sheets import FORMATS, setup_sheet
from tests.library.setup_sheet.conftest import sheet

POISON = "\x1b]52;c;cm0=\x07<script>alert(1)</script> [/bold] | `rm` \u202e \u200b"


class Tags(HTMLParser):
    """The tags of a page, open and closed, and every attribute."""

    VOID = frozenset({"meta", "br"})

    def __init__(self, text: str) -> None:
        super().__init__()
        self.open: list[str] = []
        self.seen: set[str] = set()
        self.attributes: list[tuple[str, str]] = []
        self.feed(text)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.seen.add(tag)
        self.attributes += [(name, value or "") for name, value in attrs]
        if tag not in self.VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.seen.add(tag)
        self.attributes += [(name, value or "") for name, value in attrs]

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag


@pytest.mark.parametrize("form", sorted(FORMATS))
def test_the_deferring_line_is_the_last_thing_said(form: str, family_card: Card, sheet_book: Book) -> None:
    text = sheet(family_card, sheet_book, form)
    plain = " ".join(re.sub("<[^>]*>|[*]", " ", text.rpartition("</body>")[0] or text).split())
    assert plain.endswith("local rules and a trained person come first.")
    assert plain.index("Eyes") < plain.index("local rules")


def test_without_a_book_a_sheet_defers_all_the_same(tap_card: Card) -> None:
    assert " ".join(sheet(tap_card, Book({})).split()).endswith(DEFERS)


def test_what_is_set_for_the_faces_of_a_tap_is_no_numbered_setting_of_its_chamfer(
    tap_card: Card, sheet_book: Book
) -> None:
    lines = sheet(tap_card, sheet_book).splitlines()
    assert [one for one in lines if one.startswith("[ ]") and "Face offset" in one] == []
    assert [one for one in lines if one.startswith("Face offset, for the faces, a job of its own:")] != []
    numbered = [one.split()[2] for one in lines if one.startswith("[ ]")]
    assert numbered == [str(number) for number in range(1, len(numbered) + 1)]


def test_the_numbers_on_the_page_are_those_worked_out_by_hand(tap_card: Card, sheet_book: Book) -> None:
    text = sheet(tap_card, sheet_book)
    # Derived: R sin 5; pi D tan 8 / 4 is 1.325, and the cam of 1.35 from tooth to tooth above it gives
    # atan(1.35 * 4 / (pi 12)) and falls 1.35 * (2 / 6) / (pi / 2) over the land, with quarters of it; 1.75 * 2 / (pi 12),
    # 40 / 4, pi 0.1 m * 2800 / 60 s, 20 m/s / (pi 0.1 m) * 60.
    assert (
        f"Face offset, for the faces, a job of its own: {6 * math.sin(math.radians(5)):.3f} mm"
        in " ".join(text.split())
    )
    drop = 1.35 * (2 / 6) / (math.pi / 2)
    for share in (0.25, 0.5, 0.75, 1.0):
        assert re.search(rf" {drop * share:.3f} +{drop * share * 100:4.1f} ", text)
    assert "Throw of the cam 1.350 mm the cam of 1.35 mm out of the drawer" in " ".join(text.split())
    assert (
        f"gives {math.degrees(math.atan(1.35 * 4 / (math.pi * 12))):.2f} deg on the thread land, near the 8.00 deg wanted"
        in text.replace("\n", " ")
    )
    heel = next(line for line in text.splitlines() if line.startswith("heel "))
    lead = f"{1.75 * 2 / (math.pi * 12):.3f}"
    # Beside the boxes stands one reading, so that nobody asks which of two they are for.
    assert lead not in heel.split()
    assert f"{lead} at the heel." in " ".join(text.split())
    assert "Lead, no box, indicator along the axis, on the thread land: " in " ".join(text.split())
    assert "10 turns" in text
    assert f"{math.ceil(math.pi * 0.1 * 2800 / 60 * 100) / 100:.2f} m/s" in text
    assert f"{math.floor(20 / (math.pi * 0.1) * 60)} rpm" in text
    # Relief as received: the arc tangent of drop over land.
    for reading in (0.20, 0.21, 0.19):
        assert f"{math.degrees(math.atan(reading / 2)):.2f} deg" in text
    # atan(h / (4 P)) with h = 17/24 H, the height of the external thread.
    assert f"{math.degrees(math.atan(17 / 24 * math.sqrt(3) / 2 * 1.75 / 7)):.2f} deg" in text


def test_what_is_not_worked_out_says_what_it_wants(sheet_book: Book, tap_card: Card) -> None:
    card = edited(tap_card, "received.land_width", "")
    text = " ".join(sheet(card, sheet_book).split())
    assert "for want of: Indicator drop of the heel for a relief (land width)" in text


def test_what_a_setting_hangs_on_is_missing_at_the_head_and_anything_else_below(
    sheet_book: Book, reamer_card: Card
) -> None:
    bare = replace(edited(reamer_card, "settings.wheel-speed.rotational_speed", ""), wheel="")
    without = edited(bare, "wanted.relief_method", "wheel-head-height")
    for form in FORMATS:
        head, _, rest = sheet(without, sheet_book, form).partition("Set, in this order")
        said = " ".join(re.sub("<[^>]*>|[*\\\\]", " ", head.split("<body>")[-1]).split())
        assert "WATCH Not finished, for want of: " in said
        assert "Setting height for a relief angle (wheel diameter)" in said
        assert "Setting height" not in rest.partition("Read on the way")[0]
        assert "Size lost in sharpening" in rest
        assert "Size lost in sharpening" not in head
    # With the wheel nothing that is set is wanting, and a record wants nothing any more.
    assert "Not finished" not in sheet(reamer_card, sheet_book)
    record = sheet(replace(without, status="done"), sheet_book)
    assert "Not finished" not in record
    assert "Not worked out, for want of: " in record


def test_stops_stand_above_what_passes_and_every_problem_is_told_once(
    sheet_book: Book, tap_card: Card
) -> None:
    card = edited(edited(tap_card, "settings.wheel-speed.rotational_speed", "4200 rpm"), "tool.flutes", "5")
    text = " ".join(sheet(card, sheet_book).split())
    states = re.findall(r"(?:STOP|WATCH|PASS)(?= [A-Z])", text.partition("Mind this first")[2])
    assert states == sorted(states, key=["STOP", "WATCH", "PASS"].index)
    assert text.count("must not run at 4200 rpm") == 1
    assert text.count("flute 5 of 5 has no reading") == 1


def test_a_record_tells_where_todays_program_answers_otherwise(sheet_book: Book, tap_card: Card) -> None:
    good = edited(tap_card, "after.drop", "0.28 mm, 0.28 mm, 0.29 mm, 0.29 mm")
    done = finished(work_out(good, sheet_book), date(2026, 11, 26))
    old = replace(done.settings["relief-drop"], recorded={"heel_drop": "0.300 mm"})
    card = replace(done, settings={**done.settings, "relief-drop": old})
    text = " ".join(sheet(card, sheet_book).split())
    assert (
        "the record of that day has indicator drop at the heel 0.300 mm; today it comes out as 0.286 mm."
        in text
    )
    assert "(draft)" not in text


@pytest.mark.parametrize("form", sorted(FORMATS))
def test_nothing_a_card_holds_is_ever_a_command_or_markup(
    form: str, sheet_book: Book, tap_card: Card
) -> None:
    card = replace(
        tap_card,
        tool=Tool(name=POISON, size=POISON, thread=POISON, flutes="4", marks=POISON, belongs_to=POISON),
        wrong=POISON,
        notes=POISON,
        result=POISON,
        entry=POISON,
        wanted={**tap_card.wanted, "rake_angle": Wanted("5 deg", "4 deg", POISON, POISON)},
        after={"diameter": Inspection((POISON, "12 mm"), "", POISON)},
        settings={"size-loss": Setting({"stock_per_sharpening": POISON})},
    )
    text = sheet(card, sheet_book, form)
    assert not set(text) & {"\x1b", "\x07", "\u202e", "\u200b"}
    assert "alert(1)" in text
    if form == "html":
        assert "script" not in Tags(text).seen
        assert "<script" not in text.lower()
    if form == "markdown":
        assert "\\<script\\>" in text
        assert not re.search(r"(?<!\\)`", text)
        assert not re.search(r"(?<!\\)<", text)
    if form == "text":
        assert max(map(len, text.splitlines())) <= 80
        assert text.isascii()


def test_the_html_needs_nothing_else_and_runs_nothing(family_card: Card, sheet_book: Book) -> None:
    text = sheet(family_card, sheet_book, "html")
    found = Tags(text)
    assert found.open == []
    assert not found.seen & {"script", "link", "img", "iframe", "object", "embed", "form", "base"}
    assert not [value for name, value in found.attributes if name in {"src", "href"} or name.startswith("on")]
    assert "default-src 'none'" in text
    assert "url(" not in text
    assert "@import" not in text


def test_the_drawing_is_inside_the_html_and_is_well_formed(tap_card: Card, sheet_book: Book) -> None:
    text = sheet(tap_card, sheet_book, "html")
    drawing = re.search(r"<svg.*?</svg>", text, re.DOTALL)
    assert drawing is not None
    assert ElementTree.fromstring(drawing[0]).tag.endswith("svg")
    assert "<svg" not in sheet(tap_card, sheet_book, "markdown")


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    st.text(max_size=80),
    st.sampled_from(["tool.name", "wrong", "notes", "received.drop", "wanted.rake_angle"]),
)
def test_no_text_breaks_a_page(sheet_book: Book, tap_card: Card, text: str, way: str) -> None:
    card = edited(tap_card, way, text)
    for form in FORMATS:
        page = sheet(card, sheet_book, form)
        if form == "text":
            assert page.isascii()
            assert max(map(len, page.splitlines())) <= 80
        if form == "html":
            assert Tags(page).open == []


def test_the_longest_sheet_gives_up_what_is_only_worth_knowing_to_stay_on_its_page(
    sheet_book: Book, tap_card: Card, monkeypatch: pytest.MonkeyPatch
) -> None:
    whole = setup_sheet(work_out(tap_card, sheet_book))
    monkeypatch.setattr("library.setup_sheet.composing.ONE_PAGE", whole.count("\n") - 2)
    shorter = setup_sheet(work_out(tap_card, sheet_book))
    assert shorter.count("\n") < whole.count("\n") - 1
    used, _, _ = whole.partition("How it is ground")
    assert shorter.startswith(used.rpartition("\n")[0])
    monkeypatch.setattr("library.setup_sheet.composing.ONE_PAGE", 0)
    least = setup_sheet(work_out(tap_card, sheet_book))
    assert ("PASS" in whole, "PASS" in least) == (True, False)
    assert [word in least for word in ("STOP", "WATCH")] == [word in whole for word in ("STOP", "WATCH")]


def test_an_empty_card_has_a_page_too(sheet_book: Book) -> None:
    for form in FORMATS:
        assert "come first" in sheet(Card(), sheet_book, form)


def test_a_tool_with_many_flutes_and_long_readings_stays_within_the_paper(
    sheet_book: Book, tap_card: Card
) -> None:
    card = replace(
        edited(tap_card, "tool.flutes", "40"), after={"drop": Inspection(("0.2800000001 mm",) * 40)}
    )
    assert max(map(len, sheet(card, sheet_book).splitlines())) <= 80


@pytest.mark.parametrize(
    ("text", "plain"),
    [
        ("8\u00b0 \u00b1 0.5", "8 deg +/- 0.5"),
        ("M\u00fcller & S\u00f8n", "Muller & Son"),
        ("3 \u00d7 4 \u2013 \u201cgood\u201d", '3 x 4 - "good"'),
        ("\u8fce", "?"),
        ("\x1b[2J", "?[2J"),
    ],
)
def test_paper_gets_ascii(text: str, plain: str) -> None:
    assert in_ascii(text) == plain


def test_escaping_reaches_every_special_sign() -> None:
    assert as_markdown.plain("1. x") == "1\\. x"
    assert as_markdown.plain("- x").startswith("\\-")
    assert as_html.plain("\"'<>&") == "&quot;&#x27;&lt;&gt;&amp;"


@pytest.mark.parametrize("form", sorted(FORMATS))
def test_what_stops_stands_first_then_the_tool_the_cautions_and_the_work_in_its_order(
    form: str, sheet_book: Book, tap_card: Card
) -> None:
    card = edited(tap_card, "settings.wheel-speed.rotational_speed", "4200 rpm")
    text = sheet(card, sheet_book, form).split("<body>")[-1]
    order = ("STOP", "must not run at 4200 rpm", "No. 7, M12 x 1.75", "CAUTION", "Set, in this order",
             "Read on the way", "After grinding", "Name", "What it means", "Wanted")  # fmt: skip
    places = [text.index(one) for one in order]
    assert places == sorted(places)
    assert "STOP" not in text[: places[0]]


def test_lines_are_left_for_how_it_went_until_they_are_filled(sheet_book: Book, tap_card: Card) -> None:
    empty = edited(edited(tap_card, "minutes", ""), "notes", "")
    text = sheet(empty, sheet_book)
    for word in ("Time", "Result", "Name", "Notes"):
        assert re.search(rf"(^|  ){word} _{{10,}}", text, re.MULTILINE)
    assert "Time: 25 min  Result ____" in sheet(tap_card, sheet_book)


def test_a_sheet_is_black_on_white_and_says_so_without_any_shade(tap_card: Card, sheet_book: Book) -> None:
    html = sheet(tap_card, sheet_book, "html")
    # Browsers leave backgrounds out when they print, so nothing may rest on one.
    assert "background" not in html
    assert set(re.findall(r"#[0-9a-fA-F]{3,6}\b(?!;)", html)) == {"#000"}
