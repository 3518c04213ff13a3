"""The settings of the yard's drills on a card: each number once, under the name of what it is of. Derived by hand."""

from __future__ import annotations

import math
from dataclasses import replace
from pathlib import Path

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.job import work_out
from library.cards.model import Card, Setting, Tool
from library.cards.settings_lines import setting_lines
from library.cards.starting import from_entry
from library.cards.store import load
from library.demo import lay_out
from library.pages.readings_on_the_way import on_the_way
from tui.view.card_form import CardForm
from tui.view.card_page import CardPage
from tui.view.lines import text_of


@pytest.fixture(scope="module")
def yard(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("drills") / "yard"
    lay_out(folder)
    return folder


@pytest.fixture(scope="module")
def book(yard: Path) -> Book:
    return open_book(yard)


def card_of(yard: Path, name: str) -> Card:
    return replace(load(yard, name).card, status="draft", finished=None)


def page(book: Book, card: Card, way: str) -> CardPage:
    form = CardForm(book, card)
    form.go_to(way)
    return CardPage(form)


def shown(of: CardPage, width: int = 80, height: int = 22) -> str:
    return "\n".join(text_of(one) for one in of.draw(width, height))


def test_every_facet_has_the_height_that_makes_it_and_the_one_by_which_it_is_measured(
    yard: Path, book: Book
) -> None:
    card = edited(card_of(yard, "2026-11-20-01"), "wanted.land_relief_angle", "12 deg")
    job = work_out(card, book)
    lines = {one.title: one for one in setting_lines(job, job.display)}
    # 4.35 sin 12 = 0.904; the second facet lies at 23.37 deg from the tangent at the edge: 4.35 sin 23.37 = 1.7255.
    assert (lines["Facet 1: rest height"].value, lines["Facet 1: rest height"].divisions) == (
        "0.904 mm",
        "90 div down",
    )
    second = lines["Facet 2: rest height"]
    assert float(second.value.removesuffix(" mm")) == pytest.approx(1.7255, abs=0.001)
    assert second.divisions == "173 div down"
    for number, height in ((1, "4.255 mm"), (2, "4.111 mm")):
        assert (
            f"{height} above the axis when it lies level" in lines[f"Facet {number} lying level"].graduation
        )
    text = shown(page(book, card, "settings.relief-facets"), 80, 24)
    assert "Each below the tool axis." in text
    for title in (
        "Facet 1: rest height",
        "Facet 2: rest height",
        "Facet 1 lying level",
        "Facet 2 lying level",
    ):
        assert title in text
    assert "mm above axis" in text
    assert "mm up" not in text


def test_the_ground_surface_is_read_first_and_each_row_names_its_own(yard: Path, book: Book) -> None:
    card = edited(card_of(yard, "2026-11-20-01"), "wanted.lip_relief_angle", "12 deg")
    card = replace(card, settings={key: one for key, one in card.settings.items() if key != "drill-point"})
    card = edited(card, "settings.drill-point.land_width", "3.1 mm")
    found = on_the_way(work_out(card, book))
    assert found is not None
    named = [title for title, _, _ in found.rows if title and "turned" not in title]
    assert named[0].startswith("land: ")
    assert any(one.startswith("land, facets: ") for one in named)
    assert "lip: along the axis" in named


def test_a_feed_is_typed_once_and_each_limit_of_it_names_what_it_is_of(yard: Path, book: Book) -> None:
    card = edited(card_of(yard, "2026-08-17-01"), "settings.feed-clearance", "")
    for way in ("wanted.lip_relief_angle", "wanted.point_angle"):
        card = edited(card, way, "12 deg" if "relief" in way else "118 deg")
    job = work_out(card, book)
    step = job.step("feed-clearance")
    assert step is not None
    assert step.answer.inputs["feed"].value == pytest.approx(0.12)
    assert "Largest feed: all shoulders" in shown(page(book, card, "settings.step-relief"), 80, 90)
    assert "Largest feed: lip" in shown(page(book, card, "settings.feed-clearance"), 80, 90)


def test_settings_have_the_numbers_of_the_sheet(yard: Path, book: Book) -> None:
    text = shown(page(book, card_of(yard, "2026-08-17-01"), "settings.wheel-speed.rotational_speed"), 80, 60)
    numbered = {line[2:5].strip(): line for line in text.splitlines() if line[2:4].strip().isdigit()}
    # As the sheet counts: 1 the speed, 2 the index, 3 and 4 the throws.
    assert "Rotational speed" in numbered["1"]
    assert "Index" in numbered["2"]
    assert "Radial throw" in numbered["3"]


def test_turning_pages_at_the_end_stays_at_the_end(yard: Path, book: Book) -> None:
    one = page(book, card_of(yard, "2026-11-20-01"), "settings.relief-facets")
    shown(one)
    for _ in range(30):
        one.page(1)
        last = shown(one)
    assert "of what follows: PgDn" not in last
    one.page(1)
    assert shown(one) == last


def test_settings_out_of_sight_below_are_told(yard: Path, book: Book) -> None:
    assert "more lines: Down" in shown(page(book, card_of(yard, "2026-08-17-01"), "settings.wheel-speed"))


def test_the_rating_stands_in_the_units_of_the_card_and_its_own_behind(yard: Path, book: Book) -> None:
    card = replace(card_of(yard, "2026-08-17-01"), units="in")
    text = shown(page(book, card, "settings.wheel-speed"))
    # 35 m/s are 35 / 0.3048 x 60 = 6889.8 ft/min: a rating goes down, and is one number on the whole page.
    assert "of 6889 ft/min" in text
    assert "6890" not in text
    assert "rated 35 m/s" in text


def test_a_done_card_says_that_it_is_a_record_and_offers_no_change(yard: Path, book: Book) -> None:
    text = shown(page(book, load(yard, "2026-08-17-01").card, "result"))
    assert "nothing is typed on it" in text
    assert "Left and Right change it" not in text
    assert "65 min" in text


@pytest.fixture(scope="module")
def short_of_its_relief(yard: Path) -> Card:
    """A step drill of 6, 8 and 10 mm whose one radial throw leaves the second shoulder short."""
    card = card_of(yard, "2026-08-17-01")
    texts = {
        "tool.size": "6, 8, 10 mm",
        "settings.step-relief.radial_throw": "2.5 mm",
        "settings.step-relief.axial_throw": "0 mm",
        "settings.step-relief.included_angle": "90, 90 deg",
        "settings.step-relief.feed": ".12 mm",
        "wanted.shoulder_relief_angle": "10 deg",
        "wanted.land_relief_angle": "9 deg",
        "wanted.surface": "land",
        "tool.flutes": "2",
    }
    for way, text in texts.items():
        card = edited(card, way, text)
    return card


def test_each_relief_of_a_step_drill_says_at_which_place_and_in_which_view(
    book: Book, short_of_its_relief: Card
) -> None:
    # Derived: 2.5 mm for each of 2 teeth is 0.7958 mm for each radian, so atan(0.7958 / 5) on the circle of 10 mm
    # and along the axis of a shoulder of 90 deg, and atan(0.7958 cos 45 / 5) square to that shoulder. A feed of
    # 0.12 mm takes atan(0.12 / (10 pi)) of the relief along the axis.
    text = shown(page(book, short_of_its_relief, "settings.step-relief"), 80, 90)
    told = [" ".join(one.split()) for one in text.splitlines()]
    assert "Relief of step 3, square to the axis 9.04 deg" in told
    assert "Relief of shoulder 2, outer end, square to its cone 6.42 deg" in told
    assert "Left by the feed on shoulder 2, outer end, along the axis 8.82 deg" in " ".join(told)
    assert "the feed leaves 8.82 deg of its 9.04 deg along the axis" in " ".join(told)
    assert not any(one.startswith(("Shoulder relief 6", "Relief left over")) for one in told)


def test_the_verdict_in_a_cell_stands_beside_the_number_that_it_judges(
    book: Book, short_of_its_relief: Card
) -> None:
    told = [
        " ".join(one.split())
        for one in shown(page(book, short_of_its_relief, "settings.step-relief"), 80, 90).splitlines()
    ]
    assert any(one.endswith("Relief of shoulder 2 6.42 deg square to its cone WATCH") for one in told)
    assert any("Radial throw 2.500 mm" in one and one.endswith("gives 9.04 deg") for one in told)


def told_of_one_shoulder(yard: Path, book: Book, machine: str, throw: str) -> list[str]:
    """The settings of a step drill of 4 and 8 mm, whose one shoulder runs too far for any throw to keep 8 to 12 degrees."""
    begun = from_entry(book, book.entries["step-drill-spiral-flute-plain-steel"])
    typed = {"radial_throw": throw, "included_angle": "90 deg", "throw_per": "tooth"}
    card = replace(
        begun,
        machine=machine,
        tool=Tool("S-1", size="4, 8 mm", flutes="2"),
        settings={"step-relief": Setting(typed)},
    )
    text = shown(page(book, card, "settings.step-relief"), 80, 40)
    return [" ".join(one.split()) for one in text.splitlines()]


def test_a_relief_past_the_limits_that_no_throw_keeps_stands_at_the_throw_and_not_at_the_right_angle(
    yard: Path, book: Book
) -> None:
    # 2.5 mm from tooth to tooth of two is 2.5 / pi for each radian; square to a cone of 90 degrees cos 45 of it, over 2 mm.
    relief = math.degrees(math.atan(2.5 / math.pi * math.sqrt(0.5) / 2))
    told = told_of_one_shoulder(yard, book, card_of(yard, "2026-08-17-01").machine, "2.5 mm")
    assert any(f"Shoulder 1 has {relief:.2f} deg at its inner end" in one for one in told)
    (angle,) = (one for one in told if "Half included angle" in one and "45.00" in one and "div" in one)
    (throw,) = (one for one in told if "Radial throw 2.500 mm" in one and "drawer" in one)
    assert not angle.endswith("WATCH")
    assert throw.endswith("WATCH")


def test_it_stands_at_a_typed_throw_too_and_at_the_relief_where_that_has_a_line(
    yard: Path, book: Book
) -> None:
    told = told_of_one_shoulder(yard, book, "", "2.5 mm")
    (typed,) = (one for one in told if one.endswith("WATCH"))
    assert typed == "| 3 Radial throw per tooth 2.500 mm WATCH"
    # At the outer end, 8 mm, 1.8 mm from tooth to tooth leaves less than 8 degrees.
    outer = math.degrees(math.atan(1.8 / math.pi * math.sqrt(0.5) / 4))
    told = told_of_one_shoulder(yard, book, "", "1.8 mm")
    (relief,) = (one for one in told if one.endswith("WATCH"))
    assert relief == f"| Relief of shoulder 1 {outer:.2f} deg square to its cone WATCH"


def test_a_heel_that_its_facets_judge_carries_no_stop_of_the_flat_that_is_not_ground(
    yard: Path, book: Book
) -> None:
    card = card_of(yard, "2026-11-20-01")
    planned = card.settings["relief-facets"]
    form = CardForm(book, replace(card, settings={}))
    form.go_to("settings.relief-drop")
    assert "STOP" in shown(CardPage(form), 80, 60)
    # Planned as on the yard's own card; the line that stopped before stays where it was.
    for key, text in planned.typed.items():
        form.go_to(f"settings.relief-facets.{key}")
        form.type(text)
    form.go_to("settings.relief-drop")
    text = " ".join(shown(CardPage(form), 80, 60).split())
    assert "Indicator drop of the heel" in text
    assert "judged by its facets" in text
    assert "the heel is judged by 'Facets behind the edge of a tool ground down' alone" in text
    assert "STOP" not in text


def test_what_only_checks_a_facet_has_no_number_among_the_settings(yard: Path, book: Book) -> None:
    text = shown(page(book, card_of(yard, "2026-11-20-01"), "settings.relief-facets"), 80, 60)
    lines = {line[5:].strip().partition("  ")[0]: line[2:5].strip() for line in text.splitlines()}
    assert (lines["Facet 2: rest height"], lines["Facet 1: rest height"]) == ("3", "4")
    assert (lines["Facet 1 lying level"], lines["Facet 2 lying level"]) == ("", "")


def test_the_land_of_a_lip_says_which_land_of_the_drill_it_is_and_lip_heights_are_asked_again(
    book: Book,
) -> None:
    card = Card(family="twist-drill", entry="twist-drill-jobber-plain-steel", units="mm")
    assert "from the lip at its outer corner back to the heel; not the land of the body" in " ".join(
        shown(page(book, edited(card, "wanted.surface", "lip"), "received.land_width")).split()
    )
    assert "not the land of the body" not in shown(
        page(book, edited(card, "wanted.surface", "land"), "received.land_width")
    )
    high = edited(card, "received.lip_height_difference", "0.08 mm")
    assert "Relative lip height" in shown(page(book, high, "after.drop"))
    assert "Relative lip height" not in shown(page(book, card, "after.drop"))


def test_the_web_that_a_facet_point_hangs_on_is_asked_for_without_opening_all_lines(book: Book) -> None:
    card = Card(family="twist-drill", entry="twist-drill-jobber-plain-steel", units="mm")
    for way, text in (("tool.size", "10 mm"), ("wanted.relief_method", "work-head"),
                      ("wanted.lip_relief_angle", "12 deg"), ("wanted.point_angle", "118 deg")):  # fmt: skip
        card = edited(card, way, text)
    found = shown(page(book, card, "settings.point-setup"), 80, 40)
    assert "       Web thickness               ________" in found
    assert "1.500 mm is taken, 0.15 of the diameter" in " ".join(found.split())


def test_lines_that_the_cursor_takes_as_one_are_tied_together_and_each_other_line_is_a_stop(
    yard: Path, book: Book
) -> None:
    drawn = page(book, card_of(yard, "2026-11-20-01"), "settings.relief-facets")
    lines = shown(drawn, 80, 60).splitlines()
    set_lines = lines[: next(at for at, one in enumerate(lines) if one.startswith("READ"))]
    tied = [one for one in set_lines if one.startswith("| ")]
    assert {one[5:].split("  ")[0] for one in tied} >= {"Facet 1: rest height", "Facet 1 lying level"}
    # Down stops at each of the others in turn, and at none that is tied to the one above it.
    marked, rows = [], drawn.form.rows
    drawn.form.go_to(rows[0].way)
    for _ in rows:
        (at,) = [one for one in shown(drawn, 80, 60).splitlines() if one.startswith("> ")]
        marked.append(at[2:].strip())
        drawn.form.move(1)
    assert len(set(marked)) == len(rows)
    assert not {one[2:].strip() for one in tied} & set(marked)
