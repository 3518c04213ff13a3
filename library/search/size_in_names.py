"""A size as it stands in the names of tools: spelt in full, or by the series of its thread."""

from __future__ import annotations

import re

from library.book.rows import Rows
from library.search.meant_for import is_meant_for
from library.search.sizes import Size

_RUN_ON = re.compile(r"^(?:g|rc|rp)(?= ?\d)|(?<=\d)ba$")
"""Letters of a series that may stand right beside the size: of a pipe thread before it, BA behind it."""


def series_in(size: Size) -> list[str]:
    """Words of a thread's name by which tools for its series are called, each as it stands in a searched text.

    Example:
        >>> series_in(Size("G1/4", True)), series_in(Size("1/2-13 UNC", True))
        ([' g '], [' unc '])
    """
    text = size.text.casefold()
    words = [word for word in text.split() if word.isalpha() and word not in {"x", "lh"}]
    words += [found[0]] if (found := _RUN_ON.search(text)) else []
    # There are parallel and taper taps for BSP, called BSPP and BSPT.
    return list(dict.fromkeys(f" {word}" if word == "bsp" else f" {word} " for word in words))


def is_called_by(rows: Rows, row: int, size: Size) -> bool:
    """Whether a row has a size in its names, as a counterbore for M12 screws has, so that it is not the tool's own.

    A name that tells a range of sizes, such as over 1 in, is called by none of them.

    Args:
        rows: of the book.
        row: the number of one of them.
        size: as it stood in the search.
    """
    if is_meant_for(rows.words.heads[row], size) is not None:
        return False
    names = rows.words.names_of(row)
    return any(f" {spelling} " in text for spelling in spellings(size) for text in names)


def spellings(size: Size) -> tuple[str, ...]:
    """How a size may stand in a title: in full, and a thread without its pitch.

    Example:
        >>> spellings(Size("M12 x 1.5", True))
        ('m12 x 1.5', 'm12x1.5', 'm12')
    """
    whole = size.text.casefold().replace("-", " ").removesuffix(" lh")
    return (
        tuple(dict.fromkeys((whole, whole.replace(" ", ""), whole.split("x")[0].split()[0])))
        if size.is_thread
        else (whole,)
    )
