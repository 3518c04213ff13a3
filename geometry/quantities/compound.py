"""Words for compound angles: a face at two slopes, and the axes of the head or vise that bring it level."""

from __future__ import annotations

from geometry.quantities.quantity import angle, choice

_LEVEL = "From the plane of the base, which counts as level: it lies parallel to the face of the wheel with all scales at zero."

ROWS = (
    choice(
        "face_given_by",
        "Face given by",
        "Whether a face is given by its slopes along and across the jaws, or by an edge with the slope square to it.",
        "Take the slopes off a drawing in two views; take the edge where a rake or a relief is given at one.",
        ("slopes", "edge"),
    ),
    angle(
        "along_slope_angle",
        "Slope along the jaws",
        "How steeply the face falls along the jaws, to the right counted above zero; the side rake of a tool along them.",
        _LEVEL,
        -60.0,
        60.0,
    ),
    angle(
        "cross_slope_angle",
        "Slope across the jaws",
        "How steeply the face falls across the jaws, away from you counted above zero; the back rake of a tool along them.",
        _LEVEL,
        -60.0,
        60.0,
    ),
    angle(
        "edge_turn_angle",
        "Turn of the edge",
        "How far the edge is turned in the plane of the base, from straight across the jaws; the helix of an edge that lies so.",
        "Seen from above, from across the jaws to the left counted above zero.",
        -90.0,
        90.0,
    ),
    angle(
        "edge_slope_angle",
        "Slope square to the edge",
        "How steeply the face falls square to the edge, over the base: the relief or the orthogonal rake at that edge.",
        "In the upright plane square to the edge as it is seen from above; away from the edge to the right above zero.",
        -60.0,
        60.0,
    ),
    angle(
        "edge_inclination_angle",
        "Slope along the edge",
        "How steeply the edge itself falls, away from you counted above zero; makers differ in its sign.",
        "In the upright plane along the edge.",
        -60.0,
        60.0,
    ),
    angle(
        "normal_slope_angle",
        "Slope in the plane square to the edge",
        "The slope of the face in the plane that stands square to the inclined edge itself: the normal rake.",
        "Worked out: the slope over the base, made less by the inclination.",
        -90.0,
        90.0,
    ),
    choice(
        "head_axes",
        "Axes of the head",
        "How the head or the vise turns: a swivel of its base under one tilt, or two tilts of which one carries the other.",
        "Look which axis moves when another is turned: the one below carries the one above.",
        ("swivel-and-tilt", "two-tilts"),
    ),
    angle(
        "base_swivel_angle",
        "Swivel of the base",
        "How far the vise is swivelled on its base, so that the face falls most along the way it tilts.",
        "On the scale of the base, from zero, where the jaws lie along the way it tilts.",
        -180.0,
        180.0,
    ),
    angle(
        "compound_tilt_angle",
        "Tilt after the swivel",
        "How far the head or vise is tilted up after the swivel until the face is level.",
        "On the tilt scale.",
        0.0,
        90.0,
    ),
    angle(
        "first_tilt_angle",
        "First tilt",
        "The tilt about the lower axis, which lies along the jaws and carries the other one.",
        "On its scale; above zero the far side comes up.",
        -90.0,
        90.0,
    ),
    angle(
        "second_tilt_angle",
        "Second tilt",
        "The tilt about the upper axis, which lies across the jaws and was tilted with the first.",
        "On its scale; above zero the right side comes up.",
        -90.0,
        90.0,
    ),
)
