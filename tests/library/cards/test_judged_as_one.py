"""A mill whose land is to have two facets: judged by both, or said plainly to be judged as one flat.

Derived: on 20 mm a flat of 7 deg leaves the heel of a land of 3 mm, turned 0.3 rad, at 10 cos 7 / cos(17.189 - 7) =
10.0844 mm, 0.084 mm proud. A first facet of 1.2 mm ends at (10 - 1.2 sin 7, 1.2 cos 7) = (9.85376, 1.19106); one of 14 deg
from there lies 9.85376 cos 14 + 1.19106 sin 14 = 9.84921 mm from the axis, so that the heel stands at
9.84921 / cos(17.189 - 14) = 9.86449 mm, 0.136 mm inside.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from library.book.model import Book, Family
from library.cards.close import finished
from library.cards.inspecting import verdicts
from library.cards.issues import issues_of
from library.cards.job import work_out
from library.cards.model import Card, Inspection, Setting, Tool, Wanted
from library.issue import Issue
from library.setup_sheet.sheets import setup_sheet
from tui.view.card_form import CardForm
from tui.view.card_page import CardPage
from tui.view.lines import text_of

EMPTY = Book({}, {"end-mill": Family("end-mill", "end mill", kind="end-mill")})


def mill(primary: str = "", land: str = "3 mm", second: str = "14 deg", drop: str = "0.136 mm") -> Card:
    wanted = {
        "surface": Wanted("land"),
        "relief_method": Wanted("tooth-rest-height"),
        "land_relief_angle": Wanted("7 deg"),
        "relief_form": Wanted("flat"),
    }
    return Card(
        family="end-mill",
        tool=Tool("E-20", size="20 mm", flutes="4"),
        received={"land_width": (land,), "land_measured_as": ("arc",)},
        wanted=wanted | ({"second_land_relief_angle": Wanted(second)} if second else {}),
        settings={"reamer-land": Setting({"primary_land": primary})} if primary else {},
        after={"drop": Inspection((drop,) * 4, "", "0.01 mm")},
    )


def of_the_second(card: Card) -> list[Issue]:
    return [one for one in issues_of(work_out(card, EMPTY)) if one.way == "settings.reamer-land"]


def shown(card: Card, way: str) -> str:
    form = CardForm(EMPTY, card)
    form.go_to(way)
    return "\n".join(text_of(one) for one in CardPage(form).draw(80, 24))


def test_both_lands_of_a_mill_are_judged_where_the_first_has_a_width() -> None:
    job = work_out(mill("1.2 mm"), EMPTY)
    (drop,) = verdicts(job)
    assert drop.wanted == pytest.approx(0.136, abs=0.0005)
    assert {mark.state for mark in drop.marks} == {"pass"}
    assert of_the_second(mill("1.2 mm")) == []
    sheet = " ".join(setup_sheet(job).split())
    assert "Facet 2: rest height 2.419 mm" in sheet  # 10 sin 14 deg


@pytest.mark.parametrize("land", ["3 mm", "2 mm"])
def test_a_mill_judged_as_one_flat_says_so_on_screen_and_sheet(land: str) -> None:
    (one,) = of_the_second(mill(land=land))
    assert one.state == "watch"
    assert "14 deg is wanted and not judged: the heel is judged as one flat of 7.00 deg" in one.text
    assert "14 deg is wanted and not judged" in " ".join(
        shown(mill(land=land), "settings.reamer-land").split()
    )
    assert "14 deg is wanted and not judged" in " ".join(
        setup_sheet(work_out(mill(land=land), EMPTY)).split()
    )


def test_a_mill_with_one_relief_alone_is_asked_for_no_second() -> None:
    assert of_the_second(mill(second="")) == []
    step = work_out(mill(second=""), EMPTY).step("reamer-land")
    assert step is not None
    assert not step.in_use


def test_no_height_is_well_beside_a_heel_that_rubs() -> None:
    rubs, clears = (shown(mill(land=land), "settings.setting-height") for land in ("3 mm", "2 mm"))
    height = next(line for line in rubs.splitlines() if "Tooth rest height" in line)
    assert "see the STOP" in height
    assert " ok" not in height
    assert " ok" in next(line for line in clears.splitlines() if "Tooth rest height" in line)


def test_no_drop_is_told_for_a_heel_that_would_stand_proud() -> None:
    after = " ".join(shown(mill(), "after.drop").split())
    assert "The heel would rub, so that no reading is told for it" in after
    assert "-0.084" not in after
    (drop,) = verdicts(work_out(mill(), EMPTY))
    assert {mark.state for mark in drop.marks} == {"watch"}
    form = CardForm(EMPTY, mill())
    form.go_to("after.drop.wanted")
    assert not form.row.wants


def test_the_line_of_the_primary_land_is_told_whole_at_eighty_columns() -> None:
    assert "ends 0.5 mm behind the edge." in " ".join(
        shown(mill(), "settings.reamer-land.primary_land").split()
    )


def test_a_record_from_before_asks_for_no_second_facet() -> None:
    done = finished(work_out(mill(land="2 mm", second="", drop="0.044 mm"), EMPTY), date(2026, 11, 26))
    with_second = replace(done, wanted={**done.wanted, "second_land_relief_angle": Wanted("14 deg")})
    assert of_the_second(with_second) == []
    assert "Margin, primary and secondary land" not in setup_sheet(work_out(with_second, EMPTY))


def test_a_mill_that_is_ground_down_is_judged_by_its_facets_alone() -> None:
    card = mill("1.2 mm")
    down = replace(
        card, settings={"relief-facets": Setting({"body_diameter": "21 mm", "least_gap": "0.05 mm"})}
    )
    steps = {one.sheet.name: one.in_use for one in work_out(down, EMPTY).steps}
    assert steps["relief-facets"]
    assert not steps["reamer-land"]


def test_beside_an_inclined_wheel_a_second_relief_is_said_not_to_be_judged() -> None:
    card = mill()
    inclined = replace(card, wanted={**card.wanted, "relief_method": Wanted("inclined-wheel")})
    assert of_the_second(inclined) == []
    (one,) = [one for one in issues_of(work_out(inclined, EMPTY)) if "not judged" in one.text]
    assert one.state == "watch"
    assert "14 deg is wanted and not judged: with an inclined wheel" in one.text
    alone = {key: value for key, value in inclined.wanted.items() if key != "second_land_relief_angle"}
    assert not [
        one for one in issues_of(work_out(replace(inclined, wanted=alone), EMPTY)) if "not judged" in one.text
    ]
