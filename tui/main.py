"""The command ``heelclear``: read the arguments, and load only what they ask for."""

from __future__ import annotations

import sys
from collections.abc import Sequence

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
        return int(options.run(options))
    except BrokenPipeError:
        return _reader_went_away()
    except KeyboardInterrupt:
        return 130


def _reader_went_away() -> int:
    """Whoever read our output (``head``, a pager) stopped; that is no fault of anybody."""
    import os

    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    return 141


if __name__ == "__main__":
    sys.exit(main())
