"""Checks on indicator readings behind the edge: which form of relief they tell of, and what to read next."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from geometry.calculation import Check, note, passed, watch
from geometry.edge.surface_input import Edge
from geometry.preconditions import GeometryError, refuse
from geometry.quantities import quantity
from geometry.sentences import Rounding, angle, length
from geometry.tooth.heel_advice import READABLE, rubs
from geometry.tooth.land import land_width
from geometry.tooth.reading import LAND, Explanation

Found = Mapping[str, Explanation]
Told = tuple[str | None, tuple[Check, ...]]


@dataclass(frozen=True, slots=True)
class Place:
    """The first reading: the drop in mm, the angle behind the edge, the diameter, the measure of the land, the edge."""

    drop: float
    turned: float
    diameter: float
    measured_as: str
    edge: Edge = LAND

    def width(self, turned: float) -> float:
        """A land that turns so far, in the measure of this one, in mm."""
        return land_width(turned, self.diameter, self.measured_as)


def heel(place: Place, found: Found, form: str | None) -> tuple[Check, ...]:
    """Say what the first reading itself means: that it rubs, is hardly to be read, or is hardly a relief.

    Args:
        place: the first reading.
        found: the forms that explain it.
        form: the one that was told, or nothing.

    Returns:
        One check, or none where there is nothing to point out.

    Example:
        >>> from geometry.tooth.reading import explanations
        >>> place = Place(0.004, 0.3, 12.0, "arc")
        >>> heel(place, explanations(0.004, 0.3, 12.0), None)[0].state
        'watch'
    """
    if place.drop <= 0:
        relief = found["flat"].relief_angle if "flat" in found else 0.0
        radial = place.edge.seen(relief, "radial") or 0.0
        return (
            rubs(
                place.drop,
                place.turned,
                radial,
                place.diameter,
                place.measured_as,
                lambda a: place.edge.given(a, "radial"),
                is_read=True,
            ),
        )
    steepest = quantity("relief_angle").high
    if all(found[name].relief_angle > steepest for name in ([form] if form else found)):
        return (
            watch(
                "A relief of more than {steepest} is more than any tool bears. Read the drop and the land again, "
                "and look at their units.",
                steepest=angle(steepest),
            ),
        )
    if place.drop < READABLE:
        return (
            watch(
                "A drop of {drop} is less than the indicator's {division}: the relief is little more than a guess. "
                "Read further behind the edge, where the drop is {division} or more.",
                cure=(("drop", READABLE),),
                drop=length(place.drop),
                division=length(READABLE, Rounding.UP),
            ),
        )
    return ()


def form_told(
    found: Found,
    misfits: Mapping[str, float],
    place: Place,
    second: tuple[float, float] | None,
    named: str | None,
) -> Told:
    """Which form the readings tell of, and the sentences that say why.

    Args:
        found: the forms that explain the first reading.
        misfits: how much deeper than expected the second reading lies, for each form that reaches there.
        place: the first reading.
        second: the second reading as drop and angle, or nothing.
        named: the form that the person at the machine names, or nothing.

    Returns:
        The form, or nothing where it stays open, and the checks.

    Raises:
        GeometryError: when the form named cannot explain the first reading.

    Example:
        >>> from geometry.tooth.reading import explanations
        >>> place = Place(-0.05, 0.3, 12.0, "arc")
        >>> form_told(explanations(-0.05, 0.3, 12.0), {}, place, None, None)[0]
        'flat'
    """
    if named is not None and named not in found:
        raise _impossible(named)
    if second is None:
        return _from_one(found, place, named)
    fitting = [form for form, amount in misfits.items() if abs(amount) <= _allowed(found[form], second)]
    if named is not None:
        return named, (_named_and_read(found, misfits, fitting, named),)
    if len(fitting) == 1:
        return fitting[0], (_one_fits(found, misfits, fitting[0]),)
    if fitting:
        return None, (_both_fit(found, second), *_what_to_read(found, place))
    return None, (_none_fits(misfits),)


def _allowed(one: Explanation, second: tuple[float, float]) -> float:
    """The misfit that an indicator division explains, the error of the first reading carried on to the second."""
    return READABLE * max(1.0, one.lever(second[1]))


def _impossible(named: str) -> GeometryError:
    """The error for a form that cannot explain the first reading; the caller raises it."""
    if named == "eccentric":
        return refuse(
            "relief_form",
            "A place proud of the circle cannot be eccentric. Take flat as the form, or read the drop again.",
        )
    return refuse(
        "relief_form",
        "No flat reaches half way round the tool. Take eccentric as the form, or read nearer the edge.",
    )


def _from_one(found: Found, place: Place, named: str | None) -> Told:
    if named is not None:
        return named, (_relief_is(found[named]),)
    if len(found) == 1:
        (only,) = found.values()
        return only.form, (_only_one(only),)
    return None, (_either_form(found), *_what_to_read(found, place))


def _a(form: str) -> str:
    """A form of relief with its article."""
    return f"an {form}" if form == "eccentric" else f"a {form}"


def _relief_is(one: Explanation) -> Check:
    return note(
        "As {form} relief it is {relief} at the edge.", form=_a(one.form), relief=angle(one.relief_angle)
    )


def _only_one(only: Explanation) -> Check:
    if only.form == "flat":
        return note(
            "A place proud of the circle cannot be eccentric: it is a flat of {relief}.",
            relief=angle(only.relief_angle),
        )
    return note(
        "No flat reaches half way round the tool: it is an eccentric relief of {relief}.",
        relief=angle(only.relief_angle),
    )


def _either_form(found: Found) -> Check:
    return note(
        "If it is eccentric the relief at the edge is {eccentric}; if it is one flat, {flat}.",
        eccentric=angle(found["eccentric"].relief_angle),
        flat=angle(found["flat"].relief_angle),
    )


def _what_to_read(found: Found, place: Place) -> tuple[Check, ...]:
    """Where a second reading tells the forms apart, and what the indicator shows there for each."""
    half = place.turned / 2
    even, flat = (found[form].profile(half) for form in ("eccentric", "flat"))
    if abs(flat - even) < READABLE:
        return (
            note(
                "Over this land the two forms differ by less than the {division} that an indicator shows: give the form "
                "if you know it, or read on a wider land.",
                division=length(READABLE),
            ),
        )
    return (
        note(
            "To tell which, read again at {half} behind the edge: an eccentric relief shows {even} there, a flat {flat}.",
            half=length(place.width(half)),
            even=length(even),
            flat=length(flat),
        ),
    )


def _one_fits(found: Found, misfits: Mapping[str, float], form: str) -> Check:
    other = "flat" if form == "eccentric" else "eccentric"
    if other not in misfits:
        return passed(
            "The second reading fits {a_form} relief within {misfit}: it is {form}, {relief} at the edge.",
            a_form=_a(form),
            form=form,
            misfit=length(abs(misfits[form])),
            relief=angle(found[form].relief_angle),
        )
    return passed(
        "The second reading fits {a_form} relief within {misfit} and misses {other} one by {missed}: "
        "it is {form}, {relief} at the edge.",
        a_form=_a(form),
        form=form,
        misfit=length(abs(misfits[form])),
        other=_a(other),
        missed=length(abs(misfits[other])),
        relief=angle(found[form].relief_angle),
    )


def _both_fit(found: Found, second: tuple[float, float]) -> Check:
    apart = abs(found["flat"].profile(second[1]) - found["eccentric"].profile(second[1]))
    return watch(
        "The second reading fits both forms: at that place they lie only {apart} apart, so it does not tell which it is.",
        apart=length(apart),
    )


def _none_fits(misfits: Mapping[str, float]) -> Check:
    missed = " and ".join(f"{_a(form)} relief by {{{form}}}" for form in misfits) or "either form"
    return watch(
        f"Neither form fits well: the second reading misses {missed}. Set the indicator to zero at the edge and take both "
        "again; if they stay, there is more than one facet or a worn heel, and each facet is read for itself.",
        **{form: length(abs(amount)) for form, amount in misfits.items()},
    )


def _named_and_read(found: Found, misfits: Mapping[str, float], fitting: list[str], named: str) -> Check:
    """Hold the form that was named against the second reading."""
    if named in fitting:
        return passed(
            "The second reading fits the {named} relief that you name within {misfit}: {relief} at the edge.",
            named=named,
            misfit=length(abs(misfits[named])),
            relief=angle(found[named].relief_angle),
        )
    better = fitting[0] if fitting else None
    says = "The second reading does not fit the {named} relief that you name."
    if named in misfits:
        says = "The second reading misses the {named} relief that you name by {misfit}."
    parts = {"misfit": length(abs(misfits[named]))} if named in misfits else {}
    if better is None:
        return watch(says + " No other form fits it either: set the indicator to zero at the edge and take both again.",
                     named=named, **parts)  # fmt: skip
    return watch(
        says
        + " It fits {better} one of {relief}: look along the axis against the light, and name that form.",
        cure=(("relief_form", better),),
        named=named,
        better=_a(better),
        relief=angle(found[better].relief_angle),
        **parts,
    )
