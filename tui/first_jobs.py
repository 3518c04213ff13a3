"""Ten first jobs from easy to hard: the real screens, filled in, with what to look at and how to know that it is right.

The tools are the invented ferry yard's, of kinds that every book has, so that the jobs open with any book.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True)
class FirstJob:
    """About five minutes with one tool of a tool room.

    Attributes:
        id: names it.
        title: what is done.
        entry: the tool, by its id in the book.
        look: what to do there and what to look at.
        right: how to know that it is right.
        sheet: the calculation that is opened; empty where the entry itself is.
        typed: what is filled in there already, by quantity.
        card: what is filled into a new card that is opened instead, by field; empty where none is.
    """

    id: str
    title: str
    entry: str
    look: str
    right: str
    sheet: str = ""
    typed: Mapping[str, str] = field(default_factory=dict)
    card: Mapping[str, str] = field(default_factory=dict)

    @property
    def guide(self) -> str:
        """What is told as long as the job is open."""
        return f"{self.look} Right when: {self.right}"


FIRST_JOBS = (
    FirstJob(
        "entry",
        "1 Read what the book knows of a tap",
        "tap-hand-taper-plain-steel",
        "Go down through the values: each has a usual number, a word or a range, and a tag for its source, which the line "
        "below spells out. F8 has the words explained.",
        "You found that the relief form, C, is common practice, that the chamfer relief, ?, is from memory only, and that "
        "the rest is published.",
    ),
    FirstJob(
        "speed",
        "2 Is the wheel within its rating?",
        "reamer-hand-plain-steel",
        "The yard's cup of 150 mm, for reamer R-12-1, at 2800 rpm, rated 35 m/s. Down goes to the speed; type "
        "5000 rpm, then what your own wheel and spindle have.",
        "It runs at 22.0 m/s. At 5000 rpm it must say STOP, for the rating ends at 4456 rpm.",
        "wheel-speed",
        {"wheel_diameter": "150 mm", "rotational_speed": "2800 rpm", "rated_speed": "35 m/s"},
    ),
    FirstJob(
        "eccentric",
        "3 A heel that clears, and one that rubs",
        "reamer-hand-plain-steel",
        "The yard's reamer R-12-1: a land of 2 mm on 12 mm, no margin, 8 degrees, made by a cam. The indicator falls evenly to "
        "the heel. Then go down to the relief form; Right makes it flat.",
        "The cam gives 0.281 mm at the heel. The flat stands 0.055 mm proud: STOP, with what would cure it.",
        "relief-drop",
        {"surface": "land", "diameter": "12 mm", "relief_angle": "8 deg", "land_width": "2 mm",
         "land_measured_as": "arc", "relief_form": "eccentric", "margin_width": "0 mm"},
    ),
    FirstJob(
        "height",
        "4 The height of a tooth rest",
        "reamer-hand-plain-steel",
        "On R-12-1, 12 mm, a cup wheel makes 8 degrees when the tooth rest stands below the axis by half the diameter times the sine.",
        "0.835 mm. With 24 mm it is twice that.",
        "setting-height",
        {"surface": "land", "diameter": "12 mm", "relief_angle": "8 deg", "wheel_shape": "type-6-straight-cup"},
    ),
    FirstJob(
        "index",
        "5 Index three flutes",
        "tap-spiral-point-plain-steel",
        "The gun tap T-12-3: a head of 40 to 1 and a circle of 66 holes: every move the same.",
        "13 turns and 22 spaces, with no error: 40 / 3 = 13 and 22 / 66.",
        "index-moves",
        {"flutes": "3", "index_ratio": "40", "plate_holes": "66"},
    ),
    FirstJob(
        "face",
        "6 Set the face for its rake",
        "tap-hand-taper-plain-steel",
        "The tap T-10-2, 10 mm and 15 degrees: the plane of the wheel stands behind the axis by half the diameter times the sine.",
        "1.294 mm. A rake of 0 sets it level with the axis.",
        "face-offset",
        {"diameter": "10 mm", "rake_angle": "15 deg"},
    ),
    FirstJob(
        "reading",
        "7 What relief is on a tool?",
        "reamer-hand-plain-steel",
        "R-12-1 came back: the indicator was zero at the edge, 0.142 mm after 1 mm and 0.281 mm at the heel, 2 mm behind the edge.",
        "It is eccentric, 7.96 degrees. Make the second drop, in the middle, 0.226 mm, and it is flat.",
        "relief-from-reading",
        {"surface": "land", "diameter": "12 mm", "land_width": "2 mm", "land_measured_as": "chord", "drop": "0.281 mm",
         "second_land_width": "1 mm", "second_drop": "0.142 mm"},
    ),
    FirstJob(
        "cone",
        "8 A countersink: one relief, three views",
        "countersink-multi-flute-90-plain-steel",
        "On C-20-A 8 degrees square to the edge of a 90 degree cone look steeper to an indicator at the axis. Up goes to 'indicator "
        "points'; turn it with Right and see which readings change.",
        "11.24 degrees square to the axis; 0.795 mm at the axis, 0.562 mm square to the surface, 4 mm behind the edge.",
        "relief-drop",
        {"surface": "cone", "included_angle": "90 deg", "diameter": "20 mm", "relief_angle": "8 deg", "land_width": "4 mm",
         "land_measured_as": "arc", "relief_form": "eccentric", "flutes": "3"},
    ),
    FirstJob(
        "life",
        "9 How often can it be sharpened?",
        "reamer-machine-plain-steel",
        "R-12-4: each sharpening of the face takes 0.2 mm of a land of 3 mm with 4 degrees and no margin, and 11.9 mm is the least diameter.",
        "Three times; each takes 0.028 mm off the size.",
        "size-loss",
        {"surface": "land", "ground_on": "face", "diameter": "12 mm", "stock_per_sharpening": "0.2 mm",
         "relief_angle": "4 deg", "rake_angle": "0 deg", "relief_form": "eccentric", "land_width": "3 mm",
         "land_measured_as": "arc", "least_land": "1 mm", "least_diameter": "11.9 mm", "margin_width": "0 mm"},
    ),
    FirstJob(
        "card",
        "10 A whole job on a card",
        "tap-hand-taper-plain-steel",
        "A tap M12 that squeals; Enter goes on from line to line. In Received, 0.20 mm over a land of 3.2 mm is 3.53 degrees; "
        "the book wants 6. In After type .34, .35, .34, .34 mm, within .02 mm; in End the result.",
        "In Set the heel shall fall 0.34 mm, all flutes pass, and the card closes.",
        card={
            "tool.name": "T-1", "tool.thread": "M12", "tool.flutes": "4", "wrong": "Squeals",
            "received.land_width": "3.2 mm", "received.land_measured_as": "chord", "received.drop": "0.20 mm",
        },
    ),
)  # fmt: skip
"""The jobs in their order; every number is found a second way in the tests."""
