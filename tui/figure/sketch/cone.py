"""Pictures of cones, steps and tapers seen from the side, the point at the left, and of what is set and read on them."""

from __future__ import annotations

from tui.figure.sketch.model import Arrow, Bow, Measure, Name, Part, Sketch, dots, line, part

_CORNER = (16.0, 12.0)
_MIDDLE = (8.0, 6.0)
_SQUARE = (0.6, -0.8)
"""One step into the tool, square to the side of the cone."""


def _cone(*, below: bool = True) -> tuple[Part, ...]:
    low = (line((30, -12), (16, -12), (0, 0)),) if below else ()
    return (dots((-3, 0), (33, 0)), line((0, 0), _CORNER, (30, 12)), *low)


def _inward(length: float) -> tuple[float, float]:
    return _MIDDLE[0] + length * _SQUARE[0], _MIDDLE[1] + length * _SQUARE[1]


def _out(length: float) -> tuple[float, float]:
    return _inward(-length)


def _fallen() -> tuple[Part, ...]:
    """The land behind the edge, turned into the same view: further in and further back."""
    dx, dy = 3.5 * _SQUARE[0], 3.5 * _SQUARE[1]
    return (dots((2 + dx, 1.5 + dy), (14 + dx, 10.5 + dy)), Name((14 + dx, 10.5 + dy), "land behind it", 1))


def _plane(dx: float, dy: float, text: str, side: int = -1) -> tuple[Part, ...]:
    """The plane of a section, as the line in which it is seen."""
    x, y = _MIDDLE
    return part((x - dx, y - dy), (x + dx, y + dy)), Name((x - dx, y - dy), text, side, strong=True)


_LARGER = "-larger"
"""What stands behind a quantity in the name of its picture on a tool that is larger toward the back."""


def _taper() -> tuple[Part, ...]:
    return (
        dots((-3, 0), (39, 0)),
        line((0, -8), (0, 8), (36, 5), (36, -5), (0, -8)),
        Name((0, 11), "front", 0),
        Name((32, 11), "a back taper", -1),
    )


def _grown() -> tuple[Part, ...]:
    """A tool that cuts a taper: larger toward the back."""
    return (
        dots((-3, 0), (39, 0)),
        line((0, -5), (0, 5), (36, 8), (36, -8), (0, -5)),
        Name((0, 11), "front", 0),
    )


def _step() -> tuple[Part, ...]:
    return (
        dots((-3, 0), (35, 0)),
        line((0, 0), (3, 4), (14, 4), (18, 10), (32, 10)),
        line((0, 0), (3, -4), (14, -4), (18, -10), (32, -10)),
    )


def _throws() -> dict[str, Sketch]:
    cone = _cone(below=False)
    x, y = _MIDDLE
    down, along, square = (x, y + 8), (x - 9, y), _out(8.0)
    radial = Arrow(down, (x, y + 0.5), "radial throw")
    axial = Arrow((x, y), (x + 12, y), "axial throw", -1)
    return {
        "radial_throw": Sketch(cone, (radial,)),
        "axial_throw": Sketch(cone, (axial,)),
        "square_throw": Sketch(cone, (Arrow(square, _out(0.6), "square", -1),)),
        "needed_radial_throw": Sketch(
            cone,
            (
                Arrow(down, (x, y + 0.5), "needed"),
                dots(_MIDDLE, (x + 12, y)),
                Name((x + 12, y), "left as it is", 1),
            ),
        ),
        "needed_axial_throw": Sketch(
            cone,
            (Arrow(_MIDDLE, (x + 12, y), "needed", -1), dots(down, (x, y)), Name(down, "left as it is", 1)),
        ),
        "radial_drop": Sketch((*cone, *_fallen()), (Measure(_MIDDLE, (x, y - 4.4), "to the axis", -1),)),
        "axial_drop": Sketch((*cone, *_fallen()), (Measure(_MIDDLE, (x + 5.8, y), "along", -1),)),
        "square_drop": Sketch((*cone, *_fallen()), (Measure(_MIDDLE, _inward(3.5), "square", -1),)),
        "normal_relief_angle": Sketch(cone, _plane(3.0, -4.0, "square to the edge")),
        "radial_relief_angle": Sketch(cone, _plane(0.0, 6.0, "square to the axis")),
        "axial_relief_angle": Sketch(cone, _plane(7.0, 0.0, "along the axis")),
        "relief_view": Sketch(
            cone,
            (
                *_plane(-3.0, 4.0, "normal", 1),
                *_plane(0.0, -6.0, "radial"),
                *_plane(7.0, 0.0, "axial"),
            ),
        ),
        "indicator_points": Sketch(
            cone,
            (
                Arrow(down, (x, y + 0.8), "at the axis"),
                Arrow(along, (x - 0.8, y), "along", -1),
                Arrow(square, _out(0.8), "square", -1),
            ),
        ),
    }


