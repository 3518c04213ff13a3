"""How many examples a property has that every calculation goes through."""

from __future__ import annotations

from hypothesis import settings

EXAMPLES: int = settings().max_examples
"""Examples of one property in the profile that is loaded."""

OVER_ALL = settings(max_examples=max(EXAMPLES // 2, 1))
"""Half as many for each of twice as many calculations, so that all of them together have as many."""
