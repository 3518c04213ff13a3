"""The role of a calculation in a job: its place in the order, what it sets, and what of it is printed.

The card and the setup sheet ask every calculation for its role and know none of them by its name, so that a new one
takes its place by what it says of itself.
"""

from __future__ import annotations

from collections.abc import Container
from dataclasses import dataclass

HEEL = "heel"
"""What the indicator reads at the heel for the relief of the job, and between edge and heel."""

FOUND = "found"
"""Which relief a reading stands for."""

LASTING = "lasting"
"""How often the tool can be sharpened again."""

MOVES, FACETS, HEIGHTS = "moves", "facets", "heights"
"""What the rows of a table set, one by one: the moves of an index, the facets of a back, the heights for those of a land."""


OFF_THE_END = ("cut_back", "off the end, before anything is ground")
"""How what is cut off the end of a tap counts, wherever it is set."""

MEASURED_TOO = {"diameter": "measured_diameter"}
"""Under which other name a size that follows from what was measured is asked for too."""


@dataclass(frozen=True)
class Cam:
    """How a calculation deals with the cam of a job.

    Attributes:
        throw: its input that takes the throw of a cam.
        wanted: its input that says which relief the cam shall give.
        gives: the surfaces on which it finds what the cams give, each with the number of its rows that says so; an
            empty surface is the one that it was asked for. Without any it is its answer for the relief.
        else_wanted: another input that says it where the first is not known, which the answer of the same name is held
            against; empty where there is none.
    """

    throw: str
    wanted: str
    gives: tuple[tuple[str, str], ...] = ()
    else_wanted: str = ""


@dataclass(frozen=True)
class Role:
    """What a calculation does for a job on a card.

    Attributes:
        place: in the order of the set-up, the smaller the earlier: first what is mounted, then the tool and its index,
            its face, angles, heights and cams, then what the indicator shows on the way, and last whether it will work
            and how often it can be done again; common practice, no source. Nothing for one that sets nothing.
        does: HEEL, FOUND or LASTING for the calculation that answers this question of every job; else empty.
        every_job: whatever is ground, it belongs to the job.
        rated: whether it weighs the speed of the wheel, so that the ratings of machine and wheel are held against it.
        of_course: kinds of tools whose jobs go through it as a matter of course, all that it serves where it says nothing.
            On others it rests until somebody types into it, or measures what it is ``about``; common practice, no source.
        about: the quantity whose measurement brings a resting one into the job.
        only: an input and the words of it for which it is meant; on any other job it rests. Empty where it is meant for all.
        only_several: an input of which a tool must have several, such as diameters; on a tool with one it rests.
        by_method: a method of a job by which it belongs to it as a matter of course, on the surfaces that it serves, and
            without which the same surface is not ground by a cam; empty where the method decides nothing.
        by_wanted: the quantity that brings a resting one into the job where the card wants it, as an entry of the book does.
        wanted_on: the kinds of tools on which it does that; on all that it serves where it names none.
        sets: the numbers that are set on a machine, in this order, also where the machine names no graduation for them.
        counted: of what it sets, from where each counts and which way it goes, in few words, by key.
        turned: the sentences on how the tool is turned for what it sets, each with what it sets that calls for it; ``{cuts}``
            stands for which way the tool turns as it cuts.
        said_of_setting: the place in the sentence of a note that says how what it sets goes and how that is proved: on paper
            it stands with the settings, and gives way to nothing. Empty where no note does.
        apart: for what those are set, where that is ground in a job of its own: they are told, and counted among no settings.
        otherwise_by: methods of a job in which another calculation sets and reads what this one would.
        replaces: calculations that rest on a job of flats where this one has an answer for the same surface: it knows the
            tooth better, and the same heel must not be judged twice.
        asks: inputs that it can do without by taking what is usual, but whose line is always shown, for its answer hangs on them.
        of_facets: whether what it reads behind the edge is the fall of flats that no relief of a single one stands for.
        facets_by: the input that lays a second facet behind the first, so that what is read behind the edge is that of flats too.
        better: what it finds, each with what is told in its place where this or another calculation of the job finds that.
            Where it sets the better one, no other calculation of the job sets what that stands for.
        left_out_by: methods of a job to which it does not belong, because another calculation says better what it would.
        not_on: methods of a job that it belongs to, each with a surface to which that method gives no relief.
        ground: the surfaces of which it sets, makes or reads something; on a job that grinds another it rests. Empty where it
            is meant for a job on any.
        inspects: what it was given of which one is measured after grinding too, where it is not nothing.
        rows: MOVES or FACETS where each row of its table is a setting of its own, HEIGHTS where each is a facet that
            is made by the height that another calculation of the job sets; else empty.
        cam: how it deals with the cam of the job, where it does.
        counts: whether it counts with the relief that the chosen cams give, where an earlier one found it.
        hands_on: what it finds, or was told, and later calculations want too. The angle of an edge that is one of those that
            it ``sets`` they take whatever was wanted or measured, any other angle only where nothing else is known. A length is
            a size that follows from what was measured: they take it in place of the size that is stamped on the tool.
        sizes: whether it looks at the size of the tool: it then takes the surface that holds the size, not the one
            that is ground.
        as_ground: whether it counts with the diameter to which the circle is to be ground, where an earlier calculation finds
            that it must be, and not with that of the tool as it came.
        repeats_cam: whether its remarks on the relief only repeat what the sentence on the chosen cam says of the tool.
        tells: the verdicts that stand on the sheet beside ``stop`` and ``watch``; those left out repeat a setting.
        tabled: whether its table is wanted at the machine; the others are for thinking it over before.
        drawn: the drawing with the greatest number is the one on the sheet; 0 for one that is as good as any other.
    """

    place: int | None = None
    does: str = ""
    every_job: bool = False
    rated: bool = False
    of_course: tuple[str, ...] | None = None
    about: str = ""
    only: tuple[str, ...] = ()
    only_several: str = ""
    by_method: str = ""
    by_wanted: str = ""
    wanted_on: tuple[str, ...] = ()
    sets: tuple[str, ...] = ()
    counted: tuple[tuple[str, str], ...] = ()
    turned: tuple[tuple[str, str], ...] = ()
    said_of_setting: str = ""
    apart: str = ""
    otherwise_by: tuple[str, ...] = ()
    replaces: tuple[str, ...] = ()
    asks: tuple[str, ...] = ()
    of_facets: bool = False
    facets_by: str = ""
    better: tuple[tuple[str, str], ...] = ()
    left_out_by: tuple[str, ...] = ()
    not_on: tuple[tuple[str, str], ...] = ()
    ground: tuple[str, ...] = ()
    inspects: tuple[str, ...] = ()
    rows: str = ""
    cam: Cam | None = None
    counts: bool = False
    hands_on: str = ""
    sizes: bool = False
    as_ground: bool = False
    repeats_cam: bool = False
    tells: tuple[str, ...] = ()
    tabled: bool = False
    drawn: int = 0

    def sets_with(self, numbers: Container[str]) -> tuple[str, ...]:
        """What it ``sets`` where these are known, without what it finds with more known and sets in its place.

        Example:
            >>> one = Role(sets=("depth", "depth_after"), better=(("depth", "depth_after"),))
            >>> one.sets_with({"depth"}), one.sets_with({"depth", "depth_after"})
            (('depth',), ('depth_after',))
        """
        better = {key for key, one in self.better if one in numbers and one in self.sets}
        return tuple(key for key in self.sets if key in numbers and key not in better)


NO_ROLE = Role()
"""Of a calculation that tells something of a tool, but sets nothing in a job."""
