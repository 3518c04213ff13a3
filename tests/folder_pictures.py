"""What stands in a folder, to the byte and to the time stamp, so that a test can tell whether anything in it was touched."""

from __future__ import annotations

import os
from collections.abc import Iterable, Mapping
from pathlib import Path

Snapshot = dict[Path, tuple[bytes, int, int]]

LONG_AGO = 1_000_000_000


def snapshot(folders: Iterable[Path]) -> Snapshot:
    """The bytes and the times of every file and folder, of the files also when they were read last.

    Looking at the bytes would itself change that time, so it is set to long ago afterwards.
    """
    found: Snapshot = {}
    for folder in folders:
        for path in (folder, *sorted(folder.rglob("*"))):
            status = path.stat()
            raw = path.read_bytes() if path.is_file() else b""
            found[path] = (raw, status.st_mtime_ns, status.st_atime_ns if path.is_file() else 0)
            os.utime(path, ns=(LONG_AGO, status.st_mtime_ns))
    return found


def written(found: Mapping[Path, tuple[bytes, int, int]]) -> dict[Path, tuple[bytes, int]]:
    """A picture without the times of the last reading, where only a writing counts."""
    return {path: (raw, changed) for path, (raw, changed, _) in found.items()}
