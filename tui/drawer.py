"""What the machine in hand and the shelf of wheels have for the calculations: laid out where they ask for it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from library.equipment.filling import texts_of
from library.equipment.model import machines, the_only_one, wheels
from library.equipment.offers import of_machine, of_wheels
from tui.view.text_line import TextLine

if TYPE_CHECKING:
    from collections.abc import Mapping

    from geometry.calculation import Calculation
    from library.equipment.model import Machine
    from library.equipment.offers import Offer
    from tui.session import Session
    from tui.view.form import Typed

FILLED = ("cam_throws", "throw_per")
"""What the machine fills where a calculation asks for it: the cams at hand, and how a throw is counted."""


class Drawer:
    """The machine in hand, and what of it was typed by the program for each entry.

    Args:
        session: has the book and the machine in hand.
    """

    def __init__(self, session: Session) -> None:
        self._session = session
        self._laid_out: dict[str, dict[str, str]] = {}

    def machine(self) -> Machine | None:
        """The machine in hand, on whose graduations settings and readings are told: the chosen one, or the only one."""
        book = self._session.book
        known = machines(book) if book is not None else {}
        if self._session.machine not in known and (only := the_only_one(known)):
            # It stays in hand when a second one is written down.
            self._session.machine = only
        return known.get(self._session.machine)

    def offers(self, sheet: Calculation) -> dict[str, tuple[Offer, ...]]:
        """What the arrows bring in each field of a calculation, where they bring anything."""
        book, machine = self._session.book, self.machine()
        known = wheels(book).values() if book is not None else ()
        found = {one.key: (*of_machine(machine, one.key), *of_wheels(known, one.key)) for one in sheet.inputs}
        return {key: offers for key, offers in found.items() if offers}

    def of(self, sheet: Calculation) -> dict[str, str]:
        """What the machine in hand has of what a calculation asks for."""
        machine = self.machine()
        texts = texts_of(machine) if machine is not None else {}
        return {key: texts[key] for key in FILLED if key in texts and sheet.field(key) is not None}

    def laid_out(self, entry: str) -> Mapping[str, str]:
        """What was typed by the program for an entry, by quantity; a person may have typed over it since."""
        return self._laid_out.get(entry, {})

    def to_lay_out(self, entry: str, typed: Typed, sheet: Calculation) -> dict[str, str]:
        """What the machine in hand has for a calculation, where nobody typed anything in its place.

        Args:
            entry: its id.
            typed: what stands there for it.
            sheet: the calculation.
        """
        before = self.laid_out(entry)
        return {
            key: text
            for key, text in self.of(sheet).items()
            if (typed[key].text.strip() if key in typed else "") in {"", before.get(key, "")}
        }

    def lay_out(self, entry: str, typed: Typed, sheet: Calculation) -> None:
        """Type the cams of the machine in hand, and how they are counted, where a calculation asks for them.

        What the person makes of it then stays.

        Args:
            entry: its id.
            typed: what stands there for it, to be typed into.
            sheet: the calculation.
        """
        for key, text in self.to_lay_out(entry, typed, sheet).items():
            typed[key] = TextLine.ending(text)
            self._laid_out.setdefault(entry, {})[key] = text

    def is_own(self, entry: str, key: str, text: str) -> bool:
        """Whether a text is a person's own: something, and not what was laid out."""
        return text.strip() not in {"", self.laid_out(entry).get(key)}
