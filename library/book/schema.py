"""In which way a file of the book is written: the number above its first table."""

from __future__ import annotations

SCHEMA = 1
"""The way that this program knows and writes."""


def is_newer(schema: object) -> bool:
    """Whether a file that says this was written by a newer program, so that this one must not write in it.

    Example:
        >>> is_newer(SCHEMA + 1), is_newer(SCHEMA), is_newer("2"), is_newer(True)
        (True, False, False, False)
    """
    return isinstance(schema, int) and not isinstance(schema, bool) and schema > SCHEMA


def told_as_newer(schema: object) -> str:
    """What is wrong with a file that a newer program wrote, a sentence."""
    return f"A newer Heelclear wrote this file (schema {schema}; this one knows {SCHEMA})."
