"""What a person typed for the calculations of a job and nothing else on the sheet tells, so that the next one types the same."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.quantities import quantity
from geometry.role import LASTING
from geometry.sentences import Kind
from library.calc.surfaces import title_of
from library.calc.wording import spoken
from library.cards.job import Job
from library.cards.model import Setting
from library.cards.settings_lines import setting_lines


def given_for(job: Job) -> str:
    """What was typed for the calculations that set and judge this job, in one line; empty where nothing was.

    What stands among the settings, or among what is wanted, is not told again.
    """
    return "; ".join(dict.fromkeys(_given(job)))


def _given(job: Job) -> Iterator[str]:
    told = {line.key for line in setting_lines(job, job.display)}
    known = {*told, *(key for key, one in job.card.wanted.items() if one.value.strip())}
    for step in job.steps:
        # How often it can be sharpened again is told by its number, and makes no other tool.
        if not step.in_use or step.stopped or step.sheet.role.does == LASTING:
            continue
        for key, text in job.card.settings.get(step.sheet.name, Setting()).typed.items():
            if key not in known and step.sheet.field(key) is not None and text.strip():
                is_word = quantity(key).kind is Kind.CHOICE
                said = spoken(text.strip()) if is_word else text.strip()
                yield f"{title_of(key, step.answer.surface).lower()} {said}"
