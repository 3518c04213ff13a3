"""A land of margin, primary and secondary facet: its heel is judged once, and every facet has a height. By hand; derived."""

from __future__ import annotations

from dataclasses import replace

import pytest

from geometry.sentences import Kind
from library.book.model import Book
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.inspecting import received_reliefs, reliefs_after
from library.cards.job import Job, work_out
from library.cards.model import Card, Tool
from library.cards.settings_lines import setting_lines
from library.cards.shall_be import wanted_number
from library.pages.answer import rows
from library.setup_sheet.sheets import setup_sheet
from library.units.show import show

REAMER = {
    "received.diameter": "11.98 mm",
    "received.land_width": "2.4 mm",
    "wanted.margin_width": "0.2 mm",
    "wanted.land_relief_angle": "5 deg",
    "wanted.second_land_relief_angle": "15 deg",
    "wanted.primary_land": "0.6 mm",
    "wanted.relief_form": "flat",
    "wanted.relief_method": "tooth-rest-height",
}


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book(None)


def job(book: Book, family: str = "reamer", **places: str) -> Job:
    card = Card("2026-11-26-01", family=family, tool=Tool("R-12", flutes="6"))
    for place, text in {**REAMER, **{key.replace("__", "."): text for key, text in places.items()}}.items():
        card = edited(card, place, text)
    return work_out(card, book)


def heights(found: Job) -> dict[str, str]:
    return {
        line.title: line.value
        for line in setting_lines(found, found.display)
        if "height" in line.title.lower()
    }


def verdicts(found: Job) -> set[str]:
    """The sentences on the heel."""
    return {f"{check.state} {step.sheet.name}" for step in found.steps if step.works for check in step.checks
            if "heel" in str(check.sentence).lower() and check.state in {"stop", "watch", "pass"}}  # fmt: skip


def test_the_heel_of_a_land_in_facets_is_judged_by_the_facets_alone(book: Book) -> None:
    # One flat of 5 deg over all 2.4 mm would stand proud: 5.99 cos 5 / cos(22.956 - 5) = 6.273, 0.283 outside 5.99.
    assert verdicts(job(book)) == {"pass reamer-land"}


def test_each_facet_has_the_height_for_its_angle_from_the_tangent_at_the_edge(book: Book) -> None:
    # The margin of 0.2 mm turns 0.2 / 5.99 = 1.9130 deg; 5.99 sin 6.9130 = 0.721, 5.99 sin 16.9130 = 1.743.
    assert heights(job(book)) == {"Facet 1: rest height": "0.721 mm", "Facet 2: rest height": "1.743 mm"}


def test_the_rear_facet_is_set_first_but_on_an_end_mill_whose_primary_the_book_grinds_first(
    book: Book,
) -> None:
    assert list(heights(job(book))) == ["Facet 2: rest height", "Facet 1: rest height"]
    mill = ground_down(book, "end-mill")
    assert [one for one in heights(mill) if "height" in one] == [
        "Facet 1: rest height",
        "Facet 2: rest height",
    ]


def test_the_angles_of_the_facets_say_from_where_they_count(book: Book) -> None:
    found = job(book)
    step = found.step("reamer-land")
    assert step is not None
    table = rows(step.answer.result, found.display) if step.answer.result is not None else None
    assert table is not None
    assert table.heading[1].startswith("facet angle from the edge")
    said = " ".join(setup_sheet(found).split())
    # 0.2 / 5.99 = 1.9130 deg.
    assert "those of the facets from the tangent at the edge: each is 1.91 deg more" in said
    assert "for 16.91 deg from the tangent at the edge" in said


def test_a_height_for_one_flat_alone_is_not_told_beside_those_of_the_facets(book: Book) -> None:
    # One flat of 5 deg would have 5.99 sin 5 = 0.522 mm, which makes neither facet.
    assert "0.522 mm" not in setup_sheet(job(book))


def test_without_a_margin_the_first_facet_is_set_by_its_relief_itself(book: Book) -> None:
    # 5.99 sin 5 = 0.522, 5.99 sin 15 = 1.550.
    found = heights(job(book, wanted__margin_width="0 mm"))
    assert found == {"Facet 1: rest height": "0.522 mm", "Facet 2: rest height": "1.550 mm"}


def test_a_reading_after_grinding_is_held_against_the_heel_of_the_facets(book: Book) -> None:
    found = job(book, **{"after__drop": "0.07 mm"})
    # From the outline: the first facet is 0.6 wide at 5 deg from the end of the margin, the second at 15 deg to the heel.
    # r1 = hypot(5.99 - 0.6 sin 5, 0.6 cos 5) = 5.96760 at 5.7511 deg; the plane of the second passes
    # 5.96760 cos(15 - 5.7511) = 5.89002 from the axis, and the heel lies at 22.956 - 1.913 = 21.043 deg:
    # 5.89002 / cos(21.043 - 15) = 5.92293, which is 0.067 inside 5.99.
    assert wanted_number(found, "drop") == pytest.approx(0.067, abs=1e-9)


def test_no_angle_is_told_of_a_heel_that_lies_behind_several_flats(book: Book) -> None:
    readings = {"after__drop": "0.07 mm", "after__land_width": "2.4 mm"}
    assert reliefs_after(job(book, **readings)) == ()
    by_cam = {"wanted__relief_method": "cam", "wanted__relief_form": "eccentric"}
    assert reliefs_after(job(book, **readings, **by_cam)) == ()
    (alone,) = reliefs_after(job(book, **readings, **by_cam, wanted__margin_width="0 mm"))
    assert alone.angles


