"""What is wrong with the divisions of a machine as they are typed, told without the names of the file."""

from __future__ import annotations

from collections.abc import Mapping

from geometry.quantities import quantity
from geometry.sentences import Kind
from library.equipment.usual_graduations import GRADUATIONS
from library.units.read import UnitError, read

_SAID: Mapping[Kind, tuple[str, str]] = {
    Kind.LENGTH: ("a length", "0.01 mm"),
    Kind.ANGLE: ("an angle", "15 min"),
}
"""What a division may be, and one as an example."""


def of_another_kind(texts: Mapping[str, str], begins: str) -> dict[str, str]:
    """What is said of a division that is a length where an angle is set or read, or the other way round, by line.

    Args:
        texts: what was typed, by line.
        begins: the line of a movement, before its name.

    Example:
        >>> of_another_kind({"division of the tilt": "0.01 mm"}, "division of the ")
        {'division of the tilt': "'0.01 mm' is a length. An angle is wanted here, such as 15 min."}
    """
    found: dict[str, str] = {}
    for name in GRADUATIONS:
        text, wanted = texts.get(begins + name, "").strip(), _moved(name)
        if (kind := _kind_of(text)) not in (None, wanted):
            said, example = _SAID[wanted]
            found[begins + name] = (
                f"{text!r} is {_SAID[kind][0]}. {said.capitalize()} is wanted here, such as {example}."
            )
    return found


def _moved(name: str) -> Kind:
    """Whether a movement is usually one of a length or of an angle."""
    keys = GRADUATIONS[name].get("sets") or GRADUATIONS[name].get("reads")
    assert isinstance(keys, list)
    return quantity(keys[0]).kind


def _kind_of(text: str) -> Kind | None:
    """What a text is; nothing where it cannot be read."""
    try:
        return read(text, Kind.LENGTH, other_kinds=(Kind.ANGLE,), unit_wanted=True).kind
    except UnitError:
        return None
