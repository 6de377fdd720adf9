"""Thresholds of the checks in `review/checks/volume/`."""

from strength_handbook.model.rule_kind import COMMON, RuleKind

_CLASSICAL = "classical weightlifting table of repetitions per zone (1970s), top of its ranges"
_STEP = "position stand 2009: steps of 2 to 10 % once one or two repetitions more are possible"
_MINIMUM = "review of Iversen and others 2021: at least 4 weekly sets per muscle"

THRESHOLDS: dict[str, RuleKind] = {
    "sets-size": RuleKind(
        10, "sets", "Least hard sets a week for a goal muscle in a wave for size.", 0, 60,
        "position stand 2026: about 10 weekly sets per muscle for size",
    ),
    "sets-strength": RuleKind(
        4, "sets", "Least hard sets a week for a goal muscle in other waves.", 0, 60, _MINIMUM
    ),
    "sets-keep": RuleKind(
        2, "sets", "Least hard sets a week for a goal muscle in a wave for speed or endurance.",
        0, 60,
    ),
    "sets-most": RuleKind(25, "sets", "Most hard sets a week for any muscle.", 1, 100),
    "sets-jump": RuleKind(
        4, "sets", "Hard sets that a muscle may gain from one training week to the next.", 0, 60
    ),
    "sets-jump-share": RuleKind(30, "%", "The same as a share; both must be passed.", 0, 500),
    "sets-jump-first": RuleKind(
        60, "%", "The same share after week 1, which is small on purpose.", 0, 500
    ),
    "start-weeks-off": RuleKind(
        2, "weeks", "So many weeks without training ask for a small first week.", 1, 52
    ),
    "start-share": RuleKind(
        50, "%", "Most that the first week may have of its wave's largest week.", 1, 100,
        "joint consensus on transition periods 2019: half in the first week back; from memory",
    ),
    "start-lowering": RuleKind(
        30, "s", "Lowering a side a week from which a new exercise is held to that share.", 0, 600
    ),
    "start-lowering-most": RuleKind(
        60, "s", "Most lowering a side in the first week of an exercise of heavy lowering.", 1, 600
    ),
    "volume-jump-warn": RuleKind(
        15, "%", "Rise of a pattern's tonnage, beyond one set more, that needs a reason.", 0, 500
    ),
    "volume-jump-most": RuleKind(
        30, "%", "Rise of a pattern's tonnage, beyond one set more, that is too much.", 0, 500
    ),
    "load-step-lower": RuleKind(
        10, "%", "Largest step of load at the same repetitions, legs and back.", 0.5, 100, _STEP
    ),
    "load-step-upper": RuleKind(
        5, "%", "Largest step of load at the same repetitions, arms and shoulders.", 0.5, 100,
        "the smaller half of the 2 to 10 % of the position stand 2009; the split is " + COMMON,
    ),
    "push-pull-least": RuleKind(0.5, "", "Least pushing for one set of pulling.", 0, 10),
    "push-pull-most": RuleKind(1.25, "", "Most pushing for one set of pulling.", 0, 10),
    "knee-hip-least": RuleKind(0.5, "", "Least knee work for one set of hip work.", 0, 10),
    "knee-hip-most": RuleKind(2, "", "Most knee work for one set of hip work.", 0, 10),
    "pattern-weeks": RuleKind(
        3, "weeks", "Training weeks from which a wave should have every pattern.", 1, 60
    ),
    "zone-70": RuleKind(
        30, "reps", "Most repetitions of a lift in a session at 70 to 79 %.", 1, 500,
        "classical weightlifting table: 24 in this zone, 30 in the one below; the larger of them",
    ),
    "zone-80": RuleKind(
        25, "reps", "Most repetitions of a lift in a session at 80 to 89 %.", 1, 500,
        "classical weightlifting table: 20 in this zone; five sets of five are " + COMMON,
    ),
    "zone-90": RuleKind(
        10, "reps", "Most repetitions of a lift in a session from 90 % on.", 1, 500, _CLASSICAL
    ),
    "deload-after": RuleKind(
        6, "weeks", "So many training weeks in a row without a lighter one are too many.", 2, 60,
        "survey of lifters, Rogerson and others 2024: a lighter week every 5.6 weeks on average, "
        "standard deviation 2.3; read about, not read in full",
    ),
    "deload-sets": RuleKind(
        75, "%", "A lighter week has less than this of the wave's usual sets.", 10, 100
    ),
    "label-share": RuleKind(
        1.5, "times", "What a wave is named after, against the mean of the other waves.", 1, 10
    ),
    "deload-reserve": RuleKind(
        2, "reps", "Fewest repetitions left after a set of a lighter week.", 0, 9
    ),
    "tests-from": RuleKind(
        8, "weeks", "A program this long or longer tests what its goals name.", 1, 60
    ),
    "test-lowering": RuleKind(
        5, "s", "Longest lowering in the seven days before a test.", 1, 30
    ),
    "test-volume": RuleKind(
        10, "%", "Most that the sets may rise in the week before a test.", 0, 200
    ),
    "new-skills": RuleKind(3, "skills", "Most new exercises in one session.", 0, 30),
    "new-skills-start": RuleKind(
        8, "skills", "The same in the first week of a program or wave.", 0, 30
    ),
    "new-skills-week": RuleKind(
        12, "skills", "Most new exercises in a whole week, optional sessions left out.", 0, 60
    ),
}  # fmt: skip
