"""What the browser tests hold in their hands: the served site, and a page opened on a phone."""

import functools
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

from playwright.sync_api import Page


class _Quiet(SimpleHTTPRequestHandler):
    def log_message(self, format: str, *args: object) -> None:  # noqa: A002  # the base's name
        pass


@contextmanager
def serving(folder: Path) -> Iterator[int]:
    """A server of a folder on this machine, until the block ends; its port."""
    handler = functools.partial(_Quiet, directory=str(folder))
    with ThreadingHTTPServer(("127.0.0.1", 0), handler) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield server.server_port
        server.shutdown()


@dataclass
class Served:
    """The site's address, and the folder it is served from."""

    base: str
    folder: Path


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
    page.on("request", lambda request: opened.requests.append(request.url))
    page.on("pageerror", lambda error: opened.complaints.append(str(error)))
    page.on(
        "console",
        lambda message: opened.complaints.append(message.text) if message.type == "error" else None,
    )
    return opened
