"""Which folders are used, and why: the shop's book, the cache, the state and the settings."""

from __future__ import annotations

import os
from pathlib import Path

APP = "heelclear"
VARIABLE = "HEELCLEAR_LIBRARY"
"""The environment variable that names the shop's folder."""


def shop_folder(option: Path | None = None) -> tuple[Path, str]:
    """The folder of the shop's own book, and why it is that one.

    Args:
        option: what ``--library`` named, if anything.

    Returns:
        The folder, which need not be there yet, and the reason in words.
    """
    if option is not None:
        return _at_home(option), "named by --library"
    named = os.environ.get(VARIABLE)
    if named:
        return _at_home(named), f"named by {VARIABLE}"
    from platformdirs import user_data_path

    return user_data_path(
        APP
    ) / "book", "your data folder, because neither --library nor HEELCLEAR_LIBRARY names one"


def _at_home(named: Path | str) -> Path:
    """A path with ``~`` replaced by the home folder; one of a person who is not known here stays as it is."""
    return Path(os.path.expanduser(named))


def shipped_folder() -> Path:
    """The folder of the data that came with the program."""
    return Path(__file__).parent.parent / "shipped"


def cache_folder() -> Path:
    """Where parsed data is kept to start faster; safe to delete at any time."""
    from platformdirs import user_cache_path

    return user_cache_path(APP)


def state_folder() -> Path:
    """Where drafts and the log are kept."""
    from platformdirs import user_state_path

    return user_state_path(APP)


def config_folder() -> Path:
    """Where the person's own keys and settings are."""
    from platformdirs import user_config_path

    return user_config_path(APP)
