"""Words for messages: a text in quotes, the word that was probably meant, the words to choose from.

A message that names the right word is corrected in seconds; one that only refuses costs a search.
"""

import re
from collections.abc import Iterable, Sequence

from strength_handbook.model.shape import quoted


def did_you_mean(word: str, options: Iterable[str]) -> str:
    """The tail of a message about a wrong word: the option it is a slip of, or nothing.

    A slip is a letter too many, too few or wrong, or two neighbours that changed places: one of
    them in a short word, two from six letters on. A word that is farther away was not meant, and
    to offer it would send a coach astray. Case is ignored, since ``Reps`` for ``reps`` is the
    commonest slip of all. Three letters are enough for the beginning of a word, and an ending may
    be too much, as in ``squating``. Among options equally near comes first
    what the word is the beginning of: ``rep`` is nearer to ``reps`` than to ``rpe``; then one of
    the same letters. The choice does not depend on their order.

    Args:
        word: what was written.
        options: what could have been written; any number, also none.

    Returns:
        Text to append to a message, or "" where nothing is near or the word is itself an option.

    >>> did_you_mean("rep", ["sets", "reps", "rest"])
    "; did you mean 'reps'?"
    >>> did_you_mean("rset", ["sets", "reps", "rest"])
    "; did you mean 'rest'?"
    >>> did_you_mean("heavy", ["every"]), did_you_mean("weeks", ["weeks-off"])
    ('', '')
    """
    lower, near = word.lower(), []
    for option in set(options):
        if option == word:
            return ""
        meant = option.lower()
        begins = meant.startswith(lower)
        slips = _slips(lower, meant, _most_slips(word))
        shortened = begins and len(word) > 2 and meant[len(word) : len(word) + 1].isalpha()
        bent = len(meant) > 3 and re.fullmatch(rf"{re.escape(meant)}[a-z]{{1,3}}", lower)
        if shortened or bent or slips <= _most_slips(word):
            near.append((slips, not begins, sorted(lower) != sorted(meant), option))
    return f"; did you mean {quoted(min(near)[-1])}?" if near else ""


def did_you_mean_name(name: str, names: Iterable[str]) -> str:
    """The same for the name of a thing: its words may be some of another name's.

    >>> did_you_mean_name("squat", ["box-squat", "row"]), did_you_mean_name("oar", ["row"])
    ("; did you mean 'box-squat'?", '')
    """
    several = sorted(names)
    if near := did_you_mean(name, several):
        return near
    words = set(name.lower().split("-"))
    alike = [one for one in several if one != name and _some_of(words, set(one.split("-")))]
    return f"; did you mean {quoted(alike[0])}?" if alike and name not in several else ""


def _some_of(words: set[str], others: set[str]) -> bool:
    return words <= others or others <= words


def _most_slips(word: str) -> int:
    """So many slips are still one word."""
    if len(word) < 3:
        return 0
    return 1 if len(word) < 6 else 2


def _slips(word: str, other: str, most: int) -> int:
    """How many slips lie between two words; beyond `most` any larger number.

    Optimal string alignment: like Levenshtein's distance, and neighbours that changed places count
    once.

    >>> _slips("laod", "load", 2), _slips("rep", "reps", 2), _slips("patern", "pattern", 2)
    (1, 1, 1)
    """
    if abs(len(word) - len(other)) > most:
        return most + 1
    before: list[int] = []
    last = list(range(len(other) + 1))
    for i, sign in enumerate(word, 1):
        row = [i]
        for j, meant in enumerate(other, 1):
            steps = min(last[j] + 1, row[j - 1] + 1, last[j - 1] + (sign != meant))
            if i > 1 and j > 1 and sign == other[j - 2] and word[i - 2] == meant:
                steps = min(steps, before[j - 2] + 1)
            row.append(steps)
        if min(row) > most:
            return most + 1
        before, last = last, row
    return last[-1]


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
