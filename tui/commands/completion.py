"""``heelclear completion``: what a shell needs to complete the commands."""

from __future__ import annotations

import argparse

HELP = "print the completion of the commands for a shell"
SHELLS = ("bash", "zsh", "tcsh")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of this command."""
    parser.add_argument("shell", choices=SHELLS, help="which shell")


def run(options: argparse.Namespace) -> int:
    """Print the completion; returns the exit code."""
    import shtab

    from tui.commands.parser import build

    print(shtab.complete(build(), options.shell))
    return 0
