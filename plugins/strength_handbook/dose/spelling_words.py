"""Words of the trade in a dose: those of which nothing is kept, for manner, and for places.

All of it is common practice, no source.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Word:
    """Words in a spelling, of which nothing is kept.

    Attributes:
        pattern: how they look; without groups.
        words: each of them.
    """

    pattern: str
    words: tuple[str, ...]

    @property
    def example(self) -> str:
        """One, for a page."""
        return self.words[0]


def _word(*words: str) -> Word:
    """One of several words, the longest first."""
    several = "|".join(re.escape(one).replace(r"\ ", r"[\s-]*") for one in words)
    return Word(f"(?:{several})", words)


SIDES = (
    "each side", "ea side", "ea. side", "each leg", "each arm", "ea leg", "ea arm", "ea. leg",
    "ea. arm", "per side", "per leg", "per arm", "a side", "a leg", "an arm", "/ side", "/ leg",
    "/ arm", "/ each", "/ ea", "p/s",
    "e/s", "e/l", "e/a", "per L/R", "L/R", "L+R", "L + R", "L & R",
    "left + right", "left and right", "left & right", "each", "ea.", "ea", "ES",
)  # fmt: skip
"""Words for one side after the other, longer ones first."""

MANNERS = (
    "heavy", "heavy-ish", "light", "medium", "moderate", "easy", "hard", "tough", "challenging",
    "strict", "smooth", "crisp", "snappy", "relaxed", "steady", "continuous", "unbroken",
    "full range", "full depth", "full ROM", "good form", "perfect form", "dead stop",
    "touch and go", "strict form", "stick landing", "stick the landing", "stick each landing",
    "step down", "full intent", "increasing load", "increasing weight", "adding weight each set",
    "adding weight", "add weight each set", "heavier each set", "up each set", "dead stop each rep",
    "reset each rep", "reset each", "as far as possible",
    "max intent", "walk back", "mod", "max height", "max ht",
)  # fmt: skip
"""Words for effort and manner that change no number of a dose."""

SPOTS = {
    "the chest": ("on the chest", "on chest", "at the chest", "at chest"),
    "the bottom": ("at the bottom", "at bottom", "in the bottom", "on the bottom", "in the hole",
                   "in hole", "in the stretch", "at the stretch"),
    "the top": ("at the top", "at top", "on top", "up top"),
    "lockout": ("at lockout", "at the lockout", "in lockout"),
    "the knees": ("at the knees", "at the knee", "at knees", "at knee"),
    "below the knees": ("below the knees", "below the knee", "below knee"),
    "above the knees": ("above the knees", "above the knee", "above knee"),
    "the shins": ("at mid-shin", "at mid shin", "at the shins"),
    "just off the floor": ("off the floor", "off floor", "just off the floor"),
    "the box": ("on the box", "on box"),
    "parallel": ("at parallel",),
    "half-way": ("half-way", "halfway", "at half-way", "at halfway", "mid-way"),
}  # fmt: skip
"""Places in a repetition, with their other words."""

WORDS: Mapping[str, Word] = {
    "set": _word("sets", "set"),
    "rep": _word("reps", "rep", "repetitions", "repetition"),
    "side": _word(*SIDES),
    "body": _word("BW", "body weight"),
    "tank": _word("left in the tank", "in the tank", "left", "reps left", "in reserve",
                  "reps in reserve"),
    "bells": _word("kettlebells", "kettlebell", "KBs", "KB", "dumbbells", "dumbbell", "DBs", "DB",
                   "bells", "bell", "hand weights", "hand weight", "weights", "weight",
                   "medicine ball", "med ball", "slam ball", "balls", "ball", "MBs", "MB"),
    "barbell": _word("barbell", "BB", "bar"),
    "plates": _word("plates", "plate"),
    "worn": _word("weighted vest", "weight vest", "vest", "dip belt", "belt", "backpack", "pack"),
    "sled": _word("sled", "sledge"),
    "with": Word(r"(?:with|w/|w(?=\s)|@|at|using|holding)",
                 ("with", "w/", "w", "@", "at", "using", "holding")),
    "along": _word("with", "w/", "w"),
    "between": _word("between", "btwn", "btw", "b/w", "b/t", "in between"),
    "hand": _word("per hand", "each hand", "ea. hand", "ea hand", "/ hand", "a hand"),
    "warm_up": _word("warm ups", "warm up"),
    "colour": _word("red", "green", "blue", "black", "purple", "orange", "yellow", "grey", "silver",
                    "thin", "thinnest", "thick", "light", "medium", "heavy", "mini", "minis"),
    "about": Word(r"(?:about|around|approximately|approx\.?|roughly|circa|ca\.?|~)",
                  ("about", "around", "approximately", "approx.", "roughly", "circa", "ca.", "~")),
    "limit": _word("max reps", "max", "AMRAP", "to a limit", "to the limit", "to limit",
                   "as many as possible", "as many reps as possible", "as many as you can"),
    "few_sets": _word("in as few sets as needed", "in as few sets as possible",
                      "in as many sets as needed", "in as many sets as it takes",
                      "in as few sets as you can", "over as many sets as needed"),
    "each_minute": _word("on the minute", "every minute on the minute", "every minute", "EMOM"),
    "day": _word("run the rack", "deload", "easy week", "light day", "heavy day", "easy day",
                 "hard day", "back-off week", "main lift", "working sets", "work sets",
                 "assistance"),
    "stack": _word("on the stack", "on stack", "on the pin", "on the column", "stack"),
    "weight": _word("weight", "load"),
    "of_both": _word("in total", "total", "combined", "both hands", "for both hands",
                     "between both hands", "in all"),
    "could": Word(r"(?:you\s+could|you\s+can|you'd|you\s+would|they\s+could|they\s+can)",
                  ("you could", "you can", "you'd", "you would", "they could", "they can")),
    "a": Word(r"(?:an?\b|the\b)", ("a", "an", "the")),
    "two": Word(r"2\s*[x×*]", ("2x", "2 ×", "2*")),
    "pair": _word("a pair of", "pair of", "two", "double"),
    "per_bell": _word("per bell", "per kettlebell", "per KB", "per dumbbell", "per DB", "each bell",
                      "each dumbbell", "/ bell", "/ dumbbell", "/ DB", "/ KB", "a bell",
                      "in each hand", "in either hand"),
    "helped": _word("assistance", "assisted", "assist", "asst.", "asst", "of help", "help"),
    "of_it": _word("of it", "of that", "of the top set", "of the top single", "of today's best",
                   "of today's top"),
    "todays_best": _word("today's best single", "best single of the day", "max single",
                         "daily max", "1RM of the day", "daily 1RM"),
    "sec": _word("seconds", "second", "secs", "sec.", "sec", "s", '"', "-count", "count", "ct"),
    "down": _word("down", "eccentric", "ecc", "lowering", "descent", "negative", "on the way down",
                  "lower"),
    "up_fast": _word("up fast", "fast up", "explosive up", "explode up", "explosively up",
                     "explosive"),
    "still": _word("pause", "still", "stop"),
    "l": _word("left", "L"),
    "r": _word("right", "R"),
    "squeeze": _word("squeeze", "squeezes"),
    "single": _word("singles", "single"),
    "double": _word("doubles", "double"),
    "triple": _word("triples", "triple"),
    "best": _word("1RM", "1 RM", "1 rep max", "one rep max", "best single", "max"),
    "rm": _word("RM", "rep max", "-rep max", "repetition maximum"),
    "work_up": _word("work up to", "working up to", "work to", "build up to", "build to",
                     "building to", "ramp up to", "climb to", "go up to"),
    "find": _word("find", "find your", "find a", "find a new", "find today's", "new", "retest",
                  "test your", "test for a", "test a", "test for", "test day:", "test:", "test"),
    "dash": Word(r"(?<=\s)[-–—](?=\s)", ("-", "–", "—")),
    "minus": Word(r"[-–−](?=\d)", ("-", "–", "−")),
    "hold": _word("hold", "holds", "ISO", "isometric"),
    "x": Word(r"[x×*]", ("x", "×", "*")),
}  # fmt: skip
"""By the name that stands in braces in a spelling."""
