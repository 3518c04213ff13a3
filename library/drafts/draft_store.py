"""The store of drafts: one file for each, and a lock file for each running program, so that drafts of a crash are found."""

from __future__ import annotations

import hashlib
import os
import re
import secrets
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from pathlib import Path

from library.drafts.draft import Draft, OtherVersion, Spoilt, from_bytes, to_bytes
from library.errors import SaveError, refusal
from library.files.disk import DISK, Disk
from library.files.safe_write import ANYTHING, read_for_change, remove_safely, write_safely

_AFTER = timedelta(microseconds=1)
_TRIES = 100
"""How often the lock of this run is tried for; only a look of another program can hold it, for a moment."""

_SESSION = re.compile(r"(?P<session>[0-9a-f]{16})-[0-9a-f]{16}\.toml")


@dataclass(frozen=True)
class Kept:
    """A draft that an earlier run of the program left behind.

    Attributes:
        draft: what was typed.
        path: its file.
    """

    draft: Draft
    path: Path


class Drafts:
    """The drafts of one running program, and those that crashed runs left.

    While the program runs it holds a lock on a file of its own. The system takes that lock away when the
    program ends, however it ends; so a draft whose program holds no lock was left behind, and one whose
    program does belongs to another window.

    Args:
        folder: where drafts are kept; made when the first one is.
        disk: the calls to use.
        now: tells the time.
        book: the folder of the shop's book that is open; each draft says in which it was typed.

    Attributes:
        troubles: what the last look found that could not be offered, a sentence or two each.
    """

    def __init__(
        self,
        folder: Path,
        disk: Disk = DISK,
        now: Callable[[], datetime] = datetime.now,
        book: Path | None = None,
    ) -> None:
        self._folder = folder
        self._disk = disk
        self._now = now
        self._book = os.path.realpath(book) if book is not None else ""
        self._session = secrets.token_hex(8)
        self._sign: int | None = None
        self._latest = datetime.min
        self.troubles: tuple[str, ...] = ()

    def keep(self, draft: Draft) -> None:
        """Keep a draft in place of the one that this program kept for the same form and thing before.

        Raises:
            SaveError: when it cannot be kept; an earlier one is then still there.
        """
        if self._sign is None:
            self._sign = self._begin()
            self._latest = max((kept.draft.place for kept in self._others()), default=datetime.min)
        now = self._now()
        self._latest = max(now.replace(tzinfo=None), self._latest + _AFTER)
        kept = replace(draft, kept=now.replace(microsecond=0), book=self._book, order=self._latest)
        raw = to_bytes(kept)
        write_safely(self._path(draft), raw, root=self._folder, expected=ANYTHING, disk=self._disk)

    def drop(self, draft: Draft) -> None:
        """Forget this program's draft for a form and thing, because it was saved or thrown away."""
        if self._sign is not None:
            self._remove(self._path(draft))

    def _others(self) -> list[Kept]:
        """The drafts of all programs that can be read."""
        found = []
        for path, _ in self._files():
            with suppress(ValueError, SaveError):
                found.append(Kept(from_bytes(read_for_change(path, root=self._folder) or b""), path))
        return found

    def left_behind(self) -> tuple[Kept, ...]:
        """The drafts of programs that no longer run, the newest first; one that is spoilt is set aside and told of.

        The newest is the one that was kept last, also where the clock was set back meanwhile.
        """
        found, troubles = [], []
        for path, session in self._files():
            if session == self._session or self._is_running(session):
                continue
            try:
                raw = read_for_change(path, root=self._folder)
                if raw is not None:
                    found.append(Kept(from_bytes(raw), path))
            except Spoilt as error:
                troubles.append(self._set_aside(path, str(error)))
            except OtherVersion:
                troubles.append(
                    f"The draft {path} is of another version of Heelclear; it is left for that one."
                )
            except SaveError as error:
                troubles.append(f"A draft cannot be read: {error.sentence}")
        self.troubles = tuple(troubles)
        return tuple(sorted(found, key=lambda kept: kept.draft.place, reverse=True))

    def _set_aside(self, path: Path, why: str) -> str:
        """Put a spoilt draft out of the way, so that it is told of once; nothing of it is lost."""
        aside = path.with_name(f"{path.name}.spoilt")
        try:
            self._disk.replace(path, aside)
        except OSError:
            return f"A draft cannot be read: {why}. Its file is {path}."
        return f"A draft cannot be read: {why}. It was set aside as {aside}."

    def of_another_book(self, draft: Draft) -> str:
        """The folder of the other book that a draft was typed in, where it is still there; else nothing."""
        is_other = self._book and draft.book and draft.book != self._book
        return draft.book if is_other and Path(draft.book).is_dir() else ""

    def forget(self, kept: Kept) -> None:
        """Remove a draft that was left behind, because it was recovered or thrown away."""
        self._remove(kept.path)
        self._sweep()

    def close(self) -> None:
        """End orderly. Drafts that are still kept stay, and are offered at the next start."""
        if self._sign is not None:
            with suppress(OSError):
                self._disk.close(self._sign)
            self._sign = None
            self._sweep()

    def _path(self, draft: Draft) -> Path:
        name = hashlib.sha256(draft.name.encode("utf-8", "surrogatepass")).hexdigest()[:16]
        return self._folder / f"{self._session}-{name}.toml"

    def _sign_path(self, session: str) -> Path:
        return self._folder / f"{session}.running"

    def _begin(self) -> int:
        """Create and lock the lock file of this run; another program may be reading or removing it just then."""
        path = self._sign_path(self._session)
        try:
            self._folder.mkdir(parents=True, exist_ok=True, mode=0o700)
            for _ in range(_TRIES):
                descriptor = self._disk.open(path, os.O_RDWR | os.O_CREAT | os.O_NOFOLLOW, 0o600)
                if self._is_taken(path, descriptor):
                    return descriptor
                self._disk.close(descriptor)
                self._disk.pause(0.01)
        except OSError as error:
            raise refusal(error, path) from error
        raise SaveError(
            f"The disk does not let the lock {path} be taken, so what is typed is not kept there. Save often, and look "
            "at the disk that holds it.",
            path,
        )

    def _is_taken(self, path: Path, descriptor: int) -> bool:
        """Whether the lock file is locked for this run and still there; where the disk has no locks, it goes again."""
        try:
            return self._locked(descriptor) and self._is_there(path, descriptor)
        except OSError:
            with suppress(OSError):
                self._disk.close(descriptor)
            with suppress(OSError):
                self._disk.unlink(path)
            raise

    def _locked(self, descriptor: int) -> bool:
        try:
            self._disk.lock(descriptor)
        except BlockingIOError:
            return False
        return True

    def _is_there(self, path: Path, descriptor: int) -> bool:
        try:
            return path.stat().st_ino == self._disk.fstat(descriptor).st_ino
        except FileNotFoundError:
            return False

    def _is_running(self, session: str) -> bool:
        try:
            descriptor = self._disk.open(self._sign_path(session), os.O_RDWR | os.O_NOFOLLOW | os.O_NONBLOCK)
        except OSError:
            return False
        try:
            return not self._locked(descriptor)
        except OSError:
            return False
        finally:
            with suppress(OSError):
                self._disk.close(descriptor)

    def _files(self) -> list[tuple[Path, str]]:
        try:
            names = sorted(self._disk.names(self._folder))
        except OSError:
            return []
        matches = [(name, _SESSION.fullmatch(name)) for name in names]
        return [(self._folder / name, found["session"]) for name, found in matches if found]

    def _remove(self, path: Path) -> None:
        with suppress(SaveError):
            remove_safely(path, root=self._folder, expected=ANYTHING, disk=self._disk)

    def _sweep(self) -> None:
        """Remove the lock files of programs that ended and have no drafts left."""
        needed = {session for _, session in self._files()}
        with suppress(OSError):
            for path in self._folder.glob("*.running"):
                if path.stem not in needed and not self._is_running(path.stem):
                    self._disk.unlink(path)
