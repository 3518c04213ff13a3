"""The way of a change of the book through the screens: worked out, looked at, saved, asked about, taken back."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from library.editing.changes import AddEntry, CopyEntry, RenameEntry
from library.editing.saving import Done
from tui import screens
from tui.services.book_service import FieldConflicts

if TYPE_CHECKING:
    from library.editing.changes import Change
    from library.editing.merging import Choice, Conflict
    from library.editing.plan import Plan
    from library.editing.saving import Conflicts
    from tui.app import Heelclear


@dataclass(frozen=True)
class ChangeRequest:
    """A change on its way.

    Attributes:
        change: what is wanted; nothing where a save is taken back.
        began: what the person found when he began, by field.
        answered: takes the conflicts and the person's answers where somebody else changed the same since then.
        saved: done once it is saved, and not before: only then may what was typed be forgotten.
    """

    change: Change | None = None
    began: Mapping[str, object] | None = None
    answered: Callable[[FieldConflicts, Sequence[Choice]], None] = lambda conflicts, choices: None
    saved: Callable[[], None] = lambda: None

    def new_id(self) -> str:
        """The id that an entry has afterwards and had not before; else empty."""
        match self.change:
            case AddEntry(id=name) | CopyEntry(new_id=name) | RenameEntry(new_id=name):
                return name
            case _:
                return ""


def preview(app: Heelclear, request: ChangeRequest) -> None:
    """Show what a change would write; where somebody else changed the same, ask first."""
    change = request.change
    if change is None:
        return

    def show(planned: Plan | FieldConflicts) -> None:
        if isinstance(planned, FieldConflicts):
            _ask(app, list(planned.by_field.values()), lambda choices: request.answered(planned, choices))
        else:
            _show(app, planned, request)

    app.background.begin(
        "Working out what would change in the file.",
        lambda: app.book_service.plan(change, request.began),
        show,
        elsewhere="What would change is worked out; go back and ask for it again.",
    )


def take_back(app: Heelclear) -> None:
    """Show what taking back the last save would write."""
    plan = app.book_service.undo()
    if plan is None:
        app.say("Nothing was saved yet, so there is nothing to take back.")
    else:
        _show(app, plan, ChangeRequest())


def _show(app: Heelclear, plan: Plan, request: ChangeRequest) -> None:
    if plan.before == plan.after:
        app.say("Nothing would change in the file.")
        return
    app.push_screen(screens.ReviewChangeScreen(app.session, plan, lambda plan: _save(app, plan, request)))


def _save(app: Heelclear, plan: Plan, request: ChangeRequest, choices: Sequence[Choice] = ()) -> None:
    def take(saved: Done | Conflicts) -> None:
        if isinstance(saved, Done):
            _saved(app, saved, request)
        else:
            _ask(
                app,
                saved.conflicts,
                lambda chosen: _save(app, plan, request, (*choices, *chosen)),
                plan.path.name,
            )

    def work() -> Done | Conflicts:
        # A program that is killed while it saves has what was typed either in the book or in a draft.
        app.autosave.keep_now()
        return app.book_service.save(plan, choices)

    app.background.begin("Saving.", work, take)


def _ask(
    app: Heelclear,
    conflicts: Sequence[Conflict],
    answered: Callable[[list[Choice]], None],
    file: str = "",
) -> None:
    app.push_screen(screens.ConflictScreen(app.session, conflicts, answered, file))


def _saved(app: Heelclear, done: Done, request: ChangeRequest) -> None:
    app.back_from("review-change", "conflict")
    request.saved()
    if request.new_id():
        app.session.wanted = request.new_id()
        app.back_from("form", "changes", "entry")
    done_so = "Saved" if request.change is not None else done.plan.sentence.partition(":")[0]
    said = [f"{done_so}.", "What others changed meanwhile is kept too." if done.merged else "", done.warning]
    told = " ".join(part for part in said if part)
    app.read_again(told)

    def tell(recorded: str) -> None:
        if recorded:
            app.say(f"{told} {recorded}")

    app.background.begin(
        f"{done_so}; it is being recorded in git.", lambda: app.book_service.record(done), tell
    )
