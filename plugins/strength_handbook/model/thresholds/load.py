"""Thresholds of the checks in `review/checks/load/`."""

from strength_handbook.model.rule_kind import RuleKind

_USUAL = "usual working range among coaches; common practice, no source"
_SPEED = "position stand 2009: up to 60 % for power; that of 2026, from a summary: 30 to 70 %"

THRESHOLDS: dict[str, RuleKind] = {
    "reps-over": RuleKind(
        1, "reps", "So many repetitions more than most people can do are let through.", 0, 10
    ),
    "reps-far-over": RuleKind(
        1.5, "", "From so many times the repetitions most people can do on, a set can't be done.",
        1, 5,
    ),
    "light-share": RuleKind(
        40, "%", "A main lift that asks for no more of the possible repetitions is light.", 0, 90
    ),
    "set-time": RuleKind(
        60, "s", "Longest set of a main lift outside waves for size or endurance.", 10, 600
    ),
    "very-slow-lowering": RuleKind(5, "s", "A lowering from here on counts as very slow.", 2, 30),
    "very-slow-reps": RuleKind(
        6, "reps", "Most repetitions of a main lift with a very slow lowering.", 1, 30
    ),
    "plates-off": RuleKind(
        2.5, "%", "How far plates may miss a planned percentage, in points of the tested value.",
        0, 20,
    ),
    "plates-off-light": RuleKind(
        5, "%", "The same for tested values below the light one.", 0, 30
    ),
    "bands-off": RuleKind(
        5, "%", "How far a pair of bands may miss its share at the top, in points of the best.",
        0, 30,
    ),
    "light-base": RuleKind(40, "kg", "A tested value below this is light.", 0, 200),
    "same-load-weeks": RuleKind(
        2, "weeks", "Most weeks in a row whose plan rises while the load stays the same.", 1, 20
    ),
    "top-share-least": RuleKind(
        15, "%", "Least share of bands or chains in the load at the top.", 0, 60, _USUAL
    ),
    "top-share-most": RuleKind(
        35, "%", "Largest share of bands or chains in the load at the top.", 5, 90, _USUAL
    ),
    "speed-load-least": RuleKind(
        30, "%", "Least load of a speed set at the top, bands and chains included.", 0, 100, _SPEED
    ),
    "speed-load-most": RuleKind(
        80, "%", "Largest load of a speed set at the top, bands and chains included.", 10, 120,
        f"{_SPEED}; the rest is for what hangs on the bar",
    ),
    "speed-reps": RuleKind(3, "reps", "Most repetitions of a speed set on an interval.", 1, 10),
    "speed-every-least": RuleKind(30, "s", "Shortest interval of speed sets.", 5, 300),
    "speed-every-most": RuleKind(120, "s", "Longest interval of speed sets.", 30, 900),
    "slip-sets": RuleKind(
        20, "sets", "More sets of one exercise than this are taken for a typing error.", 10, 50
    ),
    "slip-reps": RuleKind(
        60, "reps", "More repetitions in a set than this are taken for a typing error.", 30, 200
    ),
    "slip-times": RuleKind(
        2.5, "times", "So many times the sets or repetitions of the weeks on both sides look like "
        "a typing error.", 1.5, 10,
    ),
    "slip-load": RuleKind(
        20, "%", "A percentage this far from those of the weeks on both sides looks like a typing "
        "error.", 5, 100,
    ),
    "reach-off": RuleKind(
        20, "%", "How far the lightest or heaviest load there is may miss a lifter's plan.", 0, 100
    ),
    "limit-sessions": RuleKind(
        1, "sessions", "Most sessions of a week with a main lift to the limit.", 0, 14
    ),
    "limit-weeks": RuleKind(
        1, "weeks", "Most weeks in a row with a main lift to the limit.", 0, 60
    ),
    "carry-step": RuleKind(
        30, "%", "Largest step of a carry's share of body mass from one training week to the next; "
        "five points more are always allowed.", 1, 200,
    ),
    "carry-most": RuleKind(
        50, "%", "Largest share of body mass to carry in one hand.", 5, 200
    ),
    "hold-most": RuleKind(
        90, "s", "Longest hold; beyond it more load or a harder position trains more.", 10, 600
    ),
    "hold-effort": RuleKind(
        9, "RPE", "Highest effort of a hold that counts as long.", 5, 10
    ),
    "lowered-after": RuleKind(
        80, "%", "Load of a lift in an earlier week, before more than the best is only lowered.",
        0, 120,
    ),
    "rule-step-lower": RuleKind(
        10, "%", "Largest step of a rule for going on, of today's load, legs and back.", 0.5, 100
    ),
    "rule-step-upper": RuleKind(
        7.5, "%", "Largest step of a rule for going on, of today's load, arms and shoulders.",
        0.5, 100,
    ),
    "height-step": RuleKind(
        10, "cm", "Largest rise of a box or hurdle from one training week to the next.", 1, 60
    ),
    "rule-steps": RuleKind(
        2, "", "Most steps of a slot's own rule from one training week to the next.", 1, 20
    ),
    "variant-reserve": RuleKind(
        2, "reps", "Fewest repetitions left in a variant that keeps no ramp and no test.",
        0, 6,
    ),
    "open-sets": RuleKind(1, "sets", "Most open sets in one session.", 0, 20),
}  # fmt: skip
