"""The table of all keys of a dose, and what reading needs of it."""

import re
from collections.abc import Mapping
from typing import Any

from strength_handbook.dose import (
    amount,
    best_of_day,
    by_clock,
    carry,
    cluster,
    deload,
    effort,
    going,
    load,
    manner,
    resistance,
    series,
    still,
    strip,
)
from strength_handbook.dose.clause import ANOTHER, Clause, Handler
from strength_handbook.dose.key import Because, Key, Lesson, Method
from strength_handbook.dose.line_words import END
from strength_handbook.model.dose import Dose
from strength_handbook.model.dose_part import WORK_FIELDS

_MODULES = (
    amount, best_of_day, by_clock, carry, cluster, deload, effort, going, load, manner, resistance,
    series, still, strip,
)  # fmt: skip
"""Where the entries stand."""

_ORDER = (
    "note", "deload_of", "keep_sets", "keep_load", "keep_hold", "test", "top", "sets", "reps",
    "hold", "time", "distance", "cluster", "strip", "series", "cap", "each_side", "load",
    "training_max", "bands", "chains", "assist", "team", "height", "settings", "density",
    "last_set", "tempo", "rir", "rpe", "rate", "talk", "rest", "every", "position", "push",
    "pause", "return_by", "range_", "breathe", "intent", "remark",
)  # fmt: skip
"""Keys that stand at the same place are printed in this order, and others behind them."""


def _place(key: Key[Any]) -> int:
    return _ORDER.index(key.field) if key.field in _ORDER else len(_ORDER)


KEYS: tuple[Key[Any], ...] = tuple(
    sorted((one for module in _MODULES for one in module.KEYS), key=_place)
)
"""Every key."""

_READ = [key.read for key in KEYS if isinstance(key.read, Clause)]

BEGINS: tuple[str, ...] = tuple(word for clause in _READ for word in clause.advice)
"""Words that begin a clause."""

ADVICE: Mapping[str, str] = {
    word.lower(): text
    for clause in _READ
    for word, text in {**clause.advice, **clause.also}.items()
}
"""What to write after words that are known but not followed, or not preceded, by what they need."""

CLAUSES: tuple[tuple[re.Pattern[str], Handler], ...] = tuple(
    (re.compile(pattern.replace(ANOTHER, "|".join(BEGINS)) + END, re.IGNORECASE), handler)
    for clause in _READ
    for pattern, handler in clause.patterns
)
"""Each pattern, and what makes values of its groups."""

IN_PARTS = frozenset(
    key.field for key in KEYS if isinstance(key.read, Clause) and key.read.in_parts
)
"""Keys that several clauses fill."""


def method_of(dose: Dose) -> Method:
    """How the sets are done: a test, a ramp or a clock decides before what one set is."""
    part, several = dose.part, sorted(KEYS, key=lambda key: key.field in WORK_FIELDS)
    found = ((key.method, key.value(part)) for key in several)
    return next(method(value, dose) for method, value in found if method and value is not None)


def lessons_of(dose: Dose) -> list[Lesson]:
    """How a dose is done, as far as it must be taught: its method, then what is beside it."""
    part = dose.part
    found: list[Lesson | Because] = [method_of(dose).lesson]
    for key in KEYS:
        lesson = key.use.lesson
        if isinstance(lesson, Lesson) and (
            lesson.when(dose) if lesson.when else key.value(part) is not None
        ):
            found.append(lesson)
    return [one for one in found if isinstance(one, Lesson)]
