"""``heelclear paths``: which folders are used, and why."""

from __future__ import annotations

import argparse

from library.book import folders
from tui.commands import printing


def run(options: argparse.Namespace) -> int:
    """Print the folders; returns the exit code."""
    shop, reason = folders.shop_folder(options.library)
    found = {
        "shop": (shop, reason),
        "shipped": (folders.shipped_folder(), "comes with the program and is never changed"),
        "cache": (folders.cache_folder(), "safe to delete"),
        "state": (folders.state_folder(), "drafts, the log, and which books are trusted"),
        "config": (folders.config_folder(), "your keys and settings"),
    }
    if options.json:
        printing.data({name: {"path": str(path), "why": why} for name, (path, why) in found.items()})
    else:
        printing.table([(name, str(path), why) for name, (path, why) in found.items()], indent="")
    return 0
