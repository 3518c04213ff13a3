"""The one registry of actions: the row of keys, the help, the menu and the user's keys all read it."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Literal, get_args

from tui.meanings import MEANINGS, Meaning

Where = Literal[
    "book",
    "entry",
    "calculator",
    "cautions",
    "findings",
    "help",
    "glossary",
    "menu",
    "confirm",
    "print",
    "calculations",
    "changes",
    "form",
    "review-change",
    "conflict",
    "history",
    "drafts",
    "draft",
    "compare",
    "threads",
    "first-jobs",
    "cards",
    "card",
    "pick",
    "sheet",
    "life",
    "batch",
    "machines",
    "own-tables",
    "own-table",
]
"""The screens, by the name that the registry knows them by."""

EVERYWHERE: tuple[Where, ...] = get_args(Where)
"""Every screen, in the order of the registry."""

_FOUND: tuple[Where, ...] = (
    "book",
    "menu",
    "print",
    "calculations",
    "changes",
    "drafts",
    "cards",
    "pick",
    "threads",
    "first-jobs",
    "machines",
    "own-tables",
)
"""Lists with a find line."""

_LISTS: tuple[Where, ...] = (*_FOUND, "confirm", "conflict")
_TYPED_INTO: tuple[Where, ...] = ("calculator", "form", "card")

_READING: tuple[Where, ...] = tuple(one for one in EVERYWHERE if one not in (*_LISTS, *_TYPED_INTO, "entry"))
"""Text that scrolls: every screen that is no list, takes no typing and has no line in hand."""

_TAKEN_FROM: tuple[Where, ...] = (
    "menu",
    "confirm",
    "print",
    "calculations",
    "changes",
    "drafts",
    "conflict",
    "pick",
    "threads",
    "first-jobs",
)
"""Lists of which Enter takes something."""  # fmt: skip

_PLACES: tuple[Where, ...] = ("book", "entry", "calculator", "compare", "findings", "cards")
"""Screens on which nothing is under way, so that something else may be begun there."""

_TABLES_FROM: tuple[Where, ...] = (*_PLACES, "card", "machines", "own-tables")
"""Screens from which the tables of the book that are no entries are listed."""

Group = Literal["here", "keep", "go", "book", "program"]
"""The parts of the menu."""


@dataclass(frozen=True)
class Action:
    """One thing a person can do on some screens.

    Attributes:
        id: names the method ``do_...`` of the screens that can do it, and the meaning that its keys belong to; one that
            is no meaning has no key and stands only in the menu.
        title: what the menu calls it, in a few words.
        help: one sentence, for the help and the foot of the menu.
        where: the screens that can do it.
        group: the part of the menu in which it stands.
        opens: the screen that it opens, as its module and its class, where it does nothing else; it needs no method then.
    """

    id: str
    title: str
    help: str
    where: tuple[Where, ...] = EVERYWHERE
    group: Group = "here"
    opens: str = ""

    @property
    def meaning(self) -> Meaning | None:
        """What its keys mean everywhere; nothing where it has none."""
        return MEANINGS.get(self.id)

    @property
    def keys(self) -> tuple[str, ...]:
        """Its keys, the one to show first."""
        return self.meaning.keys if self.meaning is not None else ()


ACTIONS: tuple[Action, ...] = (
    Action("help", "help", "Explains what is in front of you, and names its keys.", group="program"),
    # Enter
    Action("go-on", "open the entry", "Opens the chosen entry of the book.", ("book",)),
    Action("go-on", "calculate", "Opens the calculator, filled from the entry.", ("entry",)),
    Action("go-on", "next that is wanted", "Goes to the next field that wants something.", ("calculator",)),
    Action("go-on", "next line", "Goes to the next line.", ("form",)),
    Action("go-on", "open the card", "Opens the chosen card.", ("cards",)),
    Action("go-on", "next that is wanted", "Goes on to the next line that wants something or has a fault; after the last one, back to a fault above it, then to the next step, and at the end asks whether to close the card.", ("card",)),
    Action("go-on", "take it", "Takes the chosen one.", _TAKEN_FROM),
    Action("go-on", "read it", "Shows the chosen one in full, to be read; on the line of a new one opens a form for it.", ("machines", "own-tables")),
    Action("go-on", "take it up", "Takes the draft up again where it was left.", ("draft",)),
    Action("go-on", "save", "Saves the change that is shown.", ("review-change",)),
    Action("go-on", "open the file", "Opens the file of the chosen problem at its line in your editor, then reads the book again.", ("findings",)),
    # The next and the one before
    Action("next", "next calculation", "Changes to the next calculation for this family of tools; what you typed stays.", ("calculator",)),
    Action("previous", "calculation before", "Changes to the calculation before; what you typed stays.", ("calculator",)),
    Action("next", "next entry", "Shows the next entry of the list.", ("entry",)),
    Action("previous", "entry before", "Shows the entry before in the list.", ("entry",)),
    Action("next", "next step", "Goes to the next step of the job.", ("card",)),
    Action("previous", "step before", "Goes to the step before, to the line in which it was left.", ("card",)),
    Action("previous", "conflict before", "Goes back to the one asked before, to answer it anew.", ("conflict",)),
    # Marks, comparison, drawing, empty line
    Action("change", "change it", "Changes the chosen machine or wheel, in a form.", ("machines",)),
    Action("open-file", "open its file", "Opens the file of the chosen machine or wheel at its line in your editor.", ("machines",)),
    Action("change", "change it", "Changes the chosen one, in a form.", ("own-tables",)),
    Action("open-file", "open its file", "Opens the file of the chosen one at its line in your editor, where the shop's book has it.", ("own-tables",)),
    Action("change", "change it", "Changes what is shown, in a form.", ("own-table",)),
    Action("open-file", "open its file", "Opens its file at its line in your editor, where the shop's book has it.", ("own-table",)),
    Action("mark", "take this machine in hand", "Has calculations tell settings and readings in the divisions of the chosen machine; the one in hand has a star.", ("machines",)),
    Action("mark", "mark the entry", "Marks the chosen entry to be set beside others, or takes its mark away, and goes to the next one.", ("book",)),
    Action("mark", "mark the card", "Marks the chosen card for a batch, or takes its mark away, and goes to the next one; marks stay until the program is left.", ("cards",)),
    Action("compare", "compare marked tools", "Shows the marked entries side by side; with one mark, that one and the chosen one.", ("book",)),
    Action("compare", "compare with the book", "Shows what was typed beside what stood there and what the book has now.", ("drafts",)),
    Action("drawing", "drawing large, and back", "Shows the drawings large in place of the numbers; the same key shows the numbers again.", ("calculator",)),
    Action("empty", "empty the field", "Empties the field, so that what filled it returns: nominal, of the machine, found, of the book, or the default.", ("calculator",)),
    Action("empty", "empty the line, or undo", "Brings back what was typed over in the line in hand; where nothing was, empties it.", ("form", "card")),
    Action("empty", "empty the find line", "Empties the find line, so that everything is shown.", (*_FOUND, "glossary")),
    # What stands only in the menu, for it is rare, or it throws away or overwrites and so is asked about first
    Action("threads", "a thread by name", "Lists the standard threads, such as M12; the chosen one fills diameter, pitch, starts and hand.", ("calculator",)),
    Action("sources", "sources below the values", "Shows where each value comes from, below it, or hides that again.", ("compare",)),
    Action("life", "life of the tool", "Shows every card of this tool, its size each time, and how many sharpenings are left.", ("cards",)),
    Action("plan", "plan the marked cards", "Plans the marked cards as a batch: what stays set, and what changes.", ("cards",)),
    Action("again", "the same job again", "Begins a new card for the same job.", ("cards", "card")),
    Action("learn-tool", "put into the book what was measured", "Puts what was measured on a new tool into the book; what would change is shown first.", ("calculator",)),
    Action("learn", "put into the book what was learned", "Writes a value that this card has otherwise than the book, with its reason, into the shop's book; what would change is shown first.", ("card",)),
    Action("finish-card", "close the card, or reopen it", "Closes the card, so that it is a record, or opens a closed one again; asks first.", ("card",)),
    Action("drop-card", "discard the card", "Discards a card that is no record, with its file, for good; asks first.", ("cards", "card")),
    Action("start-over", "start over", "Puts what the book has in place of what you typed here; asks first.", ("form",)),
    Action("start-over", "start over", "Forgets what was typed for this kind of tool in all of its calculations; asks first.", ("calculator",)),
    Action("drop-draft", "discard the draft", "Forgets the draft for good; asks first.", ("drafts", "draft")),
    Action("drop-old-drafts", "put old drafts away", "Forgets what an earlier run left unsaved and nobody has touched for 30 days; asks first.", ("book", "drafts")),
    Action("drop-all-drafts", "put all drafts away", "Forgets everything that an earlier run left unsaved; asks first.", ("drafts",)),
    Action("unmark", "take all marks away", "Takes the marks of all entries away.", ("book",)),
    Action("unmark", "take all marks away", "Takes the marks of all cards away.", ("cards",)),
    # Keep
    Action("print", "copy, file, print", "Copies the answer as text, or writes it into a new file in the folder that you started in.", ("calculator",), "keep"),
    Action("print", "copy, file, print", "Copies the chosen entry, or writes it into a new file in the folder that you started in.", ("book",), "keep"),
    Action("print", "setup sheet", "Lists what can be done with the setup sheet, to be carried to the machine: Enter shows it, the other lines copy it or write it into a new file.", ("cards", "card"), "keep"),
    Action("print", "copy, file, print", "Copies what is shown, or writes it into a new file in the folder that you started in.", ("sheet", "entry", "compare", "batch", "life", "glossary", "cautions", "findings", "help", "own-table"), "keep"),
    Action("begin-card", "begin a card with this", "Begins a job card from the entry, with what was typed into the calculator.", ("book", "entry", "calculator"), "keep"),
    Action("begin-card", "begin an empty card", "Begins an empty job card.", ("cards",), "keep"),
    Action("change", "change the book", "Lists what can be changed: the chosen entry, new ones, the last save, sharing through git.", ("book",), "keep"),
    Action("change", "change the entry", "Changes this entry in the shop's own book: its values, its texts, its id.", ("entry",), "keep"),
    Action("change", "change the book's value", "Changes what the book has for the field in hand; where that takes one of several words of which the book says nothing, lists them.", ("calculator",), "keep"),
    Action("change", "change the entry", "Changes the first entry in sight in the shop's own book.", ("compare",), "keep"),
    Action("change", "what this line can hold", "Lists what this line can hold where it is one of several, and more lines for the step.", ("card",), "keep"),
    Action("change", "what this line can hold", "Lists what this line can hold where it is one of several.", ("form",), "keep"),
    Action("change", "open the card", "Opens the chosen card, to be changed.", ("cards",), "keep"),
    Action("change", "open the file", "Opens the file of the chosen problem at its line in your editor, then reads the book again.", ("findings",), "keep"),
    Action("save", "save", "Shows what would change in the file; Enter then saves it.", ("form",), "keep"),
    Action("save", "save", "Saves the change that is shown.", ("review-change",), "keep"),
    Action("save", "save the card", "Saves the card as it is; one with something missing or wrong stays a draft.", ("card",), "keep"),
    # Go
    Action("cards", "job cards", "Lists the job cards of the shop.", tuple(one for one in EVERYWHERE if one != "cards"), "go"),
    Action("calculate", "calculator", "Goes to the calculator, filled from the entry; there the same key lists all calculations.", ("book", "entry", "cards"), "go"),
    Action("calculate", "all calculations", "Lists the calculations for this family of tools; what you typed stays.", ("calculator",), "go"),
    Action("calculate", "lines of the calculation", "Shows all lines of the calculation that the line in hand belongs to, or folds them again.", ("card",), "go"),
    Action("cautions", "cautions in full", "Shows every caution in full, with its source.", tuple(one for one in EVERYWHERE if one != "cautions"), "go"),
    Action("glossary", "words explained", "Explains the words: what each term and quantity is, what else it is called, and how it is measured.", tuple(one for one in EVERYWHERE if one != "glossary"), "go", "tui.screens.glossary.GlossaryScreen"),
    Action("first-jobs", "first jobs, step by step", "Ten jobs from easy to hard for a new hand: each opens the real screens, with what to look at and how to know that it is right.", tuple(one for one in EVERYWHERE if one != "first-jobs"), "go", "tui.screens.first_jobs.FirstJobsScreen"),
    Action("findings", "problems in the book", "Lists what is wrong in the files of the book, and what to do.", tuple(one for one in _PLACES if one != "findings"), "go", "tui.screens.findings.FindingsScreen"),
    Action("drafts", "unsaved, from before", "Shows the drafts of cards and forms that were left unsaved.", _PLACES, "go"),
    Action("drafts", "unsaved, from before", "Saves the card, goes back to the list, and shows the drafts that were left unsaved.", ("card",), "go"),
    Action("machines", "machines and wheels", "Lists the machines and wheels of the shop, to be read; each is changed in a form, and a new one is made in one.", tuple(one for one in EVERYWHERE if one != "machines"), "go", "tui.screens.machines.MachinesScreen"),
    # Book
    Action("setups", "set-ups, step by step", "Lists how each surface of each family is ground, step by step, to be read; each is changed in a form, and new ones are made in one.", _TABLES_FROM, "book", "tui.screens.own_tables.SetupsScreen"),
    Action("book-wheels", "wheels of the book", "Lists the wheels that the book recommends and those that it warns of, to be read; each is changed in a form, and new ones are made in one.", _TABLES_FROM, "book", "tui.screens.own_tables.BookWheelsScreen"),
    Action("troubles", "troubles and cures", "Lists what is seen on tools, what to measure then and what to change, to be read; each is changed in a form, and new ones are made in one.", _TABLES_FROM, "book", "tui.screens.own_tables.TroublesScreen"),
    Action("own-threads", "threads of the shop", "Lists the threads of the shop's book and the standard ones; a new one is made in a form, and a standard one is given the shop's own numbers.", _TABLES_FROM, "book", "tui.screens.own_tables.OwnThreadsScreen"),
    Action("new-entry", "new entry", "Adds a new tool of your own to the book, as an entry.", _PLACES, "book"),
    Action("new-family", "new family", "Adds a family of tools to the book.", _PLACES, "book"),
    Action("take-back", "take back the last save", "Takes back the last save of the book; what would change is shown first.", (*_PLACES, "machines", "own-tables"), "book"),
    Action("share", "share through git", "Lists how the book is brought to other copies, and what is recorded.", _PLACES, "book"),
    # Program
    Action("units", "millimetres or inches", "Shows lengths in inches or in millimetres; a number typed without a unit keeps its meaning.", group="program"),
    Action("put-away", "put the first steps away", "Takes the first steps out of the book, where any are left.", ("book",), "program"),
    Action("repaint", "paint again", "Paints the whole screen again, if something else wrote on it.", group="program"),
    Action("suspend", "shell for a while", "Goes to the shell for a while; fg comes back.", group="program"),
    Action("back", "back", "Goes back to where you came from; nothing typed is lost.", EVERYWHERE[1:], "program"),
    Action("back", "leave", "Empties the find line; when it is empty, F9 leaves the program.", ("book",), "program"),
    Action("quit", "leave the program", "Leaves the program from anywhere: cards and forms are kept as drafts, what was typed into calculations is forgotten. F9 goes step by step.", group="program"),
    Action("menu", "menu", "Lists everything that can be done here; type to find it, Enter does it.", tuple(one for one in EVERYWHERE if one != "menu"), "program"),
    # Moving
    Action("next-place", "to the right", "Goes from the list to the tool and from the tool to its calculation.", ("book", "entry")),
    Action("place-before", "to the left", "Goes from the tool to the list, and from the list to the calculation.", ("book", "entry")),
    Action("next-place", "next field", "Goes to the next field, filled or not; back to the list where it stands beside.", ("calculator",)),
    Action("place-before", "field before", "Goes to the field before; back to the tool where it stands beside.", ("calculator",)),
    Action("next-place", "down", "Goes one line down.", tuple(one for one in _LISTS if one != "book")),
    Action("place-before", "up", "Goes one line up.", tuple(one for one in _LISTS if one != "book")),
    Action("next-place", "next field", "Goes to the next field or line, filled or not.", ("form", "card")),
    Action("place-before", "field before", "Goes to the field or line before.", ("form", "card")),
    Action("up", "up", "Goes one line up.", (*_LISTS, *_READING)),
    Action("down", "down", "Goes one line down.", (*_LISTS, *_READING)),
    Action("up", "field before", "Goes to the field or line before.", _TYPED_INTO),
    Action("down", "next field", "Goes to the next field or line, filled or not.", _TYPED_INTO),
    Action("up", "value before", "Goes to the value before; where the text is scrolled, it scrolls back first.", ("entry",)),
    Action("down", "next value", "Goes to the next value, whose note and source stand below; past the last one it scrolls.", ("entry",)),
    Action("page-up", "page up", "Goes a screenful up."),
    Action("page-down", "page down", "Goes a screenful down."),
    Action("first", "beginning", "Goes to the beginning.", (*_LISTS, *_READING, "entry")),
    Action("last", "end", "Goes to the end.", (*_LISTS, *_READING, "entry")),
    Action("right", "next column", "Shows the next entry, where not all find room.", ("compare",)),
    Action("left", "column before", "Shows the entry before, where not all find room.", ("compare",)),
    Action("right", "other column", "Goes to the other column, where the menu stands in two and nothing is sought.", ("menu",)),
    Action("left", "other column", "Goes to the other column, where the menu stands in two and nothing is sought.", ("menu",)),
    Action("right", "next choice", "Brings the next choice or what the book has; in a text it goes one sign on.", _TYPED_INTO),
    Action("left", "choice before", "Brings the choice before; in a text it goes one sign back.", _TYPED_INTO),
)  # fmt: skip
"""Every action; no screen has two of one id."""


@cache
def actions_of(where: Where) -> tuple[Action, ...]:
    """The actions of one screen, in the order in which its help and its menu show them."""
    return tuple(action for action in ACTIONS if where in action.where)


@cache
def on_screen(where: Where) -> dict[str, Action]:
    """The actions of one screen by their ids."""
    return {action.id: action for action in actions_of(where)}


def has_find_line(where: Where) -> bool:
    """Whether typing finds on a screen."""
    return where in (*_FOUND, "glossary")


def action(name: str) -> Action:
    """An action with this id, the first of them; raises ``KeyError`` when there is none."""
    return _BY_ID[name]


_BY_ID = {one.id: one for one in reversed(ACTIONS)}