def test_no_angle_is_told_of_a_reading_over_a_margin_or_several_flats_of_a_tool_as_it_came(
    book: Book,
) -> None:
    readings = {"received__drop": "0.07 mm"}
    assert received_reliefs(job(book, **readings)) == ()
    assert received_reliefs(job(book, **readings, wanted__second_land_relief_angle="")) == ()
    assert received_reliefs(job(book, **readings, wanted__margin_width="0 mm")) == ()
    without = {"wanted__margin_width": "0 mm", "wanted__second_land_relief_angle": ""}
    (alone,) = received_reliefs(job(book, **readings, **without))
    assert alone.angles
    (even,) = received_reliefs(
        job(book, **readings, wanted__margin_width="0 mm", received__relief_form="eccentric")
    )
    assert even.angles


def test_a_cam_makes_no_facets_and_the_drop_of_the_cam_judges(book: Book) -> None:
    found = job(book, wanted__relief_method="cam", wanted__relief_form="eccentric")
    assert {one for one in verdicts(found) if one.endswith("reamer-land")} == set()
    step = found.step("relief-drop")
    assert step is not None
    assert step.works


def test_what_was_typed_into_the_replaced_one_is_kept(book: Book) -> None:
    card = edited(job(book).card, "settings.relief-drop.relief_angle", "6 deg")
    found = work_out(replace(card, notes="kept"), book)
    assert found.card.settings["relief-drop"].typed == {"relief_angle": "6 deg"}


GROUND_DOWN = {
    "received.diameter": "8.7 mm",
    "received.land_width": "3.1 mm",
    "received.body_diameter": "9 mm",
    "wanted.second_land_relief_angle": "24 deg",
    "wanted.land_relief_angle": "10 deg",
    "settings.relief-facets.least_gap": "0.04 mm",
}


def ground_down(book: Book, family: str = "twist-drill") -> Job:
    return job(book, family, **{key.replace(".", "__"): text for key, text in GROUND_DOWN.items()})


def test_what_is_read_at_the_heel_stands_with_the_facet_that_the_heel_lies_on(book: Book) -> None:
    found = ground_down(book)
    step = found.step("relief-facets")
    assert step is not None
    assert step.answer.result is not None
    last = show(step.answer.result.rows[-1].values["facet_angle"], Kind.ANGLE)
    heel = show(step.answer.result.outputs["heel_drop"], Kind.LENGTH, found.display)
    said = " ".join(setup_sheet(found).split())
    assert (
        f"Land relief: 10 deg, square to the axis; indicator at the axis reads {heel} at the heel of facet 2 ({last})"
        in said
    )


def test_what_only_checks_a_facet_is_no_numbered_setting(book: Book) -> None:
    checks = [line for line in setting_lines(ground_down(book), ground_down(book).display) if line.is_check]
    assert [line.title for line in checks] == ["Facet 2 lying level", "Facet 1 lying level"]
    said = setup_sheet(ground_down(book))
    assert "Facet 1 lying level, to check: 10.00 deg" in " ".join(said.split())
    assert [one for one in said.splitlines() if one.startswith("[ ]") and "lying level" in one] == []


def test_the_body_that_a_tool_is_ground_down_from_is_named(book: Book) -> None:
    assert "Facets behind the edge of a tool ground down, from 9.000 mm" in " ".join(
        setup_sheet(ground_down(book)).split()
    )


def test_the_moves_of_the_index_say_that_a_tooth_rest_holds_the_tooth_instead(book: Book) -> None:
    def index_lines(method: str) -> list[str]:
        found = job(book, wanted__relief_method=method)
        return [one.graduation for one in setting_lines(found, found.display) if one.title == "Index"]

    (on_the_rest,) = index_lines("tooth-rest-height")
    (under_the_head,) = index_lines("wheel-head-height")
    assert on_the_rest == f"{under_the_head}; only where no tooth rest holds the tooth"


def test_the_size_that_is_lost_counts_with_the_margin_and_the_facets_that_are_planned(book: Book) -> None:
    # 0.03 mm off a radial face go 6 times into a margin of 0.2 mm. Without it 0.6 mm of facet at 5 degrees end, on a circle of
    # 5.99 mm, atan(0.6 cos 5 / (5.99 - 0.6 sin 5)) = 0.1003 rad behind the edge. After a turn t this back is
    # 0.1003 - t behind the edge, whose relief is 5 degrees less t, and stays inside up to twice that: t may be 0.1745 - 0.1003,
    # into which 0.03 / 5.99 goes 14.8 times.
    stock = {"settings__size-loss__stock_per_sharpening": "0.03 mm", "wanted__rake_angle": "0 deg"}
    stock["settings__size-loss__least_diameter"] = "11 mm"
    primary = {"wanted__primary_land": "", "settings__reamer-land__primary_land": "0.6 mm"}
    for margin, count, says in (("0.2 mm", 6, "margin"), ("0 mm", 14, "primary land")):
        step = job(book, **stock, **primary, wanted__margin_width=margin).step("size-loss")
        assert step is not None
        assert not step.stopped
        assert step.answer.result is not None
        assert step.answer.result.outputs["sharpenings_left"] == count
        assert f"{says} " in str(step.checks[0].sentence)
