"""Minutes a session takes.

What is counted
- Work: the seconds of each set, as `set_duration` gives them.
- Rest: after every set, or after every round of a superset or giant set.
- Between two blocks: the rest after the first one's last set, unless its `change_s` is given;
  `change_s` takes that rest's place.
- Never a rest after the last set of the session.
- Overhead (arriving, setting up) and a separate warm-up are stated by the coach, not worked out.

When several people share one station, a cycle lasts as long as all of them need in turn or as
long as one of them needs to lift and rest, whichever is longer.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise

from strength_handbook.calc.registry import Evidence, formula

OVERHEAD_MIN = 0.0

_SUBJECT = "Session time"
_NO_SOURCE = "common practice, no source"
_ERROR = (
    "Eight of ten published sessions within 10 % or 4 min, whichever is larger; the two that were "
    "timed as whole visits came out 10 and 11 min short. 3 s a repetition was chosen to fit these "
    "sessions; four of their times are from memory, and three rows take a rest of 2 min."
)


@dataclass(frozen=True, slots=True)
class Block:
    """Sets or rounds done together before moving on.

    Attributes:
        rounds: sets of one exercise, or rounds of a superset, giant set or circuit; may be 0.
        work_s: seconds of one set of each exercise in the round, in order, both sides counted.
            Sets of unequal length: give their mean.
        rest_s: rest after each set or round.
        transition_s: from one exercise to the next inside a round.
        setup_s: before the first set.
        people: how many share each station of the block, each with a full set of rounds.
        swap_s: from one lifter to the next at a station, plates changed.
        interval_s: a set starts every so many seconds; takes the place of `rest_s`.
        change_s: from the last set to the next block, in place of the last rest.

    Raises:
        ValueError: no exercise, no person, or a negative time.
    """

    rounds: int
    work_s: tuple[float, ...]
    rest_s: float = 0.0
    transition_s: float = 0.0
    setup_s: float = 0.0
    people: int = 1
    swap_s: float = 0.0
    interval_s: float | None = None
    change_s: float | None = None

    def __post_init__(self) -> None:
        if not self.work_s:
            raise ValueError("a block needs at least one exercise")
        if self.people < 1:
            raise ValueError("a block needs at least one person")
        times = (
            *self.work_s,
            self.rest_s,
            self.transition_s,
            self.setup_s,
            self.swap_s,
            self.interval_s or 0.0,
            self.change_s or 0.0,
        )
        if self.rounds < 0 or min(times) < 0:
            raise ValueError("rounds and times cannot be negative")


def _round_s(block: Block) -> float:
    """One person's round without the rest after it."""
    return sum(block.work_s) + (len(block.work_s) - 1) * block.transition_s


def _busy_s(block: Block) -> float:
    """First start to last end of everybody's single round."""
    at_busiest = block.people * max(block.work_s) + (block.people - 1) * block.swap_s
    return max(_round_s(block), at_busiest)


@formula(
    subject=_SUBJECT,
    title="Seconds from one round to the next",
    equation="cycle = the larger of (round + rest) and (people × (longest work + swap));  with "
    "a set every N s, the larger of (round) and (N) stands for (round + rest)",
    inputs={
        "block": "round = one person's sets of one round, with the time between them, s; rest = "
        "after it, s; people = how many share the station; longest work = longest set of "
        "the round, s; swap = from one lifter to the next, s; N = seconds from the start "
        "of one set to the start of the next, s",
    },
    output="cycle, s",
    source=_NO_SOURCE,
    evidence=Evidence.ARITHMETIC,
    error="Exact for one exercise. For supersets shared by people who start at different "
    "stations it is a lower bound; people get in each other's way up to about 1.2 times.",
)
def cycle_seconds(block: Block) -> float:
    """Seconds from the start of a round to the start of the next.

    Longer than `interval_s` where the work doesn't fit into it: that clock cannot be kept.

    >>> cycle_seconds(Block(3, (40.0,), rest_s=120, people=3, swap_s=30))
    210.0
    """
    alone = _round_s(block)
    own = alone + block.rest_s if block.interval_s is None else max(alone, block.interval_s)
    shared = block.people * (max(block.work_s) + block.swap_s) if block.people > 1 else 0.0
    return max(own, shared)


