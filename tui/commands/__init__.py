"""The plain commands: the same book and the same calculations without a screen.

Each module has ``HELP``, ``add_arguments(parser)`` and ``run(options) -> int``; its name is its command.
Modules import what is heavy inside ``run``, so that ``--help`` stays quick.
"""

COMMANDS = (
    "list",
    "find",
    "show",
    "compare",
    "calc",
    "glossary",
    "check",
    "cards",
    "card",
    "card-new",
    "card-set",
    "card-import",
    "card-plan",
    "card-learn",
    "paths",
    "new-book",
    "demo",
    "doctor",
    "completion",
)
"""The commands in the order in which help shows them; ``new-book`` lives in ``new_book.py``."""
