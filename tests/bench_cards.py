"""How long the list of ten thousand job cards takes, and a digit on a card: reported, not asserted, for a clock on a shared machine proves nothing.

Run it with ``.venv/bin/python tests/bench_cards.py``.
"""

from __future__ import annotations

import tempfile
import time
from collections.abc import Callable
from datetime import date, timedelta
from pathlib import Path

from geometry.evaluate import forget
from library.book.opening import open_book
from library.cards.close import reopened
from library.cards.index import card_rows
from library.cards.rows import CardRow
from library.cards.searching import search
from library.cards.store import load
from library.demo import BOOK
from tui.figure.alphabet import ALPHABETS
from tui.view.card_form import CardForm
from tui.view.card_page import CardPage
from tui.view.card_steps import STEPS

CARDS = 10_000
FRAME = 16
"""Milliseconds of one frame."""

QUERIES = (
    "winch",
    "tool:T-14",
    "bushings squeals good",
    "material:bronze result=good from:2001",
    "nothing has this",
)


def laid_out(folder: Path) -> None:
    """Write the cards: one of the demonstration, under ten thousand ids and five hundred tools."""
    text = (BOOK / "cards" / "2026" / "2026-03-11-01.toml").read_text(encoding="utf-8")
    for number in range(CARDS):
        day = date(2000, 1, 1) + timedelta(days=number // 3)
        name = f"{day.isoformat()}-{number % 3 + 1:02}"
        year = folder / "cards" / name[:4]
        year.mkdir(parents=True, exist_ok=True)
        changed = text.replace("2026-03-11-01", name).replace("T-12-3", f"T-{number % 500}")
        (year / f"{name}.toml").write_text(changed, encoding="utf-8")


def milliseconds(work: Callable[[], object], times: int = 1) -> float:
    """The best of several runs."""
    best = float("inf")
    for _ in range(times):
        began = time.perf_counter()
        work()
        best = min(best, time.perf_counter() - began)
    return best * 1000


def digits(width: int, height: int) -> list[tuple[float, str, str]]:
    """Milliseconds of CPU for a digit in each line of the demonstration's cards, worked out and laid out, the worst first."""
    book, found = open_book(BOOK), []
    for path in sorted((BOOK / "cards").rglob("*.toml")):
        card = reopened(load(BOOK, path.stem).card)
        form = CardForm(book, card)
        page = CardPage(form, alphabet=ALPHABETS["braille"])
        for step in range(len(STEPS)):
            form.change_step(step - form.step)
            for way in [row.way for row in form.rows if not row.choices and not row.heading]:
                form.go_to(way)
                found.append((_digit(form, page, width, height), path.stem, way))
                form.take(book, card)
    return sorted(found, reverse=True)


def _digit(form: CardForm, page: CardPage, width: int, height: int) -> float:
    """The best of several times, for what else goes on on the machine counts too; nothing is known of the digit before."""
    form.edit("backspace")
    best = float("inf")
    for _ in range(5):
        page.draw(width, height)
        forget()
        began = time.process_time()
        form.type("2")
        page.draw(width, height)
        best = min(best, time.process_time() - began)
        form.edit("backspace")
    return best * 1000


def main() -> None:
    """Print the times."""
    for width, height in ((80, 22), (120, 34)):
        spent = digits(width, height)
        worst, card, way = spent[0]
        mean = sum(one[0] for one in spent) / len(spent)
        print(f"a digit at {width}x{height + 2}: mean {mean:.1f} ms, worst {worst:.1f} ms ({way} of {card})")
    with tempfile.TemporaryDirectory() as name:
        folder, cache = Path(name) / "book", Path(name) / "cache"
        laid_out(folder)
        print(
            f"{CARDS} cards read for the first time   {milliseconds(lambda: card_rows(folder, cache)):8.0f} ms"
        )
        print(
            f"the list from the cache              {milliseconds(lambda: card_rows(folder, cache), 3):8.0f} ms"
        )
        rows: tuple[CardRow, ...] = card_rows(folder, cache)
        for query in QUERIES:
            found = len(search(rows, query))
            took = milliseconds(lambda query=query: search(rows, query), 5)  # type: ignore[misc]
            print(
                f"{query:36} {took:8.2f} ms  {found:5} found  {'within' if took < FRAME else 'OVER'} one frame of {FRAME}"
            )


if __name__ == "__main__":
    main()
