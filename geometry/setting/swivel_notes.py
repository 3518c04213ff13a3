"""What is said of the swivel of a tooth that its rest turns down: the scale, and what the edge reads then."""

from __future__ import annotations

from geometry.calculation import Check, note
from geometry.edge.surface_input import Edge
from geometry.sentences import angle
from geometry.setting.under_rest import edge_of_swivel, swivel_for_edge


def turned_down(edge: Edge, relief: float) -> Check:
    """The swivel of a tooth that its rest has turned down, what the edge reads then, and what the plain swivel would make.

    Args:
        edge: at an angle to the axis, under a right one.
        relief: by which the rest turns the tooth, square to the axis, in radians, above zero.

    Returns:
        A note.

    Example:
        >>> from geometry.surfaces import SURFACES
        >>> str(turned_down(Edge(SURFACES["bevel"], 0.785398), 0.171936).sentence).partition(': ')[2].partition('. ')[0]
        'swivel by 44.57 deg and not by 45 deg'
    """
    amounts = {
        "relief": angle(relief),
        "swivel": angle(swivel_for_edge(edge.kappa, relief)),
        "kappa": angle(edge.kappa),
    }
    says = "The rest turns the tooth {relief} down, its relief square to the axis: swivel by {swivel} and not by "
    if edge.surface.edge_key != "included_angle":
        return note(
            says
            + "{kappa}. The edge then reads {kappa} to the axis; at {kappa} on the scale it would read {off}.",
            off=angle(edge_of_swivel(edge.kappa, relief)),
            **amounts,
        )
    return note(
        says
        + "half the included angle, {kappa}. The cone then reads {whole}; at {kappa} on the scale it would read {off}.",
        whole=angle(2 * edge.kappa),
        off=angle(2 * edge_of_swivel(edge.kappa, relief)),
        **amounts,
    )


def left_by_swivel(edge: Edge, relief: float) -> Check:
    """What the edge reads after a swivel that was given.

    Args:
        edge: as it comes of the swivel.
        relief: by which the rest turns the tooth, square to the axis, in radians, above zero.

    Returns:
        A note.

    Example:
        >>> from geometry.surfaces import SURFACES
        >>> str(left_by_swivel(Edge(SURFACES["bevel"], 0.785398), 0.171936).sentence).partition(': ')[2]
        'at 44.57 deg on the scale the edge reads 45 deg to the axis.'
    """
    is_cone = edge.surface.edge_key == "included_angle"
    return note(
        "The rest turns the tooth {relief} down, its relief square to the axis: at {swivel} on the scale the "
        + ("cone reads {kappa}." if is_cone else "edge reads {kappa} to the axis."),
        relief=angle(relief),
        swivel=angle(swivel_for_edge(edge.kappa, relief)),
        kappa=angle(edge.kappa * (2 if is_cone else 1)),
    )


def swivel_of_lead(slope: float, turned: float) -> Check:
    """How far the tool is swivelled; by what else where a rest turns the tooth down, which goes by its relief.

    Args:
        slope: of the lead to the axis, in radians, above zero.
        turned: its relief square to the axis, in radians; zero where none is known.

    Returns:
        A note.

    Example:
        >>> str(swivel_of_lead(0.785398, 0.0).sentence)[:40]
        'Swivel by 45 deg, so that the lead runs '
    """
    every = "so that the lead runs along the wheel, and give every tooth the same: the lead alone cuts."
    if turned == 0:
        return note("Swivel by {slope}, " + every, slope=angle(slope))
    return note(
        "Swivel by {slope}, or under a cup, where its rest turns the tooth {turned} down, by {swivel}, "
        + every,
        slope=angle(slope),
        turned=angle(turned),
        swivel=angle(swivel_for_edge(slope, turned)),
    )
