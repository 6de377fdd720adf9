"""Thresholds of the checks in `review/checks/words/`."""

from strength_handbook.model.rule_kind import RuleKind

_FOCUS = "review of attention and strength 2021: more force with the mind on an object"
_GRADE = "Kincaid and others 1975; grade 8 is reached at about 14 years of age"

THRESHOLDS: dict[str, RuleKind] = {
    "cue-words": RuleKind(8, "words", "Most words of a cue.", 2, 30),
    "fewest-cues": RuleKind(3, "cues", "Fewest cues of an exercise.", 0, 10),
    "most-cues": RuleKind(6, "cues", "Most cues of an exercise.", 1, 36),
    "outside-share": RuleKind(
        60, "%", "Least share of cues that name a thing or a sound, not a part of the body.",
        0, 100, _FOCUS,
    ),
    "sentence-words": RuleKind(20, "words", "Most words of a sentence.", 5, 60),
    "reading-grade": RuleKind(
        8, "", "Highest school grade that an exercise's text may ask for.", 1, 20, _GRADE
    ),
}  # fmt: skip
