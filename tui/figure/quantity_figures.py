"""A picture for each quantity that has something to draw, with its mark on it; and why the others have none."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cache

from geometry.quantities import QUANTITIES
from tui.figure.alphabet import ALPHABETS, Alphabet, AlphabetName
from tui.figure.sketch import (
    bevel,
    circular_land,
    compound,
    cone,
    cylinder,
    drill,
    end_teeth,
    facets,
    flank,
    form,
    hook,
    limits,
    pipe_tap,
    section,
    spacing,
    spiral_point,
    thread,
    tooth,
    tooth_rest,
    vee,
    wear,
    web,
    wheel,
    work_head,
)
from tui.figure.sketch.drawing import sketch_lines
from tui.figure.sketch.model import Sketch
from tui.pieces import Line, text_of

SMALL = (34, 9)
"""Columns and rows of a picture beside words."""

_LIMIT = "it is read off the wheel or worked out from what is written there, not seen on it"
_COUNTED = "it is a count, not a shape"

NOTHING: Mapping[str, str] = {
    "surface": "each surface it chooses from has its own picture under its relief",
    "relief_method": "it chooses a way of working; each way has its picture under what is set",
    "face_given_by": "it chooses what is measured; each of its ways has its own picture",
    "head_axes": "it chooses how a head turns; each axis has its own picture",
    "rule_height": "it is the wheel head height or the tooth rest height, found another way",
    "rule_difference": "it is the difference of two ways of reckoning one height",
    "rated_speed": _LIMIT,
    "rated_rotational_speed": _LIMIT,
    "highest_rotational_speed": _LIMIT,
    "sharpenings_left": _COUNTED,
    "index_ratio": _COUNTED,
}
"""The quantities with nothing to draw, and why."""


@cache
def _sketches() -> Mapping[str, Sketch]:
    found: dict[str, Sketch] = {}
    for subject in (
        section,
        tooth,
        circular_land,
        facets,
        cylinder,
        cone,
        bevel,
        drill,
        thread,
        flank,
        wheel,
        tooth_rest,
        spacing,
        end_teeth,
        limits,
        work_head,
        vee,
        spiral_point,
        compound,
        wear,
        pipe_tap,
        web,
        hook,
        form,
    ):
        found.update(subject.sketches())
    return found


def has_picture(key: str) -> bool:
    """Whether a quantity has something to draw.

    Example:
        >>> has_picture("land_width"), has_picture("rated_speed")
        (True, False)
    """
    return key not in NOTHING and key in _sketches()


def has_sketch(name: str) -> bool:
    """Whether there is a picture of this name: of a quantity, or of a drop along the axis or a land by its surface.

    Example:
        >>> has_sketch("end-drop"), has_sketch("cone-drop")
        (True, False)
    """
    return name in _sketches()


def sketch_of(key: str) -> Sketch | None:
    """The sketch of a quantity, or nothing where there is nothing to draw."""
    return _sketches()[key] if has_picture(key) else None


@cache
def picture(key: str, columns: int, rows: int, name: AlphabetName) -> tuple[Line, ...]:
    """The picture of a quantity.

    Args:
        key: of the quantity.
        columns: of the picture.
        rows: of the picture.
        name: of the characters to draw with.

    Returns:
        So many lines; none where there is nothing to draw, or no room.
    """
    sketch = sketch_of(key)
    return tuple(sketch_lines(sketch, columns, rows, ALPHABETS[name])) if sketch is not None else ()


def picture_lines(key: str, columns: int, rows: int, alphabet: Alphabet) -> list[Line]:
    """The same, as lines that may be added to."""
    return list(picture(key, columns, rows, alphabet.name))


class _Small(Mapping[str, tuple[str, ...]]):
    """The pictures as plain text, drawn when they are asked for."""

    def __getitem__(self, key: str) -> tuple[str, ...]:
        if not has_picture(key):
            raise KeyError(key)
        text = "\n".join(text_of(one).rstrip() for one in picture(key, *SMALL, "ascii"))
        return tuple(text.strip("\n").split("\n"))

    def __iter__(self) -> Iterator[str]:
        return (key for key in QUANTITIES if has_picture(key))

    def __len__(self) -> int:
        return sum(1 for _ in self)


FIGURES: Mapping[str, tuple[str, ...]] = _Small()
"""The small picture of a quantity in plain ASCII, by its key."""
