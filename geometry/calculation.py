"""The model of a calculation: its inputs, its outputs, its pure function and its role, written down as data.

Its inputs and outputs are quantities of the vocabulary, its computation is a pure function, and its
checks are sentences. The calculator, the command line and the job card all find it by itself.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, Literal, overload

from geometry.figure import Figure
from geometry.role import NO_ROLE, Role
from geometry.sentences import Amount, Sentence
from geometry.side_view import SideView

Number = float | tuple[float, ...]
Given = Number | str
"""What a calculation is handed for one input: a number, several, or a chosen word."""

State = Literal["pass", "watch", "stop", "note"]
"""A verdict on a condition that was tested; a note is a fact or an instruction and carries none."""


@dataclass(frozen=True)
class Field:
    """One input of a calculation.

    Attributes:
        key: the quantity asked for.
        default: used when neither the person nor the entry gives it (mm, rad, or a word).
        optional: true when the calculation answers without it.
        one_of: inputs that share this name are alternatives, and exactly one of them is wanted.
        when: the input is asked for only where the input ``when[0]`` is one of the words after it.
        many: true when several values may be given, such as the diameters of a step drill.
        fill_from: other quantities of an entry that may fill this input, tried in this order after
            the input's own key: a drill's lip relief is the relief angle of its lip.
        measured: true for what is read off the tool in hand, which no entry may fill.
        wanted: true for what the answer shall come up to, where the same quantity is found and measured too.
        offered_from: the quantity of an entry whose range is offered for an input that nobody gave, and fills nothing by
            itself: what another calculation answers with it would else be answered here a second time.
        end_of: another input, and which end of its range in an entry fills this one: ``low`` or ``high``.
    """

    key: str
    default: float | str | None = None
    optional: bool = False
    one_of: str = ""
    when: tuple[str, ...] = ()
    many: bool = False
    fill_from: tuple[str, ...] = ()
    measured: bool = False
    wanted: bool = False
    offered_from: str = ""
    end_of: tuple[str, Literal["low", "high"]] | None = None


class Inputs:
    """The values of one computation, by quantity key, with the type that is expected of each.

    Args:
        values: by quantity key.
        presumed: the keys of those that nobody gave, and that stand there as the calculation's own default.
    """

    def __init__(self, values: Mapping[str, Given], presumed: Collection[str] = ()) -> None:
        self._values = values
        self._presumed = frozenset(presumed)

    def has(self, key: str) -> bool:
        """Whether a value was given for ``key``."""
        return key in self._values

    def is_presumed(self, key: str) -> bool:
        """Whether nobody gave a value for ``key``, so that the default stands there.

        Example:
            >>> given = Inputs({"hole_tolerance": "H7"}, presumed=["hole_tolerance"])
            >>> given.is_presumed("hole_tolerance"), given.but({"hole_tolerance": "H7"}).is_presumed("hole_tolerance")
            (True, False)
        """
        return key in self._presumed

    def number(self, key: str) -> float:
        """The one number given for ``key``, in mm, radians, mm/s, rad/s or as a count."""
        value = self._values[key]
        if isinstance(value, str):
            raise TypeError(f"{key} is a word, not a number")
        return value[0] if isinstance(value, tuple) else value

    def number_or(self, key: str, otherwise: float) -> float:
        """The number given for ``key``, or ``otherwise`` where none was."""
        return self.number(key) if self.has(key) else otherwise

    def numbers(self, key: str) -> tuple[float, ...]:
        """All numbers given for ``key``, in the order given."""
        value = self._values[key]
        if isinstance(value, str):
            raise TypeError(f"{key} is a word, not a number")
        return value if isinstance(value, tuple) else (value,)

    def but(self, changes: Mapping[str, Given | None]) -> Inputs:
        """The same inputs with some of them changed, or left out where the change is nothing.

        Example:
            >>> Inputs({"diameter": 12.0, "pitch": 1.5}).but({"diameter": 10.0, "pitch": None}).number("diameter")
            10.0
        """
        values = dict(self._values)
        for key, value in changes.items():
            if value is None:
                values.pop(key, None)
            else:
                values[key] = value
        return Inputs(values, self._presumed - changes.keys())

    def choice(self, key: str) -> str:
        """The word given for ``key``."""
        value = self._values[key]
        if not isinstance(value, str):
            raise TypeError(f"{key} is a number, not a word")
        return value


@dataclass(frozen=True)
class Station:
    """One place between edge and heel where the indicator is read.

    Attributes:
        fraction: how far along the land, 0 at the edge and 1 at the heel.
        angle: how far the tool is turned from the edge, in radians.
        readings: what the indicator shows there, by quantity key.
    """

    fraction: float
    angle: float
    readings: Mapping[str, float]


Cure = tuple[tuple[str, Given | None], ...]
"""What to put into which input instead: each pair cures by itself, with all else as it is; nothing empties an input."""


class Together(tuple[tuple[str, Given | None], ...]):
    """A cure of several inputs that helps only when all of them are changed.

    Example:
        >>> Together((("primary_land", 1.2), ("relief_angle", 0.2)))[1]
        ('relief_angle', 0.2)
    """


@dataclass(frozen=True)
class Check:
    """What the result means at the machine: all well, look out, do not grind this, or a note without a verdict.

    Attributes:
        state: the verdict, or that there is none.
        sentence: what is so and what to do.
        cure: what the sentence advises, by quantity key, in the values that its amounts come from. Each pair
            removes the complaint by itself with all other inputs as they are; of ``Together`` all pairs at once.
    """

    state: State
    sentence: Sentence
    cure: Cure = ()


def passed(template: str, **parts: Amount | str) -> Check:
    """A check that tested a condition and found nothing wrong."""
    return Check("pass", Sentence(template, parts))


def note(template: str, **parts: Amount | str) -> Check:
    """A fact or an instruction beside the numbers: nothing was tested, so it carries no verdict."""
    return Check("note", Sentence(template, parts))


@overload
def watch(template: str, **parts: Amount | str) -> Check: ...


@overload
def watch(template: str, *, cure: Cure, **parts: Amount | str) -> Check: ...


def watch(template: str, *, cure: Any = (), **parts: Amount | str) -> Check:
    """A check that found something to look out for, and the inputs that cure it."""
    return Check("watch", Sentence(template, parts), cure)


@overload
def stop(template: str, **parts: Amount | str) -> Check: ...


@overload
def stop(template: str, *, cure: Cure, **parts: Amount | str) -> Check: ...


def stop(template: str, *, cure: Any = (), **parts: Amount | str) -> Check:
    """A check that found something that must be changed before grinding, and the inputs that cure it.

    Example:
        >>> from geometry.sentences import length
        >>> found = stop("Narrow the land to {widest}.", widest=length(1.5), cure=(("land_width", 1.5),))
        >>> str(found.sentence), found.cure
        ('Narrow the land to 1.5 mm.', (('land_width', 1.5),))
    """
    return Check("stop", Sentence(template, parts), cure)


_WORST_FIRST: tuple[State, ...] = ("stop", "watch", "pass", "note")


def worst_first(checks: Iterable[Check]) -> tuple[Check, ...]:
    """The checks with the stops first, then the watches; those of one verdict keep their order.

    Example:
        >>> [check.state for check in worst_first((note("A."), passed("B."), stop("C."), watch("D.")))]
        ['stop', 'watch', 'pass', 'note']
    """
    return tuple(sorted(checks, key=lambda check: _WORST_FIRST.index(check.state)))


@dataclass(frozen=True)
class Row:
    """One line of a table in a result, such as one step of a step drill.

    Attributes:
        label: what the line is about, in words.
        values: the numbers in it, by quantity key.
    """

    label: str
    values: Mapping[str, float]


@dataclass(frozen=True)
class Result:
    """What one computation found.

    Attributes:
        outputs: one number for each answered quantity.
        stations: the indicator readings on the way from edge to heel, where there is a way.
        rows: a table, where the answer is one: a line for each step, facet or place.
        checks: what the numbers mean at the machine.
        figure: the tooth to draw beside them.
        side: the tool seen from the side, to draw beside them.
        named: outputs of which more is to be said than their quantity says, such as at which step and in which view; the
            place and the view stand behind a comma each.
        heads: the same for the columns of the table.
        profile: what the indicator reads (mm) at an angle (rad) behind the edge, where the same surface may end nearer on
            another tooth; nothing where such a tooth is computed anew.
    """

    outputs: Mapping[str, float]
    stations: Sequence[Station] = ()
    rows: Sequence[Row] = ()
    checks: Sequence[Check] = ()
    figure: Figure | None = None
    side: SideView | None = None
    named: Mapping[str, str] = field(default_factory=dict)
    heads: Mapping[str, str] = field(default_factory=dict)
    profile: Callable[[float], float] | None = field(default=None, compare=False, repr=False)


@dataclass(frozen=True, eq=False)
class Calculation:
    """One calculation.

    Attributes:
        name: as typed on the command line, such as ``relief-drop``.
        title: as shown on a screen.
        question: the question it answers, in one sentence.
        wants: which diameter and which measure of the land it wants.
        neglects: where it holds and what it leaves out.
        kinds: the kinds of tool that it serves (see ``geometry.kinds``), those whose main job it is first.
        inputs: what it asks for, in the order in which a person measures.
        outputs: the quantities it may answer, most wanted first.
        cautions: keys of the cautions that belong beside the result.
        cautions_before: keys of those of what is done before a job begins, such as taking a wheel off the shelf: they stand
            where it is asked by itself, and on no card.
        compute: the pure function behind it.
        surfaces: the relieved surfaces that it serves, the one that is mostly meant first; empty where it asks for none
            or the family says which comes first. One that works always on the same needs no input ``surface``.
        methods: the words of ``relief_method`` whose jobs it belongs to; empty where it belongs to every job.
        role: its part in a whole job.
        sample: ordinary values for its inputs (mm, radians, mm/s, rad/s), of a job that could lie on the bench. Tests and
            the script that times go through all calculations by them.
        belongs_on: the surfaces of which a tool of no known kind has one to be served; empty where they are those of
            ``surfaces``, and any tool will do where that is empty too.
        beside: whether it stands beside the main jobs of its kinds, after which it comes.
        agree: looks whether inputs fit one another, such as lists that go by the same steps, and raises ``GeometryError``
            where they do not. It is asked as soon as they are there, with those alone that were given and make sense.
    """

    name: str
    title: str
    question: str
    wants: str
    neglects: str
    kinds: tuple[str, ...]
    inputs: tuple[Field, ...]
    outputs: tuple[str, ...]
    cautions: tuple[str, ...]
    compute: Callable[[Inputs], Result]
    surfaces: tuple[str, ...] = ()
    methods: tuple[str, ...] = ()
    role: Role = NO_ROLE
    sample: Mapping[str, Given] = field(default_factory=dict)
    belongs_on: tuple[str, ...] = ()
    beside: bool = False
    cautions_before: tuple[str, ...] = ()
    agree: Callable[[Inputs], object] | None = None

    def field(self, key: str) -> Field | None:
        """The input for ``key``, or nothing when the calculation does not ask for it."""
        return self._by_key.get(key)

    @cached_property
    def _by_key(self) -> Mapping[str, Field]:
        return {one.key: one for one in reversed(self.inputs)}


AT_THE_WHEEL = ("wheel-rating", "ring-test", "eyes", "hands", "guard-and-rest", "burning", "dust")
"""Keys of the cautions that belong beside every setting for grinding."""

QUARTERS = (0.0, 0.25, 0.5, 0.75, 1.0)
"""Where the indicator is read on the way: edge, quarters and heel."""


def stations(land_angle: float, readings: Mapping[str, Callable[[float], float]]) -> tuple[Station, ...]:
    """Indicator readings at edge, quarters and heel.

    Args:
        land_angle: from edge to heel, in radians.
        readings: for each quantity, its value at an angle (radians) behind the edge.

    Returns:
        Five stations, the first at the edge.

    Example:
        >>> [s.readings["drop"] for s in stations(0.4, {"drop": lambda angle: 2 * angle})]
        [0.0, 0.2, 0.4, 0.6000000000000001, 0.8]
    """
    return tuple(
        Station(fraction, fraction * land_angle, {k: f(fraction * land_angle) for k, f in readings.items()})
        for fraction in QUARTERS
    )


def is_number(value: Given) -> bool:
    """Whether an input is made of finite numbers, not a word."""
    if isinstance(value, str):
        return False
    return all(math.isfinite(one) for one in (value if isinstance(value, tuple) else (value,)))
