"""Thresholds of the checks in `review/checks/complete/`."""

from strength_handbook.model.rule_kind import RuleKind

THRESHOLDS: dict[str, RuleKind] = {
    "accept-longest": RuleKind(
        53, "weeks", "An accepted finding is looked at again after so many weeks at the latest.",
        1, 260,
    ),
    "base-age": RuleKind(
        16, "weeks", "A tested value older than this on the day it is used is old.", 1, 104
    ),
    "body-mass-least": RuleKind(
        35, "kg", "A lifter's body mass below this is taken for a slip of the keyboard.", 20, 80
    ),
    "body-mass-most": RuleKind(
        200, "kg", "A lifter's body mass above this is taken for a slip of the keyboard.", 80, 300
    ),
    "base-multiple": RuleKind(
        3, "", "A tested value above so many times the body mass is looked at again.", 1, 6
    ),
    "system-least": RuleKind(
        50, "%", "Least total of a body-weight lift, as a share of the body that it moves.", 0, 100
    ),
}  # fmt: skip
