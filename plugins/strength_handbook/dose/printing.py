"""A dose in one line, in the trade's notation, and in plain words; all from the table of keys."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from strength_handbook.dose.going import LONGEST_CARRY_M
from strength_handbook.dose.key import Because, Board, InLine, OnBoard, Said, Told, texts
from strength_handbook.dose.line_words import LONGEST
from strength_handbook.dose.load import load_in_words
from strength_handbook.dose.table import BEGINS, KEYS
from strength_handbook.dose.texts import OneLineError, capital
from strength_handbook.model.dose import Dose, DosePart, only_a_top
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.span import ends

_WORDS = frozenset(map(str.lower, BEGINS))


def dose_line(part: DosePart) -> str:
    """The part in one line, as on a whiteboard; reading the line gives the same part again.

    >>> dose_line(DosePart.model_validate({"sets": 3, "reps": "8-12", "rest": "90 s"}))
    '3x8-12, rest 90 s'

    Raises:
        OneLineError: for what one line cannot say: a note, a text with a comma in it, more than 200
            characters.
    """
    if part.bands is not None and not _WORDS.isdisjoint(map(str.lower, part.bands.pair)):
        raise OneLineError("bands", "a band's name is a word that begins something else in a line")
    clauses: dict[InLine, list[str]] = {place: [] for place in InLine}
    for key in KEYS:
        value = key.value(part)
        if value is not None and not isinstance(key.line, Because):
            place, text = key.line
            clauses[place] += texts(text(value, part))
    clauses[InLine.SET] = [" ".join(clauses[InLine.SET])]
    line = ", ".join(filter(None, (one for place in InLine for one in clauses[place])))
    if len(line) > LONGEST:
        raise OneLineError("", f"one line has at most {LONGEST} characters")
    return line


@dataclass(frozen=True, slots=True)
class Printed:
    """One piece of notation.

    Attributes:
        field: the key that it is of; of several together the first.
        text: as it is printed.
        core: it belongs to the work itself; others say something about it.
    """

    field: str
    text: str
    core: bool = False


def pieces(dose: Dose, *, short: bool = False) -> list[Printed]:
    """A dose in pieces: the work itself, and everything that is said about it.

    Args:
        dose: a complete dose.
        short: in the shortest form that a coach still reads.
    """
    by_place = _by_place(Board(dose.part, dose, short))
    lengths = _in_lengths(dose.said.distance, going=dose.going is not None)
    core = by_place[OnBoard.DAY]
    if dose.said.test is None and not only_a_top(dose):
        work = [*_sets(by_place, short=short, lengths=lengths)]
        work += [*by_place[OnBoard.BESIDE], *by_place[OnBoard.ON_TOP]]
        core = [*core, Printed(work[0].field, " ".join(one.text for one in work))]
    return [
        *by_place[OnBoard.LESS],
        *(Printed(one.field, one.text, core=True) for one in core),
        *(one for place in OnBoard if place > OnBoard.ON_TOP for one in by_place[place]),
    ]


def notation(dose: Dose) -> str:
    """The dose as written on a board: ``4 × 5 @ 78 % · 5-1-X-0 · RIR 1 · rest 2:30``."""
    return " · ".join(one.text for one in pieces(dose))


def core_notation(dose: Dose, *, load: bool = True) -> str:
    """The work itself without what is said about it: ``4 × 5 @ 78 %``, or ``4 × 5``."""
    asked = dose if load else replace(dose, load=None)
    return " · ".join(one.text for one in pieces(asked) if one.core)


def partial_notation(part: DosePart) -> str:
    """A part of a dose, such as a door changes it; says only what the part says."""
    by_place = _by_place(Board(part))
    by_place[OnBoard.SET] = _sets(by_place, lengths=_in_lengths(part.distance, going=False))
    on_top = " ".join(one.text for one in by_place[OnBoard.ON_TOP])
    by_place[OnBoard.ON_TOP] = [Printed("", on_top)] if on_top else []
    return " · ".join(one.text for place in OnBoard for one in by_place[place])


def _by_place(board: Board) -> dict[OnBoard, list[Printed]]:
    found: dict[OnBoard, list[Printed]] = {place: [] for place in OnBoard}
    for key in KEYS:
        value = key.value(board.part)
        if value is None or isinstance(key.board, Because):
            continue
        for place, text in key.board:
            found[place] += (Printed(key.field, one) for one in texts(text(value, board)))
    return found


def _in_lengths(metres: float | None, *, going: bool) -> bool:
    """True for what is walked from end to end of a lane."""
    return metres is not None and ends(metres)[1] <= LONGEST_CARRY_M and not going


def _sets(
    by_place: dict[OnBoard, list[Printed]], *, short: bool = False, lengths: bool = False
) -> list[Printed]:
    """Sets, and what one of them is, as one piece."""
    found = by_place[OnBoard.SET]
    sign = "→" if lengths else "×"
    between = sign if short else f"\u00a0{sign}\u00a0"
    return [Printed("sets", between.join(one.text for one in found))] if found else []


def in_words(dose: Dose, exercise: Exercise) -> str:
    """The dose in short sentences: what, how, how fast, when to stop, how long to rest."""
    told = Told(dose, dose.part, exercise, load_in_words(dose.load, exercise))
    said: dict[Said, list[str]] = {place: [] for place in Said}
    for key in KEYS:
        value = key.value(told.part)
        if value is None or isinstance(key.words, Because):
            continue
        for place, text in key.words:
            said[place] += texts(text(value, told))
    if dose.said.test is not None or only_a_top(dose):
        said[Said.TASK] = said[Said.ON_TOP] = []
    elif dose.top is not None:
        said[Said.TASK][:1] = [f"Then {said[Said.TASK][0]}"]
    return " ".join(_sentences(one for place in Said for one in said[place]))


def _sentences(said: Iterator[str]) -> Iterator[str]:
    yield from (f"{capital(one.strip())}." for one in said)