def _tapers() -> dict[str, Sketch]:
    taper = _taper()
    there = (20.0, 8 - 20 / 12)
    back = Measure((36, -5), (36, 5), "back", 1)
    length = (dots((0, -8), (0, -13)), dots((36, -5), (36, -13)), Measure((0, -12), (36, -12), "length"))
    straight = dots((0, 8), (36, 8))
    return {
        "back_taper": Sketch(
            taper,
            (
                straight,
                Measure((36, 5), (36, 8), "half of it"),
                *length[:2],
                Measure((0, -12), (36, -12), "100 mm"),
            ),
        ),
        "taper_ratio": Sketch(taper, (Measure((0, -8), (0, 8), "", 1), back, *length)),
        "back_diameter": Sketch(taper, (back,)),
        "taper_length": Sketch(taper, length),
        "taper_angle": Sketch(
            (dots((-3, 0), (39, 0)), line((0, -8), (0, 8), (24, 3), (24, -3), (0, -8))),
            (dots((24, 3), (38.4, 0), (24, -3)), Bow((38.4, 0), 16.0, 168.2, 191.8, "whole")),
        ),
        "swivel_angle": Sketch(
            (dots((-3, 0), (39, 0)), line((0, -8), (0, 8), (24, 3), (24, -3), (0, -8))),
            (dots((24, 3), (38.4, 0)), Bow((38.4, 0), 14.0, 180, 168.2, "one side")),
        ),
        "distance_from_front": Sketch(
            taper, (dots(there, (20, -13)), dots((0, -8), (0, -13)), Measure((0, -12), (20, -12), "distance"))
        ),
        "diameter_there": Sketch(taper, (Measure((20, -there[1]), there, "there"),)),
        "indicator_fall": Sketch(
            taper,
            (
                straight,
                Arrow((20, 15), (20, there[1] + 0.4), "indicator"),
                Measure((33, 5.3), (33, 8), "fall"),
            ),
        ),
        "taper_direction": Sketch(_grown(), (Measure((36, -8), (36, 8), "larger", 1),)),
        "wanted_taper": Sketch(
            _grown(), (Measure((0, -5), (0, 5), "", 1), Measure((36, -8), (36, 8), "back", 1), *length)
        ),
        "indicator_rise": Sketch(
            _grown(),
            (
                dots((0, 5), (36, 5)),
                Arrow((20, 15), (20, 7.1), "indicator"),
                Measure((33, 5), (33, 7.7), "rise"),
            ),
        ),
    }


def grown_of(key: str) -> str:
    """The name of the picture of a quantity on a tool that is larger toward the back.

    Example:
        >>> grown_of("back_diameter")
        'back_diameter-larger'
    """
    return f"{key}{_LARGER}"


def without_growth(name: str) -> str:
    """The quantity of which a picture is, also where its tool is larger toward the back; the inverse of ``grown_of``.

    Example:
        >>> without_growth("back_diameter-larger"), without_growth("land_width")
        ('back_diameter', 'land_width')
    """
    return name.removesuffix(_LARGER)


