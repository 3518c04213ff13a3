"""The schema of ``[[machine]]`` and ``[[wheel]]``: their keys, and what is made of them."""

from __future__ import annotations

from library.book.fields import one_line, paragraph, word_of
from library.book.shapes import Shape
from library.equipment.abrasives import ABRASIVES
from library.equipment.graduation_reader import graduations
from library.equipment.model import Machine, Wheel
from library.equipment.readers import chosen, counted, counts, day, measured, rating, reach, several

MACHINE = Shape(
    "machine",
    {
        "title": one_line,
        "index_ratio": counted("index_ratio"),
        "plate_holes": counts("plate_holes"),
        "spindle_speeds": several("rotational_speed"),
        "cam_throws": several("radial_throw"),
        "cam_throw_range": reach("radial_throw"),
        "throw_per": chosen("throw_per"),
        "head_tilt": reach("wheel_tilt"),
        "graduations": graduations,
        "note": paragraph,
    },
    lambda merged: Machine(**merged.whole()),  # type: ignore[arg-type]
)

WHEEL = Shape(
    "wheel",
    {
        "title": one_line,
        "shape": chosen("wheel_shape"),
        "diameter": measured("wheel_diameter"),
        "new_diameter": measured("wheel_new_diameter"),
        "abrasive": word_of(ABRASIVES, "abrasive"),
        "grit": one_line,
        "grade": one_line,
        "bond": one_line,
        "rated_speed": rating,
        "dressed": day,
        "note": paragraph,
    },
    lambda merged: Wheel(**merged.whole()),  # type: ignore[arg-type]
)

SHAPES = (MACHINE, WHEEL)
"""Both, to be laid beside the tables that the book itself knows."""
