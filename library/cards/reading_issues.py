"""What is wrong with readings, one by one and together, and with a single text that somebody wrote for a quantity."""

from __future__ import annotations

import math
from collections.abc import Iterator

from geometry.evaluate import unfit
from geometry.quantities import QUANTITIES, quantity
from geometry.sentences import Kind, Rounding
from library.calc.ranges import read_range
from library.calc.wording import by_title
from library.cards.doubtful_lands import LAND, Doubt, narrow_lands, steep_reliefs
from library.cards.each_step import each_step, place_of, too_few_received
from library.cards.flute_count import FluteCount, flute_count
from library.cards.inspecting import PER_FLUTE, SLACK, parts_asked_for
from library.cards.job import Job, flutes_of
from library.cards.model import Readings
from library.cards.plausible_readings import implausible
from library.cards.shall_be import DROPS, number_of
from library.issue import Issue, Severity
from library.units.grammar import example
from library.units.read import UnitError, read
from library.units.show import say, show
from library.units.slashes import fraction_of_mm


def card_issue(way: str, wrong: str, severity: Severity = "error", flute: int = 0) -> Issue:
    """An issue of a place on a card, by the way that ``editing.edited`` takes; of one flute, or of none."""
    where, _, key = way.rpartition(".")
    return Issue(where, key, severity, wrong, flute=flute)


def title_of(key: str) -> str:
    """What a quantity is called; the key itself where there is no such quantity."""
    return QUANTITIES[key].title if key in QUANTITIES else key


def reading_issues(
    job: Job, way: str, key: str, readings: Readings, diameters: Readings, *, bad_end: bool = False
) -> Iterator[Issue]:
    """What is wrong with the readings of a quantity.

    Args:
        job: the card worked out.
        way: to the readings on the card.
        key: of the quantity.
        readings: as written.
        diameters: the readings of the diameter from the same time.
        bad_end: whether the tool ended as another one, so that readings that cannot be this tool's only are watched.
    """
    yield from _unread(job, way, key, readings)
    yield from _missing(job, way, key, readings)
    yield from _not_plausible(job, way, key, readings, bad_end=bad_end)
    if key == "diameter" and way.startswith("received") and (wrong := too_few_received(job, readings)):
        yield card_issue(way, f"{title_of(key)}: {wrong}", "warning")
    if key == LAND:
        yield from _too_wide(job, way, readings, diameters)
    yield from _doubtful(job, way, key, readings, diameters)


def wrong_with(job: Job, key: str, text: str, *, share: bool) -> str:
    """What is wrong with one text for a quantity, a sentence; empty where nothing is.

    Args:
        job: the card worked out.
        key: of the quantity; of one that is not known nothing is said.
        text: as written.
        share: whether it may be a range, and a share of the diameter.
    """
    row = QUANTITIES.get(key)
    if row is None or (share and read_range(key, text) is not None):
        return ""
    if row.kind is Kind.CHOICE:
        found = unfit(row, text.strip())
        return by_title(str(found), {key: "it"}) if found else ""
    if key == "diameter" and (wrong := fraction_of_mm(text)):
        return wrong
    try:
        may_share = share and row.kind is Kind.LENGTH
        reading = read(text, row.kind, job.display, unit_wanted=True, of_diameter=may_share, whole=row.whole)
    except UnitError as error:
        return str(error)
    bad = None if reading.per_diameter else unfit(row, reading.number)
    # The title of the quantity stands before it.
    return by_title(say(bad, job.display), {key: "it"}) if bad else ""


def _unread(job: Job, way: str, key: str, readings: Readings) -> Iterator[Issue]:
    if key not in QUANTITIES:
        return
    for flute, text in enumerate(readings, 1):
        wrong = wrong_with(job, key, text, share=False) if text.strip() else ""
        if wrong and (key in PER_FLUTE or (key == "diameter" and each_step(job))):
            wrong = parts_asked_for(key, readings) or wrong
        if wrong:
            place = f", {place_of(job, key, readings)} {flute}" if len(readings) > 1 else ""
            yield card_issue(way, f"{title_of(key)}{place}: {wrong}", "error", flute if place else 0)


