"""One cam on one cone: the relief that it gives along the edge, and the throws that would give another."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cone import relief as cone
from geometry.cures import Step, Way
from geometry.edge.surface_input import Edge
from geometry.quantities import quantity
from geometry.sentences import Amount, Rounding, length


@dataclass(frozen=True)
class CamOnCone:
    """One cam on one cone, with its radial and its axial throw.

    Attributes:
        included_angle: of the cone, in radians.
        diameters: the places along the edge, in mm, the largest first.
        turn: the angle that the tool turns while the cam makes its travel, in radians.
        per: "per turn" or "per tooth".
        radial: inward travel, in mm.
        axial: travel away from the point, in mm.
        square: travel square to the cone, in mm.
        edge: the surface and how its edge lies.
    """

    included_angle: float
    diameters: tuple[float, ...]
    turn: float
    per: str
    radial: float
    axial: float
    square: float
    edge: Edge

    def relief(self, diameter: float) -> float:
        """The relief (rad) square to the edge at a diameter (mm)."""
        return cone.relief_angle(self.square / self.turn, diameter)

    def as_given(self, diameter: float) -> float:
        """The same in the view in which the surface's relief is given; as it is where the land rises."""
        square = self.relief(diameter)
        return self.edge.given(square, "normal") if square > 0 else square

    def needed(self, square: float) -> dict[str, float]:
        """Each cam that alone makes up a square throw while the other stays, where a machine could do it."""
        found = {
            "radial": cone.radial_throw_for(square, self.axial, self.included_angle),
            "axial": cone.axial_throw_for(square, self.radial, self.included_angle),
        }
        furthest = quantity("radial_throw").high
        return {name: cam for name, cam in found.items() if cam is not None and abs(cam) <= furthest}


def _alone_enough(cam: CamOnCone, square: float) -> dict[str, float]:
    """The throws that give a square throw, each alone beside the other as it is; none that would have to turn its way."""
    now = {"radial": cam.radial, "axial": cam.axial}
    return {name: throw for name, throw in cam.needed(square).items() if throw >= 0 or now[name] < 0}


def ways_to(cam: CamOnCone, square: float, verb: str) -> tuple[list[str], dict[str, Amount | str]]:
    """The ways to a square throw, each as words with places, and the amounts for those places.

    Args:
        cam: as it is.
        square: the throw square to the cone that is wanted, in mm.
        verb: how a throw gets there, such as ``alone`` or ``to at least``.

    Returns:
        Each cam alone where one alone does it, else both together; amounts are rounded up, as they are set.

    Example:
        >>> from geometry.surfaces import SURFACES
        >>> edge = Edge(SURFACES["cone"], 0.7853982)
        >>> cam = CamOnCone(1.5707963, (10.0,), 6.2831853, "per turn", 1.0, 0.0, 0.7071068, edge)
        >>> ways_to(cam, 1.0, "alone")[0]
        ['the radial throw alone {radial} {per}', 'the axial throw alone {axial} {per}']
    """
    needed = _alone_enough(cam, square)
    if needed:
        ways = [f"the {name} throw {verb} {{{name}}} {{per}}" for name in needed]
    else:
        # Neither cam alone gets there within its range, so both go square to the cone.
        radial_share, axial_share = cone.half_angle_parts(cam.included_angle)
        needed = {"radial": square * radial_share, "axial": square * axial_share}
        ways = [f"the radial throw {verb} {{radial}} and the axial throw {verb} {{axial}} {{per}}"]
    amounts: dict[str, Amount | str] = {name: length(value, Rounding.UP) for name, value in needed.items()}
    return ways, amounts | {"per": cam.per}


def advice_to(cam: CamOnCone, square: float, verb: str) -> list[Way]:
    """The throws that give a square throw, each alone where one alone does it, as ways of a complaint.

    Args:
        cam: as it is.
        square: the throw square to the cone that is wanted, in mm.
        verb: how a throw gets there, such as ``above`` or ``to at least``.

    Example:
        >>> from geometry.surfaces import SURFACES
        >>> edge = Edge(SURFACES["cone"], 0.7853982)
        >>> cam = CamOnCone(1.5707963, (10.0,), 6.2831853, "per turn", 1.0, 0.0, 0.7071068, edge)
        >>> [one.says for one in advice_to(cam, 1.0, "to at least")]
        ['bring the radial throw to at least {radial} per turn', 'bring the axial throw to at least {axial} per turn']
    """
    _, amounts = ways_to(cam, square, verb)
    steps = [
        Step(f"{name}_throw", name, amount)
        for name in ("radial", "axial")
        if isinstance(amount := amounts.get(name), Amount)
    ]
    says = [f"the {step.name} throw {verb} {{{step.name}}} {cam.per}" for step in steps]
    if _alone_enough(cam, square):
        return [Way(f"bring {said}", (step,)) for said, step in zip(says, steps, strict=True)]
    return [Way("bring " + " and ".join(says), tuple(steps))]
