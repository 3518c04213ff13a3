"""One whole job for each family, as the README's tour tells it: typed at 80x24, every number found a second way.

The expected numbers are derived here from the relations of geometry, and formatted as a person reads them; none of
them comes from the program. The keys of each job are counted, from the open book to the closed card.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from math import asin, atan, ceil, cos, degrees, hypot, pi, radians, sin, tan
from typing import Any

import pytest

from library.cards.store import load

AtTheYard = Callable[..., AbstractAsyncContextManager[Any]]

KEYS = {
    "metric tap": 148,
    "inch tap": 153,
    "countersink": 130,
    "step drill": 137,
    "drill made to an odd size": 121,
}
"""Keys pressed for each job."""


def together(lengths: list[float]) -> str:
    """Lengths as they stand in one line, the unit behind the last."""
    return ", ".join(mm(one).removesuffix(" mm") for one in lengths) + " mm"


def mm(value: float) -> str:
    return f"{value:.3f} mm"


def inch(value: float) -> str:
    return f"{value:.4f} in"


def deg(angle: float) -> str:
    return f"{degrees(angle):.2f} deg"


def metres(speed: float) -> str:
    """A speed of the rim, rounded up: a wheel that is too fast is never told too slow."""
    return f"{ceil(speed * 100) / 100:.2f} m/s"


async def further_down(hands: Any) -> str:
    """What stands below on the side; the job itself wants no such look, so it is not counted."""
    shown = await hands.do("<pagedown>")
    hands.keys -= 1
    return str(shown)


def closed(hands: Any, name: str) -> None:
    """The card is a record on the disk, and the job took as many keys as the table says."""
    card = hands.app.screen.form.card
    assert load(hands.shop, card.id).card.done
    assert hands.keys == KEYS[name], f"{name} took {hands.keys} keys"


async def test_a_metric_tap(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do("bronze spi", "<ctrl+f>")
        shown = await hands.do(
            "T-12-5",
            "<enter>",
            "M12",
            "<enter>",
            "<right>",
            "<enter>",
            "slip crane",
            "<enter>",
            "<enter>",
            "w",
        )
        assert "1.75 mm" in shown  # the pitch of M12 in ISO 261
        await hands.do(
            "<enter>",
            "Squeals",
            "<enter>",
            "11.98 mm",
            "<enter>",
            "3.2, 3.2, 3.1 mm",
            "<enter>",
            "c",
            "<enter>",
        )
        shown = await hands.do(".20, .21, .20 mm")
        arcs = [11.98 * asin(land / 11.98) for land in (3.2, 3.2, 3.1)]
        for drop, arc in zip((0.20, 0.21, 0.20), arcs, strict=True):
            assert deg(atan(drop / arc)) in shown
        shown = await hands.do("<enter>")
        # From tooth to tooth of three 6.5 degrees want 2 pi R tan(6.5) / 3 = 1.429 mm; the cam above it in the drawer is 1.6.
        by_cam = atan(1.6 * 3 / (2 * pi * 5.99))
        assert mm(5.99 * sin(radians(3))) in shown  # the face stands R sin(rake) off the centre plane
        assert mm(1.6) in shown
        assert f"gives {deg(by_cam).split()[0]}" in shown
        shown = await hands.do("<enter>", "<right>", "<right>")
        travel = 1.75 * (arcs[0] / 5.99) / (2 * pi)  # along the axis: lead times turns
        assert re.search(rf"lead along the axis mm .* {travel:.3f}", shown)
        assert metres(pi * 0.098 * 3600 / 60) in shown
        assert "13 turns + 22  holes, 66 circle" in shown  # 40 / 3 = 13 1/3, and a third of 66 is 22
        assert re.search(r"Throw of the cam +1\.600 mm  drawer, per tooth", shown)
        assert "rest height" not in shown  # one method: no height beside a cam
        # The cam does not give what is wanted: the next line that has a fault is its own, and the one after it wants a number.
        assert "STOP" not in await hands.do("<enter>")
        assert hands.app.screen.form.row.key == "relief-drop"
        shown = await hands.do("<enter>", ".3", "<enter>", "11.85")
        assert re.search(r"Sharpenings left +\d", shown)
        shown += await further_down(hands)
        # The size hangs on the thread land, relieved by 1 degree; the face takes .3 / cos(rake) of the land each time.
        assert mm(2 * 0.3 * tan(radians(1))) in shown
        left = int(min((11.98 - 11.85) / (0.6 * tan(radians(1))), arcs[0] / (0.3 / cos(radians(3)))))
        assert re.search(rf"Sharpenings left +{left}\b", shown)
        shown = await hands.do("<enter>", ".41, .41, .40 mm", "<enter>", ".02 mm", "<enter>", "11.96 mm")
        # A third of a turn falls 1.6; beside it stands what was wanted, each heel by its own land.
        falls = [round(1.6 * (arc / 5.99) / (2 * pi / 3), 3) for arc in arcs]
        assert together(falls) == "0.413, 0.413, 0.400 mm"
        assert together(falls) in shown
        assert together([arc * tan(radians(6.5)) for arc in arcs]) in shown
        assert shown.count("PASS") == 3
        beside = [read - fall for read, fall in zip((0.41, 0.41, 0.40), falls, strict=True)]
        assert re.search(rf"spread by land +{mm(max(beside) - min(beside))}", shown)
        shown = await further_down(hands)
        new = 11.96 * asin(3.2 / 11.96)
        assert deg(atan(0.41 / new)) in shown
        shown = await hands.do("<enter>", "<enter>", "<enter>", "<enter>", "35", "<enter>", "<right>")
        left = int(min((11.96 - 11.85) / (0.6 * tan(radians(1))), new / (0.3 / cos(radians(3)))))
        assert f"Sharpenings left            {left}" in shown
        assert "is done" in await hands.do("<enter>", "<down>", "<enter>")
        closed(hands, "metric tap")


@pytest.mark.depth
async def test_an_inch_tap(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do("<f5>", "second plug", "<ctrl+f>")
        shown = await hands.do(
            "T-58-2",
            "<enter>",
            "5/8-11 UNC",
            "<enter>",
            "<right>",
            "<enter>",
            "winch",
            "<enter>",
            "<enter>",
            "w",
        )
        assert "11 tpi" in shown
        await hands.do(
            "<enter>", "Tears", "<enter>", ".623 in", "<enter>", ".165 in", "<enter>", "a", "<enter>"
        )
        shown = await hands.do("11, 12, 9, 12 thou")
        for drop in (0.011, 0.012, 0.009):
            assert deg(atan(drop / 0.165)) in shown
        shown = await hands.do("<enter>")
        assert "5 to 15 deg" in shown  # a range of the book stays one
        # From tooth to tooth of four 6 degrees want pi / 2 R tan(6) = 1.306 mm; the cam above it in the drawer is 1.6.
        by_cam = atan(1.6 / 25.4 / (pi / 2) / 0.3115)
        assert f"The cam of 1.6 mm gives {deg(by_cam)[:4]}" in shown
        shown = await hands.do("<enter>", "<right>", "<right>")
        assert re.search(rf"lead along the axis in .* {inch(0.165 / 11 / (pi * 0.623)).split()[0]}", shown)
        assert f"{ceil(pi * 98 / 304.8 * 3600)} ft/min" in shown
        assert "10 turns" in shown
        assert re.search(rf"Throw of the cam +{inch(1.6 / 25.4)}  drawer, per tooth", shown)
        assert "rest height" not in shown  # one method: no height beside a cam
        shown = await hands.do("<enter>", "10 thou", "<enter>", ".618 in")
        shown += await further_down(hands)
        # The size hangs on the thread land, relieved by 1 degree; the rake is left open, so the stock is the way.
        lost = 2 * 0.01 * tan(radians(1))
        assert inch(lost) in shown
        assert re.search(rf"Sharpenings left +{int((0.623 - 0.618) / lost)}\b", shown)
        shown = await hands.do("<enter>", "21, 22, 20.5, 21 thou", "<enter>", "1 thou", "<enter>", ".621 in")
        # The land of .165 turns .165 / .3115 under a cam that falls 1.6 mm in a quarter of a turn.
        assert inch(1.6 / 25.4 * (0.165 / 0.3115) / (pi / 2)) in shown
        assert inch(0.165 * tan(radians(6))) in shown  # beside what was wanted
        assert shown.count("PASS") == 4
        assert inch(0.022 - 0.0205) in shown
        await hands.do("<enter>", "<enter>", "<enter>", "<enter>", "1 h", "<enter>", "<right>")
        assert "is done" in await hands.do("<enter>", "<down>", "<enter>")
        closed(hands, "inch tap")


async def test_a_countersink(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do("multi 90 plain", "<ctrl+f>")
        await hands.do(
            "C-34-B",
            "<enter>",
            "3/4 in",
            "<enter>",
            "<right>",
            "<enter>",
            "deck shop",
            "<enter>",
            "<enter>",
            "p",
        )
        await hands.do("<enter>", "Chatters", "<enter>", "<enter>", "1/8 in", "<enter>", "c", "<enter>")
        shown = await hands.do("20, 24, 20 thou")
        arc = 19.05 * asin(3.175 / 19.05)
        # The indicator points at the axis; square to the edge of 45 degrees the relief is less by its cosine.
        assert deg(atan(0.508 / arc * cos(radians(45)))) in shown
        assert deg(atan(0.6096 / arc * cos(radians(45)))) in shown
        shown = await hands.do("<enter>", "0 deg")
        # 9 degrees want 9.525 tan 9 / cos 45 * 2 pi / 3 = 4.468 mm from tooth to tooth; the drawer has 5 above it.
        assert mm(5.0) in shown
        assert deg(atan(5 / (2 * pi / 3) * cos(radians(45)) / 9.525)).split()[0] in shown
        shown = await hands.do("<enter>", "<left>")
        assert "5600 rpm  of 6300 rpm" in shown
        shown = await further_down(hands)
        assert metres(pi * 0.075 * 5600 / 60) in shown
        shown = await hands.do(
            "<enter>",
            "<enter>",
            "<enter>",
            "10 thou",
            "<enter>",
            "<enter>",
            "31, 31, 32 thou",
            "<enter>",
            "1 thou",
            "<enter>",
        )
        assert mm(5 * (arc / 9.525) / (2 * pi / 3)) in shown
        assert shown.count("PASS") == 3
        shown = await hands.do("<ctrl+n>")
        # Every sharpening turns the edge back 10 thou on the circle, so that the land has twelve of them.
        assert int(arc / 0.254) == 12
        assert re.search(r"Sharpenings left +12\b", shown)
        await hands.do("<enter>", "50", "<enter>", "<right>")
        assert "is done" in await hands.do("<enter>", "<down>", "<enter>")
        closed(hands, "countersink")


@pytest.mark.depth
async def test_a_step_drill(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do("step spiral plain", "<ctrl+f>")
        await hands.do(
            "S-6-10-B",
            "<enter>",
            "6, 8, 10 mm",
            "<enter>",
            "<right>",
            "<enter>",
            "hatches",
            "<enter>",
            "<enter>",
            "s",
        )
        await hands.do("<enter>", "Burns", "<enter>", "<enter>", "1.6 mm", "<enter>", "a", "<enter>")
        await hands.do(".20, .21 mm")
        shown = await hands.do("<enter>", "<up>", "<up>", "<up>", "l", "<enter>", "9 deg")
        # From tooth to tooth of two 9 degrees on 10 mm want pi 5 tan 9 = 2.488 mm; the drawer has 2.5.
        assert mm(2.5) in shown
        shown = await hands.do("<enter>", "<enter>", "<right>", "<right>")
        assert metres(pi * 0.146 * 3600 / 60) in shown
        shown = await hands.do("<enter>", "90, 90 deg")
        shown += await further_down(hands)
        # 2.5 mm from tooth to tooth of two is 2.5 / pi for each radian; the tangent of the relief is that over the radius.
        assert deg(atan(2.5 / pi / 5)) in shown
        # The book has 8 to 12 degrees there; enough for 10 mm is 5 tan 8 = 0.703 mm a radian, on 6 mm 13.2 degrees.
        assert "throw of its own" in " ".join(shown.replace("│", " ").split()) or "WATCH" in shown
        await hands.do("<enter>", ".12")
        shown = await further_down(hands) + await further_down(hands) + await further_down(hands)
        assert (
            deg(atan(2.5 / pi / 5) - atan(0.12 / (2 * pi * 5))) in shown
        )  # the feed takes its slope off the relief
        shown = await hands.do("<ctrl+n>", ".25, .26 mm", "<enter>", ".02 mm")
        assert mm(1.6 * 2.5 / pi / 5) in shown
        assert shown.count("PASS") == 2
        await hands.do("<ctrl+n>", "<enter>", "65", "<enter>", "<right>")
        assert "is done" in await hands.do("<enter>", "<down>", "<enter>")
        closed(hands, "step drill")


@pytest.mark.depth
async def test_a_drill_made_to_an_odd_size(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do("dowel", "<ctrl+f>")
        await hands.do(
            "D-87-2", "<enter>", "8.7 mm", "<enter>", "2", "<enter>", "dowels", "<enter>", "<enter>", "w"
        )
        await hands.do("<enter>", "Too big", "<enter>", "<enter>", "3.1 mm", "<enter>", "a")
        shown = await hands.do("<f6>", "body", "<enter>", "9 mm", "<enter>")
        assert "> Indicator drop" in shown  # the line that was added has jumped over it
        shown = await hands.do("<enter>")
        assert (
            hands.field("Surface").split()[0] == "land"
        )  # for a body that is to become smaller there is no other
        await hands.do("<down>", "<down>", "12 deg", "<enter>", "9 polished", "<enter>")
        # One flat over the whole land stops, and the cursor goes there.
        await hands.do("<right>", "<right>", "<enter>")
        assert "STOP" in hands.shown().splitlines()[1]
        assert hands.app.screen.form.row.key == "relief-drop"
        # A single facet over the whole land would stand proud: the drop is R - R cos(a) / cos(theta - a).
        proud = 4.35 * cos(radians(12)) / cos(3.1 / 4.35 - radians(12)) - 4.35
        assert f"carried on to the heel, stands {mm(proud)} proud" in hands.words()
        await hands.do("<enter>", ".6", "<enter>")
        shown = await hands.do(".04")
        shown += await further_down(hands)
        # The first facet ends at x, y. The second runs from there to the heel, which lies the gap inside the circle of
        # 8.7 where the land of 3.1 ends; the height of a facet is its distance from the axis.
        first = radians(12)
        x, y = 0.6 * cos(first), 4.35 - 0.6 * sin(first)
        along, down = 4.31 * sin(3.1 / 4.35) - x, y - 4.31 * cos(3.1 / 4.35)
        second = atan(down / along)
        assert f"{mm(0.6)} wide" in shown
        assert mm(4.35 * cos(first)) in shown
        assert re.search(rf"Facet 2 lying level +{deg(second)}", shown)
        assert f"{mm(hypot(along, down))} wide" in shown
        assert mm(x * sin(second) + y * cos(second)) in shown
        # The facets know the heel better, and it is judged once.
        assert "proud" not in shown
        shown = await hands.do("<ctrl+n>", "<down>", "<down>", "8.69 mm", "<enter>", "+0 -.03 mm")
        assert "8.670 mm to 8.700 mm" in shown
        assert "PASS" in shown
        await hands.do("<enter>", "<enter>", "40", "<enter>", "<right>")
        assert "is done" in await hands.do("<enter>", "<down>", "<enter>")
        closed(hands, "drill made to an odd size")
