"""What a command may refuse, in two kinds: it was asked wrongly, or what it needs failed.

Other errors derive from these, so that the command can tell the kinds apart without importing all
that may raise them.
"""


class MisuseError(ValueError):
    """Asked like this it can't be done; the message says how to ask instead."""


class FailedError(ValueError):
    """What the command needs did not come to its end; the message says why."""
