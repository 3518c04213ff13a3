"""The plain commands and what may stand behind each of them on the command line.

Nothing here loads what a command does: the module of a command, named like it, is loaded when it is typed.
"""

from __future__ import annotations

import argparse
from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

FORMS = ("text", "markdown", "html")
SHELLS = ("bash", "zsh", "tcsh")

WORDS_OF_CARDS = """Words must all be on the card. Fields narrow it: tool:T-14 size:M12 material:bronze result:good
status:draft date:2026-11 from:2026-01 to:2026-06; with = instead of : the whole field must match."""


class Command(NamedTuple):
    """A command as the command line sees it.

    Attributes:
        help: a line that says what it does.
        add_arguments: adds to a parser what may stand behind it.
    """

    help: str
    add_arguments: Callable[[argparse.ArgumentParser], None]


def add_library(parser: argparse.ArgumentParser, default: Path | str | None) -> None:
    """Add the option that names the shop's folder."""
    parser.add_argument(
        "--library",
        metavar="DIR",
        type=Path,
        default=default,
        help="the folder of the shop's own book (else HEELCLEAR_LIBRARY, else your data folder)",
    )


def add_json(parser: argparse.ArgumentParser) -> None:
    """Add the option for output that programs read."""
    parser.add_argument("--json", action="store_true", help="print JSON, unrounded")


def add_cautions(parser: argparse.ArgumentParser) -> None:
    """Add the option for every caution in full."""
    parser.add_argument("--cautions", action="store_true", help="tell every caution in full, with its source")


def add_units(parser: argparse.ArgumentParser) -> None:
    """Add the option for the unit of lengths, typed without one and shown."""
    parser.add_argument(
        "--units", choices=("mm", "in"), default=argparse.SUPPRESS,
        help="the unit of lengths: of those typed without one, and of those shown")  # fmt: skip


def add_card_values(parser: argparse.ArgumentParser) -> None:
    """Add the ``place=text`` words of a card."""
    parser.add_argument(
        "values",
        nargs="*",
        metavar="place=text",
        help="what to write, such as tool.flutes=4 received.drop='0.28 mm, 0.30 mm' wanted.cone_relief_angle='8 deg'",
    )


