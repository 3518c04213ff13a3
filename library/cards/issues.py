"""Validation of a card: everything on it that does not add up; an error keeps the card a draft, a warning does not."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.ground_down import is_ground_down
from geometry.quantities import QUANTITIES, quantity
from geometry.sentences import Kind
from library.calc.thread_in_diameter import not_its_diameter
from library.calc.wording import spoken
from library.cards.came_otherwise import came_otherwise
from library.cards.came_under_size import came_under_size
from library.cards.chamfer import follower
from library.cards.chosen import CUPS, HEAD, METHOD, REST, shape_for
from library.cards.each_step import wrong_with_shall_be, wrong_with_steps
from library.cards.far_from_set import far_from_set
from library.cards.how_ground import ground_of
from library.cards.inspecting import Mark, verdicts
from library.cards.job import Job, flutes_of
from library.cards.judged_as_one import judged_as_one
from library.cards.model import Inspection
from library.cards.other_material import other_material
from library.cards.provenance import is_number
from library.cards.read_elsewhere import all_read_elsewhere, read_elsewhere
from library.cards.reading_issues import card_issue, reading_issues, title_of, wrong_with
from library.cards.relief_after import relief_after
from library.cards.results import USUAL, is_result, severity_after
from library.cards.settings_issues import settings_issues
from library.cards.shall_be import DROPS, number_of
from library.cards.size_after import size_after
from library.cards.size_told import fractions_of_mm, odd_diameters
from library.cards.standing_proud import standing_proud
from library.cards.thread_names import of_its_screw, of_thread
from library.cards.time_spent import minutes
from library.cards.tolerances import tolerance
from library.cards.under_size import under_size_issues
from library.cards.wide_tolerances import wide_tolerance
from library.cards.within_book import is_otherwise
from library.cards.worn_elsewhere import worn_elsewhere
from library.equipment.model import machines, wheels
from library.guidance.wheels import against
from library.issue import Issue
from library.units.read import UnitError
from library.units.show import show


def issues_of(job: Job) -> tuple[Issue, ...]:
    """Every issue of a card, in the order in which its steps stand on it; ``way`` is one that ``editing.edited`` takes."""
    before = (*_of_tool(job), *_of_wheel(job), *_of_received(job), *_of_wanted(job))
    set_up = (*settings_issues(job, before), *judged_as_one(job))
    # Not among what was told before: it says nothing of what a calculation finds wrong with the same reading.
    elsewhere = tuple(read_elsewhere(job))
    end = (*_of_end(job), *all_read_elsewhere(job))
    return (*before, *elsewhere, *came_otherwise(job), *set_up, *_of_after(job), *end)


def keeps_open(job: Job) -> tuple[Issue, ...]:
    """The errors, which keep the card a draft."""
    return tuple(one for one in issues_of(job) if one.severity == "error")


def _of_tool(job: Job) -> Iterator[Issue]:
    card, book = job.card, job.book
    if card.tool.flutes.strip() and flutes_of(card.tool.flutes) is None:
        most = int(quantity("flutes").high)
        yield card_issue(
            "tool.flutes", f"{card.tool.flutes!r} is no number of flutes; count them: 1 to {most}."
        )
    thread = card.tool.thread.strip()
    # A bare whole number or a fraction may be a thread that somebody has only begun to write.
    is_told = "." in thread or thread.rstrip(".")[-1:].isalpha() or thread.endswith(('"', "'"))
    if is_told and is_number(thread, Kind.LENGTH) and not of_thread(thread, book):
        yield card_issue("tool.thread", f"{thread!r} is a size and no thread; write it in the line Size. A thread is "
                      "written as M16 x 2 or 5/8-11 UNC.", "warning")  # fmt: skip
    for wrong in fractions_of_mm(job):
        yield card_issue("tool.size", f"Size: {wrong}")
    for wrong in odd_diameters(job):
        yield card_issue("tool.size", f"Size: {wrong}", "warning")
    yield from _of_its_screw(job)
    for way, name, known in (
        ("family", card.family, book.families),
        ("machine", card.machine, machines(book)),
        ("wheel", card.wheel, wheels(book)),
        ("entry", card.entry, book.entries),
    ):
        if name and name not in known:
            listed = ", ".join(list(known)[:6]) or "none"
            yield card_issue(way, f"The book has no {way} {name!r} now; it has {listed}.", "warning")


def _of_its_screw(job: Job) -> Iterator[Issue]:
    """A tool that is called by the thread of a screw, as long as nobody says its own diameter."""
    name = of_its_screw(job.card, job.book)
    has = job.entry.values.get("diameter")
    if name and not job.known_text("diameter") and (has is None or has.usual is None):
        way = "tool.thread" if job.card.tool.thread.strip() == name else "tool.size"
        yield card_issue(way, not_its_diameter(name), "warning")


def _of_wheel(job: Job) -> Iterator[Issue]:
    """What the book says against the wheel at hand for this tool, and for the way in which it is ground."""
    if job.wheel is None:
        return
    ground = ground_of(job)
    for one in against(job.book, job.wheel, ground):
        yield card_issue("wheel", one.said(job.wheel, ground), "error" if one.stops else "warning")


def _of_received(job: Job) -> Iterator[Issue]:
    for key, readings in job.card.received.items():
        way = f"received.{key}"
        yield from reading_issues(job, way, key, readings, job.card.received.get("diameter", ()))
        yield from standing_proud(job, way, key, readings, "warning")
    yield from came_under_size(job)
    yield from worn_elsewhere(job)
    yield from _of_grinding_down(job)


def _of_grinding_down(job: Job) -> Iterator[Issue]:
    """A tool that came larger than it is to be: by which diameter everything is set, for nobody may take it for a slip."""
    down = job.to_be
    if down is not None and down.is_measured and is_ground_down(down.came, down.number):
        came, size = (show(one, Kind.LENGTH, job.display) for one in (down.came, down.number))
        yield card_issue("received.diameter", f"The tool came with {came} and is to have {size}, so it is ground down: all is "
                      f"set and read by {size}, as it is to be. If it keeps its size, put {_where_to_be(job)} right.",
                      "warning")  # fmt: skip


def _where_to_be(job: Job) -> str:
    """The line that says which diameter the tool is to have."""
    if job.card.after.get("diameter", Inspection()).wanted.strip():
        return "what it shall be after grinding"
    return "the wanted diameter" if "diameter" in job.card.wanted else "the line Size"


def _of_wanted(job: Job) -> Iterator[Issue]:
    diameter = number_of(job.known_text("diameter"), "diameter", job)
    for key, one in job.card.wanted.items():
        way = f"wanted.{key}"
        if one.value.strip() and (wrong := wrong_with(job, key, one.value, share=True)):
            yield card_issue(way, f"{title_of(key)}: {wrong}")
        if is_otherwise(key, one, diameter) and not one.reason.strip():
            yield card_issue(f"{way}.reason", f"{title_of(key)} was changed from the book's {one.book} to {one.value}. "
                          "Say why, so that the next person knows.", "warning")  # fmt: skip
    yield from other_material(job)
    yield from _of_chamfer(job)
    yield from _of_method(job)


def _of_chamfer(job: Job) -> Iterator[Issue]:
    """Threads and angle of a tap's chamfer that do not make one cone: which of them is set, and what follows."""
    step = job.answering("chamfer_angle")
    found = follower(step.answer, job.card.wanted) if step is not None and step.works else None
    if found is not None:
        yield card_issue(f"wanted.{found.key}", f"{title_of(found.key)}: {found.said()}", "warning")


