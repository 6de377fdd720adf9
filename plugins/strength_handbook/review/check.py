"""What a check is: a small function with its name, its limits, its reason and its source."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from strength_handbook.model.rule_kind import COMMON
from strength_handbook.reading.problem import Severity
from strength_handbook.review.desk import Desk, WeekAt
from strength_handbook.review.finding import At, Finding, Mending, Spot


class Family(StrEnum):
    """Families of checks, in the order in which they are reported."""

    COMPLETE = "Complete and consistent"
    LOAD = "Load"
    ORDER = "Order"
    VOLUME = "Volume"
    RECOVERY = "Rest and recovery"
    FLOOR = "Floor and equipment"
    SAFETY = "Safety"
    WORDS = "Words"


Run = Callable[["Check", Desk], Iterator[Finding]]


@dataclass(frozen=True)
class Check:
    """One check.

    Attributes:
        slug: its name in messages and in `accepted`, in kebab-case.
        family: where it belongs.
        severity: how much it matters as a rule; a check may give a finding another one.
        what: what is computed and held against which limit, in one or two sentences.
        why: why it matters, in one sentence.
        rules: the house rules it reads.
        source: where the limits come from.
        run: gives its findings.
    """

    slug: str
    family: Family
    severity: Severity
    what: str
    why: str
    rules: tuple[str, ...]
    source: str
    run: Run

    def finds(
        self,
        where: WeekAt,
        text: str,
        *,
        spot: Spot | None = None,
        at: At | None = None,
        change: Mending | None = None,
        severity: Severity | None = None,
    ) -> Finding:
        """A finding at a slot, session or week, pointing at it unless another spot is given."""
        return Finding(
            self.slug, severity or self.severity, spot or where.spot, at or where.at, text, change,
            program=where.program.id,
        )  # fmt: skip

    def finds_in(
        self,
        spot: Spot,
        what: str,
        text: str,
        *,
        change: Mending | None = None,
        severity: Severity | None = None,
        program: str = "",
    ) -> Finding:
        """A finding about something that is in no week: an exercise, the room, a program."""
        return Finding(
            self.slug, severity or self.severity, spot, At(what), text, change, program=program
        )


def check(
    slug: str,
    family: Family,
    severity: Severity,
    *,
    what: str,
    why: str,
    rules: tuple[str, ...] = (),
    source: str = COMMON,
) -> Callable[[Run], Check]:
    """Make a check of a function; the catalogue finds it in its module by itself."""
    return lambda run: Check(slug, family, severity, what, why, rules, source, run)
