"""Do the letters of a session pair what they seem to pair?"""

from collections import Counter
from collections.abc import Iterator
from itertools import groupby

from strength_handbook.model.load import PercentOfTop
from strength_handbook.model.session import Slot
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk, SessionAt, SlotAt
from strength_handbook.review.finding import Edit, Finding, Mending, Spot
from strength_handbook.review.words import listed


@check(
    "letters-unpaired",
    Family.COMPLETE,
    Severity.ERROR,
    what="The orders of a session: B2 needs B1 just before it, B1 needs a B2, and B stands alone.",
    why="The same letter is done in turn, so pairs get lost and minutes come out wrong.",
)
def letters_unpaired(this: Check, desk: Desk) -> Iterator[Finding]:
    """Letters and numbers that do not fit together."""
    for session, slots in desk.slots_by_session():
        written = _orders(session)
        blocks = [letter for letter, _ in groupby(order[0] for order in written)]
        for at in slots:
            order, letter = at.slot.order, at.slot.order[0]
            same = [one for one in written if one[0] == letter]
            spot = Spot(at.wave, (*at.path, "order"))
            if blocks.count(letter) > 1 and order != same[0]:
                if not _follows(written, order):
                    text = f"{order} is done in turn with {same[0]} and does not stand next to it"
                    change = Mending(f"move it below {_before(written, order)}")
                    yield this.finds(at, text, spot=spot, change=change)
            elif wanted := _wanted(order, same):
                text = f"{listed(same)} alone under the letter {letter}"
                if len(same) > 1:
                    text = f"{order} beside {listed([one for one in same if one != order])}"
                lonely = len(same) == 1 and order.endswith("1")
                yield this.finds(
                    at, text, spot=spot, severity=Severity.WARN if lonely else None,
                    change=Mending(f"write 'order: {wanted}'", _renamed(session, at, wanted)),
                )  # fmt: skip
            elif len(same) > 1 and [one.slot.order[0] for one in slots].count(letter) == 1:
                missing = listed([one for one in same if one != order])
                text = f"{order} alone this week: {missing} has no dose"
                change = Mending(f"give {missing} a dose, or leave {order} out too")
                yield this.finds(at, text, severity=Severity.NOTE, change=change)


def _orders(at: SessionAt) -> list[str]:
    """The orders of a session's slots, without those that others take the place of in this week."""
    slots, week = at.session.session.slots, at.session.week
    today = [slot for slot in slots if week in slot.weeks]

    def replaced(one: Slot) -> bool:
        same = [slot for slot in today if slot.letter == one.letter]
        return bool(same) and all(slot.weeks.keys().isdisjoint(one.weeks) for slot in same)

    return [one.order for one in slots if week in one.weeks or not replaced(one)]


def _wanted(order: str, same: list[str]) -> str:
    """What an order should be; empty where it is right."""
    letter, number = order[0], order[1:]
    if len(same) == 1:
        return letter if number else ""
    if not number:
        free = (f"{letter}{n}" for n in range(1, 10))
        return next(one for one in free if one not in same)
    before = f"{letter}{int(number) - 1}"
    return before if number != "1" and before not in same and letter not in same else ""


def _follows(written: list[str], order: str) -> bool:
    place = written.index(order)
    return place > 0 and written[place - 1][0] == order[0]


def _before(written: list[str], order: str) -> str:
    """The last slot of the letter's first block."""
    first = next(i for i, one in enumerate(written) if one[0] == order[0])
    last = first
    while last + 1 < len(written) and written[last + 1][0] == order[0]:
        last += 1
    return written[last]


def _renamed(session: SessionAt, at: SlotAt, wanted: str) -> tuple[Edit, ...]:
    """Another order for a slot, also where a variant leaves it out."""
    edits = [Edit(at.wave.file, (*at.path, "order"), wanted)]
    for number, variant in enumerate(session.session.session.variants):
        for index, order in enumerate(variant.leave_out):
            if order == at.slot.order:
                path = (*session.path, "variants", number, "leave-out", index)
                edits.append(Edit(at.wave.file, path, wanted))
    return tuple(edits)


@check(
    "rounds-unequal",
    Family.COMPLETE,
    Severity.WARN,
    what="Sets of exercises that are done in turn, where they differ and no 'note' says what "
    "happens in the odd rounds.",
    why="One of the pair waits, or somebody adds a set that was not meant.",
)
def rounds_unequal(this: Check, desk: Desk) -> Iterator[Finding]:
    """Pairs with different numbers of sets."""
    for _, slots in desk.slots_by_session():
        for _, several in groupby(slots, key=lambda at: at.slot.order[0]):
            group = list(several)
            rounds = [_rounds(at) for at in group]
            if len(set(rounds)) < 2 or any(at.slot.dose.said.note for at in group):
                continue
            # The most common number is the one meant; of equally common ones, the first.
            meant = Counter(rounds).most_common(1)[0][0]
            odd = next(at for at, own in zip(group, rounds, strict=True) if own != meant)
            text = " and ".join(
                f"{at.slot.order} has {own}" for at, own in zip(group, rounds, strict=True)
            )
            sets = _sets_for(odd, meant)
            words = f"write 'sets {sets}' for {odd.slot.order}, or a 'note'" if sets else ""
            text += " sets in one letter, and no note says why"
            yield this.finds(
                odd, text, spot=Spot(odd.wave, odd.path),
                change=Mending(words, odd.rewritten(sets=sets)) if sets else None,
            )  # fmt: skip


def _rounds(at: SlotAt) -> str:
    """Sets as written; a top set is done before its back-off sets and is no round."""
    return at.slot.dose.sets.text.replace("–", "-")


def _sets_for(at: SlotAt, rounds: str) -> str:
    dose = at.slot.dose
    found_on_the_day = dose.top is not None and not isinstance(dose.load, PercentOfTop)
    if dose.said.test is not None or found_on_the_day:
        return ""  # as many as it takes
    return rounds