def _tapers_grown() -> dict[str, Sketch]:
    """What is told of a taper either way, on a tool that cuts one."""
    grown, tip = _grown(), (-14.4, 0.0)
    there = (20.0, 5 + 20 / 12)
    back = Measure((36, -8), (36, 8), "back", 1)
    length = (dots((0, -5), (0, -13)), dots((36, -8), (36, -13)), Measure((0, -12), (36, -12), "length"))
    cone = (dots((-17, 0), (27, 0)), line((0, -3), (0, 3), (24, 8), (24, -8), (0, -3)))
    return {
        "taper_ratio": Sketch(grown, (Measure((0, -5), (0, 5), "", 1), back, *length)),
        "back_diameter": Sketch(grown, (back,)),
        "taper_length": Sketch(grown, length),
        "taper_angle": Sketch(cone, (dots((0, 3), tip, (0, -3)), Bow(tip, 16.0, 11.8, -11.8, "whole"))),
        "swivel_angle": Sketch(cone, (dots((0, 3), tip), Bow(tip, 14.0, 0, 11.8, "one side"))),
        "distance_from_front": Sketch(
            grown, (dots(there, (20, -13)), dots((0, -5), (0, -13)), Measure((0, -12), (20, -12), "distance"))
        ),
        "diameter_there": Sketch(grown, (Measure((20, -there[1]), there, "there"),)),
    }


def sketches() -> dict[str, Sketch]:
    """Quantities of cones, steps, bevels and tapers."""
    work = (
        line((-14, 6), (-2, 6), (4, 0), (4, -8)),
        line((46, 6), (34, 6), (28, 0), (28, -8)),
        dots((16, 10), (16, -10)),
    )
    bevel = (dots((-3, 0), (36, 0)), line((0, 0), (0, 5), (8, 10), (34, 10)))
    hole = (
        line((-4, 9), (22, 9)),
        line((-4, -9), (22, -9)),
        line((22, 7), (2, 7), (2, -7), (22, -7)),
        dots((-6, 0), (24, 0)),
    )
    usable = (
        dots((-3, 0), (42, 0)),
        line((0, -6), (0, 6), (40, 6)),
        line((0, -6), (40, -6)),
        line((0, 0), (22, 0), (27, 6)),
        Name((31, 2), "flute ends", 1),
    )
    after = dots((6, -9), (6, 9))
    return {
        "included_angle": Sketch(_cone(), (Bow((0, 0), 11.0, 36.9, -36.9, "included angle"),)),
        "half_included_angle": Sketch(_cone(), (Bow((0, 0), 11.0, 36.9, 0, "half"),)),
        "mouth_diameter": Sketch(
            work,
            (dots((-2, 6), (-2, 11)), dots((34, 6), (34, 11)), Measure((-2, 10), (34, 10), "mouth")),
        ),
        "bevel_angle": Sketch(
            bevel, (dots((0, 5), (20, 5)), Bow((0, 5), 13.0, 0, 32, "bevel"), part((0, 5), (8, 10)))
        ),
        "pilot_diameter": Sketch(
            _step(), (Measure((8, -4), (8, 4), "pilot", 1), part((3, 4), (14, 4)), part((3, -4), (14, -4)))
        ),
        "reaming_stock": Sketch(
            hole,
            (
                *(dots((22, y), (28, y)) for y in (-9, -7, 7, 9)),
                Measure((26, 7), (26, 9), "half of it"),
                Measure((26, -9), (26, -7), "half of it"),
            ),
        ),
        "usable_length": Sketch(
            usable, (Measure((0, 10), (22, 10), "usable"), dots((0, 6), (0, 11)), dots((22, 0), (22, 11)))
        ),
        "length_after": Sketch(usable, (after, Measure((6, 10), (22, 10), "left"), dots((22, 0), (22, 11)))),
        **_throws(),
        **_tapers(),
        **{grown_of(key): one for key, one in _tapers_grown().items()},
    }
