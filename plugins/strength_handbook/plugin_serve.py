"""`mkdocs serve` after a save: the page that somebody looks at first, all others a moment later.

A save of a program file makes a `ServedEdition` of it; a save of anything else, and all that an
edition can't do, is built whole.
"""

import time
from collections.abc import Callable, Iterable
from pathlib import Path
from threading import RLock, Thread
from typing import Any
from urllib.parse import urlsplit

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.livereload import LiveReloadServer
from mkdocs.plugins import get_plugin_logger

from strength_handbook.pages.coach.frame import DRAFTS
from strength_handbook.plugin_edition import Handbook, ServedEdition, begin
from strength_handbook.publish.file_events import FileEvents, State, states

SETTLE_S = 0.02
"""A save may come in several pieces; after so long without one it is whole."""
FIRST_S = 0.25
"""The browser that shows a page asks for it first; then the others are made."""
TURN_S = 0.001
"""So long whoever waits for a page may come in between."""

log = get_plugin_logger(__name__)


class _StaleError(Exception):
    """A newer save makes what is being done useless."""


class Preview:
    """What stands between MkDocs' server and its builds; one for each `mkdocs serve`."""

    def __init__(
        self, handbook: Handbook, server: LiveReloadServer, builder: Callable[[], None]
    ) -> None:
        """Come in after the first build.

        Args:
            handbook: what is shown.
            server: MkDocs' own.
            builder: builds all.
        """
        self._handbook, self._server, self._builder = handbook, server, builder
        self._events = FileEvents()
        self._lock = RLock()
        self._generation = 0
        self._edition: ServedEdition | None = None
        self._whole = False
        self._looked_at = ""
        self._programs, self._others = self._states()

    def attach(self, config: MkDocsConfig) -> LiveReloadServer:
        """Take the place of the server's builder, of its answers and of its look at files."""
        server = self._server
        watched = [path for path in (config.docs_dir, config.config_file_path) if path]
        for path in watched:
            server.unwatch(path)
        server.observer = self._events  # type: ignore[assignment]  # it does all that is asked
        for path in watched:
            server.watch(path)
        server.build_delay = SETTLE_S
        server.builder = self.rebuild
        server.set_app(self.answer)
        return server

    def rebuild(self) -> None:
        """After a save: make ready what the browsers will ask for."""
        with self._lock:
            programs, others = self._states()
            inside = others == self._others
            if inside and programs == self._programs and not self._whole:
                return  # only to show what has been made meanwhile
            self._generation += 1
            self._edition = None
            # What is saved while this goes on is another state, and comes next.
            self._programs, self._others = programs, others
            if inside and not self._whole:
                self._edition = begin(self._handbook, self._leave)
            if self._edition is None:
                self._whole = True  # until it has come to its end
                self._builder()
                self._whole = False
                return
            Thread(target=self._follow, args=(self._edition, self._generation), daemon=True).start()

    def answer(self, environ: dict[str, Any], start_response: Any) -> Iterable[bytes]:
        """The server's answer, from a page that is up to date."""
        address = self._address(str(environ.get("PATH_INFO", "")))
        built = self._handbook.built
        if address is not None and built is not None:
            with self._lock:
                uri = built.uri_at(address)
                try:
                    if uri is not None:
                        self._looked_at = uri
                        if self._edition is not None:
                            self._edition.make(uri)
                    elif address.startswith(("data/", "search/")):
                        self.finish()
                except Exception:
                    log.exception("the last state of '%s' is shown", address)
        return self._server.serve_request(environ, start_response)

    def finish(self) -> None:
        """Make all that is left of the last save."""
        with self._lock:
            if self._edition is not None:
                for _ in self._edition.steps():
                    pass
            self._edition = None

    def _follow(self, edition: ServedEdition, generation: int) -> None:
        """All other pages, then the checks."""
        time.sleep(FIRST_S)
        steps = edition.steps(lambda: self._pause(generation))
        try:
            while self._turn(steps, edition, generation):
                time.sleep(TURN_S)
        except _StaleError:
            return
        except Exception:
            log.exception("all pages are built again")
            self._leave()

    def _turn(self, steps: Any, edition: ServedEdition, generation: int) -> bool:
        """One step; False after the last."""
        with self._lock:
            if self._generation != generation or self._edition is not edition:
                return False
            if next(steps, None) is not None:
                return True
            self._edition = None
            if self._looked_at.startswith(DRAFTS) or self._looked_at in edition.noted:
                self._events.again()
            return False

    def _pause(self, generation: int) -> None:
        """Let others have the lock, in the middle of something long."""
        self._lock.release()
        time.sleep(TURN_S)
        self._lock.acquire()
        if self._generation != generation:
            raise _StaleError

    def _leave(self) -> None:
        """Have a whole build, as soon as the server comes to it."""
        self._whole = True
        self._events.again()

    def _states(self) -> tuple[dict[Path, State], dict[Path, State]]:
        """States of the program files, and of all others that a site is made from."""
        programs, built = self._handbook.programs, self._handbook.built
        others: list[Path] = []
        if built is not None:
            config = built.config
            own = (config.docs_dir, config.config_file_path, config.theme.custom_dir, *config.watch)
            others = [Path(one) for one in own if one]
        others = [one for one in others if one.resolve() != programs.resolve()]
        return states([programs]), states(others)

    def _address(self, path: str) -> str | None:
        """The address below the site's root that a browser asks for; None where it is outside."""
        path = path.encode("latin-1").decode("utf-8", "ignore")
        mount = urlsplit(self._server.url).path
        return path.removeprefix(mount) if path.startswith(mount) else None
