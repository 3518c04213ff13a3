"""What is asked for many times is found once for each thing."""

from __future__ import annotations

from dataclasses import replace

from library.book.model import Book, Family
from library.once import once


def test_the_same_is_found_once_and_another_word_anew() -> None:
    asked: list[str] = []

    @once
    def look(book: Book, word: str) -> int:
        asked.append(word)
        return len(asked)

    book = Book({})
    assert [look(book, word) for word in ("tap", "tap", "drill", "tap")] == [1, 1, 2, 1]
    assert asked == ["tap", "drill"]


def test_another_thing_is_looked_at_anew_though_it_looks_the_same() -> None:
    @once
    def many(book: Book) -> int:
        return len(book.families)

    book = Book({})
    assert many(book) == 0
    assert many(replace(book, families={"tap": Family("tap", "Taps")})) == 1
    assert many(book) == 0


def test_two_findings_of_one_thing_are_kept_apart() -> None:
    @once
    def first(_: Book) -> str:
        return "first"

    @once
    def second(_: Book) -> str:
        return "second"

    book = Book({})
    assert (first(book), second(book), first(book)) == ("first", "second", "first")
