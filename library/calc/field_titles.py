"""What an input or an output of a calculation is called in it: a relief always with its surface and its view."""

from __future__ import annotations

from geometry.calculation import Calculation
from geometry.edge.views import PLANES
from geometry.surfaces import SURFACES, surface_of_relief
from library.calc.surfaces import CALLED, RELIEF, SECOND_RELIEF, only_surface, title_of


def title_in(sheet: Calculation, key: str, surface: str = "") -> str:
    """The title of a quantity in a calculation.

    A relief that is known by the key of its surface has the title of any other relief of that surface. One of a
    calculation that asks for no surface is of the surface whose relief in the book fills it.

    Args:
        sheet: the calculation.
        key: of one of its inputs or outputs.
        surface: the word of the surface that is worked on; empty where it is not known, or there is none.

    Example:
        >>> from geometry.calculations import calculation
        >>> title_in(calculation("drill-point"), "lip_relief_angle")
        'Relief of the lip, along the axis'
        >>> title_in(calculation("step-relief"), "shoulder_relief_angle")
        'Wanted relief of the shoulder, square to the edge'
        >>> title_in(calculation("relief-facets"), "relief_angle"), title_in(calculation("relief-facets"), "land_width")
        ('Relief of the land, square to the axis', 'Land width')
    """
    own = surface_of_relief(key)
    if own is not None:
        title = title_of(RELIEF if key == own.relief_key else SECOND_RELIEF, own.key)
        field = sheet.field(key)
        return f"Wanted {title[:1].lower()}{title[1:]}" if field is not None and field.wanted else title
    known = surface or only_surface(sheet)
    return title_of(key, known if known in SURFACES else _filled_by(sheet, key))


def name_in(sheet: Calculation, key: str, surface: str = "") -> str:
    """The title as it stands inside a sentence, without the view of a relief of a surface, which has but one.

    Example:
        >>> from geometry.calculations import calculation
        >>> name_in(calculation("drill-point"), "lip_relief_angle"), name_in(calculation("back-taper"), "taper_angle")
        ('Relief of the lip', 'Taper angle, whole')
    """
    title = title_in(sheet, key, surface)
    if key not in CALLED and surface_of_relief(key) is None:
        return title
    return next(
        (title.removesuffix(f", {view}") for view in PLANES.values() if title.endswith(f", {view}")), title
    )


def _filled_by(sheet: Calculation, key: str) -> str:
    """The word of the surface whose relief fills an input of a calculation that asks for none; empty where none does."""
    field = sheet.field(key)
    found = [
        one for name in (field.fill_from if field is not None else ()) if (one := surface_of_relief(name))
    ]
    return found[0].key if found else ""
