"""The part of a calculation in a whole job: when its turn is, what it sets, and what of it stands on the sheet.

The card and the setup sheet ask every calculation for its role and know none of them by its name, so that a new one
takes its place by what it says of itself.
"""

from __future__ import annotations

from dataclasses import dataclass

HEEL = "heel"
"""What the indicator reads at the heel for the relief of the job, and between edge and heel."""

FOUND = "found"
"""Which relief a reading stands for."""

LASTING = "lasting"
"""How often the tool can be sharpened again."""


@dataclass(frozen=True)
class Cam:
    """How a calculation deals with the cam of a job.

    Attributes:
        throw: its input that takes the throw of a cam.
        wanted: its input that says which relief the cam shall give.
    """

    throw: str
    wanted: str


@dataclass(frozen=True)
class Role:
    """What a calculation does for a job on a card.

    Attributes:
        place: in the order of the set-up, the smaller the earlier: first what is mounted, then the tool and its index,
            its face, angles, heights and cams, then what the indicator shows on the way, and last whether it will work
            and how often it can be done again; common practice, no source. Nothing for one that sets nothing.
        does: HEEL, FOUND or LASTING for the calculation that answers this question of every job; else empty.
        every_job: whatever is ground, it belongs to the job.
        of_course: families whose jobs go through it as a matter of course, all that it serves where it says nothing.
            On others it rests until somebody types into it, or measures what it is ``about``; common practice, no source.
        about: the quantity whose measurement brings a resting one into the job.
        sets: the numbers that are set on a machine, in this order, also where the machine names no graduation for them.
        rows: how each row of its table is a setting of its own: ``moves`` of an index, ``facets`` of a back.
        cam: how it deals with the cam of the job, where it does.
        hands_on: the angle of an edge that it finds, or was told, and that later calculations want too.
        sizes: whether it looks at the size of the tool: it then takes the surface that holds the size, not the one
            that is ground.
        tells: the verdicts that stand on the sheet beside ``stop`` and ``watch``; those left out repeat a setting.
        tabled: whether its table is wanted at the machine; the others are for thinking it over before.
        drawn: the drawing with the greatest number is the one on the sheet; 0 for one that is as good as any other.
    """

    place: int | None = None
    does: str = ""
    every_job: bool = False
    of_course: tuple[str, ...] | None = None
    about: str = ""
    sets: tuple[str, ...] = ()
    rows: str = ""
    cam: Cam | None = None
    hands_on: str = ""
    sizes: bool = False
    tells: tuple[str, ...] = ()
    tabled: bool = False
    drawn: int = 0


NO_ROLE = Role()
"""Of a calculation that tells something of a tool, but sets nothing in a job."""
