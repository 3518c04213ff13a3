"""The way of a change: planned, looked at, saved, asked about, recorded, taken back."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from tui.book_desk import BookDesk

if TYPE_CHECKING:
    from library.editing.changes import Change
    from library.editing.merging import Choice, Conflict
    from library.editing.plan import Plan
    from library.editing.saving import Asked, Done
    from tui.app import Heelclear

Met = Mapping[str, "Conflict"]
"""What somebody else changed as well since a person began, by field."""


@dataclass(frozen=True)
class Wish:
    """A change on its way.

    Attributes:
        change: what is wanted; nothing where a save is taken back.
        began: what the person found when he began, by field.
        met: takes the conflicts and the person's answers where somebody else changed the same since then.
        saved: done once it is saved, and not before: only then may what was typed be forgotten.
    """

    change: Change | None = None
    began: Mapping[str, object] | None = None
    met: Callable[[Met, Sequence[Choice]], None] = lambda met, choices: None
    saved: Callable[[], None] = lambda: None

    def new_id(self) -> str:
        """The id that an entry has afterwards and had not before; else empty."""
        from library.editing.changes import AddEntry, CopyEntry, RenameEntry

        match self.change:
            case AddEntry(id=name) | CopyEntry(new_id=name) | RenameEntry(new_id=name):
                return name
            case _:
                return ""


class Changing:
    """What the screens ask for when something of the book shall change.

    Args:
        app: the program.
        desk: where the book is changed.
    """

    def __init__(self, app: Heelclear, desk: BookDesk) -> None:
        self._app = app
        self.desk = desk

    def look(self, wish: Wish) -> None:
        """Show what a change would write."""
        change = wish.change
        if change is None:
            return

        def show(made: Plan | dict[str, Conflict]) -> None:
            if isinstance(made, dict):
                self._ask(list(made.values()), lambda choices: wish.met(made, choices))
            else:
                self._show(made, wish)

        self._app.behind.begin(
            "Working out what would change in the file.",
            lambda: self.desk.plan(change, wish.began),
            show,
            elsewhere="What would change is worked out; go back and ask for it again.",
        )

    def take_back(self) -> None:
        """Show what taking back the last save would write."""
        plan = self.desk.undo()
        if plan is None:
            self._app.say("Nothing was saved yet, so there is nothing to take back.")
        else:
            self._show(plan, Wish())

    def _show(self, plan: Plan, wish: Wish) -> None:
        if plan.before == plan.after:
            self._app.say("Nothing would change in the file.")
            return
        from tui.screens.before_saving import BeforeSavingScreen

        self._app.push_screen(
            BeforeSavingScreen(self._app.session, plan, lambda plan: self._save(plan, wish))
        )

    def _save(self, plan: Plan, wish: Wish, choices: Sequence[Choice] = ()) -> None:
        def take(saved: Done | Asked) -> None:
            from library.editing.saving import Done

            if isinstance(saved, Done):
                self._saved(saved, wish)
            else:
                self._ask(
                    saved.conflicts,
                    lambda chosen: self._save(plan, wish, (*choices, *chosen)),
                    plan.path.name,
                )

        self._app.behind.begin("Saving.", lambda: self.desk.save(plan, choices), take)

    def _ask(
        self,
        conflicts: Sequence[Conflict],
        answered: Callable[[list[Choice]], None],
        file: str = "",
    ) -> None:
        from tui.screens.two_people import TwoPeopleScreen

        self._app.push_screen(TwoPeopleScreen(self._app.session, conflicts, answered, file))

    def _saved(self, done: Done, wish: Wish) -> None:
        self._app.back_from("before-saving", "two-people")
        wish.saved()
        if wish.new_id():
            self._app.session.wanted = wish.new_id()
            self._app.back_from("form", "changes", "entry")
        said = ["Saved.", "What others changed meanwhile is kept too." if done.merged else "", done.warning]
        told = " ".join(part for part in said if part)
        self._app.read_again(told)

        def tell(recorded: str) -> None:
            if recorded:
                self._app.say(f"{told} {recorded}")

        self._app.behind.begin("Saved; it is being recorded in git.", lambda: self.desk.record(done), tell)
