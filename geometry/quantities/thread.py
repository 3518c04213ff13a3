"""Words for screw threads and the taps that cut them."""

from __future__ import annotations

from geometry.quantities.quantity import Quantity, angle, choice, count, length
from geometry.sentences import Kind

ROWS = (
    Quantity(
        "pitch",
        "Pitch",
        Kind.LENGTH,
        "The distance from one thread to the next.",
        "Along the axis, with a thread gauge or over ten threads.",
        0.05,
        50.0,
        other_kinds=("threads_per_inch",),
    ),
    Quantity(
        "threads_per_inch",
        "Threads per inch",
        Kind.PER_LENGTH,
        "How many threads stand in one inch of length; the pitch is one inch divided by it.",
        "Along the axis, with a thread gauge or by counting over an inch.",
        0.5 / 25.4,
        508.0 / 25.4,
        other_kinds=("pitch",),
    ),
    count(
        "starts",
        "Starts",
        "How many threads run side by side; the lead is the pitch times the starts.",
        "Count the thread ends at the point.",
        1,
        12,
    ),
    choice(
        "hand",
        "Hand",
        "Which way the thread or flute winds.",
        "Held upright, a right-hand thread rises to the right.",
        ("right", "left"),
    ),
    length(
        "lead",
        "Lead",
        "How far the thread advances along the axis in one whole turn.",
        "Along the axis: pitch times starts.",
        0.05,
        600.0,
    ),
    angle(
        "lead_angle",
        "Lead angle",
        "How steeply the thread climbs, from the plane square to the axis.",
        "On the diameter given here, not on the pitch diameter.",
    ),
    length(
        "axial_travel",
        "Axial travel",
        "How far the thread has advanced along the axis from the edge to the heel; below zero for a left-hand thread.",
        "With a dial along the axis, pointer at the edge and then at the heel.",
        -600.0,
        600.0,
    ),
)
