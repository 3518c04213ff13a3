"""What calculations and machine cannot do on a card, each at the line in which it was typed."""

from __future__ import annotations

from collections.abc import Iterator

from library.calc.wording import by_title
from library.cards.inspecting import verdicts
from library.cards.job import Job
from library.cards.measured_again import MEASURED_AGAIN, measured_after
from library.cards.model import Setting
from library.cards.reading_issues import card_issue
from library.cards.results import severity_after
from library.cards.step import Step
from library.cards.typed_above import line_of, typed_above
from library.equipment.drawer_advice import keys_named
from library.issue import Issue, Severity
from library.units.show import say


def settings_issues(job: Job, before: tuple[Issue, ...]) -> Iterator[Issue]:
    """What calculations and machine cannot do; what was told where it was measured is not told again.

    Args:
        job: the card worked out.
        before: what was told of the steps before the settings.
    """
    told = {one.way.split(".")[1] for one in before if one.way.startswith(("received.", "wanted.", "tool."))}
    judged = {one.key: one.state for one in verdicts(job)}
    for step in job.steps:
        if not step.in_use:
            continue
        way = f"settings.{step.sheet.name}"
        typed = job.card.settings.get(step.sheet.name, Setting()).typed
        for one in step.answer.issues:
            if (
                not one.missing
                and (one.key in typed or one.key not in told)
                and not _told_above(job, step, one.key)
            ):
                yield card_issue(
                    f"{way}.{one.key}" if one.key else way, f"{step.sheet.title}: {by_title(one.text)}"
                )
        for check in step.checks:
            text = say(check.sentence, job.display)
            if check.state == "stop" and not any(text in one.text for one in before):
                again = _measured_again(job, step)
                # What is off after grinding says itself what becomes of the tool, and with what result the card closes.
                if not any(_gives_way(who, judged.get(key)) for key, who in again.items()):
                    named = (key for key in keys_named(check) if key in typed or typed_above(job, step, key))
                    line = line_of(job, step, next(named, ""))
                    severity: Severity = severity_after(job) if again else "error"
                    yield card_issue(line, f"{step.sheet.title}: {text}", severity)


def _told_above(job: Job, step: Step, key: str) -> bool:
    """Whether what is wrong with an input is told where it was typed, in an earlier calculation."""
    above = typed_above(job, step, key)
    return above is not None and any(one.key == key for one in above.answer.issues)


def _measured_again(job: Job, step: Step) -> dict[str, str]:
    """The quantities that a calculation judges and that were measured after grinding, each with whence it has them."""
    return {
        key: step.provenance[name]
        for key, name in MEASURED_AGAIN.items()
        if step.provenance.get(name) in {"measured", "typed"} and measured_after(job.card, key)
    }


def _gives_way(provenance: str, judged: str | None) -> bool:
    """Whether a stop on a measured size gives way to the verdict on it after grinding.

    What was typed there is the size of before, which one that passes now ends.
    """
    return judged == "stop" or (judged == "pass" and provenance == "typed")
