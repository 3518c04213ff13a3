"""How much of what goes through many cases the fast suite takes, and how much the server."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

import pytest
from hypothesis import settings

EXAMPLES: int = settings().max_examples
"""Examples of one property in the profile that is loaded."""

OVER_ALL = settings(max_examples=max(EXAMPLES // (4 if EXAMPLES < 100 else 2), 1))
"""Fewer for each of forty calculations; all of them together have more, and the server has half as many for each."""


def every_third_at_once(cases: Iterable[Any], *, several: bool = False) -> list[Any]:
    """Cases of which the fast suite takes every third; the server takes the others too.

    It is for what is the same question at twenty screens.

    Args:
        cases: of a parametrized test.
        several: whether each case is a row for several parameters.
    """
    return [
        pytest.param(*(case if several else (case,)), marks=() if place % 3 == 0 else pytest.mark.depth)
        for place, case in enumerate(cases)
    ]
