"""The divisions of a machine as a person types them into the lines of a form, and what is wrong with them."""

from __future__ import annotations

from collections.abc import Mapping

from geometry.quantities import quantity
from geometry.sentences import Kind
from library.equipment.graduation_reader import kinds_of
from library.equipment.readers import in_two
from library.equipment.usual_graduations import GRADUATIONS
from library.sanitize import sanitize
from library.units.read import UnitError, read

DIVISION = "division of the "
"""Begins the line of a form for what one division of a graduation is worth."""

_SAID: Mapping[Kind, tuple[str, str]] = {
    Kind.LENGTH: ("a length", "0.01 mm"),
    Kind.ANGLE: ("an angle", "15 min"),
}
"""What a division may be, and one as an example."""


def of_another_kind(texts: Mapping[str, str]) -> dict[str, str]:
    """What is said of a division that is a length where an angle is set or read, or the other way round, by line.

    Args:
        texts: what was typed, by line.

    Example:
        >>> of_another_kind({"division of the tilt": "0.01 mm"})
        {'division of the tilt': "'0.01 mm' is a length. An angle is wanted here, such as 15 min."}
    """
    found: dict[str, str] = {}
    for name in GRADUATIONS:
        text = texts.get(DIVISION + name, "").strip()
        if text and (wrong := _wrong_with(text, _moved(name))):
            found[DIVISION + name] = wrong
    return found


def changed_divisions(now: Mapping[str, str], started: Mapping[str, str]) -> dict[str, object]:
    """The graduations whose division is another now; one that is new says what is usually set and read on it."""
    found: dict[str, object] = {}
    for name in GRADUATIONS:
        text, before = (texts.get(DIVISION + name, "").strip() for texts in (now, started))
        if text != before:
            found[name] = None if not text else {"division": text, **({} if before else GRADUATIONS[name])}
    return found


def typed_divisions(raw: object) -> dict[str, str]:
    """The divisions of the graduations of a machine as a form has them, by line."""
    if not isinstance(raw, Mapping):
        return {}
    return {
        DIVISION + name: sanitize(str(one["division"]))
        for name, one in raw.items()
        if name in GRADUATIONS and isinstance(one, Mapping) and "division" in one
    }


def _wrong_with(text: str, wanted: Kind) -> str:
    """What is said of a division that is not of the kind that is wanted; empty where it is, or where the reader says it."""
    said, example = _SAID[wanted]
    try:
        read(text, wanted, unit_wanted=True)
    except UnitError as error:
        kind = _kind_of(text)
        if kind is not None:
            return f"{text!r} is {_SAID[kind][0]}. {said.capitalize()} is wanted here, such as {example}."
        return " ".join(in_two(str(error))).strip()
    return ""


def example_of(name: str) -> str:
    """A division of a movement as it is typed.

    Example:
        >>> example_of("tilt"), example_of("cross-slide")
        ('15 min', '0.01 mm')
    """
    return _SAID[_moved(name)][1]


def _moved(name: str) -> Kind:
    """Whether a movement is usually one of a length or of an angle."""
    keys = GRADUATIONS[name].get("sets") or GRADUATIONS[name].get("reads")
    assert isinstance(keys, list)
    return quantity(keys[0]).kind


def _kind_of(text: str) -> Kind | None:
    """What a text is; nothing where it cannot be read."""
    kind, other = kinds_of(text)
    try:
        return read(text, kind, other_kinds=(other,), unit_wanted=True).kind
    except UnitError:
        return None
