"""What a machine fills into a calculation: its index, its speed where it has but one, and its cams."""

from __future__ import annotations

from library.equipment.model import Machine


def texts_of(machine: Machine) -> dict[str, str]:
    """The texts of a machine by the quantity that they fill.

    Args:
        machine: at hand.

    Example:
        >>> from library.book.model import Measure
        >>> cams = (Measure("1 mm", 1.0), Measure("1.6 mm", 1.6))
        >>> texts_of(Machine("grey", "The grey grinder", cam_throws=cams))
        {'throw_per': 'tooth', 'cam_throws': '1 mm, 1.6 mm'}
    """
    found: dict[str, str] = {}
    if machine.index_ratio is not None:
        found["index_ratio"] = str(machine.index_ratio)
    if machine.plate_holes:
        found["plate_holes"] = ", ".join(map(str, machine.plate_holes))
    if len(machine.spindle_speeds) == 1:
        found["rotational_speed"] = machine.spindle_speeds[0].text
    if machine.has_cams:
        found["throw_per"] = machine.throw_per
    if machine.cam_throws:
        found["cam_throws"] = ", ".join(cam.text for cam in machine.cam_throws)
    return found
