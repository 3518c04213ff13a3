"""The machines and wheels of the book; each is read, or changed in a form, and a new one is made in one."""

from __future__ import annotations

from typing import TYPE_CHECKING

from library.equipment.model import machines, wheels
from tui.screens.cards.listing import told_of_machine, told_of_wheel
from tui.screens.chooser import Choice, Chooser
from tui.screens.in_editor import open_file
from tui.screens.table_ways import change_table, choose_new, read_table

if TYPE_CHECKING:
    from library.equipment.model import Machine, Wheel
    from tui.screens.base_screen import Needs

_NEW = (
    Choice("new:machine", "A new machine", "Opens a form for it; nothing is written until you have seen it."),
    Choice("new:wheel", "A new wheel", "Opens a form for it; nothing is written until you have seen it."),
)


class MachinesScreen(Chooser):
    """What the book knows of each machine and each wheel."""

    WHERE = "machines"
    NAME_WIDTH = 28
    KEEPS_FIND = True
    _known: frozenset[str] = frozenset()
    """What was there before something was changed or made here."""

    def title_text(self) -> str:
        """What these are."""
        return "Machines and wheels   * in hand"

    def choices(self) -> list[Choice]:
        """The machines, then the wheels, then how to write down one more."""
        found, mounted = self._machines(), self._wheels()
        return [
            *(
                Choice(f"machine:{name}", self._titled(one), told_of_machine(one))
                for name, one in found.items()
            ),
            *(Choice(f"wheel:{name}", one.title, told_of_wheel(one)) for name, one in mounted.items()),
            *_NEW,
        ]

    def book_changed(self) -> None:
        """Choose the one that is new, where one was made here."""
        choose_new(self, self._known)

    def take(self, choice: Choice) -> None:
        """Show the chosen one, to be read; the form of a new one."""
        self._known = frozenset(one.id for one in self.choices())
        read_table(self, *_table_of(choice.id))

    def do_change(self) -> None:
        """Open the form of the chosen one, or an empty one."""
        kind, name = self._chosen()
        if kind:
            self._known = frozenset(one.id for one in self.choices())
            change_table(self.heelclear, *_table_of(f"{kind}:{name}"))

    def do_open_file(self) -> None:
        """Open the file of the chosen one in the editor."""
        kind, name = self._chosen()
        known: dict[str, Machine | Wheel] = {**(self._machines() if kind == "machine" else self._wheels())}
        one = known.get(name)
        if one is None:
            self.say("Choose a machine or a wheel whose file is to be opened.")
        else:
            open_file(self.heelclear, one.place)

    def needs(self) -> Needs:
        """A file has what is there already, and only a machine that is not in hand is taken."""
        return {
            **super().needs(),
            "open-file": lambda: self._chosen()[0] in ("machine", "wheel"),
            "mark": self._can_be_taken_in_hand,
        }

    def _can_be_taken_in_hand(self) -> bool:
        in_hand = self.session.calculators.drawer.machine()
        kind, name = self._chosen()
        return kind == "machine" and (in_hand is None or in_hand.id != name)

    def _chosen(self) -> tuple[str, str]:
        """The kind and the id of what is chosen; empty where nothing is."""
        found = self.found()
        self.view.resize(len(found), self.view.height)  # One of them may be gone since it was drawn.
        kind, _, name = found[self.view.chosen].id.partition(":") if found else ("", "", "")
        return kind, name

    def do_mark(self) -> None:
        """Take the chosen machine in hand, so that calculations tell its divisions."""
        kind, name = self._chosen()
        if kind != "machine":
            self.say(
                "Choose a machine; its mark says that calculations tell settings and readings in its divisions."
            )
            return
        machine = self._machines().get(name)
        if machine is None:
            self.say(f"The machine {name} is not in the book any more; somebody else changed its file.")
            return
        self.session.machine = name
        self.say(f"Calculations tell settings and readings in the divisions of {machine.title}.")

    def _titled(self, machine: Machine) -> str:
        """Its title, marked where it is in hand."""
        in_hand = self.session.calculators.drawer.machine()
        return f"{'* ' if in_hand is not None and in_hand.id == machine.id else ''}{machine.title}"

    def _machines(self) -> dict[str, Machine]:
        return dict(machines(self.session.book).items()) if self.session.book is not None else {}

    def _wheels(self) -> dict[str, Wheel]:
        return dict(wheels(self.session.book).items()) if self.session.book is not None else {}


def _table_of(choice: str) -> tuple[str, str]:
    """The kind and the id of what a choice stands for; no id for a new one."""
    kind, _, name = choice.partition(":")
    return (name, "") if kind == "new" else (kind, name)
