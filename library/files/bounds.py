"""Whether a file of the book lies in the book's folder once links are followed; what lies outside is not read."""

from __future__ import annotations

import os
from pathlib import Path

from library.errors import named

FIX = "Put what it leads to into the book's folder itself, or remove the link."
"""What to do about a link that leads out."""


class Bounds:
    """The folder of a book, which may itself be reached by a link.

    Args:
        book: the folder; it need not be there.
    """

    def __init__(self, book: Path) -> None:
        self._top = Path(os.path.realpath(book))
        self._folders: dict[Path, bool] = {}

    def leads_out(self, link: Path) -> bool:
        """Whether a path ends outside of the folder once all links are followed."""
        return not Path(os.path.realpath(link)).is_relative_to(self._top)

    def is_outside(self, file: Path) -> bool:
        """The same for a file, at less cost where many lie in one folder and few are links."""
        folder = file.parent
        if folder not in self._folders:
            self._folders[folder] = self.leads_out(folder)
        return self._folders[folder] or (os.path.islink(file) and self.leads_out(file))


def outside(link: Path, what: str = "This") -> str:
    """What is wrong with a link that leads out of the book, a sentence."""
    return f"{what} is a link that leads out of the book's folder, to {named(Path(os.path.realpath(link)))}, and was not read."
