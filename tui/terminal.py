"""What the terminal can do, and what to say where it cannot show screens at all."""

from __future__ import annotations

import fcntl
import os
import struct
import sys
import termios
from collections.abc import Mapping
from contextlib import suppress
from typing import Literal

PLAIN_COMMANDS = "heelclear list, heelclear show ID and heelclear calc NAME answer in plain lines"


def refusal(environment: Mapping[str, str] = os.environ, *, is_terminal: bool | None = None) -> str:
    """Why no screen can be shown here, as a sentence; empty where one can.

    Args:
        environment: the environment variables.
        is_terminal: whether both ends are a terminal; asked for when not given.

    Example:
        >>> refusal({"TERM": "xterm"}, is_terminal=True)
        ''
    """
    if is_terminal is None:
        is_terminal = (
            sys.__stdin__ is not None
            and sys.__stdin__.isatty()
            and sys.__stdout__ is not None
            and sys.__stdout__.isatty()
        )
    if not is_terminal:
        return f"The screens need a terminal, and this is none; {PLAIN_COMMANDS}."
    if environment.get("TERM", "") in {"", "dumb", "unknown"}:
        return f"This terminal (TERM={environment.get('TERM', '')}) cannot move its cursor; {PLAIN_COMMANDS}."
    return ""


COLUMNS, ROWS = 80, 24
"""The size of a terminal that does not say one."""


def give_size(descriptor: int) -> None:
    """Give a terminal that says it has no columns or no rows, as a serial line does, the usual size.

    Of such a one the parts of a screen are told different sizes, and paint it for one and the other without end. What
    it says later on is taken as from any other.

    Args:
        descriptor: of the terminal.
    """
    with suppress(OSError):
        columns, rows = os.get_terminal_size(descriptor)
        if not columns or not rows:
            size = struct.pack("HHHH", rows or ROWS, columns or COLUMNS, 0, 0)
            fcntl.ioctl(descriptor, termios.TIOCSWINSZ, size)


def refuse(sentence: str) -> int:
    """Say why on standard error; returns the exit code of a usage error."""
    print(sentence, file=sys.stderr)
    return 2


def has_colour(environment: Mapping[str, str] = os.environ) -> bool:
    """Whether colour may be sent: not where ``NO_COLOR`` is set to anything.

    Example:
        >>> has_colour({"NO_COLOR": "1"}), has_colour({"NO_COLOR": ""}), has_colour({})
        (False, True, True)
    """
    return not environment.get("NO_COLOR")


def has_unicode(environment: Mapping[str, str] = os.environ, encoding: str | None = None) -> bool:
    """Whether the terminal may be sent more than ASCII.

    Both what Python writes and what the locale names must be UTF-8. Where no usable locale is set Python
    itself puts ``C.UTF-8`` into ``LC_CTYPE``; that says nothing of the terminal and is not counted.

    Example:
        >>> has_unicode({"LANG": "en_GB.UTF-8"}, "utf-8"), has_unicode({"LANG": "C"}, "utf-8")
        (True, False)
    """
    written = encoding or (sys.__stderr__.encoding if sys.__stderr__ is not None else "") or ""
    return _is_utf8(written) and _is_utf8(_locale(environment).partition(".")[2])


def drawing(environment: Mapping[str, str] = os.environ) -> Literal["braille", "blocks"]:
    """The finest characters of drawings that the font of the terminal is likely to have.

    Half blocks are in every font since the first PCs. Braille is in those of newer terminals, which tell
    themselves by their many colours; the console of Linux and older programs on other systems lack it.

    Example:
        >>> drawing({"TERM": "xterm-256color"}), drawing({"TERM": "xterm"}), drawing({"TERM": "linux"})
        ('braille', 'blocks', 'blocks')
    """
    term = environment.get("TERM", "")
    if term.startswith(("linux", "vt", "cons")):
        return "blocks"
    many = ("256color", "direct", "kitty", "alacritty", "foot", "ghostty")
    newer = bool(environment.get("COLORTERM")) or any(word in term for word in many)
    return "braille" if newer else "blocks"


def _locale(environment: Mapping[str, str]) -> str:
    if environment.get("LC_ALL"):
        return environment["LC_ALL"]
    chosen, general = environment.get("LC_CTYPE", ""), environment.get("LANG", "")
    return general if chosen in {"", "C.UTF-8"} else chosen


def _is_utf8(name: str) -> bool:
    return name.lower().partition("@")[0].replace("-", "").replace("_", "") == "utf8"
