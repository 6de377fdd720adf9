"""What the browser tests hold in their hands: the served site, and a page opened on a phone."""

from dataclasses import dataclass, field
from pathlib import Path

from playwright.sync_api import Page


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
