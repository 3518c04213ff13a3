"""What tools are made of, as far as it matters to the wheel: the words of the book, and what is stamped on a shank."""

from __future__ import annotations

import re
from collections.abc import Mapping

from library.book.model import Book, Entry

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


def tool_material(book: Book, family: str, entry: Entry | None, marks: str = "") -> str:
    """What a tool is made of: as it is stamped, else as its entry has it, else its family; empty where none says it.

    Args:
        book: has the families.
        family: its id.
        entry: of the tool, where it has one.
        marks: what its maker stamped on it.
    """
    own = entry.tool_material if entry is not None else ""
    known = book.families.get(family)
    return stamped(marks) or own or (known.tool_material if known is not None else "")
