"""Thresholds of the checks in `review/checks/order/`."""

from strength_handbook.model.rule_kind import RuleKind

_POTENTIATION = (
    "meta-analysis of 141 effects, Wilson and others 2013: rest of 3 to 10 min helped, more than "
    "10 min did not; jumps, Dobbs and others 2019: less than 3 min made them worse"
)
_PAIRS = "one ten-week trial: less strength gained in a lift that was done in supersets"

THRESHOLDS: dict[str, RuleKind] = {
    "tired-reserve": RuleKind(
        2, "reps", "A set that leaves no more than this tires its muscles for what follows.", 0, 9
    ),
    "tired-hold": RuleKind(45, "s", "A hold this long tires as well, unless it is easy.", 10, 600),
    "jump-late-sets": RuleKind(
        6, "sets", "Most sets for the same muscles in front of a jump.", 0, 50
    ),
    "main-place": RuleKind(
        2, "", "Under the first so many letters a main lift may follow anything.", 1, 26
    ),
    "heavy-lift": RuleKind(80, "%", "A lift counts as heavy from here on.", 50, 100),
    "firm-lift": RuleKind(
        75, "%", "From here on a lift needs a fresh trunk, and its muscles fresh.",
        50, 100,
    ),
    "grip-slots": RuleKind(
        2, "", "Most exercises in one session that end when the grip opens.", 0, 20
    ),
    "stretch-most": RuleKind(
        60, "s", "Longest still stretch of one muscle before speed or heavy work.", 0, 600,
        "textbook, Haff and Triplett 2016, from memory: longer ones cost a little force",
    ),
    "pair-rest": RuleKind(
        60, "s", "Least rest inside a pair, next to a heavy main lift.", 0, 600, _PAIRS
    ),
    "jump-pause-least": RuleKind(
        180, "s", "Least pause from a heavy set to the jump that is paired with it.", 0, 1800,
        _POTENTIATION,
    ),
    "jump-pause-most": RuleKind(
        720, "s", "Longest pause from a heavy set to the jump that is paired with it.", 0, 3600,
        _POTENTIATION,
    ),
}  # fmt: skip
