"""What readings are held against, in the unit in which they were typed, so that the eye can lay one beside the other."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from geometry.quantities import QUANTITIES, quantity
from geometry.sentences import Kind
from library.units import several
from library.units.convert import from_geometry
from library.units.grammar import UnitError, parse
from library.units.registry import LINEAR
from library.units.show import number
from library.units.system import Display


def unit_read_in(readings: Iterable[str], kind: Kind, display: Display) -> str:
    """The unit in which lengths were typed, where it is one for all of them; else that of the card.

    Args:
        readings: as they were typed, each with its unit.
        kind: of the quantity; all but a length is shown in one unit only.
        display: the units of the card.

    Example:
        >>> unit_read_in(["31 thou", "32 thou"], Kind.LENGTH, Display("mm"))
        'thou'
        >>> unit_read_in(["31 thou", "0.8 mm"], Kind.LENGTH, Display("mm")), unit_read_in(["3 deg"], Kind.LENGTH, Display("mm"))
        ('mm', 'mm')
    """
    own = display.unit(kind)
    if kind is not Kind.LENGTH:
        return own
    try:
        units = {parse(one, kind).unit or own for one in readings if one.strip()}
    except UnitError:
        return own
    # A reading in degrees is refused where a length is wanted, and tells no unit for the numbers beside it.
    return units.pop() if len(units) == 1 and units <= LINEAR[kind].keys() else own


def shown_in(value: float, kind: Kind, unit: str) -> str:
    """A number in a unit, as finely as an indicator shows it.

    Example:
        >>> shown_in(0.8, Kind.LENGTH, "thou"), shown_in(0.8, Kind.LENGTH, "mm")
        ('31.5 thou', '0.800 mm')
    """
    return f"{number(from_geometry(value, kind, unit), kind, unit)} {unit}".rstrip()


def each_in(values: Sequence[float], kind: Kind, unit: str) -> str:
    """Several numbers in a unit, which stands once, behind the last.

    Example:
        >>> each_in((0.3711, 0.3868), Kind.LENGTH, "mm")
        '0.371, 0.387 mm'
    """
    bare = [number(from_geometry(one, kind, unit), kind, unit) for one in values]
    return f"{', '.join(bare)} {unit}".rstrip() if bare else ""


def with_the_last_unit(key: str, text: str) -> str:
    """Readings typed with one unit after the last, each with that unit.

    Args:
        key: the quantity.
        text: as typed.

    Returns:
        The readings parted by semicolons; the text as it is where the last reading has no unit, or where one cannot
        be read.

    Example:
        >>> with_the_last_unit("drop", "0.20, 0.21, 11 thou")
        '0.20 thou; 0.21 thou; 11 thou'
        >>> with_the_last_unit("drop", "0.20, 0.21")
        '0.20, 0.21'
    """
    found = (
        several.with_the_last_unit(quantity(key).kind, several.parted(text)) if key in QUANTITIES else None
    )
    return text if found is None else "; ".join(found)
