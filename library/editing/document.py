"""A file that is edited in place: its text, and the data that the text means."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from library.book.parsing import parse
from library.book.schema import is_newer, told_as_newer
from library.errors import Refused, named
from library.toml.limits import loads

Data = dict[str, object]

_MARK = "\ufeff"


class EditRefused(Refused):
    """A change that cannot be made, or not without a person's own hand; nothing was written."""


@dataclass(frozen=True)
class Document:
    """A file that can be changed in place.

    Attributes:
        path: of the file.
        mark: the byte order mark that it began with, or nothing.
        text: the rest, line ends as they are.
        data: what ``tomllib`` reads in the text.
    """

    path: Path
    mark: str
    text: str
    data: Data

    @property
    def name(self) -> str:
        """The file's name, safe to show."""
        return named(Path(self.path.name))

    @property
    def line_end(self) -> str:
        """How its lines end; the first one tells."""
        return "\r\n" if self.text.partition("\n")[0].endswith("\r") else "\n"

    def bytes_with(self, text: str) -> bytes:
        """The bytes of the file when its text is ``text``."""
        return (self.mark + text).encode()


def open_document(path: Path, raw: bytes) -> Document:
    r"""Read the bytes of a file that is to be changed.

    Args:
        path: for the sentences.
        raw: the bytes.

    Raises:
        EditRefused: when there is a mistake in the file, or a newer program wrote it; for what cannot be read cannot
            be kept.

    Example:
        >>> open_document(Path("taps.toml"), b"schema = 1\n").data
        {'schema': 1}
    """
    data = read_data(raw)
    if data is None:
        raise EditRefused(_mistake(path, raw))
    if is_newer(data.get("schema")):
        told = told_as_newer(data["schema"]).replace("this file", named(Path(path.name)), 1)
        raise EditRefused(
            f"{told} Nothing can be changed in it here, so nothing was saved; take the newer program."
        )
    text = raw.decode()
    mark = _MARK if text.startswith(_MARK) else ""
    return Document(path, mark, text[len(mark) :], data)


@lru_cache(maxsize=4)
def read_data(raw: bytes) -> Data | None:
    """What the bytes of a file mean, or nothing when they are not TOML or beyond what a book may hold.

    Looking for an entry, changing it and proving the change each ask this of the same bytes, so the last few
    answers are remembered. They are shared: nobody changes them.
    """
    try:
        return loads(raw.decode().removeprefix(_MARK))
    except UnicodeDecodeError:
        return None


def _mistake(path: Path, raw: bytes) -> str:
    name = named(Path(path.name))
    findings = sorted(parse(raw, path, "shop").findings, key=lambda finding: finding.severity != "error")
    if findings:
        first = findings[0]
        told = f"{name}, line {first.place.line}: {first.wrong} {first.fix}"
    else:
        told = f"{name} is not written in TOML."
    return f"{told} Nothing can be changed in this file until that is fixed."
