"""The data model of the standard threads, as frozen objects."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from library.book.model import Citation


@dataclass(frozen=True)
class Origin:
    """Where one column of a series came from.

    Attributes:
        citation: the document and the place in it.
        note: a remark, such as that the numbers were worked out.
    """

    citation: Citation
    note: str = ""


@dataclass(frozen=True)
class Series:
    """A family of threads that one table lists.

    Attributes:
        id: such as ``iso-metric-coarse``.
        title: as shown.
        thread_form: a word of the quantity ``thread_form``, such as ``iso`` for the 60 degree form.
        taper: in words, such as ``1 in 16``; empty for a parallel thread.
        engagement: ``nine pitches`` where the tolerances of its classes are reckoned with so long a nut; else empty, and
            they are reckoned with one of the diameter.
        origins: where sizes, diameters, tap drills and flutes came from.
    """

    id: str
    title: str
    thread_form: str
    taper: str = ""
    engagement: str = ""
    origins: Mapping[str, Origin] = field(default_factory=dict)

    @property
    def thread_taper(self) -> str:
        """The word of a calculation for it: ``parallel``, or by its form the American or the British taper."""
        if not self.taper:
            return "parallel"
        return "npt" if self.thread_form == "iso" else "bspt"


@dataclass(frozen=True)
class Thread:
    """One thread of a series. Every measure is text with its unit, as a person would type it.

    Attributes:
        id: such as ``m12`` or ``3-4-10-unc``.
        title: the designation, such as ``M12 x 1.75``.
        series: the table it stands in.
        synonyms: other ways to write the designation.
        diameter: the major diameter; for pipe threads that of the pipe or at the gauge plane.
        pitch: for metric threads; empty where threads per inch are given.
        threads_per_inch: for inch threads.
        pitch_diameter: basic; at the hand-tight or gauge plane of a taper thread.
        minor_diameter: basic, of the nut.
        screw_minor_diameter: basic, at the root of the screw.
        front_pitch_diameter: at the small end of an American taper pipe thread.
        tap_drill: the drill before tapping.
        other_tap_drills: what another table names: a measure, or a number or letter drill.
        flutes: the usual number, where it was found; else 0.
        note: a remark.
        starts: how many threads run side by side.
        hand: ``right`` or ``left`` where it is always so; empty where both are made.
        thread_class: of its tolerance, where the name that it was asked for by has one, such as ``6H``.
        is_own: whether the shop's book says something of it.
        unread: whether the shop's book says something of it that cannot be read, so that it gives no numbers.
    """

    id: str
    title: str
    series: Series
    synonyms: tuple[str, ...] = ()
    diameter: str = ""
    pitch: str = ""
    threads_per_inch: str = ""
    pitch_diameter: str = ""
    minor_diameter: str = ""
    screw_minor_diameter: str = ""
    front_pitch_diameter: str = ""
    tap_drill: str = ""
    other_tap_drills: tuple[str, ...] = ()
    flutes: int = 0
    note: str = ""
    starts: int = 1
    hand: str = ""
    thread_class: str = ""
    is_own: bool = False
    unread: bool = False

    def fills(self) -> dict[str, str]:
        """What choosing this thread puts into a calculation, by quantity, as text to be read like typing.

        A calculation takes the keys that it has a field for and leaves the others.
        """
        pitch = ("pitch", self.pitch) if self.pitch else ("threads_per_inch", self.threads_per_inch)
        return {
            "diameter": self.diameter,
            pitch[0]: pitch[1],
            "starts": str(self.starts),
            "thread_form": self.series.thread_form,
            "thread_taper": self.series.thread_taper,
            **({"hand": self.hand} if self.hand else {}),
            **({"thread_class": self.thread_class} if self.thread_class else {}),
            **({"engagement_length": self._engagement()} if self.series.engagement else {}),
        }

    def _engagement(self) -> str:
        """Nine pitches in inches as a fraction."""
        held = 9 / Fraction(self.threads_per_inch.removesuffix(" tpi"))
        return f"{held.numerator}/{held.denominator} in"

    def names(self) -> tuple[str, ...]:
        """Every way in which it may be asked for."""
        return (self.id, self.title, *self.synonyms)
