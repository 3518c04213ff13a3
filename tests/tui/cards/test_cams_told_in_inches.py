"""Whoever works in inches types the throw of a cam as the program tells it, and takes that cam."""

from __future__ import annotations

from tests.tui.cards.conftest import AtTheYard

TO_THE_THROW = (
    "<f5>", "step drill 1/2, 3/4 in aluminium", "<ctrl+f>", "S-34", *["<enter>"] * 4, "s", *["<enter>"] * 2, ".499, .748 in",
    "<enter>", ".12", "<enter>", "a", "<enter>", "2x 14 thou", *["<enter>"] * 2, *["<right>"] * 2, "<enter>", "90 deg", "<enter>",
)  # fmt: skip


async def test_a_throw_advised_in_inches_is_taken_as_it_was_told(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do(*TO_THE_THROW)
        assert "Bring the axial throw to 2.5 mm (0.0984 in) per tooth." in hands.words()
        await hands.do(".0984", "<enter>")
        assert "STOP" not in hands.words()
        assert "0.0984 in drawer, per tooth" in hands.words()
