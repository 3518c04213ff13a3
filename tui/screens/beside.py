"""What stands beside the pane in hand: the tool and its calculation, whole or in one line."""

from __future__ import annotations

from typing import TYPE_CHECKING

from geometry.quantities import quantity
from library.calc.in_units import in_units
from library.search.along import Along
from library.units.system import Display
from tui.figure.alphabet import ALPHABETS
from tui.screens.paned import in_a_line
from tui.view.bars import banner
from tui.view.calculator_page import CalculatorPage
from tui.view.entry_page import EntryPage
from tui.view.lines import EMPTY, Line, line, text_of
from tui.view.verdict import verdict

if TYPE_CHECKING:
    from geometry.calculation import Calculation
    from library.book.model import Entry
    from tui.session import Session

MOST_VALUES = 4
"""Values of a tool that one line tells."""


def display_for(session: Session) -> Display | None:
    """The units that are worked in, once they are loaded."""
    return session.display if session.units_ready else None


def whose(entry: Entry) -> str:
    """Whose entry it is."""
    return "this shop" if entry.layer == "shop" else "shipped"


def tool_beside(session: Session, entry: Entry | None, width: int, height: int) -> list[Line]:
    """The chosen tool, none of its values in hand."""
    if entry is None or session.book is None:
        return [EMPTY, line("No tool is chosen.")] if session.book is not None else []
    page = EntryPage(entry, session.page.find.text).body(
        session.book, display_for(session), width, height - 1, live=False
    )
    return [banner(entry.title, whose(entry), width, live=False), *page]


def calculation_beside(session: Session, entry: Entry | None, width: int, height: int) -> list[Line]:
    """The calculation that is opened for a tool, as far as it is filled in."""
    along = session.page.along_with(entry.id) if entry is not None else Along()
    sheet = session.calculators.first(entry, along.size) if entry is not None else None
    if entry is None or sheet is None or session.book is None:
        return []
    form = session.calculators.looked_at(entry, sheet, along)
    page = CalculatorPage(form, ALPHABETS[session.theme.drawing], session.book)
    page.machine = session.calculators.drawer.machine()
    goes_here = f"{place_of(session, entry, sheet)}, {session.keymap.told('calculate')} goes here"
    return [
        banner(sheet.title, goes_here, width, live=False),
        *page.body(session.display, width, height - 1, live=False),
    ]


def place_of(session: Session, entry: Entry, sheet: Calculation) -> str:
    """Which calculation of how many it is."""
    names = [one.name for one in session.calculators.serving.all_of(entry, sheet.name)]
    return f"{names.index(sheet.name) + 1} of {len(names)}"


def list_in_a_line(session: Session, width: int) -> Line:
    """How much was found in the book, and by what."""
    found = session.page.find.text.strip()
    told = f"{len(session.page.hits)} of {len(session.book.entries) if session.book is not None else 0}"
    return in_a_line("Book", f"{told} with {found}" if found else told, width)


def tool_in_a_line(session: Session, entry: Entry | None, width: int) -> Line:
    """The tool with its first values."""
    if entry is None:
        return in_a_line("Tool", "", width)
    display = display_for(session)
    values = [one for one in entry.values.values() if one.usual is not None][:MOST_VALUES]
    values = [in_units(one, display) for one in values] if display is not None else values
    told = ", ".join(
        f"{quantity(one.key).title.lower()} {one.usual.text}" for one in values if one.usual is not None
    )
    return in_a_line(entry.title, told, width)


def calculation_in_a_line(session: Session, entry: Entry | None, width: int) -> Line:
    """The calculation with its verdict, or what it still wants."""
    along = session.page.along_with(entry.id) if entry is not None else Along()
    is_known = entry is not None and session.book is not None
    sheet = session.calculators.first(entry, along.size) if entry is not None and is_known else None
    if entry is None or sheet is None:
        return in_a_line("Calculation", "", width)
    form = session.calculators.looked_at(entry, sheet, along)
    told = verdict(form.answer, session.display, width, 1).lines
    return in_a_line(sheet.title, " ".join(text_of(told[0]).split()), width)
