"""Pictures of the web of a drill: cut open along its axis, and its point from the front."""

from __future__ import annotations

from tui.figure.sketch.model import Arrow, Bow, Measure, Name, Part, Sketch, dots, line, part, ring

_R = 12.0


def _half(x: float) -> float:
    """Half of the drawn web, so far behind the point."""
    return 2.0 + 0.11 * x


def _open(start: float = 0.0) -> tuple[Part, ...]:
    """A drill cut open along its axis, the point at the left: its outside, and the web between the flutes."""
    sides = tuple(line((start + 4, way * _R), (44, way * _R)) for way in (1, -1))
    webs = tuple(line((start, way * _half(start)), (44, way * _half(44))) for way in (1, -1))
    end = line((start + 4, _R), (start, _half(start)), (start, -_half(start)), (start + 4, -_R))
    return (dots((-4, 0), (48, 0)), *sides, *webs, end)


def _cut_off() -> tuple[Part, ...]:
    """The same drill, shortened."""
    old = dots((4, _R), (0, _half(0)), (0, -_half(0)), (4, -_R))
    return (*_open(14.0), old)


def _notched() -> tuple[Part, ...]:
    """The point with a notch on each side of the web."""
    notch = tuple(
        line((0, way * 1.0), (13, way * (_half(13) + 0.1)), (13, way * _half(13))) for way in (1, -1)
    )
    return (*_open(), *notch)


def _front(half: float) -> tuple[Part, ...]:
    """The point from the front: two lips, and a chisel edge over a web of this half thickness."""
    return (
        line(*ring((0, 0), _R, 12, 140)),
        line(*ring((0, 0), _R, 192, 320)),
        *(line((way * 11.7, way * 2.6), (way * 2.1, way * 2.6)) for way in (1, -1)),
        line((-0.8 * half, -half), (0.8 * half, half)),
    )


def _across(x: float, text: str) -> Part:
    return Measure((x, -_half(x)), (x, _half(x)), text)


def sketches() -> dict[str, Sketch]:
    """Quantities of the web."""
    whole, cut, notched = _open(), _cut_off(), _notched()
    level = (dots((0, 0), (0, 16)), dots((34, 0), (34, 16)))
    old, new = (-2.1, -2.6), (2.1, 2.6)
    shorter = dots((0, 0), (0, 17)), dots((14, 0), (14, 17))
    return {
        "second_web": Sketch(whole, (_across(34.0, "web"),)),
        "web_distance": Sketch(whole, (*level, Measure((0, 15), (34, 15), "way"), part((34, -5.7), (34, 5.7)))),
        "web_growth": Sketch(
            whole, (part((0, _half(0)), (44, _half(44))), dots((0, 2), (44, 2)), Measure((40, 2), (40, _half(40)), "half"))
        ),
        "length_ground_off": Sketch(cut, (*shorter, Measure((0, 16), (14, 16), "off"))),
        "web_after": Sketch(cut, (Measure((14, -_half(14)), (14, _half(14)), "web now"),)),
        "web_share": Sketch(
            cut,
            (
                Measure((14, -_half(14)), (14, _half(14)), "web", -1),
                Measure((30, -_R), (30, _R), "of the diameter"),
            ),
        ),
        "wanted_web": Sketch(notched, (Measure((0, -1), (0, 1), "wanted", -1),)),
        "thinning_stock": Sketch(
            notched, (Measure((0, 1), (0, 2.2), "", -1), Name((-1, 2.6), "stock", -1, strong=True), part((0, 1), (0, 2)))
        ),
        "notch_length": Sketch(
            notched, (dots((0, 0), (0, 16)), dots((13, 0), (13, 16)), Measure((0, 15), (13, 15), "notch"))
        ),
        "notch_angle": Sketch(notched, (part((0, 1.0), (13, _half(13))), Bow((0, 1.0), 11.0, 0, 12.5, "angle"))),
        "thinning": Sketch(
            (*_front(2.6), line((-5, 2.6), (-1, 1.2)), line((5, -2.6), (1, -1.2))),
            (Arrow((-9, 9), (-2.4, 2.2), "thin", 0), Arrow((9, -9), (2.4, -2.2), "or split", 0)),
        ),
        "thinned_edge_length": Sketch(
            (*_front(1.2), dots(old, new)), (part((-0.96, -1.2), (0.96, 1.2)), Measure((-3.4, -0.4), (-1.4, 2.0), "left", -1))
        ),
        "new_lip_length": Sketch(
            (*_front(1.2), dots(old, new)),
            (part((0.96, 1.2), new), part((-0.96, -1.2), old), Name((3.4, 4.6), "new edge", 1, strong=True)),
        ),
    }  # fmt: skip
