"""What a card shows beside its lines: readings judged by a range, doubted sizes, verdict and heel in sight."""

from __future__ import annotations

import math
from dataclasses import replace
from pathlib import Path

import pytest

from library.book.model import Book, Family
from library.book.opening import open_book
from library.cards.close import reopened
from library.cards.model import Card, Inspection, Setting, Tool, Wanted
from library.cards.store import load
from library.demo import lay_out
from tui.view.card_form import CardForm
from tui.view.card_page import CardPage
from tui.view.lines import text_of

KINDS = ("tap", "countersink", "reamer")
EMPTY = Book({}, {kind: Family(kind, kind, kind=kind) for kind in KINDS})


def after(reading: str, wanted: str = "5 to 8 deg", tolerance: str = "") -> CardForm:
    form = CardForm(
        EMPTY,
        Card(
            family="reamer",
            tool=Tool("R-1", size="10 mm", flutes="1"),
            wanted={"rake_angle": Wanted(wanted)},
            after={"rake_angle": Inspection((reading,), "", tolerance)},
        ),
    )
    form.go_to("after.rake_angle")
    return form


@pytest.mark.parametrize(("reading", "word"), [("6 deg", "PASS"), ("9 deg", "OFF")])
def test_a_reading_is_judged_by_the_range_beside_its_line(reading: str, word: str) -> None:
    shown = "\n".join(text_of(one) for one in CardPage(after(reading)).draw(80, 22))
    assert "not judged" not in shown
    assert "5.00 deg to 8.00 deg" in shown
    (line,) = [one for one in shown.splitlines() if word in one and reading in one]
    assert line.rstrip().endswith(word)


def test_a_wanted_range_needs_no_second_limit_and_no_tolerance() -> None:
    form = after("6 deg")
    ways = [row.way for row in form.rows]
    assert "after.rake_angle.wanted" not in ways
    (within,) = [row for row in form.rows if row.way == "after.rake_angle.tolerance"]
    assert not within.wants
    assert "the range is the limit" in within.hint


def test_a_tolerance_widens_the_range_on_the_screen_too() -> None:
    shown = "\n".join(text_of(one) for one in CardPage(after("8.5 deg", tolerance="0.5 deg")).draw(80, 22))
    assert "4.50 deg to 8.50 deg" in shown
    assert "PASS" in shown


def test_a_diameter_that_cannot_be_this_tools_is_told_at_its_field_while_it_is_typed() -> None:
    form = CardForm(EMPTY, Card(family="tap", tool=Tool("T-1", thread="1/2-13 UNC", flutes="4")))
    form.go_to("received.diameter")
    form.type(".023 in")
    shown = " ".join("\n".join(text_of(one) for one in CardPage(form).draw(80, 22)).split())
    assert "STOP: A diameter of 0.584 mm cannot be that of a tool of 12.700 mm." in shown


def cone(**throws: str) -> CardForm:
    typed = {"diameter": "19.05 mm, 9.5 mm", "land_width": "3 mm", "relief_angle": "9 deg", **throws}
    form = CardForm(
        EMPTY,
        Card(
            family="countersink",
            tool=Tool("C-1", size="19.05 mm", flutes="3"),
            wanted={"relief_form": Wanted("eccentric"), "included_angle": Wanted("90 deg")},
            settings={"cone-relief": Setting(typed)},
        ),
    )
    form.go_to("settings.cone-relief")
    return form


@pytest.mark.parametrize(("throw", "word"), [("15 mm", "WATCH"), ("13.41 mm", "PASS"), ("-5 mm", "STOP")])
def test_verdict_and_heel_of_a_cone_are_in_sight_without_turning_a_page(throw: str, word: str) -> None:
    shown = [text_of(one) for one in CardPage(cone(radial_throw=throw)).draw(80, 22)]
    if word == "PASS":
        assert not any(bad in "\n".join(shown) for bad in ("STOP", "WATCH"))
    else:
        # On the line of the steps, and in whole at the foot, for the cursor is where the fault is.
        assert word in shown[0]
        assert any(one.startswith(f"{word}: ") for one in shown)
    # Pointed at the axis the heel falls the throw's share of the turn that the land takes.
    turned = 2 * 3 / 19.05
    falls = float(throw.removesuffix(" mm")) * turned / (2 * math.pi)
    read = [one.split() for one in shown if one.split()[:3] == ["cone:", "drop", "mm"]]
    # What must not be ground has no number to set or to read by.
    assert [one[-1] for one in read] == ([] if word == "STOP" else [f"{falls:.3f}"])


def test_a_verdict_on_the_relief_of_a_cone_stands_at_no_swivel_that_is_right() -> None:
    shown = [text_of(one) for one in CardPage(cone(radial_throw="15 mm")).draw(80, 22)]
    (swivel,) = (one for one in shown if "Half included angle" in one)
    assert "WATCH" not in swivel
    # 15 mm a turn on a cone that leans 45 degrees: tan is 15 / (2 pi) x sin 45 over the radius.
    relief = math.degrees(math.atan(15 / (2 * math.pi) * math.sqrt(0.5) / (19.05 / 2)))
    (judged,) = (one for one in shown[1:12] if "WATCH" in one)
    assert f"{relief:.2f} deg" in judged


def test_a_verdict_on_the_cam_of_a_cone_stands_at_its_throw(tmp_path: Path) -> None:
    folder = tmp_path / "yard"
    lay_out(folder)
    book = open_book(folder)
    found = load(folder, "2026-06-02-01")
    form = CardForm(book, reopened(found.card))
    form.go_to("settings.cone-relief")
    shown = [text_of(one) for one in CardPage(form).draw(80, 24)]
    (swivel,) = (one for one in shown if "Half included angle" in one)
    assert "WATCH" not in swivel
    (throw,) = (one for one in shown if "Radial throw" in one)
    assert "WATCH" in throw


def test_a_hint_that_is_cut_ends_with_one_mark() -> None:
    form = CardForm(EMPTY, Card(family="tap"))
    form.go_to("wanted.surface")
    last = text_of(CardPage(form).draw(40, 17)[-1])
    assert "…" in last
    assert "……" not in last


def test_the_relief_that_two_throws_give_stands_right_under_the_verdict_of_the_readings() -> None:
    form = cone(radial_throw="15 mm", axial_throw="2 mm")
    form.card = replace(form.card, received={"land_width": ("3 mm",)}, wanted={**form.card.wanted, "relief_method": Wanted("cam"), "cone_relief_angle": Wanted("9 deg")})  # fmt: skip
    form.take(EMPTY, form.card)
    form.go_to("settings.relief-drop")
    beside = " ".join(" ".join(text_of(one) for one in CardPage(form).draw(80, 60)).split())
    # 15 and 2 mm in a turn, square to a cone of 45 degrees, at 19.05 mm across.
    found = math.degrees(math.atan((15 + 2) * math.sqrt(0.5) / (2 * math.pi) / 9.525))
    assert f"Counted with {found:.2f} deg on the cone, square to the edge" in beside
    # Beside the lines, and as the watch of the line in hand at the foot.
    assert beside.count("Counted with") == 2
    assert beside.index("Counted with") < beside.index("Indicator drop at the heel")
