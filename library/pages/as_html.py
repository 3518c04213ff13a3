"""A page as one HTML file that needs nothing else: no script, nothing fetched, every text escaped."""

from __future__ import annotations

import re
from html import escape

from library.figures.svg import caption, svg
from library.pages import page as blocks
from library.pages.page import Block, Page
from library.sanitize import sanitize

TWO_LINES = 190
"""Characters of ten points that surely find room in two lines of either paper."""

STYLE = """
@page { margin: 8mm 10mm; }
* { box-sizing: border-box; }
body { font: 10pt/1.07 Arial, Helvetica, "Liberation Sans", sans-serif; color: #000; max-width: 190mm; margin: 0 auto; }
h1 { font-size: 17pt; line-height: 1.1; margin: 0 0 0.8mm; border-bottom: 0.5mm solid #000; }
h1 small { font-size: 10pt; font-weight: normal; float: right; margin-top: 2.5mm; }
h2 { font-size: 11pt; margin: 1.2mm 0 0.2mm; clear: right; } h3 { font-size: 10pt; margin: 1mm 0 0.4mm; }
h2.looked-up { font-size: 10pt; float: left; clear: left; margin: 0 2mm 0 0; } h2.looked-up::after { content: ":"; }
p, ul { margin: 0 0 0.5mm; } ul { padding: 0; list-style: none; }
.facts span { margin-right: 3mm; } .facts b { font-weight: normal; } .facts b::after { content: ":"; }
.facts i { font-style: normal; font-weight: bold; }
table { border-collapse: collapse; margin: 0 0 0.6mm; } th { font-weight: normal; vertical-align: bottom; line-height: 1.05; }
td, th { padding: 0 1.2mm; text-align: right; } td { white-space: nowrap; }
td:first-child, th:first-child { text-align: left; padding-left: 0; }
.set, .after { width: 100%; } .set td, .after td, .read td { border-bottom: 0.2mm solid #000; }
.set td, .after td { text-align: left; white-space: normal; padding-top: 0.15mm; padding-bottom: 0.15mm; }
.set td { line-height: 1.05; } .set td.n, .after td.n { white-space: nowrap; } .set td.n { text-align: right; }
.set td:nth-child(3) { white-space: nowrap; } .set td:last-child { width: 60%; }
.after { margin-top: -4.6mm; } .after th { text-align: left; white-space: nowrap; padding-bottom: 0.4mm; } .after th:first-child { min-width: 30mm; } .after td:first-child { width: 35mm; } .after td:last-child { width: 44%; }
.n, .read td + td { font-size: 13pt; line-height: 1; font-weight: bold; font-variant-numeric: tabular-nums; }
.tick, .box { display: inline-block; vertical-align: middle; border: 0.3mm solid #000; height: 7.1mm; width: 7.1mm; }
.box { width: 19mm; padding: 0 0.6mm; margin: 0 0.6mm 0 0; line-height: 6.4mm; white-space: nowrap; font-weight: bold; }
.box i { font-style: normal; font-weight: normal; margin-right: 1mm; } .wide { width: auto; min-width: 19mm; }
.read { display: inline-table; vertical-align: top; margin-right: 3mm; } .read td, .read th { padding: 0 1mm; } .read th { width: 1mm; } .read th.w { text-align: center; } .read td.w { border: 0.3mm solid #000; min-width: 14mm; height: 7.3mm; }
.write { display: flex; gap: 4mm; align-items: flex-end; margin: 0; }
.write span { flex: auto; display: flex; align-items: flex-end; min-height: 6.3mm; }
.write u { text-decoration: none; flex: auto; border-bottom: 0.25mm solid #000; margin-left: 1.5mm; font-weight: bold; } .write + .write { margin-bottom: 0.8mm; }
.stop b, .watch b { border: 0.3mm solid #000; padding: 0 0.8mm; } .stop b { border-width: 0.5mm; } .stop, .watch { line-height: 1.34; }
.before { border: 1mm solid #000; padding: 0.8mm 2mm; margin: 0 0 1.5mm; } .before p.stop { font-size: 13pt; font-weight: bold; }
.caution { border: 0.4mm solid #000; padding: 0.6mm 1.2mm; margin: 0.8mm 0; } .caution span { white-space: nowrap; }
.pass, .note { display: inline; margin-right: 1.5mm; } .strong { font-weight: bold; }
figure { width: 52mm; float: right; margin: 1.4mm 0 0; } h2.looked-up ~ figure { margin-left: 3mm; } svg { width: 52mm; display: block; }
"""
"""The look of the page: black on white, for a printer."""

