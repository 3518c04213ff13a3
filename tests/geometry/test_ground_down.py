"""When a tool is ground down to another diameter."""

from __future__ import annotations

import pytest

from geometry.ground_down import is_ground_down


@pytest.mark.parametrize(
    ("came", "size", "body", "is_down"),
    [
        (10.0, 9.7, None, True),
        (9.98, 10.0, None, False),  # worn
        (12.012, 12.0, None, False),  # a reamer stands over its hole's size
        (10.0, 9.95, 10.0, True),  # little, but the body behind the edges stands outside
        (10.0, 9.95, 9.9, False),  # the body stands in nobody's way
        (97.0, 9.7, None, False),  # a slip of the decimal point
        (float("nan"), 9.7, 10.0, False),  # nobody knows what it came with
    ],
)
def test_a_tool_is_ground_down_where_it_came_larger_than_one_of_that_size_is_made(
    came: float, size: float, body: float | None, is_down: bool
) -> None:
    assert is_ground_down(came, size, body=body) is is_down
