"""Everything that was typed into calculators in this run: it stays while other screens are open."""

from __future__ import annotations

from typing import TYPE_CHECKING

from geometry.calculations import calculation
from geometry.quantities import QUANTITIES
from geometry.surfaces import surface_of_relief
from geometry.thread.nut_limits import CLASSES
from library.calc.by_family import sheets_for
from library.calc.measured import SHEET
from library.calc.surfaces import FIELD, book_key
from library.drafts.draft import Draft
from library.equipment.filling import texts_of
from library.equipment.model import machines, the_only_one, wheels
from library.equipment.offers import of_machine, of_wheels
from library.guidance.main_job import main_job_first
from library.search.sizes import Along
from library.units.read import in_other_unit
from library.units.system import Display
from tui.handing_on import compute, handed_to
from tui.view.form import OF_A_THREAD, SIZES, Form
from tui.view.text_line import TextLine
from tui.view.whence import Whence

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from geometry.calculation import Calculation
    from library.book.model import Book, Entry
    from library.equipment.model import Machine
    from library.search.sizes import Size
    from tui.session import Session
    from tui.view.form import Typed


DRAWER = ("cam_throws", "throw_per")
"""What the machine in hand fills where a calculation asks for it: the cams at hand, and how a throw is counted."""

CLASS_OF_HOLE = "hole_tolerance"

FLUTES = "flutes"

NOTHING_ALONG = Along()

MARK_OF_TAP = "tap_limit"

THREAD_CLASSES = frozenset(CLASSES)


