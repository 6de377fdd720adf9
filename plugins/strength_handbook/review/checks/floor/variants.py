"""Does a variant of a session take the time it is made for?"""

from collections.abc import Iterator

from strength_handbook.plan.variants import session_variants
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Finding, Mending, Spot
from strength_handbook.review.words import number


@check(
    "variant-time",
    Family.FLOOR,
    Severity.WARN,
    what="Minutes of a variant against the 'time' it says it is made for, in weeks in which the "
    "whole session takes longer: more than that, or less than a share of it.",
    why="Who has 45 minutes wants a session of 45 minutes, neither one of 55 nor one of 25.",
    rules=("variant-share",),
    source="arithmetic; how short is too short is common practice, no source",
)
def variant_time(this: Check, desk: Desk) -> Iterator[Finding]:
    """Variants that take longer than their time, or far less."""
    share = desk.rule("variant-share") / 100
    for at in desk.sessions:
        written = at.session.session.variants
        for one in session_variants(desk.book, at.program.program, at.session):
            if one.variant.time is None:
                continue
            most, minutes = one.variant.time / 60, round(one.minutes.total)
            if most * share <= minutes <= most:
                continue
            text = f"'{one.variant.when}' takes {minutes} min"
            if minutes > most:
                text += f", its time is {number(most)} min"
                change = Mending("keep fewer sets, or leave out one letter more")
            else:
                least = round(most * share, 1)
                text += (
                    f"; {number(100 * share)} % of its {number(most)} min are {number(least)} min"
                )
                change = Mending("keep more sets, or leave out one letter less")
            spot = Spot(at.wave, (*at.path, "variants", written.index(one.variant)))
            yield this.finds(at, text, spot=spot, change=change)
