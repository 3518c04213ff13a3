"""A page as lines whose pieces each have a role: the layout that screens and printed text have in common."""

from __future__ import annotations

from dataclasses import replace

from library.pages import page as blocks
from library.pages.caution_words import caution_lines
from library.pages.columns import in_turns
from library.pages.page import Block, Page, Section
from library.pages.reader import EMPTY, Line, Reader, Run, beside
from library.pages.tables import table_lines
from library.pages.texts import wrapped

READABLE = 100
"""Characters of a sentence above which the eye loses its line."""

EDGE = 60
"""Characters after which a number would stand too far from its name."""

NARROW = 44
"""Characters of a column below which nothing is indented for the looks of it."""

LABEL = 7
"""Characters of the column of labels, where the labels are short."""

MOST_LABEL = 18
"""Characters that it has at most."""

DRAWN = 34
"""Characters of the widest drawing of a word."""

BOX = "[________]"

CELL = "______"
"""A box in a table."""

RULE = 14
"""Characters of a line to write on."""


def page_lines(page: Page, reader: Reader) -> list[Line]:
    """A page without its title, which stands where the reader looks for it; what comes before it stands first.

    Example:
        >>> from library.pages.page import Said
        >>> page = Page("Tap", (Section("Notes", (Said(("Keep it sharp.",)),)),))
        >>> ["".join(run.text for run in line) for line in page_lines(page, Reader())]
        ['Notes', '  Keep it sharp.']
    """
    lines = [one for block in page.before for one in block_lines(block, reader)]
    lines += reader.lines(page.aside) if page.aside else []
    for section in page.sections:
        lines += [EMPTY] if lines and not (page.dense or page.close) else []
        lines += _section(section, reader, dense=page.dense)
    return lines


def _section(section: Section, reader: Reader, *, dense: bool) -> list[Line]:
    if not section.heading or dense:
        lines = _ruled(section.heading, reader) if section.heading else []
        return lines + [one for block in section.blocks for one in block_lines(block, reader)]
    indent = "  " if section.part else ""
    head = reader.lines(section.heading, "strong" if section.part else "head", indent, indent)
    told = [one for block in section.blocks for one in block_lines(block, reader.narrower(2))]
    return [*head, *((Run("  "), *one) if one else one for one in told)]


def _ruled(heading: str, reader: Reader) -> list[Line]:
    """A heading with a rule behind it to the edge; one that is longer than a line goes on below, for none is cut."""
    *above, last = wrapped(heading, reader.width, clean=reader.clean)
    rest = max(reader.width - reader.measure(last) - 1, 0)
    return [*((Run(text, "head"),) for text in above), (Run(f"{last} {'-' * rest}".rstrip(), "head"),)]


def block_lines(block: Block, reader: Reader) -> list[Line]:
    """A part of a page within the width of its reader."""
    lines: list[Line] = []
    match block:
        case blocks.Facts():
            lines = _facts(block, reader)
        case blocks.Said():
            by = " " * block.indent
            lines = [one for text in block.texts for one in reader.lines(text, block.role, by, by)]
        case blocks.Values():
            lines = _values(block, reader)
        case blocks.Items():
            lines = _items(block, reader)
        case blocks.Table():
            lines = table_lines(block.with_boxes(CELL), reader)
        case blocks.SideBySide():
            lines = in_turns(block, reader)
        case blocks.Checks():
            lines = [one for state, text in block.checks for one in _check(state, text, reader)]
        case blocks.Boxes() | blocks.ToWrite():
            lines = _for_the_pencil(block, reader)
        case blocks.Cautions() | blocks.CautionWords():
            lines = _warnings(block, reader)
        case blocks.Labelled():
            column = _column(block, reader)
            lines = [one for label, text in block.parts for one in _labelled(label, text, column, reader)]
        case blocks.Words():
            lines = [one for word in block.words for one in _word(word, reader)]
        case blocks.Sources():
            lines = reader.lines(block.told())
    return lines


def _facts(block: blocks.Facts, reader: Reader) -> list[Line]:
    """Facts one behind the other; a fact is only broken when it is longer than a line."""
    lines: list[Line] = []
    line = ""
    for title, text in block.pairs:
        fact = f"{reader.clean(title)}: {reader.clean(text)}"
        longer = f"{line} | {fact}" if line else fact
        if reader.measure(longer) <= reader.width:
            line = longer
            continue
        lines += reader.lines(line, rest="  ") if line else []
        line = fact
    return lines + (reader.lines(line, rest="  ") if line else [])


