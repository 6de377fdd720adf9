"""How long a session takes for the people who share its stations, and when each letter starts."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

from strength_handbook.calc.duration import Block, block_seconds, gap_seconds
from strength_handbook.calc.set_duration import broken_set_seconds, carry_seconds, set_seconds
from strength_handbook.calc.tempo import rep_tension
from strength_handbook.model.book import Book
from strength_handbook.model.dose import Clock, ClusterSet, Distance, Dose, Hold, Reps, StripSet
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.program import Program

STRIP_REPS = 8
"""Repetitions reckoned for each load of a strip set without a total."""

SIDE_CHANGE_S = 5.0
"""From one side to the other. Common practice, no source."""


@dataclass(frozen=True, slots=True)
class TimedSlot:
    """What the clock needs of one slot."""

    order: str
    exercise: Exercise
    dose: Dose


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
    for index, (letter, block) in enumerate(blocks):
        if all(letter != known for known, _ in starts):
            starts.append((letter, warm_up + clock / 60))
        clock += block_seconds(block)
        if index + 1 < len(blocks):
            clock += gap_seconds(block)
    return Minutes(warm_up + clock / 60 + close, clock / 60, tuple(starts))


def session_blocks(
    book: Book, program: Program, slots: Sequence[TimedSlot]
) -> list[tuple[str, Block]]:
    """What is done in a row, with its letter; a ramp is a block of its own before its letter's."""
    letters: dict[str, list[TimedSlot]] = {}
    for slot in slots:
        letters.setdefault(slot.order[0], []).append(slot)
    blocks: list[tuple[str, Block]] = []
    for letter, group in letters.items():
        ramp = _ramp(book, program, group)
        if ramp is not None:
            blocks.append((letter, ramp))
        blocks.append((letter, _block(book, program, group)))
    return blocks


def work_seconds(book: Book, dose: Dose) -> float:
    """Seconds of one set, both sides counted."""
    sides = 2 if dose.each_side else 1
    per_rep = rep_seconds(book, dose)
    match dose.work:
        case Reps(count):
            one_side = count.middle * per_rep
        case ClusterSet(cluster):
            one_side = broken_set_seconds(cluster.parts, per_rep, cluster.pause)
        case StripSet(strip):
            reps = strip.total if strip.total is not None else strip.loads * STRIP_REPS
            one_side = reps * per_rep + (strip.loads - 1) * book.rule("strip-time")
        case Hold(seconds) | Clock(seconds):
            one_side = seconds
        case Distance(metres):
            one_side = carry_seconds(metres, book.rule("walking-speed"))
    return set_seconds(0, hold_s=one_side, sides=sides, side_change_s=SIDE_CHANGE_S)


def rep_seconds(book: Book, dose: Dose) -> float:
    """Seconds of one repetition: by its tempo, or the house's, and a hold inside it."""
    held = dose.said.pause.time if dose.said.pause else 0.0
    tempo = dose.tempo
    if tempo is None:
        return book.rule("seconds-per-rep") + held
    return rep_tension(tempo.lower, tempo.low_pause, tempo.lift, tempo.high_pause).total_s + held


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
        rest_s=last if last is not None else (0.0 if every else swap),
        transition_s=sum(inside) / len(inside) if inside else 0.0,
        # Those who share a pair of stations set one up each.
        setup_s=sum(slot.exercise.setup_seconds for slot in group) / hands,
        people=ceil(program.group.sharing / _together(doses)),
        swap_s=swap,
        interval_s=sum(every) if every else None,
        change_s=book.rule("change-time"),
    )


def _together(doses: Sequence[Dose]) -> int:
    """How many do one set between them: those who share a density set work in turns inside it."""
    shared = [dose.said.density.sharing if dose.said.density else 1 for dose in doses]
    return min(shared)


def _ramp(book: Book, program: Program, group: Sequence[TimedSlot]) -> Block | None:
    """The sets up to today's top, where a dose asks for one."""
    tops = [slot.dose.top for slot in group if slot.dose.top is not None]
    if not tops:
        return None
    work = max(tops) * book.rule("seconds-per-rep")
    rest = book.rule("ramp-rest")
    return Block(
        rounds=round(book.rule("ramp-sets")),
        work_s=(work,),
        rest_s=rest,
        people=program.group.sharing,
        swap_s=book.rule("swap-time"),
        change_s=rest,
    )
