"""Are the cues short, few, about things, and in step with the tempo?"""

import re
from collections.abc import Iterator

from strength_handbook.model.exercise import Cues
from strength_handbook.reading.problem import Severity
from strength_handbook.reading.source import Path
from strength_handbook.review.check import Check, Family, check
from strength_handbook.review.desk import Desk
from strength_handbook.review.finding import Edit, Finding, Mending
from strength_handbook.review.texts import words
from strength_handbook.review.words import number

_NEGATIVE = re.compile(r"\b(?:don[’']?t|do not|never|not|no|avoid|mustn[’']t)\b", re.IGNORECASE)
_BODY = re.compile(
    r"\b(?:knees?|hips?|backs?|chest|shoulders?|elbows?|glutes?|quads?|hamstrings?|core|abs|spine|"
    r"pelvis|lats?|blades?|thighs?|cal(?:f|ves)|ankles?|heels?|feet|foot|hands?|head|chin|eyes?|"
    r"thumbs?|fingers?|fingertips?|wrists?|arms?|legs?|toes?|ribs?|belly|buttocks?|muscles?|neck|"
    r"forearms?|trunk|torso|shins?|soles?|jaw|tongue)\b",
    re.IGNORECASE,
)
_THING = re.compile(
    r"\b(?:floor|ground|ceiling|roof|walls?|bars?|plates?|handles?|box(?:es)?|bench|mats?|pads?|"
    r"rope|strap|band|bands|chains?|cable|stack|pins?|racks?|bells?|dumbbells?|kettlebells?|bags?|"
    r"ball|towels?|shoes?|shoelaces|laces|shirt|trousers|pockets?|belts?|buckle|collar|pack|door|"
    r"window|clock|seconds|count|words?|sound|noise|silence|silent|quiet|quietly|thump|thud|clank|"
    r"click|tape|chalk|line|marks?|book|bucket|tray|water|partner|sled|turf|frame|yoke|seat|wheel|"
    r"rail|paper|ice|air|hiss|someone|anyone|casualty|horizon|room|street|cellar|train|rocket)\b",
    re.IGNORECASE,
)
_QUICK_DOWN = re.compile(
    r"\b(?:drop|drops|fall|falls|dive|plunge|plummet|crash|slam|let go|fast down|down fast|"
    r"quick(?:ly)? down|down quick(?:ly)?|bounce|rebound)\b",
    re.IGNORECASE,
)
_TAKEN_BACK = re.compile(
    r"\b(?:without|no|not|never|don[’']?t|slow\w*|quiet\w*|silent\w*|silence)\b", re.IGNORECASE
)


def placed(cues: Cues) -> Iterator[tuple[Path, str]]:
    """Each cue with its place in the exercise's file."""
    for part in ("before", "during", "finish"):
        for index, cue in enumerate(getattr(cues, part)):
            yield ("cues", part, index), cue


@check(
    "cue-long",
    Family.WORDS,
    Severity.WARN,
    what="Words of each cue against the most that there may be.",
    why="In the middle of a set nobody can hold more than one short thought.",
    rules=("cue-words",),
)
def cue_long(this: Check, desk: Desk) -> Iterator[Finding]:
    """Cues that are too long."""
    most = round(desk.rule("cue-words"))
    for name, exercise in desk.book.exercises.items():
        for path, cue in placed(exercise.cues):
            count = len(words(cue))
            if count > most:
                text = f"the cue '{cue}' has {count} words; at most {most}"
                change = Mending("say one thing, and begin with its verb: 'Push the floor away.'")
                yield this.finds_in(
                    desk.exercise_spot(name, *path), f"exercise {name} cue", text, change=change
                )


@check(
    "cue-count",
    Family.WORDS,
    Severity.WARN,
    what="Number of cues of an exercise, before, during and after the lift together.",
    why="With too few there is nothing to choose from, and with too many nobody knows which.",
    rules=("fewest-cues", "most-cues"),
)
def cue_count(this: Check, desk: Desk) -> Iterator[Finding]:
    """Exercises with too few or too many cues."""
    least, most = round(desk.rule("fewest-cues")), round(desk.rule("most-cues"))
    for name, exercise in desk.book.exercises.items():
        count = len(exercise.cues.spoken())
        if least <= count <= most:
            continue
        few = count < least
        text = f"{count} cues; {f'at least {least}' if few else f'at most {most}'}"
        words_ = "write a cue for each part: before, during, finish" if few else (
            f"keep the {most} that somebody in the group still needs"
        )  # fmt: skip
        yield this.finds_in(
            desk.exercise_spot(name, "cues"), f"exercise {name}", text, change=Mending(words_)
        )


