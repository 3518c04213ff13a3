"""The row model of a job card: what a line shows, takes and still wants."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from library.calc.wording import spoken

QUANTITY_SECTIONS = frozenset({"received", "wanted", "after"})
"""The parts of a card that have a line for each quantity."""

WANTS_INPUT = "needs input"
"""How a calculation stands that has no answer yet, as nothing is wrong but something is still to be given."""

TO_FILL_IN = "________"
"""Stands where something is still wanted."""


MOST_WORDS = 3
"""Choices that a hint names; more of them are listed by their key."""


def to_turn(words: Sequence[str]) -> str:
    """How one of several words is brought into a line; an action in braces stands for its key.

    Where two begin with the same letter, the letter is named that goes on from one to the other.

    Example:
        >>> to_turn(("chord", "arc"))
        'chord or arc by Left, Right or the first letter; {change} lists them.'
        >>> to_turn(("cam", "tilt", "work-head", "wheel-head"))
        'Left, Right or the first letter (w again: the next with w) change it; {change} lists them.'
    """
    letters = [one[:1] for one in words]
    shared = next((one for one in letters if letters.count(one) > 1), "")
    again = f" ({shared} again: the next with {shared})" if shared else ""
    keys = f"Left, Right or the first letter{again}"
    if len(words) > MOST_WORDS:
        return f"{keys} change it; {{change}} lists them."
    return f"{' or '.join(words)} by {keys}; {{change}} lists them."


@dataclass(frozen=True)
class Told:
    """One thing that is set or comes out, in the columns of a table.

    Attributes:
        title: what it is.
        value: the number with its unit.
        divisions: the same in the divisions of the machine.
        note: what the rounding moves, or how it stands.
        is_set: whether a hand sets it.
        is_text: whether it is sentences on what stands above, which take the whole width.
    """

    title: str
    value: str = ""
    divisions: str = ""
    note: str = ""
    is_set: bool = False
    is_text: bool = False


@dataclass(frozen=True)
class Row:
    """One line.

    Attributes:
        way: to its text on the card, as ``library.cards.editing`` takes it; with ``#2`` behind it, to the third line
            of a text of several lines.
        label: stands before it.
        text: what the card has.
        default: what holds while the card has nothing, shown in its place.
        giver: who gave the default, in a word.
        hint: what belongs there, shown while the line is in hand; an action in braces stands for its key.
        choices: the words to pick from with Left and Right, where there are only these.
        offers: texts that Left and Right bring into the empty line; anything else may be typed.
        said: how a choice is shown, where that is not the word itself.
        below: quiet lines under it.
        told: of a calculation, what is set by it and what comes out, for a screen that has room for columns.
        wants: whether Enter stops here, because something belongs here and is not there yet.
        heading: whether it stands over others, its text at the right.
        overtype: whether what stands there gives way to the first character typed, as all but free text does.
        is_text: whether a question mark may be a part of it.
        wide: whether it is a line of free text, which takes the whole width under its label.
    """

    way: str
    label: str
    text: str = ""
    default: str = ""
    giver: str = ""
    hint: str = ""
    choices: tuple[str, ...] = ()
    offers: tuple[str, ...] = ()
    said: Mapping[str, str] = field(default_factory=dict)
    below: tuple[str, ...] = ()
    told: tuple[Told, ...] = ()
    wants: bool = False
    heading: bool = False
    overtype: bool = True
    is_text: bool = False
    wide: bool = False

    @property
    def section(self) -> str:
        """The part of the card that it belongs to."""
        return self.way.partition(".")[0].partition("#")[0]

    @property
    def key(self) -> str:
        """The quantity or calculation that it is about; empty where it is about none."""
        return self.way.split(".")[1] if "." in self.way and not self.way.startswith("tool.") else ""

    @property
    def quantity(self) -> str:
        """The quantity that stands in it; empty where it holds none."""
        if self.section == "settings":
            return self.way.partition(f"{self.key}.")[2]
        return self.key if self.section in QUANTITY_SECTIONS else ""

    @property
    def is_missing(self) -> bool:
        """Whether something belongs here: Enter stops too at the line behind the last one of a text, which needs none."""
        return self.wants and self.way.rpartition("#")[2] in {self.way, "0"}

    def words(self, text: str) -> str:
        """A text of this line as it is shown."""
        return self.said.get(text, spoken(text) if self.choices else text)


@dataclass
class Opened:
    """What stands on a card beyond what is always shown, because a person opened it or wrote in it.

    Attributes:
        lines: keys that have a line, by section; for the settings by calculation.
        seen: calculations that stood among the settings; they stay, also when they are left out or come to rest.
        calculations: those of which every field is shown.
        results: how a job may have ended, as far as the shop knows; empty for the usual ones.
    """

    lines: dict[str, dict[str, None]] = field(default_factory=dict)
    seen: set[str] = field(default_factory=set)
    calculations: set[str] = field(default_factory=set)
    results: tuple[str, ...] = ()

    def of(self, section: str) -> tuple[str, ...]:
        """The keys that have a line in a section, in the order in which they came."""
        return tuple(self.lines.get(section, ()))

    def open(self, section: str, key: str) -> None:
        """Give a key a line."""
        self.lines.setdefault(section, {})[key] = None

    def turn(self, calculation: str) -> None:
        """Show every field of a calculation, or again only those that matter."""
        self.calculations ^= {calculation}
        self.lines.pop(calculation, None)

    def keep(self, rows: Iterable[Row]) -> None:
        """Let the lines that there are stay where they are, also when they are emptied."""
        for row in rows:
            section, *keys = row.way.split(".")
            if section in QUANTITY_SECTIONS and keys:
                self.open(section, keys[0])
            elif section == "settings":
                self.seen.add(keys[0])
                if len(keys) > 1 and keys[0] not in self.calculations:
                    self.open(keys[0], keys[1])
