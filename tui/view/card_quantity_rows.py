"""The steps of a job card that hold quantities before the settings: as received, and wanted."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from geometry.quantities import QUANTITIES, Quantity, quantity
from geometry.sentences import Kind
from geometry.surfaces import SURFACES, surface_of_relief
from library.book.model import Family
from library.calc.in_units import in_units_of
from library.calc.ranges import ends_of, read_range, taken
from library.calc.surfaces import LAND, LAND_OF_THE_POINT, book_key, title_of
from library.cards.chosen import CHOSEN_ONCE, METHOD, POINTS, SURFACE, surfaces_of
from library.cards.each_step import each_step
from library.cards.edge_set import sets_edge
from library.cards.inspecting import PER_FLUTE
from library.cards.job import Job, flutes_of
from library.cards.model import Readings, Wanted
from library.cards.read_elsewhere import OF_THE_SURFACE, counted_as
from library.cards.setup_order import brought_in_by_measuring, calculations_of
from library.cards.shall_be import (
    DROPS,
    indicator_points,
    indicator_said,
    number_of,
    relief_key,
)
from library.cards.size_after import out_by_presumed
from library.cards.step import Step
from library.cards.within_book import is_otherwise
from library.cards.worn_elsewhere import comes_off_on
from library.units.grammar import example
from library.units.over_a_hundred import title_over
from tui.view.card_readings import in_short
from tui.view.card_row import Opened, Row, to_turn
from tui.view.card_tool_rows import lines_of

MEASURED = ("diameter", "land_width", "land_measured_as", "drop")
"""What is measured on every tool before it is ground."""

DECIDED = ("relief_form", "rake_angle")
"""What a tool is given, also where its entry does not say how much; with it the relief of the surface that is ground."""

NOT_ON_THE_TOOL = frozenset({"feed"})
"""What a calculation may be about, but nobody can measure on a tool."""


def measured_on(kind: str) -> tuple[str, ...]:
    """The quantities that are measured on a tool of a kind as it comes.

    Example:
        >>> measured_on("reamer")[-2:]
        ('margin_width', 'back_diameter')
    """
    more = (key for key in brought_in_by_measuring(kind) if key not in NOT_ON_THE_TOOL)
    return (*MEASURED, *more)


def decided_on(family: Family | None, surface: str = "") -> tuple[str, ...]:
    """The quantities that every tool of a family is given, also where its entry does not say how much.

    Args:
        family: of the tool; nothing where it is not known.
        surface: the word of the surface that is ground; empty where nobody can tell.
    """
    asked = {field.key for sheet in calculations_of(family) for field in sheet.inputs}
    decided = [key for key in DECIDED if key in asked or family is None]
    relief = (SURFACES[surface].relief_key,) if surface in SURFACES and decided else ()
    return (*decided[:1], *relief, *decided[1:])


def received_rows(job: Job, opened: Opened) -> list[Row]:
    """What is wrong with the tool, and what is measured on it."""
    card = job.card
    wrong = lines_of("wrong", "What is wrong", card.wrong, "In your own words; {change} lists troubles, and beside it stands what to look at. What the indicator says comes below.",
                     one_more=False)  # fmt: skip
    offered = [key for key in measured_on(job.kind) if key in MEASURED or key not in card.wanted]
    return [
        *wrong,
        *(_received(job, key) for key in known_keys(opened.of("received"), offered, card.received)),
    ]


def _received(job: Job, key: str) -> Row:
    row, readings = quantity(key), job.card.received.get(key, ())
    way = f"received.{key}"
    if row.kind is Kind.CHOICE:
        land = key != "land_measured_as" or "land_width" in job.card.received
        return choice_row(
            way, row.title, readings[0] if readings else "", job.known_text(key), wants=land and not readings
        )
    known = "" if readings else job.card.tool.size if key == "diameter" and job.to_be else job.known_text(key)
    return Row(
        way, title_over(title_of(key, job.choice.surface), job.display), in_short(key, readings), known, "tool" if known else "", f"{_read_on(job, key)}{readings_hint(job, key)}",
        wants=not readings and not any(comes_off_on(job, key)), below=below_diameter(job, key, readings),
    )  # fmt: skip


def below_diameter(job: Job, key: str, readings: Readings) -> tuple[str, ...]:
    """What stands under a diameter that was measured: that it would be out by a hole that is only presumed."""
    out = out_by_presumed(job, readings) if key == "diameter" else ""
    return (out,) if out else ()


def _read_on(job: Job, key: str) -> str:
    """On which surface a quantity is read, where it counts as that of the one that is ground and its hint says no more."""
    surface = SURFACES.get(job.choice.surface)
    if surface is None or key not in OF_THE_SURFACE or (key == LAND and surface.key in LAND_OF_THE_POINT):
        return ""
    if job.card.done and counted_as(job):
        # A record keeps no watch, and not where it was read: only what it counts as is known for certain.
        return f"Counted as that of the {surface.title}. "
    return f"On the {surface.title}. "


_SMALL = "0.25 mm or 10 thou"
"""An example of what an indicator reads; lengths of a tool are ten times as large."""


def readings_hint(job: Job, key: str) -> str:
    """How a quantity is typed and measured, flute by flute where each has its own."""
    row, flutes = quantity(key), flutes_of(job.card.tool.flutes)
    several = key in PER_FLUTE and (flutes is None or flutes > 1)
    all_of = f"all {flutes} flutes, one for each" if flutes else "one for each flute"
    each = f" {all_of[:1].upper()}{all_of[1:]}, parted by commas, the unit last." if several else ""
    if each_step(job, key) is not None:
        each = " One for each step, the smallest first, the unit after the last."
    if key in DROPS:
        # Where it points changes what it reads, and is another for an end than for a land: so it comes first.
        return (
            f"Indicator {indicator_said(job)}, zero at the edge, the tool turned on. Such as {_SMALL}.{each}"
        )
    if key == LAND and job.choice.surface in LAND_OF_THE_POINT:
        # Which land it is comes first, for a hint has three lines; how it is measured is asked in the next line.
        return f"{LAND_OF_THE_POINT[job.choice.surface]} Such as {example(row.kind)}.{each}"
    return f"Such as {example(row.kind)}.{each} {row.measured}"


def choice_row(way: str, title: str, text: str, default: str = "", *, wants: bool = False) -> Row:
    """A line that holds one of the words of its quantity."""
    row = quantity(way.split(".")[1])
    hint = f"{row.measured} {to_turn(row.choices)}"
    return Row(way, title, text, default, hint=hint, choices=("", *row.choices), wants=wants)


def wanted_rows(job: Job, opened: Opened) -> list[Row]:
    """What the tool shall have; a value that is not the book's has a line for the reason under it.

    First what is ground, how, and with which relief: this is what a person looks for, and changes, most.
    """
    card = job.card
    called_for = {*_called_for(job)}
    offered = [
        key
        for key in dict.fromkeys(
            (*decided_on(job.family, job.choice.surface), *_reliefs_called_for(called_for))
        )
        if (not card.entry or key in called_for) and not (key == "rake_angle" and "hook_angle" in card.wanted)
    ]
    ground = {SURFACES[surface].relief_key} if (surface := job.choice.surface) in SURFACES else set()
    relief = ground & {*opened.of("wanted"), *offered, *card.wanted}
    keys = known_keys((SURFACE, METHOD), relief, opened.of("wanted"), offered, card.wanted, (POINTS,))
    asked = {*relief, *offered, *card.wanted}
    return [
        row
        for key in keys
        for row in _wanted(job, key, is_asked=key in asked or surface_of_relief(key) is None)
    ]


def _called_for(job: Job) -> Iterator[str]:
    """What calculations still want, a relief by the key of its surface."""
    for step in job.steps:
        for one in step.answer.issues if step.in_use else ():
            if one.missing:
                yield wanted_as(job, step, one.key)


def _reliefs_called_for(called_for: Iterable[str]) -> Iterator[str]:
    """Those of them that are the relief of a surface, which stands here once for all that count with it."""
    return (key for key in called_for if surface_of_relief(key) is not None)


def wanted_as(job: Job, step: Step, key: str) -> str:
    """Under which key the card holds what a calculation wants: a relief by that of its surface.

    A calculation that serves one place of any tool, such as the land, takes the relief of that place of this tool.
    """
    own = book_key(key, step.answer.surface)
    if own and own != key:
        return own
    field = step.sheet.field(key)
    fills = field.fill_from if field is not None else ()
    reliefs = [one for one in fills if surface_of_relief(one)]
    of_tool = (one for one in reliefs if getattr(surface_of_relief(one), "key", "") in job.choice.surfaces)
    # A rake that the book has as a hook has its line as that.
    told = (
        one for one in fills if one not in reliefs and one in job.card.wanted and key not in job.card.wanted
    )
    return next(of_tool, next(told, key))


def _chosen(job: Job, key: str) -> Row:
    """A line that is chosen once for the whole job; until then it shows what follows from what is known."""
    row, text = quantity(key), job.card.wanted.get(key, Wanted("")).value
    follows = {SURFACE: job.choice.surface, METHOD: job.choice.method, POINTS: indicator_points(job)}[key]
    words = surfaces_of(job.card, job.book) if key == SURFACE else row.choices
    hint = f"{row.measured} {to_turn(words)}"
    return Row(f"wanted.{key}", row.title, text, "" if text else follows, hint=hint, choices=("", *words))


def _wanted(job: Job, key: str, *, is_asked: bool) -> list[Row]:
    """The lines of a quantity; the relief of a surface that the job left again has its line, and is not asked for."""
    row, one = quantity(key), job.card.wanted.get(key, Wanted(""))
    way = f"wanted.{key}"
    if key in CHOSEN_ONCE:
        return [_chosen(job, key)]
    if key == "flutes" and not one.changed and flutes_of(job.card.tool.flutes) is not None:
        # What was counted on the tool goes before what the book has of such tools.
        return [
            Row(way, row.title, "", job.card.tool.flutes, "tool", f"Counted on the tool. {row.definition}")
        ]
    if row.kind is Kind.CHOICE:
        first = choice_row(way, row.title, one.value, wants=not one.value)
    else:
        of_book = "; emptied, it is what the book has" if one.book else ""
        hint = f"Such as {example(row.kind)}{of_book}. {row.definition}"
        ends = _ends(job, key, one.book if one.changed else one.value)
        shown = in_units_of(key, one.value, job.display) if not one.changed else one.value
        is_open = False
        if read_range(key, one.value) is not None:
            is_open = key == relief_key(job) or _sets_the_edge(job, key)
            hint = _of_a_range(row, shown, is_open=is_open)
        shown = f"choose {shown}" if is_open else shown
        said = {one.value: shown} if shown != one.value else {}
        first = Row(way, title_over(row.title, job.display), one.value, hint=hint, wants=(is_asked and not one.value) or is_open,
                    offers=ends, said=said)  # fmt: skip
    diameter = number_of(job.known_text("diameter"), "diameter", job)
    if not one.reason and not is_otherwise(key, one, diameter):
        return [first]
    why = Row(f"{way}.reason", "  why", one.reason, hint=f"Why it is not {one.book}, as the book has it.",
              wants=not one.reason, overtype=False, is_text=True)  # fmt: skip
    return [first, why]


def _sets_the_edge(job: Job, key: str) -> bool:
    """Whether the angle of the edge that is ground waits for a quantity, from which it follows."""
    surface = SURFACES.get(job.choice.surface)
    step = sets_edge(job.steps, surface.edge_key) if surface is not None else None
    return step is not None and any(one.missing and one.key == key for one in step.answer.issues)


def _of_a_range(row: Quantity, text: str, *, is_open: bool) -> str:
    """What to do with a range: the relief that is ground has to be chosen within it; others may stay as they are."""
    if is_open:
        return f"To be chosen, {text}: a range sets nothing. Right takes its low end, its middle, its high end; or type a number. {row.definition}"
    return f"A range fills no calculation: Left and Right take its ends, or give a number. {row.definition}"


def _ends(job: Job, key: str, text: str) -> tuple[str, ...]:
    """A range as it is written, and what its low, its middle and its high are; nothing for any other text."""
    found = read_range(key, text)
    if found is None:
        return ()
    ends = (taken(found, end, job.display) for end in ends_of(found))
    return (text, *(one for one in ends if one))


def known_keys(*keys: Iterable[str]) -> list[str]:
    """The quantities of the vocabulary among some keys, each once."""
    return [key for key in dict.fromkeys(key for some in keys for key in some) if key in QUANTITIES]
