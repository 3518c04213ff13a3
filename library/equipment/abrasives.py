"""The abrasives of grinding wheels, and which one a wheel has by the words that it is called with."""

from __future__ import annotations

from collections.abc import Mapping

from library.book.search_text import plain

ABRASIVES: Mapping[str, str] = {
    "aluminium-oxide": "aluminium oxide",
    "silicon-carbide": "silicon carbide",
    "diamond": "diamond",
    "cbn": "boron nitride",
}
"""Every word with what it stands for."""

_CALLED = {
    "diamond": ("diamond",),
    "cbn": ("cbn", "boron nitride"),
    "silicon-carbide": ("silicon carbide", "carborundum", "green"),
    "aluminium-oxide": ("aluminium oxide", "aluminum oxide", "alumina", "corundum", "white", "pink", "ruby"),
}
"""How a shop calls them; the colours are common practice, no source."""


def called(name: str) -> str:
    """The abrasive that a name tells of; empty where it tells of none, or of several.

    Args:
        name: what a shop calls a wheel.

    Example:
        >>> called("White cup 100"), called("Green cup"), called("Straight 150")
        ('aluminium-oxide', 'silicon-carbide', '')
    """
    text = f" {plain(name)} "
    found = [word for word, names in _CALLED.items() if any(f" {one} " in text for one in names)]
    return found[0] if len(found) == 1 else ""