_HEAD = (
    '<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
    "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n"
)


def plain(text: str) -> str:
    """Text in which no character is markup.

    Example:
        >>> plain("<script>alert('x')</script>")
        '&lt;script&gt;alert(&#x27;x&#x27;)&lt;/script&gt;'
    """
    return escape(" ".join(sanitize(text).split()), quote=True)


def as_html(page: Page) -> str:
    """The page as a whole HTML file."""
    parts = [f"{_HEAD}<title>{plain(page.title)}</title>\n<style>{STYLE}</style>\n</head>\n<body>"]
    if page.before:
        parts += ['<div class="before">', *map(_block, page.before), "</div>"]
    aside = f"<small>{plain(page.aside)}</small>" if page.aside else ""
    parts.append(f"<h1>{aside}{plain(page.title)}</h1>")
    for section in page.sections:
        # The drawing floats beside what follows it, below the heading.
        first, rest = (
            [_block(block) for block in section.blocks if isinstance(block, blocks.Drawing) is drawn]
            for drawn in (True, False)
        )
        level, kind = "h3" if section.part else "h2", ' class="looked-up"' if section.looked_up else ""
        heading = f"<{level}{kind}>{plain(section.heading)}</{level}>" if section.heading else ""
        parts += [*([heading] if heading else []), *first, *rest]
    return "\n".join([*parts, "</body>\n</html>\n"])


def _block(block: Block) -> str:
    match block:
        case blocks.Facts():
            text = _facts(block)
        case blocks.Said():
            role = f' class="{block.role}"' if block.role in {"strong", "stop"} else ""
            text = "\n".join(
                f"<p{role}>{plain(part)}</p>" for one in block.texts for part in one.splitlines()
            )
        case blocks.Values():
            text = "<ul>\n" + "\n".join(map(_value, block.values)) + "\n</ul>"
        case blocks.Table() | blocks.SideBySide():
            text = _table(block if isinstance(block, blocks.Table) else block.table())
        case blocks.Checks():
            text = _checks(block)
        case blocks.Items() | blocks.Boxes() | blocks.ToWrite():
            text = _for_the_pencil(block)
        case blocks.Cautions():
            text = _cautions(block)
        case blocks.CautionWords():
            kept, left = block.within(TWO_LINES) if block.more else (block.words, 0)
            told = [*kept, *([f"+{left} {block.more}"] if left else [])]
            words = " | ".join(f"<span>{plain(word)}</span>" for word in told)
            text = f'<p class="caution"><b>{plain(block.label)}</b> {words}</p>'
        case blocks.Labelled():
            text = "\n".join(f"<p><b>{plain(label)}</b> {plain(told)}</p>" for label, told in block.parts)
        case blocks.Words():
            text = "\n".join(
                f"<p><b>{plain(one.title)}</b> {plain(one.more)}<br>{plain(' '.join(one.texts))}</p>"
                for one in block.words
            )
        case blocks.Sources():
            text = f"<p>{plain(block.told())}</p>"
        case blocks.Drawing():
            drawing = svg(block.figure, block.title)
            text = f"<figure>{drawing}<figcaption>{plain(caption(block.figure))}</figcaption></figure>"
    return text


def _facts(block: blocks.Facts) -> str:
    spans = " ".join(
        f"<span><b>{plain(title)}</b> <i>{plain(fact)}</i></span>" for title, fact in block.pairs
    )
    return f'<p class="facts">{spans}</p>'


def _checks(block: blocks.Checks) -> str:
    lines = "\n".join(f'<li class="{plain(state)}">{_verdict(state)}{plain(said)}</li>'
                      for state, said in block.checks)  # fmt: skip
    return f"<ul>\n{lines}\n</ul>"


