"""A thread typed where a diameter is asked for: ``M16`` or ``5/8-11 UNC`` fills diameter, pitch and starts."""

from __future__ import annotations

from collections.abc import Mapping

from geometry.calculation import Calculation
from geometry.sentences import Kind
from library.issue import Issue
from library.units.grammar import UnitError, parse

PLACE = "diameter"
"""The field in which a thread may be named."""


def with_thread(sheet: Calculation, typed: Mapping[str, str]) -> tuple[Mapping[str, str], list[Issue]]:
    """Put what a thread gives in the place of its name; what else was typed stays.

    Args:
        sheet: the calculation.
        typed: what was typed, by field.

    Returns:
        The texts to read, and an issue where the name is no thread or several.

    Example:
        >>> from geometry.calculations import calculation
        >>> with_thread(calculation("lead-over-land"), {"diameter": "M12"})[0]["pitch"]
        '1.75 mm'
    """
    name = typed.get(PLACE, "").strip()
    if not name or sheet.field(PLACE) is None or not _may_be_a_thread(name):
        return typed, []
    from library.threads import NotChosen, choose, find_threads, texts_for

    if not name[0].isalpha() and name[0] != "#" and not find_threads(name):
        return typed, []
    rest = {key: text for key, text in typed.items() if key != PLACE and text.strip()}
    try:
        thread = choose(name)
    except NotChosen as error:
        return rest, [Issue(sheet.name, PLACE, "error", f"{PLACE}: {error}")]
    return texts_for(sheet, thread, rest) | rest, []


def _may_be_a_thread(name: str) -> bool:
    """Whether it cannot be read as a length, so that nobody's number is ever taken for a thread."""
    try:
        parse(name, Kind.LENGTH)
    except UnitError:
        return any(sign.isdigit() for sign in name)
    return False
