"""Everything that was typed into calculators in this run: it stays while other screens are open."""

from __future__ import annotations

from typing import TYPE_CHECKING

from geometry.calculations import calculation
from geometry.quantities import QUANTITIES
from geometry.surfaces import surface_of_relief
from library.calc.measured import SHEET
from library.calc.surfaces import FIELD, book_key
from library.drafts.draft import Draft
from library.search.along import Along
from library.units.read import in_other_unit
from library.units.system import Display
from tui.drawer import Drawer
from tui.handing_on import compute, handed_to
from tui.serving import CLASS_OF_HOLE, Serving
from tui.view.form import OF_A_THREAD, SIZES, Form
from tui.view.text_line import TextLine
from tui.view.whence import Whence

if TYPE_CHECKING:
    from collections.abc import Mapping

    from geometry.calculation import Calculation
    from library.book.model import Entry
    from library.search.sizes import Size
    from tui.session import Session
    from tui.view.form import Typed


FLUTES = "flutes"

NOTHING_ALONG = Along()


class Calculators:
    """The forms of all calculations for all entries that were opened.

    Args:
        session: has the book and the units.

    Attributes:
        drawer: what the machine in hand has for them.
        serving: which of them serve an entry.
    """

    def __init__(self, session: Session) -> None:
        self.drawer, self.serving = Drawer(session), Serving(session)
        self._session = session
        self._typed: dict[str, Typed] = {}
        self._forms: dict[tuple[str, str], Form] = {}
        self._last: dict[str, str] = {}
        self._carried: dict[str, str] = {}
        self._nominal: dict[str, Mapping[str, str]] = {}
        self._carried_flutes: dict[str, int] = {}
        self._carried_angle: dict[str, tuple[str, str]] = {}
        self._filled: set[str] = set()
        self._whence: dict[str, Whence] = {}
        self._came: tuple[str, int] | None = None

    def form(self, entry: Entry, sheet: Calculation) -> Form:
        """The form for an entry and a calculation, with all that was typed into it before."""
        self._last[entry.id] = sheet.name
        key = (entry.id, sheet.name)
        if key not in self._forms:
            self._forms[key] = Form(sheet, entry, self._typed.setdefault(entry.id, {}))
            self._tell_nominal(entry)
        self._bring_up_to_date(entry)
        self.tell_shop(self._forms[key])
        return self._forms[key]

    def _bring_up_to_date(self, entry: Entry) -> None:
        """Have what nobody typed stand in all forms of a tool as book, machine and wheels have it now."""
        typed = self._typed.setdefault(entry.id, {})
        for form in [one for (name, _), one in self._forms.items() if name == entry.id]:
            form.entry = entry
            self.drawer.lay_out(entry.id, typed, form.sheet)
            form.laid_out = {**self.drawer.laid_out(entry.id), **self.drawer.of(form.sheet)}
        self.drawer.bring_again(typed, self._whence_of(entry))

    def tell_shop(self, form: Form) -> None:
        """Tell a form where its texts came from, and what the machine in hand and the wheels of the shop have for it."""
        if form.entry is not None:
            form.whence = self._whence_of(form.entry)
        form.offered = self.drawer.offers(form.sheet)

    def _whence_of(self, entry: Entry) -> Whence:
        return self._whence.setdefault(entry.id, Whence())

    def come_to(self, entry: Entry, finds: int) -> tuple[str, ...]:
        """Know that somebody opens the calculations for an entry from the book.

        Args:
            entry: of the book.
            finds: how often the find line was changed; as long as it stays, and no other entry is opened in between, the
                person only looked away.

        Returns:
            The quantities that stand there from before, on another tool it may be; none where he only looked away.
        """
        before, self._came = self._came, (entry.id, finds)
        if before == self._came:
            return ()
        return self._whence_of(entry).come_back_to(self.draft(entry).fields)

    def start_over(self, entry: Entry) -> None:
        """Forget what was typed for an entry, but for what it was found with."""
        typed, whence = self._typed.setdefault(entry.id, {}), self._whence_of(entry)
        for key in [key for key, one in typed.items() if not whence.is_sought(key, one.text)]:
            del typed[key]
            whence.typed(key)

    def looked_at(self, entry: Entry, sheet: Calculation, along: Along = NOTHING_ALONG) -> Form:
        """The answered form for an entry and a calculation that nobody opens by it: it is only looked at.

        Args:
            entry: of the book.
            sheet: the calculation.
            along: what the entry is found by now; nothing is typed by a look.
        """
        self._bring_up_to_date(entry)
        typed = self._typed.get(entry.id, {})
        if texts := self._new_along(entry, along):
            typed = dict(typed)
            self._put(typed, texts)
            form = self._only_shown(entry, sheet, typed)
            form.whence = self._whence_of(entry).looked_for(texts)
            form.nominal = {key: texts[key] for key in SIZES if key in texts and sheet.name == SHEET}
        else:
            form = self._forms.get((entry.id, sheet.name)) or self._only_shown(entry, sheet, typed)
        self.compute(form)
        return form

    def _only_shown(self, entry: Entry, sheet: Calculation, typed: Typed) -> Form:
        drawer = self.drawer.to_lay_out(entry.id, typed, sheet)
        form = Form(sheet, entry, typed | {key: TextLine.ending(text) for key, text in drawer.items()})
        form.laid_out = {**self.drawer.laid_out(entry.id), **drawer}
        form.whence = self._whence_of(entry)
        return form

    def tools_typed_for(self) -> list[str]:
        """The ids of the entries for which something was typed into calculations, and not put there by the program."""
        return [name for name in self._typed if name not in self._filled and self._has_typed(name)]

    def typed_by_hand(self, entry: Entry) -> None:
        """What stands in the calculations for an entry is a person's own from now on."""
        self._filled.discard(entry.id)

    def has_typed(self, entry: Entry) -> bool:
        """Whether anything was typed into calculations for an entry."""
        return entry.id in self.tools_typed_for()

    def _has_typed(self, name: str) -> bool:
        return any(self.drawer.is_own(name, key, one.text) for key, one in self._typed[name].items())

    def fill(self, entry: Entry, texts: Mapping[str, str]) -> None:
        """Type texts for an entry, in place of what was typed for it before.

        Args:
            entry: of the book.
            texts: by quantity.
        """
        typed = self._typed.setdefault(entry.id, {})
        typed.clear()
        self._nominal[entry.id] = {}
        self._whence.pop(entry.id, None)
        self._tell_nominal(entry)
        self._filled.add(entry.id)
        surface = texts.get(FIELD, "")
        typed.update({book_key(key, surface) or key: TextLine.ending(text) for key, text in texts.items()})

    def for_measuring(self, entry: Entry, key: str) -> Calculation:
        """The calculation that measures a new tool, the surface typed whose relief is wanted.

        Args:
            entry: of the book.
            key: the quantity that is wanted.
        """
        surface = surface_of_relief(key)
        if surface is not None:
            self._typed.setdefault(entry.id, {})[FIELD] = TextLine.ending(surface.key)
        return calculation(SHEET)

    def carry(self, entry: Entry, along: Along) -> None:
        """Type size, number of flutes and angle that an entry was found with; what the person makes of them then stays.

        With the class of a hole or a thread the calculation that tells its limits is the one to open.

        Args:
            entry: of the book.
            along: as it stood in the find line.
        """
        texts = self._new_along(entry, along)
        if not texts:
            return
        if along.size is not None and self._is_new(entry, along.size):
            self._last[entry.id] = sheet.name if (sheet := self.first(entry, along.size)) is not None else ""
            self._carried[entry.id] = self._told(along.size)
            self._nominal[entry.id] = {key: texts[key] for key in SIZES}
            self._tell_nominal(entry)
        if along.flutes is not None:
            self._carried_flutes[entry.id] = along.flutes
        self._carried_angle[entry.id] = (along.angle_of, along.angle)
        self._put(self._typed.setdefault(entry.id, {}), texts)
        self._whence_of(entry).seek(texts)

    def _tell_nominal(self, entry: Entry) -> None:
        """Tell the calculation that measures a tool which size is only the one that the tool was found with."""
        form = self._forms.get((entry.id, SHEET))
        if form is not None:
            form.nominal = self._nominal.get(entry.id, {})

    def _told(self, size: Size) -> str:
        return f"{size.written(self._session.display.lengths)} {size.tolerance}"

    def _is_new(self, entry: Entry, size: Size) -> bool:
        """Whether an entry was found with another size than the one that was typed for it before."""
        return self._carried.get(entry.id) != self._told(size)

    def _new_along(self, entry: Entry, along: Along) -> dict[str, str]:
        """What is typed for an entry by what it was found with, as far as that was not typed for it before.

        What a thread says and its size does not is emptied.
        """
        texts: dict[str, str] = {}
        size, flutes = along.size, along.flutes
        if size is not None and self._is_new(entry, size):
            texts |= dict.fromkeys(OF_A_THREAD, "") if size.is_thread else {}
            texts |= dict.fromkeys(SIZES, size.written(self._session.display.lengths))
            texts |= {CLASS_OF_HOLE: size.tolerance} if size.tolerance else {}
        if flutes is not None and self._carried_flutes.get(entry.id) != flutes:
            texts[FLUTES] = str(flutes)
        return texts | self._new_angle(entry, along)

    def _new_angle(self, entry: Entry, along: Along) -> dict[str, str]:
        """The angle that a tool is sought by, where that is another than before; the one before is emptied, unless typed over."""
        if (before := self._carried_angle.get(entry.id, ("", ""))) == (along.angle_of, along.angle):
            return {}
        line = self._typed.get(entry.id, {}).get(before[0], TextLine())
        emptied = {before[0]: ""} if self._whence_of(entry).is_sought(before[0], line.text) else {}
        return emptied | ({along.angle_of: along.angle} if along.angle else {})

    def _put(self, typed: Typed, texts: Mapping[str, str]) -> None:
        for key, text in texts.items():
            typed.pop(key, None)
            if text:
                typed[key] = TextLine.ending(text)

    def draft(self, entry: Entry) -> Draft:
        """What was typed into the calculator for an entry, to be kept in case the program ends."""
        typed = self._typed.get(entry.id, {})
        texts = {key: one.text for key, one in typed.items() if self.drawer.is_own(entry.id, key, one.text)}
        return Draft("calculator", entry.id, texts, units=self._session.display.lengths)

    def take_up(self, entry: Entry, draft: Draft) -> None:
        """Type what a draft holds, in the units that are worked in now: its numbers without one have that of the draft."""
        old, new = Display(draft.lengths), self._session.display
        typed = self._typed.setdefault(entry.id, {})
        for key, text in draft.fields.items():
            if (of := _quantity_of(key)) in QUANTITIES:
                typed[key] = TextLine.ending(in_other_unit(text, QUANTITIES[of].kind, old, new))

    def first(self, entry: Entry, size: Size | None = None) -> Calculation | None:
        """The calculation to open for an entry: the one used last, else the one most its own.

        Args:
            entry: of the book.
            size: with which it is found now; with the class of a hole or a thread, its limits are what is asked for first.
        """
        if size is not None and self._is_new(entry, size) and (asked := self.serving.of_class(entry, size)):
            return asked
        return self.serving.first(entry, self._last.get(entry.id, ""))

    def compute(self, form: Form) -> None:
        """Answer a form as it now stands, with what other calculations that were opened for the tool hand on."""
        entry = form.entry.id if form.entry is not None else None
        forms = [one for (name, _), one in self._forms.items() if name == entry]
        book, display, machine = self._session.book, self._session.display, self.drawer.machine()
        handed = {one.key: one for one in handed_to(form, forms, book, display, machine)}
        form.handed = {key: one.text for key, one in handed.items()}
        form.handed_by = {key: one.said for key, one in handed.items()}
        form.handed_kept = frozenset(key for key, one in handed.items() if one.is_kept)
        compute(form, book, display, machine)

    def switch(self, old: Display, new: Display) -> None:
        """Write what was typed in the other units; it keeps its meaning."""
        for name, typed in self._typed.items():
            for key, line in typed.items():
                kind = QUANTITIES[_quantity_of(key)].kind
                if (named := in_other_unit(line.text, kind, old, new)) != line.text:
                    typed[key] = TextLine.ending(named)
                    if name in self._whence:
                        self._whence[name].rewritten(key, line.text, named)


def _quantity_of(key: str) -> str:
    """The quantity of a text; behind a point stands where it was typed beside a list of the same."""
    return key.partition(".")[0]
