"""Saves of files, told at once where the system tells of them, and by looking where it does not.

Some folders, such as those of other machines, give no events; so somebody looks now and then, too.
What both find is told once.
"""

from collections.abc import Iterable
from pathlib import Path
from threading import Lock
from typing import Any

from watchdog.events import FileModifiedEvent, FileSystemEvent, FileSystemEventHandler
from watchdog.observers import Observer
from watchdog.observers.api import BaseObserver
from watchdog.observers.polling import PollingObserver

LOOK_EVERY_S = 1.0
"""Between two looks at all files, where the system tells of nothing."""
_CHANGES = frozenset(("created", "deleted", "modified", "moved"))
"""Events that leave a file another; to read or to close one is none of them."""

State = tuple[int, int, int] | None


def state_of(path: Path) -> State:
    """What tells one content of a file from the next; None where there is no file."""
    try:
        found = path.stat()
    except OSError:
        return None
    return found.st_mtime_ns, found.st_size, found.st_ino


def states(places: Iterable[Path]) -> dict[Path, State]:
    """The state of every file that is one of these, or in one of these folders."""
    found: dict[Path, State] = {}
    for place in places:
        inside = place.rglob("*") if place.is_dir() else (place,)
        found |= {path: state_of(path) for path in inside if not path.is_dir()}
    return found


class FileEvents:
    """Watches as an observer of watchdog does, with both ways at once."""

    def __init__(self) -> None:
        self._observers: list[BaseObserver] = [Observer(), PollingObserver(timeout=LOOK_EVERY_S)]
        self._told: list[_Once] = []

    def schedule(self, handler: FileSystemEventHandler, path: str, *, recursive: bool) -> Any:
        """Tell a handler of changes below a path; gives back what `unschedule` takes."""
        once = _Once(handler)
        self._told.append(once)
        return [one.schedule(once, path, recursive=recursive) for one in self._observers]

    def unschedule(self, watches: Any) -> None:
        """End what `schedule` began."""
        for observer, watch in zip(self._observers, watches, strict=True):
            observer.unschedule(watch)

    def start(self) -> None:
        """Begin; a system that has no events left to give is only looked at."""
        for observer in list(self._observers):
            try:
                observer.start()
            except OSError:
                self._observers.remove(observer)

    def stop(self) -> None:
        """End."""
        for observer in self._observers:
            observer.stop()

    def join(self, timeout: float | None = None) -> None:
        """Wait for the end."""
        for observer in self._observers:
            if observer.is_alive():
                observer.join(timeout)

    def again(self) -> None:
        """Have everybody who is told of changes look once more, without any."""
        for once in self._told[:1]:
            once.pass_on(FileModifiedEvent(""))


class _Once(FileSystemEventHandler):
    """Passes each state of a file on once, whoever finds it."""

    def __init__(self, handler: FileSystemEventHandler) -> None:
        self._handler = handler
        self._known: dict[str, State] = {}
        self._lock = Lock()

    def dispatch(self, event: FileSystemEvent) -> None:
        if event.is_directory or event.event_type not in _CHANGES:
            return
        paths = [str(one) for one in (event.src_path, event.dest_path) if one]
        with self._lock:
            now = {path: state_of(Path(path)) for path in paths}
            if all(path in self._known and self._known[path] == now[path] for path in paths):
                return
            self._known |= now
        self._handler.dispatch(event)

    def pass_on(self, event: FileSystemEvent) -> None:
        """Past the memory."""
        self._handler.dispatch(event)
