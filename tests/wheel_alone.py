"""Build the wheel, install it in an empty environment, and use it once: plain commands and the screens.

Run by ``.ci/run``. What the tests cannot see is a file that is missing from the wheel or a package
that only the test group brings along.
"""

from __future__ import annotations

import json
import os
import pty
import select
import signal
import subprocess
import sys
import tempfile
import time
import venv
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
FIRST_FRAME_SECONDS = 20.0


def main() -> int:
    with tempfile.TemporaryDirectory() as scratch:
        folder = Path(scratch)
        command = _install(folder)
        environment = {
            "PATH": os.environ["PATH"],
            "HOME": str(folder / "home"),
            "TERM": "xterm-256color",
            "LANG": "C.UTF-8",
        }
        (folder / "home").mkdir()
        _plain_commands(command, folder, environment)
        _screens(command, folder, environment)
    print("the wheel works alone")
    return 0


def _install(folder: Path) -> Path:
    wheels = folder / "wheels"
    pip = [sys.executable, "-m", "pip", "--disable-pip-version-check", "-q"]
    subprocess.run([*pip, "wheel", "--no-deps", "-w", str(wheels), str(ROOT)], check=True)
    venv.create(folder / "venv", with_pip=True)
    python = folder / "venv" / "bin" / "python"
    (wheel,) = wheels.glob("heelclear-*.whl")
    subprocess.run(
        [
            str(python),
            "-m",
            "pip",
            "--disable-pip-version-check",
            "-q",
            "install",
            "-c",
            str(ROOT / "constraints.txt"),
            str(wheel),
        ],
        check=True,
    )
    return folder / "venv" / "bin" / "heelclear"


def _plain_commands(command: Path, folder: Path, environment: dict[str, str]) -> None:
    def run(*words: str) -> str:
        done = subprocess.run(
            [command, *words], check=True, capture_output=True, text=True, cwd=folder, env=environment
        )
        return done.stdout

    assert run("--version").startswith("heelclear ")
    assert json.loads(run("list", "--json"))
    assert "No problem found" in run("check")
    answer = run(
        "calc", "relief-drop", "diameter=12", "relief_angle=8", "land_width=2", "relief_form=flat", "--json"
    )
    assert json.loads(answer)["checks"][0]["state"] == "stop"


def _screens(command: Path, folder: Path, environment: dict[str, str]) -> None:
    """Start the program in a terminal of its own, wait for its first frame, and leave by its key."""
    child, terminal = pty.fork()
    if child == 0:
        os.chdir(folder)
        os.execve(command, [str(command)], environment)
    seen = b""
    end = time.monotonic() + FIRST_FRAME_SECONDS
    while b"Heelclear" not in seen and time.monotonic() < end:
        if select.select([terminal], [], [], 0.1)[0]:
            seen += os.read(terminal, 65536)
    assert b"Heelclear" in seen, seen[-2000:]
    os.write(terminal, b"\x11")
    while time.monotonic() < end:
        try:
            if select.select([terminal], [], [], 0.1)[0] and not os.read(terminal, 65536):
                break
        except OSError:
            break
        if os.waitpid(child, os.WNOHANG)[0]:
            return
    gone, status = _ended(child)
    if not gone:
        os.kill(child, signal.SIGKILL)
        os.waitpid(child, 0)
        raise AssertionError("the screens did not end by their key")
    assert os.waitstatus_to_exitcode(status) == 0, status


def _ended(child: int) -> tuple[int, int]:
    """Its number and how it ended; nought where it has not within a time."""
    end = time.monotonic() + FIRST_FRAME_SECONDS
    while not (told := os.waitpid(child, os.WNOHANG))[0] and time.monotonic() < end:
        time.sleep(0.05)
    return told


if __name__ == "__main__":
    sys.exit(main())
