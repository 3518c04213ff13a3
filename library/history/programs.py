"""Which programs a book's own git folder names, and how git is kept from running them.

A book may come from anybody, and with it the folder of git with its settings and hooks. The settings of the person and
of the machine are not meant here: what stands there, he chose himself.
"""

from __future__ import annotations

import os
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from library.history.git import Git

NEVER_RUN = {
    "GIT_ALLOW_PROTOCOL": "none",
    "GIT_NO_LAZY_FETCH": "1",
    "GIT_PROXY_COMMAND": "",
    "GIT_SSH_COMMAND": "false",
}
"""Variables with which git reaches no other machine, though a part of the history should lie there."""

_OWN = frozenset({"system", "global", "command"})
"""Where settings stand that are the person's or this program's; all others came with the book."""

# By the handbook of git: what recording, pulling and pushing may run. Pagers, editors, aliases, tools that show or
# join differences, the watcher of files and books within the book are not among them, for this program never has git
# run those.
_RUNS = re.compile(
    r"filter\..*\.(?:clean|smudge|process)"
    r"|core\.(?:hookspath|sshcommand|gitproxy|alternaterefscommand)"
    r"|gpg\.(?:.*\.)?program|gpg\.ssh\.defaultkeycommand"
    r"|credential\.(?:.*\.)?helper"
    r"|remote\..*\.(?:uploadpack|receivepack|vcs)"
    r"|protocol\..*|hook\..*\.command",
    re.DOTALL,
)
_ADDRESS = re.compile(r"remote\..*\.(?:push)?url", re.DOTALL)
_ADDRESS_INSTEAD = re.compile(r"url\.(.*)\.(?:push)?insteadof", re.DOTALL)
_OTHER_COPY = re.compile(r"branch\..*\.(?:push)?remote|remote\.pushdefault", re.DOTALL)
_FILTER = re.compile(r"(filter\..*)\.(?:clean|smudge|process)", re.DOTALL)


@dataclass(frozen=True)
class Setting:
    """A setting of git.

    Attributes:
        scope: where it stands: ``system``, ``global``, ``local``, ``worktree``, ``command``.
        key: its whole name, with section and name in small letters.
        value: of it.
    """

    scope: str
    key: str
    value: str


def settings_of(git: Git) -> tuple[Setting, ...]:
    """Every setting that git finds; reading them runs nothing.

    Raises:
        GitRefused: when git cannot read them.
    """
    words = iter(os.fsdecode(git.do("config", "--list", "--show-scope", "-z").out).split("\0"))
    found = []
    for scope in words:
        key, _, value = next(words, "").partition("\n")
        if key:
            found.append(Setting(scope, key, value))
    return tuple(found)


def settings_that_run(settings: tuple[Setting, ...]) -> tuple[str, ...]:
    """The names of the book's own settings by which git would run something.

    Example:
        >>> settings_that_run((Setting("local", "gpg.program", "/x"), Setting("global", "core.sshcommand", "ssh -4")))
        ('gpg.program',)
    """
    return tuple(dict.fromkeys(one.key for one in settings if one.scope not in _OWN and _runs(one)))


def _runs(one: Setting) -> bool:
    instead = _ADDRESS_INSTEAD.fullmatch(one.key)
    if instead:
        return _is_odd_address(instead[1])
    if _ADDRESS.fullmatch(one.key):
        return _is_odd_address(one.value)
    if _OTHER_COPY.fullmatch(one.key):
        return "/" in one.value or "::" in one.value or one.value.startswith("-")
    return bool(_RUNS.fullmatch(one.key))


def _is_odd_address(address: str) -> bool:
    """Whether an address names a program, or a copy that may have come along with the book, and with hooks of its own."""
    return "::" in address or not (address.startswith(("/", "~")) or ":" in address)


def hooks_of(git: Git, settings: tuple[Setting, ...]) -> tuple[str, ...]:
    """The hooks that came with the book, as ``hook pre-commit``; not those of a folder that the person named for all."""
    chosen = [one for one in settings if one.key == "core.hookspath"]
    if chosen and chosen[-1].scope in _OWN and chosen[-1].value.startswith(("/", "~")):
        return ()
    folder = git.folder / git.do("rev-parse", "--git-path", "hooks").text
    try:
        with os.scandir(folder) as found:
            return tuple(sorted(f"hook {one.name}" for one in found if _is_hook(Path(one.path))))
    except OSError:
        return ()


def _is_hook(path: Path) -> bool:
    return path.suffix != ".sample" and not os.path.isdir(path) and os.access(path, os.X_OK)


def without_programs(names: tuple[str, ...]) -> Mapping[str, str]:
    """The variables with which git runs nothing of what the book's own settings name.

    They are given as variables, for on a command line a name could not hold the sign that parts it from its value.

    Args:
        names: of the settings, from ``settings_that_run``.
    """
    pairs = [("core.hooksPath", os.devnull), ("log.showSignature", "false")]
    for name in names:
        pairs += _silenced(name)
    given = {"GIT_CONFIG_COUNT": str(len(pairs))}
    for number, (key, value) in enumerate(pairs):
        given |= {f"GIT_CONFIG_KEY_{number}": key, f"GIT_CONFIG_VALUE_{number}": value}
    return NEVER_RUN | given


def _silenced(name: str) -> Iterator[tuple[str, str]]:
    found = _FILTER.fullmatch(name)
    if found:
        yield name, ""
        yield f"{found[1]}.required", "false"
    elif name.startswith("gpg."):
        yield name, "false"
