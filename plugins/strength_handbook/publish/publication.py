"""One build on its way to a published site: written beside the last one, counted, put in place."""

import logging
from pathlib import Path

from strength_handbook.publish.refusal import late_refusal
from strength_handbook.publish.switch_over import NewSite


class UnpublishedError(ValueError):
    """The last site stays; the message says why."""


class Publication:
    """What a build has made so far.

    Nothing is written beside the last site before `begin`, and nothing is left there after `end`.
    """

    def __init__(self, log: logging.Logger) -> None:
        """Watch a log.

        Args:
            log: where the builder and its plugins say what they find.
        """
        self._log = log
        self._said = _WarningCount()
        self._new: NewSite | None = None

    def watch(self) -> None:
        """Count from here on what the builder says."""
        self._said.number = 0
        self._log.addHandler(self._said)

    def begin(self, site: Path) -> str:
        """Make the folder that the new site is written to.

        Args:
            site: the folder of the last site.

        Raises:
            OSError: where nothing can be written beside the site or in it.
        """
        self._new = NewSite(site)
        return str(self._new.folder)

    def finish(self, *, strict: bool) -> str | None:
        """Put the new site in the place of the last one, and say where that is.

        Args:
            strict: any warning that was said on the way stops the publication.

        Raises:
            UnpublishedError: where there was one.
            OSError: where the new site can't take the place.
        """
        if self._new is None:
            return None
        if strict and self._said.number:
            raise UnpublishedError(late_refusal(self._said.number))
        self._new.publish()
        return str(self._new.place)

    def end(self) -> None:
        """Leave nothing behind, whether the build came to its end or not."""
        self._log.removeHandler(self._said)
        if self._new is not None:
            self._new.discard()
        self._new = None


class _WarningCount(logging.Handler):
    """Counts warnings and errors, as `--strict` does when everything is written."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.number = 0

    def emit(self, record: logging.LogRecord) -> None:  # noqa: ARG002  # logging's signature
        self.number += 1
