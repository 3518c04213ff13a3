"""The worst verdict of a calculation, which stands before every number; or what is still to be given or put right."""

from __future__ import annotations

import re

from geometry.calculation import Check
from geometry.quantities import QUANTITIES
from library.calc.answer import Answer
from library.pages.answer import WORST_FIRST, wanted
from library.units.show import say
from library.units.system import Display
from tui.view.lines import Line, Piece, Role, fit, line, text_of, wrap

MOST = 3
"""Lines that a verdict takes; what is longer stands whole among the other checks."""

_KEY = re.compile(r"\b[a-z]+(?:_[a-z]+)+\b")

_ROLES: dict[str, Role] = {"stop": "stop", "watch": "watch", "pass": "pass"}

_WIDEST = " WATCH "


def worst(answer: Answer) -> Check | None:
    """The check that is told first; nothing where there is no answer, or only notes."""
    found = [one for one in answer.result.checks if one.state != "note"] if answer.result is not None else []
    return min(found, key=lambda one: WORST_FIRST.index(one.state), default=None)


def verdict(answer: Answer | None, display: Display, width: int, most: int = MOST) -> tuple[list[Line], bool]:
    """The lines of the verdict, and whether all of it was told.

    Args:
        answer: of the calculation; nothing before the first one.
        display: the units of the sentences.
        width: in cells.
        most: lines that it may take.
    """
    if answer is None:
        return [], True
    if answer.result is None:
        return _open(answer, width, most)
    told = worst(answer)
    if told is None:
        return [], True
    others = sum(1 for one in answer.result.checks if one.state in {"stop", "watch"} and one is not told)
    more = f" [{others} more below]" if others else ""
    return _behind(told.state, say(told.sentence, display), more, width, most)


def in_words(text: str) -> str:
    """A sentence that names quantities by key, as the fields name them."""
    said = _KEY.sub(lambda key: QUANTITIES[key[0]].title.lower() if key[0] in QUANTITIES else key[0], text)
    return said[:1].upper() + said[1:]


def _open(answer: Answer, width: int, most: int) -> tuple[list[Line], bool]:
    """What is wrong comes before what is missing."""
    missing = wanted(answer)
    wrong = [one.text for one in answer.issues if not one.missing]
    if wrong:
        more = f" [{len(wrong) - 1} more below]" if wrong[1:] else ""
        return _behind("fix", in_words(wrong[0]), more, width, most)
    return _behind("open", " ".join(missing.texts) if missing is not None else "", "", width, most)


def _behind(state: str, text: str, more: str, width: int, most: int) -> tuple[list[Line], bool]:
    word, hang = f" {state.upper()} ", " " * (len(_WIDEST) + 1)
    room = max(width - len(hang) - len(more), 12)
    lines = wrap(text, room)
    whole = len(lines) <= most
    if not whole:
        lines = [*lines[: most - 1], line(Piece(f"{fit(text_of(lines[most - 1]), room - 1).rstrip()}…"))]
    role = _ROLES.get(state, "strong")
    first = line(Piece(word, role), " " * (len(hang) - len(word)), *(lines[0] if lines else ()))
    told = [first, *(line(hang, *one) for one in lines[1:])]
    return [*told[:-1], (*told[-1], Piece(more, "quiet"))] if more else told, whole
