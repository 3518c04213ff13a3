"""What a sheet goes without for want of room, said on it in one line."""

from __future__ import annotations

from dataclasses import replace

from library.pages.page import Page, Said

LEFT_OUT = "Left out for want of room: "
"""Begins the sentence on it."""


def with_what_is_left_out(page: Page, whole: Page) -> Page:
    """A sheet that says which of its parts it was made without, and where they stand.

    Args:
        page: as it was made shorter.
        whole: the same with everything, so that every part has a heading.
    """
    missing = parts_missing(page, whole)
    if not missing:
        return page
    said = Said((f"{LEFT_OUT}{', '.join(missing)}; the card has {_them(missing)}.",), "quiet")
    *others, last = page.sections
    return replace(page, sections=(*others, replace(last, blocks=(said, *last.blocks))))


def parts_missing(page: Page, whole: Page) -> tuple[str, ...]:
    """The headings of the whole sheet, as they stand within a sentence, of which the shorter one lost a kind of block."""
    has = {section.heading: set(map(type, section.blocks)) for section in page.sections}
    return tuple(
        f"{section.heading[:1].lower()}{section.heading[1:]}"
        for section in whole.sections
        if section.looked_up
        and section.heading
        and not set(map(type, section.blocks)) <= has.get(section.heading, set())
    )


def _them(missing: tuple[str, ...]) -> str:
    return "them" if len(missing) > 1 else "it"
