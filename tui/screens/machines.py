"""The machines and wheels of the book; the chosen one is opened in its file, a new one is shown how to be written."""

from __future__ import annotations

from typing import TYPE_CHECKING

from library.equipment.model import machines, wheels
from tui import screens
from tui.screens.cards.listing import told_of_machine, told_of_wheel
from tui.screens.chooser import Choice, Chooser
from tui.screens.in_editor import open_file

if TYPE_CHECKING:
    from library.equipment.model import Machine, Wheel

_NEW = (
    Choice("new:machine", "A new machine", "Shows how a machine is written down, and where."),
    Choice("new:wheel", "A new wheel", "Shows how a wheel is written down, and where."),
)


class MachinesScreen(Chooser):
    """What the book knows of each machine and each wheel."""

    WHERE = "machines"
    NAME_WIDTH = 28

    def title_text(self) -> str:
        """What these are."""
        return "Machines and wheels"

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

    def take(self, choice: Choice) -> None:
        """Open its file in the editor, or show how one is written down."""
        kind, _, name = choice.id.partition(":")
        if kind == "new":
            self.app.push_screen(screens.EquipmentScreen(self.session, name, self.heelclear.shop))
        else:
            open_file(
                self.heelclear, (self._machines()[name] if kind == "machine" else self._wheels()[name]).place
            )

    def do_mark(self) -> None:
        """Take the chosen machine in hand, so that calculations tell its divisions."""
        found = self.found()
        kind, _, name = found[self.view.chosen].id.partition(":") if found else ("", "", "")
        if kind != "machine":
            self.say(
                "Choose a machine; its mark says that calculations tell settings and readings in its divisions."
            )
            return
        self.session.machine = name
        self.say(
            f"Calculations tell settings and readings in the divisions of {self._machines()[name].title}."
        )

    def _titled(self, machine: Machine) -> str:
        """Its title, marked where it is in hand."""
        in_hand = self.session.calculators.machine()
        return f"{'* ' if in_hand is not None and in_hand.id == machine.id else ''}{machine.title}"

    def _machines(self) -> dict[str, Machine]:
        return dict(machines(self.session.book)) if self.session.book is not None else {}

    def _wheels(self) -> dict[str, Wheel]:
        return dict(wheels(self.session.book)) if self.session.book is not None else {}
