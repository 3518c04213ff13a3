"""Complaints that offer ways out, of which only those are told that were tried and help.

A complaint is made with all its ways; ``settled`` computes again with each of them, as it would be shown, and
leaves out those after which the same complaint would still stand.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass, replace
from typing import Any, Literal

from geometry.calculation import Check, Cure, Inputs, Result
from geometry.cures import Way, advise, either, that_help
from geometry.sentences import Amount, Sentence

_TRIES: ContextVar[bool] = ContextVar("tries", default=True)

_ON_TRIAL: ContextVar[bool] = ContextVar("on_trial", default=False)
"""Whether advice is being tried: what else the changed inputs would be told is not wanted then."""


@dataclass(frozen=True)
class Complaint(Check):
    """A watch or a stop whose advice is still to be tried.

    Attributes:
        says: what is wrong, without the advice.
        ways: what may be advised, the best first.
        always: advice that changes no input, such as a second facet; it stands behind the ways.
        parts: the amounts of ``says``.
    """

    says: str = ""
    ways: tuple[Way, ...] = ()
    always: tuple[str, ...] = ()
    parts: tuple[tuple[str, Amount | str], ...] = ()


def complaint(
    state: Literal["watch", "stop"],
    says: str,
    ways: Sequence[Way] = (),
    always: Any = (),
    **parts: Amount | str,
) -> Complaint:
    """A complaint with all its ways out.

    Args:
        state: the verdict.
        says: what is wrong, as a template; its first sentence is what the complaint is known by.
        ways: what may be advised, the best first.
        always: advice that changes no input, as words; typed loosely, because the amounts often come as one dict.
        parts: the amounts of ``says``.

    Example:
        >>> from geometry.cures import way
        >>> from geometry.sentences import length
        >>> found = complaint("stop", "It rubs.", [way("narrow it to {most}", "land_width", "most", length(2.0))])
        >>> str(found.sentence), found.cure
        ('It rubs. Narrow it to 2 mm.', (('land_width', 2.0),))
    """
    if _ON_TRIAL.get():
        return Complaint(state, Sentence(says, parts))
    cure: Cure = ()
    words, amounts = tuple(always), dict(parts)
    if ways:
        found = advise(ways)
        words, amounts, cure = (*found.words, *always), parts | found.parts, found.cure
    told = f"{says} {either(words)}" if words else says
    return Complaint(
        state, Sentence(told, amounts), cure, says, tuple(ways), tuple(always), tuple(parts.items())
    )


@contextmanager
def untried() -> Iterator[None]:
    """Compute without trying advice, where only the numbers are wanted, as in a search or a sampling.

    Example:
        >>> with untried():
        ...     is_tried()
        False
    """
    token = _TRIES.set(False)
    try:
        yield
    finally:
        _TRIES.reset(token)


def is_tried() -> bool:
    """Whether advice is tried where this is asked.

    Example:
        >>> with untried():
        ...     is_tried()
        False
    """
    return _TRIES.get()


def told_of_advice() -> tuple[bool, bool]:
    """Whether advice is tried where this is asked, and whether it is being tried there: what else a result follows from.

    Example:
        >>> told_of_advice()
        (True, False)
    """
    return _TRIES.get(), _ON_TRIAL.get()


Trial = Callable[[Inputs, Check], Iterable[Check]]
"""The checks of other inputs among which a complaint would stand again, and nothing else that is computed.

It refuses what the calculation refuses.
"""


def settled(found: Result, given: Inputs, trial: Trial) -> Result:
    """A result of which each complaint keeps only the ways that help.

    Args:
        found: the result, whose complaints hold all their ways.
        given: the inputs that it was computed from.
        trial: the checks alone of other inputs, which are all that a trial looks at.
    """
    if not is_tried() or not any(isinstance(check, Complaint) and check.ways for check in found.checks):
        return found
    return replace(found, checks=tuple(_tried(check, trial, given) for check in found.checks))


def _tried(check: Check, trial: Trial, given: Inputs) -> Check:
    if not isinstance(check, Complaint) or not check.ways:
        return check
    wrong = known_by(check)

    def mends(other: Inputs) -> bool:
        return all(known_by(one) != wrong for one in trial(other, check) if one.state in {"watch", "stop"})

    token = _ON_TRIAL.set(True)
    try:
        helping = that_help(check.ways, given, mends)
    finally:
        _ON_TRIAL.reset(token)
    if helping == check.ways:
        return check
    return complaint(check.state, check.says, helping, check.always, **dict(check.parts))  # type: ignore[arg-type]


def known_by(check: Check) -> str:
    """What a check finds wrong: its first sentence, whatever it then advises."""
    return check.sentence.template.split(". ")[0].rstrip(".")
