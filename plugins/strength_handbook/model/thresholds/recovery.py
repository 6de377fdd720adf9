"""Thresholds of the checks in `review/checks/recovery*.py`."""

from strength_handbook.model.rule_kind import RuleKind

_REST = "position stand 2009: heavy work 3 to 5 min, lighter 1 to 2 min; the lower end of it"

THRESHOLDS: dict[str, RuleKind] = {
    "rest-heavy": RuleKind(
        150, "s", "Least rest between sets of one lift from 85 % on.", 0, 600, _REST
    ),
    "rest-medium": RuleKind(
        120, "s", "Least rest between sets of one lift from 75 % on.", 0, 600, _REST
    ),
    "rest-speed": RuleKind(40, "s", "Least rest after a set lifted as fast as possible.", 0, 600),
}  # fmt: skip
