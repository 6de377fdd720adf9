"""What stands behind the short word of a problem: the long answer to "and what does that mean?"."""

import textwrap
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Explanation:
    """One kind of problem.

    Attributes:
        what: what is wrong and why it matters, in a few sentences.
        wrong: a piece of a file with the problem, or empty where none can be shown.
        right: the same piece as it should be.
    """

    what: str
    wrong: str = ""
    right: str = ""

    def text(self, slug: str) -> str:
        """All of it, for a terminal."""
        parts = [slug, textwrap.fill(self.what, 80)]
        if self.wrong:
            parts.append("Not like this:\n" + _indented(self.wrong))
        if self.right:
            parts.append("Like this:\n" + _indented(self.right))
        return "\n\n".join(parts)


def _indented(text: str) -> str:
    return "\n".join(f"    {line}" for line in text.rstrip("\n").split("\n"))
