"""Generated parts inside hand-written pages.

A line ``<!-- handbook:NAME -->`` in a page of `handbook/` is replaced by the part of that name.
"""

import re
from collections.abc import Callable, Mapping

from strength_handbook.reading.suggest import did_you_mean

_MARK = re.compile(r"<!--\s*handbook:([\w-]+)\s*-->")

Insert = Callable[[str], str]
"""From the address of the page that has the mark to HTML; links depend on the address."""


class UnknownInsertError(ValueError):
    """A mark with a name that no part has."""


def fill_inserts(html: str, url: str, inserts: Mapping[str, Insert]) -> str:
    """The page with every mark replaced.

    Raises:
        UnknownInsertError: naming the mark, and the nearest that exists.
    """

    def replace(found: re.Match[str]) -> str:
        name = found[1]
        if name not in inserts:
            raise UnknownInsertError(
                f"there is no part called '{name}' to put in{did_you_mean(name, tuple(inserts))}"
            )
        return inserts[name](url)

    return _MARK.sub(replace, html)
