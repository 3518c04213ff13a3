"""``heelclear trust``: let git run what a book's own git folder names, or no more."""

from __future__ import annotations

import argparse

from library.book.folders import shop_folder
from library.history.git import GitRefused
from library.history.trust import trust, withdraw
from library.history.work_tree import WorkTree, find_work_tree, listed
from tui.commands import printing


def run(options: argparse.Namespace) -> int:
    """Trust the book, or withdraw it; returns the exit code."""
    folder = options.folder or shop_folder(options.library)[0]
    try:
        tree = find_work_tree(folder)
    except GitRefused as refused:
        printing.error(refused.sentence)
        return 2
    if tree is None:
        printing.error(
            f"{folder} is in no git work tree, or git is not installed: there is nothing to trust."
        )
        return 2
    try:
        printing.line(_withdrawn(tree) if options.withdraw else _trusted(tree))
    except OSError as error:
        printing.error(
            f"It could not be remembered: {error.strerror}. See that your state folder can be written."
        )
        return 2
    return 0


def _trusted(tree: WorkTree) -> str:
    trust(tree.top)
    told = f"names these programs: {listed(tree.programs, 40)}" if tree.programs else "names no program now"
    return f"The book in {tree.folder} is trusted from now on. Its git folder {told}."


def _withdrawn(tree: WorkTree) -> str:
    was = withdraw(tree.top)
    return f"The book in {tree.folder} {'is not trusted any more' if was else 'was not trusted'}."
