"""A browser without a window that prints pages: started once, spoken to over two pipes, and ended with its folder."""

from __future__ import annotations

import base64
import json
import os
import shutil
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import IO, Any

OPTIONS = ("--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-sync",
           "--disable-background-networking", "--disable-component-update", "--disable-dev-shm-usage",
           "--remote-debugging-pipe")  # fmt: skip
"""As root in a container, with nothing fetched."""

INCH = 25.4
"""Millimetres."""


def found() -> str:
    """Where the browser is; empty where there is none."""
    return next((path for name in ("chromium", "chromium-browser") if (path := shutil.which(name))), "")


@dataclass
class Browser:
    """A running browser with one page open.

    Attributes:
        to: what it listens to.
        back: what it answers on.
        session: of its page.
        calls: how many were made.
        come: what it has answered and was not read yet.
    """

    to: IO[bytes]
    back: IO[bytes]
    session: str = ""
    calls: int = 0
    come: bytes = b""

    def ask(self, method: str, **how: object) -> dict[str, Any]:
        """Call a method of the page and wait for its answer."""
        self.calls += 1
        call: dict[str, object] = {"id": self.calls, "method": method, "params": how}
        if self.session:
            call["sessionId"] = self.session
        self.to.write(json.dumps(call).encode() + b"\0")
        self.to.flush()
        while True:
            told = self._message()
            if told.get("id") == self.calls:
                if "error" in told:
                    raise RuntimeError(f"{method}: {told['error']}")
                return dict(told["result"])

    def _message(self) -> dict[str, Any]:
        while (end := self.come.find(b"\0")) < 0:
            more = os.read(self.back.fileno(), 1 << 16)
            if not more:
                raise EOFError("the browser has ended")
            self.come += more
        message, self.come = self.come[:end], self.come[end + 1 :]
        return dict(json.loads(message))

    def open_page(self) -> None:
        """Open a page that lies as it prints."""
        target = self.ask("Target.createTarget", url="about:blank")["targetId"]
        self.session = self.ask("Target.attachToTarget", targetId=target, flatten=True)["sessionId"]
        self.ask("Page.enable")
        self.ask("Emulation.setEmulatedMedia", media="print")

    def show(self, html: str) -> None:
        """Lay out a whole page of HTML."""
        frame = self.ask("Page.getFrameTree")["frameTree"]["frame"]["id"]
        self.ask("Page.setDocumentContent", frameId=frame, html=html)

    def measured(self, script: str, width: float) -> Any:
        """What a script answers with the page so many millimetres wide."""
        self.ask("Emulation.setDeviceMetricsOverride", width=int(width / INCH * 96), height=1056,
                 deviceScaleFactor=1, mobile=False)  # fmt: skip
        answer = self.ask("Runtime.evaluate", expression=script, returnByValue=True)
        if "exceptionDetails" in answer:
            raise RuntimeError(str(answer["exceptionDetails"]))
        return answer["result"]["value"]

    def printed(self, width: float, height: float) -> bytes:
        """The page as it comes out of the printer on paper of a size in mm."""
        told = self.ask("Page.printToPDF", paperWidth=width / INCH, paperHeight=height / INCH)
        return base64.b64decode(told["data"])


@contextmanager
def started(path: str) -> Iterator[Browser]:
    """Start a browser and end it with all that it has started."""
    folder = Path(tempfile.mkdtemp(prefix="paper-"))
    theirs_in, to = os.pipe()
    back, theirs_out = os.pipe()
    # The browser reads its orders on the third pipe and answers on the fourth.
    script = f'exec "$0" "$@" 3<&{theirs_in} 4>&{theirs_out}'
    command = ["bash", "-c", script, path, *OPTIONS, f"--user-data-dir={folder}", "about:blank"]
    running = subprocess.Popen(command, pass_fds=(theirs_in, theirs_out), stdin=subprocess.DEVNULL,
                               stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, start_new_session=True)  # fmt: skip
    os.close(theirs_in)
    os.close(theirs_out)
    try:
        with os.fdopen(to, "wb") as orders, os.fdopen(back, "rb") as answers:
            browser = Browser(orders, answers)
            browser.open_page()
            yield browser
            browser.session = ""
            browser.ask("Browser.close")
    finally:
        try:
            running.wait(10)
        except subprocess.TimeoutExpired:
            running.kill()
            running.wait()
        shutil.rmtree(folder, ignore_errors=True)
