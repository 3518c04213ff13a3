"""Fields of a calculation beside others that ask for several values: a list typed there stays, and one of it counts here."""

from __future__ import annotations

from geometry.calculation import Calculation
from geometry.quantities import quantity
from geometry.sentences import Kind
from library.calc.of_several import DIAMETER, is_at_point, is_list, one_of
from library.units.system import METRIC
from tui.view.fields import Fields
from tui.view.text_line import TextLine

POINT, ALONE = "at-the-point", "alone"
"""Behind a quantity of which a list was typed: the one value that was typed for the point of the tool, and for all else."""


class ListFields(Fields):
    """Fields that share what is typed with the other calculations of a tool, some of which ask for lists of it.

    Where one value is asked for, a list stays with those that ask for it: here counts what it says of this place, or what
    is typed in its stead. A list that is typed here by mistake is seen and told of here until the calculation is left.

    Attributes:
        sheet: the calculation.
        display: the units in which it was answered.
    """

    def __init__(self, sheet: Calculation, typed: dict[str, TextLine]) -> None:
        super().__init__(sheet.inputs[0].key, typed)
        self.sheet = sheet
        self.display = METRIC
        self._lists_here: dict[str, str] = {}

    @property
    def surface(self) -> str:
        """The word of the surface that is worked on; empty where there is none."""
        return ""

    def is_choice(self, key: str) -> bool:
        """Whether the field takes one word of a few."""
        return quantity(key).kind is Kind.CHOICE

    def line(self, key: str) -> TextLine:
        """What was typed into a field; where one value is asked for, no list that was typed elsewhere."""
        return self.typed.get(self._alone(key), TextLine()) if self.list_of(key) else super().line(key)

    def list_of(self, key: str) -> str:
        """The list that was typed for an input elsewhere, where this calculation asks for one value; else empty."""
        field, text = self.sheet.field(key), super().line(key).text
        is_one = field is not None and not field.many and not self.is_choice(key)
        return text if is_one and is_list(text) and text != self._lists_here.get(key) else ""

    def place(self, key: str) -> str:
        """Under which key the text of a field is kept here, beside a list that stands elsewhere or in its own place."""
        return self._alone(key) if self.list_of(key) else self.slot(key)

    def _alone(self, key: str) -> str:
        """Under which key the one value is kept that was typed where a list stands elsewhere."""
        return f"{self.slot(key)}.{POINT if self._is_at_point else ALONE}"

    @property
    def _is_at_point(self) -> bool:
        return is_at_point(self.sheet, self.surface)

    def of_lists(self) -> dict[str, str]:
        """What counts here of the lists that were typed elsewhere, by quantity, where nothing was typed in its place."""
        found = {
            field.key: one_of(field.key, text, self.display, at_point=self._is_at_point)
            for field in self.sheet.inputs
            if (text := self.list_of(field.key)) and not self.line(field.key).text.strip()
        }
        return {key: text for key, text in found.items() if text}

    def told_of_list(self, key: str) -> str:
        """What is said of a list: which of its values counts here, or that several may be typed; else empty."""
        field, text = self.sheet.field(key), self.list_of(key)
        if not text or self.line(key).text.strip():
            if key == self.sheet.role.only_several:
                return "Those of all steps from the point up, parted by commas."
            return "One or several, parted by commas." if field is not None and field.many else ""
        if key not in self.of_lists():
            return f"The list {text} stays where it was typed; one value is wanted here."
        if key != DIAMETER:
            return f"All of {text} are alike."
        return f"{'The point stands on the first' if self._is_at_point else 'The largest'} of {text}."

    def reopened(self) -> None:
        """Know that the calculation was left and come back to: a list that was typed here by mistake stands elsewhere now."""
        self._lists_here.clear()
        self.leave()

    def keep(self, line: TextLine) -> None:
        """Keep a text for all calculations of the tool; for its own place alone where a list stands for the others."""
        key, field = self.focus, self.sheet.field(self.focus)
        if self.list_of(key):
            self.typed[self._alone(key)] = line
            return
        self._lists_here[key] = line.text
        if field is not None and not (field.many and is_list(line.text)):
            self.forget_alone(key)
        super().keep(line)

    def forget_alone(self, key: str) -> None:
        """Forget the one values that were typed where a list stood elsewhere."""
        for where in (POINT, ALONE):
            self.typed.pop(f"{self.slot(key)}.{where}", None)

    def forget(self, key: str) -> None:
        """Forget what was typed into a field; a list that was typed elsewhere stays there."""
        if self.list_of(key):
            self.typed.pop(self._alone(key), None)
        else:
            self.forget_alone(key)
            self.typed.pop(self.slot(key), None)