def _missing(job: Job, way: str, key: str, readings: Readings) -> Iterator[Issue]:
    """One reading for all flutes or one for each, where each has its own; after grinding one for each that was counted.

    Flutes that were counted on the tool keep the card open until each has its reading; of a number that is only the
    book's it is asked, for the tool may have another.
    """
    count = flute_count(job)
    if key not in PER_FLUTE or not readings:
        return
    if count is None or not count.counted:
        yield from _of_another_number(job, way, key, readings, count)
        return
    flutes, received = count.number, way.startswith("received")
    if len(readings) == 1 and received and readings[0].strip():
        return
    or_one = " Or give one for all." if received and key not in DROPS else ""
    if len(readings) > flutes:
        yield card_issue(way, f"{title_of(key)}: there are {len(readings)} readings and {flutes} flutes. Correct the flutes, "
                      "or take a reading away.")  # fmt: skip
    left = flutes - len(readings)
    if left > 1:
        has = f"{len(readings)} reading{'s' if len(readings) > 1 else ''} of {flutes}"
        alike = (
            f" Or write {flutes}x {readings[0]}, if all were found alike."
            if left == flutes - 1 and readings[0] and not wrong_with(job, key, readings[0], share=False)
            else ""
        )
        yield card_issue(way, f"{title_of(key)}: there {'are' if len(readings) > 1 else 'is'} {has}, one for each flute. Measure "
                      f"the other {left} too.{alike}{or_one}", "error", len(readings) + 1)  # fmt: skip
    for flute in range(1, (flutes if left <= 1 else len(readings)) + 1):
        if flute > len(readings) or not readings[flute - 1].strip():
            yield card_issue(way, f"{title_of(key)}: flute {flute} of {flutes} has no reading. Measure it, such as "
                          f"{example(quantity(key).kind)}.{or_one}", "error", flute)  # fmt: skip


def _of_another_number(
    job: Job, way: str, key: str, readings: Readings, count: FluteCount | None
) -> Iterator[Issue]:
    """Readings of another number than the flutes that nobody counted; of no known flutes, than the lands."""
    lands = len(job.card.received.get("land_width", ()))
    number = count.number if count is not None else lands
    if len(readings) in {1, number} or number < 1 or (count is None and lands < 2):
        return
    has = (
        f"{count.whose} {number} flute{'s' if number > 1 else ''}" if count is not None else f"{number} lands"
    )
    yield card_issue(way, f"{title_of(key)}: there are {len(readings)} readings, and {has}. Give one for all or one for "
                     "each, or count the flutes of the tool and write them in the line Flutes.", "warning")  # fmt: skip


def _not_plausible(
    job: Job, way: str, key: str, readings: Readings, *, bad_end: bool = False
) -> Iterator[Issue]:
    """Readings that cannot be this tool's; of one that ended as another tool they only are to be looked at."""
    for one in implausible(job, key, readings):
        place = f", reading {one.reading}" if len(readings) > 1 else ""
        severity: Severity = "error" if one.check.state == "stop" and not bad_end else "warning"
        text = f"{title_of(key)}{place}: {say(one.check.sentence, job.display)}"
        yield card_issue(way, text, severity, one.reading if place else 0)


def _doubtful(job: Job, way: str, key: str, readings: Readings, diameters: Readings) -> Iterator[Issue]:
    """A land that is hardly one, and a drop that with its land is a relief that hardly any tool has."""
    doubts: Iterator[Doubt] = iter(())
    if key == LAND:
        doubts = narrow_lands(job, readings, diameters)
    elif key in DROPS:
        doubts = steep_reliefs(job, way, diameters)
    for one in doubts:
        place = f", flute {one.reading}" if len(readings) > 1 and one.reading else ""
        yield card_issue(way, f"{title_of(key)}{place}: {one.said}", "warning", one.reading if place else 0)


def _too_wide(job: Job, way: str, lands: Readings, diameters: Readings) -> Iterator[Issue]:
    """A land cannot be wider than the way from one edge to the next."""
    flutes = flutes_of(job.card.tool.flutes)
    texts = [text for text in (*diameters, job.known_text("diameter")) if text.strip()]
    diameter = number_of(texts[0], "diameter", job) if texts else None
    if flutes is None or diameter is None or diameter <= 0:
        return
    across = job.known_text("land_measured_as") == "chord"
    room = diameter * (math.sin(math.pi / max(flutes, 2)) if across else math.pi / flutes)
    for flute, text in enumerate(lands, 1):
        width = number_of(text, "land_width", job)
        if width is not None and width > room * (1 + SLACK):
            yield card_issue(
                way,
                f"Land width: {text} does not fit. With {flutes} flutes on {show(diameter, Kind.LENGTH, job.display)} the "
                f"edges stand {show(room, Kind.LENGTH, job.display, Rounding.DOWN)} apart{' straight across' if across else ''}. "
                "Measure one land from its edge to its heel again, or correct the flutes.",
                "error",
                flute if len(lands) > 1 else 0,
            )
