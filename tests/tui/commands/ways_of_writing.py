"""Every command and every saver of the screens that writes something, each with what stands there before."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from pathlib import Path

from library.book.folders import shipped_folder, state_folder
from library.book.opening import open_book
from library.cards.store import discard, load
from library.drafts.draft import Draft
from library.drafts.draft_store import Drafts
from library.editing.changes import AddEntry
from library.editing.planning import plan
from library.editing.saving import save
from library.errors import Refused, refusal
from library.history.auto_commit import set_commits_each_save
from tui.first_steps import first_steps
from tui.main import main
from tui.own_units import remember_units
from tui.services.editor import Editor
from tui.services.export import write_new_file

YARD = Path("yard")
DRAFT, CLOSED = "2026-11-20-01", "2026-08-17-01"
TABLE = (
    "card,when,quantity,flute,reading\n"
    f"{DRAFT},received,land_width,,3.3 mm\n{CLOSED},after,diameter,,8.01 mm\n"
)
BEGUN_FROM = "twist-drill-jobber-plain-steel"


def command(*words: str) -> Callable[[], int]:
    return lambda: main(["--library", "yard", *words])


def saver(work: Callable[[], object]) -> Callable[[], int]:
    """A saver of the screens, which tells of what it refuses as they do."""

    def run() -> int:
        try:
            work()
        except Refused as error:
            print(error.sentence, file=sys.stderr)
            return 2
        except OSError as error:
            print(refusal(error, Path("file")).sentence, file=sys.stderr)
            return 2
        return 0

    return run


def _draft() -> None:
    drafts = Drafts(state_folder() / "drafts")
    drafts.keep(Draft("value", "a.b", {"low": "3 deg"}))
    drafts.keep(Draft("value", "a.b", {"low": "4 deg"}))
    for kept in drafts.left_behind():
        drafts.keep(kept.draft)
        drafts.forget(kept)
    drafts.close()


def _entry() -> None:
    save(plan(AddEntry("new-drill", "twist-drill", "A new drill"), YARD, shipped_folder()))


def _notes() -> None:
    book = open_book(YARD)
    Editor(state_folder() / "notes").begin_notes(book.entries["ferry-ramp-hinge-tap"])


def _steps() -> None:
    first_steps(state_folder()).take("card")


def _git() -> None:
    for words in (["init", "-q"], ["add", "-A"], ["commit", "-qm", "begun"]):
        subprocess.run(["git", "-C", "yard", *words], check=True, capture_output=True)


def _both_drafts() -> None:
    command("card-set", CLOSED, "--reopen")()
    Path("table.csv").write_text(TABLE, encoding="utf-8")


def _trusted() -> None:
    _git()
    command("trust", "yard")()


def _steps_done() -> None:
    first_steps(state_folder()).take("open", "menu")


def _units() -> None:
    remember_units(state_folder(), "mm")


def _left_draft() -> None:
    drafts = Drafts(state_folder() / "drafts")
    drafts.keep(Draft("entry", "tap", {"title": "A tap"}))
    drafts.close()


@dataclass(frozen=True)
class Way:
    """A way to write: what is done, and what stands there before."""

    run: Callable[[], int]
    before: Callable[[], object] = field(default=lambda: None)


WAYS: Mapping[str, Way] = {
    "demo": Way(command("demo", "other")),
    "demo in a new folder": Way(command("demo")),
    "new-book": Way(command("new-book", "other")),
    "card-new": Way(command("card-new", "--entry", BEGUN_FROM, "tool.size=12 mm")),
    "card-set": Way(command("card-set", DRAFT, "tool.size=9 mm", "notes=new")),
    "card-set --done": Way(command("card-set", CLOSED, "--done"), _both_drafts),
    "card-set --reopen": Way(command("card-set", CLOSED, "--reopen")),
    "card-import": Way(command("card-import", "table.csv"), _both_drafts),
    "card-learn": Way(command("card-learn", CLOSED, "land_relief_angle")),
    "trust": Way(command("trust", "yard"), _git),
    "trust --withdraw": Way(command("trust", "--withdraw", "yard"), _trusted),
    "list": Way(command("list")),
    "find": Way(command("find", "tap")),
    "show": Way(command("show", BEGUN_FROM)),
    "cards": Way(command("cards")),
    "cards --csv": Way(command("cards", "--csv")),
    "cards --tool": Way(command("cards", "--tool", "D-87-1")),
    "compare": Way(command("compare", BEGUN_FROM, "tap-hand-plain-steel")),
    "calc": Way(command("calc", "relief-drop", "diameter=12mm", "relief_angle=8deg", "land_width=2mm")),
    "card": Way(command("card", CLOSED)),
    "card-plan": Way(command("card-plan", CLOSED, "2026-03-11-01")),
    "check": Way(command("check")),
    "entry": Way(saver(_entry)),
    "draft": Way(saver(_draft), _left_draft),
    "discard a card": Way(saver(lambda: discard(YARD, load(YARD, DRAFT)))),
    "notes": Way(saver(_notes)),
    "first steps": Way(saver(_steps), _steps_done),
    "units": Way(saver(lambda: remember_units(state_folder(), "in")), _units),
    "answer to a file": Way(saver(lambda: write_new_file("an answer\n" * 2000, Path(), "answer"))),
    "commit each save": Way(saver(lambda: set_commits_each_save(YARD, wanted=True))),
}
COLD = {"list", "cards", "cards --tool", "compare", "calc", "card", "card-plan"}
"""The ways that are looked at with empty caches."""
