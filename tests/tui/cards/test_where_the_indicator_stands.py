"""A card says where the indicator stands wherever a drop is typed or read, and asks for a dish as the book has it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.job import work_out
from library.cards.model import Card, Tool, Wanted
from library.cards.starting import from_entry
from library.pages.readings_on_the_way import OnTheWay, on_the_way
from tui.view.card_form import CardForm
from tui.view.card_page import CardPage
from tui.view.card_set_table import read_lines
from tui.view.lines import text_of, width_of


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book(None)


def shown(book: Book, card: Card, way: str) -> str:
    form = CardForm(book, card)
    form.go_to(way)
    return " ".join(" ".join(map(text_of, CardPage(form).draw(80, 24))).split())


@pytest.mark.parametrize("way", ["received.drop", "after.drop"])
@pytest.mark.parametrize(
    ("family", "entry", "points"),
    [
        ("countersink", "countersink-multi-flute-82-plain-steel", "at the axis"),
        ("end-mill", "end-mill-plain-steel", "along the axis"),
        ("counterbore", "counterbore-plain-steel", "along the axis"),
        ("twist-drill", "twist-drill-jobber-plain-steel", "along the axis"),
    ],
)
def test_the_line_of_a_drop_says_where_the_indicator_stands(
    book: Book, family: str, entry: str, points: str, way: str
) -> None:
    card = Card(family=family, entry=entry, tool=Tool("T-1", size="20 mm"))
    assert f"Indicator {points}, zero at the edge" in shown(book, card, way)


@pytest.mark.parametrize("width", [60, 80, 120])
def test_where_it_points_is_not_cut_off_by_what_the_drop_may_be(width: int) -> None:
    rows = (("drop", "in", ("0.0000", "0.0315")),)
    judged = "0.0305 in to 0.0325 in (30.5 thou to 32.5 thou)"
    for points in ("at the axis", "square to the surface", "along the axis"):
        lines = read_lines(OnTheWay(points, ("edge", "heel"), rows, judged, ("31 thou",)), width)
        assert f"indicator {points}" in text_of(lines[0])
        assert judged in " ".join(" ".join(map(text_of, lines)).split())
        assert all(width_of(one) <= width for one in lines)


def test_a_dish_is_wanted_as_the_depth_that_the_book_has(book: Book) -> None:
    card = replace(from_entry(book, book.entries["end-mill-plain-steel"]), tool=Tool("T-1", size="20 mm"))
    step = work_out(card, book).step("end-teeth")
    assert step is not None
    assert [one.key for one in step.answer.issues if one.missing] == ["dish_depth"]


def step_drill(book: Book, **more: str) -> Card:
    """A step drill of 6, 8 and 10 mm, ground on its shoulders by a cam."""
    wanted = {"surface": "shoulder", "shoulder_relief_angle": "10 deg", "included_angle": "90 deg", **more}
    return Card(
        family="step-drill",
        tool=Tool("S-1", size="6, 8, 10 mm", flutes="2"),
        received={"land_width": ("1.6 mm",), "land_measured_as": ("arc",)},
        wanted={key: Wanted(text) for key, text in wanted.items()},
    )


@pytest.mark.parametrize("width", [80, 160])
def test_the_readings_of_a_tool_with_steps_say_on_which_of_them_they_are_read(book: Book, width: int) -> None:
    job = work_out(step_drill(book), book)
    lines = read_lines(on_the_way(job), width)
    assert text_of(lines[0]).startswith("READ at 10.000 mm diameter, indicator at the axis, zero at the edge")
    plain = replace(step_drill(book), tool=Tool("S-1", size="10 mm", flutes="2"))
    assert "diameter" not in text_of(read_lines(on_the_way(work_out(plain, book)), width)[0])


def test_a_lip_read_beside_the_shoulders_names_its_own_step(book: Book) -> None:
    # The lip stands on the first step, 6 mm, and is turned as far for the same land.
    job = work_out(step_drill(book, lip_relief_angle="12 deg", point_angle="118 deg"), book)
    found = on_the_way(job)
    assert found is not None
    assert found.at == "10.000 mm"
    named = {title.partition(":")[0] for title, _, _ in found.rows if title.startswith("lip")}
    assert named == {"lip at 6.000 mm"}


def flat_drill(land: str) -> Card:
    """A drill of 10 mm with flat facets from a work head, and such a land."""
    return Card(
        family="twist-drill",
        tool=Tool("D-1", size="10 mm", flutes="2"),
        received={"land_width": (land,), "land_measured_as": ("arc",), "web_thickness": ("1.5 mm",)},
        wanted={key: Wanted(text) for key, text in {
            "surface": "lip", "relief_method": "work-head", "point_angle": "118 deg", "lip_relief_angle": "12 deg",
        }.items()},
    )  # fmt: skip


def test_readings_of_a_flat_that_rise_again_say_that_this_is_right(book: Book) -> None:
    def told(land: str) -> str:
        return " ".join(map(text_of, read_lines(on_the_way(work_out(flat_drill(land), book)), 80)))

    # The facet is deepest 20.27 degrees behind the corner, an arc of 1.77 mm.
    assert "gets less again before the heel: on a flat facet that is right" in told("2.6 mm")
    assert "gets less again" not in told("1.7 mm")


def test_a_setting_whose_heel_rubs_says_so_on_wanted_and_names_where(book: Book) -> None:
    def wanted(land: str) -> str:
        return shown(book, flat_drill(land), "wanted.lip_relief_angle")

    rubs = wanted("9 mm")
    assert "STOP on Set, Facet point" in rubs
    assert "11.64 deg" not in rubs
    clears = wanted("2.6 mm")
    assert "STOP" not in clears
    assert "11.64 deg" in clears
