"""The minutes of a session, letter by letter."""

from collections.abc import Iterator, Sequence

from strength_handbook.calc.duration import Block, block_seconds, cycle_seconds, gap_seconds
from strength_handbook.dose.one_set import SIDE_CHANGE_S, one_set
from strength_handbook.dose.share import Lasting, Paced, Term, Times, Walk
from strength_handbook.model.book import Book
from strength_handbook.model.house_rules import RULES
from strength_handbook.model.printed import clock
from strength_handbook.model.program import Program
from strength_handbook.model.span import Span
from strength_handbook.plan.minutes import (
    LetterBlock,
    TimedSlot,
    next_lifter_seconds,
    session_blocks,
)
from strength_handbook.plan.timed import timed_slots
from strength_handbook.plan.worked import WorkedSession
from strength_handbook.workings.working import (
    NBSP,
    Line,
    Working,
    by_formula,
    by_rule,
    equals,
    number,
    seconds,
    times,
)


def minutes_working(book: Book, program: Program, session: WorkedSession) -> Working:
    """Minutes of a session: each set, each letter, and all of them together."""
    slots = timed_slots(book, program.group.sharing, session.slots)
    blocks = session_blocks(book, program, slots)
    lines: list[Line] = []
    sums: list[str] = []
    for index, (letter, block, kind, round_of) in enumerate(blocks):
        name = letter
        if kind == "sets":
            lines += [_set(book, slot) for slot in round_of]
            before = blocks[index - 1] if index else None
            if before is None or (before.letter, before.kind) != (letter, kind):
                lines += _changes(book, program, slots, letter)
        else:
            name = f"{'Ramp' if kind == 'top' else 'Warm-up steps'} {letter}"
            reps = book.rule("step-reps")
            if kind == "top":
                reps = max(slot.dose.top or 0 for slot in slots if slot.order[0] == letter)
            per_rep = seconds(book.rule("seconds-per-rep"))
            text = f"{name}: {number(reps)} × {per_rep} = {seconds(block.work_s[0])} a set"
            lines.append(by_formula("set_seconds", text))
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
        "Rounded to whole minutes; ranges are reckoned at their middle.",
    )


def _set(book: Book, slot: TimedSlot) -> Line:
    """Seconds of one set."""
    one = one_set(book.rule, slot.dose)
    text = " + ".join(map(_term, one.terms))
    if slot.dose.each_side:
        text = f"2 × ({text}) + {seconds(SIDE_CHANGE_S)}"
    result = seconds(one.seconds)
    counts = [term.count for term in one.terms if isinstance(term, Times)]
    sign = equals(one.rep_s, one.seconds, *counts)
    done = "" if text == result else f" {sign} {result}"
    return by_formula(one.formula, f"{slot.order}: {text}{done} a set")


def _term(term: Term) -> str:
    match term:
        case Times(count, each):
            return f"{number(count)} × {seconds(each)}"
        case Lasting(length, how):
            return f"{seconds(length)} {how}".strip()
        case Walk(metres, speed):
            return f"{number(metres)}{NBSP}m ÷ {number(speed, 2)}{NBSP}m/s"
        case Paced(metres, going):
            between = ", at its middle" if isinstance(going.pace, Span) else ""
            return f"{number(metres)}{NBSP}m at {clock(going.pace)} for {going.per}{between}"


def _changes(
    book: Book, program: Program, slots: Sequence[TimedSlot], letter: str
) -> Iterator[Line]:
    """What moves on a bar that several share, in the mean of a round."""
    swap = book.rule("swap-time")
    for slot in slots:
        if slot.order[0] != letter or program.group.sharing < 2 or not slot.plates + slot.hung:
            continue
        moved = [f"{slot.plates} plates × {seconds(book.rule('plate-time'))}"]
        if slot.hung:
            moved.append(f"bands or chains {slot.hung} × {seconds(book.rule('band-time'))}")
        each = next_lifter_seconds(book, program, slot)
        text = (
            f"{slot.order}, from one lifter to the next: {seconds(swap)} + "
            f"({' + '.join(moved)}) ÷ {program.group.sharing} {equals(each)} {seconds(each)}"
        )
        yield by_formula("exchange_seconds", text)


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
        sign = equals(cycle, *block.work_s)
        line = f"{name}, from one round to the next: {text} {sign} {seconds(cycle)}"
        lines.append(by_formula("cycle_seconds", line))
    last = whole - block.setup_s - max(0, block.rounds - 1) * cycle
    parts = [f"set-up {number(block.setup_s)}"] if block.setup_s else []
    if block.rounds > 1:
        parts.append(f"{block.rounds - 1} × {number(cycle)}")
    everybody = block.people > 1 and last > round_s
    parts.append(f"{'last set of all' if everybody else 'last round'} {number(last)}")
    rounds, sign = times(block.rounds, "round"), equals(whole, cycle, last)
    text = f"{name}, {rounds}: {' + '.join(parts)} {sign} {seconds(whole)}"
    return [*lines, by_formula("block_seconds", text)]


def _total(program: Program, session: WorkedSession, sums: Sequence[str]) -> Line:
    warm_up, close = number(program.warm_up / 60), number(program.close / 60)
    total = round(session.minutes.total)
    text = (
        f"Warm-up {warm_up} + ({' + '.join(sums)}){NBSP}s ÷ 60 + close {close} "
        f"{equals(session.minutes.total, decimals=0)} {total}{NBSP}min"
    )
    return by_formula("session_time", text)


def _rules(book: Book, slots: Sequence[TimedSlot], blocks: Sequence[LetterBlock]) -> list[Line]:
    """House rules that these minutes lean on."""
    asked = {slug for slot in slots for slug in one_set(book.rule, slot.dose).rules}
    ramp = any(one.kind == "top" for one in blocks)
    stepped = any(one.kind == "steps" for one in blocks)
    used = {
        "seconds-per-rep": ramp or stepped or "seconds-per-rep" in asked,
        **{slug: True for slug in RULES if slug in asked - {"seconds-per-rep"}},
        "ramp-sets": ramp,
        "step-reps": stepped,
        "ramp-rest": ramp or stepped,
        "swap-time": any(block.people > 1 or len(block.work_s) > 1 for _, block, *_ in blocks),
        "plate-time": any(slot.plates for slot in slots),
        "band-time": any(slot.hung for slot in slots),
        "change-time": len(blocks) > 1,
    }
    return [by_rule(book, slug) for slug, needed in used.items() if needed]
