"""Serialize new text: a value, a key with its value, or a whole table, where there was none."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

NARROW = 100
"""Signs in a line, after which a list is written with one item on each."""

WIDE = 200
"""Signs in a line, after which a value is written as a table of its own below the entry."""


def literal(value: object, *, lines: bool = False) -> str:
    r"""A value as TOML has it.

    Args:
        value: a string, number, date, list or table.
        lines: whether it may take several lines; inside an inline table it may not.

    Example:
        >>> literal({"usual": "4 deg", "source": "shop"})
        '{ usual = "4 deg", source = "shop" }'
        >>> literal("One.\nTwo.", lines=True).splitlines()[1]
        'One.'
    """
    if isinstance(value, Mapping):
        inner = ", ".join(f"{dotted([key])} = {literal(item)}" for key, item in value.items())
        return f"{{ {inner} }}" if inner else "{}"
    if isinstance(value, list | tuple):
        return _list([literal(item) for item in value], lines)
    return _single(value, lines)


def _list(items: Sequence[str], lines: bool) -> str:
    line = f"[{', '.join(items)}]"
    if not lines or len(line) <= NARROW:
        return line
    return "[\n" + "".join(f"    {item},\n" for item in items) + "]"


def _single(value: object, lines: bool) -> str:
    import tomli_w

    # The writer would turn a carriage return inside a long text into nothing.
    long = lines and isinstance(value, str) and "\n" in value and "\r" not in value
    return tomli_w.dumps({"x": value}, multiline_strings=long).removeprefix("x = ").removesuffix("\n")


def dotted(keys: Sequence[str]) -> str:
    """Keys as they stand before the equals sign or in brackets.

    Example:
        >>> dotted(["entry", "x my key"])
        'entry."x my key"'
    """
    import tomli_w

    return ".".join(tomli_w.dumps({key: 0}).removesuffix(" = 0\n") for key in keys)


def pair(keys: Sequence[str], value: object) -> str:
    r"""A key with its value, and the line end.

    Example:
        >>> pair(["rake_angle", "note"], "steep")
        'rake_angle.note = "steep"\n'
    """
    return f"{dotted(keys)} = {literal(value, lines=True)}\n"


def table(array: str, content: Mapping[str, object]) -> str:
    """A whole table of an array, beginning with its header.

    Example:
        >>> print(table("entry", {"id": "a", "rake_angle": {"usual": "5 deg", "source": "shop"}}), end="")
        [[entry]]
        id = "a"
        rake_angle = { usual = "5 deg", source = "shop" }
    """
    text = f"[[{dotted([array])}]]\n"
    below = ""
    for key, value in content.items():
        written = pair([key], value)
        if isinstance(value, Mapping) and len(written) > WIDE:
            below += f"\n[{dotted([array, key])}]\n" + "".join(
                pair([name], item) for name, item in value.items()
            )
        else:
            text += written
    return text + below
