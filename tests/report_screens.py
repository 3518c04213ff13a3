"""Report how fast the screens open, as a ratio to a bare Textual program in the same run.

Times are noisy and are only reported; bytes and loaded modules are asserted in ``tests/tui/pty``. The rounds take turns,
so that a busy machine slows both alike.
"""

from __future__ import annotations

import os
import pty
import select
import signal
import statistics
import struct
import sys
import tempfile
import time
from fcntl import ioctl
from pathlib import Path
from termios import TIOCSWINSZ

ROUNDS = 7
BARE = """
from textual.app import App
from textual.widgets import Static
class Bare(App):
    def compose(self):
        yield Static("Hello, this is a bare program")
Bare().run()
"""


def first_frame(command: list[str], sought: bytes, home: str) -> float:
    """Milliseconds from the start of a command until it has written what is sought."""
    environment = {
        **os.environ,
        "HOME": home,
        "TERM": "xterm-256color",
        "LANG": "C.UTF-8",
        "COLORTERM": "truecolor",
    }
    for name in (
        "XDG_DATA_HOME",
        "XDG_CACHE_HOME",
        "XDG_STATE_HOME",
        "XDG_CONFIG_HOME",
        "HEELCLEAR_LIBRARY",
        "NO_COLOR",
    ):
        environment.pop(name, None)
    begin = time.perf_counter()
    child, terminal = pty.fork()
    if child == 0:
        ioctl(0, TIOCSWINSZ, struct.pack("HHHH", 24, 80, 0, 0))
        os.execve(command[0], command, environment)
    ioctl(terminal, TIOCSWINSZ, struct.pack("HHHH", 24, 80, 0, 0))
    written = b""
    while sought not in written and time.perf_counter() - begin < 30:
        if select.select([terminal], [], [], 0.5)[0]:
            try:
                written += os.read(terminal, 65536)
            except OSError:
                break
    taken = 1000 * (time.perf_counter() - begin)
    os.kill(child, signal.SIGKILL)
    os.close(terminal)
    os.waitpid(child, 0)
    if sought not in written:
        raise SystemExit(f"{command} wrote no frame: {written[-500:]!r}")
    return taken


def main() -> int:
    ours = [str(Path(sys.executable).with_name("heelclear"))]
    bare = [sys.executable, "-c", BARE]
    with tempfile.TemporaryDirectory() as home:
        first_frame(ours, b"Find", home)
        pairs = [(first_frame(bare, b"bare", home), first_frame(ours, b"Find", home)) for _ in range(ROUNDS)]
    ratio = statistics.median(mine / theirs for theirs, mine in pairs)
    print(f"first frame, bare Textual program: {statistics.median(theirs for theirs, _ in pairs):.0f} ms")
    print(f"first frame, heelclear:            {statistics.median(mine for _, mine in pairs):.0f} ms")
    print(f"ratio (median of {ROUNDS} pairs):        {ratio:.2f}  (budget 1.3)")
    return 0


if __name__ == "__main__":
    sys.exit(main())
