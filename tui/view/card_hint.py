"""What stands under the lines of a card: what is wrong with the one in hand, else what belongs there."""

from __future__ import annotations

from tui.keys import Keys, with_keys
from tui.view.card_form import CardForm
from tui.view.card_lines import told
from tui.view.lines import Line, Piece, line, wrap

RECORD = "This card is done, a record: nothing is typed on it. {menu} opens it again; {print}, then {go-on}, shows its setup sheet."
"""What stands under the lines of a closed card."""


def hint_lines(form: CardForm, keys: Keys, width: int) -> list[Line]:
    """What is wrong with the line in hand, else what belongs there; before it what was typed over there.

    Args:
        form: the card being filled in.
        keys: gives the key of an action.
        width: in cells.

    Returns:
        As many lines as it takes; whoever shows them cuts them to the room at the foot.
    """
    row = form.row
    faults, before = form.faults_at(row) or form.faults_under(row), form.stood_here
    stood = f"{before} stood here; {keys('empty')} brings it back." if before else ""
    if not faults:
        hint = with_keys(RECORD if form.card.done else row.hint, keys)
        return wrap(f"{stood} {hint}".lstrip(), width, "quiet")
    word = faults[0].state.upper()
    first, *rest = wrap(told(row, faults), width, "warn", first=f"{word}: ", rest="  ")
    told_before = wrap(stood, width, "quiet") if stood else []
    return [
        *told_before,
        line(Piece(word, faults[0].state), Piece(first[0].text[len(word) :], "warn")),
        *rest,
    ]
