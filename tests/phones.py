"""What the browser tests hold in their hands: the served site, and a page opened on a phone."""

import functools
import os
import sys
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any

from playwright.sync_api import Page

PATIENCE = 60_000
"""How long a browser may take, in milliseconds: a loaded machine is slow, not wrong."""
SLOWER = float(os.environ.get("STRENGTH_HANDBOOK_SLOW_PHONE", "1"))
"""How many times slower than this machine a phone is, its network too: finds tests that race."""


class _Quiet(SimpleHTTPRequestHandler):
    def log_message(self, format: str, *args: object) -> None:  # noqa: A002  # the base's name
        pass


class QuietServer(ThreadingHTTPServer):
    """A server that takes it quietly when a browser hangs up before it has the whole answer."""

    def handle_error(self, request: Any, client_address: Any) -> None:
        if not isinstance(sys.exception(), ConnectionError):
            super().handle_error(request, client_address)


@contextmanager
def serving(folder: Path) -> Iterator[int]:
    """A server of a folder on this machine, until the block ends; its port."""
    handler = functools.partial(_Quiet, directory=str(folder))
    with QuietServer(("127.0.0.1", 0), handler) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield server.server_port
        server.shutdown()


@dataclass
class Served:
    """The site's address, and the folder it is served from."""

    base: str
    folder: Path


@dataclass
class Gym:
    """The address of a gym's site, and the folder of the programs it was built from."""

    base: str
    programs: Path


@dataclass
class Opened:
    """A page in the browser with everything it asked for and complained about."""

    page: Page
    base: str
    requests: list[str] = field(default_factory=list)
    complaints: list[str] = field(default_factory=list)

    def go(self, path: str) -> Page:
        """Open an address below the site's root."""
        self.page.goto(self.base + path)
        return self.page


def watched(page: Page, base: str) -> Opened:
    """A page of a site whose requests and complaints are written down.

    Args:
        page: of a browser.
        base: address of the site.
    """
    opened = Opened(page, base)
    if SLOWER > 1:
        slow_down(page)
    page.on("request", lambda request: opened.requests.append(request.url))
    page.on("pageerror", lambda error: opened.complaints.append(str(error)))
    page.on(
        "console",
        lambda message: opened.complaints.append(message.text) if message.type == "error" else None,
    )
    return opened


def slow_down(page: Page) -> None:
    """Make a page compute so much slower, with answers a third of a second late."""
    browser = page.context.new_cdp_session(page)
    browser.send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
    # No limit of bytes a second (-1); only the wait before an answer.
    late = {"offline": False, "latency": 300, "downloadThroughput": -1, "uploadThroughput": -1}
    browser.send("Network.enable")
    browser.send("Network.emulateNetworkConditions", late)


def until(page: Page, promise: str, arg: object = None) -> None:
    """Wait until a promise gives true; a page's own waiting takes any promise for true.

    Args:
        page: where it is asked.
        promise: a function of JavaScript that gives a promise.
        arg: what the function is given.
    """
    for _ in range(PATIENCE // 100):
        if page.evaluate(promise, arg):
            return
        page.wait_for_timeout(100)
    raise AssertionError(promise)


def until_kept(page: Page, version: str, number: int = 1) -> None:
    """Wait until a version is the newest that the phone keeps, among so many handbooks."""
    until(
        page,
        """([version, number]) => caches.keys().then(
            all => all.length === number && all.some(name => name.endsWith(version)))""",
        [version, number],
    )


def keep_numbers(opened: Opened, numbers: Any) -> None:
    """A member's own numbers, kept as the page "my numbers" keeps them; None keeps nothing."""
    opened.go("").evaluate("mine => mine && strengthHandbook.store.set('mine', mine)", numbers)
