"""What follows from an unchanging thing, and is asked for from many places at one key: found once for each such thing."""

from __future__ import annotations

from collections.abc import Callable, Hashable
from functools import wraps
from typing import Concatenate, ParamSpec, Protocol, TypeVar, cast


class Remembers(Protocol):
    """A thing that keeps what was found for it: a book, or a card worked out."""

    @property
    def found_once(self) -> dict[Hashable, object]:
        """What was found already, by what was asked."""


_Thing = TypeVar("_Thing", bound=Remembers)
_More = ParamSpec("_More")
_Found = TypeVar("_Found")


def once(
    find: Callable[Concatenate[_Thing, _More], _Found],
) -> Callable[Concatenate[_Thing, _More], _Found]:
    """A finding that looks no second time for the same of the same thing; it must follow from nothing else.

    Args:
        find: takes the thing, and what can be a key of a dictionary.

    Example:
        >>> from library.book.model import Book
        >>> book, asked = Book({}), []
        >>> look = once(lambda book, word: asked.append(word))
        >>> for word in ("tap", "tap", "drill"):
        ...     look(book, word)
        >>> asked
        ['tap', 'drill']
    """

    @wraps(find)
    def found(thing: _Thing, /, *args: _More.args, **more: _More.kwargs) -> _Found:
        key = (find, args, *more.items())
        if key not in thing.found_once:
            thing.found_once[key] = find(thing, *args, **more)
        return cast(_Found, thing.found_once[key])

    return found
