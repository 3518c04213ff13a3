"""Find what the book tells of the work by the words that a person types: ``wheel``, ``infeed reamer``, ``chatters``.

A word of the work, such as coolant, says which lines are wanted; all other words say of which tool, and have to stand in the
names of what is found.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from library.book.model import Book
from library.book.search_text import plain, words_of
from library.book.tool_materials import TOOL_MATERIALS
from library.book.word_forms import SAYS_NOTHING
from library.equipment.abrasives import ABRASIVES
from library.guidance.model import (
    OPERATIONS,
    STEPS,
    WHEEL_LINES,
    RecommendedWheel,
    Setup,
    Symptom,
    recommended_wheels,
    setups,
    symptoms,
)
from library.guidance.setups import whole as whole_setup
from library.guidance.told import Told
from library.guidance.troubles import meant_by, symptoms_of
from library.guidance.wheels import Ground, recommended_for
from library.guidance.wheels import whole as whole_wheel

OF_A_SETUP: Mapping[str, tuple[str, ...]] = {
    "hold": ("holding", "collet", "centres"),
    "true": ("run out", "runout", "truing"),
    "set": ("set up", "setup"),
    "feed": ("infeed", "roughing", "finishing", "spark out", "sparkout"),
    "coolant": ("coolant", "flood"),
    "dress": ("dress", "dressing", "dresser"),
    "read": ("indicator",),
}
"""Words by which the steps of set-ups are asked for."""

OF_A_WHEEL: Mapping[str, tuple[str, ...]] = {
    "abrasive": ("abrasive", "diamond", "cbn", "boron nitride", "silicon carbide", "aluminium oxide"),
    "grit": ("grit", "mesh"),
    "grade": ("grade",),
    "bond": ("bond", "vitrified", "resin"),
    "infeed": ("infeed",),
    "coolant": ("coolant", "flood"),
    "dress": ("dress", "dressing", "dresser"),
}
"""Words by which lines of recommended wheels are asked for."""

WHEEL = ("wheel", "wheels", "recommended wheel")
"""Words by which the wheels themselves are asked for."""


@dataclass(frozen=True)
class Line:
    """One line that was asked for.

    Attributes:
        table: the id of what it belongs to.
        title: of that.
        key: which line of it.
        told: the line.
    """

    table: str
    title: str
    key: str
    told: Told


@dataclass(frozen=True)
class Guidance:
    """What was found of the work.

    Attributes:
        wheels: recommended wheels, whole.
        lines: lines of set-ups and of wheels, those of the same words once.
        symptoms: of the trouble that the words are for.
        for_family: whether the words name the tool too.
    """

    wheels: tuple[RecommendedWheel, ...] = ()
    lines: tuple[Line, ...] = ()
    symptoms: tuple[Symptom, ...] = ()
    for_family: bool = False

    def __bool__(self) -> bool:
        """Whether anything was found."""
        return bool(self.wheels or self.lines or self.symptoms)


def guidance(book: Book, words: Sequence[str]) -> Guidance:
    """What the book tells of the work, as far as words ask for it.

    Args:
        book: has it.
        words: as typed, each a word; nothing is found where none is a word of the work.
    """
    text = f" {' '.join(word for word in plain(' '.join(words)).split() if word not in SAYS_NOTHING)} "
    steps, text_of_steps = _asked(OF_A_SETUP, text)
    marks, text_of_marks = _asked(OF_A_WHEEL, text)
    wheel, rest = _without(WHEEL, text_of_marks)
    lines = [one for setup in _setups(book, text_of_steps) for one in _lines(setup, steps)] if steps else []
    wheels = _wheels(book, rest) if wheel or marks else ()
    if not wheels and not lines and (wheel or marks):
        wheels = _wheels_of_a_family(book, rest)
    if marks and not wheel:
        lines += [one for found in wheels for one in _lines(found, marks)]
    family, trouble = _family_named(book, text)
    seen = symptoms_of(book, family) if family else tuple(symptoms(book).values())
    return Guidance(wheels if wheel or not lines else (), _once(lines), meant_by(trouble, seen), bool(family))


def _family_named(book: Book, text: str) -> tuple[str, list[str]]:
    """The family that a text names by the longest of its names, with the words that are left; nothing where it names none."""
    named = [
        (form, family.id)
        for family in book.families.values()
        for name in (family.title, family.id, *family.synonyms)
        for form in (plain(name), plain(name).removesuffix("s"))
        if f" {form} " in text
    ]
    if not named:
        return "", text.split()
    form, family = max(named, key=lambda one: len(one[0]))
    return family, text.replace(f" {form} ", " ").split()


def _asked(topics: Mapping[str, tuple[str, ...]], text: str) -> tuple[list[str], str]:
    """The lines that a text asks for, and the text without the words that do."""
    keys = []
    for key, words in topics.items():
        asked, text = _without(words, text)
        if asked:
            keys.append(key)
    return keys, text


def _without(words: Iterable[str], text: str) -> tuple[bool, str]:
    found = [word for word in words if f" {word} " in text]
    for word in found:
        text = text.replace(f" {word} ", " ")
    return bool(found), text


def _wheels(book: Book, text: str) -> tuple[RecommendedWheel, ...]:
    known = (one for one in recommended_wheels(book).values() if one.tool_materials)
    return tuple(whole_wheel(book, one) for one in known if _holds(_names_of_wheel(one), text))


def _wheels_of_a_family(book: Book, text: str) -> tuple[RecommendedWheel, ...]:
    """The wheels for what is ground on the tools of the family that a text names; none where it names none."""
    name, rest = _family_named(book, text)
    family = book.families.get(name)
    if family is None:
        return ()
    ground_on = dict.fromkeys(
        (
            *family.surfaces,
            *(one.surface for one in setups(book).values() if one.family == name and one.surface),
        )
    )
    grounds = [Ground(family.tool_material, surface) for surface in ground_on]
    found = {one.id: one for ground in grounds for one in recommended_for(book, ground)}
    left = " ".join(rest)
    return tuple(one for one in found.values() if _holds(_names_of_wheel(one), left))


def _names_of_wheel(wheel: RecommendedWheel) -> str:
    names = (
        wheel.title,
        *wheel.synonyms,
        *(TOOL_MATERIALS[one] for one in wheel.tool_materials),
        *wheel.tool_materials,
        *(OPERATIONS[one] for one in wheel.operations),
        *(ABRASIVES[one] for one in wheel.abrasives),
        *wheel.shapes,
    )
    return plain(" ".join(names))


def _setups(book: Book, text: str) -> list[Setup]:
    found = []
    for one in setups(book).values():
        family = book.families.get(one.family)
        if family is not None:
            names = plain(" ".join((one.title, *one.synonyms, family.title, family.id, *family.synonyms)))
            if _holds(names, text):
                found.append(whole_setup(book, one))
    return found


def _holds(names: str, text: str) -> bool:
    """Whether each word of a text begins a word of the names; one that ends in s also without it."""
    begun = f" {names}"
    return all(f" {word}" in begun or f" {word.removesuffix('s')}" in begun for word in words_of(text))


def _lines(found: Setup | RecommendedWheel, keys: Iterable[str]) -> list[Line]:
    return [Line(found.id, found.title, key, found.lines[key]) for key in keys if key in found.lines]


def _once(lines: Iterable[Line]) -> tuple[Line, ...]:
    """Of lines with the same words the first, which then stands for all of them."""
    found: dict[str, Line] = {}
    for one in lines:
        found.setdefault(one.told.text, one)
    return tuple(found.values())


WORD_OF_LINE = {**STEPS, **WHEEL_LINES}
"""What each line is called."""
