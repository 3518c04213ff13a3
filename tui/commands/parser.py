"""The command line of ``heelclear`` as argparse sees it."""

from __future__ import annotations

import argparse
from collections.abc import Iterable, Sequence
from functools import partial
from typing import NoReturn

from tui.commands.arguments import COMMANDS, add_library
from tui.doors import load
from tui.version import __version__

DESCRIPTION = """Tool geometry for the person at a manual tool and cutter grinder.
Without a command the screens open: type to find a tool, Enter to see it, and work out the settings."""

LAST_LINE = """The wheel's own rating, the machine's manual, local rules and a trained person come before
anything that this program says."""


OPEN_SCREENS = frozenset({"demo"})
"""Commands that open the screens."""

TAKES_A_WORD = ("--library", "--units", "--figures")
"""Options after which a word is no command."""


LONGEST_COMPLAINT = 500
"""Characters in what is said of a mistake in the command line; a pasted file would fill the screen."""


class Parser(argparse.ArgumentParser):
    """Complains of mistaken words without letting them steer the terminal."""

    def error(self, message: str) -> NoReturn:
        """Say what is wrong, and end with 2."""
        sanitize = load("library.sanitize", "sanitize")
        cut = message if len(message) <= LONGEST_COMPLAINT else f"{message[:LONGEST_COMPLAINT]}..."
        super().error(sanitize(cut))


def build(names: Iterable[str] = COMMANDS) -> argparse.ArgumentParser:
    """The parser, with one sub-parser for each of the commands named."""
    parser = Parser(
        prog="heelclear",
        description=DESCRIPTION,
        epilog=LAST_LINE,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("-V", "--version", action="version", version=f"heelclear {__version__}")
    add_library(parser, default=None)
    parser.add_argument(
        "--units",
        choices=("mm", "in"),
        default=None,
        help="show lengths in millimetres or inches; the screens begin as they were left, all else in millimetres",
    )
    parser.add_argument("--ascii", action="store_true", help="draw with plain ASCII characters only")
    parser.add_argument(
        "--figures", choices=("braille", "blocks", "ascii"), help="the characters that drawings are made of"
    )
    parser.add_argument("--mouse", action="store_true", help="let the program have the mouse")
    parser.set_defaults(run=open_screens)
    if not names:
        return parser
    commands = parser.add_subparsers(title="commands", metavar="COMMAND")
    for name in names:
        command = COMMANDS[name]
        own = commands.add_parser(
            name, help=command.help, description=command.help, epilog=LAST_LINE, add_help=name != "calc",
            formatter_class=argparse.RawDescriptionHelpFormatter)  # fmt: skip
        add_library(own, default=argparse.SUPPRESS)
        command.add_arguments(own)
        own.set_defaults(run=partial(run, name))
    return parser


def parse(words: Sequence[str]) -> argparse.Namespace:
    """Read the words of a command line; on a mistake argparse explains and exits with 2.

    A calculation's ``key=value`` words may stand before or behind its options.
    """
    parser = build(_needed(words))
    options, rest = parser.parse_known_args(words)
    if rest and hasattr(options, "values") and not any(word.startswith("-") for word in rest):
        options.values += rest
    elif rest:
        parser.error(f"not understood: {' '.join(rest)}")
    return options


def _needed(words: Sequence[str]) -> Iterable[str]:
    """The commands to build parsers for: none where only options of the screens are given, which start sooner so."""
    before = ("", *words)
    others = [word for last, word in zip(before, words, strict=False) if last not in TAKES_A_WORD]
    only_options = all(word.startswith("-") and word not in {"-h", "--help"} for word in others)
    return () if only_options else COMMANDS


def run(name: str, options: argparse.Namespace) -> int:
    """Do what a command does; its module is loaded now. Returns the exit code."""
    if options.units is None and name not in OPEN_SCREENS:
        options.units = "mm"
    return int(load(f"tui.commands.{name.replace('-', '_')}", "run")(options))


def open_screens(options: argparse.Namespace) -> int:
    """Open the screens; returns the exit code."""
    return int(load("tui.start", "run")(options))
