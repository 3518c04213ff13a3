"""Save a plan, merging what somebody else saved meanwhile, and undo it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from library.editing.document import Data, Document, EditRefused, open_document
from library.editing.lines import woven
from library.editing.merging import Choice, Conflict, changes_between, three_way
from library.editing.plan import NEW_FILE, Plan, replanned
from library.editing.steps import SetKey, applied, numbers, same
from library.errors import ChangedMeanwhile, SaveError, named, refusal
from library.files.disk import DISK, Disk
from library.files.file_state import fingerprint
from library.files.safe_write import Saved, remove_safely, write_safely

TRIES = 100
"""How often a save is begun anew because somebody else was quicker."""


@dataclass(frozen=True)
class Done:
    """A plan that was saved.

    Attributes:
        plan: as it was carried out; its ``before`` is what stood there last.
        merged: whether somebody else's changes were there and are kept beside mine.
        warning: a sentence when the disk did not confirm that it will last; else empty.
    """

    plan: Plan
    merged: bool = False
    warning: str = ""


@dataclass(frozen=True)
class Conflicts:
    """A plan that was not saved, because the same key was changed by somebody else.

    Attributes:
        plan: as it was given.
        conflicts: what to choose; the answers go into ``save`` together with the plan.
        theirs: the bytes in the file now.
    """

    plan: Plan
    conflicts: tuple[Conflict, ...]
    theirs: bytes | None


def save(plan: Plan, choices: Sequence[Choice] = (), disk: Disk = DISK) -> Done | Conflicts:
    """Save a plan; where the file was changed meanwhile, keep those changes too.

    Different keys are merged. A key that both changed is handed back to be asked, and then nothing has
    been saved. An answer counts only while the conflict is the one that was shown.

    Args:
        plan: as made by ``plan`` or ``undone``.
        choices: answers to conflicts of an earlier attempt.
        disk: the calls to use.

    Raises:
        SaveError: when the file cannot be saved; it is as it was.
        EditRefused: when the file holds a mistake now, so that nothing can be merged into it.
    """
    _make_folder(plan)
    now = plan
    for _ in range(TRIES):
        try:
            saved = _write(now, disk)
        except ChangedMeanwhile as changed:
            found = rebased(plan, changed.theirs, choices)
            if isinstance(found, Conflicts):
                return found
            now = found
        else:
            return Done(now, now is not plan, saved.warning)
    raise SaveError(
        f"{named(plan.path)} is being changed by others without a pause. Nothing was saved; try again.",
        plan.path,
    )


def undone(done: Done) -> Plan:
    """The plan that takes a save back; what others changed since then stays.

    Args:
        done: the save.

    Returns:
        A plan like any other: it can be looked at, saved and taken back in turn.
    """
    plan = done.plan
    return replace(
        plan,
        before=plan.after,
        after=plan.before,
        sentence=f"Taken back: {plan.sentence}",
        renamed=(plan.renamed[1], plan.renamed[0]) if plan.renamed else None,
    )


def rebased(plan: Plan, theirs: bytes | None, choices: Sequence[Choice] = ()) -> Plan | Conflicts:
    """The same change, made on what is in the file now.

    Args:
        plan: as made earlier.
        theirs: the bytes in the file now; nothing when it is gone.
        choices: answers to conflicts.

    Returns:
        A new plan, or the conflicts to ask about.

    Raises:
        EditRefused: when the file holds a mistake now.
    """
    base, mine, now = (_opened(plan, raw) for raw in (plan.before, plan.after, theirs))
    first = _rename(plan, now.data)
    old, wanted = (applied(one.data, first) if first else one.data for one in (base, now))
    merge = three_way(old, mine.data, wanted, choices)
    if merge.conflicts:
        return Conflicts(plan, merge.conflicts, theirs)
    for step in merge.steps:
        wanted = applied(wanted, step)
    if theirs is None and same(wanted, now.data):
        return replace(plan, before=None, after=None)
    return replace(plan, before=theirs, after=_put_together(base, mine, now, wanted))


def _put_together(base: Document, mine: Document, theirs: Document, wanted: Data) -> bytes:
    """Bytes that mean ``wanted``, with the remarks of both sides where their lines can be told apart."""
    path = theirs.path
    begin = theirs.bytes_with(woven(base.text, mine.text, theirs.text))
    try:
        steps = changes_between(open_document(path, begin).data, wanted)
        return replanned(path, begin, steps)
    except EditRefused:
        return replanned(path, theirs.bytes_with(theirs.text), changes_between(theirs.data, wanted))


def _opened(plan: Plan, raw: bytes | None) -> Document:
    return open_document(plan.path, NEW_FILE if raw is None else raw)


def _rename(plan: Plan, now: Data) -> SetKey | None:
    """The renaming that is a part of the plan, where it can still be done."""
    if plan.renamed is None:
        return None
    old, new = plan.renamed
    if len(numbers(now, "entry", old)) != 1 or numbers(now, "entry", new):
        return None
    return SetKey("entry", old, "id", new)


def _write(plan: Plan, disk: Disk) -> Saved:
    expected = fingerprint(plan.before)
    if plan.after is None:
        return remove_safely(plan.path, root=plan.root, expected=expected, disk=disk)
    return write_safely(plan.path, plan.after, root=plan.root, expected=expected, disk=disk)


def _make_folder(plan: Plan) -> None:
    """The shop's folder is made when the first thing is saved in it, and not before."""
    try:
        plan.root.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise refusal(error, plan.path) from error
