"""The statements of a TOML text, to be asked for the ones that make up a place in the data."""

from __future__ import annotations

from dataclasses import dataclass, field

from library.toml.scanner import KeyPath, Statement, scan


@dataclass
class Layout:
    r"""The statements of a text, in order.

    Args:
        text: a document that ``tomllib`` accepts.

    Example:
        >>> [one.start for one in Layout("[[entry]]\nid = 'a' # one\n").below(("entry", 0))]
        [0, 10]
    """

    text: str
    statements: tuple[Statement, ...] = field(init=False)

    def __post_init__(self) -> None:
        self.statements = tuple(scan(self.text))

    def below(self, path: KeyPath) -> tuple[Statement, ...]:
        """The statements that make up what is at ``path``."""
        return tuple(statement for statement in self.statements if statement.is_below(path))

    def pair(self, path: KeyPath) -> Statement | None:
        """The statement that gives exactly ``path`` a value, if one does."""
        return next((one for one in self.statements if one.path == path and not one.is_header), None)

    def covering(self, path: KeyPath) -> Statement | None:
        """The statement whose value has ``path`` inside it: an inline table, or an array of them."""
        return next(
            (
                one
                for one in self.statements
                if not one.is_header and path[: len(one.path)] == one.path and one.path != path
            ),
            None,
        )