def _list(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--family", metavar="F", help="only this family, such as tap or twist-drill")
    parser.add_argument(
        "--counts", action="store_true", help="count entries, values and kinds of source instead"
    )
    add_json(parser)


def _find(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "text",
        nargs="+",
        metavar="TEXT",
        help="words, also of what the tool does wrong, and conditions such as 'rake>8' or 'land<=2mm'",
    )
    add_units(parser)
    add_json(parser)


def _show(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("id", metavar="ID", help="the entry's id, as 'heelclear list' prints it")
    parser.add_argument(
        "--sources",
        action="store_true",
        help="tell note and source of each value in full, and more of the family",
    )
    add_cautions(parser)
    add_units(parser)
    add_json(parser)


def _compare(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "ids", nargs="+", metavar="ID", help="the entries' ids, as 'heelclear list' prints them"
    )
    add_json(parser)


def _calc(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("name", nargs="?", metavar="NAME", help="the calculation")
    parser.add_argument(
        "values",
        nargs="*",
        metavar="key=value",
        help="what you measured, such as land_width=3.2mm; low, middle or high takes that of the book's range",
    )
    parser.add_argument("--entry", metavar="ID", help="fill what is not given from this entry of the book")
    parser.add_argument(
        "--thread",
        metavar="NAME",
        help="fill diameter, pitch and starts from a thread, such as M16 or 5/8-11UNC",
    )
    parser.add_argument(
        "-h", "--help", action="store_true", dest="explain", help="explain the calculation and its inputs"
    )
    parser.add_argument(
        "--given",
        action="store_true",
        help="tell every value that was counted with, what the book says of it, and every sentence",
    )
    add_cautions(parser)
    add_units(parser)
    add_json(parser)
    parser.set_defaults(usage_text=parser.format_usage())


def _glossary(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "word", nargs="?", metavar="WORD", help="only those whose name, other names or text have this word"
    )
    add_json(parser)


def _check(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("folder", nargs="?", type=Path, metavar="DIR", help="the shop folder to check")
    add_json(parser)


def _cards(parser: argparse.ArgumentParser) -> None:
    parser.epilog = f"{WORDS_OF_CARDS}\n\n{parser.epilog}"
    parser.add_argument("words", nargs="*", metavar="WORD", help="what to find; nothing lists every card")
    parser.add_argument("--tool", metavar="NAME", help="the whole life of the tool of that name or number")
    forms = parser.add_mutually_exclusive_group()
    forms.add_argument("--csv", action="store_true", help="print the records as comma-separated text")
    forms.add_argument("--readings", action="store_true", help="print every reading as comma-separated text")
    add_units(parser)
    add_json(parser)


def _card(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("id", metavar="ID", help="the card's id, as 'heelclear cards' prints it")
    parser.add_argument("--format", choices=FORMS, default="text", dest="form", help="what to print it as")
    parser.add_argument("--units", choices=("mm", "in"), default=None, dest="shown_in",
                        help="the unit of the lengths shown; else that of the card")  # fmt: skip
    add_json(parser)


def _card_new(parser: argparse.ArgumentParser) -> None:
    start = parser.add_mutually_exclusive_group()
    start.add_argument("--entry", metavar="ID", help="the entry of the book to begin from")
    start.add_argument("--again", metavar="ID", help="the earlier card to do again")
    start.add_argument("--family", metavar="F", help="begin empty, for a tool of this family")
    add_card_values(parser)
    add_units(parser)
    add_json(parser)


def _card_set(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("id", metavar="ID", help="the card's id")
    add_card_values(parser)
    end = parser.add_mutually_exclusive_group()
    end.add_argument(
        "--done", action="store_true", help="close the card; it stays a draft while something is wrong"
    )
    end.add_argument("--reopen", action="store_true", help="make a closed card a draft again")


def _card_import(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "file",
        type=Path,
        metavar="FILE",
        help="with the columns card, when (received or after), quantity, flute, reading",
    )


def _card_plan(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("ids", nargs="+", metavar="ID", help="the cards of the batch")
    add_units(parser)
    add_json(parser)


def _card_learn(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("id", metavar="ID", help="the card's id")
    parser.add_argument(
        "keys", nargs="*", metavar="KEY", help="the quantities to take over; none lists what there is"
    )


def _paths(parser: argparse.ArgumentParser) -> None:
    add_json(parser)


def _new_book(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("folder", type=Path, metavar="DIR", help="the folder to make")


def _trust(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "folder", type=Path, nargs="?", metavar="DIR", help="the folder of the book (else the shop's)"
    )
    parser.add_argument("--withdraw", action="store_true", help="trust it no more")


def _demo(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "folder", type=Path, nargs="?", metavar="DIR", help="the folder to lay it out in (else a new one)"
    )


def _doctor(parser: argparse.ArgumentParser) -> None:
    add_json(parser)


def _completion(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("shell", choices=SHELLS, help="which shell")


COMMANDS: dict[str, Command] = {
    "list": Command("list the entries of the book", _list),
    "find": Command(
        "find entries by words and ranges, or what to do about a trouble: heelclear find chatters reamer",
        _find,
    ),
    "show": Command("show one entry: a line for each value, what to grind and how, the cautions", _show),
    "compare": Command("set two or more entries side by side", _compare),
    "calc": Command(
        "work out settings: list the calculations, explain one (NAME --help), or answer it (NAME key=value ...)",
        _calc,
    ),
    "glossary": Command(
        "explain terms and quantities: what each is, what else it is called, how it is measured", _glossary
    ),
    "check": Command("find every problem in the files of the book", _check),
    "cards": Command("find job cards, or follow one tool through all of its cards", _cards),
    "card": Command(
        "print the setup sheet of a job card: settings, readings, checks, cautions, boxes", _card
    ),
    "card-new": Command("begin a job card from an entry, from an earlier card, or empty", _card_new),
    "card-set": Command("write on a job card, close it, or open it again", _card_set),
    "card-import": Command("put readings from a comma-separated table on their cards", _card_import),
    "card-plan": Command("plan a batch of cards: what stays set, what changes, in which order", _card_plan),
    "card-learn": Command("put what was learned on a card into the shop's book", _card_learn),
    "paths": Command("print which folders are used, and why", _paths),
    "new-book": Command("begin a book of your own in a new folder", _new_book),
    "trust": Command(
        "let git run the hooks and programs that a book's own git folder names, when it is recorded, pulled or pushed",
        _trust,
    ),
    "demo": Command("open an invented shop's book, to try things on", _demo),
    "doctor": Command(
        "print what the program sees of terminal, folders and versions, to paste into a report", _doctor
    ),
    "completion": Command("print the completion of the commands for a shell", _completion),
}
"""Every command, in the order in which help shows them; ``new-book`` lies in ``new_book.py``."""
