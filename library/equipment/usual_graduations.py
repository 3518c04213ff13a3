"""What is usually set and read on the movements of a machine, for one of which a shop says no more than its division."""

from __future__ import annotations

from collections.abc import Mapping

GRADUATIONS: Mapping[str, Mapping[str, object]] = {
    "wheel-head": {"sets": ["wheel_head_height"], "more": "up", "less": "down"},
    "tooth-rest": {"sets": ["tooth_rest_height"], "more": "down", "less": "up"},
    "cross-slide": {"sets": ["face_offset"]},
    "tilt": {"sets": ["wheel_tilt"]},
    "work-head": {
        "sets": [
            "chamfer_angle",
            "bevel_angle",
            "half_point_angle",
            "half_included_angle",
            "axis_to_wheel_angle",
            "second_axis_to_wheel_angle",
            "workhead_swivel",
            "second_workhead_swivel",
        ]
    },
    "work-head-roll": {"sets": ["roll_angle", "second_roll_angle"]},
    "work-head-tilt": {"sets": ["workhead_tilt", "second_workhead_tilt"]},
    "table": {"sets": ["swivel_angle"]},
    "indicator": {"reads": ["drop", "axial_drop", "square_drop", "lead_over_land"]},
}
"""By the name of the graduation, the keys of its table besides the division."""

_CAME_LATER: Mapping[str, tuple[str, ...]] = {"work-head": ("bevel_angle",)}
"""What a form did not write yet of what is usually set, by the name of the graduation."""


def with_what_came_later(name: str, sets: tuple[str, ...]) -> tuple[str, ...]:
    """What is set on a movement; where a form wrote it before more was usual, with the rest of it.

    Any other list is the shop's own, and stays as it is.

    Args:
        name: of the graduation.
        sets: the quantities that its file names.

    Example:
        >>> with_what_came_later("work-head", ("chamfer_angle",))
        ('chamfer_angle',)
    """
    usual = GRADUATIONS.get(name, {}).get("sets", [])
    later = _CAME_LATER.get(name, ())
    if later and isinstance(usual, list) and list(sets) == [key for key in usual if key not in later]:
        return tuple(usual)
    return sets
