"""Is there one fix for each fault?"""

import re
from collections.abc import Iterator

from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Finding, Mending

_KINDS = {
    "load": re.compile(
        r"\bper cent\b|\d ?%|\blighter\b|\bheavier\b|\bless weight\b|\bmore weight\b|\d ?kg\b"
        r"|\b(?:tenth|fifth|quarter|half) (?:off|less)\b|\b(?:plates?|pack) off\b",
        re.IGNORECASE,
    ),
    "height": re.compile(
        r"\b(?:high|low|higher|lower) (?:handles?|pins?|box(?:es)?|bench|step|blocks?|hooks?)\b"
        r"|\b\d+ cm box\b|\bfrom (?:the )?(?:blocks|pins)\b|\bhalf range\b",
        re.IGNORECASE,
    ),
    "tempo": re.compile(
        r"\bpause\b|\bslower\b|\bslow(?:ly)? (?:down|lowering)\b|\bcount (?:of|to|the seconds)\b",
        re.IGNORECASE,
    ),
    "stance": re.compile(
        r"\b(?:wider|narrower|split) (?:stance|grip)\b|\b(?:stance|feet|grip|hands) "
        r"(?:wider|narrower|closer)\b",
        re.IGNORECASE,
    ),
}  # fmt: skip
"""What a fix may change, with the words that say so."""
_DO = (
    r"(?:use|take|move|lower|raise|put|stand|pause|hold|change|cut|slow|widen|narrow|reduce|add|go|"
    r"switch|swap|turn|lighten|drop|stop|try|think|keep|push|pull|squeeze|rest|start)"
)
_OR_ELSE = re.compile(rf"(?:\bor|;|\bthen|\. then) (?:else )?{_DO}\b", re.IGNORECASE)


@check(
    "fix-double",
    Family.WORDS,
    Severity.WARN,
    what="Changes that each fix asks for: of load, height, tempo or stance, or one change or "
    "another.",
    why="With two changes at once nobody learns which of them helped.",
)
def fix_double(this: Check, desk: Desk) -> Iterator[Finding]:
    """Faults with more than one fix."""
    for name, exercise in desk.book.exercises.items():
        for index, fault in enumerate(exercise.faults):
            asked = fixes_in(fault.fix)
            if len(asked) > 1:
                text = f"the fix '{fault.fix}' asks for more than one change: {' and '.join(asked)}"
                change = Mending("keep the one that you would say first")
                yield this.finds_in(
                    desk.exercise_spot(name, "faults", index, "fix"),
                    f"exercise {name} fault {index + 1}", text, change=change,
                )  # fmt: skip


def fixes_in(text: str) -> list[str]:
    """What a fix changes; several where it asks for several things.

    >>> fixes_in("High handles, and ten per cent less.")
    ['load', 'height']
    >>> fixes_in("Change to the 20 cm box."), fixes_in("Stand wider or take a smaller step.")
    (['height'], ['one thing', 'another'])
    """
    kinds = [kind for kind, pattern in _KINDS.items() if pattern.search(text)]
    if len(kinds) < 2 and _OR_ELSE.search(text):
        return ["one thing", "another"]
    return kinds
