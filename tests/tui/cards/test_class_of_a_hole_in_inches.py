"""A size with the class of a hole is in millimetres, whatever is worked in."""

from __future__ import annotations

import re
from typing import Any

import pytest


@pytest.mark.parametrize("keys", [("<ctrl+f>",), ("<f2>",)])
async def test_a_reamer_found_with_its_class_is_in_millimetres_on_a_screen_in_inches(
    at_the_yard: Any, keys: tuple[str, ...]
) -> None:
    async with at_the_yard() as hands:
        shown = await hands.do("<f5>", "hand reamer 6 h7", *keys)
        assert "6 mm" in shown
        assert not re.search(r"(?<!\d)6 in", shown)


@pytest.mark.parametrize(("found", "said"), [("hand reamer 6 h7", True), ("hand reamer 6", False)])
async def test_the_size_bears_the_class_that_was_given_and_none_that_is_presumed(
    at_the_yard: Any, found: str, said: bool
) -> None:
    async with at_the_yard() as hands:
        shown = await hands.do(found, "<ctrl+f>")
        assert ("6 mm H7" in shown) is said
