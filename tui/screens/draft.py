"""One draft beside the book: what was typed, what stood there when it was begun, and what stands there now."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from library.drafts.draft import Difference, compare
from tui.screens.draft_names import label_of, name_of
from tui.screens.draft_screens import form_of, without_unit
from tui.screens.left_behind import JOB_CARD
from tui.screens.own_table_forms import DRAFTS, form_of_draft
from tui.screens.reading import Reading
from tui.view.lines import EMPTY, Line, Piece, line, wrap

if TYPE_CHECKING:
    from library.drafts.draft import Draft
    from library.drafts.draft_store import Kept
    from tui.screens.base_screen import Needs
    from tui.screens.drafts import DraftsScreen
    from tui.session import Session


class DraftScreen(Reading):
    """Every field that was typed, to decide whether to take it up or to drop it."""

    WHERE = "draft"

    def __init__(self, session: Session, kept: Kept, drafts: DraftsScreen) -> None:
        super().__init__(session)
        self.kept = kept
        self._drafts = drafts

    def title_text(self) -> str:
        """What the draft is of."""
        return name_of(self.session, self.kept.draft)

    def text(self, width: int) -> list[Line]:
        """Field by field: typed, begun with, and now."""
        draft = self.kept.draft
        unit = f" Numbers without a unit are in {draft.units}." if draft.units else ""
        lines = [*wrap(f"Typed until {draft.kept:%Y-%m-%d %H:%M}.{unit}", width, "quiet"), EMPTY]
        if said := without_unit(draft):
            lines += [*wrap(said, width, "warn"), EMPTY]
        now = self._now(draft)
        if now is None:
            lines += [*wrap("What it was about is not in the book any more.", width, "warn"), EMPTY]
        for one in compare(draft, draft.started if now is None else now):
            if one.draft is not None and one.draft != draft.started.get(one.key, ""):
                lines += [*_field(one, draft, width, knows_now=now is not None), EMPTY]
        return lines

    def needs(self) -> Needs:
        """It is taken up where its book is open, and has what it is about."""
        return {**super().needs(), "go-on": lambda: self._drafts.can_take_up(self.kept)}

    def _now(self, draft: Draft) -> Mapping[str, str] | None:
        """What the form would hold if it were opened now; nothing where its entry is gone."""
        if draft.kind == JOB_CARD:
            return self.heelclear.card_service.fields_now(draft)
        if draft.kind == "calculator":
            return {} if self.session.entry(draft.about) is not None else None
        is_own = draft.kind in DRAFTS
        form = form_of_draft(self.heelclear, draft) if is_own else form_of(self.session, draft)
        return None if form is None else form.current()

    def do_go_on(self) -> None:
        """Take it up again."""
        self.app.pop_screen()
        self._drafts.take_up(self.kept)

    def do_drop_draft(self) -> None:
        """Forget it, once that is confirmed."""
        self._drafts.ask_to_drop(self.kept, self)


def _field(one: Difference, draft: Draft, width: int, *, knows_now: bool) -> list[Line]:
    began, now = draft.started.get(one.key, ""), one.current or ""
    rows = [("Typed", one.draft or ""), ("When begun", began)]
    if knows_now and draft.kind != "calculator":
        rows.append(("In the book now", now))
    lines = [line(Piece(label_of(draft, one.key), "strong"))]
    for name, text in rows:
        lines += wrap(text or "nothing", width, first=f"  {name:<17}", rest=" " * 19)
    if knows_now and draft.kind != "calculator" and one.moved:
        lines += wrap(
            "Somebody else changed it since; before saving you are asked which to keep.",
            width,
            "warn",
            first="  ! ",
            rest="    ",
        )
    return lines
