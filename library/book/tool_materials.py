"""What tools are made of, as far as it matters to the wheel: the words of the book, and what is stamped on a shank."""

from __future__ import annotations

import re
from collections.abc import Mapping

HSS, COBALT, CARBIDE, CARBON = "hss", "cobalt-hss", "carbide", "carbon-steel"

TOOL_MATERIALS: Mapping[str, str] = {
    HSS: "high-speed steel",
    COBALT: "cobalt high-speed steel",
    CARBIDE: "carbide",
    CARBON: "carbon tool steel",
}
"""Every word with what it stands for."""

_STAMPED = (
    (CARBIDE, r"\b(carbide|hard ?metal|hm|vhm)\b"),
    (COBALT, r"\b(hss[- ]?e|hss[- ]?co\d*|co[58]|cobalt)\b"),
    (HSS, r"\b(hss|high[- ]speed)\b"),
    (CARBON, r"\b(cs|carbon steel|silver steel|drill rod)\b"),
)
"""Signs that makers stamp on a shank, the rarer first; common practice, no source. M2, M35 and M42 are steels and threads too, so that
they say nothing by themselves."""


def stamped(marks: str) -> str:
    """The tool material that stands among the marks of a tool; empty where none does.

    Args:
        marks: what the maker stamped on it.

    Example:
        >>> stamped("HSS-E M12"), stamped("HSS"), stamped("M12 x 1.75")
        ('cobalt-hss', 'hss', '')
    """
    text = marks.casefold()
    return next((word for word, signs in _STAMPED if re.search(signs, text)), "")
