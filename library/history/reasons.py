"""Translate the errors of git into sentences for a shop."""

from __future__ import annotations

import re

from library.sanitize import sanitize

_LOCK = re.compile(
    r"(?P<far>remote: [^\n]*)?(?:unable to create '(?P<lock>[^\n]+\.lock)'|could not lock config file (?P<config>[^\n]+)): file exists",
    re.IGNORECASE,
)
"""How git says that a lock is in its way; of its own files, or of those of another copy."""

_KNOWN = (
    (
        (
            "tell me who you are",
            "auto-detect email",
            "empty ident",
            "no email was given",
            "no name was given",
        ),
        "Git does not know who you are. Tell it once: git config --global user.name followed by your name in quotes, "
        "and user.email likewise.",
    ),
    (
        ("dubious ownership",),
        "The book's folder belongs to another user, so git does not trust it. Tell it to: git config --global --add "
        "safe.directory followed by the folder.",
    ),
    (
        (
            "terminal prompts disabled",
            "could not read username",
            "could not read password",
            "permission denied (",
            "authentication failed",
            "host key verification failed",
        ),
        "The other machine did not let you in, and this program never asks for a password. Set up a key or a stored "
        "password, and try git fetch once by hand.",
    ),
    (
        (
            "could not read from remote",
            "could not resolve host",
            "unable to access",
            "connection timed out",
            "connection refused",
            "no route to host",
            "does not appear to be a git repository",
            "repository not found",
        ),
        "The other copy of the book could not be reached. See that the network is up and the address is right "
        "(git remote -v).",
    ),
    (
        ("no space left", "disk quota exceeded", "out of diskspace"),
        "The disk of the book is full. Make room on it, then try again.",
    ),
    (
        # Of many a call git does not tell what the system said.
        (
            "couldn't write",
            "couldn't set",
            "unable to write",
            "failed to write",
            "write error",
            "unable to create temporary",
            "unable to migrate objects",
            # A message is always given: it is empty where git could not write it down and did not notice.
            "empty commit message",
        ),
        "Git could not write in the book's folder or in its other copy. The disk may be full. Make room on it, see that you "
        "may write there, then try again.",
    ),
    (
        ("would be overwritten",),
        "Files of the book were changed and are not in git yet. Commit them first, then try again.",
    ),
    (
        ("during a merge", "you have not concluded your merge", "during a cherry-pick", "unmerged files"),
        "A merge was begun in the book by hand and is not finished. Finish it with git commit, or break it off with "
        "git merge --abort.",
    ),
    (
        ("ignored by one of your .gitignore",),
        "The file is among those that git was told to ignore. Take it out of .gitignore, then try again.",
    ),
)


def reason_for(command: str, complaints: str) -> str:
    """Why a command of git did not go well, and what to do.

    Args:
        command: its name, such as ``commit``.
        complaints: what git wrote about it, in English.

    Example:
        >>> reason_for("push", "fatal: 'far' does not appear to be a git repository")
        "The other copy of the book could not be reached. See that the network is up and the address is right (git remote -v). (Git says: fatal: 'far' does not appear to be a git repository)"
    """
    said = _short(complaints)
    locked = _LOCK.search(complaints)
    if locked:
        return f"{_of_the_lock(locked)} (Git says: {said})"
    known = complaints.casefold()
    for signs, sentence in _KNOWN:
        if any(sign in known for sign in signs):
            return f"{sentence} (Git says: {said})"
    return f"Git could not do it ({command}): {said or 'it gave no reason'}. Look at the book's folder with git status."


def _of_the_lock(found: re.Match[str]) -> str:
    """What to do about a file that only stands there while git writes."""
    lock = sanitize(found["lock"] or f"{found['config']}.lock")
    where = "the other copy of the book" if found["far"] else "the book"
    return (
        f"Another git command is at work in {where}, or one was broken off and left its lock. Wait a minute and try again; "
        f"if it is still there and nobody is at work, remove the file {lock}, and try once more."
    )


def _short(complaints: str) -> str:
    """What matters of it, safe to show, in one line."""
    lines = [line.strip() for line in complaints.splitlines() if line.strip()]
    wanted = [line for line in lines if line.startswith(("fatal:", "error:", "remote:", "!"))] or lines[-3:]
    return sanitize(" / ".join(wanted))[:300]
