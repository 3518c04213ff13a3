"""The state of a calculation being filled in: the field in hand, what was typed, and the answer so far."""

from __future__ import annotations

from collections.abc import Mapping

from geometry.calculation import Calculation
from geometry.quantities import quantity
from library.book.model import Entry
from library.calc.surfaces import FIELD
from library.calc.thread_in_diameter import NOMINAL, is_named
from library.calc.words_first import words_first
from library.search.by_angle import KEYS as ANGLES
from tui.view.form_brings import FormBrings
from tui.view.text_line import TextLine

Typed = dict[str, TextLine]
"""What was typed for one tool, by quantity; every calculation opened for that tool shares it."""

OF_A_THREAD = ("diameter", "pitch", "threads_per_inch", "starts", "thread_form", "thread_taper")
"""What the name of a thread says; it stands in the place of a size."""

LEAST_WORD = 3
"""Letters from which what is typed for a number is a word."""

OF_LIST = "of list"
"""The word for a value out of a list that was typed for another calculation."""

SIZES = ("diameter", NOMINAL)
"""Where a size or the name of a thread may stand; the first that a calculation asks for tells its thread."""


class Form(FormBrings):
    """The fields of one calculation for one entry.

    Attributes:
        sheet: the calculation.
        entry: what fills the fields that nobody typed in.
        typed: what was typed, by quantity.
        focus: the quantity of the field in hand.
        answer: the latest answer, or nothing before the first one.
        display: the units in which it was answered.
        handed: what other calculations opened for the tool hand on, by quantity; it stands where nothing was typed, and in
            place of a size that the tool was only found with.
        handed_by: the sentence that says where each of these is from.
        handed_kept: those of them that stand on what was typed before, perhaps for another tool.
        offered: what the machine in hand and the wheels of the shop have, by quantity, for an arrow to bring.
        whence: where the texts came from that all calculations of the tool share.
        laid_out: what the machine in hand has, by quantity; it stands there as if it were typed, to be typed over.
        nominal: the size that a tool was found with, by quantity, where its own is measured: it is told and counts for
            nothing, and what is typed takes its place.
    """

    def __init__(self, sheet: Calculation, entry: Entry | None, typed: Typed) -> None:
        super().__init__(sheet, typed)
        self.entry = entry
        self.handed: Mapping[str, str] = {}
        self.handed_by: Mapping[str, str] = {}
        self.handed_kept: frozenset[str] = frozenset()
        self._was_nominal: dict[str, str] = {}
        self.laid_out: Mapping[str, str] = {}
        self.nominal: Mapping[str, str] = {}
        self._gave_way: dict[str, str] = {}

    def line(self, key: str) -> TextLine:
        """What was typed into a field; a size that the tool was only found with is not, where it is measured."""
        return TextLine() if self._gives_way_to_measured(key) else super().line(key)

    def _gives_way_to_measured(self, key: str) -> bool:
        """Whether a size that the tool was found with counts for nothing here, as it is measured or was, but not before."""
        text, is_measured = super().line(key).text, key in self.handed and key not in self.handed_kept
        return text != "" and (
            text == self.nominal.get(key) or (is_measured and self.whence.is_sought(key, text))
        )

    def is_nominal(self, key: str) -> bool:
        """Whether a field holds nothing but the nominal size that is told there."""
        return key in self.nominal and not self.line(key).text and self.value(key) is None

    def texts(self) -> dict[str, str]:
        """What was typed and this calculation asks for, blank fields left out."""
        found = {field.key: self.line(field.key).text for field in self.sheet.inputs}
        if self.sheet.surfaces and found.get(FIELD) not in self.sheet.surfaces:
            found.pop(FIELD, None)
        return {key: text for key, text in found.items() if text.strip()}

    def given(self) -> dict[str, str]:
        """What is answered: what was typed, and what was handed on where nothing was typed in its place."""
        texts = self.texts()
        taken = {field.one_of for field in self.sheet.inputs if field.key in texts} - {""}
        open_for = {one.key for one in self.sheet.inputs if one.key not in texts and one.one_of not in taken}
        handed = {**self.handed, **self.of_lists()}
        return {**{key: text for key, text in handed.items() if key in open_for}, **texts, **self._called()}

    def _called(self) -> dict[str, str]:
        """The thread that the tool is called by, which gives pitch and form also where its diameter is typed as measured."""
        text = self.typed.get(NOMINAL, TextLine()).text.strip()
        asks = self.sheet.field("pitch") is not None and self.sheet.field("diameter") is not None
        return {NOMINAL: text} if asks and text and is_named(text) else {}

    def of_lists(self) -> dict[str, str]:
        """What counts here of the lists that were typed elsewhere; not of one that a tool to be measured was only found with."""
        found = super().of_lists()
        return {key: text for key, text in found.items() if self.list_of(key) != self.nominal.get(key)}

    def is_handed(self, key: str) -> bool:
        """Whether what stands in a field was handed on by another calculation, or is of a list that was typed there."""
        return key not in self.texts() and key in self.given()

    def whose(self, key: str) -> str:
        """The word for whose a text is that stands in a field and was not typed there now; empty where it was typed.

        It is found by another calculation, of the machine or a wheel, nominal or an angle as in the find line, or kept from
        before.
        """
        slot, text = self.place(key), self.line(key).text
        if key in self.of_lists():
            return self._whose_list(key)
        if self.is_handed(key):
            return "kept" if key in self.handed_kept else "found"
        if self.is_laid_out(key):
            return "machine"
        if one := self.whence.of_what(slot, text):
            return one.source
        if key in (*SIZES, *ANGLES) and self.whence.is_sought(slot, text):
            return "nominal" if key in SIZES else "sought"
        return "kept" if self.whence.is_kept(slot, text) else ""

    def _whose_list(self, key: str) -> str:
        """The word for whose a list is of which one value counts here."""
        slot, text = self.slot(key), self.list_of(key)
        if key in SIZES and self.whence.is_sought(slot, text):
            return "nominal"
        return "kept" if self.whence.is_kept(slot, text) else OF_LIST

    @property
    def has_kept(self) -> bool:
        """Whether anything of what was typed stands here from before."""
        return any(self.whose(key) == "kept" for key in self.keys())

    def is_laid_out(self, key: str) -> bool:
        """Whether what stands in a field came from the machine in hand, and nobody has typed over it."""
        return self.line(key).text != "" and self.line(key).text == self.laid_out.get(key)

    def told(self) -> dict[str, str]:
        """What was typed, each relief under the key of its surface; of a list all of it."""
        lists = {field.key: text for field in self.sheet.inputs if (text := self.list_of(field.key))}
        return {self.slot(key): text for key, text in {**self.texts(), **lists}.items()}

    def alone(self) -> dict[str, str]:
        """What was typed for this calculation where a list of the tool stands elsewhere, by quantity."""
        return {key: text for key, text in self.texts().items() if self.list_of(key)}

    def chosen(self) -> str:
        """The word that counts in the field in hand, typed, from the book or a default; else the text typed."""
        value = self.value(self.focus)
        return value.value if value is not None and isinstance(value.value, str) else self.in_hand.text

    def choices(self) -> tuple[str, ...]:
        """The words for the field in hand; of surfaces those that tool and calculation share."""
        if self.focus == FIELD and self.answer is not None and self.answer.surfaces:
            return self.answer.surfaces
        known = self.answer.inputs if self.answer is not None else ()
        return words_first(self.focus, quantity(self.focus).choices, known)

    def gave_way(self, text: str) -> None:
        """Keep a number that gave way, for whoever typed a word there by mistake."""
        if any(sign.isdigit() for sign in text):
            self._gave_way[self.slot(self.focus)] = text

    @property
    def is_word(self) -> bool:
        """Whether a word stands in the field in hand where none can: somebody meant it for another line."""
        text = self.in_hand.text.strip()
        wrong = (
            {one.key for one in self.answer.issues if not one.missing} if self.answer is not None else set()
        )
        return self.focus in wrong and len(text) >= LEAST_WORD and text.replace(" ", "").isalpha()

    @property
    def before_word(self) -> str:
        """The number that stood in the field in hand before a word was typed there; empty where none did."""
        return self._gave_way.get(self.slot(self.focus), "") if self.is_word else ""

    def keep(self, line: TextLine) -> None:
        """Keep what was typed, in place of a nominal size; an emptied field that the machine in hand fills has that again."""
        if self._gives_way_to_measured(self.focus) and not line.text:
            return  # The nominal size stays with the calculations that count with it.
        if line.text != self.line(self.focus).text:
            self.whence.typed(self.place(self.focus))
        if self.focus in self.nominal:
            self._was_nominal[self.focus] = self.nominal[self.focus]
        self.nominal = {key: text for key, text in self.nominal.items() if key != self.focus}
        if self.focus == SIZES[0] and is_named(line.text):
            self._name_anew()
        back = "" if line.text.strip() else self.laid_out.get(self.focus, "")
        super().keep(TextLine.ending(back) if back else line)

    def _name_anew(self) -> None:
        """Forget the thread that the tool was found with, as another is named where its diameter stands."""
        called = self.typed.get(NOMINAL, TextLine()).text
        if self.whence.is_sought(NOMINAL, called):
            self.typed.pop(NOMINAL)
            self.whence.typed(NOMINAL)

    def clear(self) -> None:
        """Empty the field in hand; the number before a word returns, else what the tool was found with, else what fills it.

        That is what the machine has, what was found, what the book has, or the default.
        """
        if self._gives_way_to_measured(self.focus):
            return
        before, place, now = self.before_word, self.place(self.focus), self.in_hand.text
        sought = self.whence.over.get(place, "")
        self.whence.typed(place)
        self.forget(self.focus)
        if before or self.focus in self.laid_out:
            self.put(before)
        elif sought and now and now != sought:
            self.put(sought)
            self.whence.seek({place: sought})
            was = self._was_nominal.get(self.focus)
            self.nominal = {**self.nominal, self.focus: was} if was else self.nominal

    def take_thread(self, name: str) -> None:
        """Type the name of a thread where the diameter stands; what was typed before of a thread gives way to it."""
        self.nominal = {}
        for key in (*OF_A_THREAD, *SIZES):
            self.forget_alone(key)
            self.typed.pop(key, None)
            self.whence.typed(key)
        self.typed |= dict.fromkeys(SIZES, TextLine.ending(name))
