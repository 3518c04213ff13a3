"""A book whose machine has a drawer of three cams, and the cards of a tap and of two cones that are ground with it."""

from __future__ import annotations

from library.cards.job import Job
from library.cards.model import Card, Inspection, Tool, Wanted

DRAWER = """schema = 1

[[machine]]
id = "drawer"
title = "The grinder with the drawer"
spindle_speeds = ["2800 rpm", "5000 rpm"]
cam_throws = ["1 mm", "1.6 mm", "20 mm"]
throw_per = "tooth"

[machine.graduations.rest]
title = "rest screw"
division = "0.01 mm"
sets = ["tooth_rest_height"]
more = "lower"
less = "higher"

[[machine]]
id = "bare"
title = "The grinder without cams"

[[wheel]]
id = "cup"
title = "Cup"
shape = "type-11-flaring-cup"
diameter = "100 mm"
rated_speed = "4140 rpm"

[[wheel]]
id = "straight"
title = "Straight"
shape = "type-1-straight"
diameter = "150 mm"
rated_speed = "6000 rpm"
"""


def tap(**wanted: str) -> Card:
    """A tap of 11.98 mm with three lands of 3.2 mm, the chamfer wanted at 6.5 degrees."""
    texts = {
        "relief_form": "eccentric",
        "chamfer_relief_angle": "6.5 deg",
        "chamfer_angle": "7 deg",
        **wanted,
    }
    return Card(
        id="2026-11-25-01",
        family="tap",
        machine="drawer",
        wheel="cup",
        tool=Tool("T-1", thread="M12 x 1.75", flutes="3"),
        received={"diameter": ("11.98 mm",), "land_width": ("3.2 mm",), "land_measured_as": ("chord",)},
        wanted={key.replace("__", "."): Wanted(text) for key, text in texts.items()},
        after={"drop": Inspection(("0.413 mm", "0.414 mm", "0.412 mm"), "", "0.01 mm")},
    )


def output(job: Job, sheet: str, key: str) -> float:
    step = job.step(sheet)
    assert step is not None
    assert step.answer.result is not None
    return step.answer.result.outputs[key]


def countersink(drop: str) -> Card:
    return Card(
        family="countersink",
        units="in",
        machine="drawer",
        wheel="straight",
        tool=Tool("C-1", size="1 in", flutes="3"),
        received={"land_width": ("0.25 in",), "land_measured_as": ("arc",), "drop": (drop,) * 3},
        wanted={
            "relief_form": Wanted("eccentric"),
            "cone_relief_angle": Wanted("8 deg"),
            "included_angle": Wanted("82 deg"),
        },
        after={"drop": Inspection((drop,) * 3, "", "0.5 thou")},
    )


def cone(**received: str) -> Card:
    """One of 20 mm and 90 degrees with three lands of 3 mm, relieved by a cam."""
    return Card(
        id="2026-11-25-02",
        family="countersink",
        machine="drawer",
        tool=Tool("C-1", size="20 mm", flutes="3"),
        received={key: (text,) for key, text in {"land_width": "3 mm", **received}.items()},
        wanted={"cone_relief_angle": Wanted("8 deg"), "included_angle": Wanted("90 deg")},
    )
