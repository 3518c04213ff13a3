"""Forms for a machine and for a wheel of the shop: new ones, and those that are there."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from geometry.quantities import quantity
from library.drafts.draft import Draft
from library.editing.changes import SetTable
from library.editing.document import EditRefused
from library.equipment.abrasives import ABRASIVES
from library.equipment.as_typed import DIVISION, GRADUATIONS, as_typed, as_written, changed, complaints
from library.equipment.model import machines, wheels
from tui.screens.table_forms import TableForm
from tui.view.text_form import Blank

if TYPE_CHECKING:
    from library.editing.changes import Change
    from tui.app import Heelclear
    from tui.session import Session

_NAME = Blank("id", "Id", "Its name on cards and in the files: small letters, digits and hyphens.")
_NOTE = Blank("note", "Note", "What the next person should know of it.")

BLANKS: Mapping[str, tuple[Blank, ...]] = {
    "machine": (
        Blank("title", "Title", "As the shop calls it, such as The grinder by the window."),
        _NAME,
        Blank("index_ratio", "Dividing head", "Turns of its crank for one turn of the work spindle, such as 40."),
        Blank("plate_holes", "Hole circles", "Of the plates that are in the shop, parted by commas: 15, 16, 18, 21."),
        Blank("spindle_speeds", "Speeds", "Of the wheel spindle, each with its unit: 2800 rpm, 4200 rpm."),
        Blank("cam_throws", "Cams", "The throw of each cam in the drawer, with its unit: 0.5 mm, 1 mm."),
        Blank("throw_per", "Throw counted", "For one turn of the tool, or from one tooth to the next. Left and Right change it.",
              ("", "tooth", "turn")),
        *(Blank(DIVISION + name, name.replace("-", " ").capitalize(), "What one division is worth, with its unit: 0.01 mm, "
                "15 min. Empty where it has none.") for name in GRADUATIONS),
        _NOTE,
    ),
    "wheel": (
        Blank("title", "Title", "As the shop calls it, such as White cup 100."),
        _NAME,
        Blank("shape", "Shape", "Its type by ISO 525. Left and Right change it.", ("", *quantity("wheel_shape").choices)),
        Blank("diameter", "Diameter", "As it is now, with its unit: 98 mm."),
        Blank("abrasive", "Abrasive", "What cuts in it. Left and Right change it.", ("", *ABRASIVES)),
        Blank("grit", "Grit", "As marked on the wheel."),
        Blank("bond", "Bond", "As marked on the wheel."),
        Blank("rated_speed", "Rated speed", "As marked on the wheel, with its unit: 35 m/s or 6500 ft/min. A wheel without a "
              "readable rating is not used."),
        Blank("dressed", "Dressed", "The day on which it was last dressed: year-month-day."),
        _NOTE,
    ),
}  # fmt: skip
"""The lines of each form."""


class EquipmentForm(TableForm):
    """A machine or a wheel.

    Args:
        session: has the book.
        array: ``machine`` or ``wheel``.
        name: its id; empty for a new one.
        table: its keys as the shop's file has them; none for a new one.
    """

    def __init__(
        self, session: Session, array: str, name: str = "", table: Mapping[str, object] | None = None
    ) -> None:
        self.array, self.own_id = array, name
        started = {**as_typed(array, table or {}), "id": name}
        self.ID_FOLLOWS = not name
        lines = tuple(one for one in BLANKS[array] if not name or one.key != "id")
        super().__init__(session, lines, {one.key: started.get(one.key, "") for one in lines})

    def title_text(self) -> str:
        """What it is, and whether it is new."""
        return f"Change the {self.array} {self.own_id}" if self.own_id else f"New {self.array}"

    @property
    def NEEDED(self) -> tuple[str, ...]:  # type: ignore[override]
        """Lines that must not be empty."""
        return ("title",) if self.own_id else ("title", "id")

    def complaints(self) -> dict[str, str]:
        """What the reader of the book will say of it, besides what any table may have wrong."""
        texts = self.form.values()
        found = complaints(self.array, self.own_id or self.value("id"), texts)
        return {key if key in texts else "": text for key, text in found.items()} | super().complaints()

    def is_taken(self, name: str) -> bool:
        """Whether the book has one of that id."""
        book = self.session.book
        return book is not None and name in (machines(book) if self.array == "machine" else wheels(book))

    def change(self) -> Change | None:
        """The keys that are different now; all of them for a new one."""
        now = self.form.values()
        if not self.own_id:
            return SetTable(self.array, self.value("id"), as_written(self.array, now), is_new=True)
        fields = changed(self.array, now, self.form.started)
        return SetTable(self.array, self.own_id, fields) if fields else None

    def about(self) -> str:
        """Which one it is."""
        return f"{self.array}.{self.own_id}" if self.own_id else f"New {self.array}"

    def draft(self) -> Draft:
        """What was typed."""
        return Draft("equipment", self.about(), self.form.values(), dict(self.form.started))


def new_form(session: Session, array: str) -> EquipmentForm:
    """A form for a new machine or wheel."""
    return EquipmentForm(session, array)


def form_for(app: Heelclear, array: str, name: str) -> EquipmentForm | None:
    """The form of a machine or wheel as the shop's file has it now; nothing where it is gone.

    Args:
        app: has the shop's book.
        array: ``machine`` or ``wheel``.
        name: its id.
    """
    try:
        table = app.book_service.table(array, name)
    except EditRefused as refused:
        app.say(str(refused))
        return None
    return EquipmentForm(app.session, array, name, table) if table is not None else None


def form_of_draft(app: Heelclear, draft: Draft) -> EquipmentForm | None:
    """The form that a draft of a machine or wheel was typed on."""
    array, _, name = draft.about.removeprefix("New ").partition(".")
    if array not in BLANKS:
        return None
    return form_for(app, array, name) if name else new_form(app.session, array)
