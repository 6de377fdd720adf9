"""How long a session takes for the people who share its stations, and when each letter starts."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import ceil
from typing import Literal, NamedTuple

from strength_handbook.calc.duration import Block, block_seconds, gap_seconds, session_time
from strength_handbook.calc.shared_bar import exchange_seconds
from strength_handbook.dose.one_set import one_set
from strength_handbook.model.book import Book
from strength_handbook.model.dose import Dose
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.program import Program


@dataclass(frozen=True, slots=True)
class TimedSlot:
    """What the clock needs of one slot.

    Attributes:
        order: its place in the session.
        exercise: the exercise.
        dose: what is asked.
        steps: warm-up steps of its own, which the session's warm-up does not hold.
        plates: plates moved on one side in one round of all who share the bar.
        hung: times in that round that bands or chains come off or go on.
    """

    order: str
    exercise: Exercise
    dose: Dose
    steps: int = 0
    plates: int = 0
    hung: int = 0


class LetterBlock(NamedTuple):
    """Sets done in a row.

    Attributes:
        letter: of what they belong to.
        block: times and people.
        kind: ``sets``, ``steps`` up to their load, or the way to today's ``top``.
        slots: what is done in a round of sets; of sets that differ those that are alike.
    """

    letter: str
    block: Block
    kind: Literal["sets", "steps", "top"]
    slots: Sequence[TimedSlot] = ()


@dataclass(frozen=True, slots=True)
class Minutes:
    """A session by the clock.

    Attributes:
        total: door to door, in minutes.
        training: from the first set to the last, in minutes.
        starts: letter and the minute at which its set-up begins, in order.
    """

    total: float
    training: float
    starts: tuple[tuple[str, float], ...]


def session_minutes(book: Book, program: Program, slots: Sequence[TimedSlot]) -> Minutes:
    """Minutes of a session, for as many people at a station as the program says."""
    warm_up, close = program.warm_up / 60, program.close / 60
    blocks = session_blocks(book, program, slots)
    starts: list[tuple[str, float]] = []
    clock = 0.0
    for index, (letter, block, *_) in enumerate(blocks):
        if all(letter != known for known, _ in starts):
            starts.append((letter, warm_up + clock / 60))
        clock += block_seconds(block)
        if index + 1 < len(blocks):
            clock += gap_seconds(block)
    time = session_time((one.block for one in blocks), close, warm_up)
    return Minutes(time.total_min, time.training_min, tuple(starts))


def session_blocks(book: Book, program: Program, slots: Sequence[TimedSlot]) -> list[LetterBlock]:
    """What is done in a row; a way up is a block of its own before its letter's sets."""
    letters: dict[str, list[TimedSlot]] = {}
    for slot in slots:
        letters.setdefault(slot.order[0], []).append(slot)
    blocks: list[LetterBlock] = []
    for letter, group in letters.items():
        if (steps := max(slot.steps for slot in group)) > 0:
            found = _way_up(book, program, steps, book.rule("step-reps"))
            blocks.append(LetterBlock(letter, found, "steps"))
        if tops := [slot.dose.top for slot in group if slot.dose.top is not None]:
            found = _way_up(book, program, round(book.rule("ramp-sets")), max(tops))
            blocks.append(LetterBlock(letter, found, "top"))
        blocks += (
            LetterBlock(letter, block, "sets", slots)
            for block, slots in _sets(book, program, group)
        )
    return blocks


def _sets(
    book: Book, program: Program, group: Sequence[TimedSlot]
) -> list[tuple[Block, Sequence[TimedSlot]]]:
    """The sets of one letter; sets that differ are a block each, with their rest between."""
    alone = group[0]
    if len(group) > 1 or not alone.dose.series or alone.dose.every is not None:
        return [(_block(book, program, group), group)]
    slots = [[replace(alone, dose=one)] for one in alone.dose.series]
    blocks = [_block(book, program, one) for one in slots]
    blocks = [blocks[0], *(replace(one, setup_s=0.0) for one in blocks[1:])]
    blocks = [*(replace(one, change_s=None) for one in blocks[:-1]), blocks[-1]]
    return list(zip(blocks, slots, strict=True))


def work_seconds(book: Book, dose: Dose) -> float:
    """Seconds of one set, both sides counted."""
    return one_set(book.rule, dose).seconds


def next_lifter_seconds(book: Book, program: Program, slot: TimedSlot) -> float:
    """Seconds from one lifter to the next on one bar, in the mean of a round of all who share it.

    Where nothing moves, it is the swap alone.
    """
    moved = exchange_seconds(
        0.0, slot.plates, book.rule("plate-time"), slot.hung, book.rule("band-time")
    )
    return book.rule("swap-time") + moved / program.group.sharing


def _block(book: Book, program: Program, group: Sequence[TimedSlot]) -> Block:
    """The sets of one letter: a straight exercise, or a round of paired ones.

    Rest after a paired exercise is taken before the next one of the pair, as it is written.
    """
    doses = [slot.dose for slot in group]
    swap = book.rule("swap-time")
    inside = [swap if dose.rest is None else dose.rest for dose in doses[:-1]]
    every = [dose.every for dose in doses if dose.every is not None]
    last = doses[-1].rest
    hands = min(program.group.sharing, len(group))
    return Block(
        rounds=ceil(max(dose.sets.middle for dose in doses)),
        work_s=tuple(work_seconds(book, dose) for dose in doses),
        rest_s=float(last) if last is not None else (0.0 if every else swap),
        transition_s=sum(inside) / len(inside) if inside else 0.0,
        # Those who share a pair of stations set one up each.
        setup_s=sum(slot.exercise.setup_seconds for slot in group) / hands,
        people=ceil(program.group.sharing / _together(doses)),
        swap_s=max(next_lifter_seconds(book, program, slot) for slot in group),
        interval_s=sum(every) if every else None,
        change_s=book.rule("change-time"),
    )


def _together(doses: Sequence[Dose]) -> int:
    """How many do one set at the same time.

    Those who share a density set work in turns inside it; all bearers of a team walk together.
    """

    def at_once(dose: Dose) -> int:
        if dose.said.team is not None:
            return dose.said.team.bearers
        return dose.said.density.sharing if dose.said.density else 1

    return min(map(at_once, doses))


def _way_up(book: Book, program: Program, sets: int, reps: float) -> Block:
    """Sets up to a load: of so many repetitions, with the house's rest between them."""
    rest = book.rule("ramp-rest")
    return Block(
        rounds=sets,
        work_s=(reps * book.rule("seconds-per-rep"),),
        rest_s=rest,
        people=program.group.sharing,
        swap_s=book.rule("swap-time"),
        change_s=rest,
    )
