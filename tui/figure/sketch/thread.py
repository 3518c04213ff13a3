"""Pictures of threads and of the chamfer of a tap, from the side; the point is at the left."""

from __future__ import annotations

from tui.figure.sketch.model import Bow, Measure, Name, Part, Place, Sketch, area, dots, line, part

_P, _H = 8.0, 6.0
"""Pitch and depth of the drawn thread."""


def _teeth(count: int, first: float = 0.0, foot: float = 0.0, high: float = _H) -> tuple[Place, ...]:
    """Threads beside each other, from groove to groove."""
    places: list[Place] = [(first, foot)]
    for number in range(count):
        x = first + number * _P
        places += [(x + _P / 2, foot + high), (x + _P, foot)]
    return tuple(places)


def _profile() -> tuple[Part, ...]:
    return line(*_teeth(4)), dots((-2, -6), (34, -6)), Name((34, -6), "axis", 1)


def _bolt(*, fall: float = 0.0) -> tuple[Part, ...]:
    """A thread on both sides of its axis; with a fall it is a taper thread, small end at the left."""

    def side(way: int) -> tuple[Place, ...]:
        return tuple((x, way * (6 + y * 0.6 + fall * x)) for x, y in _teeth(4))

    return dots((-3, 0), (36, 0)), line(*side(1)), line(*side(-1))


def _between(x: float, half: float, text: str) -> Part:
    return Measure((x, -half), (x, half), text)


def _nut() -> tuple[Part, ...]:
    """A threaded hole in section."""

    def side(way: int) -> tuple[Place, ...]:
        return tuple((x, way * (12 - y * 0.6)) for x, y in _teeth(4))

    return dots((-3, 0), (36, 0)), line((0, 16), *side(1), (32, 16)), line((0, -16), *side(-1), (32, -16))


def _winding(way: int, dx: float = 0.0) -> tuple[Part, ...]:
    """Threads as slanting lines on an upright tap."""
    sides = (line((dx, 0), (dx, 18)), line((dx + 12, 0), (dx + 12, 18)))
    rise = 4.0
    lines = tuple(
        line((dx, y + (0 if way > 0 else rise)), (dx + 12, y + (rise if way > 0 else 0)))
        for y in (1, 5, 9, 13)
    )
    return (*sides, *lines)


def _chamfer(cut: float = 0.0) -> tuple[Part, ...]:
    """A tap with a chamfer over its first threads, above its axis."""
    return dots((-3, 0), (44, 0)), line((cut, 0), *_crests(cut), *_teeth(1, 32, 12, 5.0))


def _crests(cut: float = 0.0) -> tuple[Place, ...]:
    """Threads whose crests lie on the chamfer."""
    places: list[Place] = [(cut, _cone(cut))]
    for x in (2.0, 10.0, 18.0, 26.0):
        if x > cut:
            places += [(x + 1.0, _cone(x + 1.0)), (x + 3.0, _cone(x + 3.0) - 2.2), (x + 6.0, _cone(x + 4.5))]
    return (*places, (29.0, 17.0), (32.0, 12.0))


def _cone(x: float) -> float:
    """How high the chamfer stands."""
    return min(17.0, 6.0 + 11.0 * x / 29.0)


def _edge() -> Part:
    return dots((0, 6), (29, 17))


def _plain() -> tuple[Part, ...]:
    """The chamfer alone, for what is ground off it and how it is read."""
    return dots((-3, 0), (44, 0)), line((0, 0), (0, 6), (29, 17), (42, 17))


