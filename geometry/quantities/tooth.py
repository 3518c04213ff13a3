"""Words for one tooth seen along the axis: edge, face, land, heel and relief."""

from __future__ import annotations

from geometry.quantities.quantity import angle, choice, count, length
from geometry.sentences import Rounding

ROWS = (
    length(
        "diameter",
        "Diameter",
        "The diameter of the circle that the cutting edges run on.",
        "With a micrometer over opposite edges; with an odd number of flutes in a vee or over the edge and a comparator.",
        0.05,
        500.0,
    ),
    count("flutes", "Flutes", "How many cutting edges stand round the tool.", "Count them.", 1, 60),
    angle(
        "rake_angle",
        "Rake angle",
        "The angle between the face of the tooth and the radius drawn to its edge; hook on a tap, negative when the face leans back.",
        "In the plane square to the axis, at the cutting edge on the outside diameter.",
        -45.0,
        60.0,
    ),
    angle(
        "relief_angle",
        "Relief angle",
        "How steeply the surface that is ground falls away right at its edge, in the view in which that surface's relief is given.",
        "On a land and a chamfer square to the axis, on a cone and a bevel square to the edge, on a lip and an end along the axis.",
        0.0,
        45.0,
    ),
    angle(
        "secondary_relief_angle",
        "Secondary relief angle",
        "The steeper angle of the second facet of the same surface, ground behind a narrow primary land so that the heel clears.",
        "In the same view as the relief of the first facet.",
        0.0,
        60.0,
    ),
    choice(
        "relief_form",
        "Relief form",
        "How the surface behind the edge is shaped: one flat facet, or a cam curve that keeps falling.",
        "Look along the axis against the light: a flat shows a straight line, an eccentric relief a curve.",
        ("eccentric", "flat"),
    ),
    length(
        "land_width",
        "Land width",
        "The width of the surface behind the cutting edge, from the edge to the heel.",
        "Along the circle (arc) or straight across with a caliper (chord); say which.",
        0.0,
        250.0,
    ),
    choice(
        "land_measured_as",
        "Land measured as",
        "Whether the land width is the way round the circle or straight across from edge to heel.",
        "A caliper and an optical scale give the chord; paper wrapped round the tool gives the arc.",
        ("arc", "chord"),
    ),
    angle(
        "land_angle",
        "Land angle",
        "The angle that the tool turns from the edge to the heel.",
        "On the dividing head or workhead, pointer at the edge and then at the heel.",
        0.0,
        360.0,
    ),
    length(
        "heel_drop",
        "Indicator drop at the heel",
        "How far the heel lies inside the circle of the cutting edges; below zero it stands proud and rubs.",
        "With an indicator set to zero at the edge, the tool turned to the heel.",
        -50.0,
        50.0,
    ),
    length(
        "drop",
        "Indicator drop",
        "How far a place behind the edge lies inside the circle of the cutting edges.",
        "With an indicator set to zero at the edge, the tool turned on.",
        -50.0,
        50.0,
    ),
    length(
        "clear_land_width",
        "Widest land that clears",
        "How wide a land of this form can be before its heel touches the circle again.",
        "In the same measure as the land width, arc or chord.",
        0.0,
        2000.0,
        Rounding.DOWN,
    ),
    length(
        "throw_per_turn",
        "Throw per turn",
        "The throw of an even cam, counted over one whole turn of the tool.",
        "On the radius, over one turn of the cam.",
        0.0,
        2000.0,
    ),
    length(
        "throw_per_tooth",
        "Throw per tooth",
        "The throw of an even cam from one tooth to the next: the throw per turn divided by the flutes.",
        "On the radius, over one lobe of a relieving cam with a lobe for each tooth.",
        0.0,
        2000.0,
    ),
)
