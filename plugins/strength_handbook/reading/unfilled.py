"""Places that a new gym's files leave open: a sign that says in words what belongs there.

    entrance: Not yet filled in (which door the ambulance takes)

Pages show it as it stands, and a strict build waits until it is gone.
"""

import re
from collections.abc import Iterator

_SIGN = re.compile(r"\bnot yet filled in \(([^()\n]+)\)", re.IGNORECASE)


def unfilled(text: str) -> Iterator[tuple[int, str]]:
    """Where each sign begins in a text, and what belongs there.

    >>> list(unfilled("Keys: Not yet filled in (who has one)."))
    [(6, 'who has one')]
    """
    for found in _SIGN.finditer(text):
        yield found.start(), " ".join(found[1].split())


def sign(what: str) -> str:
    """The sign for something that somebody will fill in.

    >>> sign("who has a key")
    'Not yet filled in (who has a key)'
    """
    return f"Not yet filled in ({what})"


def asking(what: str) -> str:
    """What to do about it, for messages.

    >>> asking("who has a key")
    "write who has a key, and take 'Not yet filled in (…)' out"
    """
    return f"write {what}, and take '{sign('…')}' out"
