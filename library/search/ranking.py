"""Find rows by words and put the likeliest first.

A whole word in the title, the family or the work material counts most, then a part of one, then what else the tool is
called, then what is told of it. Words of a trouble find all tools that the book knows it of, whatever else is told of
them; which of these comes first is said by the other words. Of equals those come first that have the words as typed,
then those of the family that is called so, then, of several words, those whose title begins with the first of them, then
those for the commonest work material and for the one that is called so. Words by which nothing that was found is called, but
which stand in what is told of it, are named, so that nobody takes the nearest tool for the one that he meant. Needs neither units nor quantities, so that the
first letter finds at once.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from library.book.rows import Rows
from library.book.search_text import BETWEEN
from library.book.word_forms import SAYS_NOTHING
from library.search.by_angle import told_of
from library.search.by_value import POINTS, flutes_told
from library.search.left_hand import without_its_hand
from library.search.meant_for import is_meant_for
from library.search.named_tool import NamedTool
from library.search.nearness import ABSENT, distance, of_material, singular
from library.search.not_called import NotCalled
from library.search.number_meanings import meanings
from library.search.of_trouble import UNKNOWN, TroubleWords
from library.search.ordering import Order
from library.search.ranked import Ranked
from library.search.size_in_names import is_a_name, is_named, series_in
from library.search.sizes import Size, Sought, may_widen, taken_apart
from library.search.work_material import OF_ANY, behind_its_own

BY_TROUBLE = 7
"""How far away a word is by which tools are called, where only the trouble of a tool has it."""

OF_A_TROUBLE = 0.5
"""How much it counts whose trouble one is, beside how a tool is called."""

OF_HSS, BY_CARBIDE = frozenset(["hss"]), " carbide "
IN_NAMES, NOT_OF_IT = 2, 6
"""How far away a word for what most tools are made of is: alike for all, whether they are called by it or their family is
told to be of it, and farther for what itself is of carbide."""

THREAD = "thread"
"""By this word at the beginning of a name tools for threads are known, where a thread is named and no tool."""

OF_ANOTHER_SERIES = 3
"""How much farther away a tool is that is not called by the series of the thread, as Tr or NPT."""

FOR_A_SCREW = re.compile(r" for m\d+ ")
OF_ANOTHER_SCREW = 12
"""A tool for one size of screw alone, and how much farther away it is where another size is sought."""

OF_ITS_OWN = 0.25
"""How much farther away a tool for threads is where its family alone, and not itself, is called by their series."""

WITHOUT_THE_FLUTES = 0.75
"""How much farther away a tool is for which the book does not have the number of flutes that was typed."""

FOR_A_CLASS = "reamer"
"""By this word in the name of their family tools are known that a hole of a class, such as H7, is finished with."""


def ranked(rows: Rows, text: str, among: Iterable[int] | None = None) -> Ranked:
    """Find rows by words, parts of words and sizes.

    Args:
        rows: of the book.
        text: words and sizes, as far as they are typed; each word, or a part of one, has to be found.
        among: where it is known that only these have what was typed of it before; not believed where it has a digit.

    Returns:
        The rows. Of a word that ends in s the rest is enough in what is told of trouble.

    Example:
        >>> from library.book.rows import Row
        >>> rows = Rows.of([Row("entry", "a", "A", search="taper reamer"), Row("entry", "b", "B", search="hand tap")])
        >>> ranked(rows, "tap").numbers, ranked(rows, "tap m12").size
        ([1, 0], Size(text='M12', is_thread=True, tolerance=''))
    """
    sought = taken_apart(text)
    if not sought.phrase:
        return Ranked(range(len(rows)) if among is None else list(among))
    if may_widen(text) or not SAYS_NOTHING.isdisjoint(sought.words):
        # What was a number as far as it was typed may now be the beginning of a word, as 1-t is. A word that says nothing
        # was the beginning of one that does.
        among = None
    found = range(len(rows)) if among is None else among
    return _Search(rows, sought).run(found)


class _Search:
    """One search, which gathers for each row how far away it is."""

    def __init__(self, rows: Rows, sought: Sought) -> None:
        self._rows = rows
        self._searched = searched = rows.words
        self._sought = sought
        self._away: list[float] = [0] * len(searched.heads)
        self._words = tuple(word for word in sought.words if word not in SAYS_NOTHING) or sought.words
        self._troubles = TroubleWords(searched, self._words)
        self._may_tell: dict[str, tuple[list[int], dict[int, int]]] = {}
        self._telling: frozenset[str] = frozenset()
        self._meant: set[int] = set()
        self._nears: dict[str, dict[int, int]] = {}
        self._tool = NamedTool.of(self._words, searched)
        self._of_any = self._tool.for_any(self._words)

    def run(self, among: Iterable[int]) -> Ranked:
        sought = self._sought
        # Tools for any material are found by the name of one only where they are named, which letters before were not yet.
        found = sorted(
            range(len(self._rows)) if self._of_any else among
        )  # Of equals those come first that do so in the book.
        for word in self._words:
            found = self._having(word, found)
        if kept := self._without_weak(found):
            return kept
        self._hear_trouble(found)
        sizes = [] if sought.size is None else [sought.size]
        meant = meanings(self._rows, sought, self._words, found, self._called_by)
        found, sizes = list(meant.found), [*sizes, *meant.sizes]
        for number in {*meant.angles} - POINTS:
            whole = f" {number} "
            for row in found:
                self._away[row] += not any(whole in text for text in self._searched.names_of(row))
        size = sizes[0] if sizes else None
        if size is not None and size.tolerance:
            found = self._of_families_called(FOR_A_CLASS, found)
        if size is not None:
            self._prefer(size, found)
        for row, farther in without_its_hand(self._searched, sought, size, found):
            self._away[row] += farther
        if sought.flutes:
            self._prefer_flutes(sought.flutes, found)
        words = tuple(word for word in self._words if word not in self._telling)
        order = Order(self._searched, sought, words, self._tool, self._nears, frozenset(self._meant))
        found = order.sorted(found, self._away, is_telling=bool(self._telling))
        # Another tool than the one that is named says nothing of a word.
        own = self._tool.of_those(found) if len(self._words) > 1 else found
        not_called = NotCalled(words, self._tool, self._nears, self._of_any, own)
        only_part = tuple(word for word in not_called.only_part if word != self._words[-1])
        numbered = (*sought.numbered, *(f"{one} deg" for one in meant.lost))
        others = tuple(one for one in (*sought.others, *sizes) if one != size)
        of_angle = told_of(self._rows, meant.absent, found)
        bare = tuple(one for one in (*meant.angles, *meant.absent) if one in sought.numbers)
        return Ranked(
            found, size, not_called.only_told, sought.steps, of_angle, others, numbered, bare, only_part,
            for_any=not_called.for_any, absent=meant.absent,
        )  # fmt: skip

    def _without_weak(self, found: Sequence[int]) -> Ranked | None:
        """What is found without the words that lead away from the tool and the work material that are named, where such are."""
        known = {word: self._troubles.known(word) for word in self._words}
        own = self._tool.families or range(len(self._searched.families))
        calling = [word for word in self._words if all(known[word][one] == UNKNOWN for one in own)]
        weak = self._tool.weak(calling, found, self._nears)
        if not weak:
            return None
        kept = tuple(word for word in self._words if word not in weak)
        again = _Search(self._rows, self._sought._replace(words=kept))
        rest = again.run(range(len(self._rows)))
        is_named = any(map(self._tool.is_called, rest.numbers))
        return rest._replace(left_out=weak, named=self._tool.told) if is_named else None

    def _having(self, word: str, found: Sequence[int]) -> list[int]:
        """Those that have a word, how far away it is in each being added to what they have."""
        searched, away = self._searched, self._away
        forms = word, f" {word} ", f" {word}", singular(word)
        common = [min(distance(*forms, *family), of_material(distance(*forms, *material), word, material, self._words))
                  for family, material in zip(searched.families, searched.materials, strict=True)]  # fmt: skip
        heads, names, notes, groups = searched.heads, searched.names, searched.notes, searched.groups
        known = self._troubles.known(word)
        # Where a trouble is called so, a tool that has it is found too, and later it may count in place of the word.
        common = [
            min(near, BY_TROUBLE) if trouble != UNKNOWN else near
            for near, trouble in zip(common, known, strict=True)
        ]
        farther = behind_its_own(word, searched.materials)
        of_any = self._of_any.get(word, frozenset())
        kept, nears = [], {}
        for number in found:
            group = groups[number]
            own = distance(*forms, heads[number], names[number], notes[number])
            nearest = min(own, common[group], OF_ANY if group in of_any else ABSENT)
            if word in OF_HSS and nearest < ABSENT:
                nearest = IN_NAMES if BY_CARBIDE not in names[number] else NOT_OF_IT
            if nearest < ABSENT:
                away[number] += nearest + farther[group]
                nears[number] = nearest
                kept.append(number)
        self._nears[word] = nears
        if min(known, default=UNKNOWN) != UNKNOWN:
            self._may_tell[word] = known, nears
        return kept

    def _hear_trouble(self, found: Sequence[int]) -> None:
        """Of words that tell of a trouble, let it count whose trouble that is, and not where else they stand."""
        if not self._may_tell:
            return
        groups = self._searched.groups
        among = {groups[row] for row in found}
        begun = [word for word in self._may_tell if self._names_have(f" {word}", found, among)]
        whole = [word for word in begun if self._names_have(f" {word} ", found, among)]
        self._telling = self._troubles.telling(among, begun, whole)
        away = self._away
        for word in self._telling:
            known, nears = self._may_tell[word]
            counts = [near * OF_A_TROUBLE for near in known]
            for row in found:
                away[row] += counts[groups[row]] - nears[row]
        if self._telling.issuperset(self._words):
            self._prefer_told(found)

    def _names_have(self, text: str, found: Sequence[int], among: Iterable[int]) -> bool:
        """Whether something that was found, or its family or work material, is called so."""
        searched = self._searched
        common = [(searched.families[group], searched.materials[group]) for group in among]
        return any(text in part for both in common for one in both for part in one[:2]) or any(
            text in searched.heads[row] or text in searched.names[row] for row in found
        )

    def _prefer_told(self, found: Sequence[int]) -> None:
        """Where nothing but a trouble is sought, put those families first of which that is told in their own text too."""
        words = [f" {word} " for word in self._words]
        phrase = f" {self._sought.phrase} "
        told = [
            0 if phrase in family.notes else 1 if all(word in family.notes for word in words) else 2
            for family in self._searched.families
        ]
        for row in found:
            self._away[row] += told[self._searched.groups[row]]

    def _of_families_called(self, word: str, found: Sequence[int]) -> list[int]:
        """Those whose family has a word in its title, and not only in what is told of it."""
        searched = self._searched
        return [row for row in found if word in searched.families[searched.groups[row]].head]

    def _called_by(self, number: str, found: Sequence[int]) -> list[int] | None:
        """Those that have a number in their names; nothing where none of them is called by it."""
        whole = f" {number} "
        names_of, said = self._searched.names_of, self._sought.words
        if not any(
            whole in text and is_a_name(number, text, said) for row in found for text in names_of(row)
        ):
            return None
        kept = []
        for row in found:
            names = self._searched.names_of(row)
            if any(number in text for text in names):
                self._away[row] += 0 if any(whole in text for text in names) else 1
                kept.append(row)
        return kept

    def _prefer(self, size: Size, found: Sequence[int]) -> None:
        """Put first what is called by the size, then what is called by its series, then what threads are cut with."""
        series = [*series_in(size) * OF_ANOTHER_SERIES, f" {BETWEEN} {THREAD} "]
        # Nobody says the pitch of a screw that a counterbore is for.
        is_of_a_tap = size.is_thread and "x" in size.text and not self._words
        searched = self._searched
        for row in found:
            names = self._searched.names_of(row)
            is_other = size.is_thread and self._tool.tool and searched.groups[row] not in self._tool.families
            if is_of_a_tap or is_other or not is_named(names, size, self._sought.words):
                self._away[row] += ABSENT
                self._away[row] += OF_ANOTHER_SCREW if FOR_A_SCREW.search(searched.heads[row]) else 0
            meant = is_meant_for(self._searched.heads[row], size) if self._words else None
            if meant is not None:
                self._away[row] += 0 if meant else ABSENT
                self._meant |= {row} if meant else set()
            if size.is_thread:
                own = self._searched.heads[row], self._searched.names[row]
                self._away[row] += sum(not any(word in text for text in names) for word in series)
                self._away[row] += OF_ITS_OWN * sum(
                    not any(word in text for text in own) for word in series_in(size)
                )

    def _prefer_flutes(self, count: int, found: Sequence[int]) -> None:
        """Put first what the book has with that number of flutes; the others are ground alike, so that they stay."""
        for row in found:
            self._away[row] += 0 if flutes_told(self._rows, row, count)[0] else WITHOUT_THE_FLUTES
