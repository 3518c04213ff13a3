"""``heelclear doctor``: what this program sees of its surroundings; one paste for a report of a fault."""

from __future__ import annotations

import argparse
import importlib.metadata
import locale
import os
import platform
import shutil
import sys
from collections.abc import Iterator
from pathlib import Path

from library.book import folders
from library.files.reach import is_missing
from tui import terminal
from tui.commands import printing
from tui.version import __version__

SHOWN_VARIABLES = ("TERM", "COLORTERM", "NO_COLOR", "LANG", "LC_ALL", "LC_CTYPE", "TMUX", "STY", "SSH_TTY",
                   "VISUAL", "EDITOR", "HEELCLEAR_LIBRARY")  # fmt: skip
"""Variables that change what is seen; of TMUX, STY and SSH_TTY only whether they are set is told."""

PRIVATE = ("TMUX", "STY", "SSH_TTY")
PACKAGES = ("textual", "rich", "pint", "tomlkit", "tomli-w", "platformdirs")


def run(options: argparse.Namespace) -> int:
    """Print the report; returns 0 when nothing stands in the way of the screens, else 1."""
    facts = dict(_facts(options))
    warnings = list(_warnings())
    if options.json:
        printing.data({"facts": facts, "warnings": warnings})
    else:
        printing.table(list(facts.items()), indent="")
        for warning in warnings:
            printing.line(warning)
        if not warnings:
            printing.line("Nothing stands in the way of the screens.")
    return 1 if warnings else 0


def _facts(options: argparse.Namespace) -> Iterator[tuple[str, str]]:
    size = shutil.get_terminal_size((0, 0))
    yield "heelclear", __version__
    yield "python", f"{platform.python_version()} on {platform.system()} {platform.release()}"
    for package in PACKAGES:
        yield package, importlib.metadata.version(package)
    yield (
        "terminal",
        f"{size.columns}x{size.lines}" if sys.stdout.isatty() else "none: the output is not a terminal",
    )
    yield "encoding", f"{sys.stdout.encoding} (the locale says {locale.getencoding()})"
    yield "drawings", f"made of {terminal.drawing()}" if terminal.has_unicode() else "made of ascii"
    for name in SHOWN_VARIABLES:
        value = os.environ.get(name)
        yield name, "not set" if value is None else "set" if name in PRIVATE else value
    shop, why = folders.shop_folder(options.library)
    yield "shop's book", f"{shop} ({why}; {_standing(shop)})"
    for title, path in (
        ("cache", folders.cache_folder()),
        ("state", folders.state_folder()),
        ("config", folders.config_folder()),
    ):
        yield title, f"{path} ({_standing(path)})"
    yield "git", shutil.which("git") or "not found: history and sharing are off, all else works"


def _standing(path: Path) -> str:
    if is_missing(path):
        return "not there yet"
    if not os.path.exists(path):
        return "you have no permission to look there"
    return "can be written" if os.access(path, os.W_OK) else "cannot be written"


def _warnings() -> Iterator[str]:
    if os.environ.get("TERM", "dumb") in {"", "dumb", "unknown"}:
        yield "TERM does not name a terminal that can draw screens; the plain commands work all the same."
    size = shutil.get_terminal_size((80, 24))
    if size.columns < 60 or size.lines < 20:
        yield f"The terminal has {size.columns}x{size.lines} characters; the screens want 60x20 or more."
