"""The command ``heelclear``: read the arguments, and load only what they ask for."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from typing import TextIO

from tui.version import __version__


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the program; returns the exit code.

    ``--version`` and ``--help`` answer before anything heavy is imported, and each plain command
    imports only what it uses.
    """
    from tui.commands.parser import parse

    words = list(sys.argv[1:] if arguments is None else arguments)
    if words in (["--version"], ["-V"]):
        print(f"heelclear {__version__}")
        return 0
    options = parse(words)
    try:
        code = int(options.run(options))
    except BrokenPipeError:
        code = 141
    except KeyboardInterrupt:
        code = 130
    except OSError as error:
        print(f"This could not be finished: {error.strerror or error}.", file=sys.stderr)
        code = 1
    return code if _said_everything() or code else 1


def _said_everything() -> bool:
    """Send what is still to be said; where nobody can hear it any more, let it go.

    A reader that stopped (``head``, a pager) and a terminal whose line was cut are no fault of anybody; without
    this the interpreter would complain at its end and put an exit code of its own over ours.
    """
    heard = True
    for stream in (sys.stdout, sys.stderr):
        try:
            stream.flush()
        except OSError:
            heard = False
            _let_go(stream)
    return heard


def _let_go(stream: TextIO) -> None:
    import os

    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, stream.fileno())
    os.close(nowhere)


if __name__ == "__main__":
    sys.exit(main())
