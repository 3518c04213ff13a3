"""Advice on a throw names a cam that the machine has. Expected numbers by hand; derived."""

from __future__ import annotations

import math
from dataclasses import replace

from geometry.calculation import Check, Given
from geometry.calculations import calculation
from geometry.evaluate import run
from library.book.model import Measure
from library.equipment.drawer_advice import kept_to_the_drawer, keys_named
from library.equipment.driving import Worked
from library.equipment.model import Machine, Reach
from library.units.show import say


def drawer(*throws: float, per: str = "tooth") -> Machine:
    cams = tuple(Measure(f"{one} mm", one) for one in throws)
    return Machine("grey", "The grey grinder", cam_throws=cams, throw_per=per)  # type: ignore[arg-type]


def watched(machine: Machine, name: str, **values: Given) -> list[Check]:
    sheet = calculation(name)
    result = run(sheet, values)
    worked = Worked(sheet, dict(values), dict(result.outputs))
    kept = (kept_to_the_drawer(one, machine, worked, 4) for one in result.checks)
    return [one for one in kept if one.state in {"watch", "stop"}]


def cam_of(throw: float, machine: Machine, relief: float = 8.0) -> Check:
    """Of 10 mm with four flutes: 8 degrees want 1.1038 mm from tooth to tooth."""
    (found,) = watched(machine, "relief-drop", diameter=10.0, relief_angle=math.radians(relief), land_width=1.0,
                       relief_form="eccentric", chosen_throw=throw, throw_per="tooth", flutes=4.0)  # fmt: skip
    return found


def given_by(throw: float) -> str:
    """The relief of a throw from tooth to tooth: its four in a turn fall over the circle of 10 mm."""
    return f"{math.degrees(math.atan(4 * throw / (10 * math.pi))):.2f} deg"


def test_where_no_cam_of_the_drawer_gives_the_relief_the_next_one_is_told_and_none_that_nobody_has() -> None:
    found = cam_of(1.6, drawer(0.5, 1.0, 1.6, 2.5))
    assert say(found.sentence) == (
        f"The cam gives {given_by(1.6)} on the land, not the 8.00 deg wanted. Of the drawer, 1.000 mm gives {given_by(1.0)}. "
        "Grind and inspect by what this one gives."
    )
    # Its line is still the throw's, where another cam is taken.
    assert (found.cure, keys_named(found)) == ((), ("chosen_throw",))


def test_of_a_cam_far_off_both_neighbours_of_the_need_are_told() -> None:
    said = say(cam_of(2.5, drawer(0.5, 1.0, 1.6, 2.5)).sentence)
    assert f"Of the drawer, 1.000 mm gives {given_by(1.0)} and 1.600 mm gives {given_by(1.6)}." in said


def test_a_cam_of_the_drawer_that_does_give_the_relief_is_advised_by_its_own_throw() -> None:
    # 1.11 mm give 8.04 degrees, within a quarter of a degree.
    found = cam_of(1.6, drawer(0.5, 1.11, 1.6))
    assert "Take a throw of 1.110 mm per tooth or grind" in say(found.sentence)
    assert found.cure == (("chosen_throw", 1.11),)


def test_a_drawer_counted_per_turn_is_told_as_the_line_counts_it() -> None:
    # 4 mm a turn are 1 mm from tooth to tooth.
    assert "Of the drawer, 1.000 mm gives" in say(cam_of(1.6, drawer(2.0, 4.0, 6.4, per="turn")).sentence)


def test_a_cam_that_is_set_to_any_throw_leaves_the_advice_as_it_is() -> None:
    reach = Reach(Measure("0.5 mm", 0.5), Measure("2 mm", 2.0))
    for machine in (
        replace(drawer(1.0, 1.6), cam_throw_range=reach),
        replace(drawer(), cam_throw_range=reach),
        drawer(),
    ):
        assert "Take a throw of 1.104 mm per tooth" in say(cam_of(1.6, machine).sentence)


def test_throws_to_be_raised_on_a_cone_are_raised_to_those_of_cams() -> None:
    def shaped(machine: Machine) -> list[str]:
        found = watched(machine, "cone-relief", diameter=(20.0,), included_angle=math.pi / 2, radial_throw=-1.0,
                        axial_throw=0.5, throw_per="turn", land_width=1.0)  # fmt: skip
        return [say(one.sentence) for one in found]

    # On a cone of 90 degrees both count alike: one of them above the other's size lifts it off.
    (free,) = shaped(drawer())
    assert "bring the axial throw above 1.00" in free or "axial throw above 1" in free
    (kept,) = shaped(drawer(0.8, 1.5, 3.0, per="turn"))
    assert "axial throw to 1.500 mm" in kept
    assert "above" not in kept


def test_a_cone_is_told_what_the_cams_on_both_sides_give_and_which_one_to_get() -> None:
    # Wanted 9 degrees square to a cone of 90 degrees at 20 mm: tan 9 x 10 x 2 pi / cos 45 is 14.074 mm a turn.
    need = 20 * math.pi * math.tan(math.radians(9)) / math.cos(math.pi / 4)
    assert round(need, 3) == 14.074

    def square(throw: float) -> str:
        return f"{math.degrees(math.atan(throw / (20 * math.pi) * math.cos(math.pi / 4))):.2f} deg"

    def told(throw: float, machine: Machine) -> str:
        (found,) = watched(machine, "cone-relief", diameter=(20.0,), included_angle=math.pi / 2, radial_throw=throw,
                           throw_per="turn", land_width=1.0, relief_angle=math.radians(9))  # fmt: skip
        return say(found.sentence)

    kept = told(10.0, drawer(10.0, 16.0, per="turn"))
    assert kept.endswith(f"Of the drawer, 16.000 mm gives {square(16)}. Else get one of 14.08 mm per turn.")
    # Rounded up it is no less than the throw that stands among the answers, and says so.
    assert "Bring the radial throw to at least 14.08 mm per turn" in told(10.0, drawer())
    assert "Bring the radial throw down to at least 14.08 mm per turn" in told(18.0, drawer())


def test_a_throw_along_the_axis_is_told_by_what_it_gives_the_shoulder_and_not_the_circles_of_the_steps() -> (
    None
):
    values: dict[str, Given] = {
        "diameter": (8.0, 12.0), "included_angle": math.pi / 2, "throw_per": "turn", "radial_throw": 1.0,
        "axial_throw": 1.0, "shoulder_relief_angle": math.radians(9),
    }  # fmt: skip
    (short,) = watched(drawer(2.0, 5.0, per="turn"), "step-relief", **values)
    # The outer end at 12 mm has the least: both throws square to the cone, over the circle there.
    larger = math.degrees(math.atan((1 + 5) * math.cos(math.pi / 4) / (12 * math.pi)))
    assert f"Of the drawer, 5.000 mm gives {larger:.2f} deg." in say(short.sentence)


def test_no_cam_is_advised_that_gives_the_other_end_of_a_shoulder_too_much() -> None:
    # Of 8 and 12 mm at 45 degrees: 8 degrees at the outer end want 7.49 mm of both throws a turn, 12 at the inner 7.56.
    found = watched(drawer(0.5, 1.0), "step-relief", diameter=(8.0, 12.0), included_angle=math.pi / 2, radial_throw=3.0,
                    throw_per="tooth", flutes=2.0, shoulder_relief_angle=math.radians(10),
                    relief_lower_limit=math.radians(8), relief_upper_limit=math.radians(12))  # fmt: skip
    assert not any("1.000 mm per tooth" in say(one.sentence) for one in found)
    assert "axial_throw" not in {key for one in found for key, _ in one.cure}
