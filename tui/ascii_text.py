"""Text for a terminal that shows ASCII only, as wide as before."""

from __future__ import annotations

from rich.cells import cell_len

from library.sanitize import MARK

UNKNOWN = "?"
"""Stands for a character that an ASCII terminal does not have."""

ASCII_TWINS = str.maketrans(
    {
        "─": "-",
        "│": "|",
        "…": "~",
        "·": ".",
        "±": "+",
        "\N{DEGREE SIGN}": "d",
        "\N{MICRO SIGN}": "u",
        "\N{MULTIPLICATION SIGN}": "x",
        "\N{EN DASH}": "-",
        "\N{EM DASH}": "-",
        "\N{LEFT SINGLE QUOTATION MARK}": "'",
        "\N{RIGHT SINGLE QUOTATION MARK}": "'",
        "\N{LEFT DOUBLE QUOTATION MARK}": '"',
        "\N{RIGHT DOUBLE QUOTATION MARK}": '"',
        MARK: UNKNOWN,
    }
)
"""What each common character becomes where the terminal shows ASCII only; one cell for one cell."""


def in_ascii(text: str) -> str:
    """Return text for a terminal that knows ASCII only, as wide as before.

    Example:
        >>> in_ascii("0.05 mm ±, Größe")
        '0.05 mm +, Gr??e'
    """
    if text.isascii():
        return text
    twins = text.translate(ASCII_TWINS)
    return "".join(c if c.isascii() else UNKNOWN * cell_len(c) for c in twins)
