"""How many examples a property has that every calculation goes through."""

from __future__ import annotations

from hypothesis import settings

QUICK, FEWER = 25, 12

EXAMPLES: int = settings().max_examples
"""Examples of one property in the profile that is loaded."""

OVER_ALL = settings(max_examples=FEWER if EXAMPLES <= QUICK else EXAMPLES)
"""Fewer for each of many calculations, so that all of them together have as many; at full length the whole number."""
