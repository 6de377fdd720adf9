"""Thresholds of the checks in `review/checks/safety/`."""

from strength_handbook.model.rule_kind import RuleKind

_OLDER = "position statement on older adults 2019: 70 to 85 % of the best single"

THRESHOLDS: dict[str, RuleKind] = {
    "near-max": RuleKind(
        90, "%", "Above this share of the best single: with the coach, and with spotters.", 50, 150
    ),
    "brace-from": RuleKind(
        80, "%", "From this share of the best single on, big lifts tempt to hold the breath.",
        40, 120,
    ),
    "hard-conditioning": RuleKind(
        7, "RPE", "Rowing, running and the like from this effort on needs its caution.", 3, 10,
        "vigorous is 7 to 8 of 10, Physical Activity Guidelines for Americans 2018",
    ),
    "long-hold": RuleKind(10, "s", "A hold longer than this counts as long.", 1, 600),
    "back-plate-left": RuleKind(
        2, "reps", "Fewest good repetitions left where a plate lies on the back.", 1, 6
    ),
    "young-test-reps": RuleKind(
        5, "reps", "Fewest repetitions of a test where under-18s are in the group.", 1, 10
    ),
    "young-percent": RuleKind(
        85, "%", "Highest share of the best single where under-18s are in the group.", 40, 150
    ),
    "older-test-reps": RuleKind(
        5, "reps", "Fewest repetitions of a test where over-65s are in the group.", 1, 10
    ),
    "older-percent": RuleKind(
        85, "%", "Highest share of the best single where over-65s are in the group.", 40, 150,
        _OLDER,
    ),
    "older-warm-up": RuleKind(
        600, "s", "Shortest warm-up where over-65s are in the group.", 0, 3600
    ),
}  # fmt: skip
