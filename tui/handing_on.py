"""What one calculation of a tool hands on to another: what it found, and what was measured there."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from geometry.ground_down import is_ground_down
from geometry.quantities import QUANTITIES
from geometry.role import MEASURED_TOO
from geometry.sentences import Kind
from library.calc.answer import answer
from library.units.read import UnitError, read, with_units
from library.units.show import show
from tui.view.form import SIZES
from tui.view.text_line import TextLine

if TYPE_CHECKING:
    from library.book.model import Book
    from library.equipment.model import Machine
    from library.units.system import Display
    from tui.view.form import Form

PITCHES = ("pitch", "threads_per_inch")


@dataclass(frozen=True)
class Handed:
    """What one calculation hands on to another of the same tool.

    Attributes:
        key: the quantity.
        text: its value, with the unit.
        said: the sentence that says where it is from.
        is_kept: whether it stands on what was typed before, perhaps for another tool.
    """

    key: str
    text: str
    said: str
    is_kept: bool


def compute(form: Form, book: Book | None, display: Display, machine: Machine | None = None) -> None:
    """Answer a form as it now stands, with the cams of the machine in hand where one is."""
    form.display = display
    for _ in range(2):
        texts = form.given()
        found = answer(form.sheet, texts, entry=form.entry, book=book, display=display, machine=machine)
        form.take(found)
        # What was typed for a relief is known only with its surface, which the first answer tells.
        if form.given() == texts:
            break


def handed_to(
    form: Form,
    forms: Sequence[Form],
    book: Book | None,
    display: Display,
    machine: Machine | None = None,
) -> Iterator[Handed]:
    """What is known of the tool of a form elsewhere and its calculation asks for, each with where it is from.

    What was measured of a size that the tool is called by comes last and counts first; of a tool that is ground down from it
    to a smaller size it does not stand for that size.

    Args:
        form: of one calculation.
        forms: of all calculations that were opened for its tool.
        book: answers them.
        display: the units.
        machine: in hand.
    """
    if form.entry is None:
        return
    for other in forms:
        key = other.sheet.role.hands_on
        if not key or other.sheet is form.sheet or _is_known(form, other, key):
            continue
        asked = [name for name in (key, MEASURED_TOO.get(key, key)) if form.sheet.field(name) is not None]
        if asked and (text := _found(other, key, book, display, machine)):
            said, is_kept = f"Found by '{other.sheet.title}'.", other.has_kept
            yield from (
                Handed(name, text, said, is_kept)
                for name in asked
                if not _comes_off(form, name, text, display)
            )
    for key, measured in MEASURED_TOO.items():
        text = _measured(form, key, measured, display)
        if text and not _comes_off(form, key, text, display):
            said = f"Typed as the {QUANTITIES[measured].title.lower()} in another calculation."
            is_kept = form.whence.is_kept(measured, form.typed[measured].text)
            yield Handed(key, text, said, is_kept)


def _comes_off(form: Form, key: str, text: str, display: Display) -> bool:
    """Whether a diameter that was measured is ground down to the size that the tool is called by, which is the one to set by."""
    kind = QUANTITIES["diameter"].kind
    named = next((form.typed[one].text for one in reversed(SIZES) if one in form.typed), "")
    if key != "diameter" or not (_is_number(named, kind, display) and _is_number(text, kind, display)):
        return False
    came, size = (read(one, kind, display).number for one in (text, named))
    # A calculation that asks for the body behind the edges is about a tool that is ground down, by however little.
    return is_ground_down(came, size, body=came if form.sheet.field("body_diameter") is not None else None)


def _measured(form: Form, key: str, measured: str, display: Display) -> str:
    """What was typed for the measured size of a tool, with its unit, where a calculation asks for that size only.

    The name of a thread stays where it tells the pitch as well.
    """
    if form.sheet.field(key) is None or form.sheet.field(measured) is not None:
        return ""
    kind = QUANTITIES[key].kind
    named = form.typed.get(key, TextLine()).text
    if any(form.sheet.field(one) for one in PITCHES) and named and not _is_number(named, kind, display):
        return ""
    text = form.typed.get(measured, TextLine()).text
    return with_units(text, kind, display) if _is_number(text, kind, display) else ""


def _is_known(form: Form, other: Form, key: str) -> bool:
    """Whether an angle that only follows from others stands in the book already."""
    entry = form.entry
    follows = QUANTITIES[key].kind is Kind.ANGLE and key not in other.sheet.role.sets
    return follows and entry is not None and key in entry.values


def _found(form: Form, key: str, book: Book | None, display: Display, machine: Machine | None) -> str:
    """What a calculation found itself for a quantity; empty where it was told it, lacks something, or stops."""
    compute(form, book, display, machine)
    found = form.answer
    if found is None or found.result is None or key not in found.result.outputs or key in found.inputs:
        return ""
    if any(check.state == "stop" for check in found.result.checks):
        return ""
    return show(found.result.outputs[key], QUANTITIES[key].kind, display)


def _is_number(text: str, kind: Kind, display: Display) -> bool:
    try:
        return read(text, kind, display).number > 0
    except UnitError:
        return False
