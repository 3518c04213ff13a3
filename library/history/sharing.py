"""Pull and push the shop's book: what others committed is merged, what was committed here is sent."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from library.errors import SaveError, named, no_room
from library.files.disk import DISK, Disk
from library.files.lock import locked
from library.history.git import REMOTE, GitRefused
from library.history.merge_commits import FileChoice, FileConflict, join
from library.history.moving_forward import put_files_forward
from library.history.other_copies import require_trusted_copies
from library.history.work_tree import WorkTree

TRIES = 5
"""How often joining is begun anew because something was committed here meanwhile."""


@dataclass(frozen=True)
class Other:
    """The other copy of the book.

    Attributes:
        remote: git's name for it.
        branch: the full name of the branch there.
        is_followed: whether git was told before that this branch belongs to that one.
    """

    remote: str
    branch: str
    is_followed: bool


@dataclass(frozen=True)
class Pulled:
    """The outcome of a pull: the commits of others are merged into the work tree.

    Attributes:
        commits: how many commits of others came.
        joined: whether changes of both sides were put together.
    """

    commits: int
    joined: bool = False


@dataclass(frozen=True)
class PullConflicts:
    """The outcome of a pull that meets conflicts: keys that both sides changed; nothing is merged until they are answered.

    Attributes:
        conflicts: what to choose; the answers go into ``pull``.
    """

    conflicts: tuple[FileConflict, ...]


def other_copy(tree: WorkTree) -> Other:
    """The copy that the checked-out branch is shared with.

    Raises:
        GitRefused: when there is none, or several and none was chosen.
    """
    branch = tree.branch()
    told = tree.git.do("for-each-ref", "--format=%(upstream:remotename)%00%(upstream:remoteref)", branch).text
    remote, _, theirs = told.partition("\0")
    if remote and theirs:
        return Other(remote, theirs, True)
    remotes = tree.git.do("remote").text.split("\n")
    chosen = "origin" if "origin" in remotes else remotes[0] if len(remotes) == 1 else ""
    if not chosen:
        raise GitRefused(
            "The book has no other copy to share with. Name one: git remote add origin, followed by its address or folder."
            if remotes == [""]
            else "The book has several other copies and git was not told which one belongs to this branch. Tell it: git "
            "branch --set-upstream-to, followed by the copy and branch."
        )
    return Other(chosen, branch, False)


def pull(tree: WorkTree, choices: Sequence[FileChoice] = (), disk: Disk = DISK) -> Pulled | PullConflicts:
    """Fetch what others pushed, and merge it with what was committed here.

    Nothing in the book's folder changes before all questions are answered; then git moves the branch
    forward in one step, while no program of ours saves. Both sides stay in the history.

    Args:
        tree: the work tree.
        choices: answers to conflicts of an earlier attempt.
        disk: the calls to use for the lock.

    Raises:
        NotTrusted: when the book names programs and is not trusted.
        GitRefused: when the other copy cannot be reached, or the changes cannot be put together.
    """
    tree.require_trust()
    other = other_copy(tree)
    _require_no_merge(tree)
    theirs = _fetched(tree, other)
    for _ in range(TRIES):
        ours = tree.head()
        if not theirs or (ours and _is_within(tree, theirs, ours)):
            return Pulled(0)
        count = _count(tree, ours, theirs)
        if not ours or _is_within(tree, ours, theirs):
            target, together = theirs, False
        else:
            joined = join(tree, ours, theirs, choices)
            if joined.conflicts:
                return PullConflicts(joined.conflicts)
            target, together = joined.commit, True
        if _moved_forward(tree, ours, target, disk):
            return Pulled(count, together)
    raise GitRefused("The book is being committed to without a pause. Try to pull again.")


def push(tree: WorkTree) -> None:
    """Send what was committed here to the other copy; nothing there is ever overwritten.

    Raises:
        NotTrusted: when the book names programs and is not trusted.
        GitRefused: when the other copy has what is not here yet, or cannot be reached; or it lies on this machine, names
            programs and is not trusted.
    """
    tree.require_trust()
    other = other_copy(tree)
    require_trusted_copies(tree, other.remote)
    if not tree.head():
        raise GitRefused(
            "Nothing of the book is recorded in git yet, so there is nothing to send. Record it first."
        )
    follow = [] if other.is_followed else ["--set-upstream"]
    done = tree.git.ask(
        "push", "--quiet", "--no-force", *follow, "--", other.remote, f"HEAD:{other.branch}", seconds=REMOTE
    )
    if done.says("fetch first", "non-fast-forward", "stale info"):
        raise GitRefused(
            "The other copy has changes that are not here yet. Pull them first, then push again."
        )
    if done.code != 0:
        raise GitRefused(done.reason("push"))


def _fetched(tree: WorkTree, other: Other) -> str:
    """The newest commit of the other copy, with all that belongs to it; empty where its branch has none yet.

    It is asked for first and then fetched, so that nothing has to bear a name in git that a killed program would leave.
    What is here by chance is fetched too: of a fetch that was broken off not all need be there.
    """
    asked = tree.git.ask("ls-remote", "--quiet", "--", other.remote, other.branch, seconds=REMOTE)
    if asked.code != 0:
        raise GitRefused(asked.reason("ls-remote"))
    lines = (line.partition("\t") for line in asked.text.split("\n"))
    theirs = next((number for number, _, name in lines if name == other.branch), "")
    if not theirs or _is_within(tree, theirs, "HEAD"):
        return theirs
    done = tree.git.ask(
        "fetch", "--quiet", "--no-tags", "--no-recurse-submodules", "--no-write-fetch-head", "--",
        other.remote, f"+{other.branch}:", seconds=REMOTE,
    )  # fmt: skip
    if done.code != 0:
        raise GitRefused(done.reason("fetch"))
    if tree.git.ask("cat-file", "-e", f"{theirs}^{{commit}}").code != 0:
        raise GitRefused("The other copy of the book was set back at this moment. Pull again.")
    return theirs


def _require_no_merge(tree: WorkTree) -> None:
    if tree.git.ask("rev-parse", "-q", "--verify", "MERGE_HEAD").code == 0:
        raise GitRefused(
            "A merge was begun in the book by hand and is not finished. Finish it with git commit, or break it off with git "
            "merge --abort."
        )


def _is_within(tree: WorkTree, one: str, other: str) -> bool:
    """Whether the first commit is a part of the history of the second."""
    return tree.git.ask("merge-base", "--is-ancestor", one, other).code == 0


def _count(tree: WorkTree, ours: str, theirs: str) -> int:
    exclude = [f"^{ours}"] if ours else []
    return int(tree.git.do("rev-list", "--count", theirs, *exclude).text)


def _moved_forward(tree: WorkTree, ours: str, target: str, disk: Disk) -> bool:
    """Move the branch and its files forward; false when the branch is no longer where it was."""
    try:
        with locked(tree.folder, disk):
            if tree.head() != ours:
                return False
            put_files_forward(tree, ours, target, disk)
            done = tree.git.ask("merge", "--quiet", "--ff-only", "--no-stat", target)
    except SaveError as refused:
        raise GitRefused(refused.sentence) from refused
    except OSError as error:
        full = no_room(error, tree.folder)
        raise GitRefused(
            full or f"The book's folder cannot be locked ({error.strerror}). See that you may write there."
        ) from error
    if done.code == 0:
        return True
    if done.says("would be overwritten"):
        names = ", ".join(named(path.relative_to(tree.folder)) for path in tree.uncommitted()) or "some files"
        raise GitRefused(
            f"{names} in the book changed and is not in git yet, and others changed the same. Commit it first, then pull again."
        )
    raise GitRefused(done.reason("merge"))
