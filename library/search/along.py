"""What of a search goes along with an entry, into its calculations and onto its card, and what of it does not."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from library.book.rows import Rows
from library.book.search_text import BETWEEN
from library.search.by_angle import KEYS
from library.search.ranked import Ranked
from library.search.size_in_names import is_called_by, series_in
from library.search.sizes import Size

OF_A_PIPE = " pipe tap "
"""By this among its names a tap is known whose size is the name of a thread, as 1/2 is, and no diameter."""

FOR_THREADS = (" tap ", " taps ", " thread ", " threads ")
"""Words in the titles of tools that are called by a thread, or in those of their families."""

LARGEST_PIPE = 4
"""Up to which number alone the size of a pipe is one of inches."""


OF_ANOTHER_FORM = {
    " tr ": (" acme ", "is a metric trapezoidal thread, of 30 degrees, and no Acme thread, of 29"),
    " acme ": (" trapezoidal ", "is an Acme thread, of 29 degrees, and no metric trapezoidal thread, of 30"),
}
"""For the word of a series a word in the title of taps that cut the other form, and how they differ: by ISO 2901 and by
ASME B1.5."""


class Along(NamedTuple):
    """What of a search goes along with an entry, into its calculations and onto its card.

    Attributes:
        size: of the tool, where it stood there and the entry is not called by it.
        flutes: how many the tool has, where that stood there.
        instead: the numbers of flutes that the book has for the tool, where that is none of them.
        angle: of the tool in degrees with the unit, where it was sought by one that the book has for none found.
        angle_of: the quantity that the angle is.
        may_be: the threads that share the name which the size is, where they are several and one has to be written.
        is_unknown: whether the size is named as a thread of which the tables have none.
    """

    size: Size | None = None
    flutes: int | None = None
    instead: str = ""
    angle: str = ""
    angle_of: str = ""
    may_be: tuple[str, ...] = ()
    is_unknown: bool = False

    def told_in(self, unit: str) -> str:
        """What is said of it beside the search; empty where nothing goes along.

        Args:
            unit: in which a size without one is taken; one with the class of a hole is told as a drawing has it.

        Example:
            >>> Along(None, 4, "3").told_in("mm"), Along(Size("M12", True), 1).told_in("mm")
            ('4 flutes go along, the book has 3 flutes', 'M12 and 1 flute go along')
            >>> [Along(one).told_in("in") for one in (Size("12", tolerance="H7"), Size("8.5"), Size(".5", tolerance="H7"))]
            ['12 H7 goes along', '8.5 in goes along', '.5 in H7 goes along']
            >>> Along(Size("6, 10, 14"), 2).told_in("mm")
            '6, 10, 14 mm and 2 flutes go along'
            >>> Along(Size("1/2 in"), angle="82 deg", angle_of="included_angle").told_in("mm")
            '1/2 in and 82 deg go along'
            >>> Along(Size("1/4-20", True), 3, may_be=("1/4-20 UNC", "1/4-20 BSW")).told_in("mm")
            '1/4-20 may be UNC or BSW: write which; 3 flutes go along'
        """
        if self.size is not None and self.may_be:
            which = " or ".join(one.removeprefix(f"{self.size.text} ") for one in self.may_be)
            rest = self._replace(size=None, may_be=()).told_in(unit)
            return "; ".join(one for one in (f"{self.size.text} may be {which}: write which", rest) if one)
        parts = _size_told(self.size, unit).split(", ") if self.size is not None else []
        if self.flutes is not None:
            parts.append(f"{self.flutes} flute{'s' if self.flutes > 1 else ''}")
        if self.angle:
            parts.append(self.angle)
        several = len(parts) > 1 or (self.size is None and (self.flutes or 0) > 1)
        listed = " and ".join(one for one in (", ".join(parts[:-1]), *parts[-1:]) if one)
        instead = f", {self.instead_told}" if self.instead else ""
        return f"{listed} go{'' if several else 'es'} along{instead}" if parts else ""

    @property
    def instead_told(self) -> str:
        """That the book has another number of flutes, where there is no room for more; empty where it has not.

        Example:
            >>> Along(None, 3, "1").instead_told, Along(None, 5, "2 to 4").instead_told
            ('the book has 1 flute', 'the book has 2 to 4 flutes')
        """
        flutes = "flute" if self.instead == "1" else "flutes"
        return f"the book has {self.instead} {flutes}" if self.instead else ""


def size_for(rows: Rows, row: int, found: Ranked) -> Size | None:
    """Which of the sizes of a search is the tool's own: the first that is neither its name nor the thread of another thing.

    Args:
        rows: of the book.
        row: the number of the tool's row.
        found: what the search found.
    """
    own = [
        one for one in found.sizes if not is_called_by(rows, row, one) and not _is_of_a_pipe(rows, row, one)
    ]
    words = rows.words
    titles = words.heads[row] + words.families[words.groups[row]].head
    cuts_threads = any(word in titles for word in FOR_THREADS)
    lengths = own if cuts_threads else [one for one in own if not one.is_thread]
    return next(iter(lengths or own), None)


def angle_for(rows: Rows, row: int, found: Ranked) -> tuple[str, str]:
    """The angle that a tool was sought by and the book has for none of these, and the quantity; empty where it is not plain.

    Args:
        rows: of the book.
        row: the number of the tool's row.
        found: what the search found.
    """
    has = [key for key in KEYS if row in rows.values_of(key)]
    plain = len(found.absent) == 1 and len(has) == 1
    return (f"{found.absent[0]} deg", has[0]) if plain else ("", "")


def left_behind(rows: Rows, row: int, found: Ranked, along: Along) -> str:
    """What was taken of a search as an angle, and what of it goes nowhere, in sentences; empty where there is nothing.

    Args:
        rows: of the book.
        row: the number of the tool's row.
        found: what the search found.
        along: what goes along with it.
    """
    size = along.size
    listed = size.told.split(", ") if size is not None else []
    spare = [
        one.told
        for one in found.sizes
        if one != size and one.text not in listed and one.written("mm") not in listed
        and one.text.removesuffix(" in") not in listed and not is_called_by(rows, row, one)
    ]  # fmt: skip
    pipe = [one for one in found.sizes if _is_of_a_pipe(rows, row, one)]
    spare = [one for one in spare if one not in {each.told for each in pipe}]
    as_size = f"; as a size write {found.angles[0]} mm" if found.angles and size is None else ""
    are = "is sought as the angle" if len(found.angles) == 1 else "are sought as angles"
    angles = f"{_and(found.angles)} deg {are}{as_size}." if found.angles else ""
    name = (
        f"{pipe[0].text} is the name of a pipe thread and no diameter: write its series, such as {_bare(pipe[0])} NPT or {_bare(pipe[0])} BSPT."
        if pipe
        else ""
    )
    both = [*spare, *found.numbered]
    lost = f"{_and(both)} {'does' if len(both) == 1 else 'do'} not go along." if both else ""
    unknown = f"The tables have no thread {size.text}." if size is not None and along.is_unknown else ""
    other = _of_another_form(rows, row, size) if size is not None else ""
    return " ".join(one for one in (angles, name, unknown, other, lost) if one)


def _of_another_form(rows: Rows, row: int, size: Size) -> str:
    """That a thread has another form than a tap cuts, as a sentence; empty where it has not."""
    title, _, _ = rows.words.heads[row].removeprefix(f" {BETWEEN}").partition(BETWEEN)
    for series in series_in(size) if size.is_thread else ():
        word, told = OF_ANOTHER_FORM.get(series, ("", ""))
        if word and word in title:
            return f"{size.text} {told}."
    return ""


def _is_of_a_pipe(rows: Rows, row: int, size: Size) -> bool:
    """Whether a size is one of a pipe, which is no diameter of the tap."""
    if size.is_thread or not any(OF_A_PIPE in text for text in rows.words.names_of(row)):
        return False
    bare = _bare(size)
    return "/" in bare or size.text != bare or (bare.isdigit() and int(bare) <= LARGEST_PIPE)


def _size_told(size: Size, unit: str) -> str:
    """A size with the unit in which it is taken; with the class of a hole, which is of millimetres, as a drawing has it."""
    written = size.written(unit)
    in_mm = bool(size.tolerance) and written == f"{size.text} mm"
    return size.told if in_mm else f"{written} {size.tolerance}".rstrip()


def _bare(size: Size) -> str:
    return size.text.removesuffix(" in").removesuffix(" inch").removesuffix('"')


def _and(names: Sequence[str]) -> str:
    *before, last = names
    return f"{', '.join(before)} and {last}" if before else last
