"""Doses in the shortest form that a coach still reads, for the program on one page."""

from collections import Counter
from collections.abc import Sequence

from strength_handbook.dose.printing import pieces
from strength_handbook.model.dose import Dose


def short_pieces(dose: Dose) -> list[str]:
    r"""A dose in short pieces, without its note.

    >>> from strength_handbook.model.dose import Count, Reps
    >>> short_pieces(Dose(Count(4, 4), Reps(Count(5, 5)), reserve=2, rest=150, each_side=True))
    ['4×5 ES', 'RIR\xa02', 'rest\xa02:30']
    """
    return [one.text for one in pieces(dose, short=True)]


def common_and_own(doses: Sequence[Dose]) -> tuple[list[str], list[list[str]]]:
    """What several weeks have in common, and what each has for itself.

    The first piece, the work, always stands with its week. A rest counts as common where most
    weeks have it: the others say their own.
    """
    printed = [pieces(dose, short=True) for dose in doses]
    each = [[one.text for one in week] for week in printed]
    if len(each) < 2:
        return [], each
    common = [one for one in each[0][1:] if all(one in other[1:] for other in each)]
    rests = [one.text for week in printed for one in week[1:] if one.field in ("rest", "every")]
    if len(rests) == len(each):
        usual, times = Counter(rests).most_common(1)[0]
        if usual not in common and times * 2 > len(each):
            common.append(usual)
    own = [[week[0], *(one for one in week[1:] if one not in common)] for week in each]
    return common, own
