"""Whether something is at a path, where the folders on the way to it may be shut."""

from __future__ import annotations

import os
from pathlib import Path


def is_missing(path: Path) -> bool:
    """Whether there is nothing at a path; a path that cannot be looked at is not called missing.

    Example:
        >>> is_missing(Path("no such thing")), is_missing(Path("/"))
        (True, False)
    """
    try:
        os.stat(path)
    except (FileNotFoundError, NotADirectoryError):
        return True
    except OSError:
        return False
    return False
