"""Find rows by words and put the likeliest first.

A whole word in the title, the family or the work material counts most, then a part of one, then what else the tool is
called, then what is told of it. Of equals those come first that have the words as typed, then those of the family
that is called so, then, of several words, those whose title begins with the first of them, then those for the commonest
work material and for the one that is called so. Needs neither units nor quantities, so that the first letter finds
at once.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from library.book.rows import Rows
from library.book.search_text import BETWEEN, Parts, SearchWords
from library.search.sizes import Size, Sought, is_meant_for, taken_apart

ABSENT = 9
"""How far away a word is that is not there; 0 is a whole word in a title."""

LEFT = (" lh ", " left hand tap ", " tap left hand ")
"""How tools for left-hand threads are called, which come first where a thread is named with LH or as left hand."""

THREAD = "thread"
"""By this word at the beginning of a name tools for threads are known, where a thread is named and no tool."""

COMMONEST = "plain steel"
"""The work material of a tool that is looked for without one, more often than any other. Common practice, no source."""

FOR_A_CLASS = "reamer"
"""By this word in the name of their family tools are known that a hole of a class, such as H7, is finished with."""


class Ranked(NamedTuple):
    """The rows that a text finds.

    Attributes:
        numbers: of the rows, the likeliest first.
        size: what the text says of the tool's size, besides the words.
    """

    numbers: Sequence[int]
    size: Size | None = None


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
    if any(sign.isdigit() for sign in text):
        # What was a number as far as it was typed may now be the beginning of a word, as 1-t is.
        among = None
    found = range(len(rows)) if among is None else among
    if sought.flutes is not None:
        found = _with_flutes(rows, found, sought.flutes)
    return _Search(rows.words, sought).run(found)


def _with_flutes(rows: Rows, found: Iterable[int], count: int) -> list[int]:
    """Those of which the book says that they may have so many flutes, or says nothing of them."""
    from library.book.value_ranges import ranges_of

    said = rows.values_of("flutes")
    return [
        row
        for row in found
        if row not in said
        or any(not isinstance(one, str) and one[0] <= count <= one[1] for one in ranges_of(said[row]))
    ]


def _singular(word: str) -> str:
    """A word without the s that it ends in.

    Example:
        >>> _singular("burns"), _singular("brass"), _singular("gas")
        ('burn', 'brass', 'gas')
    """
    return word[:-1] if len(word) > 3 and word.endswith("s") and not word.endswith("ss") else word


class _Search:
    """One search, which gathers for each row how far away it is."""

    def __init__(self, searched: SearchWords, sought: Sought) -> None:
        self._searched = searched
        self._sought = sought
        self._away = [0] * len(searched.heads)

    def run(self, among: Iterable[int]) -> Ranked:
        sought = self._sought
        found = sorted(among)  # Of equals those come first that do so in the book.
        for word in sought.words:
            found = self._having(word, found)
        sizes = [] if sought.size is None else [sought.size]
        for number in sought.numbers:
            if (held := self._called_by(number, found)) is None:
                sizes.append(Size(number))
            else:
                found = held
        size = sizes[0] if sizes else None
        if size is not None and size.tolerance:
            found = self._of_families_called(FOR_A_CLASS, found)
        if size is not None:
            self._prefer(size, found)
        return Ranked(self._in_order(found), size)

    def _having(self, word: str, found: Sequence[int]) -> list[int]:
        """Those that have a word, how far away it is in each being added to what they have."""
        searched, away = self._searched, self._away
        forms = word, f" {word} ", f" {word}", _singular(word)
        common = [min(_distance(*forms, *family), _distance(*forms, *material))
                  for family, material in zip(searched.families, searched.materials, strict=True)]  # fmt: skip
        heads, names, notes, groups = searched.heads, searched.names, searched.notes, searched.groups
        kept = []
        for number in found:
            own = _distance(*forms, heads[number], names[number], notes[number])
            nearest = min(own, common[groups[number]])
            if nearest < ABSENT:
                away[number] += nearest
                kept.append(number)
        return kept

    def _of_families_called(self, word: str, found: Sequence[int]) -> list[int]:
        """Those whose family has a word in its title, and not only in what is told of it."""
        searched = self._searched
        return [row for row in found if word in searched.families[searched.groups[row]].head]

    def _called_by(self, number: str, found: Sequence[int]) -> list[int] | None:
        """Those that have a number in their names; nothing where none of them has it as a word."""
        whole = f" {number} "
        if not any(whole in text for row in found for text in self._searched.names_of(row)):
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
        wanted = [f" {spelling} " for spelling in spellings(size)]
        words = size.text.casefold().split()
        series = [f" {word} " for word in words if word.isalpha() and word not in {"x", "lh"}]
        series.append(f" {BETWEEN} {THREAD} ")
        is_left = "lh" in words or {"left", "hand"} <= set(self._sought.words)
        for row in found:
            names = self._searched.names_of(row)
            if is_left and not any(one in text for one in LEFT for text in names):
                self._away[row] += 2
            if not any(one in text for one in wanted for text in names):
                self._away[row] += ABSENT
            meant = is_meant_for(self._searched.heads[row], size)
            if meant is not None:
                self._away[row] += -1 if meant else ABSENT
            if size.is_thread:
                self._away[row] += sum(not any(word in text for text in names) for word in series)

    def _in_order(self, found: Sequence[int]) -> list[int]:
        phrase = self._sought.phrase
        title, begun = f" {BETWEEN} {phrase} {BETWEEN}", f" {_singular(phrase)}"
        words = self._sought.words
        first = f" {BETWEEN} {words[0]}" if len(words) > 1 else title
        searched, away = self._searched, self._away
        tool, material = _named(words, searched.families), _named(words, searched.materials)
        families = [_called(tool, one) for one in searched.families]
        others = [
            f" {COMMONEST} " not in one.head and _called(material, one) > 0 for one in searched.materials
        ]
        steps = {}
        for number in found:
            head = searched.heads[number]
            if head.startswith(title):
                steps[number] = -1
                continue
            # In the title alone: an id has its words in another order.
            in_head = begun in head[: head.find(BETWEEN, 2)]
            in_text = in_head or phrase in searched.names[number] or phrase in searched.notes[number]
            begins = head.startswith(first)
            group = searched.groups[number]
            step = away[number] * 24 + (not in_head) * 12 + families[group] * 4 + (not in_text) * 2
            steps[number] = (step + (not begins)) * 2 + others[group]
        return sorted(found, key=steps.__getitem__)


def without_one(rows: Rows, text: str) -> tuple[str, int]:
    """The word without which a text finds most, where with all of its words it finds nothing.

    Args:
        rows: of the book.
        text: as typed.

    Returns:
        The word and how many rows there are without it; no word where leaving out a single one does not help.

    Example:
        >>> from library.book.rows import Row
        >>> rows = Rows.of([Row("entry", "a", "A", search="taper reamer"), Row("entry", "b", "B", search="hand tap")])
        >>> without_one(rows, "hand tap titanium"), without_one(rows, "titanium")
        (('titanium', 1), ('', 0))
    """
    words = text.split()
    if len(words) < 2:
        return "", 0
    found = [
        (len(ranked(rows, " ".join(words[:at] + words[at + 1 :])).numbers), at) for at in range(len(words))
    ]
    count, at = max(found)
    return (words[at], count) if count else ("", 0)


def is_called_by(rows: Rows, row: int, size: Size) -> bool:
    """Whether a row has a size in its names, as a counterbore for M12 screws has, so that it is not the tool's own.

    A name that tells a range of sizes, such as over 1 in, is called by none of them.

    Args:
        rows: of the book.
        row: the number of one of them.
        size: as it stood in the search.
    """
    if is_meant_for(rows.words.heads[row], size) is not None:
        return False
    names = rows.words.names_of(row)
    return any(f" {spelling} " in text for spelling in spellings(size) for text in names)


def spellings(size: Size) -> tuple[str, ...]:
    """How a size may stand in a title: in full, and a thread without its pitch.

    Example:
        >>> spellings(Size("M12 x 1.5", True))
        ('m12 x 1.5', 'm12x1.5', 'm12')
    """
    whole = size.text.casefold().replace("-", " ").removesuffix(" lh")
    return (
        tuple(dict.fromkeys((whole, whole.replace(" ", ""), whole.split("x")[0].split()[0])))
        if size.is_thread
        else (whole,)
    )


def _distance(word: str, whole: str, begun: str, rest: str, head: str, names: str, notes: str) -> int:
    """How far away a word is in one table of the book.

    Args:
        word: as typed.
        whole: the word with blanks round it.
        begun: the word with a blank before it.
        rest: the word without a last s.
        head: title and id.
        names: what else it is called.
        notes: what is told of it.
    """
    if word in head:
        return 0 if whole in head else 1 if begun in head else 2
    if word in names:
        return 3 if whole in names else 4
    if rest in notes:
        return 5 if whole in notes else 6
    return ABSENT


def _named(words: Sequence[str], those: Sequence[Parts]) -> str:
    """The longest run of words by which a family or a material is called in full, as drill in drill brass; else all."""
    for count in range(len(words), 0, -1):
        for at in range(len(words) - count + 1):
            run = " ".join(words[at : at + count])
            if any(_called(run, one) == 0 for one in those):
                return run
    return " ".join(words)


def _called(phrase: str, one: Parts) -> int:
    """Whether a family or a material is called by a phrase: 0 in full, 1 where a name of it begins so, else 2."""
    names = one.head + one.names
    if any(f"{BETWEEN} {one} {BETWEEN}" in names for one in (phrase, _singular(phrase))):
        return 0
    return 1 if f"{BETWEEN} {phrase}" in names else 2
