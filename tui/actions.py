"""The one registry of actions: the key bar, the help, the list of actions and the user's keys all read it."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Literal, get_args

Where = Literal[
    "book",
    "entry",
    "calculator",
    "cautions",
    "findings",
    "help",
    "glossary",
    "actions",
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
    "cards",
    "card",
    "pick",
    "sheet",
    "life",
    "batch",
    "equipment",
]
"""The screens, by the name that the registry knows them by."""

EVERYWHERE: tuple[Where, ...] = get_args(Where)
"""Every screen, in the order of the registry."""

_LISTS: tuple[Where, ...] = (
    "book",
    "actions",
    "calculations",
    "changes",
    "drafts",
    "cards",
    "pick",
    "threads",
)
_TYPED_INTO: tuple[Where, ...] = ("calculator", "form", "card")

_READING: tuple[Where, ...] = tuple(one for one in EVERYWHERE if one not in (*_LISTS, *_TYPED_INTO, "entry"))
"""Text that scrolls: every screen that is no list, takes no typing and has no line in hand."""

SAFE_KEYS = frozenset(
    {"?", "up", "down", "left", "right", "tab", "shift+tab", "enter", "escape", "home", "end"}
    | {"pageup", "pagedown"}
    | {f"f{number}" for number in range(2, 10)}
    | {f"ctrl+{letter}" for letter in "nfgprtul"}
)
"""Keys that arrive from every terminal, through ssh, tmux and screen."""


@dataclass(frozen=True)
class Action:
    """One thing a person can do with a key.

    Attributes:
        id: names it in ``keys.toml`` and names the method ``do_...`` of the screens that can do it.
        title: a word or two, for the key bar.
        help: one sentence, for the help and the list of actions.
        keys: its keys, the one to show first.
        where: the screens that can do it.
        in_bar: whether the key bar shows it; the help always does.
        opens: the screen that it opens, as its module and its class, where it does nothing else; it needs no method then.
    """

    id: str
    title: str
    help: str
    keys: tuple[str, ...]
    where: tuple[Where, ...] = EVERYWHERE
    in_bar: bool = True
    opens: str = ""


ACTIONS: tuple[Action, ...] = (
    Action("open", "Open", "Opens the chosen entry of the book.", ("enter",), ("book",)),
    Action(
        "calculate",
        "Calculate",
        "Opens the calculator, filled from the entry.",
        ("f2",),
        ("book", "entry"),
    ),
    Action("calculate-on", "Calculate", "Opens the calculator, filled from the entry.", ("enter",), ("entry",), False),
    Action("open-card", "Open", "Opens the chosen card.", ("enter",), ("cards",)),
    Action("go-on", "Next", "Goes on to the next line that wants something; after the last one, to the next step.", ("enter",), ("card",)),
    Action("next-step", "Step", "Goes to the next step of the job.", ("ctrl+n",), ("card",)),
    Action("previous-step", "Step before", "Goes to the step before.", ("ctrl+p",), ("card",), False),
    Action("card-down", "Down", "Goes to the next line.", ("down", "tab"), ("card",), False),
    Action("card-up", "Up", "Goes to the line before.", ("up", "shift+tab"), ("card",), False),
    Action("save-card", "Save", "Saves the card as it is; one with something missing or wrong stays a draft.", ("f2",), ("card",)),
    Action("more", "List", "Lists what this line can hold, or more lines; on a calculation, shows all of its lines.", ("f6",), ("card",)),
    Action("life", "Tool", "Shows every card of this tool, its size each time, and how many sharpenings are left.", ("f6",), ("cards",)),
    Action("sheet", "Sheet", "Shows the setup sheet, to be carried to the machine.", ("f7",), ("cards", "card")),
    Action("finish-card", "End", "Closes the card, so that it is a record; opens a closed one again.", ("ctrl+f",), ("card",)),
    Action("again", "Again", "Begins a new card for the same job.", ("ctrl+r",), ("cards", "card"), False),
    Action("learn", "Put into the book", "Puts what was learned on this card into the book; what would change is shown first.", ("ctrl+t",), ("card",), False),
    Action("mark", "Mark", "Marks the card for a batch, or takes its mark away.", ("tab",), ("cards",)),
    Action("plan", "Plan", "Plans the marked cards as a batch: what stays set, and what changes.", ("f2",), ("cards",)),
    Action("sheet-text", "Text", "Writes the sheet as text into a new file in the folder that you started in.", ("f2",), ("sheet",)),
    Action("sheet-markdown", "Markdown", "Writes it as Markdown.", ("f6",), ("sheet",)),
    Action("sheet-html", "HTML", "Writes it as a web page, with the drawing, to be printed.", ("f7",), ("sheet",)),
    Action("calculations", "Calculations", "Lists the calculations for this family of tools; what you typed stays.", ("f6",), ("calculator",)),
    Action("next-calculation", "Next", "Changes to the next calculation for this family of tools.", ("ctrl+n",), ("calculator",), False),
    Action("previous-calculation", "Before", "Changes to the calculation before.", ("ctrl+p",), ("calculator",), False),
    Action(
        "cautions",
        "Caution",
        "Shows every caution in full, with its source.",
        ("f4",),
        ("book", "entry", "calculator", "card", "sheet", "compare", "batch"),
    ),
    Action(
        "units",
        "mm/in",
        "Shows lengths in inches or in millimetres; a number typed without a unit keeps its meaning.",
        ("f5",),
        ("book", "entry", "calculator", "card"),
    ),
    Action("threads", "Thread", "Lists the standard threads; the chosen one fills diameter, pitch and starts.", ("f7",), ("calculator",), False),
    Action("figures", "Figure", "Shows the drawings large in place of the numbers; the same key shows the numbers again.", ("ctrl+g",), ("calculator",)),
    Action("next-wanted", "Next", "Goes to the next field that wants something; in a form to the next one.", ("enter",), ("calculator", "form"), False),
    Action("next-field", "Down", "Goes to the next field, filled or not.", ("down", "tab"), ("calculator", "form"), False),
    Action("previous-field", "Previous", "Goes to the field before.", ("up", "shift+tab"), ("calculator", "form"), False),
    Action("clear-field", "Clear", "Empties the field, so that the book's value or the default returns.", ("ctrl+u",), ("calculator", "form", "card"), False),
    Action("clear-find", "Clear", "Empties the find line, so that the whole book is shown.", ("ctrl+u",), (*_LISTS, "glossary"), False),
    Action("up", "Up", "Goes one line up.", ("up",), _LISTS, False),
    Action("down", "Down", "Goes one line down.", ("down",), _LISTS, False),
    Action("page-up", "Page up", "Goes a screenful up.", ("pageup",), in_bar=False),
    Action("page-down", "Page down", "Goes a screenful down.", ("pagedown",), in_bar=False),
    Action("first", "First", "Goes to the beginning.", ("home",), (*_LISTS, *_READING, "entry"), False),
    Action("last", "Last", "Goes to the end.", ("end",), (*_LISTS, *_READING, "entry"), False),
    Action("scroll-up", "Up", "Scrolls one line up.", ("up",), _READING, False),
    Action("scroll-down", "Down", "Scrolls one line down.", ("down",), _READING, False),
    Action("next-value", "Next value", "Goes to the next value, whose note and source stand below; past the last one it scrolls.", ("down",), ("entry",), False),
    Action("previous-value", "Value before", "Goes to the value before; where the text is scrolled, it scrolls back first.", ("up",), ("entry",), False),
    Action("next-entry", "Next entry", "Shows the next entry of the list.", ("ctrl+n",), ("entry",), False),
    Action("previous-entry", "Entry before", "Shows the entry before in the list.", ("ctrl+p",), ("entry",), False),
    Action("take", "Choose", "Takes the chosen one.", ("enter",), ("actions", "calculations", "changes", "drafts", "draft", "threads", "pick")),
    Action("change", "Change", "Changes this entry in the shop's own book: its values, its texts, its id.", ("f6",), ("entry",)),
    Action("change-book", "Book", "Adds an entry or a family, takes back the last save, shares the book through git.", ("f6",), ("book",)),
    Action("drafts", "Drafts", "Shows what an earlier run left unsaved.", ("ctrl+r",), ("book",), False),
    Action("look", "Preview", "Shows what would change in the file, before anything is saved.", ("f2",), ("form",)),
    Action("save", "Save", "Saves the change that is shown.", ("enter", "f2"), ("review-change",)),
    Action("keep-mine", "Keep yours", "Saves yours here, over what somebody else saved.", ("f2",), ("conflict",)),
    Action("keep-theirs", "Keep saved", "Leaves what somebody else saved.", ("f3",), ("conflict",)),
    Action("start-over", "Start over", "Puts what the book has in place of what you typed here.", ("ctrl+r",), ("form",)),
    Action("compare-draft", "Compare", "Shows what was typed beside what stood there and what the book has now.", ("f2",), ("drafts",)),
    Action("drop-draft", "Discard", "Forgets the chosen draft for good.", ("f6",), ("drafts", "draft")),
    Action("copy", "Copy", "Copies the answer as text to the clipboard of your terminal, where it allows that.", ("ctrl+t",), ("calculator",), False),
    Action("keep", "Keep", "Writes the answer as text into a new file in the folder that you started in.", ("ctrl+r",), ("calculator",), False),
    Action("begin-card", "Job card", "Begins a job card: from the entry, with what was typed into the calculator, or empty.", ("ctrl+f",), ("book", "entry", "calculator", "cards"), False),
    Action("cards", "Cards", "Lists the job cards of the shop.", ("ctrl+t",), ("book",), False),
    Action("mark", "Mark", "Marks the chosen entry to be set beside others, or takes its mark away; emptying an empty find line takes all away.", ("tab",), ("book",), False),
    Action("compare", "Compare", "Shows the marked entries side by side; with one mark, that one and the chosen one.", ("ctrl+g",), ("book",), False),
    Action("sources", "Sources", "Shows where each value comes from, below it; the same key hides that again.", ("f2",), ("compare",)),
    Action("columns-right", "Next column", "Shows the next entry, where not all find room.", ("right",), ("compare",), False),
    Action("columns-left", "Column before", "Shows the entry before, where not all find room.", ("left",), ("compare",), False),
    Action("open-file", "Editor", "Opens the file of the chosen problem at its line in your editor, then reads the book again.", ("enter", "f6"), ("findings",)),
    Action("findings", "Problems", "Lists what is wrong in the files of the book, and what to do.", ("f7",), ("book",), False, "tui.screens.findings.FindingsScreen"),
    Action("glossary", "Glossary", "Explains the words: what each term and quantity is, what else it is called, and how it is measured.", ("f3",), ("book", "entry", "calculator", "help", "form", "card"), False, "tui.screens.glossary.GlossaryScreen"),
    Action("help", "Help", "Explains what is in front of you, and names its keys.", ("?", "f1")),
    Action("actions", "Menu", "Lists everything that can be done here; type to find it, Enter does it.", ("f8",), ("book", "entry", "calculator", "cards", "card")),
    Action("back", "Back", "Goes back to where you came from; nothing typed is lost.", ("f9", "escape"), EVERYWHERE[1:]),
    Action("back-out", "Exit", "Empties the find line; when it is empty, leaves the program.", ("f9",), ("book",)),
    Action("escape-find", "Clear", "Empties the find line.", ("escape",), ("book",), False),
    Action("repaint", "Repaint", "Paints the whole screen again, if something else wrote on it.", ("ctrl+l",), in_bar=False),
    Action("suspend", "Shell", "Goes to the shell for a while; fg comes back.", ("ctrl+z",), in_bar=False),
    Action("quit", "Exit", "Leaves the program from anywhere; F9 does it step by step.", ("ctrl+q", "ctrl+c"), in_bar=False),
)  # fmt: skip
"""Every action; where two share a key they never share a screen."""


@cache
def actions_of(where: Where) -> tuple[Action, ...]:
    """The actions of one screen, in the order in which its key bar and help show them."""
    return tuple(action for action in ACTIONS if where in action.where)


def action(name: str) -> Action:
    """The action with this id; raises ``KeyError`` when there is none."""
    return _BY_ID[name]


_BY_ID = {one.id: one for one in ACTIONS}