def _verdict(state: str) -> str:
    """The word before a sentence that tested something; a note carries none."""
    return "" if state == "note" else f"<b>{plain(state.upper())}</b> "


def _value(one: blocks.Named) -> str:
    below = "".join(f"<br>{plain(text)}" for text in one.below)
    return f"<li>{plain(one.title)}: <b>{plain(one.value)}</b> {plain(one.beside)}{below}</li>"


def _cautions(block: blocks.Cautions) -> str:
    told = "\n".join(f"<p><b>{plain(one.title)}</b>: {plain(one.told)}</p>" for one in block.cautions)
    return f'<div class="cautions">\n{told}\n</div>'


def _for_the_pencil(block: blocks.Items | blocks.Boxes | blocks.ToWrite) -> str:
    """What is ticked or filled in by hand."""
    if isinstance(block, blocks.Items):
        rows = [_item(number, item) for number, item in enumerate(block.items, 1)]
        return '<table class="set">\n' + "\n".join(rows) + "\n</table>"
    if isinstance(block, blocks.ToWrite):
        spans = "".join(f"<span>{plain(word)}<u>{plain(text)}</u></span>" for word, text in block.pairs)
        return f'<p class="write">{spans}</p>'
    heading = f"<tr><th></th><th>{blocks.CAME_WITH}</th><th>{blocks.SHALL_BE}</th><th></th></tr>"
    return f'<table class="after">\n{heading}\n' + "\n".join(map(_box_row, block.rows)) + "\n</table>"


def _item(number: int, item: blocks.Item) -> str:
    """A box to tick, what is set, how much, and how it is turned on the machine."""
    beside = _big_numbers(plain(item.graduation))
    beside += ("; " if beside else "") + plain(item.more) if item.more else ""
    return (
        f'<tr><td><i class="tick"></i></td><td>{number}</td><td>{plain(item.title)}</td>'
        f'<td class="n">{plain(item.value)}</td><td>{beside}</td></tr>'
    )


_NUMBER = re.compile(r"(?<![\w&#;.])[0-9]+(?:\.[0-9]+)?(?![\w;])")
"""A number in a text that is escaped, and none inside a word or an escape."""


def _big_numbers(escaped: str) -> str:
    """Text with its numbers as large as those that are set."""
    return _NUMBER.sub(lambda found: f'<span class="n">{found[0]}</span>', escaped)


def _box_row(row: blocks.BoxRow) -> str:
    """What it was, what it shall be, and a box for each reading, on as many lines as they need."""
    numbered = len(row.boxes) > 1
    boxes = " ".join(
        f'<span class="box{" wide" if text or row.place else ""}">{f"<i>{row.name(number)}</i>" if numbered else ""}{plain(text)}</span>'
        for number, text in enumerate(row.boxes, 1)
    )
    return (
        f'<tr><td>{plain(row.title)}</td><td>{plain(row.came)}</td><td class="n">{plain(row.wanted)}</td>'
        f"<td>{boxes}</td></tr>"
    )


def _together(heading: str) -> str:
    """A heading of several words with the last two on one line, for the last is a unit or short.

    Example:
        >>> _together("square drop mm"), _together("lead mm")
        ('square drop&nbsp;mm', 'lead mm')
    """
    *first, word, last = ["", "", *heading.split()]
    return f"{' '.join(first).strip()} {word}&nbsp;{last}" if any(first) else f"{word} {last}".strip()


def _table(table: blocks.Table) -> str:
    """A table; one with boxes for the pencil is read at the machine, so its numbers are large."""
    pencil = "".join(f'<th class="w">{number}</th>' for number in range(1, table.boxes + 1))
    head = "".join(f"<th>{_together(plain(cell))}</th>" for cell in table.heading)
    body = "\n".join(
        "<tr>" + "".join(f"<td>{plain(cell)}</td>" for cell in row)
        + "".join(table.pencil(place, '<td class="w"></td>', "<td>-</td>")) + "</tr>"
        for place, row in enumerate(table.rows)
    )  # fmt: skip
    kind = ' class="read"' if table.boxes else ""
    return f"<table{kind}>\n<tr>{head}{pencil}</tr>\n{body}\n</table>"
