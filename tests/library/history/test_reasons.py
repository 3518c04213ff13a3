"""What git says when something went wrong, told in the words of the shop."""

from __future__ import annotations

import pytest

from library.history.reasons import reason_for


@pytest.mark.parametrize(
    ("complaint", "cure"),
    [
        ("fatal: sha1 file '.git/index.lock' write error. Out of diskspace", "Make room"),
        ("Aborting commit due to empty commit message.", "Make room"),
        ("error: unable to write file .git/objects/ab/cd", "Make room"),
        ("fatal: unable to access 'https://yard.example/book': Could not resolve host", "network is up"),
        ("fatal: You have not concluded your merge (MERGE_HEAD exists).", "git merge --abort"),
    ],
)
def test_what_git_complains_of_is_told_with_what_to_do_and_in_its_own_words(
    complaint: str, cure: str
) -> None:
    told = reason_for("commit", complaint)
    assert cure in told
    assert complaint.strip(".") in told


def test_what_is_not_known_is_told_in_git_s_own_words() -> None:
    assert "a fault that nobody has seen" in reason_for("commit", "fatal: a fault that nobody has seen")
