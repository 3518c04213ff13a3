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
