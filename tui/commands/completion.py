"""``heelclear completion``: what a shell needs to complete the commands."""

from __future__ import annotations

import argparse

import shtab

from tui.commands.parser import build


def run(options: argparse.Namespace) -> int:
    """Print the completion; returns the exit code."""
    print(shtab.complete(build(), options.shell))
    return 0
