"""Does a house rule that differs from the handbook's own value say why?"""

from collections.abc import Iterator

from strength_handbook.model.house_rules import RULES
from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Finding, Mending, Spot
from strength_handbook.review.words import number


@check(
    "rule-reason",
    Family.WORDS,
    Severity.WARN,
    what="House rules with a value other than the handbook's own, against their reason.",
    why="Whoever takes over must know whether a limit was meant or mistyped.",
)
def rule_reason(this: Check, desk: Desk) -> Iterator[Finding]:
    """Changed rules without a reason."""
    rules = desk.written.rules
    if rules is None:
        return
    for slug, rule in rules.model.rules.items():
        kind, value = RULES[slug], desk.rule(slug)
        if value != kind.default and not rule.why:
            unit = f" {kind.unit}" if kind.unit else ""
            text = f"{number(value)}{unit} instead of {number(kind.default)}{unit}, and no 'why'"
            change = Mending("write 'why:' and the reason in one sentence, or take the rule out")
            spot = Spot(rules.source, ("rules", slug), key=True)
            yield this.finds_in(spot, f"house rule {slug}", text, change=change)
