"""Does a cue ask for what the same page calls a fault?"""

import re
from collections.abc import Iterator

from strength_handbook.reading.problem import Severity
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.checks.words.cues import placed
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Finding, Mending
from strength_handbook.review.texts import words

_TAKEN_BACK = re.compile(
    r"\b(?:don[’']?t|not|never|no|nor|avoid|without|stop|before|until|instead|keep|stay|hold|both|same|together)\b",
    re.IGNORECASE,
)
"""Words that turn the fault round, or that say it of something that stays as it is."""
_SMALL = re.compile(
    r"(?:an?|and|are|as|at|away|by|down|each|from|front|first|for|in|into|is|its?|of|off|on|one|onto|"
    r"or|other|out|over|side|than|that|the|their|them|then|there|this|to|too|two|under|up|way|with|"
    r"your?|while|when|after|against|last|hand|again)"
)
"""Words that say nothing of what is done, and to what."""
_ENDINGS = ("ing", "ed", "es", "s")


@check(
    "cue-fault",
    Family.WORDS,
    Severity.WARN,
    what="Cues that begin with what a fault of the same exercise does, about the same thing, "
    "without a word that takes it back: 'Round your back' beside the fault 'The back rounds'.",
    why="Said aloud in a set, it teaches the fault that the page warns of.",
)
def cue_fault(this: Check, desk: Desk) -> Iterator[Finding]:
    """Cues that ask for a fault."""
    for name, exercise in desk.book.exercises.items():
        for path, cue in placed(exercise.cues):
            for fault in exercise.faults:
                if names_fault(cue, fault.see):
                    text = f"the cue '{cue}' asks for what a fault of this page is: '{fault.see}'"
                    change = Mending("say what it should look like instead")
                    yield this.finds_in(
                        desk.exercise_spot(name, *path), f"exercise {name} cue", text, change=change
                    )
                    break


def names_fault(cue: str, fault: str) -> bool:
    """True where a cue asks for what a fault does.

    The verb with which the cue begins and a thing it names must both stand in the fault.

    >>> names_fault("Round your back at the bottom.", "The back rounds on the way up.")
    True
    >>> names_fault("Keep your back from rounding.", "The back rounds on the way up.")
    False
    >>> names_fault("Push the floor away.", "Hips shoot up before the plates leave the floor.")
    False
    """
    if _TAKEN_BACK.search(cue) or re.search(r"\b(?:not|no|never|without)\b", fault, re.IGNORECASE):
        return False
    said, seen = _stems(cue), set(_stems(fault))
    return bool(said) and said[0] in seen and len(set(said) & seen) > 1


def _stems(text: str) -> list[str]:
    """Words that carry the meaning, without their endings, in order."""
    return [
        _stem(word) for one in words(text) if _SMALL.fullmatch(word := _plain(one)) is None and word
    ]


def _plain(word: str) -> str:
    return re.sub(r"[^a-z]", "", word.lower())


def _stem(word: str) -> str:
    for ending in _ENDINGS:
        if word.endswith(ending) and len(word) - len(ending) > 2:
            return word.removesuffix(ending).removesuffix("e")
    return word.removesuffix("e")