def _of_method(job: Job) -> Iterator[Issue]:
    """A method that a person chose and that does not go with the wanted form, or with the wheel at hand."""
    method, way = job.choice.method, f"wanted.{METHOD}"
    if METHOD not in job.choice.by_person:
        return
    form = job.card.wanted.get("relief_form")
    if form is not None and job.choice.form and form.value.strip() not in {"", job.choice.form}:
        yield card_issue(way, f"The way chosen, {spoken(method)}, makes the relief {job.choice.form}, and {form.value} is wanted: "
                      f"every reading counts as {job.choice.form}. Change the relief form to that, or choose another way.",
                      "warning")  # fmt: skip
    wheel = job.wheel
    if (
        method in {HEAD, REST}
        and wheel is not None
        and wheel.shape
        and wheel.shape != shape_for(method, wheel)
        and not any(one.rule.methods for one in against(job.book, wheel, ground_of(job)))
    ):
        other = REST if wheel.shape in CUPS else HEAD
        yield card_issue(way, f"{method} is set for a {spoken(shape_for(method, wheel))} wheel, and {wheel.title} is "
                      f"{spoken(wheel.shape)}. "
                      f"Mount such a wheel, or choose {other}.", "warning")  # fmt: skip


def _of_after(job: Job) -> Iterator[Issue]:
    severity = severity_after(job)
    bad_end = severity == "warning"
    diameters = job.card.after.get("diameter", Inspection()).readings
    for key, found in job.card.after.items():
        way = f"after.{key}"
        yield from reading_issues(job, way, key, found.readings, diameters, bad_end=bad_end)
        if found.wanted.strip() and (wrong := _wrong_with_shall_be(job, key, found)):
            yield card_issue(f"{way}.wanted", f"What the {title_of(key).lower()} shall be: {wrong}")
        for wrong in wrong_with_steps(job, found.readings) if key == "diameter" else ():
            yield card_issue(way, f"{title_of(key)}: {wrong}")
        yield from _bad_tolerance(way, key, found.tolerance)
        if wide := wide_tolerance(job, key, found):
            yield card_issue(f"{way}.tolerance", wide, "warning")
        if said := far_from_set(job, key, found):
            yield card_issue(f"{way}.wanted", said, "warning")
    yield from size_after(job)
    yield from relief_after(job)
    under_size = tuple(under_size_issues(job, severity))
    for verdict in verdicts(job):
        way = f"after.{verdict.key}"
        off = {mark.flute for mark in verdict.marks if mark.text_off}
        readings = job.card.after[verdict.key].readings
        yield from standing_proud(job, way, verdict.key, readings, severity, off)
        for mark in verdict.marks:
            told = verdict.key == "diameter" and any(one.flute in {0, mark.flute} for one in under_size)
            if mark.text_off and not told:
                place = f", {verdict.place} {mark.flute}" if len(verdict.marks) > 1 else ""
                yield card_issue(way, f"{title_of(verdict.key)}{place}: {mark.text} is {mark.text_off}. {_cure(verdict.key, mark)}",
                              severity, mark.flute)  # fmt: skip
    yield from under_size


