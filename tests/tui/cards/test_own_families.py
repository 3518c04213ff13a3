"""Tools of a family that only the shop's own book has, on the screens: the calculator, a card and its sheet."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

import pytest

from library.book.opening import open_book
from library.calc.by_family import sheets_for
from tests.library.shop_texts import OWN_FAMILIES

pytestmark = pytest.mark.depth
"""It takes long, and the server runs it."""

AtTheYard = Callable[..., AbstractAsyncContextManager[Any]]


@pytest.fixture(autouse=True)
def ours(yard: Path) -> Path:
    """Two families of the yard's own, each with an entry."""
    path = yard / "own-families.toml"
    path.write_text(OWN_FAMILIES)
    return path


async def test_the_calculator_opens_with_the_main_job_of_the_family_that_it_is_like(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        shown = await hands.do("flat drill cast", "<f2>", "30 mm")
        assert "Point of a drill: Flat drill for cast iron" in shown
        many = len(sheets_for(hands.app.session.book.families["twist-drill"]))
        assert f"1 of {many}" in shown
        assert "59.00 deg" in shown
        assert f"2 of {many}" in await hands.do("<ctrl+n>")


async def test_the_calculator_has_the_calculations_of_the_surfaces_of_a_family(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        assert "Relief of a cone from its throw: Burr for bronze seats" in await hands.do(
            "burr bronze", "<f2>"
        )
        listed = await hands.do("<f2>")
        assert "Calculations for Burr for bronze seats" in listed
        assert "Point of a drill" not in listed


async def test_the_page_of_an_entry_tells_of_the_family_that_it_is_ground_like(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard((120, 200)) as hands:
        shown = await hands.do("flat drill cast", "<enter>")
        assert "A flat blade with two lips, held in a bar." in shown
        assert "Ground like twist drills:" in shown
        assert "Cut back past the worn corners" in shown
        assert "The sides of the blade." in shown
        assert "wind round the body" not in shown


@pytest.mark.parametrize(
    ("words", "title", "said"),
    [
        ("flat drill cast", "Flat drills", "Axis to the wheel face"),
        ("burr bronze", "Valve burrs", "(land width)"),
    ],
)
async def test_a_card_and_its_setup_sheet(at_the_yard: AtTheYard, words: str, title: str, said: str) -> None:
    async with at_the_yard((120, 60)) as hands:
        assert title in await hands.do(words, "<ctrl+f>", "S-1", "<enter>", "30 mm")
        shown = await hands.do("<f7>", "<enter>")
        assert f"Family: {title}" in shown
        assert said in shown


async def test_a_calculation_stays_open_when_its_family_loses_it(at_the_yard: AtTheYard, ours: Path) -> None:
    async with at_the_yard() as hands:
        await hands.do("burr bronze", "<f2>", "30 mm")
        ours.write_text(OWN_FAMILIES.replace('["cone"]', '["lip"]'))
        hands.app.session.book = open_book(ours.parent)
        assert "Relief of a cone from its throw" in await hands.do("1")
        await hands.do("<f2>", "<escape>", "<ctrl+n>")
        served = len(sheets_for(hands.app.session.book.families["valve-burr"]))
        assert f"1 of {served}" in hands.shown()
