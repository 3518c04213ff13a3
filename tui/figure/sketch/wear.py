"""Pictures of a worn edge: the strip without relief, what comes off face and flank, and in how many passes."""

from __future__ import annotations

from tui.figure.sketch.model import Arrow, Bow, Measure, Name, Part, Place, Sketch, dots, line, part

_WORN: Place = (1.4, -3.5)
"""Where face and worn strip meet."""

_SOUND: Place = (12.0, -3.5)
"""Where the strip ends and the sound flank begins."""

_HEEL: Place = (30.0, -9.2)
_FOOT: Place = (7.0, -16.0)
_SLOPE = (_HEEL[1] - _SOUND[1]) / (_HEEL[0] - _SOUND[0])


def _tooth(*, worn: bool = True) -> tuple[Part, ...]:
    """A tooth whose flank has a worn strip at the edge, and the sharp edge that it had."""
    top = (_WORN, _SOUND) if worn else ((0.0, 0.0),)
    sharp = (dots(_WORN, (0.0, 0.0), _SOUND),) if worn else ()
    return (line(_FOOT, *top, _HEEL, (30.0, -16.0)), *sharp)


def _new_flank(deeper: float = 0.0) -> Part:
    """The flank ground until it passes through the worn edge, or deeper."""
    return dots((_WORN[0], _WORN[1] - deeper), (_HEEL[0], _WORN[1] - deeper + _SLOPE * (_HEEL[0] - _WORN[0])))


def _new_face() -> Part:
    """The face ground until it passes through the end of the worn strip."""
    away = _SOUND[0] - _WORN[0]
    return dots(_SOUND, (_FOOT[0] + away, _FOOT[1]))


def _passes() -> Sketch:
    """The flank with a line for each pass."""
    layers = tuple(
        part((_WORN[0] + 1, _SLOPE * 1 - n), (_HEEL[0], _SLOPE * _HEEL[0] - n)) for n in (1.6, 3.2, 4.8)
    )
    numbers = tuple(
        Name((_HEEL[0] + 1, _SLOPE * _HEEL[0] - n), text, 1, strong=True)
        for n, text in ((0.6, "1"), (2.6, "2"), (4.8, "3"))
    )
    return Sketch(_tooth(), (*layers, *numbers))


def sketches() -> dict[str, Sketch]:
    """Quantities of a worn edge."""
    tooth = _tooth()
    up = (dots(_WORN, (_WORN[0], 4.0)), dots(_SOUND, (_SOUND[0], 4.0)))
    back: Part = Measure((4.6, -10.4), (14.4, -12.0), "")
    flank = (
        _new_flank(),
        Measure((20.0, -6.0), (19.0, -9.1), ""),
        Name((20.0, -6.0), "stock", 0, strong=True),
    )
    blunt = (line((0, -8), (0, 2), (5, 9), (32, 9)), dots((-4, -8), (36, -8)), Name((36, -8), "axis", 1))
    return {
        "wear_land": Sketch(tooth, (part(_WORN, _SOUND), *up, Measure((_WORN[0], 3.0), (_SOUND[0], 3.0), "wear"))),
        "wear_depth": Sketch(
            tooth,
            (dots((0, 0), (-9, 0)), dots(_WORN, (-9, _WORN[1])), Measure((-7, _WORN[1]), (-7, 0), "depth", -1)),
        ),
        "face_stock": Sketch(tooth, (_new_face(), back, Name((14.4, -12.0), "stock", 1, strong=True))),
        "flank_stock": Sketch(tooth, flank),
        "sharpened_on": Sketch(
            tooth, (Arrow((-12, -9), (2, -9), "face", 0), Arrow((22, 4), (22, -5.5), "flank"))
        ),
        "infeed": Sketch(
            _tooth(worn=False), (dots((3, -3), (33, -9.5)), Measure((20, -6.0), (19.2, -9.0), "infeed"))
        ),
        "passes": _passes(),
        "last_infeed": Sketch(
            tooth,
            (
                _new_flank(-2.4),
                _new_flank(),
                Arrow((24, 2), (23.4, -7.9), "last"),
            ),
        ),
        "spark_out_passes": Sketch(
            _tooth(worn=False),
            (
                Arrow((4, 3), (28, 0), ""),
                Bow((30, -4), 4.5, 80, -80, "", turns=True),
                Name((14, 4), "no infeed", 0, strong=True),
            ),
        ),
        "wanted_diameter": Sketch(
            (dots((-4, 0), (36, 0)), dots((0, 10), (30, 10)), dots((0, -10), (30, -10)),
             line((0, 8), (30, 8)), line((0, -8), (30, -8)), line((0, 8), (0, -8))),
            (Measure((14, -8), (14, 8), "size wanted"),),
        ),
        "shortened_by": Sketch(
            blunt,
            (
                dots((7, -8), (7, 2), (12, 9)),
                dots((5, 9), (5, 14)),
                dots((12, 9), (12, 14)),
                Measure((5, 13), (12, 13), "back", 1),
            ),
        ),
    }  # fmt: skip
