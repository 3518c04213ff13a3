"""``heelclear trust``: let git run what a book's own git folder names, or no more."""

from __future__ import annotations

import argparse
from pathlib import Path

from library.book.folders import shop_folder, state_folder
from library.errors import no_room
from library.history.git import GitRefused
from library.history.other_copies import Copy, copy_in
from library.history.trust import trust, withdraw
from library.history.work_tree import WorkTree, find_work_tree, listed
from tui.commands import printing


def run(options: argparse.Namespace) -> int:
    """Trust the book, or withdraw it; returns the exit code."""
    folder = options.folder or shop_folder(options.library)[0]
    try:
        found = find_work_tree(folder) or copy_in(folder)
    except GitRefused as refused:
        printing.error(refused.sentence)
        return 2
    if found is None:
        printing.error(
            f"{folder} is in no git work tree, or git is not installed: there is nothing to trust."
        )
        return 2
    try:
        printing.line(_withdrawn(found) if options.withdraw else _trusted(found))
    except OSError as error:
        told = (
            no_room(error, state_folder()) or f"{error.strerror}. See that your state folder can be written."
        )
        printing.error(f"It could not be remembered: {told}")
        return 2
    return 0


def _trusted(book: WorkTree | Copy) -> str:
    trust(_top(book))
    told = f"names these programs: {listed(book.programs, 40)}" if book.programs else "names no program now"
    return f"The book in {book.folder} is trusted from now on. Its git folder {told}."


def _top(book: WorkTree | Copy) -> Path:
    return book.top if isinstance(book, WorkTree) else book.folder


def _withdrawn(book: WorkTree | Copy) -> str:
    was = withdraw(_top(book))
    return f"The book in {book.folder} {'is not trusted any more' if was else 'was not trusted'}."
