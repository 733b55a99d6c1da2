"""A browser led by the hand: the few commands of W3C WebDriver that the tests need.

Chromium's own parts, to read its log and to feign a phone or a dark theme, stand beside them.
"""

import base64
import contextlib
import json
import shutil
import socket
import subprocess
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from pathlib import Path
from typing import Any

#: WebDriver, section 12.2: the key under which an element's reference is handed over.
_ELEMENT = "element-6066-11e4-a52e-4f735466cecf"

_ARGUMENTS = (
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--hide-scrollbars",
)

#: WebDriver, section 17.4.2: keys by their number.
LEFT, RIGHT, TAB, ENTER, HOME, END = (
    "\ue012", "\ue014", "\ue004", "\ue007", "\ue011", "\ue010",
)  # fmt: skip


def chromium() -> tuple[str, str] | None:
    """The browser and its driver where both are installed."""
    names = ("/usr/lib/chromium/chromium", "chromium", "chromium-browser", "google-chrome")
    browser = next((found for name in names if (found := shutil.which(name))), None)
    driver = shutil.which("chromedriver")
    return (browser, driver) if browser and driver else None


class Browser:
    """One session with a browser of its own."""

    def __init__(self, port: int, capabilities: dict[str, Any]) -> None:
        self._root = f"http://127.0.0.1:{port}"
        wanted = {"capabilities": {"alwaysMatch": capabilities}}
        made = self._send("POST", "/session", wanted)
        self._session = f"/session/{made['sessionId']}"

    def _send(self, method: str, path: str, body: Any = None) -> Any:
        data = None if body is None else json.dumps(body).encode()
        headers = {"Content-Type": "application/json"}
        request = urllib.request.Request(self._root + path, data, headers, method=method)
        # No proxy stands between two programs of one machine.
        opener = urllib.request.build_opener(urllib.request.ProxyHandler({}))
        try:
            with opener.open(request, timeout=60) as answer:
                return json.load(answer)["value"]
        except urllib.error.HTTPError as error:
            said = error.read().decode("utf-8", "replace")
            raise AssertionError(f"{method} {path}: {said[:400]}") from error

    def _ask(self, path: str, **body: Any) -> Any:
        return self._send("POST", self._session + path, body)

    def open(self, address: str) -> None:
        """Go to a page, and wait until it is there."""
        self._ask("/url", url=address)

    @property
    def address(self) -> str:
        """Where it is."""
        found: str = self._send("GET", f"{self._session}/url")
        return found

    def find(self, selector: str) -> str:
        """The first element that a selector finds."""
        found = self._ask("/element", using="css selector", value=selector)
        return str(found[_ELEMENT])

    def click(self, selector: str) -> None:
        """Press the first element that a selector finds."""
        self._ask(f"/element/{self.find(selector)}/click")

    def keys(self, selector: str, keys: str) -> None:
        """Press keys in an element."""
        self._ask(f"/element/{self.find(selector)}/value", text=keys)

    def press(self, keys: str) -> None:
        """Press keys where the keyboard is."""
        found = self._send("GET", f"{self._session}/element/active")
        self._ask(f"/element/{found[_ELEMENT]}/value", text=keys)

    def box(self, selector: str) -> dict[str, float]:
        """Where the first element that a selector finds lies: x, y, width, height."""
        found: dict[str, float] = self._send(
            "GET", f"{self._session}/element/{self.find(selector)}/rect"
        )
        return found

    def run(self, script: str) -> Any:
        """What a script in the page returns; the page's policy doesn't bind it."""
        return self._ask("/execute/sync", script=script, args=[])

    def tell(self, command: str, **values: Any) -> Any:
        """Give a command of the browser's own tools for developers."""
        return self._ask("/goog/cdp/execute", cmd=command, params=values)

    def log(self, kind: str = "browser") -> list[dict[str, Any]]:
        """What came into its log since it was asked last."""
        found: list[dict[str, Any]] = self._ask("/se/log", type=kind)
        return found

    def requests(self, *, blocked: bool = False) -> list[str]:
        """Every address asked for since the log was read last, or those that a policy forbade."""
        rows = [json.loads(row["message"])["message"] for row in self.log("performance")]
        stopped = {
            row["params"]["requestId"]
            for row in rows
            if row["method"] == "Network.loadingFailed" and row["params"].get("blockedReason")
        }
        return [
            row["params"]["request"]["url"]
            for row in rows
            if row["method"] == "Network.requestWillBeSent"
            and (not blocked or row["params"]["requestId"] in stopped)
        ]

    def screen(self, width: int, height: int, *, dark: bool = False) -> None:
        """Feign a screen of that size, a phone where it is narrow, in a theme."""
        phone = width < 600
        self.tell(
            "Emulation.setDeviceMetricsOverride",
            width=width, height=height, deviceScaleFactor=1, mobile=phone,
        )  # fmt: skip
        scheme = {"name": "prefers-color-scheme", "value": "dark" if dark else "light"}
        # A page that glides has moved on by the time it is clicked.
        still = {"name": "prefers-reduced-motion", "value": "reduce"}
        self.tell("Emulation.setEmulatedMedia", features=[scheme, still])

    def picture(self, *, whole: bool = False) -> bytes:
        """The page as a PNG; ``whole`` with what lies below the screen."""
        made = self.tell("Page.captureScreenshot", captureBeyondViewport=whole)
        return base64.b64decode(made["data"])

    def printed(self) -> bytes:
        """The page as the browser prints it, a PDF."""
        return base64.b64decode(self.tell("Page.printToPDF", printBackground=True)["data"])

    def close(self) -> None:
        """End the session and its browser."""
        with contextlib.suppress(OSError, AssertionError):
            self._send("DELETE", self._session)


@contextlib.contextmanager
def browser(folder: Path, programs: tuple[str, str]) -> Iterator[Browser]:
    """A browser with nothing of anybody's in it; it is gone at the end."""
    binary, driver = programs
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    process = subprocess.Popen(
        [driver, f"--port={port}", "--silent"],
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
        env={"HOME": str(folder), "PATH": "/usr/bin:/bin", "TMPDIR": str(folder)},
    )
    try:
        _await(port, process)
        options = {
            "binary": binary,
            "args": [*_ARGUMENTS, f"--user-data-dir={folder / 'profile'}"],
        }
        made = Browser(
            port,
            {
                "browserName": "chrome",
                "goog:chromeOptions": options,
                "goog:loggingPrefs": {"browser": "ALL", "performance": "ALL"},
            },
        )
        try:
            yield made
        finally:
            made.close()
    finally:
        process.terminate()
        process.wait(timeout=20)


def _await(port: int, process: "subprocess.Popen[bytes]") -> None:
    """Wait until the driver answers."""
    until = time.monotonic() + 30
    while time.monotonic() < until:
        if process.poll() is not None:
            raise AssertionError("The browser's driver did not start.")
        with contextlib.suppress(OSError), socket.create_connection(("127.0.0.1", port), 1):
            return
        time.sleep(0.05)
    raise AssertionError("The browser's driver does not answer.")
