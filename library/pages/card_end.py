"""What follows at the end of a job card: what keeps it open, what is still to be measured, what the book may learn."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.calculation import Check
from geometry.quantities import QUANTITIES, quantity
from library.cards.asked_after import asked_after
from library.cards.cams import show_angle
from library.cards.history import ground_to_last, sharpenings_left
from library.cards.issues import issues_of, keeps_open
from library.cards.job import Job
from library.cards.last_facet import heel_or_title
from library.cards.learn import in_book, lessons
from library.cards.measured_again import MEASURED_AGAIN, measured_after
from library.cards.model import Inspection
from library.cards.step import Step
from library.cards.still_to_measure import still_to_measure
from library.pages.page import Checks, Named, Said, Values
from library.pages.setting_answers import Parts
from library.units.show import say


def end_answers(job: Job, key: str) -> Parts:
    """What keeps the card open, how often the tool can still be sharpened, and what the book may learn."""
    if job.card.done:
        day = job.card.finished.isoformat() if job.card.finished else ""
        yield (Said((f"Done {day}. It is a record now.",), "strong"),)
    else:
        wrong = keeps_open(job)
        many = "1 thing keeps" if len(wrong) == 1 else f"{len(wrong)} things keep"
        rest = () if wrong else tuple(_left_open(job))
        clean = "Nothing keeps the card open." if rest else "Everything adds up; the card can be closed."
        if still_to_measure(job.card):
            clean = "Nothing was measured after grinding yet."
        yield (
            Said((f"{many} the card open:" if wrong else clean,), "strong"),
            Checks(tuple((one.state, one.text) for one in wrong)),
            Said(rest, "quiet"),
        )
    left = sharpenings_left(job)
    if left is not None:
        measured = any(one.strip() for one in job.card.after.get("diameter", Inspection()).readings)
        counted = f"by grinding {ground_to_last(job)}{', counted from the new diameter' if measured else ''}"
        yield (Values((Named("Sharpenings left", str(left), below=(counted,)),), at_edge=True),)
    learned = lessons(job.card)
    for is_in, said in (
        (False, "Learned on this job, and not in the book yet:"),
        (True, "Learned on this job; it is in the book now:"),
    ):
        rows = [(f"  {_title(one.key)}", one.value) for one in learned if in_book(one, job.book) == is_in]
        if rows:
            yield Said((said,)), Values(tuple(Named(title, text) for title, text in rows), at_edge=True)


def _left_open(job: Job) -> Iterator[str]:
    """What a card may be closed with, though it is not as it might be: what is on watch, lines still empty."""
    asked = asked_after(job)
    to_measure = [heel_or_title(key).lower() for key in still_to_measure(job.card) if key in asked]
    if to_measure:
        yield (
            f"Still to be measured on the page After: {', '.join(to_measure)}. Without a reading the card tells nobody "
            "what came of the job; close it so only on purpose."
        )
    watched = [*dict.fromkeys(_on_watch(job))]
    if watched:
        yield f"Look once more before you close it: {' '.join(watched)} The page Set has the rest."
    measured = [
        one.text for one in issues_of(job) if one.way.startswith("after.") and one.severity != "error"
    ]
    if measured:
        firsts = " ".join(f"{text.partition('. ')[0].removesuffix('.')}." for text in measured)
        yield f"Of what was measured: {firsts} The page After has the rest."
    card = job.card
    texts = {"notes": card.notes, "time spent": card.minutes, "result": card.result}
    empty = [name for name, text in texts.items() if not text.strip()]
    if empty:
        yield f"Still empty on this page: {', '.join(empty)}."


def _on_watch(job: Job) -> Iterator[str]:
    """What the calculations put on watch, each in its first sentence; what a cam gives in few words."""
    cam = job.by_cam
    for step in job.steps:
        for check in step.checks if step.works else ():
            if check.state != "watch" or _is_of_before(job, step, check):
                continue
            text = say(check.sentence, job.display)
            if cam is not None and cam.differs and show_angle(cam.given) in text:
                yield f"The cam of {cam.throw} gives {show_angle(cam.given)} of relief where {show_angle(cam.wanted)} was wanted."
            else:
                yield f"{text.partition('. ')[0].removesuffix('.')}."


def _is_of_before(job: Job, step: Step, check: Check) -> bool:
    """Whether a watch is of the tool as it came, in what was measured again after grinding: the page After judges that.

    What a job is worked out with anew once it is measured again is of the tool as it is.
    """
    return bool(check.cure) and all(
        step.provenance.get(key) == "measured"
        and key not in MEASURED_AGAIN.values()
        and measured_after(job.card, key)
        for key, _ in check.cure
    )


def _title(key: str) -> str:
    return quantity(key).title if key in QUANTITIES else key