@formula(
    subject=_SUBJECT,
    title="Seconds of a letter, from set-up to its last set",
    equation="seconds = set-up + (rounds − 1) × cycle + last round;  last round = the larger "
    "of (round) and (people × longest work + (people − 1) × swap)",
    inputs={
        "block": "set-up = seconds before the first set, s; rounds = sets, or rounds of paired "
        "exercises; cycle = from one round to the next, s; round = one person's sets of "
        "one round, with the time between them, s; people = how many share the station; "
        "longest work = longest set of the round, s; swap = from one lifter to the next, s",
    },
    output="seconds, s",
    source=_NO_SOURCE,
    evidence=Evidence.ARITHMETIC,
    error=_ERROR,
)
def block_seconds(block: Block) -> float:
    """Seconds from the start of the set-up until the last lifter's last set is down.

    >>> block_seconds(Block(4, (30.0,), rest_s=120))
    480.0
    >>> block_seconds(Block(8, (6.0,), interval_s=60))
    426.0
    """
    if block.rounds == 0:
        return 0.0
    return block.setup_s + (block.rounds - 1) * cycle_seconds(block) + _busy_s(block)


@formula(
    subject=_SUBJECT,
    title="Seconds from one letter to the next",
    equation="change where it is given, else cycle − last round",
    inputs={
        "block": "change = time to move to the next exercise, s; cycle, last round = of the letter "
        "that ends, s",
    },
    output="s",
    source=_NO_SOURCE,
    evidence=Evidence.ARITHMETIC,
)
def gap_seconds(block: Block) -> float:
    """Seconds between the block's last set and the next block.

    >>> gap_seconds(Block(4, (30.0,), rest_s=90)), gap_seconds(Block(4, (30.0,), 90, change_s=60))
    (90.0, 60)
    """
    if block.change_s is not None:
        return block.change_s
    return cycle_seconds(block) - _busy_s(block)


@dataclass(frozen=True, slots=True)
class SessionTime:
    """Minutes of a session by part.

    Attributes:
        training_min: first set to last set.
        overhead_min: arriving, setting up, putting away, as the coach states it.
        warm_up_min: warm-up, as the coach states it.
    """

    training_min: float
    overhead_min: float
    warm_up_min: float

    @property
    def total_min(self) -> float:
        """All parts together."""
        return self.training_min + self.overhead_min + self.warm_up_min


@formula(
    subject=_SUBJECT,
    title="Minutes of a session",
    equation="minutes = overhead + warm-up + (Σ letters + Σ changes between letters) ÷ 60",
    inputs={
        "blocks": "letters, changes between letters = seconds of each, in order, s",
        "overhead_min": "overhead = arriving, putting away, cooling down, min",
        "warm_up_min": "warm-up = as the coach plans it, min",
    },
    output="minutes, whole and by part",
    ranges={"overhead_min": (0, 120), "warm_up_min": (0, 120)},
    source=_NO_SOURCE,
    evidence=Evidence.ARITHMETIC,
    error=_ERROR,
)
def session_time(
    blocks: Iterable[Block], overhead_min: float = OVERHEAD_MIN, warm_up_min: float = 0.0
) -> SessionTime:
    """Minutes of a session, without a rest after its last set; blocks of 0 rounds are skipped.

    >>> session_time([Block(4, (30.0,), rest_s=120)] * 6, overhead_min=10)
    SessionTime(training_min=58.0, overhead_min=10, warm_up_min=0.0)
    """
    done = [block for block in blocks if block.rounds]
    seconds = sum(block_seconds(block) for block in done)
    seconds += sum(gap_seconds(block) for block, _ in pairwise(done))
    return SessionTime(seconds / 60, overhead_min, warm_up_min)
