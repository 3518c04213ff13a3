"""Complaints that offer ways out, of which only those are told that were tried and help.

A complaint is made with all its ways; ``settled`` computes again with each of them, as it would be shown, and
leaves out those after which the same complaint would still stand.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass, replace
from typing import Any, Literal

from geometry.calculation import Check, Cure, Inputs, Result
from geometry.cures import Way, advise, either, that_help
from geometry.sentences import Amount, Sentence


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
    cure: Cure = ()
    words, amounts = tuple(always), dict(parts)
    if ways:
        found = advise(ways)
        words, amounts, cure = (*found.words, *always), parts | found.parts, found.cure
    told = f"{says} {either(words)}" if words else says
    return Complaint(
        state, Sentence(told, amounts), cure, says, tuple(ways), tuple(always), tuple(parts.items())
    )


_TRIES: ContextVar[bool] = ContextVar("tries", default=True)


@contextmanager
def untried() -> Iterator[None]:
    """Compute without trying advice, where only the numbers are wanted, as in a search or a sampling.

    Example:
        >>> with untried():
        ...     _TRIES.get()
        False
    """
    token = _TRIES.set(False)
    try:
        yield
    finally:
        _TRIES.reset(token)


def settled(raw: Callable[[Inputs], Result], given: Inputs) -> Result:
    """Compute, and keep of each complaint only the ways that help.

    Args:
        raw: the calculation, whose complaints hold all their ways.
        given: its inputs.
    """
    found = raw(given)
    if not _TRIES.get():
        return found
    checks = tuple(_tried(check, raw, given) for check in found.checks)
    return replace(found, checks=checks)


def _tried(check: Check, raw: Callable[[Inputs], Result], given: Inputs) -> Check:
    if not isinstance(check, Complaint) or not check.ways:
        return check

    def mends(other: Inputs) -> bool:
        return all(
            known_by(one) != known_by(check) for one in raw(other).checks if one.state in {"watch", "stop"}
        )

    helping = that_help(check.ways, given, mends)
    return complaint(check.state, check.says, helping, check.always, **dict(check.parts))  # type: ignore[arg-type]


def known_by(check: Check) -> str:
    """What a check finds wrong: its first sentence, whatever it then advises."""
    return check.sentence.template.split(". ")[0].rstrip(".")
