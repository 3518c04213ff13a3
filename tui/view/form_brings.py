"""What an arrow brings into a field of a calculation: an end of the book's range, or what machine and wheels of the shop have."""

from __future__ import annotations

from collections.abc import Mapping

from geometry.calculation import Calculation
from geometry.quantities import quantity
from library.book.model import Value
from library.calc.ranges import ends_of, taken
from library.equipment.offers import OF_A_WHEEL, Offer
from library.units.beside import beside
from tui.view.form_walk import FormWalk
from tui.view.text_line import TextLine
from tui.view.whence import Whence


class FormBrings(FormWalk):
    """Fields into which an arrow brings the next of what there is for them.

    Attributes:
        offered: what the machine in hand and the wheels of the shop have, by quantity, for an arrow to bring.
        whence: where the texts came from that all calculations of the tool share.
    """

    def __init__(self, sheet: Calculation, typed: dict[str, TextLine]) -> None:
        super().__init__(sheet, typed)
        self.offered: Mapping[str, tuple[Offer, ...]] = {}
        self.whence = Whence()
        self._ends: dict[str, Value] = {}

    def brings(self, step: int) -> bool:
        """Into an empty field bring an end of the book's range, else the value that counts, to change a part of it.

        Where the machine or the wheels of the shop have something, the next of these.
        """
        text, value = self.in_hand.text, self.value(self.focus)
        if self._take_an_end(text, step) or self._bring(text, step):
            return True
        if not text and value is not None and not value.share_of_diameter:
            self.take_in_hand(value.text)
        return not text

    def _take_an_end(self, text: str, step: int) -> bool:
        """Put the next end of the book's range into the field, if it is empty or holds an end; say whether."""
        slot = self.slot(self.focus)
        if not text and (offered := self.offer(self.focus)) is not None:
            self._ends[slot] = offered
        value = self._ends.get(slot)
        if value is None:
            return False
        given = self.value("diameter")
        diameter = given.value if given is not None and isinstance(given.value, float) else None
        texts = [found for end in ends_of(value) if (found := taken(value, end, self.display, diameter))]
        if not texts or (text and text not in texts):
            return False
        self.turn(texts, step)
        return True

    def _bring(self, text: str, step: int) -> bool:
        """Put what the next cam, speed or wheel has into the field; say whether there is any.

        Of a machine it is the next one up or down from what stands there. What a person typed of a wheel stays.
        """
        key, offers = self.focus, self.offered.get(self.focus, ())
        now = self.whence.of_what(key, text)
        is_of_wheels = any(one.source == "wheel" for one in offers)
        if not offers or (text and (now is None if is_of_wheels else not self.gives_way(key))):
            return False
        if is_of_wheels:
            at = offers.index(now) if now in offers else -max(step, 0)
            self._take_wheel(offers[(at + step) % len(offers)])
            return True
        found = beside([one.texts[key] for one in offers], text, quantity(key).kind, step, self.display)
        self.put(found)
        self.whence.bring(next(one for one in offers if one.texts[key] == found), (key,))
        return True

    def _take_wheel(self, one: Offer) -> None:
        """Put in what is known of a wheel, in place of what an arrow brought of another; what was typed beside it stays."""
        free = [
            key
            for key in OF_A_WHEEL
            if key == self.focus
            or not self.typed.get(key, TextLine()).text
            or self.whence.of_what(key, self.typed[key].text)
        ]
        for key in free:
            self.typed.pop(key, None)
            self.whence.typed(key)
        taken = [key for key in free if key in one.texts]
        self.typed |= {key: TextLine.ending(one.texts[key]) for key in taken}
        self.whence.bring(one, taken)
