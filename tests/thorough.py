"""How much tests try: enough for every day, or with STRENGTH_HANDBOOK_TESTS=long all they can."""

import os

LONG = os.environ.get("STRENGTH_HANDBOOK_TESTS") == "long"
EXAMPLES = 1000 if LONG else 100
"""Of a property test that does not say how many."""


def tries(everyday: int, long: int) -> int:
    """How many of several cases of one kind are tried."""
    return long if LONG else everyday
