"""What each key means: one meaning for each key, the same on every screen."""

from __future__ import annotations

from dataclasses import dataclass

SAFE_KEYS = frozenset(
    {"?", "up", "down", "left", "right", "tab", "shift+tab", "enter", "escape", "home", "end"}
    | {"pageup", "pagedown"}
    | {f"f{number}" for number in range(2, 10)}
    | {f"ctrl+{letter}" for letter in "nfgkprtul"}
)
"""Keys that arrive from every terminal, through ssh, tmux and screen."""


@dataclass(frozen=True)
class Meaning:
    """What a key does, wherever it does anything.

    Attributes:
        id: names it in ``keys.toml`` and in the registry of actions.
        keys: its keys, the one to show first; no other meaning has any of them.
        title: a word or two, for the row of keys and the table of the documents.
        help: one sentence.
        short: the title where the row is narrow; the title itself where it is empty.
        nothing: said where the key is pressed on a screen on which it does nothing; nothing is said where it is empty.
    """

    id: str
    keys: tuple[str, ...]
    title: str
    help: str
    short: str = ""
    nothing: str = ""


_MEANINGS = (
    Meaning("help", ("?", "f1"), "Help", "Explains what is in front of you, and names its keys."),
    Meaning("calculate", ("f2",), "Calculate", "Opens the calculation of what is in front of you; in it, lists all calculations of the tool.", "Calc",
            "There is nothing to calculate on this screen."),
    Meaning("cards", ("f3",), "Cards", "Lists the job cards of the shop.", "",
            "This is the list of the job cards already."),
    Meaning("cautions", ("f4",), "Cautions", "Shows the cautions in full, each with its source.", "Caution",
            "These are the cautions already."),
    Meaning("units", ("f5",), "mm/in", "Shows lengths in inches or in millimetres; a number typed without a unit keeps its meaning."),
    Meaning("change", ("f6",), "Change", "Changes what is in hand, or lists what it can hold.", "",
            "There is nothing to change on this screen."),
    Meaning("print", ("f7",), "Print", "Copies what is in front of you, or writes it into a file.", "",
            "There is nothing to print on this screen."),
    Meaning("menu", ("f8",), "Menu", "Lists everything that can be done here; type to find it, Enter does it.", "",
            "This is the menu already."),
    Meaning("back", ("f9", "escape"), "Back", "Goes back to where you came from; nothing typed is lost."),
    Meaning("go-on", ("enter",), "Go on", "Opens, takes or saves what is chosen, or goes on to what wants something next."),
    Meaning("next-place", ("tab",), "Next place", "Goes to the next part of the screen, the next field or the next line."),
    Meaning("place-before", ("shift+tab",), "Place before", "Goes to the part of the screen, the field or the line before."),
    Meaning("up", ("up",), "Up", "Goes one line up."),
    Meaning("down", ("down",), "Down", "Goes one line down."),
    Meaning("page-up", ("pageup",), "Page up", "Goes a screenful up."),
    Meaning("page-down", ("pagedown",), "Page down", "Goes a screenful down."),
    Meaning("first", ("home",), "Beginning", "Goes to the beginning; in a line that is typed, to its beginning."),
    Meaning("last", ("end",), "End", "Goes to the end; in a line that is typed, to its end."),
    Meaning("right", ("right",), "Change in place", "Brings the next choice or the next column; in a line that is typed, goes one sign on."),
    Meaning("left", ("left",), "Change back", "Brings the choice or the column before; in a line that is typed, goes one sign back."),
    Meaning("next", ("ctrl+n",), "Next", "Goes to the next of its kind.", "",
            "There is no other one of its kind on this screen."),
    Meaning("previous", ("ctrl+p",), "Before", "Goes to the one before of its kind.", "",
            "There is no other one of its kind on this screen."),
    Meaning("mark", ("ctrl+t",), "Mark", "Marks what is chosen, or takes its mark away.", "",
            "There is nothing to mark on this screen."),
    Meaning("compare", ("ctrl+k",), "Compare", "Shows things side by side.", "",
            "There is nothing to compare on this screen."),
    Meaning("drawing", ("ctrl+g",), "Drawing", "Shows the drawing large, or the numbers again.", "",
            "There is no drawing on this screen."),
    Meaning("begin-card", ("ctrl+f",), "Begin a card", "Begins a job card with what is in front of you.", "",
            "A card is begun in the book, on an entry, in the calculator, or in the list of cards."),
    Meaning("save", ("ctrl+r",), "Save", "Saves; a change of the book is shown first.", "",
            "There is nothing to save on this screen."),
    Meaning("empty", ("ctrl+u",), "Empty", "Empties the line in hand."),
    Meaning("repaint", ("ctrl+l",), "Paint again", "Paints the whole screen again, if something else wrote on it."),
    Meaning("suspend", ("ctrl+z",), "Shell", "Goes to the shell for a while; fg comes back."),
    Meaning("quit", ("ctrl+q", "ctrl+c"), "Leave", "Leaves the program from anywhere: cards and forms are kept as drafts, what was typed into calculations is forgotten. F9 goes step by step."),
)  # fmt: skip

MEANINGS = {one.id: one for one in _MEANINGS}
"""Every meaning by its id, in the order of the documents."""

ROW = ("help", "calculate", "cards", "cautions", "units", "change", "print", "menu", "back")
"""The meanings in the last line of every screen, always in this order."""

MOVES = frozenset(
    {"next-place", "place-before", "up", "down", "page-up", "page-down", "first", "last", "right", "left"}
)
"""Meanings that only move, which nobody looks for in a menu."""
