"""Folders of cards that could not be looked into, so that no list is taken for whole that is not."""

from __future__ import annotations

import os
from pathlib import Path

from library.book.fetching import refused
from library.cards.store import FOLDER
from library.issue import Issue, Place


def folders_not_read(book: Path) -> tuple[Issue, ...]:
    """What kept folders of cards from being read; nothing where all were, or there are none.

    Args:
        book: the shop's folder.
    """
    top = book / FOLDER
    try:
        os.stat(top)
    except (FileNotFoundError, NotADirectoryError):
        return ()
    except OSError as error:
        return (_issue(error, top),)
    errors: list[OSError] = []
    for folder, _, files in os.walk(top, onerror=errors.append):
        if files:
            _look(os.path.join(folder, files[0]), errors)
    return tuple(_issue(error, top) for error in errors)


def _look(file: str, errors: list[OSError]) -> None:
    """Note where a folder lets its names be seen and nothing more."""
    try:
        os.lstat(file)
    except FileNotFoundError:
        return
    except OSError as error:
        error.filename = os.path.dirname(file)
        errors.append(error)


def _issue(error: OSError, top: Path) -> Issue:
    reason = refused(error)
    folder = Path(os.fsdecode(error.filename)) if error.filename else top
    return Issue(
        "", "", "error", f"Cards in this folder were not read. {reason.wrong}", reason.fix, Place(folder)
    )
