"""Validation of the files of all cards, for ``heelclear check``."""

from __future__ import annotations

from pathlib import Path

from library.cards.folders_not_read import folders_not_read
from library.cards.store import FOLDER, NoCard, load_file
from library.files.bounds import Bounds
from library.files.watching import stamps
from library.issue import Issue, Place


def card_findings(book: Path) -> tuple[Issue, ...]:
    """What is wrong in the files of the cards, by file and line; every file is read.

    Args:
        book: the shop's folder; one without cards has no findings.
    """
    found: list[Issue] = [*folders_not_read(book)]
    bounds = Bounds(book)
    for path in sorted(stamps(book / FOLDER)):
        try:
            found += load_file(path, bounds).findings
        except NoCard as error:
            found.append(
                Issue(
                    "", "", "error", str(error), "Move it out of the folder of cards, or fix it.", Place(path)
                )
            )
    return tuple(found)
