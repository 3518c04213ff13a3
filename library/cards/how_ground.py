"""How the tool of a job is ground: the set-up of its surface, the numbers that stand in its lines, and what matters to the wheel."""

from __future__ import annotations

from geometry.edge.surface_input import HALF
from geometry.quantities import quantity
from geometry.role import HEEL
from geometry.sentences import Kind
from library.book.tool_materials import tool_material
from library.calc.in_units import in_units_of
from library.calc.throw_per import per_said
from library.cards.heels import at_each_heel
from library.cards.job import Job
from library.cards.set_otherwise import set_otherwise
from library.cards.setting_line import SettingLine
from library.cards.settings_lines import SAME_FACET, setting_lines
from library.cards.shall_be import indicator_said
from library.cards.shoulder_settings import swivels
from library.guidance.model import Setup
from library.guidance.setups import for_entry, for_job
from library.guidance.wheels import Ground
from library.units.show import show, show_answer
from library.units.system import Display


def setup_of(job: Job) -> Setup | None:
    """The set-up of what is ground in a job; nothing where the book has none."""
    card = job.card
    entry = job.book.entries.get(card.entry) if card.entry else None
    return for_job(job.book, card.family, entry, job.choice.surface, job.choice.method)


BESIDE_THE_RELIEF = {"spiral-point": "spiral-point", "hole": "cross-hole"}
"""What is ground on a tool on its own, beside the surface that is relieved, each with the calculation that tells of it."""


def ground_besides(job: Job) -> str:
    """What is ground on the tool of a job on its own and is in none of its settings, as a sentence; else empty.

    The set-up that names such tools says it, as the gash of a gun tap: the relief of the chamfer leaves that blunt.
    """
    entry = job.book.entries.get(job.card.entry) if job.card.entry else None
    setup = for_entry(job.book, entry) if entry is not None else None
    name = BESIDE_THE_RELIEF.get(setup.surface, "") if setup is not None and setup.when else ""
    step = next((one for one in job.steps if one.sheet.name == name), None)
    if setup is None or step is None or step.in_use:
        return ""
    return (
        f"{setup.title}: ground on its own, beside what stands here. "
        f"{step.sheet.title}, among the other calculations, tells how it is set."
    )


def ground_of(job: Job) -> Ground:
    """What is known of the tool of a job and how it is ground, as far as it matters to the wheel."""
    card = job.card
    entry = job.book.entries.get(card.entry) if card.entry else None
    material = tool_material(job.book, card.family, entry, card.tool.marks)
    return Ground(material, job.choice.surface, job.choice.method)


SAME_THROW = {"radial_throw": "chosen_throw", "chosen_throw": "radial_throw"}
"""The throw of the one cam toward the axis, by the two names that calculations have for it."""


class Numbers:
    """The numbers of a job by their quantity, each as it is set or read; of what is stopped there is none.

    Args:
        job: the card worked out.
        display: the units of lengths.
    """

    def __init__(self, job: Job, display: Display) -> None:
        self._job = job
        self._display = display
        self._lines = {line.key: line for line in setting_lines(job, display)}

    def __call__(self, key: str) -> str:
        """The number of a quantity with its unit; empty where the job does not know it, or must not set it."""
        lines = self._set_for(key)
        if lines:
            return "" if lines[0].stopped else ", then ".join(map(self._set_to, lines))
        if key in set_otherwise(self._job):
            return ""
        drop = self._job.doing(HEEL)
        cam = self._job.by_cam
        each = at_each_heel(self._job, self._display) if key == "heel_drop" else ""
        if each and drop is not None and not drop.stopped:
            return self._pointed(each)
        if key == "heel_drop" and cam is not None and drop is not None and not drop.stopped:
            return self._pointed(show(cam.heel, Kind.LENGTH, self._display))
        for step in self._job.steps:
            if step.works and step.answer.result is not None and key in step.answer.result.outputs:
                number = step.answer.result.outputs[key]
                said = "" if step.stopped else show_answer(number, quantity(key), self._display)
                return self._pointed(said) if said and key == "heel_drop" else said
        return self._in_its_unit(key, self._job.edge_text(key))

    def _in_its_unit(self, key: str, text: str) -> str:
        """What the book has in the unit of the card; what a person typed as he typed it."""
        wanted = self._job.card.wanted.get(key)
        of_book = (
            text == wanted.value and not wanted.changed if wanted is not None else not self._is_typed(key)
        )
        return in_units_of(key, text, self._display) if of_book else text

    def _is_typed(self, key: str) -> bool:
        """Whether a quantity was measured, or typed for a calculation."""
        typed = any(key in one.typed for one in self._job.card.settings.values())
        return typed or key in self._job.card.received

    def _set_to(self, line: SettingLine) -> str:
        """What is set, a throw with per what it counts."""
        step = self._job.step(line.sheet)
        per = per_said(line.key, step.answer.inputs) if step is not None else ""
        return f"{line.value} {per}".rstrip()

    def _set_for(self, key: str) -> list[SettingLine]:
        """The settings of a quantity: that of each shoulder or facet where it has several; none where it is not set."""
        line = self._lines.get(key) or self._lines.get(SAME_THROW.get(key, key))
        each = swivels(self._lines.values()) if key == HALF else []
        return each or (self._of_facets(line) if line is not None else [])

    def _of_facets(self, line: SettingLine) -> list[SettingLine]:
        """A setting with that of any other facet, in the order in which they are ground."""
        by_height = line.key in SAME_FACET
        return [
            one
            for one in self._lines.values()
            if one.key in (line.key, f"second_{line.key}")
            or (by_height and one.sheet == line.sheet and one.is_set and one.key.startswith("facet "))
        ]

    def _pointed(self, drop: str) -> str:
        """A drop with where the indicator points for it: the same heel falls by another number seen otherwise."""
        return f"{drop}, indicator {indicator_said(self._job)}"

    def convert(self, number: float, kind: Kind) -> str:
        """A number that is none of the job, in the unit of its lengths."""
        return show(number, kind, self._display)
