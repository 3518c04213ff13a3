"""Odd layouts, one by one, and the proof that keeps a wrong text from being written."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

from library.editing.document import EditRefused, open_document
from library.editing.in_place import Splice, spliced, splices_for
from library.editing.plan import replanned
from library.editing.proof import prove
from library.editing.steps import AddTable, DropKey, DropTable, SetKey, Step
from library.editing.writing import literal, table
from library.toml.layout import Layout

FILE = Path("taps.toml")


def changed(text: str, *steps: Step) -> str:
    return replanned(FILE, text.encode(), steps).decode()


def test_a_key_above_the_first_table_is_added_before_it() -> None:
    assert (
        changed('[[entry]]\nid = "a"\n', SetKey("", "", "schema", 1)) == 'schema = 1\n[[entry]]\nid = "a"\n'
    )
    assert changed("x-a = 1\n\n[[entry]]\nid = 'a'\n", SetKey("", "", "x-b", 2)).startswith(
        "x-a = 1\nx-b = 2\n\n"
    )
    assert changed("", SetKey("", "", "schema", 1)) == "schema = 1\n"


def test_a_key_is_added_to_its_own_table_and_not_to_the_one_below() -> None:
    text = '[[entry]]\nid = "a"\n[entry.rake_angle]\nusual = "1 deg"\n[[entry]]\nid = "b"\n'
    assert changed(text, SetKey("entry", "a", "title", "A")) == text.replace('"a"\n', '"a"\ntitle = "A"\n')


def test_the_last_line_without_a_line_end_gets_one_and_no_more() -> None:
    assert (
        changed('[[entry]]\nid = "a"', SetKey("entry", "a", "title", "A"))
        == '[[entry]]\nid = "a"\ntitle = "A"\n'
    )
    added = changed('[[entry]]\r\nid = "a"\r\n[[entry]]\r\nid = "b"', AddTable("entry", {"id": "c"}))
    assert added.endswith('id = "b"\r\n\r\n[[entry]]\r\nid = "c"\r\n')


def test_a_new_line_is_indented_like_the_one_above() -> None:
    assert changed('[[entry]]\n\tid = "a"\n', SetKey("entry", "a", "title", "A")).endswith('\ttitle = "A"\n')


def test_tables_written_as_one_list_are_changed_inside_it() -> None:
    text = 'entry = [ {id = "a", rake_angle = "1 deg"}, {id = "b"} ]\n'
    assert changed(text, SetKey("entry", "a", "rake_angle", "2 deg")) == text.replace("1 deg", "2 deg")
    assert tomllib.loads(changed(text, AddTable("entry", {"id": "c"})))["entry"][2] == {"id": "c"}
    assert tomllib.loads(changed(text, DropTable("entry", "a"))) == {"entry": [{"id": "b"}]}
    assert changed(text, DropTable("entry", "a"), DropTable("entry", "b")) == ""


def test_a_value_spread_over_dotted_lines_becomes_empty_only_by_being_dropped() -> None:
    text = (
        '[[entry]]\nid = "a"\nrake_angle.low = "1 deg"\n# why\nrake_angle.high = "2 deg"  # so\ntitle = "A"\n'
    )
    with pytest.raises(EditRefused, match=r"rake angle of 'a' in taps\.toml would be empty"):
        changed(text, SetKey("entry", "a", "rake_angle", {}))
    with pytest.raises(EditRefused, match="written in several places"):
        changed(text, SetKey("entry", "a", "rake_angle", "1 deg"))
    assert changed(text, DropKey("entry", "a", "rake_angle")) == '[[entry]]\nid = "a"\ntitle = "A"\n'


def test_parts_of_an_entry_that_lie_apart_all_go_with_it() -> None:
    text = '[[entry]]\nid = "a"\n\n[x-shop]\nn = 1\n\n[entry.rake_angle]\nusual = "1 deg"\n'
    assert changed(text, DropTable("entry", "a")) == "[x-shop]\nn = 1\n"


def test_an_id_that_stands_last_and_a_header_with_spaces_and_quotes_are_found() -> None:
    text = '[[ "entry" ]]  # one\ntitle = "A"\n  "id"  =  \'a\'\n'
    assert changed(text, SetKey("entry", "a", "title", "B")) == text.replace('"A"', '"B"')


def test_strings_that_look_like_tables_are_not_taken_for_them() -> None:
    text = '[[entry]]\nid = "a"\nnotes = """\n[[entry]]\nid = "b"\n\\"""" # end\n[[entry]]\nid = "b"\nx-n = \'\'\'\n[x]\'\'\'\n'
    assert [statement.path for statement in Layout(text).statements if statement.is_header] == [
        ("entry", 0),
        ("entry", 1),
    ]
    assert changed(text, SetKey("entry", "b", "x-n", 1)).endswith("x-n = 1\n")
    assert changed(text, DropTable("entry", "b")).endswith("# end\n")


def test_a_step_that_does_not_fit_any_more_is_refused() -> None:
    text = '[[entry]]\nid = "a"\n[[entry]]\nid = "a"\n'
    with pytest.raises(EditRefused, match="There are 2 tables"):
        changed(text, SetKey("entry", "a", "title", "A"))
    with pytest.raises(EditRefused, match="no entry 'b' any more"):
        changed(text, DropTable("entry", "b"))
    with pytest.raises(EditRefused, match="'a' already"):
        changed(text, AddTable("entry", {"id": "a"}))


def test_a_value_too_wide_for_a_line_is_written_as_a_table_below() -> None:
    value = {"usual": "5 deg", "note": "n" * 200}
    text = table("entry", {"id": "a", "rake_angle": value, "title": "A"})
    assert text.startswith('[[entry]]\nid = "a"\ntitle = "A"\n\n[entry.rake_angle]\n')
    assert tomllib.loads(text) == {"entry": [{"id": "a", "rake_angle": value, "title": "A"}]}


def test_a_long_list_has_one_item_on_each_line_except_inside_a_line() -> None:
    items = [f"caution-{number}" for number in range(20)]
    assert literal(items, lines=True).count("\n") == 21
    assert "\n" not in literal({"x": items})


OLD = '# one\n[[entry]]\nid = "a"\ntitle = "A"\n'


@pytest.mark.parametrize(
    ("new", "reason"),
    [
        (OLD.replace('title = "A"', 'title = "B"').replace("# one\n", ""), "other lines would change"),
        (OLD.replace('title = "A"', 'title = "B"').replace("# one", "# two"), "other lines would change"),
        (
            OLD.replace('title = "A"\n', 'title = "B"\r\n').replace('"a"\n', '"a"\r\n'),
            "other lines would change",
        ),
        (OLD.replace('title = "A"', 'title = "C"'), "would mean something else"),
        (OLD.replace('title = "A"', 'title = "B"\nx = 1'), "would mean something else"),
        (OLD.replace('title = "A"', "title = B"), "could not be read"),
    ],
)
def test_a_wrong_text_does_not_pass_the_proof(new: str, reason: str) -> None:
    document = open_document(FILE, OLD.encode())
    splices = splices_for(document, SetKey("entry", "a", "title", "B"))
    expected: dict[str, object] = {"entry": [{"id": "a", "title": "B"}]}
    prove(document, spliced(OLD, splices), expected, splices)
    with pytest.raises(EditRefused, match=reason):
        prove(document, new, expected, splices)


def test_one_is_not_true_and_not_one_point_zero_in_the_proof() -> None:
    document = open_document(FILE, b"x = 1\n")
    for other in (b"x = true\n", b"x = 1.0\n"):
        with pytest.raises(EditRefused, match="something else"):
            prove(document, other.decode(), {"x": 1}, [Splice(4, 5, "")])


def test_a_file_that_would_become_too_large_is_refused() -> None:
    text = "# filler\n" * 116_000
    with pytest.raises(EditRefused, match="larger than 1 MiB"):
        changed(text, *(SetKey("", "", f"x-{number}", "y" * 4000) for number in range(3)))
