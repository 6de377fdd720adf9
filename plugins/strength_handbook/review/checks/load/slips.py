"""Is a dose a slip of the keyboard?"""

from collections.abc import Iterator

from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.checks.load.reps import is_far_over, load_text
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.review.finding import Finding, Mending
from strength_handbook.review.slips import RULES, Slip, slips
from strength_handbook.review.weeks import is_derived
from strength_handbook.review.words import listed, number


@check(
    "typing-slip",
    Family.LOAD,
    Severity.WARN,
    what="Sets and repetitions against the most that anybody writes, an error above it; and a "
    "week's sets, repetitions or percentage against those of the training weeks on both sides of "
    "it, an error where nobody could do them. Other checks leave such a dose out.",
    why="A digit too many is a wrong load and a wrong evening for everybody who reads the page.",
    rules=(*RULES, "reps-far-over"),
)
def typing_slip(this: Check, desk: Desk) -> Iterator[Finding]:
    """Numbers that nobody meant."""
    for at, slip in slips(desk).items():
        wrong = slip.most is not None or is_far_over(desk, at)
        yield this.finds(
            at, _told(slip), spot=at.spot_of(slip.part), change=_meant(at, slip),
            severity=Severity.ERROR if wrong else Severity.WARN,
        )  # fmt: skip


def _told(slip: Slip) -> str:
    shown = _shown(slip, slip.value)
    if slip.most is not None:
        return f"a typing error? {shown}, and nobody writes more than {number(slip.most)}"
    beside = [
        f"{_shown(slip, value, unit=False)} in week {week}"
        for value, week in zip(slip.neighbours, slip.weeks, strict=True)
    ]
    return f"a typing error? {shown} between {listed(beside)}"


def _shown(slip: Slip, value: float, *, unit: bool = True) -> str:
    if slip.part == "load":
        return f"{number(value)} %"
    return f"{number(value)} {slip.part}" if unit else number(value)


def _meant(at: SlotAt, slip: Slip) -> Mending:
    """The number that was probably meant; only words where nothing shows it."""
    words = Mending(f"write how many {slip.part} are meant")
    if is_derived(at) or not slip.neighbours:
        return words
    if slip.part == "load":
        text = load_text(at.slot.dose, _percent_meant(slip))
        return Mending(f"write '{text}'", at.rewritten(load=text))
    nearest = min(
        zip(slip.neighbours, slip.weeks, strict=True), key=lambda one: abs(one[1] - at.number)
    )[0]
    # A key hit twice, or two keys at once: the digit that another week has too.
    digits = [float(digit) for digit in number(slip.value) if digit.isdigit()]
    meant = round(next((one for one in digits if one in slip.neighbours), nearest))
    if meant < 1:
        return words
    if slip.part == "sets":
        return Mending(f"write '{meant} sets'", at.rewritten(sets=meant))
    return Mending(f"write '{meant} reps'", at.rewritten(reps=meant))


def _percent_meant(slip: Slip) -> float:
    """The digits the other way round where that fits between the weeks beside it."""
    low, high = min(slip.neighbours), max(slip.neighbours)
    turned = number(slip.value)[::-1]
    if turned.isdigit() and 0.95 * low <= float(turned) <= 1.05 * high:
        return float(turned)
    return round(2 * (low + high) / 2) / 2
