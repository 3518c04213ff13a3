"""The shop's book in git: its history, recording it, pulling and pushing; all of it behind the screen."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

from tui.book_desk import BookDesk

if TYPE_CHECKING:
    from library.book.model import Entry
    from library.editing.merging import Choice
    from library.history.following import Revision
    from library.history.joining import FileChoice
    from library.history.sharing import PullAsked, Pulled
    from library.history.work_tree import WorkTree
    from tui.app import Heelclear

NO_GIT = (
    "The book's folder is in no git work tree, or git is not installed. Run 'git init' in that folder, and name "
    "another copy with 'git remote add origin'. Without git all else works."
)

Outcome = TypeVar("Outcome")


@dataclass(frozen=True)
class Standing:
    """How the book stands with git.

    Attributes:
        is_in_git: whether git looks after the folder.
        records_each_save: whether the shop wants every save recorded.
        unrecorded: the files that changed and are in no commit yet.
        trouble: a sentence where git is there and cannot say.
    """

    is_in_git: bool = False
    records_each_save: bool = False
    unrecorded: tuple[Path, ...] = ()
    trouble: str = ""


class Sharing:
    """What the screens ask of git.

    Args:
        app: the program.
        desk: where the book is changed.

    Attributes:
        standing: how the book stood at the last look; nothing before the first one has ended.
    """

    def __init__(self, app: Heelclear, desk: BookDesk) -> None:
        self._app = app
        self._desk = desk
        self.standing: Standing | None = None

    def look(self) -> None:
        """See how the book stands, behind the screen."""

        def work() -> None:
            found = _standing(self._desk)
            self._app.post_message(self._app.Follow(lambda: self._take(found)))

        self._app.run_worker(work, thread=True, group="standing", exclusive=True)

    def _take(self, standing: Standing) -> None:
        self.standing = standing
        self._app.draw_front()

    def show_history(self, entry: Entry) -> None:
        """Show what git remembers of an entry."""

        def work(tree: WorkTree) -> Sequence[Revision]:
            from library.history.following import history

            return history(tree, entry.id)

        def show(revisions: Sequence[Revision]) -> None:
            from tui.screens.entry_history import EntryHistoryScreen

            self._app.push_screen(EntryHistoryScreen(self._app.session, entry, revisions))

        self._with_git("Asking git for the history.", work, show, "The history is here; ask for it again.")

    def record_now(self) -> None:
        """Record what was changed by hand, or saved while recording was off, as one commit."""

        def work(tree: WorkTree) -> Sequence[Path]:
            from library.history.recording import record

            files = tree.uncommitted()
            names = ", ".join(path.name for path in files)
            if files:
                record(tree, files, f"The book as it stands: {names}")
            return files

        def tell(files: Sequence[Path]) -> None:
            count = len(files)
            self._app.say(
                f"Recorded: {count} file{'s' if count > 1 else ''}."
                if count
                else "Everything is recorded already."
            )
            self.look()

        self._with_git("Recording the book in git.", work, tell)

    def change_habit(self) -> None:
        """Turn recording of every save on or off for this book."""
        from library.history.habit import commits_each_save, set_commits_each_save

        def work() -> bool:
            wanted = not commits_each_save(self._desk.shop)
            set_commits_each_save(self._desk.shop, wanted=wanted)
            return wanted

        def tell(wanted: bool) -> None:
            self._app.say(
                "From now on every save is recorded as one commit."
                if wanted
                else "Saves are not recorded any more."
            )
            self.look()

        self._app.behind.begin("Writing the setting.", work, tell)

    def pull(self, choices: Sequence[FileChoice] = ()) -> None:
        """Bring in what others pushed, asking where both changed the same."""

        def work(tree: WorkTree) -> Pulled | PullAsked:
            from library.history.sharing import pull

            return pull(tree, choices)

        def take(done: Pulled | PullAsked) -> None:
            from library.history.sharing import PullAsked

            if isinstance(done, PullAsked):
                self._ask(done, choices)
                return
            self._app.read_again(_came(done))
            self.look()

        self._with_git("Pulling from the other copy.", work, take)

    def _ask(self, asked: PullAsked, choices: Sequence[FileChoice]) -> None:
        from library.history.joining import FileChoice
        from tui.screens.change_book import ChangeBookScreen
        from tui.screens.two_people import TwoPeopleScreen

        if not isinstance(self._app.screen, ChangeBookScreen):
            self._app.say(
                "Both copies changed the same thing, so nothing was pulled yet. Pull again to choose which to keep."
            )
            return

        def answered(chosen: list[Choice]) -> None:
            new = [FileChoice(one.path, choice) for one, choice in zip(asked.conflicts, chosen, strict=True)]
            self.pull((*choices, *new))

        conflicts = [one.conflict for one in asked.conflicts]
        self._app.push_screen(TwoPeopleScreen(self._app.session, conflicts, answered, "the other copy"))

    def push(self) -> None:
        """Send what is recorded here to the other copy."""

        def work(tree: WorkTree) -> tuple[Path, ...]:
            from library.history.sharing import push

            push(tree)
            return tree.uncommitted()

        def tell(left: tuple[Path, ...]) -> None:
            names = ", ".join(path.name for path in left)
            rest = f" Not recorded yet, and so not sent: {names}." if left else ""
            self._app.say(f"Sent to the other copy.{rest}")

        self._with_git("Pushing to the other copy.", work, tell)

    def _with_git(
        self,
        doing: str,
        work: Callable[[WorkTree], Outcome],
        then: Callable[[Outcome], None],
        elsewhere: str = "",
    ) -> None:
        """Do something in the work tree behind the screen; where there is none, say what to do."""

        def with_tree() -> Outcome:
            from library.history.git import GitRefused

            tree = self._desk.work_tree()
            if tree is None:
                raise GitRefused(NO_GIT)
            return work(tree)

        self._app.behind.begin(doing, with_tree, then, elsewhere=elsewhere)


def _came(done: Pulled) -> str:
    if not done.commits:
        return "Nothing new was there."
    came = "1 commit came in" if done.commits == 1 else f"{done.commits} commits came in"
    return (
        f"{came}."
        if not done.joined
        else f"{came} and joined with yours; push, so that the others have both."
    )


def _standing(desk: BookDesk) -> Standing:
    from library.history.git import GitRefused
    from library.history.habit import commits_each_save

    try:
        tree = desk.work_tree()
        if tree is None:
            return Standing()
        return Standing(True, commits_each_save(desk.shop), tree.uncommitted())
    except GitRefused as refused:
        return Standing(True, trouble=refused.sentence)
