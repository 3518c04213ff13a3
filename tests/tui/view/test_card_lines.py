"""What is said in one line of a card of all that is wrong there."""

from __future__ import annotations

from tui.view.card_faults import Fault
from tui.view.card_lines import told
from tui.view.card_row import Row

DROP = Row("received.drop", "Indicator drop", "")


def test_what_more_is_wrong_in_a_line_is_counted_by_its_verdict() -> None:
    stop, watch = (
        Fault(DROP.way, "stop", "Indicator drop: It is none."),
        Fault(DROP.way, "watch", "It is odd."),
    )
    assert told(DROP, [stop]) == "It is none."
    assert told(DROP, [stop, watch, watch]) == "It is none. (also 2 WATCH in this line)"
    assert told(DROP, [stop, stop, watch]) == "It is none. (also 1 STOP and 1 WATCH in this line)"
