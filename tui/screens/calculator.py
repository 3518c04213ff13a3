"""The calculator: a calculation filled from the entry, answered at every key."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from library.calc.field_titles import name_in, title_in
from library.calc.measured import SHEET, is_guess, measured_values
from library.pages.answer import answer_page
from tui import screens
from tui.figure.alphabet import ALPHABETS
from tui.screens.beside import place_of
from tui.screens.choosing import list_choices
from tui.screens.confirming import ask
from tui.screens.lessons import choose_lesson
from tui.screens.paned import CALCULATION, PanedScreen
from tui.screens.printing import printed_page
from tui.view.calculator_page import CalculatorPage
from tui.view.figure_page import has_drawing, pictured
from tui.view.form import SIZES
from tui.view.lines import Line

if TYPE_CHECKING:
    from geometry.calculation import Calculation
    from library.book.model import Entry
    from library.cards.learn import Lesson
    from library.threads import Thread
    from tui.screens.base_screen import Needs
    from tui.services.export import Printed
    from tui.session import Session


class CalculatorScreen(PanedScreen):
    """One calculation for one entry."""

    WHERE = "calculator"
    PLACE = CALCULATION

    def __init__(self, session: Session, entry: Entry, sheet: Calculation) -> None:
        super().__init__(session)
        self.entry = entry
        self.page = self._page_for(sheet)

    def title_text(self) -> str:
        """The calculation's title, and the entry's where that does not stand beside it."""
        title = self.page.form.sheet.title
        return title if self.abreast == 3 else f"{title}: {self.entry.title}"

    def state_text(self) -> str:
        """Which calculation of how many, the key that lists them, and the unit of lengths."""
        place = place_of(self.session, self.entry, self.page.form.sheet)
        return f"{place}, {self.key_of('calculate')} lists  {self.session.display.lengths}"

    def body(self, width: int, height: int) -> list[Line]:
        """The verdict, the fields, the answer, the drawings and the other checks."""
        return self.page.body(self.session.display, width, height, large=self.session.large_figures)

    def foot(self, width: int, height: int) -> list[Line]:
        """What is told of the field in hand, and the cautions."""
        return [*self.guided(width), *self.page.foot(self.session.display, width, height)]

    def needs(self) -> Needs:
        """A size for a thread, something measured for the book, something to draw, an answer, another calculation."""
        form = self.page.form
        return {
            **super().needs(),
            "threads": self._takes_a_thread,
            "learn-tool": self._measured,
            "drawing": lambda: self.session.large_figures or has_drawing(form),
            "print": lambda: form.answer is not None and form.answer.result is not None,
            "next": lambda: len(self.sheets()) > 1,
            "previous": lambda: len(self.sheets()) > 1,
            "empty": lambda: form.in_hand.text,
            "start-over": lambda: self.session.calculators.has_typed(self.entry),
        }

    def _takes_a_thread(self) -> bool:
        return any(self.page.form.sheet.field(key) for key in SIZES)

    def _measured(self) -> Sequence[Lesson]:
        """What the book could take of what was measured here."""
        answer = self.page.form.answer
        return measured_values(answer, self.entry.id, self.session.display) if answer is not None else ()

    def tool(self) -> Entry:
        """The entry that fills it."""
        return self.entry

    def words(self) -> Iterable[str]:
        """The quantities that are asked for, then those that are answered."""
        form = self.page.form
        outputs = form.answer.result.outputs if form.answer and form.answer.result else ()
        return dict.fromkeys([*(field.key for field in form.fields), *outputs])

    def word_in_hand(self) -> str:
        """The quantity of the field in hand; a relief as that of its surface."""
        return pictured(self.page.form)

    def told_in_hand(self) -> str:
        """What the book says of the value in hand, or where else it is from."""
        return self.page.told_of_value(self.session.display)

    def calculation(self) -> Calculation:
        """The calculation itself."""
        return self.page.form.sheet

    def room(self) -> int:
        """Characters that the field in hand still takes."""
        return self.page.form.room

    def typed(self, text: str) -> None:
        """Type into the field in hand, and answer."""
        self.page.form.type(text)
        self.say_choices(self.page.form)
        self.session.calculators.typed_by_hand(self.entry)
        self._compute()
        if self.page.form.is_word:
            self._say_where_words_go()
        self.page.scroll_to_field()

    def _say_where_words_go(self) -> None:
        """A number belongs into the field in hand: say how the word is taken away, and where one is looked for."""
        before = self.page.form.before_word
        back = f"brings {before} back" if before else "empties it"
        self.say(
            f"This field takes a number; {self.key_of('empty')} {back}. {self.key_of('calculate')} lists the calculations, "
            f"{self.key_of('back')} goes back toward the list, where typing finds."
        )

    def say_kept(self, keys: Sequence[str]) -> None:
        """Say what stands here from before, for it may be of another tool; nothing where this calculation has none of it."""
        form = self.page.form
        here = [one.key for one in form.fields if keys and form.whose(one.key) == "kept"]
        if here:
            names = ", ".join(name_in(form.sheet, one, form.surface).lower() for one in here)
            self.say(
                f"Kept from what was typed for such a tool before: {names}. For another tool type over it; "
                f"{self.key_of('menu')}, 'start over' forgets all of it."
            )

    def edited(self, key: str) -> None:
        """Edit the field in hand, and answer."""
        self.page.form.edit(key)
        self.session.calculators.typed_by_hand(self.entry)
        self._compute()
        self.page.scroll_to_field()

    def do_down(self) -> None:
        """To the next field."""
        self.page.form.move(1)
        self.page.scroll_to_field()

    def do_go_on(self) -> None:
        """To the next field that wants something, never onto a filled one."""
        self.page.form.to_wanted()
        self.page.scroll_to_field()

    def do_up(self) -> None:
        """To the field before."""
        self.page.form.move(-1)
        self.page.scroll_to_field()

    def do_empty(self) -> None:
        """Empty the field in hand; what filled it returns: of the machine, found, of the book, or the default."""
        self.page.form.clear()
        self._compute()
        self.page.scroll_to_field()

    def do_start_over(self) -> None:
        """Forget what was typed for this kind of tool, once that is confirmed."""
        calculators = self.session.calculators
        if not calculators.has_typed(self.entry):
            self.say("Nothing was typed here, so there is nothing to start over.")
            return
        ask(
            self,
            f"{self.entry.title}: start over?",
            "Start over",
            "Forgets what was typed for this kind of tool, in all of its calculations.",
            self._start_over,
        )

    def _start_over(self) -> None:
        self.session.calculators.start_over(self.entry)
        self._open(self.page.form.sheet)
        self.heelclear.autosave.keep_soon(self.session.calculators.draft(self.entry))

    def do_page_up(self) -> None:
        """See the part of the page above."""
        self.page.view.scroll(-max(self.page.view.height - 1, 1))

    def do_page_down(self) -> None:
        """See the part of the page below."""
        self.page.view.scroll(max(self.page.view.height - 1, 1))

    def do_drawing(self) -> None:
        """Show the drawings large in place of the numbers, or the numbers again."""
        if self.session.large_figures or has_drawing(self.page.form):
            self.session.large_figures = not self.session.large_figures
        else:
            self.say(
                f"There is nothing to draw of {title_in(self.page.form.sheet, self.page.form.focus, self.page.form.surface)}."
            )

    def do_calculate(self) -> None:
        """List the calculations of this family."""
        name = self.page.form.sheet.name
        self.app.push_screen(screens.CalculationsScreen(self.session, self.entry, name, self._open))

    def do_change(self) -> None:
        """Change the book's value for the field in hand; of a guess, and where the book has none, list what can be changed.

        Where the field takes one of several words and the book says nothing of it, these are listed.
        """
        form = self.page.form
        key = form.slot(form.focus)
        value = self.entry.values.get(key)
        if value is None and list_choices(
            self, title_in(form.sheet, form.focus, form.surface), form, self._put
        ):
            return
        if value is not None and (form.sheet.name == SHEET or not is_guess(value)):
            self.app.push_screen(screens.ValueFormScreen(self.session, self.entry, key))
        else:
            place = [*self.entry.values].index(key) if value is not None else 0
            self.app.push_screen(screens.ChangesScreen(self.session, self.entry, place))

    def _put(self, text: str) -> None:
        self.page.form.put(text)
        self.session.calculators.typed_by_hand(self.entry)
        self._compute()

    def do_threads(self) -> None:
        """List the standard threads."""
        if not self._takes_a_thread():
            self.say("This calculation asks for no diameter, so that there is nothing for a thread to fill.")
            return
        self.app.push_screen(screens.ThreadsScreen(self.session, self._take_thread))

    def _take_thread(self, thread: Thread) -> None:
        self.page.form.take_thread(thread.title)
        self._compute()

    def do_next(self) -> None:
        """Change to the next calculation of this family."""
        self._step(1)

    def do_previous(self) -> None:
        """Change to the calculation before."""
        self._step(-1)

    def _step(self, by: int) -> None:
        sheets = self.sheets()
        names = [sheet.name for sheet in sheets]
        self._open(sheets[(names.index(self.page.form.sheet.name) + by) % len(sheets)])

    def sheets(self) -> Sequence[Calculation]:
        """The calculations of this tool, for the menu."""
        return self.session.calculators.serving.all_of(self.entry, self.page.form.sheet.name)

    def open_sheet(self, name: str) -> None:
        """Go to another calculation of this tool."""
        found = next((one for one in self.sheets() if one.name == name), None)
        if found is None:
            self.say(
                "That calculation serves this tool no more; somebody else changed its family in the book."
            )
        else:
            self._open(found)

    def _open(self, sheet: Calculation) -> None:
        self.page = self._page_for(sheet)

    def do_units(self) -> None:
        """Change between millimetres and inches, and answer again."""
        super().do_units()
        self._compute()

    def do_cautions(self) -> None:
        """Show the cautions of this calculation and entry in full."""
        self.heelclear.show_cautions(self.page.form.sheet, self.entry)

    def do_begin_card(self) -> None:
        """Begin a job card with what was typed here."""
        screens.begin_from(self)

    def do_learn_tool(self) -> None:
        """Bring what was measured on a new tool into the book."""
        found, book = self._measured(), self.session.book
        if found and book is not None:
            choose_lesson(self, found, book)
        else:
            self.say(
                "Nothing was measured here that the book could take. The calculation 'A new tool measured' does that."
            )

    def printed(self) -> Printed | None:
        """The answer, once there is one."""
        form, book = self.page.form, self.session.book
        if form.answer is None or form.answer.result is None:
            self.say("There is no answer yet; give what is still needed first.")
            return None
        whose = {key: form.whose(key) for key in form.answer.inputs}
        page = answer_page(form.answer, book, self.session.display, form.entry, whose=whose)
        return printed_page(page, f"{self.entry.id}-{form.sheet.name}")

    def _page_for(self, sheet: Calculation) -> CalculatorPage:
        alphabet = ALPHABETS[self.session.theme.drawing]
        form = self.session.calculators.form(self.entry, sheet)
        form.reopened()
        page = CalculatorPage(form, alphabet, self.session.book, self.in_full)
        page.machine = self.session.calculators.drawer.machine()
        page.whole = f"{self.key_of('help')} in full"
        page.small = f"{self.key_of('drawing')} shows all again"
        page.lists = f"{self.key_of('change')} lists them"
        self.session.calculators.compute(page.form)
        return page

    def _compute(self) -> None:
        self.session.calculators.compute(self.page.form)
        self.heelclear.autosave.keep_soon(self.session.calculators.draft(self.entry))

    def book_changed(self) -> None:
        """Take the entry as it is in the book now, and answer again."""
        self.entry = self.session.entry(self.entry.id) or self.entry
        self.page.book = self.session.book
        self._answer_anew()

    def came_back(self) -> None:
        """Draw again; where another machine is in hand by now, with what that one has."""
        if self.session.calculators.drawer.machine() != self.page.machine:
            self._answer_anew()
        super().came_back()

    def _answer_anew(self) -> None:
        """Answer with what book, machine and wheels have now; what a person typed stays."""
        calculators = self.session.calculators
        calculators.compute(calculators.form(self.entry, self.page.form.sheet))
        self.page.machine = calculators.drawer.machine()
