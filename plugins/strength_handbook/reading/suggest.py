"""Words for messages: a text in quotes, the word that was probably meant, the words to choose from.

A message that names the right word is corrected in seconds; one that only refuses costs a search.
"""

import difflib
from collections.abc import Iterable, Sequence

_LONGEST_SHOWN = 60


def quoted(text: str, limit: int = _LONGEST_SHOWN) -> str:
    r"""Text in single quotes, on one line and cut after `limit` characters.

    >>> quoted("reps"), quoted("two\nlines"), quoted("abcdef", limit=3)
    ("'reps'", "'two lines'", "'abc…'")
    """
    line = " ".join(text.split())
    return f"'{line}'" if len(line) <= limit else f"'{line[:limit]}…'"


def did_you_mean(word: str, options: Iterable[str]) -> str:
    """The tail of a message about a wrong word: the most similar option, or nothing.

    Case is ignored for likeness, since ``Reps`` for ``reps`` is the commonest slip. Two neighbours
    swapped come next, ahead of what only has many letters in common, unless the word is the
    beginning of an option: ``rep`` is nearer to ``reps`` than to ``rpe``. Among equally similar
    options the choice does not depend on their order.

    Args:
        word: what was written.
        options: what could have been written; any number, also none.

    Returns:
        Text to append to a message, or "" where nothing is similar or the word is itself an option.

    >>> did_you_mean("rep", ["sets", "reps", "rest"])
    "; did you mean 'reps'?"
    >>> did_you_mean("rset", ["sets", "reps", "rest"])
    "; did you mean 'rest'?"
    >>> did_you_mean("tempo", ["sets", "reps"])
    ''
    """
    by_lower_case: dict[str, str] = {}
    for option in sorted(options):
        if option == word:
            return ""
        by_lower_case.setdefault(option.lower(), option)
    lower = word.lower()
    swapped = [option for option in by_lower_case if _one_swap_apart(lower, option)]
    unfinished = any(option.startswith(lower) for option in by_lower_case)
    if swapped and not unfinished:
        close = swapped[:1]
    else:
        close = difflib.get_close_matches(lower, list(by_lower_case), n=1)
    return f"; did you mean {quoted(by_lower_case[close[0]])}?" if close else ""


def _one_swap_apart(word: str, other: str) -> bool:
    """True where the words differ by two neighbouring letters that changed places."""
    if len(word) != len(other) or word == other:
        return False
    at = next(i for i, (a, b) in enumerate(zip(word, other, strict=True)) if a != b)
    return word[:at] + word[at : at + 2][::-1] + word[at + 2 :] == other


def one_of(options: Sequence[str], limit: int = 8) -> str:
    """The options as a list in words, in the order given; a long list is cut and counted.

    >>> one_of(["kg", "lb"]), one_of(["easy", "hard", "hurts"])
    ("'kg' or 'lb'", "'easy', 'hard' or 'hurts'")
    >>> one_of(["a", "b", "c", "d"], limit=2)
    "'a', 'b' … (4 in all)"
    """
    shown = [quoted(option) for option in options]
    if len(shown) > limit:
        return f"{', '.join(shown[:limit])} … ({len(shown)} in all)"
    if len(shown) < 2:
        return "".join(shown)
    return f"{', '.join(shown[:-1])} or {shown[-1]}"
