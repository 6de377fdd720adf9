"""Doses in the shortest form that a coach still reads, for the program on one page."""

import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

from strength_handbook.model.dose import Dose
from strength_handbook.pages.dose_text import notation
from strength_handbook.pages.numbers import NBSP

_TIGHT = (
    (f"{NBSP}×{NBSP}", "×"), (f"{NBSP}→{NBSP}", "→"), (f"@{NBSP}", "@"), (f"{NBSP}%", "%"),
    ("each side", "ES"), ("effort", "RPE"), (r"at least (?=\d+/min)", "≥"),
    (r"last set (\d+\+) \(stop with (\d+) left, at most (\d+)\)", rf"last \1 cap \3 RIR{NBSP}\2"),
)  # fmt: skip
_RHYTHM = ("rest", "every")


def pieces(dose: Dose) -> list[str]:
    r"""A dose in short pieces, without its note.

    >>> from strength_handbook.model.dose import Count, Reps
    >>> pieces(Dose(Count(4, 4), Reps(Count(5, 5)), reserve=2, rest=150, each_side=True))
    ['4×5 ES', 'RIR\xa02', 'rest\xa02:30']
    """
    text = notation(replace(dose, said=dose.said.model_copy(update={"note": None})))
    for long, short in _TIGHT:
        text = re.sub(long, short, text)
    return text.split(" · ")


def common_and_own(doses: Sequence[Dose]) -> tuple[list[str], list[list[str]]]:
    """What several weeks have in common, and what each has for itself.

    The first piece, the work, always stands with its week. A rest counts as common where most
    weeks have it: the others say their own.
    """
    each = [pieces(dose) for dose in doses]
    if len(each) < 2:
        return [], each
    common = [one for one in each[0][1:] if all(one in other[1:] for other in each)]
    rests = [one for week in each for one in week[1:] if one.startswith(_RHYTHM)]
    if len(rests) == len(each):
        usual, times = Counter(rests).most_common(1)[0]
        if usual not in common and times * 2 > len(each):
            common.append(usual)
    own = [[week[0], *(one for one in week[1:] if one not in common)] for week in each]
    return common, own