@check(
    "cue-inside",
    Family.WORDS,
    Severity.NOTE,
    what="Share of cues that do not point at a part of the body alone: they name a thing, a sound "
    "or neither. Prehab is left out, where cues may help to find a muscle.",
    why="People lift more, and learn faster, with the mind on the bar or the floor.",
    rules=("outside-share",),
    source="review of attention and strength 2021 (Grgic, Mikulic and Mikulic); the share is "
    "common practice",
)
def cue_inside(this: Check, desk: Desk) -> Iterator[Finding]:
    """Exercises whose cues are mostly about the body."""
    least = desk.rule("outside-share")
    for name, exercise in desk.book.exercises.items():
        cues = list(placed(exercise.cues))
        if exercise.role == "prehab" or not cues:
            continue
        inside = [(path, cue) for path, cue in cues if is_inside(cue)]
        share = 100 * (len(cues) - len(inside)) / len(cues)
        if share < least:
            text = (
                f"{len(inside)} of {len(cues)} cues are about the body, {number(share)} % are not; "
                f"at least {number(least)} %"
            )
            change = Mending(
                f"name a thing instead of a part of the body in '{inside[0][1]}': bar, floor, wall"
            )
            yield this.finds_in(
                desk.exercise_spot(name, *inside[0][0]), f"exercise {name}", text, change=change
            )


@check(
    "cue-negative",
    Family.WORDS,
    Severity.NOTE,
    what="Cues that say what not to do.",
    why="Somebody who hears 'don't' pictures the fault and has nothing to do instead.",
)
def cue_negative(this: Check, desk: Desk) -> Iterator[Finding]:
    """Cues with a 'don't'."""
    for name, exercise in desk.book.exercises.items():
        for path, cue in placed(exercise.cues):
            match = _NEGATIVE.search(cue)
            if match:
                text = f"the cue '{cue}' says '{match[0]}'"
                change = Mending("say what to do; what must never happen stands under 'stop'")
                yield this.finds_in(
                    desk.exercise_spot(name, *path), f"exercise {name} cue", text, change=change
                )


@check(
    "cue-tempo",
    Family.WORDS,
    Severity.WARN,
    what="Cues that ask for a quick way down, against the slowest lowering of any week.",
    why="A cue that fights the tempo wins, and the slow lowering is gone.",
    rules=("slow-lowering", "fewest-cues"),
)
def cue_tempo(this: Check, desk: Desk) -> Iterator[Finding]:
    """Cues that fight a slow lowering."""
    for name, exercise in desk.book.exercises.items():
        tempos = [
            (use.slot.dose.tempo.lower, use)
            for use in desk.worked.uses.get(name, ())
            if use.slot.dose.tempo is not None
        ]
        if not tempos:
            continue
        lower, use = max(tempos, key=lambda one: one[0])
        if lower < desk.rule("slow-lowering"):
            continue
        for path, cue in placed(exercise.cues):
            match = _QUICK_DOWN.search(cue)
            if match and not _TAKEN_BACK.search(cue):
                text = (
                    f"the cue '{cue}' says '{match[0]}', and week {use.week.week}, "
                    f"{use.session.id} {use.slot.order} lowers for {lower} s"
                )
                yield this.finds_in(
                    desk.exercise_spot(name, *path), f"exercise {name} cue", text,
                    change=_without(desk, name, path, exercise.cues),
                )  # fmt: skip


def _without(desk: Desk, name: str, path: Path, cues: Cues) -> Mending:
    """Take the cue out where enough are left and the coach does not say it aloud."""
    said = "say it as the lowering should look: 'Set it down without a sound.'"
    cue = getattr(cues, str(path[1]))[path[2]]
    if len(cues.spoken()) <= round(desk.rule("fewest-cues")) or cue in cues.voice:
        return Mending(said)
    file = desk.written.exercises[name].source.file
    return Mending(f"take it out, or {said}", (Edit(file, path, remove=True),))


def is_inside(cue: str) -> bool:
    """True for a cue about a part of the body that names no thing and no sound.

    >>> is_inside("Extend your knees."), is_inside("Push the floor away with both feet.")
    (True, False)
    """
    return bool(_BODY.search(cue)) and not _THING.search(cue)
