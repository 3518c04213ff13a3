"""Two people, one file: different keys come together, the same key asks, and nothing gets lost."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from library.editing.document import EditRefused
from library.editing.lines import woven
from library.editing.merging import Choice, Conflict, Merge, Side, changes_between, three_way
from library.editing.steps import AddTable, DropTable, SetKey, applied, same

Data = dict[str, Any]

values = st.sampled_from([1, 1.0, True, "a", "b", ["x"], {"usual": "4 deg"}, {"usual": "5 deg"}])
table_keys = st.sampled_from(["title", "rake_angle", "relief_angle", "notes"])
names = st.sampled_from(["one", "two", "three"])


@st.composite
def books(draw: st.DrawFn) -> Data:
    entries = draw(st.dictionaries(names, st.dictionaries(table_keys, values, max_size=4), max_size=3))
    data: Data = draw(st.dictionaries(st.sampled_from(["schema", "x-a"]), values, max_size=2))
    if entries:
        data["entry"] = [{"id": name, **table} for name, table in entries.items()]
    return data


def book(**table: object) -> Data:
    """A book of one entry."""
    return {"entry": [table]}


def flat(data: Data) -> dict[tuple[str, str], Any]:
    """Every key of every table, and of the top, as one dictionary: an own, simpler view of a book."""
    found = {("", key): value for key, value in data.items() if key != "entry"}
    for entry in data.get("entry", []):
        found |= {(entry["id"], key): value for key, value in entry.items()}
    return found


def merged(theirs: Data, merge: Merge) -> Data:
    for step in merge.steps:
        theirs = applied(theirs, step)
    return theirs


@given(base=books(), mine=books(), theirs=books())
def test_nothing_that_one_of_two_changed_gets_lost(base: Data, mine: Data, theirs: Data) -> None:
    merge = three_way(base, mine, theirs)
    was, want, have, result = flat(base), flat(mine), flat(theirs), flat(merged(theirs, merge))
    asked = {(conflict.id, conflict.key) for conflict in merge.conflicts}
    for place in was.keys() | want.keys() | have.keys() | result.keys():
        one, other, old, new = (side.get(place) for side in (want, have, was, result))
        if place in asked or (place[0], "") in asked:
            assert same(new, other), "while a question is open the file keeps what it has"
        elif not same(one, old):
            assert same(new, one)
        else:
            assert same(new, other)


@given(base=books(), mine=books(), theirs=books())
def test_there_is_a_question_exactly_where_both_changed_the_same_to_something_else(
    base: Data, mine: Data, theirs: Data
) -> None:
    was, want, have = flat(base), flat(mine), flat(theirs)
    both = {
        place
        for place in was.keys() | want.keys() | have.keys()
        if not same(want.get(place), was.get(place))
        and not same(have.get(place), was.get(place))
        and not same(want.get(place), have.get(place))
    }
    asked = {(conflict.id, conflict.key) for conflict in three_way(base, mine, theirs).conflicts}
    assert {place for place in asked if place[1]} <= both
    for name, key in both:
        assert (name, key) in asked or (name, "") in asked


@given(
    base=books(),
    mine=books(),
    theirs=books(),
    sides=st.lists(st.sampled_from(["mine", "theirs"]), min_size=20),
)
def test_every_question_can_be_answered_and_the_answer_holds(
    base: Data, mine: Data, theirs: Data, sides: list[Side]
) -> None:
    first = three_way(base, mine, theirs)
    choices = [Choice(conflict, side) for conflict, side in zip(first.conflicts, sides, strict=False)]
    second = three_way(base, mine, theirs, choices)
    assert second.conflicts == ()
    result, want, have = flat(merged(theirs, second)), flat(mine), flat(theirs)
    for choice in choices:
        side = want if choice.side == "mine" else have
        if choice.conflict.key:
            place = (choice.conflict.id, choice.conflict.key)
            assert same(result.get(place), side.get(place))
        else:
            whole = {place: value for place, value in side.items() if place[0] == choice.conflict.id}
            assert same(
                {place: value for place, value in result.items() if place[0] == choice.conflict.id}, whole
            )


@given(base=books(), mine=books(), theirs=books())
def test_without_questions_it_does_not_matter_who_saves_first(base: Data, mine: Data, theirs: Data) -> None:
    one, other = three_way(base, mine, theirs), three_way(base, theirs, mine)
    if not one.conflicts:
        assert not other.conflicts
        assert same(flat(merged(theirs, one)), flat(merged(mine, other)))


@given(now=books(), wanted=books())
def test_the_changes_between_two_states_lead_from_one_to_the_other(now: Data, wanted: Data) -> None:
    assert same(flat(merged(now, Merge(changes_between(now, wanted), ()))), flat(wanted))


def test_different_keys_of_one_entry_merge() -> None:
    base = book(id="a", title="A", rake_angle="4 deg")
    mine = book(id="a", title="B", rake_angle="4 deg")
    theirs = book(id="a", title="A", rake_angle="5 deg")
    assert three_way(base, mine, theirs) == Merge((SetKey("entry", "a", "title", "B"),), ())


def test_the_same_key_is_a_question_that_shows_three_values() -> None:
    base, mine, theirs = (book(id="a", rake_angle=angle) for angle in ("4 deg", "5 deg", "6 deg"))
    merge = three_way(base, mine, theirs)
    assert merge.steps == ()
    (conflict,) = merge.conflicts
    assert conflict == Conflict("entry", "a", "rake_angle", "4 deg", "5 deg", "6 deg")
    assert conflict.sentence == (
        "Both of you changed rake angle of 'a': it was (4 deg), yours here is (5 deg), and somebody else saved (6 deg)."
    )


def test_an_entry_that_one_removed_and_the_other_changed_is_one_question() -> None:
    base = book(id="a", title="A")
    theirs = book(id="a", title="B", notes="n")
    merge = three_way(base, {}, theirs)
    assert [(conflict.id, conflict.key, conflict.mine) for conflict in merge.conflicts] == [("a", "", None)]
    assert three_way(base, {}, theirs, [Choice(merge.conflicts[0], "mine")]).steps == (
        DropTable("entry", "a"),
    )
    again = three_way(base, theirs, {})
    assert three_way(base, theirs, {}, [Choice(again.conflicts[0], "mine")]).steps == (
        AddTable("entry", theirs["entry"][0]),
    )


def test_an_answer_to_another_question_is_no_answer() -> None:
    base, mine, theirs, later = (book(id="a", k=angle) for angle in (1, 2, 3, 4))
    (conflict,) = three_way(base, mine, theirs).conflicts
    assert three_way(base, mine, later, [Choice(conflict, "mine")]).conflicts


def test_tables_that_cannot_be_told_apart_are_refused_only_when_they_were_changed() -> None:
    twins: Data = {"entry": [{"id": "a"}, {"id": "a"}], "x": 1}
    assert three_way(twins, twins | {"x": 2}, twins).steps == (SetKey("", "", "x", 2),)
    with pytest.raises(EditRefused, match="its own id"):
        three_way(twins, {"entry": [{"id": "a"}], "x": 1}, twins)


texts = st.lists(st.sampled_from(["a", "b", "c", "", "# d"]), max_size=8).map("\n".join)


@given(base=texts, mine=texts)
def test_weaving_with_an_unchanged_side_gives_the_changed_one(base: str, mine: str) -> None:
    assert woven(base, mine, base).rstrip("\n") == mine.rstrip("\n")
    assert woven(base, base, mine) == mine
    assert woven(base, mine, mine) == mine


@given(head=texts, tail=texts, mine=texts, theirs=texts)
def test_weaving_keeps_changes_that_lie_apart(head: str, tail: str, mine: str, theirs: str) -> None:
    def text(first: str, second: str) -> str:
        return f"{head}\n{first}\n=1\n=2\n=3\n{second}\n{tail}\n"

    assert woven(text("M", "T"), text(mine, "T"), text("M", theirs)) == text(mine, theirs)


def test_a_text_too_large_to_compare_is_left_as_they_have_it() -> None:
    base = "x\n" * 3000
    assert woven(base, f"y\n{base}z\n", f"t\n{base}") == f"t\n{base}"
