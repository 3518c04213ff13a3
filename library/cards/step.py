"""One calculation of a job: what it answered, where its inputs come from, and what it means at the machine."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from geometry.calculation import Calculation, Check
from library.calc.answer import Answer
from library.cards.found_relief import FoundRelief
from library.cards.provenance import Provenance
from library.equipment.settings import GraduationLine


@dataclass(frozen=True)
class Step:
    """One calculation of a job.

    Attributes:
        sheet: the calculation.
        answer: what it found, or what it still wants.
        provenance: where each of its inputs comes from.
        lines: its settings on the machine's graduations that no earlier step has set.
        checks: what it means at the machine: the calculation's own checks, then those of machine and wheel.
        skipped: true when the person left it out.
        rests: true while nothing calls for it on this tool.
        recorded: what it answered when the job was closed, by quantity.
        relief: what chosen cams give by an earlier calculation, with which this one counts; else nothing.
        asked: the texts that fill its inputs, by quantity, but for that relief.
    """

    sheet: Calculation
    answer: Answer
    provenance: Mapping[str, Provenance]
    lines: tuple[GraduationLine, ...] = ()
    checks: tuple[Check, ...] = ()
    skipped: bool = False
    rests: bool = False
    recorded: Mapping[str, str] | None = None
    relief: FoundRelief | None = None
    asked: Mapping[str, str] = field(default_factory=dict)

    @property
    def in_use(self) -> bool:
        """Whether it belongs to the job."""
        return not self.skipped and not self.rests

    @property
    def stopped(self) -> bool:
        """Whether it must not be ground as it stands."""
        return any(check.state == "stop" for check in self.checks)

    @property
    def works(self) -> bool:
        """Whether it belongs to the job and has an answer."""
        return self.in_use and self.answer.result is not None

    def surface_on(self, ground: str) -> str:
        """The word of the surface that it reads; that which the job grinds where it asks for none."""
        served = self.sheet.surfaces or self.sheet.belongs_on
        return self.answer.surface or (served[0] if len(served) == 1 else ground)
