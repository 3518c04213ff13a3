"""Exporting an answer or a sheet to a new file; nothing that is there is written over."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from library.files.own_file import put_new

ENDINGS = {"text": ".txt", "markdown": ".md", "html": ".html"}
"""The endings of files by the form of what is written."""

MOST = 1000
"""How many answers of one name are kept in one folder before another folder has to be used."""


@dataclass(frozen=True)
class Printed:
    """What a screen has to be taken away.

    Attributes:
        title: what it is.
        name: of its file, without an ending.
        form: gives it in a form, ``text``, ``markdown`` or ``html``.
        look: shows it on the screen; nothing where it is in front already.
    """

    title: str
    name: str
    form: Callable[[str], str]
    look: Callable[[], object] | None = None


def write_new_file(text: str, folder: Path, name: str, ending: str = ".txt") -> Path:
    """Write text into a new file; nothing that is there already is touched.

    Args:
        text: what to keep.
        folder: where.
        name: of the file, without its ending; what does not belong into a file's name becomes a hyphen.
        ending: of the file's name.

    Returns:
        The path of the new file: ``name.txt``, or ``name-2.txt`` and so on where that is taken.

    Raises:
        OSError: when it cannot be written.
    """
    name = re.sub(r"[^A-Za-z0-9_-]+", "-", name)[:100]
    for number in range(1, MOST):
        path = folder / (f"{name}{ending}" if number == 1 else f"{name}-{number}{ending}")
        try:
            put_new(path, text.encode("utf-8", "backslashreplace"))
        except FileExistsError:
            continue
        return path
    raise FileExistsError(17, "too many answers of that name are kept there", str(folder))
