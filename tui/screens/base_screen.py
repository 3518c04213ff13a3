"""The base of all screens: one pane of lines, a title line and a key bar, and the dispatch of keys to actions."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from contextlib import suppress
from typing import TYPE_CHECKING, ClassVar, cast

from textual import events
from textual.app import ComposeResult, ScreenStackError
from textual.screen import Screen

from tui import screens
from tui.actions import Action, Where, has_find_line, on_screen
from tui.view.bars import banner, key_bar
from tui.view.lines import Line, filled, wrap
from tui.widgets.pane import Pane

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from geometry.calculation import Calculation
    from tui.app import Heelclear
    from tui.services.export import Printed
    from tui.session import Session
    from tui.view.fields import Fields


Needs = Mapping[str, Callable[[], object]]
"""What actions need, by their ids: each looks whether it is there."""

MOST_SAID = 8
"""Lines that a sentence may take in place of the key bar."""

PAINT_AGAIN = "repaint"
"""The action that shows all of the picture again, a sentence in place of the key bar included."""


def method_of(action: Action) -> str:
    """The name of the method by which a screen does an action."""
    return "do_" + action.id.replace("-", "_")


class BaseScreen(Screen[None], inherit_bindings=False):
    """A screen of lines.

    A subclass says where it is in the registry, draws its body, and has a method ``do_...`` for each
    action that the registry gives it.
    """

    WHERE: ClassVar[Where]
    is_gone = False
    """Whether what the screen shows is not in the book any more."""

    AUTO_FOCUS = None
    ALLOW_SELECT = False

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.said = ""
        self.pressed = ""
        self._pane = Pane(session.theme, self.lines, "whole")

    @property
    def heelclear(self) -> Heelclear:
        """The program, by its own type."""
        return cast("Heelclear", self.app)

    def compose(self) -> ComposeResult:
        """One pane over the whole screen."""
        yield self._pane

    @property
    def in_full(self) -> str:
        """Where the cautions stand in full, by the reader's own key."""
        return f"{self.key_of('cautions')} in full"

    def key_of(self, name: str) -> str:
        """The reader's own key for an action, or its place in the menu."""
        return self.session.keymap.told(name)

    def title_text(self) -> str:
        """What stands at the left of the first line."""
        raise NotImplementedError

    def state_text(self) -> str:
        """What stands at the right of the first line."""
        return self.session.display.lengths

    def body(self, width: int, height: int) -> list[Line]:
        """The lines between the first and the last."""
        raise NotImplementedError

    def typed(self, text: str) -> None:
        """Take a character, or a paste without line breaks; a page has no use for one, and says where there is."""
        if text:
            self.say(self._where_typing_is_for())

    def _where_typing_is_for(self) -> str:
        """Told on a page on which somebody types: the key that leads to where it does something."""
        back, stack = self.key_of("back"), self.app.screen_stack
        below = stack[-2] if len(stack) > 1 else None
        if not isinstance(below, BaseScreen) or below.room() is None:
            return f"Nothing is typed on this page; {back} goes back."
        if has_find_line(below.WHERE):
            return f"Nothing is typed on this page; {back} goes back to the list, where typing finds."
        return f"Nothing is typed on this page; {back} goes back to the line in hand."

    def room(self) -> int | None:
        """Characters that the line in hand still takes; nothing on a screen on which nothing is typed."""
        return None

    def is_text(self, key: str) -> bool:
        """Whether a character such as ``?`` is typed here, although it is the key of an action."""
        return False

    def edited(self, key: str) -> None:
        """Take a key that is no action and no character, such as backspace."""

    def needs(self) -> Needs:
        """What some actions of the screen need to do anything, by their ids; an action that could only say that it cannot be done is in no menu."""
        return {
            "drafts": lambda: self.session.left_behind,
            "drop-old-drafts": lambda: self.session.left_behind and screens.old_drafts(self.session),
            "take-back": lambda: self.heelclear.has_saved,
        }

    def book_changed(self) -> None:
        """The book was read again; a screen that holds a part of it takes that part anew."""

    def words(self) -> Iterable[str]:
        """The quantities in front of the reader, for the help."""
        return ()

    def sheets(self) -> Sequence[Calculation]:
        """The calculations that the menu finds here by their names; none where nothing is calculated."""
        return ()

    def open_sheet(self, name: str) -> None:
        """Go to one of them."""

    def told_in_hand(self) -> str:
        """What the foot tells of where the reader is and may have no room for; most screens tell nothing there."""
        return ""

    def word_in_hand(self) -> str:
        """The quantity in the line in hand, which the help explains first; empty where there is none."""
        return ""

    def calculation(self) -> Calculation | None:
        """The calculation in front of the reader, for the help."""
        return None

    def leave_if_gone(self) -> None:
        """Go back where what the screen shows is not in the book any more, and say so."""
        if self.is_gone and self.is_current:
            gone = "This entry is not in the book any more."
            said = self.said if gone in self.said else f"{self.said} {gone}".strip()
            self.app.pop_screen()
            self.heelclear.say(said)

    def do(self, action: Action) -> None:
        """Do an action of the registry, and show what came of it."""
        self.session.first_steps.did(self.WHERE, action.id)
        if action.opens:
            self.app.push_screen(screens.opened_by(action)(self.session))
        else:
            getattr(self, method_of(action))()
        if self.is_active:
            self.draw()

    def draw(self) -> None:
        """Show the screen as it now is."""
        self._pane.show()

    def foot(self, width: int, height: int) -> list[Line]:
        """The lines right above the last one, which stay where they are; most screens have none.

        Args:
            width: in cells.
            height: of the whole screen, which says how many lines there are for it.
        """
        return []

    def last_lines(self, width: int) -> list[Line]:
        """The keys, or a sentence in their place."""
        said = self.said or self.heelclear.background.sentence
        return wrap(said, width, "strong")[:MOST_SAID] if said else [self._bar(width)]

    def lines(self, width: int, height: int) -> list[Line]:
        """The whole screen as lines."""
        last, foot = self.last_lines(width), self.foot(width, height)
        room = max(height - 1 - len(foot) - len(last), 0)
        body = filled(self.body(width, max(height - 2 - len(foot), 0)), room)
        return [banner(self.title_text(), self.state_text(), width), *body, *foot, *last][:height]

    def _bar(self, width: int) -> Line:
        typed = "?" if self.is_text("?") else ""
        return key_bar(self.WHERE, self.session.keymap, width, typed, self.back_word())

    def back_word(self) -> str:
        """What the row of keys says of the way back; empty where it leads back, as on most screens."""
        return ""

    def say(self, sentence: str) -> None:
        """Show a sentence in place of the key bar until the next key."""
        self.said = sentence

    def say_choices(self, form: Fields) -> None:
        """Say which choices the line in hand has, where what was typed does not say which is meant."""
        if told := form.told_of_choices:
            self.say(told)

    def on_screen_resume(self) -> None:
        """Somebody came back; not to be written anew below, where it would be called beside this one and not in its place."""
        self.came_back()

    def came_back(self) -> None:
        """Draw again: what was done on another screen may show here."""
        self.draw()
        self.leave_if_gone()

    def on_key(self, event: events.Key) -> None:
        """Do what the registry says for a key; else hand it on as a character or an edit."""
        event.stop()
        event.prevent_default()
        if not self.is_active:
            self._hand_on(events.Key(event.key, event.character))
            return
        key = event.character if event.key == "question_mark" and event.character else event.key
        self.pressed = key
        keymap = self.session.keymap
        action = None if self.is_text(key) else keymap.action(self.WHERE, key)
        if action is None or action.id != PAINT_AGAIN:
            self.said = ""
        if action is not None:
            self.do(action)
            return
        meaning = None if self.is_text(key) else keymap.meaning(key)
        if meaning is not None and meaning.nothing:
            self.say(meaning.nothing)
        elif event.is_printable and event.character:
            is_full = self.room() == 0
            self.typed(event.character)
            if is_full and not self.said:
                self.say("This line takes no more characters; what is typed behind its last one is left out.")
        else:
            self.edited(key)
        self.draw()

    def on_paste(self, event: events.Paste) -> None:
        """Take pasted text as if it were typed, its line breaks as spaces."""
        event.stop()
        if not self.is_active:
            self._hand_on(events.Paste(event.text))
            return
        pasted, room = " ".join(event.text.split()), self.room()
        self.typed(pasted)
        if room is not None and len(pasted) > room and not self.said:
            self.say(
                f"What was pasted is longer than this line takes: its first {max(room, 0)} characters are here."
            )
        self.draw()

    def _hand_on(self, event: events.Event) -> None:
        """Give what was typed ahead to the screen that came in front by then; it was meant for that one."""
        with suppress(ScreenStackError):
            self.app.screen.post_message(event)

    def do_back(self) -> None:
        """Go back to the screen before."""
        self.app.pop_screen()

    def do_help(self) -> None:
        """Explain this screen."""
        self.app.push_screen(screens.HelpScreen(self.session, self))

    def do_menu(self) -> None:
        """List all that can be done here."""
        self.app.push_screen(screens.ActionsScreen(self.session, self))

    def printed(self) -> Printed | None:
        """What there is to be taken away; where there is none yet, that is said."""
        return None

    def do_print(self) -> None:
        """List the ways to take away what is in front."""
        printed = self.printed()
        if printed is not None:
            self.app.push_screen(screens.PrintScreen(self.session, printed, self))

    def do_cards(self) -> None:
        """List the job cards; where the list or a card lies below, go back to it."""
        screens.to_the_cards(self)

    def do_cautions(self) -> None:
        """Show the general cautions in full."""
        self.heelclear.show_cautions(None, None)

    def do_drafts(self) -> None:
        """Show what an earlier run left unsaved."""
        if self.session.left_behind:
            self.app.push_screen(screens.DraftsScreen(self.session))
        else:
            self.say("Nothing was left unsaved.")

    def do_new_entry(self) -> None:
        """Add an entry to the book, of the family of the chosen one."""
        chosen = self.session.page.chosen
        self.app.push_screen(screens.NewEntryForm(self.session, chosen.family if chosen else ""))

    def do_new_family(self) -> None:
        """Add a family to the book."""
        self.app.push_screen(screens.NewFamilyForm(self.session))

    def do_take_back(self) -> None:
        """Show what taking back the last save would change."""
        screens.take_back(self.heelclear)

    def do_share(self) -> None:
        """List what can be done with the book as a whole."""
        self.app.push_screen(screens.ChangeBookScreen(self.session))

    def do_next_place(self) -> None:
        """To the next place; the next line where a screen has no other."""
        self._do("down")

    def do_place_before(self) -> None:
        """To the place before; the line before where a screen has no other."""
        self._do("up")

    def do_right(self) -> None:
        """Change what is in hand, or go one sign on in it."""
        self.edited("right")

    def do_left(self) -> None:
        """Change it the other way, or go one sign back in it."""
        self.edited("left")

    def _do(self, name: str) -> None:
        getattr(self, method_of(on_screen(self.WHERE)[name]))()

    def do_units(self) -> None:
        """Change between millimetres and inches."""
        self.session.switch_units()
        self.heelclear.load_units()

    def do_repaint(self) -> None:
        """Paint everything again."""
        self.heelclear.repaint()

    def do_suspend(self) -> None:
        """Go to the shell for a while."""
        self.app.action_suspend_process()

    def do_quit(self) -> None:
        """Leave the program; where no disk takes what was typed, that is asked about first."""
        if self.heelclear.autosave.not_kept():
            screens.ask_to_leave(self)
        else:
            self.heelclear.leave()
