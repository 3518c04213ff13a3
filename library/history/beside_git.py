"""A folder of our own beside git's files, for what nobody else is to see; a killed program's goes with the next."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from library.errors import no_room, refusal
from library.files.disk import DISK, Disk
from library.files.staging import clear_left, staging
from library.history.git import GitRefused
from library.history.work_tree import WorkTree


@contextmanager
def beside_git(tree: WorkTree, disk: Disk = DISK) -> Iterator[Path]:
    """A new folder inside git's own, which goes when the block ends.

    Args:
        tree: the work tree.
        disk: the calls to use.

    Raises:
        GitRefused: when it cannot be made, or something cannot be written in it.
    """
    inside = Path(tree.git.do("rev-parse", "--absolute-git-dir").text)
    clear_left(inside, disk)
    try:
        with staging(inside, disk) as made:
            yield made
    except OSError as error:
        raise GitRefused(told(error, inside)) from error


def told(error: OSError, path: Path) -> str:
    """What to tell of a disk that does not let git's work be done.

    Args:
        error: as raised.
        path: the file or folder that it was about.
    """
    return no_room(error, path) or refusal(error, path).sentence
