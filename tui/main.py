"""The command ``heelclear``: read the arguments, and load only what they ask for."""

from __future__ import annotations

import errno
import os
import sys
from collections.abc import Sequence
from contextlib import suppress
from typing import TextIO

from tui.commands.parser import parse
from tui.version import __version__


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the program; returns the exit code.

    ``--version`` and ``--help`` answer before anything heavy is imported, and each plain command
    imports only what it uses.
    """
    _have_somewhere_to_speak()
    words = list(sys.argv[1:] if arguments is None else arguments)
    try:
        code = _run(words)
    except SystemExit as leaving:
        raise SystemExit(leaving.code or _unsaid()) from None
    except BrokenPipeError:
        code = 141
    except KeyboardInterrupt:
        code = 130
    except OSError as error:
        _say_unfinished(error)
        code = 1
    unsaid = _unsaid()
    return code or unsaid


def _run(words: list[str]) -> int:
    if words in (["--version"], ["-V"]):
        print(f"heelclear {__version__}")
        return 0
    options = parse(words)
    return int(options.run(options))


def _have_somewhere_to_speak() -> None:
    """Where output was closed before the start (``>&-``), what is said goes nowhere, and is no fault."""
    for name in ("stdout", "stderr"):
        if getattr(sys, name) is None:
            setattr(sys, name, open(os.devnull, "w", encoding="utf-8"))  # noqa: SIM115


def _unsaid() -> int:
    """Send what is still to be said; returns 0, or the exit code where it could not be sent.

    A reader that stopped (``head``, a pager) and a terminal whose line was cut are no fault of anybody; without
    this the interpreter would complain at its end and put an exit code of its own over ours.
    """
    code = 0
    for stream in (sys.stdout, sys.stderr):
        try:
            stream.flush()
        except OSError as error:
            _let_go(stream)
            code = 141 if isinstance(error, BrokenPipeError) else 1
            if code == 1 and stream is sys.stdout:
                _say_unfinished(error)
    return code


def _say_unfinished(error: OSError) -> None:
    said = f"{error.strerror or error}."
    if error.errno in {errno.ENOSPC, errno.EDQUOT}:
        said = "the disk is full. Make room on it, then do it again."
    with suppress(OSError):
        print(f"This could not be finished: {said}", file=sys.stderr)


def _let_go(stream: TextIO) -> None:
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, stream.fileno())
    os.close(nowhere)


if __name__ == "__main__":
    sys.exit(main())