def _threads() -> dict[str, Sketch]:
    profile, bolt, nut = _profile(), _bolt(), _nut()
    starts = (*_winding(1), Name((0, 1), "1", -1, strong=True), Name((0, 5), "2", -1, strong=True))
    depth = 3.6
    return {
        "pitch": Sketch(
            profile, (Measure((4, 9), (12, 9), "pitch"), dots((4, 6), (4, 10)), dots((12, 6), (12, 10)))
        ),
        "threads_per_inch": Sketch(
            profile,
            (
                Measure((0, 11), (32, 11), "1 inch"),
                *(Name((4 + _P * n, 7.5), str(n + 1), 0, strong=True) for n in range(4)),
            ),
        ),
        "lead": Sketch(
            profile,
            (
                Measure((4, 9), (20, 9), "lead, 2 starts"),
                dots((4, 6), (4, 10)),
                dots((20, 6), (20, 10)),
                part((0, 0), (4, 6), (8, 0)),
                part((16, 0), (20, 6), (24, 0)),
            ),
        ),
        "starts": Sketch(starts[:-2], starts[-2:]),
        "hand": Sketch(
            (*_winding(1), *_winding(-1, 24.0)),
            (Name((6, -2), "right", 0, strong=True), Name((30, -2), "left", 0, strong=True)),
        ),
        "lead_angle": Sketch(
            _winding(1),
            (dots((0, 5), (20, 5)), Bow((0, 5), 14.0, 0, 18.4, "lead angle"), part((0, 5), (12, 9))),
        ),
        "lead_over_land": Sketch(
            (
                line((0, 0), (26, 12)),
                line((0, 4), (0, -4)),
                line((26, 14), (26, -4)),
                Name((0, 4), "edge", 0),
                Name((26, 14), "heel", 0),
            ),
            (
                dots((0, 0), (30, 0)),
                Measure((26, 0), (26, 12), "lead over"),
                Measure((0, -3), (26, -3), "land"),
            ),
        ),
        "thread_form": Sketch(
            (line((0, 0), (6, 10.4), (12, 0)), line((24, 0), (29.5, 10.5), (35, 0))),
            (Bow((6, 10.4), 5.0, 240, 300, "60"), Bow((29.5, 10.5), 5.0, 242, 298, "55")),
        ),
        "thread_taper": Sketch(
            (
                dots((0, 0), (40, 0)),
                line(*((x * 0.55, 6 + y * 0.4) for x, y in _teeth(4))),
                line(*((22 + x * 0.55, 5 + y * 0.4 + x * 0.12) for x, y in _teeth(4))),
            ),
            (Name((9, -3), "parallel", 0, strong=True), Name((31, -3), "taper", 0, strong=True)),
        ),
        "sharp_height": Sketch(
            (
                line((0, 0), (6, 10.4), (12, 0), (18, 10.4), (24, 0)),
                dots((-2, 0), (32, 0)),
                dots((6, 10.4), (32, 10.4)),
            ),
            (Measure((29, 0), (29, 10.4), "height"),),
        ),
        "pitch_diameter": Sketch(
            bolt,
            (dots((-1, 7.8), (34, 7.8)), dots((-1, -7.8), (34, -7.8)), _between(16, 7.8, "pitch diameter")),
        ),
        "front_pitch_diameter": Sketch(
            _bolt(fall=0.1),
            (dots((0, 7.8), (34, 11.2)), dots((0, -7.8), (34, -11.2)), _between(2, 7.9, "at small end")),
        ),
        "external_minor_diameter": Sketch(
            bolt, (dots((0, 6), (32, 6)), dots((0, -6), (32, -6)), _between(16, 6, "minor"))
        ),
        "internal_minor_diameter": Sketch(nut, (_between(20, 8.4, "minor"),)),
        "internal_thread_depth": Sketch(
            nut,
            (
                dots((20, 8.4), (40, 8.4)),
                dots((32, 12), (40, 12)),
                Measure((38, 8.4), (38, 8.4 + depth), "depth"),
            ),
        ),
        "external_thread_depth": Sketch(
            bolt,
            (dots((28, 9.6), (40, 9.6)), dots((32, 6), (40, 6)), Measure((38, 6), (38, 6 + depth), "depth")),
        ),
        "tap_drill_diameter": Sketch(
            (
                dots((-6, 0), (36, 0)),
                line((34, 7), (6, 7), (0, 0), (6, -7), (34, -7)),
                line((10, 12), (10, 7)),
                line((10, -12), (10, -7)),
            ),
            (Measure((22, -7), (22, 7), "drill"),),
        ),
        "drilled_diameter": Sketch(
            (
                dots((-3, 0), (34, 0)),
                line((0, 13), (0, 7), (30, 7), (30, 13)),
                line((0, -13), (0, -7), (30, -7), (30, -13)),
            ),
            (Measure((14, -7), (14, 7), "hole"),),
        ),
        "thread_percent": Sketch(
            (line((0, 0), (12, 16), (24, 0), (36, 16), (48, 0)),),
            (
                area((7, 9.3), (12, 16), (17, 9.3)),
                area((31, 9.3), (36, 16), (41, 9.3)),
                dots((-2, 9.3), (52, 9.3)),
                Measure((50, 9.3), (50, 16), "cut"),
            ),
        ),
        "full_thread": Sketch(
            (line((0, 0), (9, 15.6), (18, 0)), dots((-3, 0), (34, 0))),
            (
                dots((7, 11.7), (28, 11.7)),
                dots((6, 9.75), (16, 9.75)),
                Measure((26, 0), (26, 11.7), "3/4"),
                Measure((-2, 0), (-2, 9.75), "5/8", -1),
                dots((-3, 9.75), (6, 9.75)),
            ),
        ),
    }


