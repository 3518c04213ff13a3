"""Run git as a subprocess: without a prompt, with a time limit, and with none of the variables that point it elsewhere."""

from __future__ import annotations

import os
import signal
import subprocess
from collections.abc import Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, field
from pathlib import Path

from library.errors import Refused
from library.history.reasons import reason_for

LOCAL = 20.0
"""Seconds for a command that stays on this machine; hooks of the shop are included."""

REMOTE = 90.0
"""Seconds for a command that asks another machine."""

_OPTIONS = (
    "--no-pager",
    "--literal-pathspecs",
    "-c", "core.quotePath=false",
    "-c", "core.fsmonitor=false",
    "-c", "gc.auto=0",
    "-c", "maintenance.auto=false",
    "-c", "merge.autoStash=false",
    "-c", "color.ui=false",
    "-c", "advice.detachedHead=false",
    "-c", "log.showSignature=false",
    "-c", "submodule.recurse=false",
    "-c", "push.recurseSubmodules=no",
)  # fmt: skip


_CARRIED = (
    "GIT_AUTHOR_NAME",
    "GIT_AUTHOR_EMAIL",
    "GIT_COMMITTER_NAME",
    "GIT_COMMITTER_EMAIL",
    "GIT_CONFIG_GLOBAL",
    "GIT_CONFIG_SYSTEM",
    "GIT_CONFIG_NOSYSTEM",
    "GIT_CEILING_DIRECTORIES",
    "GIT_SSH",
    "GIT_SSH_COMMAND",
)
"""Variables of git that say who a person is and how he reaches others; all others could point to another book."""


_asking_others: set[subprocess.Popen[bytes]] = set()
"""Commands under way that wait for another machine."""


class GitRefused(Refused):
    """Git could not do it; the files of the book are as they were."""


@dataclass(frozen=True)
class Answer:
    """The outcome of one git command.

    Attributes:
        code: its exit code; 0 when all went well.
        out: its output.
        complaints: everything it complained of.
    """

    code: int
    out: bytes
    complaints: str = ""

    @property
    def text(self) -> str:
        """The output as text without the line end; bytes that are no text are kept as Python keeps them."""
        return os.fsdecode(self.out).removesuffix("\n")

    def says(self, *signs: str) -> bool:
        """Whether one of these words is among its complaints."""
        told = self.complaints.casefold()
        return any(sign in told for sign in signs)

    def reason(self, command: str) -> str:
        """Why the command did not go well, and what to do."""
        return reason_for(command, self.complaints)


@dataclass(frozen=True)
class Git:
    """Git in one folder.

    Attributes:
        folder: where it runs.
        program: the name of the program.
        held_back: variables that keep it from what the book does not get done; they go over all others.
    """

    folder: Path
    program: str = "git"
    held_back: Mapping[str, str] = field(default_factory=dict)

    def ask(
        self,
        *arguments: str,
        given: bytes = b"",
        seconds: float = LOCAL,
        extra: Mapping[str, str] | None = None,
    ) -> Answer:
        """Run one command and return what it said, whether or not it went well.

        Args:
            arguments: the command and its options; names of files stand behind ``--``.
            given: what it reads.
            seconds: after which it is ended.
            extra: further variables of its surroundings.

        Raises:
            GitRefused: when there is no git, or it takes longer than that.
        """
        command = [self.program, *_OPTIONS, *arguments]
        try:
            process = subprocess.Popen(
                command,
                cwd=self.folder,
                env=_surroundings() | dict(extra or {}) | dict(self.held_back),
                stdin=subprocess.PIPE,
                stdout=subprocess.PIPE,
                stderr=subprocess.PIPE,
                start_new_session=True,  # Without a terminal nothing can ask for a password, and all of it can be ended.
            )
        except OSError as error:
            raise GitRefused(
                f"Git could not be started ({error.strerror}). See that it is installed."
            ) from error
        if seconds >= REMOTE:
            _asking_others.add(process)
        try:
            out, complaints = process.communicate(given, timeout=seconds)
        except subprocess.TimeoutExpired as error:
            _end(process)
            raise GitRefused(
                f"Git took longer than {seconds:g} seconds ({_command(arguments)}) and was stopped. "
                "See that the other machine can be reached and wants no password, then try again."
            ) from error
        except BaseException:
            _end(process)
            raise
        finally:
            _asking_others.discard(process)
        return Answer(process.returncode, out, complaints.decode("utf-8", "replace"))

    def do(
        self,
        *arguments: str,
        given: bytes = b"",
        seconds: float = LOCAL,
        extra: Mapping[str, str] | None = None,
    ) -> Answer:
        """Run one command that must go well.

        Raises:
            GitRefused: when it does not, with what git says about it.
        """
        answer = self.ask(*arguments, given=given, seconds=seconds, extra=extra)
        if answer.code != 0:
            raise GitRefused(answer.reason(_command(arguments)))
        return answer


def _command(arguments: Sequence[str]) -> str:
    """The name of the command, behind the options of git as a whole."""
    return next((one for one in arguments if not one.startswith("-")), "")


def _surroundings() -> dict[str, str]:
    kept = {name: value for name, value in os.environ.items() if not name.startswith("GIT_")}
    kept |= {name: os.environ[name] for name in _CARRIED if name in os.environ}
    return kept | {
        "LC_ALL": "C",
        "GIT_TERMINAL_PROMPT": "0",
        "GIT_ASKPASS": "",
        "SSH_ASKPASS": "",
        "GIT_EDITOR": "true",
        "GIT_MERGE_AUTOEDIT": "no",
        "GIT_OPTIONAL_LOCKS": "0",
    }


def end_remote() -> None:
    """End every command that waits for another machine; whoever asked is told that git could not do it."""
    for process in tuple(_asking_others):
        with suppress(ProcessLookupError, PermissionError):
            os.killpg(process.pid, signal.SIGKILL)


def _end(process: subprocess.Popen[bytes]) -> None:
    with suppress(ProcessLookupError, PermissionError):
        os.killpg(process.pid, signal.SIGKILL)
    process.kill()
    for pipe in (process.stdin, process.stdout, process.stderr):
        if pipe is not None:
            with suppress(OSError):
                pipe.close()
    process.wait()
