"""The five jobs of the invented ferry yard: a metric tap, an inch tap, a countersink, a step drill, a drill made to an odd size."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.close import differs
from library.cards.history import sharpenings_left
from library.cards.inspecting import received_reliefs, verdicts
from library.cards.issues import issues_of, keeps_open
from library.cards.job import Job, work_out
from library.cards.starting import again
from library.cards.store import load
from library.demo import lay_out
from library.equipment.model import machines, wheels
from library.setup_sheet.sheets import setup_sheet

JOBS = {
    "metric tap": "2026-03-11-01",
    "inch tap": "2026-04-22-01",
    "countersink": "2026-06-02-01",
    "step drill": "2026-08-17-01",
    "drill made to an odd size": "2026-11-20-01",
}
ONE_PAGE = 78


@pytest.fixture(scope="module")
def yard(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("demo") / "yard"
    lay_out(folder)
    return folder


@pytest.fixture(scope="module")
def yard_book(yard: Path) -> Book:
    return open_book(yard)


def job(yard: Path, book: Book, name: str) -> Job:
    return work_out(load(yard, JOBS[name]).card, book)


def output(found: Job, sheet: str, key: str) -> float:
    step = found.step(sheet)
    assert step is not None
    assert step.answer.result is not None
    return step.answer.result.outputs[key]


def test_the_yard_has_a_grinder_and_its_wheels(yard_book: Book) -> None:
    assert set(machines(yard_book)) == {"grey-grinder"}
    assert set(wheels(yard_book)) == {"white-cup-100", "straight-150", "dish-75"}
    assert all(wheel.rated_speed for wheel in wheels(yard_book).values())


@pytest.mark.parametrize("name", ["metric tap", "inch tap"])
def test_the_drawer_of_the_grinder_offers_the_cam_that_the_job_takes(
    yard: Path, yard_book: Book, name: str
) -> None:
    found = job(yard, yard_book, name)
    step = found.step("cam-choice")
    assert step is not None
    assert step.rests
    assert step.provenance["cam_throws"] == "machine"
    assert found.by_cam is not None
    assert output(found, "cam-choice", "chosen_throw") == pytest.approx(1.6)
    assert found.by_cam.throw == "1.6 mm"
    assert output(found, "cam-choice", "relief_angle") == pytest.approx(found.by_cam.given)


@pytest.mark.parametrize("name", JOBS)
def test_every_card_of_the_yard_adds_up_and_prints_on_one_page(
    yard: Path, yard_book: Book, name: str
) -> None:
    found = job(yard, yard_book, name)
    assert load(yard, JOBS[name]).findings == ()
    assert issues_of(found) == ()
    assert found.machine is not None
    assert found.wheel is not None
    text = setup_sheet(found)
    assert text.isascii()
    assert len(text.splitlines()) <= ONE_PAGE
    assert max(map(len, text.splitlines())) <= 80


@pytest.mark.parametrize("name", [name for name in JOBS if name != "drill made to an odd size"])
def test_the_records_of_the_yard_are_what_comes_out_today(yard: Path, yard_book: Book, name: str) -> None:
    found = job(yard, yard_book, name)
    assert found.card.done
    assert any(step.recorded for step in found.steps)
    assert differs(found) == ()
    assert {verdict.state for verdict in verdicts(found)} <= {"pass", "watch"}


@pytest.mark.parametrize("name", JOBS)
def test_every_job_can_be_done_again(yard: Path, yard_book: Book, name: str) -> None:
    fresh = work_out(again(load(yard, JOBS[name]).card, yard_book), yard_book)
    assert keeps_open(fresh) == ()
    assert fresh.step("wheel-speed") is not None


def test_the_metric_tap_by_hand(yard: Path, yard_book: Book) -> None:
    found = job(yard, yard_book, "metric tap")
    # A chord of 3.2 on 11.98 turns 2 asin(3.2 / 11.98); derived.
    turned = 2 * math.asin(3.2 / 11.98)
    assert output(found, "relief-drop", "heel_drop") == pytest.approx(1.6 * turned / (2 * math.pi / 3))
    assert output(found, "lead-over-land", "lead_over_land") == pytest.approx(1.75 * turned / (2 * math.pi))
    assert output(found, "relief-drop", "relief_angle") == pytest.approx(
        math.atan(1.6 * 3 / (math.pi * 11.98))
    )
    assert found.step("setting-height") is None
    # Three flutes from one reading each: atan(drop / (R theta)) with each flute's own land.
    lands = [2 * math.asin(land / 11.98) * 5.99 for land in (3.2, 3.2, 3.1)]
    expected = [math.atan(drop / land) for drop, land in zip((0.20, 0.21, 0.20), lands, strict=True)]
    assert [one.angles["eccentric"] for one in received_reliefs(found)] == pytest.approx(expected)
    # From 11.96 to 11.85 with 2 * 0.3 tan 1 = 0.01047 each time, the thread land's relief, is room for 10.5.
    assert sharpenings_left(found) == 10


def test_the_inch_tap_by_hand(yard: Path, yard_book: Book) -> None:
    found = job(yard, yard_book, "inch tap")
    # 11 threads to the inch, 0.165 in of arc on 0.623 in: 0.165 / 11 / (pi 0.623) in; derived.
    travel = output(found, "lead-over-land", "lead_over_land") / 25.4
    assert travel == pytest.approx(0.165 / 11 / (math.pi * 0.623))
    # From tooth to tooth of four the cam falls 1.6 mm; the land turns 0.165 / 0.3115.
    fall = 1.6 / 25.4 * (0.165 / 0.3115) / (math.pi / 2)
    assert output(found, "relief-drop", "heel_drop") / 25.4 == pytest.approx(fall)
    # The chamfer climbs 17/24 of H = cos(30) p, the depth of an outer thread in ISO 68-1, in its three threads.
    leans = math.atan(17 / 24 * math.cos(math.radians(30)) / 3)
    assert output(found, "relief-drop", "square_drop") / 25.4 == pytest.approx(fall * math.cos(leans))
    assert output(found, "relief-drop", "axial_drop") / 25.4 == pytest.approx(fall / math.tan(leans))
    assert found.step("setting-height") is None
    # The edge goes back 0.01 / (cos 5 - sin 5 tan 1) round the tool and falls tan 1 of it, on both sides of it.
    back = 0.01 / (math.cos(math.radians(5)) - math.sin(math.radians(5)) * math.tan(math.radians(1)))
    lost = 2 * back * math.tan(math.radians(1))
    assert output(found, "size-loss", "size_lost") / 25.4 == pytest.approx(lost)
    assert output(found, "size-loss", "sharpenings_left") == int((0.623 - 0.618) / lost) == 14


def test_the_countersink_by_hand(yard: Path, yard_book: Book) -> None:
    found = job(yard, yard_book, "countersink")
    # Square to the cone at the largest radius: r tan 9 per radian, a third of a turn for each of three teeth; a radial
    # cam counts cos 45 of its travel.
    square = 9.525 * math.tan(math.radians(9)) * 2 * math.pi / 3
    assert output(found, "cone-relief", "square_throw") == pytest.approx(5 * math.cos(math.radians(45)))
    assert output(found, "cone-relief", "needed_radial_throw") == pytest.approx(
        square / math.cos(math.radians(45))
    )
    step = found.step("cone-relief")
    assert step is not None
    assert step.answer.result is not None
    # At half the diameter the tangent of the relief doubles.
    smallest = step.answer.result.rows[-1].values["relief_angle"]
    assert math.tan(smallest) == pytest.approx(2 * 5 * math.cos(math.radians(45)) / (2 * math.pi / 3) / 9.525)


def test_the_step_drill_by_hand(yard: Path, yard_book: Book) -> None:
    found = job(yard, yard_book, "step drill")
    step = found.step("step-relief")
    assert step is not None
    assert step.answer.result is not None
    steps = [row for row in step.answer.result.rows if row.label.startswith("Step ")]
    # 2.5 mm from tooth to tooth on two teeth is 2.5 / pi per radian; tan of the relief is that over the radius.
    for row, radius in zip(steps, (3.0, 4.0, 5.0), strict=True):
        assert math.tan(row.values["relief_angle"]) == pytest.approx(2.5 / math.pi / radius)
    # The readings are those of the land on 10 mm under the same cam.
    assert output(found, "relief-drop", "heel_drop") == pytest.approx(1.6 * 2.5 / math.pi / 5)


def test_the_drill_made_to_an_odd_size_by_hand(yard: Path, yard_book: Book) -> None:
    found = job(yard, yard_book, "drill made to an odd size")
    assert not found.card.done
    step = found.step("relief-facets")
    assert step is not None
    assert step.answer.result is not None
    rows = step.answer.result.rows
    assert rows[0].values["facet_angle"] == pytest.approx(math.radians(10))
    # Walk along the facets and look how far each corner lies inside the circle of 8.7: the least is the gap wanted.
    x, y, heading = 0.0, 4.35, 0.0
    gaps = []
    for row in rows:
        heading = row.values["facet_angle"]
        for _ in range(200):
            x += row.values["facet_width"] / 200 * math.cos(heading)
            y -= row.values["facet_width"] / 200 * math.sin(heading)
            gaps.append(4.35 - math.hypot(x, y))
    behind = gaps[200:]
    assert min(behind) == pytest.approx(0.04, abs=2e-3)
    assert min(gaps) > -1e-9