def _chamfers() -> dict[str, Sketch]:
    tap, plain = _chamfer(), _plain()
    at = (14.0, _cone(14.0))
    level = (dots((0, 6), (0, 21)), dots((29, 17), (29, 21)))
    numbers = tuple(
        Name((x + 1.0, _cone(x + 1.0) + 2.0), str(n + 1), 0, strong=True)
        for n, x in enumerate((2, 10, 18, 26))
    )
    after = tuple(
        Name((x + 1.0, _cone(x + 1.0) + 2.0), str(n + 1), 0, strong=True) for n, x in enumerate((10, 18, 26))
    )
    ground = dots((0, 2.5), (38, 17))
    return {
        "chamfer_angle": Sketch(plain, (dots((0, 6), (26, 6)), Bow((0, 6), 17.0, 0, 20.8, "chamfer angle"))),
        "chamfer_length": Sketch(tap, (*level, Measure((0, 20), (29, 20), "chamfer length"))),
        "chamfer_threads": Sketch(tap, numbers),
        "threads_left": Sketch(_chamfer(8.0), (*after, dots((0, 0), (0, 6), (8, _cone(8.0))))),
        "cut_back": Sketch(
            plain, (dots((8, 0), (8, 14)), dots((0, 6), (0, 14)), Measure((0, 13), (8, 13), "cut back", -1))
        ),
        "point_diameter": Sketch(_both(0.0), (Measure((0, -6), (0, 6), "point", -1),)),
        "point_diameter_after": Sketch(
            _both(9.0),
            (
                dots((0, 6), (9, _cone(9.0))),
                dots((0, -6), (9, -_cone(9.0))),
                dots((0, -6), (0, 6)),
                Measure((9, -_cone(9.0)), (9, _cone(9.0)), "after", 1),
            ),
        ),
        "chip_per_tooth": Sketch(
            tap,
            (
                dots((11, _cone(11)), (48, _cone(11))),
                dots((19, _cone(19)), (48, _cone(19))),
                Measure((46, _cone(11)), (46, _cone(19)), "chip"),
            ),
        ),
        "square_chip_per_tooth": Sketch(
            tap,
            (
                dots((2, _cone(2) - 3), (29, _cone(29) - 3)),
                dots((0, 6), (29, 17)),
                Measure((15.9, _cone(14.8) - 2.9), (14.8, _cone(14.8)), ""),
                Name((15.9, _cone(14.8) - 4.0), "chip", 1, strong=True),
            ),
        ),
        "radial_chamfer_relief": Sketch(
            plain, (part((14, 1), at, (14, 19)), Name((14, 19), "along the radius", 1, strong=True))
        ),
        "axial_chamfer_relief": Sketch(
            plain, (part((2, at[1]), (26, at[1])), Name((26, at[1]), "along the axis", 1, strong=True))
        ),
        "square_chamfer_relief": Sketch(
            plain, (part((11.2, 18.6), at, (18, 0.7)), Name((11.2, 18.6), "square to it", 1, strong=True))
        ),
        "chamfer_stock": Sketch(
            plain, (ground, Measure((19, 13.2), (20.9, 8.3), ""), Name((20.9, 8.3), "stock", 1, strong=True))
        ),
        "full_thread_moves_back": Sketch(
            plain,
            (
                ground,
                dots((29, 17), (29, 22)),
                dots((38, 17), (38, 22)),
                Measure((29, 21), (38, 21), "moves back", -1),
            ),
        ),
    }


def _both(cut: float) -> tuple[Part, ...]:
    """A chamfered tap on both sides of its axis, its end cut back."""
    end = _cone(cut)
    return dots((-3, 0), (42, 0)), line((40, 17), (29, 17), (cut, end), (cut, -end), (29, -17), (40, -17))


def sketches() -> dict[str, Sketch]:
    """Quantities of threads and of the chamfer."""
    return {**_threads(), **_chamfers()}
