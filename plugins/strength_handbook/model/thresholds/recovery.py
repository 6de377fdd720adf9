"""Thresholds of the checks in `review/checks/recovery/`."""

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
    "joint-hours": RuleKind(
        48, "h", "Least hours between two days that load the same joint highly.", 0, 168
    ),
    "next-day-sets": RuleKind(
        2, "sets", "Hard sets that a muscle may have on each of two days in a row.", 0, 60
    ),
    "slow-muscle": RuleKind(
        1, "exercises", "Most exercises of a session that lower one muscle slowly, or only lower "
        "it.", 0, 20,
    ),
    "sore-hours": RuleKind(
        72, "h", "Least hours from slow lowering to speed, a test or an event.",
        0, 240,
        "soreness and loss of force last for days, most after 1 to 3; Suchomel and others 2019, "
        "read in abstract",
    ),
}  # fmt: skip
