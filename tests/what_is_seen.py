"""Write down everything that is seen: what the commands print, what sheets hold, and the screens of the tour.

    python tests/what_is_seen.py before/      # in the checkout before a change
    python tests/what_is_seen.py after/       # and after it
    diff -r before after

A change that should alter nothing for a person leaves every file byte for byte. Run by hand; it is no part of the suite.
"""

from __future__ import annotations

import argparse
import asyncio
import io
import os
import re
import sys
import tempfile
from collections.abc import Iterator
from contextlib import redirect_stderr, redirect_stdout
from itertools import pairwise
from pathlib import Path

HERE = Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent))

SIZES = ((80, 24), (120, 36))
OF_TODAY = re.compile(r"\b20\d\d-\d\d-\d\d\b|\b\d\d:\d\d\b")


def printed(*words: str) -> str:
    """What a command prints, errors included, and its exit code."""
    from tui.main import main

    out = io.StringIO()
    with redirect_stdout(out), redirect_stderr(out):
        try:
            code: object = main(words)
        except SystemExit as leaving:
            code = leaving.code
    return f"{out.getvalue()}exit {code}\n"


def text_of(value: object, key: str) -> str:
    """A number of a sample as a person would type it with its unit."""
    from geometry.quantities import quantity
    from library.units.convert import from_geometry
    from library.units.system import Display

    if isinstance(value, str):
        return value
    if isinstance(value, tuple):
        return ", ".join(text_of(one, key) for one in value)
    assert isinstance(value, float)
    kind = quantity(key).kind
    unit = Display("mm").unit(kind)
    return f"{from_geometry(value, kind, unit):.12g} {unit}".strip()


def commands() -> Iterator[tuple[str, ...]]:
    """The words of every command whose output is written down."""
    from geometry.calculations import calculation, calculation_names
    from geometry.quantities import QUANTITIES
    from library.book.opening import open_book
    from library.calc.by_family import sheets_for

    book = open_book()
    yield ("list",)
    yield ("list", "--counts")
    for name in book.entries:
        yield ("show", name)
        yield ("show", name, "--json")
        for sheet in sheets_for(book.families.get(book.entries[name].family)):
            yield ("calc", sheet.name, "--entry", name)
    for one, other in pairwise(book.entries):
        yield ("compare", one, other)
    for key in QUANTITIES:
        yield ("glossary", key)
    yield ("glossary",)
    for name in calculation_names():
        yield ("calc", name, "--help")
        given = [f"{key}={text_of(value, key)}" for key, value in calculation(name).sample.items()]
        for more in ((), ("--units", "in"), ("--json",)):
            yield ("calc", name, *given, *more)
    yield ("calc",)


def of_cards(yard: Path) -> Iterator[tuple[str, ...]]:
    """The commands on the cards of the demo."""
    at_yard = ("--library", str(yard))
    yield (*at_yard, "cards")
    yield (*at_yard, "check")
    for path in sorted((yard / "cards").rglob("*.toml")):
        for form in ("text", "markdown", "html"):
            yield (*at_yard, "card", path.stem, "--format", form)
        yield (*at_yard, "--units", "in", "card", path.stem)


async def tour(yard: Path, state: Path, size: tuple[int, int]) -> list[str]:
    """The screens of the README's tour, one after each of its lines."""
    from library.book.opening import open_book
    from tests.tui.cards.test_tour import jobs, keys_of
    from tests.tui.conftest import started
    from tui.app import Heelclear
    from tui.session import Session

    app = Heelclear(Session(), lambda: open_book(yard), yard, state)
    screens = []
    async with started(app, yard, size) as hands:
        for name, _, lines in jobs():
            for line in lines:
                screens.append(f"== {name}: {line}\n{await hands.do(*keys_of(line))}\n")
    return screens


def main() -> None:
    """Write one file for each command and for each size of the tour."""
    asked = argparse.ArgumentParser(description="Write down everything that is seen.")
    asked.add_argument("folder", type=Path)
    asked.add_argument(
        "--only", default="", help="commands whose words hold this; no tour unless it is in them"
    )
    words_asked = asked.parse_args()
    folder, only = words_asked.folder, words_asked.only
    folder.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory(prefix="seen-") as temporary:
        home = Path(temporary)
        for name in ("DATA", "CONFIG", "STATE", "CACHE"):
            os.environ[f"XDG_{name}_HOME"] = str(home / name.lower())
        os.environ |= {"HOME": temporary, "COLUMNS": "80", "NO_COLOR": "1"}
        from library.demo import lay_out

        yard = home / "yard"
        lay_out(yard)
        for words in (*commands(), *of_cards(yard)):
            if only not in " ".join(words):
                continue
            name = re.sub(r"[^\w.+-]+", "_", " ".join(words).replace(str(home), "")).strip("_")[:150]
            said = printed(*words).replace(str(home), "HOME")
            (folder / f"{name}.txt").write_text(OF_TODAY.sub("DATE", said), encoding="utf-8")
        for size in SIZES if only in "tour" else ():
            again = home / f"yard-{size[0]}"
            lay_out(again)
            screens = asyncio.run(tour(again, home / f"state-{size[0]}", size))
            (folder / f"tour-{size[0]}x{size[1]}.txt").write_text(
                OF_TODAY.sub("DATE", "".join(screens)), encoding="utf-8"
            )
    print(f"{len(list(folder.iterdir()))} files")


if __name__ == "__main__":
    main()