def _wrong_with_shall_be(job: Job, key: str, found: Inspection) -> str:
    """What is wrong with what a quantity shall be, which of a tool with steps is a diameter for each; empty where nothing is."""
    of_steps = wrong_with_shall_be(job, found) if key == "diameter" else None
    return wrong_with(job, key, found.wanted, share=True) if of_steps is None else of_steps


def _cure(key: str, mark: Mark) -> str:
    """What to do about a reading that is off, which is another thing where it is over than where it is under."""
    is_under = mark.side == "under"
    if key == "diameter" and is_under:
        return "Grinding does not bring it back; say in the result what becomes of the tool."
    if key in DROPS:
        what = ("The heel lies too high: grind as far as the heel, or set more and grind it again" if is_under
                else "The heel lies too deep: set less and grind the whole land again")  # fmt: skip
    elif quantity(key).kind is Kind.ANGLE:
        what = f"Set {'more' if is_under else 'less'} and grind it again"
    else:
        what = (
            f"It is too {'small: look whether grinding still helps' if is_under else 'large: grind it again'}"
        )
    return f"{what}, or say in the result what becomes of the tool."


def _of_end(job: Job) -> Iterator[Issue]:
    result = job.card.result.strip()
    if result and not is_result(result):
        yield card_issue(
            "result",
            f"{result!r} is no result; it can be {', '.join(USUAL)}. The time goes into the line above.",
        )
    if job.card.minutes.strip():
        try:
            minutes(job.card.minutes)
        except UnitError as error:
            yield card_issue("minutes", str(error))


def _bad_tolerance(way: str, key: str, text: str) -> Iterator[Issue]:
    if not text.strip() or key not in QUANTITIES:
        return
    try:
        tolerance(text, quantity(key).kind)
    except UnitError as error:
        yield card_issue(f"{way}.tolerance", f"Tolerance of the {title_of(key).lower()}: {error}")
