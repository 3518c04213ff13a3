"""List the files of a layer: every ``.toml`` in its folder and the folders below."""

from __future__ import annotations

import os
import stat
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

from library.book.fetching import Signature, open_untouched, refused
from library.files.bounds import FIX, Bounds, outside
from library.issue import Issue, Place

MOST_FILES = 2000
"""Files that are read before a finding says that a shop should put several entries into one."""

MOST_FILES_AT_ALL = 20_000
"""Files after which reading stops, so that a wrong folder does not keep the program for hours."""

MOST_FOLDERS = 5000
"""Folders after which reading stops, for the same reason."""

DEEPEST = 16
"""Folders within folders."""

LEFT_ALONE = frozenset({"cards"})
"""Folders at the top of a book that others read."""


@dataclass
class Walk:
    """The files of a layer, and the issues of its folders.

    Attributes:
        files: path and signature of each file, in the order of their names.
        findings: folders that could not be read.
        folders: how many folders were looked into.
    """

    files: list[tuple[Path, Signature]] = field(default_factory=list)
    findings: list[Issue] = field(default_factory=list)
    folders: int = 0


def walk(folder: Path, *, links_out: bool = False) -> Walk:
    """Find the files of a layer; hidden names and folders of other parts of the program are left alone.

    Args:
        folder: the top of the layer, or a link to it; one that is not there is empty.
        links_out: whether links that lead out of the folder are followed, as in what an installer laid; in a book,
            which may come from anybody, they are told of and not read.
    """
    found = Walk()
    try:
        os.lstat(folder)
    except (FileNotFoundError, NotADirectoryError):
        return found
    except OSError as error:
        reason = refused(error)
        _complain(found, folder, reason.wrong, reason.fix)
        return found
    bounds = None if links_out else Bounds(folder)
    for path, signature in _files(folder, folder, found, frozenset(), bounds):
        if len(found.files) == MOST_FILES_AT_ALL:
            _complain(found, folder, f"There are more than {MOST_FILES_AT_ALL} files; the rest was not read.",
                      "Check that this is the folder of a book.", "error")  # fmt: skip
            break
        found.files.append((path, signature))
    if found.folders > MOST_FOLDERS:
        _complain(found, folder, f"There are more than {MOST_FOLDERS} folders; the rest was not read.",
                  "Check that this is the folder of a book.", "error")  # fmt: skip
    if len(found.files) > MOST_FILES:
        _complain(found, folder, f"There are {len(found.files)} files, more than {MOST_FILES}.",
                  "Put several entries into one file, so that the book opens quickly.", "warning")  # fmt: skip
    return found


def _files(
    folder: Path, top: Path, found: Walk, above: frozenset[tuple[int, int]], bounds: Bounds | None
) -> Iterator[tuple[Path, Signature]]:
    found.folders += 1
    listed = _listed(folder, found, above) if found.folders <= MOST_FOLDERS else None
    if listed is None:
        return
    identity, entries = listed
    for name, is_folder, is_link in entries:
        path = folder / name
        if folder == top and is_folder and name in LEFT_ALONE:
            continue
        if not is_folder and not name.endswith(".toml"):
            continue
        if is_link and bounds is not None and bounds.leads_out(path):
            _complain(found, path, outside(path), FIX)
        elif is_folder:
            yield from _files(path, top, found, above | {identity}, bounds)
        else:
            yield path, _signature(path)


def _listed(
    folder: Path, found: Walk, above: frozenset[tuple[int, int]]
) -> tuple[tuple[int, int], list[tuple[str, bool, bool]]] | None:
    """Names in a folder, and of each whether it is a folder and whether it is a link; nothing when it cannot or must not be read."""
    if len(above) > DEEPEST:
        _complain(found, folder, f"Folders lie more than {DEEPEST} deep.", "Move the files further up.")
        return None
    try:
        handle = open_untouched(folder, getattr(os, "O_DIRECTORY", 0))
    except OSError as error:
        reason = refused(error)
        _complain(found, folder, reason.wrong, reason.fix)
        return None
    try:
        status = os.fstat(handle)
        identity = (status.st_dev, status.st_ino)
        if identity in above:
            _complain(found, folder, "This link leads back to a folder that it lies in.", "Remove the link.")
            return None
        names = sorted(name for name in os.listdir(handle) if not name.startswith("."))
        return identity, [(name, *_kind(name, handle)) for name in names]
    except OSError as error:
        reason = refused(error)
        _complain(found, folder, reason.wrong, reason.fix)
        return None
    finally:
        os.close(handle)


def _kind(name: str, inside: int) -> tuple[bool, bool]:
    """Whether a name is a folder, also by a link, and whether it is a link."""
    is_link = False
    try:
        mode = os.stat(name, dir_fd=inside, follow_symlinks=False).st_mode
        if is_link := stat.S_ISLNK(mode):
            mode = os.stat(name, dir_fd=inside).st_mode
    except OSError:
        return False, is_link
    return stat.S_ISDIR(mode), is_link


def _signature(path: Path) -> Signature:
    try:
        return Signature.of(path.stat())
    except OSError:
        return Signature(0, 0, -1)


def _complain(found: Walk, folder: Path, wrong: str, fix: str, state: str = "error") -> None:
    found.findings.append(
        Issue("", "", "warning" if state == "warning" else "error", wrong, fix, Place(folder))
    )
