"""Loading code later than at the top of a file, so that the first frame and ``--help`` come soon.

Whatever is loaded late is loaded by this file. Four places use it, and no other: the table of screens
(``tui/screens/__init__.py``), the table of what the program itself wants later (``tui/later.py``), the command
that a person typed (``tui/commands/parser.py``), and the start of the screens (``tui/start.py``).
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from importlib import import_module
from typing import Any


def load(module: str, name: str) -> Any:
    """What a module holds under a name; the module is loaded where it is not yet.

    Args:
        module: its whole name.
        name: of a class, a function or a value in it.

    Example:
        >>> load("tui.version", "__version__") == load("tui.version", "__version__")
        True
    """
    return getattr(import_module(module), name)


def lazily(table: Mapping[str, str]) -> Callable[[str], Any]:
    """The ``__getattr__`` of a module whose names lie in other modules, which are loaded when first asked for.

    Args:
        table: the module of each name.

    Example:
        >>> lazily({"action": "tui.actions"})("action")("back").id
        'back'
    """

    def find(name: str) -> Any:
        if name not in table:
            raise AttributeError(f"there is no {name} here")
        return load(table[name], name)

    return find
