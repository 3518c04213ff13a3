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
    from tui.view.whence import Whence

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
        found = {one.key: self._offers_of(one.key) for one in sheet.inputs}
        return {key: offers for key, offers in found.items() if offers}

    def _offers_of(self, key: str) -> tuple[Offer, ...]:
        book = self._session.book
        known = wheels(book).values() if book is not None else ()
        return (*of_machine(self.machine(), key), *of_wheels(known, key))

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

        What the person makes of it then stays. What was laid out before and the machine has no more is taken away.

        Args:
            entry: its id.
            typed: what stands there for it, to be typed into.
            sheet: the calculation.
        """
        now, before = self.of(sheet), self._laid_out.setdefault(entry, {})
        for key in [key for key in before if sheet.field(key) is not None and key not in now]:
            if key in typed and typed[key].text == before[key]:
                del typed[key]
            del before[key]
        for key, text in self.to_lay_out(entry, typed, sheet).items():
            if key not in typed or typed[key].text != text:
                typed[key] = TextLine.ending(text)
            before[key] = text

    def bring_again(self, typed: Typed, whence: Whence) -> None:
        """Have what an arrow brought of a machine or a wheel stand as these have it now.

        What they have no more stays as a person's own, for he chose it.

        Args:
            typed: what stands there for a tool, to be typed into.
            whence: where it came from.
        """
        for key, one in [*whence.brought.items()]:
            if key not in typed or whence.of_what(key, typed[key].text) is None:
                continue
            same = [now for now in self._offers_of(key) if (now.whose, now.source) == (one.whose, one.source)]
            now = next((now for now in same if one.source == "wheel" or now.texts == one.texts), None)
            if now is not None and now.texts.get(key) != typed[key].text:
                typed[key] = TextLine.ending(now.texts[key])
            whence.typed(key)
            if now is not None:
                whence.bring(now, (key,))

    def is_own(self, entry: str, key: str, text: str) -> bool:
        """Whether a text is a person's own: something, and not what was laid out."""
        return text.strip() not in {"", self.laid_out(entry).get(key)}
