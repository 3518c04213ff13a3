"""What is said of the taper of a tool that cuts one, such as a taper pin reamer: it is larger toward its shank."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.calculation import Check, note, passed
from geometry.complaints import complaint
from geometry.sentences import Amount, ratio
from geometry.setting.taper import PER, over

READ = 0.01
"""How far two diameters may differ by reading a micrometer at both, in mm; common practice, no source."""

HAIR = 1e-9
"""What arithmetic alone may be off, in mm."""


@dataclass(frozen=True)
class Cut:
    """The taper of a tool that cuts one.

    Attributes:
        front: the diameter at its small end, in mm.
        taper: by which it grows toward the shank, on the diameter for each unit of length; below zero it shrinks.
        per: the length over which it is told, in mm; nothing where none was given.
        wanted: the taper that it shall have; nothing where nobody gave one.
        stated: the input that the taper was stated by.
    """

    front: float
    taper: float
    per: float | None
    wanted: float | None
    stated: str


def cut_checks(cut: Cut) -> Iterator[Check]:
    """Whether the tool is larger toward its shank, and by the taper that is wanted.

    The tapers agree where over the length the diameters at the back differ by no more than can be read.

    Example:
        >>> next(cut_checks(Cut(6.0, 0.02, 60.0, 0.02, "back_diameter"))).state
        'pass'
        >>> next(cut_checks(Cut(6.0, 0.021, 60.0, 0.02, "back_diameter"))).state
        'watch'
    """
    by, per = over(abs(cut.taper), cut.per)
    parts: dict[str, Amount | str] = {"by": by, "per": per, "taper": ratio(abs(cut.taper))}
    if cut.taper < 0:
        yield complaint(
            "stop",
            "The tool is smaller toward the back, by {by} over {per}, and one that cuts a taper is larger there.",
            (),
            [
                "measure the small end as the front",
                "choose smaller in the line 'Toward the back' for a back taper",
            ],
            **parts,
        )
    elif cut.taper == 0:
        yield complaint(
            "watch",
            "There is no taper: the tool is as large at the back as at the front.",
            (),
            ["see both diameters"],
        )
    elif cut.wanted is None:
        yield note(
            "The tool is larger toward the back, as one that cuts a taper is: it gains {by} on the diameter over {per}, a taper of "
            "{taper} for each unit of length. Give the line 'Taper wanted' for a verdict.",
            **parts,
        )
    elif abs(cut.taper - cut.wanted) * (cut.per or PER) <= READ + HAIR:
        yield passed(
            "The tool is larger toward the back by the taper that is wanted: it gains {by} on the diameter over {per}, {taper} for "
            "each unit of length.",
            **parts,
        )
    else:
        yield complaint(
            "watch",
            "It is another taper than the one that is wanted: the diameter gains {by} over {per} where {should} is wanted.",
            (),
            [*_to_wanted(cut), "see which taper the hole has"],
            **parts,
            should=over(cut.wanted, cut.per)[0],
        )


def _to_wanted(cut: Cut) -> tuple[str, ...]:
    """What makes of a tool that was measured one of the taper that is wanted."""
    if cut.stated != "back_diameter":
        return ()
    return ("grind it by the swivel that is told here, which is that of the wanted taper",)
