"""Words for a worn edge: what is seen of the wear, what comes off, and in how many passes."""

from __future__ import annotations

from geometry.quantities.quantity import choice, count, length

ROWS = (
    length(
        "wear_land",
        "Wear on the flank",
        "How wide the bright worn strip behind the edge is, where it is widest; it has no relief any more.",
        "Square to the edge, from the edge back to where the sound surface begins, with a scale under a glass.",
        0.0,
        20.0,
    ),
    length(
        "wanted_diameter",
        "Size wanted",
        "The diameter that the tool shall have after grinding.",
        "Over opposite edges; from the drawing of the hole, with the tolerance thought of.",
        0.05,
        500.0,
    ),
    choice(
        "sharpened_on",
        "Sharpened on",
        "Whether the wear is ground away from the face of the tooth or from its flank, the relieved surface behind the edge.",
        "Look where the wheel touches: in the flute is the face, behind the edge is the flank.",
        ("face", "flank"),
    ),
    length(
        "face_stock",
        "Stock off the face",
        "How much has to come off the face of each tooth.",
        "Square to the face, as the grinder feeds.",
        0.0,
        250.0,
    ),
    length(
        "flank_stock",
        "Stock off the flank",
        "How much has to come off the relieved surface behind each edge.",
        "Square to the surface that is ground: the infeed of a wheel set to its angle, all passes together.",
        0.0,
        250.0,
    ),
    length(
        "infeed",
        "Infeed of a pass",
        "How much one pass takes off.",
        "On the graduations of the infeed, square to the surface that is ground.",
        0.0001,
        5.0,
    ),
    count(
        "passes",
        "Passes",
        "How many passes with infeed it takes, the last one with what is left.",
        "Counted for each tooth; the same number for all of them.",
        0,
        1_000_000,
    ),
    length(
        "last_infeed",
        "Infeed of the last pass",
        "What is left for the last pass with infeed.",
        "On the graduations of the infeed.",
        0.0,
        5.0,
    ),
    count(
        "spark_out_passes",
        "Spark-out passes",
        "How many passes follow without infeed, until the wheel hardly sparks any more.",
        "Counted for each tooth.",
        0,
        100,
    ),
    length(
        "wear_depth",
        "Edge gone back by wear",
        "How far the wear has brought the edge back, square to the way that it cuts.",
        "Worked out from the width of the wear, relief and rake.",
        0.0,
        250.0,
    ),
    length(
        "shortened_by",
        "Edge moves back along the axis",
        "How far an edge that lies across the axis moves back along it when the wear is ground away.",
        "Along the axis, from the old point or corner to the new one.",
        0.0,
        1000.0,
    ),
)
