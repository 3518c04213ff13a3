"""A page as one HTML file that needs nothing else: no script, nothing fetched, every text escaped."""

from __future__ import annotations

from html import escape

from library.figures.svg import svg
from library.pages import page as blocks
from library.pages.page import Block, Page
from library.sanitize import sanitize

STYLE = """
@page { size: A4; margin: 9mm 11mm; }
body { font: 8pt/1.18 Georgia, "DejaVu Serif", serif; color: #1d1d1b; max-width: 188mm; margin: 0 auto; }
h1 { font-size: 13pt; margin: 0 0 1mm; border-bottom: 0.5mm solid #1d1d1b; }
h2 { font-size: 9.2pt; margin: 1.8mm 0 0.6mm; letter-spacing: 0.03em; clear: right; }
p, ol, ul { margin: 0 0 0.8mm; } ol, ul { padding-left: 6mm; }
.facts span { display: inline-block; margin-right: 4mm; } .facts b { font-weight: normal; color: #6a665c; }
table { border-collapse: collapse; margin: 0.5mm 0 1mm; } th { font-weight: normal; color: #6a665c; vertical-align: bottom; }
td, th { padding: 0 2mm; text-align: right; } td { white-space: nowrap; } td:first-child, th:first-child { text-align: left; padding-left: 0; }
.boxes td + td + td { border: 0.25mm solid #1d1d1b; min-width: 16mm; height: 4.6mm; text-align: center; }
.stop b, .watch b { border: 0.25mm solid #1d1d1b; padding: 0 1mm; } .stop b { background: #1d1d1b; color: #fff; }
.cautions { columns: 3; column-gap: 5mm; font-size: 7pt; line-height: 1.12; }
.cautions p { margin: 0 0 0.6mm; break-inside: avoid; }
.strong { font-weight: bold; }
svg { width: 70mm; float: right; margin: 0 0 0 4mm; }
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
    parts = [
        f"{_HEAD}<title>{plain(page.title)}</title>\n<style>{STYLE}</style>\n</head>\n<body>",
        f"<h1>{plain(page.title)}</h1>",
    ]
    for section in page.sections:
        if section.heading:
            level = "h3" if section.part else "h2"
            parts.append(f"<{level}>{plain(section.heading)}</{level}>")
        # The drawing floats beside what follows it.
        for block in sorted(section.blocks, key=lambda one: not isinstance(one, blocks.Drawing)):
            parts.append(_block(block))
    return "\n".join([*parts, "</body>\n</html>\n"])


def _block(block: Block) -> str:
    match block:
        case blocks.Facts():
            spans = " ".join(
                f"<span><b>{plain(title)}</b> {plain(fact)}</span>" for title, fact in block.pairs
            )
            text = f'<p class="facts">{spans}</p>'
        case blocks.Said():
            role = ' class="strong"' if block.role == "strong" else ""
            text = "\n".join(
                f"<p{role}>{plain(part)}</p>" for one in block.texts for part in one.splitlines()
            )
        case blocks.Values():
            text = "<ul>\n" + "\n".join(map(_value, block.values)) + "\n</ul>"
        case blocks.Items():
            text = _items(block)
        case blocks.Table():
            text = _table(block)
        case blocks.Checks():
            text = _checks(block)
        case blocks.SideBySide() | blocks.Boxes():
            text = _table(block.table(), "boxes" if isinstance(block, blocks.Boxes) else "")
        case blocks.Cautions():
            text = _cautions(block)
        case blocks.CautionWords() | blocks.Labelled():
            text = "\n".join(f"<p><b>{plain(label)}</b> {plain(told)}</p>" for label, told in block.parts)
        case blocks.Words():
            text = "\n".join(
                f"<p><b>{plain(one.title)}</b> {plain(one.more)}<br>{plain(' '.join(one.texts))}</p>"
                for one in block.words
            )
        case blocks.Sources():
            text = f"<p>{plain(block.told())}</p>"
        case blocks.Drawing():
            text = svg(block.figure, block.title, block.display)
    return text


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


def _items(block: blocks.Items) -> str:
    lines = []
    for item in block.items:
        more = f" ({plain(item.more)})" if item.more else ""
        lines.append(f"<li>{plain(item.title)}: <b>{plain(item.value)}</b>{more}</li>")
    return "<ol>\n" + "\n".join(lines) + "\n</ol>"


def _table(table: blocks.Table, name: str = "") -> str:
    head = "".join(f"<th>{plain(cell)}</th>" for cell in table.heading)
    body = "\n".join(
        "<tr>" + "".join(f"<td>{plain(cell)}</td>" for cell in row) + "</tr>" for row in table.rows
    )
    kind = f' class="{name}"' if name else ""
    return f"<table{kind}>\n<tr>{head}</tr>\n{body}\n</table>"
