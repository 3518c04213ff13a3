"""Tables of the book that are no entries, each as a page to be read: troubles, set-ups, wheels, machines, threads."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import replace

from geometry.quantities import QUANTITIES
from library.book.model import Book, Caution, Family
from library.book.tool_materials import TOOL_MATERIALS
from library.calc.cautions import cautions_of_families
from library.calc.citation import cited
from library.equipment.abrasives import ABRASIVES
from library.guidance.model import (
    OPERATIONS,
    STEPS,
    WAYS,
    WHEEL_LINES,
    Symptom,
    recommended_wheels,
    setups,
    symptoms,
    unsuited_wheels,
)
from library.guidance.setups import whole as whole_setup
from library.guidance.told import Convert, Told
from library.guidance.troubles import all_symptoms_of, symptoms_of
from library.guidance.wheels import whole as whole_wheel
from library.pages.own_equipment import machine_parts, thread_parts, wheel_parts
from library.pages.page import Labelled, Page, Said, Section

Parts = Iterable[tuple[str, str]]
"""Labels with their texts; one without a text is left out."""

Maker = Callable[[Book, str, Convert | None], Page | None]
"""Makes the page of a table, without what is said of every one."""

FAILS = "fails"
"""The text of a family that tells how its tools fail."""

_OF_WHEELS = ("recommended_wheel", "unsuited_wheel", "wheel")


def own_table_page(book: Book, array: str, name: str, convert: Convert | None = None) -> Page | None:
    """One table of the book as a page; nothing where the book has no such table.

    Args:
        book: has it.
        array: its kind, such as ``symptom``; ``family`` for how the tools of one fail.
        name: its id.
        convert: writes lengths in the unit that is worked in, once units are loaded.

    Example:
        >>> own_table_page(Book({}), "symptom", "no-such-trouble") is None
        True
    """
    page = _MAKERS[array](book, name, convert)
    return replace(page, sections=(*page.sections, _about(book, array, name))) if page is not None else None


def cautions_of_table(book: Book, array: str, name: str) -> tuple[Caution, ...]:
    """What can hurt whoever does what a table tells; nothing where it tells of no grinding, as that of a thread.

    Args:
        book: has it.
        array: its kind.
        name: its id.
    """
    if array == "family":
        return cautions_of_families((name,), book)
    if array == "symptom":
        one = symptoms(book).get(name)
        return cautions_of_families(one.families if one is not None else (), book)
    if array == "setup":
        setup = setups(book).get(name)
        return cautions_of_families((setup.family,) if setup is not None else (), book)
    return cautions_of_families((), book) if array in _OF_WHEELS else ()


def carriers(book: Book, one: Symptom) -> tuple[Family, ...]:
    """The families whose tools have a trouble: their own, that of their kin, or one of every tool."""
    return tuple(family for family in book.families.values() if one in all_symptoms_of(book, family.id))


def _labelled(parts: Parts, title: str = "") -> Section:
    told = tuple((label, text) for label, text in parts if text)
    return Section(title, (Labelled(told),) if told else ())


def _about(book: Book, array: str, name: str) -> Section:
    one = book.families.get(name) if array == "family" else book.more.get(array, {}).get(name)
    whose = {"shop": "the shop's own", "shipped": "shipped"}.get(getattr(one, "layer", "shipped"), "")
    return Section("", (Said((f"{whose[:1].upper()}{whose[1:]} ({name}).",), "quiet"),))


def _sourced(book: Book, one: Told | None, convert: Convert | None) -> str:
    return f"{one.said(_none, convert)} [{cited(book, one.citation)}]" if one is not None else ""


def _none(key: str) -> str:
    """The number of a quantity where there is no job."""
    return ""


def _symptom(book: Book, name: str, convert: Convert | None) -> Page | None:
    one = symptoms(book).get(name)
    if one is None:
        return None
    alike = (other for other in symptoms(book).values() if other.title == one.title and other.id != name)
    others = [other for other in alike if other.families == one.families]
    tools = "every tool" if not one.families else ", ".join(family.title for family in carriers(book, one))
    head = [
        ("TOOLS", f"{tools[:1].upper()}{tools[1:]}."),
        ("ONLY", f"{', '.join(one.when)}." if one.when else ""),
        *_cause_and_cure(book, one, convert),
    ]
    more = [_labelled(_cause_and_cure(book, other, convert)) for other in others]
    sections = [_labelled((*head, ("ALSO", ", ".join(one.synonyms))))]
    return Page(one.title, (*sections, *([Section("Other causes of it", ()), *more] if more else ())))


def _cause_and_cure(book: Book, one: Symptom, convert: Convert | None) -> Iterator[tuple[str, str]]:
    yield "LOOK AT", _sourced(book, one.measure, convert)
    yield "CURE", _sourced(book, one.change, convert)
    row = QUANTITIES.get(one.value)
    yield "VALUE", f"{row.title}: {WAYS.get(one.way, one.way)}." if row is not None and one.way else ""


def _family(book: Book, name: str, convert: Convert | None) -> Page | None:
    family = book.families.get(name)
    if family is None:
        return None
    known = dict.fromkeys(one.title for one in symptoms_of(book, name))
    texts = family.texts
    told = (
        ("FAILS", " ".join(texts.get(FAILS, "").split())),
        ("CHECK", texts.get("check_after", "").strip()),
        ("KNOWN", f"{', '.join(known)}." if known else ""),
    )
    return Page(fails_title(family), (_labelled(told),))


def fails_title(family: Family) -> str:
    """What the page is called that tells how the tools of a family fail.

    Example:
        >>> fails_title(Family("reamer", "Reamers"))
        'How they fail: reamers'
    """
    return f"How they fail: {family.title[:1].lower()}{family.title[1:]}"


def _setup(book: Book, name: str, convert: Convert | None) -> Page | None:
    one = setups(book).get(name)
    if one is None:
        return None
    family = book.families.get(one.family)
    of = (
        family.title if family is not None else one.family or "only followed by others",
        one.surface,
        *one.methods,
    )
    lines = whole_setup(book, one).lines
    steps = ((STEPS[key].upper(), _sourced(book, line, convert)) for key, line in lines.items())
    scope = ("FOR", f"{', '.join(part for part in (*of, *one.when) if part)}.")
    return Page(one.title, (_labelled((scope,)), _labelled(steps)))


def _recommended(book: Book, name: str, convert: Convert | None) -> Page | None:
    one = recommended_wheels(book).get(name)
    if one is None:
        return None
    lines = whole_wheel(book, one).lines
    told = ((WHEEL_LINES[key].upper(), _sourced(book, line, convert)) for key, line in lines.items())
    grinds = ("GRINDS", _in_words(one.operations, OPERATIONS))
    scope = (*_scope(one.tool_materials, one.abrasives, one.shapes), grinds)
    return Page(one.title, (_labelled(scope), _labelled(told)))


def _unsuited(book: Book, name: str, convert: Convert | None) -> Page | None:
    one = unsuited_wheels(book).get(name)
    if one is None:
        return None
    told = (
        (one.state.upper(), _sourced(book, one.why, convert)),
        ("TAKE", _sourced(book, one.take, convert)),
        *_scope(one.tool_materials, one.abrasives, one.shapes),
        ("RELIEF", ", ".join(one.methods)),
    )
    return Page(one.title, (_labelled(told),))


def _scope(materials: Iterable[str], abrasives: Iterable[str], shapes: Iterable[str]) -> Parts:
    """Which tools are ground, and with which wheels."""
    yield "TOOLS", _in_words(materials, TOOL_MATERIALS)
    yield "GRAIN", _in_words(abrasives, ABRASIVES)
    yield "SHAPES", ", ".join(shapes)


def _in_words(names: Iterable[str], words: Mapping[str, str]) -> str:
    return ", ".join(words.get(name, name) for name in names)


def _of_parts(parts: Callable[[Book, str, Convert | None], tuple[str, Parts] | None]) -> Maker:
    def made(book: Book, name: str, convert: Convert | None) -> Page | None:
        found = parts(book, name, convert)
        return Page(found[0], (_labelled(found[1]),)) if found is not None else None

    return made


_MAKERS: Mapping[str, Maker] = {
    "symptom": _symptom,
    "family": _family,
    "setup": _setup,
    "recommended_wheel": _recommended,
    "unsuited_wheel": _unsuited,
    "machine": _of_parts(machine_parts),
    "wheel": _of_parts(wheel_parts),
    "thread": _of_parts(thread_parts),
}
