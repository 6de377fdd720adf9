"""The minutes of a session, letter by letter."""

from collections.abc import Sequence

from strength_handbook.calc.duration import Block, block_seconds, cycle_seconds, gap_seconds
from strength_handbook.model.book import Book
from strength_handbook.model.dose import Clock, ClusterSet, Distance, Hold, Reps, StripSet
from strength_handbook.model.program import Program
from strength_handbook.plan.minutes import (
    SIDE_CHANGE_S,
    STRIP_REPS,
    TimedSlot,
    rep_seconds,
    session_blocks,
    work_seconds,
)
from strength_handbook.plan.worked import WorkedSession
from strength_handbook.plan.working import (
    NBSP,
    Line,
    Working,
    by_formula,
    by_rule,
    number,
    seconds,
    times,
)


def minutes_working(book: Book, program: Program, session: WorkedSession) -> Working:
    """Minutes of a session: each set, each letter, and all of them together."""
    slots = [TimedSlot(slot.order, slot.exercise, slot.dose) for slot in session.slots]
    blocks = session_blocks(book, program, slots)
    ramped = {slot.order[0] for slot in slots if slot.dose.top is not None}
    lines: list[Line] = []
    sums: list[str] = []
    seen: set[str] = set()
    for index, (letter, block) in enumerate(blocks):
        ramp = letter in ramped and letter not in seen
        seen.add(letter)
        if ramp:
            top = max(slot.dose.top or 0 for slot in slots if slot.order[0] == letter)
            per_rep = seconds(book.rule("seconds-per-rep"))
            text = f"Ramp {letter}: {top} × {per_rep} = {seconds(block.work_s[0])} a set"
            lines.append(by_formula("set_seconds", text))
        else:
            lines += [_set(book, slot) for slot in slots if slot.order[0] == letter]
        name = f"Ramp {letter}" if ramp else letter
        lines += _block(name, block)
        sums.append(number(block_seconds(block)))
        if index + 1 < len(blocks):
            sums.append(number(gap_seconds(block)))
    lines.append(_total(program, session, sums))
    return Working(
        f"{program.group.sharing} at a station"
        if program.group.sharing > 1
        else "One at a station",
        (*lines, *_rules(book, slots, blocks)),
        "Rounded to whole minutes; ranges of sets and repetitions are reckoned at their middle.",
    )


def _set(book: Book, slot: TimedSlot) -> Line:
    """Seconds of one set."""
    dose, per_rep = slot.dose, rep_seconds(book, slot.dose)
    name = "set_seconds"
    match dose.work:
        case Reps(count):
            text = f"{number(count.middle)} × {seconds(per_rep)}"
        case ClusterSet(cluster):
            name = "broken_set_seconds"
            pauses = f"{len(cluster.parts) - 1} × {seconds(cluster.pause)}"
            text = f"{cluster.reps} × {seconds(per_rep)} + {pauses}"
        case StripSet(strip):
            name = "broken_set_seconds"
            reps = strip.total if strip.total is not None else strip.loads * STRIP_REPS
            off = f"{strip.loads - 1} × {seconds(book.rule('strip-time'))}"
            text = f"{reps} × {seconds(per_rep)} + {off}"
        case Hold(length) | Clock(length):
            text = seconds(length)
        case Distance(metres):
            name = "carry_seconds"
            speed = f"{number(book.rule('walking-speed'), 2)}{NBSP}m/s"
            text = f"{number(metres)}{NBSP}m ÷ {speed}"
    if dose.each_side:
        text = f"2 × ({text}) + {seconds(SIDE_CHANGE_S)}"
    result = seconds(work_seconds(book, dose))
    done = "" if text == result else f" = {result}"
    return by_formula(name, f"{slot.order}: {text}{done} a set")


def _block(name: str, block: Block) -> list[Line]:
    """From one round to the next, and from the first to the last."""
    work = [number(one) for one in block.work_s]
    between = number(block.transition_s)
    round_s = sum(block.work_s) + (len(work) - 1) * block.transition_s
    inside = f" + {between} + ".join(work) if block.transition_s else " + ".join(work)
    cycle, whole = cycle_seconds(block), block_seconds(block)
    terms = [f"{inside} + {number(block.rest_s)}"]
    if block.interval_s is not None:
        terms = [inside, number(block.interval_s)]
    if block.people > 1:
        terms.append(f"{block.people} × ({number(max(block.work_s))} + {number(block.swap_s)})")
    text = (
        terms[0] if len(terms) == 1 else f"the largest of {', '.join(terms[:-1])} and {terms[-1]}"
    )
    lines = []
    if block.rounds > 1:
        line = f"{name}, from one round to the next: {text} = {seconds(cycle)}"
        lines.append(by_formula("cycle_seconds", line))
    last = whole - block.setup_s - max(0, block.rounds - 1) * cycle
    parts = [f"set-up {number(block.setup_s)}"] if block.setup_s else []
    if block.rounds > 1:
        parts.append(f"{block.rounds - 1} × {number(cycle)}")
    everybody = block.people > 1 and last > round_s
    parts.append(f"{'last set of all' if everybody else 'last round'} {number(last)}")
    text = f"{name}, {times(block.rounds, 'round')}: {' + '.join(parts)} = {seconds(whole)}"
    return [*lines, by_formula("block_seconds", text)]


def _total(program: Program, session: WorkedSession, sums: Sequence[str]) -> Line:
    warm_up, close = number(program.warm_up / 60), number(program.close / 60)
    total = round(session.minutes.total)
    text = (
        f"Warm-up {warm_up} + ({' + '.join(sums)}){NBSP}s ÷ 60 + close {close} = {total}{NBSP}min"
    )
    return by_formula("session_time", text)


def _rules(
    book: Book, slots: Sequence[TimedSlot], blocks: Sequence[tuple[str, Block]]
) -> list[Line]:
    """House rules that these minutes lean on."""
    works = [slot.dose.work for slot in slots]
    ramp = any(slot.dose.top is not None for slot in slots)
    counted = any(isinstance(work, Reps | ClusterSet | StripSet) for work in works)
    untimed = counted and any(slot.dose.tempo is None for slot in slots)
    used = {
        "seconds-per-rep": ramp or untimed,
        "walking-speed": any(isinstance(work, Distance) for work in works),
        "strip-time": any(isinstance(work, StripSet) for work in works),
        "ramp-sets": ramp,
        "ramp-rest": ramp,
        "swap-time": any(block.people > 1 or len(block.work_s) > 1 for _, block in blocks),
        "change-time": len(blocks) > 1,
    }
    return [by_rule(book, slug) for slug, needed in used.items() if needed]
