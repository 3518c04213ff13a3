"""The help page: the screen it was asked on, the quantities in it, and the keys."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache

from geometry.calculation import Calculation
from geometry.quantities import Quantity, quantity
from geometry.quantities.terms import Term
from library.pages.glossary import of_quantity, of_term
from library.pages.page import Words
from tui.actions import Where, actions_of
from tui.figure.quantity_figures import FIGURES
from tui.keys import Keymap, shown_key, with_keys
from tui.view.lines import EMPTY, Line, Piece, line, wrap
from tui.view.page_lines import block_lines

# What is in braces is told by its key in force.
ABOUT: dict[Where, str] = {
    "book": "This is the book: one line for each kind of tool and work material. Type a part of what you look for, in any order: the tool, its material, or what it does wrong, such as chatter; the likeliest come first. A size such as m12, 1/2-13 or 12 mm is no part of the entry: it goes along into the calculator and the card, and with it the class of a hole or a thread, as in reamer 12 h7 or tap m12 6h; where a new tool is measured, it is told as nominal and counts for nothing. A usual angle such as 60, 90 or 118 beside a countersink or a drill is its angle; a size is then written 90 mm. Of a name that two threads share, such as 1/4-20, it is said which to write behind it. What does not go along is said below the list. 4 flutes puts those first that may have so many, and goes along too; where the book has another number, that stands beside. Drills by number or letter are found as #30 or letter q. rake>8, land<=2mm or style=flat finds by number or choice. {go-on} opens the entry, {calculate} goes straight to the calculator, {cards} lists the job cards. {mark} marks entries to be set side by side, {compare} shows them so.",
    "entry": "This is one entry of the book. Every value has a line with its usual figure, its range and a tag of its source: a letter for how much the source carries, x where it speaks of another tool, size or material, a number for a document, which the foot names, r where a rule of the book gave it, which holds for many tools, + where more is told; the line under the values has them in a word each. Up and Down go from value to value; note and source of the one in hand stand below, in full with {help} where they are cut, and below that what to grind and how, step by step, the wheels for it, and what to do about its troubles. Lengths stand in the unit of the title; what the book itself has of the value in hand is told with it where that is another. {go-on} opens the calculator, filled from the entry; {change} lists what can be changed, the value in hand first chosen: it is changed for this tool alone. To find another tool, {back} goes back to the list, where typing finds.",
    "calculator": "This is one calculation. The word behind a field says whose its value is: book, machine in hand, wheel of the shop, default, thread that was named, found or measured in another calculation, nominal or sought, typed, or kept from what was typed before. Behind an open one stands needed, or this where one of several will do, or if any where none need be; fix stands behind what cannot be right. Type over any of them, in any unit: 3.2, 1/8 in, 40 thou, 3 deg 30 min: the first character takes the place of what stood there; Left, Right or End goes behind it, a comma or blank goes on. Where a field takes one of several words, Left, Right or its first letter change it. Where the book has a range alone, Left and Right bring its ends and middle, else what machine and wheels have. An emptied field gets back what it had. {calculate} lists the other calculations.",
    "cautions": "These are the cautions that belong to the tool and to the calculation, each with its source.",
    "findings": "These are the problems found in the files of the book, each with what to do about it. Up and Down go from one to the next; {go-on} opens its file at its line in your editor, and the book is read again when you come back.",
    "glossary": "These are the words of the book and the calculator: terms of the trade with their other names, then every quantity with what it is and how it is measured. Type a part of a word.",
    "menu": "This is everything that can be done on the screen before as it now stands, part by part, in two columns where the screen is 76 wide or more, with its key where it has one: HERE what belongs to that screen alone, KEEP what keeps or changes something, GO where else you can go, BOOK the book as a whole, PROGRAM the rest. Type a part of what you look for; {go-on} does it. What needs something that is not there, such as marks, is left out until it is. What throws away or writes over stands only here, and asks first.",
    "calculations": "These are the calculations for this family of tools. Type a part of what you look for; {go-on} opens it.",
    "help": "This is the help.",
    "changes": "This is what can be changed. Type a part of what you look for; {go-on} takes it. Nothing is saved before you have seen what would change in the file.",
    "form": "Fill in the lines; an empty one is left out of the book. Where a number stands, the first character typed takes its place; Left, Right or End goes behind it to change a part of it, and a comma or a blank goes on with it. Words are gone on with. What is wrong is told at once, below the line. {save} shows what would change in the file; only then can it be saved.",
    "review-change": "These are the lines of the file that would change: those with a minus go, those with a plus come. {go-on} saves them; {back} goes back and saves nothing.",
    "conflict": "Somebody else changed the same thing while you did. Up and Down choose what to do, {go-on} does it, PgUp and PgDn move the text. Nothing is saved until you say which to keep; what only one of you changed is kept in any case.",
    "history": "This is what git remembers of this entry: who changed which value, and when.",
    "draft": "This is one draft beside the book: what was typed, what stood there when it was begun, and what the book has now. {go-on} takes it up where it was left; {menu} has the way to discard it, which asks first.",
    "compare": "These are entries of the book side by side. A star stands before each line on which they differ, an equals sign where all say the same, a dash where one says nothing of it. {sources} shows where each value comes from, and hides it again.",
    "threads": "These are the standard threads of the tables. Type a part of a name, a series or a size; {go-on} fills diameter, pitch, starts and hand into the calculator. M16, 5/8-11 UNC or Tr 20 x 8 P4 typed into the diameter does the same; LH behind it makes it left-hand.",
    "drafts": "These were typed and not saved: when the program last ended, or on cards that were left since and that no disk took. {go-on} takes one up again where it was left, {compare} compares it with the book; {menu} has the ways to discard one or all, which ask first; {back} leaves them for later.",
    "cards": "These are the job cards of the shop, the newest first. Type words that are on a card, or a field: tool:T-12 size:M12 material:bronze date:2026-11 from:2026-01 to:2026-06 result:good status:draft; with = in place of : the whole field must match. {go-on} opens one; {mark} marks several, which {plan} then plans as a batch; marks stay until you take them away or leave the program. A card opens in the line in which you left it, else in the first that still wants something; what was typed on it and not saved when the program ended stands on it again, unless those places were saved otherwise since. {menu} has the way to discard one that was begun by mistake, which asks first; a record stays.",
    "card": "This is one job, in six steps: the tool, as received, wanted, settings, after grinding, and how it ended. {go-on} goes on to the next line that wants something or has a fault, and back to a fault above before it leaves the step, Down to the next line whatever it holds, where lines begun with | belong to the one above them; any step may be left out or come back to. What follows from the lines stands beside them and is worked out at each key. Several readings go into one line: 0.20, 0.21, 0.19 mm. Where a number or a size stands, the first character typed takes its place; Left, Right or End goes behind it to change a part of it, and a comma or a blank goes on with it; {empty} brings back what was typed over. Names and notes are gone on with. In the line of what is wrong {change} lists the troubles of such tools; beside it stands what to measure and to change. Of the cams in the drawer it takes the nearest within the book's range, else the nearest above the need, else the largest. An exclamation mark says that something does not add up; its sentence stands under its line. Leaving it by {back} saves the card; what is missing or wrong only keeps it a draft. What was typed on it and not saved when the whole program is left stands on it again when it is next opened.",
    "confirm": "This asks before something is thrown away or written over. Up and Down choose, {go-on} takes; letters answer nothing. {back} leaves it as it is.",
    "print": "These are the ways to take away what is in front of you. A file is always a new one, in the folder that you started in.",
    "pick": "This is what there is to choose from. Type a part of what you look for; {go-on} takes it.",
    "sheet": "This is the setup sheet as it prints, but that the cautions stay at the foot here, that nothing is left out for want of room, and that signs stay as they were typed, where a text has letters without accents and a half as 1/2: what stops first, then the tool, the settings to tick off in their order, the readings, and boxes for what you measure. {print} copies it, or puts it into a file as text, as Markdown, or as a web page with the drawing that prints on one sheet of A4 or Letter.",
    "life": "This is everything that the cards know of one tool, the oldest first.",
    "batch": "This is the batch in the order that saves set-ups: what is set once, then what changes for each card.",
    "first-jobs": "These are ten jobs for a new hand, the easiest first. {go-on} opens the real screen of the chosen one with its numbers in it; the lines below say what to look at and how to know that it is right. For a whole shop to try, 'heelclear demo' lays out the ferry yard.",
    "machines": "These are the machines and the wheels of the book. {go-on} shows the chosen one in full; {change} changes it in a form, checked at each key; the last two lines make one more. Nothing is written until you have seen it. {mark} takes a machine in hand: calculations tell settings and readings in its divisions.",
    "own-tables": "These are tables of the book: how it is ground, step by step; wheels that are recommended and wheels that are warned of; troubles with what to measure and to change; threads. What the shop wrote comes first, then the line that makes a new one, then what came with the program. Type a part of what you look for; troubles are found by the tools that carry them too, such as burns reamer. {go-on} shows the chosen one in full, {change} changes it in a form, checked at each key. Only the lines that you change are written into the shop's own files, over what came with the program; the source of words that you change becomes the shop until you name another.",
    "own-table": "This is one table of the book, to be read, each line with its source: of a trouble what to look at and what cures it, what else may be the cause, and on which tools it is seen. {change} opens the form; only what you change there is written into the shop's own files.",
}  # fmt: skip


def help_lines(
    where: Where,
    keymap: Keymap,
    width: int,
    sheet: Calculation | None = None,
    keys: Iterable[str] = (),
    in_hand: str = "",
    told: str = "",
) -> list[Line]:
    """The help for one screen.

    Args:
        where: the screen that help was asked on.
        keymap: the keys in force.
        width: in cells.
        sheet: the calculation in front of the reader, if there is one.
        keys: the quantities in front of the reader.
        in_hand: the quantity that the reader is at, explained first of all.
        told: what else is told of it there, such as what the book says.
    """
    lines = wrap(with_keys(ABOUT[where], keymap.told), width)
    if in_hand:
        lines += [EMPTY, line(Piece("Where you are", "head"))]
        lines += wrap(told, width, first="  ", rest="  ") if told else []
        lines += explained(quantity(in_hand), width)
    if sheet is not None:
        lines += [EMPTY, line(Piece(sheet.title, "head")), *wrap(sheet.question, width)]
        lines += [EMPTY, *wrap(sheet.wants, width), EMPTY, *wrap(sheet.neglects, width)]
    lines += [EMPTY, line(Piece("Keys", "head"))]
    for action in actions_of(where):
        names = " or ".join(shown_key(key) for key in keymap.keys(action.id)) or keymap.told("menu")
        told = action.help if keymap.keys(action.id) else f'"{action.title}": {action.help}'
        lines += wrap(told, width, first=f"  {names:<16} ", rest=" " * 19)
    rows = [quantity(key) for key in keys if key != in_hand]
    if rows:
        lines += [EMPTY, line(Piece("Glossary", "head"))]
    for row in rows:
        lines += explained(row, width)
    return lines


@cache
def explained(row: Quantity, width: int) -> list[Line]:
    """One quantity: its name, what it is, how it is measured, and its small drawing."""
    return block_lines([Words((of_quantity(row, FIGURES),))], width)


@cache
def explained_term(term: Term, width: int) -> list[Line]:
    """One word of the trade."""
    return block_lines([Words((of_term(term),))], width)
