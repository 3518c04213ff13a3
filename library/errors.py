"""What a person is told when something was not done: every refusal of the library, and why a file was not saved."""

from __future__ import annotations

import errno
from pathlib import Path

from library.sanitize import sanitize


class Refused(Exception):
    """Something was not done, and the person can be told why in a sentence.

    Attributes:
        sentence: what stands in the way, where, and what to do.

    Example:
        >>> Refused("The disk is full. Make room on it.").sentence
        'The disk is full. Make room on it.'
    """

    def __init__(self, sentence: str) -> None:
        self.sentence = sentence
        super().__init__(sentence)


class SaveError(Refused):
    """Nothing was saved, and the file is as it was.

    Attributes:
        sentence: what stands in the way, where, and what to do.
        path: the file that was to be saved.
    """

    def __init__(self, sentence: str, path: Path) -> None:
        super().__init__(sentence)
        self.path = path


class ChangedMeanwhile(SaveError):
    """The file is no longer what was read before.

    Attributes:
        theirs: the bytes that are in the file now; nothing when the file is gone.
    """

    def __init__(self, path: Path, theirs: bytes | None) -> None:
        super().__init__(
            f"{named(path)} was changed meanwhile by another program or person. Nothing was saved; read it again.",
            path,
        )
        self.theirs = theirs


def named(path: Path) -> str:
    """A file name that is safe inside a sentence.

    Example:
        >>> named(Path("taps" + chr(27) + "[2J.toml"))
        'taps\ufffd[2J.toml'
    """
    return sanitize(str(path))


_NO_LOCKS = "The disk that holds {file} cannot keep two programs from saving at once. Move the book to a disk of this machine."
_NO_ROOM = {
    errno.ENOSPC: "The disk that holds {file} is full. Make room on it, then {again}.",
    errno.EDQUOT: "Your share of the disk that holds {file} is used up. Remove files you no longer need, then {again}.",
}
_FORBIDDEN = "You may not write in the folder {folder}, so {file} cannot be saved. Ask whoever owns the folder for leave to write there."

UNTOUCHED = " Nothing was saved, and the file is as it was."
"""How a refusal by the operating system ends."""

_SENTENCES = {
    **_NO_ROOM,
    errno.EIO: "The disk that holds {file} reported a fault. Copy the book to another disk before you go on.",
    errno.EACCES: _FORBIDDEN,
    errno.EPERM: _FORBIDDEN,
    errno.EROFS: "The disk that holds {file} can only be read. Choose a folder on another disk for the book.",
    errno.ENOENT: "The folder {folder} is no longer there, so {file} cannot be saved. Make it again, or choose another.",
    errno.ENOTDIR: "{folder} is not a folder, so {file} cannot be saved. Choose another folder for the book.",
    errno.ELOOP: "{file} is a link that leads round in a circle. Remove the link, then save again.",
    errno.ENAMETOOLONG: "The name {file} is too long for this disk. Choose a shorter one.",
    errno.EISDIR: "{file} is a folder. Give the file another name.",
    errno.ENOLCK: _NO_LOCKS,
    errno.EOPNOTSUPP: _NO_LOCKS,
    errno.ENOSYS: _NO_LOCKS,
    errno.EBADF: "The lock that others made for {file} on this network disk may only be read by you. Ask whoever owns the file .lock beside it for leave to write it.",
    errno.ESTALE: "The network disk that holds {file} was taken away for a moment. Wait until it is back, then save again.",
    errno.ENXIO: "{file} is a socket or a device, not a file. Remove it or choose another name.",
    errno.EFBIG: "{file} has become too large for this disk. Split it into two files.",
}


def no_room(error: OSError, path: Path) -> str:
    """What to tell where a disk is full, for what is no save of a file; empty where something else is wrong.

    Args:
        error: as raised.
        path: the file or folder that was to be made.

    Example:
        >>> no_room(OSError(errno.ENOSPC, "No space left on device"), Path("yard"))
        'The disk that holds yard is full. Make room on it, then try again.'
    """
    return _NO_ROOM.get(error.errno or 0, "").format(file=named(path), again="try again")


def refusal(error: OSError, path: Path) -> SaveError:
    """The operating system's number for a failure, turned into a sentence about the user's own file.

    The system's own text is of no use here: for a full disk it names no file at all, and otherwise
    it names a temporary file that the user never heard of.

    Args:
        error: as raised.
        path: the file that was to be saved.

    Example:
        >>> print(refusal(OSError(errno.ENOSPC, "No space left on device"), Path("shop/taps.toml")).sentence)
        The disk that holds shop/taps.toml is full. Make room on it, then save again. Nothing was saved, and the file is as it was.
    """
    template = _SENTENCES.get(error.errno or 0)
    if template is None:
        reason = error.strerror or type(error).__name__
        template = (
            "{file} could not be saved: the system says "
            + f"'{reason}'. Try again, or save under another name."
        )
    told = template.format(file=named(path), folder=named(path.parent), again="save again")
    return SaveError(f"{told}{UNTOUCHED}", path)