class Calculators:
    """The forms of all calculations for all entries that were opened.

    Args:
        session: has the book and the units.
    """

    def __init__(self, session: Session) -> None:
        self._session = session
        self._typed: dict[str, Typed] = {}
        self._forms: dict[tuple[str, str], Form] = {}
        self._last: dict[str, str] = {}
        self._carried: dict[str, str] = {}
        self._nominal: dict[str, Mapping[str, str]] = {}
        self._carried_flutes: dict[str, int] = {}
        self._filled: set[str] = set()
        self._serving: dict[str, tuple[Book, Entry, Sequence[Calculation]]] = {}
        self._drawer: dict[str, dict[str, str]] = {}
        self._whence: dict[str, Whence] = {}
        self._came: tuple[str, int] | None = None

    def form(self, entry: Entry, sheet: Calculation) -> Form:
        """The form for an entry and a calculation, with all that was typed into it before."""
        self._last[entry.id] = sheet.name
        self._lay_out_drawer(entry, sheet)
        key = (entry.id, sheet.name)
        if key not in self._forms:
            self._forms[key] = Form(sheet, entry, self._typed.setdefault(entry.id, {}))
            self._tell_nominal(entry)
        self.tell_shop(self._forms[key])
        self._forms[key].laid_out = self._drawer.get(entry.id, {}) | self._in_drawer(sheet)
        return self._forms[key]

    def tell_shop(self, form: Form) -> None:
        """Tell a form where its texts came from, and what the machine in hand and the wheels of the shop have for it."""
        if form.entry is not None:
            form.whence = self._whence_of(form.entry)
        book = self._session.book
        known = wheels(book).values() if book is not None else ()
        machine = self.machine()
        found = {
            one.key: (*of_machine(machine, one.key), *of_wheels(known, one.key)) for one in form.sheet.inputs
        }
        form.offered = {key: offers for key, offers in found.items() if offers}

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
        typed = self._typed.get(entry.id, {})
        if texts := self._new_along(entry, along):
            typed = dict(typed)
            self._put(typed, texts)
            form = self._only_shown(entry, sheet, typed)
            form.nominal = {key: texts[key] for key in SIZES if key in texts and sheet.name == SHEET}
        else:
            form = self._forms.get((entry.id, sheet.name)) or self._only_shown(entry, sheet, typed)
        self.compute(form)
        return form

    def _only_shown(self, entry: Entry, sheet: Calculation, typed: Typed) -> Form:
        drawer = self._of_drawer(entry, sheet)
        form = Form(sheet, entry, typed | {key: TextLine.ending(text) for key, text in drawer.items()})
        form.laid_out = self._drawer.get(entry.id, {}) | drawer
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
        laid_out = self._drawer.get(name, {})
        return any(one.text.strip() not in {"", laid_out.get(key)} for key, one in self._typed[name].items())

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

    def machine(self) -> Machine | None:
        """The machine in hand, on whose graduations settings and readings are told: the chosen one, or the only one."""
        book = self._session.book
        known = machines(book) if book is not None else {}
        if self._session.machine not in known and (only := the_only_one(known)):
            # It stays in hand when a second one is written down.
            self._session.machine = only
        return known.get(self._session.machine)

    def _lay_out_drawer(self, entry: Entry, sheet: Calculation) -> None:
        """Type the cams of the machine in hand, and how they are counted, where a calculation asks for them.

        What the person makes of it then stays.
        """
        for key, text in self._of_drawer(entry, sheet).items():
            self._typed.setdefault(entry.id, {})[key] = TextLine.ending(text)
            self._drawer.setdefault(entry.id, {})[key] = text

    def _of_drawer(self, entry: Entry, sheet: Calculation) -> dict[str, str]:
        """What the machine in hand has for a calculation, where nobody typed anything in its place."""
        typed, laid_out = self._typed.get(entry.id, {}), self._drawer.get(entry.id, {})
        return {
            key: text
            for key, text in self._in_drawer(sheet).items()
            if (typed[key].text.strip() if key in typed else "") in {"", laid_out.get(key, "")}
        }

    def _in_drawer(self, sheet: Calculation) -> dict[str, str]:
        """What the machine in hand has of what a calculation asks for."""
        machine = self.machine()
        texts = texts_of(machine) if machine is not None else {}
        return {key: texts[key] for key in DRAWER if key in texts and sheet.field(key) is not None}

    def carry(self, entry: Entry, along: Along) -> None:
        """Type size and number of flutes that an entry was found with; what the person makes of them then stays.

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
        return texts

    def _put(self, typed: Typed, texts: Mapping[str, str]) -> None:
        for key, text in texts.items():
            typed.pop(key, None)
            if text:
                typed[key] = TextLine.ending(text)

    def draft(self, entry: Entry) -> Draft:
        """What was typed into the calculator for an entry, to be kept in case the program ends."""
        typed = self._typed.get(entry.id, {})
        laid_out = self._drawer.get(entry.id, {})
        texts = {
            key: one.text for key, one in typed.items() if one.text.strip() not in {"", laid_out.get(key)}
        }
        return Draft("calculator", entry.id, texts, units=self._session.display.lengths)

    def take_up(self, entry: Entry, draft: Draft) -> None:
        """Type what a draft holds, in the units that are worked in now: its numbers without one have that of the draft."""
        old, new = Display(draft.lengths), self._session.display
        typed = self._typed.setdefault(entry.id, {})
        for key, text in draft.fields.items():
            if (of := _quantity_of(key)) in QUANTITIES:
                typed[key] = TextLine.ending(in_other_unit(text, QUANTITIES[of].kind, old, new))

    def serving(self, entry: Entry, opened: str = "") -> list[Calculation]:
        """The calculations that serve an entry's family, the one for what is ground on this tool first.

        Args:
            entry: of the book.
            opened: the one in hand; it stays, also where the family has lost it since.
        """
        found = [*self._of(entry)]
        if opened and opened not in [sheet.name for sheet in found]:
            found.append(calculation(opened))
        return found

    def _of(self, entry: Entry) -> Sequence[Calculation]:
        """Those of an entry, found once as long as it and the book stay the same."""
        book = self._session.book
        if book is None:
            return ()
        known = self._serving.get(entry.id)
        if known is None or known[0] is not book or known[1] is not entry:
            found = main_job_first(book, entry, sheets_for(book.families.get(entry.family)))
            self._serving[entry.id] = known = (book, entry, found)
        return known[2]

    def first(self, entry: Entry, size: Size | None = None) -> Calculation | None:
        """The calculation to open for an entry: the one used last, else the one most its own.

        Args:
            entry: of the book.
            size: with which it is found now; with the class of a hole or a thread, its limits are what is asked for first.
        """
        sheets = self.serving(entry)
        asked = (
            ""
            if size is None
            else CLASS_OF_HOLE
            if size.tolerance
            else MARK_OF_TAP
            if has_class(size)
            else ""
        )
        if size is not None and asked and self._is_new(entry, size):
            sheets = [one for one in sheets if one.field(asked)] or sheets
            return next(iter(sheets), None)
        last = self._last.get(entry.id)
        return next((sheet for sheet in sheets if sheet.name == last), sheets[0] if sheets else None)

    def compute(self, form: Form) -> None:
        """Answer a form as it now stands, with what other calculations that were opened for the tool hand on."""
        forms = [
            one for (name, _), one in self._forms.items() if form.entry is not None and name == form.entry.id
        ]
        handed = {one.key: one for one in handed_to(form, forms, self._session.book, self._session.display)}
        form.handed = {key: one.text for key, one in handed.items()}
        form.handed_by = {key: one.said for key, one in handed.items()}
        form.handed_kept = frozenset(key for key, one in handed.items() if one.is_kept)
        compute(form, self._session.book, self._session.display)

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


def has_class(size: Size) -> bool:
    """Whether the name of a thread ends with the class of its nut, such as 2B or 6H.

    Example:
        >>> from library.search.sizes import Size
        >>> has_class(Size("1/2-13 2B", True)), has_class(Size("M12-6H LH", True)), has_class(Size("M12", True))
        (True, True, False)
    """
    words = size.text.upper().replace("-", " ").split()
    return size.is_thread and not THREAD_CLASSES.isdisjoint(words)
