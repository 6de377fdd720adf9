"""Thresholds of the checks in `review/checks/floor/`."""

from strength_handbook.model.rule_kind import RuleKind

THRESHOLDS: dict[str, RuleKind] = {
    "cap-share": RuleKind(
        95, "%", "A session that takes more of its time cap than this is too near to it.", 50, 100
    ),
    "lane-width": RuleKind(
        1, "m", "Width that one walker or sled needs on a lane; as many as fit go abreast.", 0.5, 10
    ),
    "lane-turns": RuleKind(
        3, "", "Most turns at the ends of a lane in one carry or drag.", 0, 50
    ),
    "longest-wait": RuleKind(
        6, "min", "Longest wait for a station in a rotation.", 0, 60
    ),
    "variant-share": RuleKind(
        60, "%", "Less than this of the time that a variant is made for is too little.",
        10, 100,
    ),
    "run-out": RuleKind(
        3, "m", "Least free floor beyond the end of a lane for carries and sleds.", 0, 20
    ),
    "strip-margin": RuleKind(
        1.5, "", "Least margin against tipping at every step of stripping a bar in its rack.", 1, 5,
        "statics with the bar 5 cm off-centre; the factor for a yank is common practice, no source",
    ),
}  # fmt: skip