def _values(block: blocks.Values, reader: Reader) -> list[Line]:
    if block.at_edge:
        reader = replace(reader, width=min(reader.width, EDGE))
        return [one for value in block.values for one in _at_edge(value, reader)]
    name = min(reader.widest(reader.clean(one.title) for one in block.values), max(reader.width * 3 // 5, 12))
    value = reader.widest(reader.clean(one.value) for one in block.values if one.beside)
    return [line for one in block.values for line in _named(one, name, value, reader)]


def _named(one: blocks.Named, name: int, value: int, reader: Reader) -> list[Line]:
    """A value behind its name, and below it what belongs to it; a name too long for its column goes on below."""
    first, *more = wrapped(one.title, name, clean=reader.clean)
    room = reader.narrower(name + 2)
    said = reader.clean(one.value)
    if one.beside and value + 2 + reader.measure(one.beside) <= room.width:
        told: list[Line] = [(Run(reader.padded(said, value), one.role), Run(f"  {reader.clean(one.beside)}"))]
    else:
        told = [*room.lines(one.value, one.role), *(room.lines(one.beside) if one.beside else [])]
    lines: list[Line] = []
    for place in range(max(len(told), 1 + len(more))):
        at_left = (first, *more)[place] if place <= len(more) else ""
        beside = told[place] if place < len(told) else EMPTY
        lines.append((Run(reader.padded(at_left, name) + "  "), *beside) if beside else (Run(at_left),))
    return lines + [line for text in one.below for line in reader.lines(text, "quiet", "    ", "    ")]


def _at_edge(one: blocks.Named, reader: Reader) -> list[Line]:
    """A name and a number at the right edge; on lines of their own where one does not hold them."""
    said, beside = reader.clean(one.value), reader.clean(one.beside)
    room = reader.width - reader.measure(said) - 1
    if room >= min(reader.measure(reader.clean(one.title)), max(reader.width // 3, 12)):
        *above, name = wrapped(one.title, room, clean=reader.clean)
        gap = " " * (reader.width - reader.measure(name) - reader.measure(said))
        lines: list[Line] = [*((Run(text),) for text in above), (Run(name + gap), Run(said, one.role))]
    else:
        lines = [*reader.lines(one.title), *_hung(one.value, reader, one.role)]
    if beside and reader.measure(beside) <= reader.width:
        lines.append((Run(reader.padded(beside, reader.width, right=True), "quiet"),))
    elif beside:
        lines += reader.lines(beside, "quiet", "  ", "  ")
    return lines + [line for text in one.below for line in _hung(text, reader)]


def _hung(text: str, reader: Reader, role: blocks.Role = "plain") -> list[Line]:
    """A text set in a little, or at the edge where it fits there and not behind the indent: so its unit stays with it."""
    indent = "" if reader.width - 2 < reader.measure(reader.clean(text)) <= reader.width else "  "
    return reader.lines(text, role, indent, indent)


def _items(block: blocks.Items, reader: Reader) -> list[Line]:
    titles = [reader.clean(item.title) for item in block.items]
    width = min(28, reader.widest(titles))
    values = min(14, reader.widest(reader.clean(item.value) for item in block.items))
    lines: list[Line] = []
    for number, (title, item) in enumerate(zip(titles, block.items, strict=True), 1):
        value = reader.padded(reader.clean(item.value), values, right=True)
        head = f"[ ] {number:2} {reader.padded(title, width)} {value}"
        lines += (
            reader.lines(item.beside, first=f"{head}  ", rest=" " * 11)
            if item.beside
            else reader.lines(head, rest=" " * 7)
        )
    return lines


def _check(state: str, text: str, reader: Reader) -> list[Line]:
    """A sentence behind its state; a note carries none."""
    word = "" if state == "note" else state.upper()
    hang = " " * 6 if reader.width >= NARROW else ""
    head = word.ljust(6) if hang else f"{word} ".lstrip()
    (first,), *rest = replace(reader, width=min(reader.width, READABLE)).lines(text, first=head, rest=hang)
    return [
        (Run(word, _ROLES.get(state, "strong")), Run(first.text[len(word) :])) if word else (first,),
        *rest,
    ]


_ROLES: dict[str, blocks.Role] = {"stop": "stop", "watch": "watch", "pass": "pass"}


def _for_the_pencil(block: blocks.Boxes | blocks.ToWrite, reader: Reader) -> list[Line]:
    if isinstance(block, blocks.ToWrite):
        return _to_write(block, reader)
    return [one for row in block.rows for one in _box_row(row, reader)]


def _box_row(row: blocks.BoxRow, reader: Reader) -> list[Line]:
    head = reader.clean(f"{row.title}  {row.wanted}".rstrip())
    head += f" ({blocks.CAME_WITH} {reader.clean(row.came)})" if row.came else ""
    cells = [f"{row.name(number)} {reader.clean(text) or BOX}" for number, text in enumerate(row.boxes, 1)]
    if len(cells) == 1:
        cells = [cells[0][2:]]
    lines: list[Line] = []
    line = f"{head}:"
    for cell in cells:
        if reader.measure(line) + 2 + reader.measure(cell) > reader.width and line.strip():
            lines += reader.lines(line, rest="    ")
            line = "    " + cell
        else:
            line += f"  {cell}"
    return [*lines, *reader.lines(line, rest="    ")]


def _to_write(block: blocks.ToWrite, reader: Reader) -> list[Line]:
    """Words and lines one behind the other, in whole pieces; one that stands alone has the rest of its line."""
    if len(block.pairs) == 1:
        word, text = block.pairs[0]
        rule = "_" * (reader.width - reader.measure(reader.clean(word)) - 1)
        return reader.lines(f"{word}: {text}" if text else f"{word} {rule}", rest="  ")
    found = [f"{word}: {text}" if text else f"{word} {'_' * RULE}" for word, text in block.pairs]
    lines: list[str] = []
    for one in found:
        longer = f"{lines[-1]}  {one}" if lines else one
        if lines and reader.measure(reader.clean(longer)) <= reader.width:
            lines[-1] = longer
        else:
            lines.append(one)
    return [made for one in lines for made in reader.lines(one, rest="  ")]


def _warnings(block: blocks.Cautions | blocks.CautionWords, reader: Reader) -> list[Line]:
    return _cautions(block, reader) if isinstance(block, blocks.Cautions) else caution_lines(block, reader)


def _cautions(block: blocks.Cautions, reader: Reader) -> list[Line]:
    lines: list[Line] = []
    for one in block.cautions:
        (first,), *rest = reader.lines(f"{one.title}: {' '.join(one.told.split())}", rest="  ")
        title = first.text.partition(":")[0] if first.text.startswith(f"{one.title}:") else ""
        lines += [(Run(title, "warn"), Run(first.text[len(title) :])), *rest]
    return lines


def _column(block: blocks.Labelled, reader: Reader) -> int:
    """The cells of the column of labels, as wide as the longest of them wants, within measure."""
    longest = max((reader.measure(reader.clean(label)) + 1 for label, _ in block.parts), default=0)
    return max(LABEL, min(longest, MOST_LABEL))


def _labelled(label: str, text: str, column: int, reader: Reader) -> list[Line]:
    """A text beside its label, which has a column of so many cells; on a narrow page behind it."""
    label = reader.clean(label)
    if reader.width < NARROW:
        head = f"{label}: "
        (first, *more) = reader.lines(text, first=head)
        return [(Run(head, "head"), Run(first[0].text[len(head) :])), *more]
    room = reader.narrower(column)
    (first, *more) = room.lines(text)
    return [(Run(reader.padded(label, column), "head"), *first), *((Run(" " * column), *one) for one in more)]


def _word(one: blocks.Word, reader: Reader) -> list[Line]:
    """A word and its meaning; its drawing beside them or below, and left out where it has no room at all."""
    if not one.drawing or reader.width < DRAWN + 4:
        return _meaning(one, reader)
    drawing: list[Line] = [(Run(text),) for text in one.drawing]
    if reader.width < 2 * DRAWN + 4:
        return [*_meaning(one, reader), *((Run("    "), *line) for line in drawing), EMPTY]
    room = reader.width - DRAWN - 2
    return [*beside(_meaning(one, reader.narrower(DRAWN + 2)), drawing, room + 2, reader), EMPTY]


def _meaning(one: blocks.Word, reader: Reader) -> list[Line]:
    first, *rest = reader.lines(f"{one.title}  {one.more}".rstrip(), first="  ", rest="    ")
    title = first[0].text[: len(one.title) + 2]
    head: Line = (Run(title, "strong"), Run(first[0].text[len(title) :], "quiet"))
    return [
        head,
        *rest,
        *(line for text in one.texts for line in reader.lines(text, "plain", "    ", "    ")),
    ]
