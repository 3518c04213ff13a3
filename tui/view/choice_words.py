"""Which of a few choices is meant by what is typed, and what is said where that is none of them, or not one alone."""

from __future__ import annotations

from collections.abc import Sequence

MOST_NAMED = 12
"""Choices that a sentence names; a longer list is gone through with the arrows."""

_ARROWS = "Left and Right go through them."


def beginning(spoken: Sequence[str], text: str) -> list[str]:
    """The choices that begin with what was typed; hyphens are as good as blanks.

    Example:
        >>> beginning(["type-6-straight-cup", "type-12-dish"], "type 12")
        ['type-12-dish']
    """
    return [one for one in spoken if one and _plain(one).startswith(_plain(text))]


def having(spoken: Sequence[str], text: str) -> list[str]:
    """The choices that have a word in them that begins so.

    Example:
        >>> having(["type-1-straight", "type-6-straight-cup", "type-11-flaring-cup"], "cup")
        ['type-6-straight-cup', 'type-11-flaring-cup']
    """
    sought = _plain(text).lstrip()
    return [one for one in spoken if sought and f" {sought}" in f" {_plain(one)}"]


def told(spoken: Sequence[str], text: str) -> str:
    """What is said of what was typed: which choices there are where none is meant, or which ones may be.

    Args:
        spoken: all choices as they are shown.
        text: what was typed so far, in small letters.

    Returns:
        A sentence; empty where nothing was typed, or a choice begins so, or just one has it in it.

    Example:
        >>> told(["chord", "arc"], "arch")
        "No choice here is 'arch'; what stands there stays. There are: chord, arc. Left and Right go through them."
        >>> told(["type-6-straight-cup", "type-11-flaring-cup"], "cup")
        "Which 'cup'? There are: type-6-straight-cup, type-11-flaring-cup. Left and Right go through them."
    """
    found = having(spoken, text)
    if not text or beginning(spoken, text) or len(found) == 1:
        return ""
    if found:
        return f"Which {text!r}? There are: {_named(found)}. {_ARROWS}"
    number = " This line keeps no number: Down and Up go to one that does." if is_number(text) else ""
    few = [one for one in spoken if one]
    there = (
        f"There is only {few[0]!r}: Left and Right change it."
        if len(few) == 1
        else f"There are: {_named(spoken)}. {_ARROWS}"
    )
    return f"No choice here is {text!r}; what stands there stays.{number} {there}"


def is_number(text: str) -> bool:
    """Whether a number was begun, which belongs in another line.

    Example:
        >>> is_number(".125"), is_number("-5 deg"), is_number("arch"), is_number("-")
        (True, True, False, False)
    """
    return text.lstrip("+-. ")[:1].isdigit()


def _named(spoken: Sequence[str]) -> str:
    every = [one for one in spoken if one]
    more = len(every) - MOST_NAMED
    return ", ".join(every[:MOST_NAMED]) + (f" and {more} more" if more > 0 else "")


def _plain(text: str) -> str:
    return text.casefold().replace("-", " ")
