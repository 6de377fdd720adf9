"""What happens next: rules that turn the last result into the next load, as data."""

import re
from collections.abc import Callable, Mapping
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field, model_validator

from strength_handbook.model.length import length_text
from strength_handbook.model.plain import WHOLE, within
from strength_handbook.model.quantities import (
    Mass,
    MassText,
    Metres,
    Percent,
    Seconds,
    read_duration,
    read_length,
    read_percent,
)
from strength_handbook.model.samples import sample
from strength_handbook.model.shape import Shape, refuse, shown

RuleName = Literal[
    "linear", "two-for-two", "double", "listed", "open-set", "hold", "time", "distance", "reps",
    "sets", "pace", "effort", "speed",
]  # fmt: skip

NEEDS_MASS = ("linear", "two-for-two", "double", "open-set")
"""Rules whose step is a mass."""

_LONGEST_HOLD_STEP_S, _LONGEST_HOLD_S = 60.0, 600.0
"""A hold goes up by no more, and to no more. Common practice, no source."""


class Progress(Shape):
    """How a slot goes on from week to week."""

    rule: RuleName
    """`linear`: a step when all repetitions were done at or under the effort. `two-for-two`: a step
    after two spare repetitions in two sessions. `double`: a step when all sets reach the top of the
    range. `listed`: the weeks say it. `open-set`: by what the open set gave. `hold`, `time`,
    `distance`: longer, then heavier or faster. `reps`, `sets`: more of them. `pace`: faster over
    what paces are counted over. `effort`: the same load closer to the limit. `speed`: only while
    fast."""
    step: MassText | None = None
    """How much heavier."""
    next_load: bool = False
    """In place of `step`: to the next heavier load that the room has, `double next dumbbell`."""
    step_time: Annotated[Seconds, within(read_duration, "1 s", "30 min")] | None = None
    """How much longer."""
    step_distance: Annotated[Metres, within(read_length, "1 m", "5 km")] | None = None
    """How much further."""
    step_reps: Annotated[int, Field(ge=1, le=10), WHOLE] | None = None
    """How many repetitions more in each set."""
    step_sets: Annotated[int, Field(ge=1, le=5), WHOLE] | None = None
    """How many sets, or pieces, more."""
    step_pace: Annotated[Seconds, within(read_duration, "0.1 s", "60 s")] | None = None
    """How many seconds faster."""
    step_percent: Annotated[Percent, within(read_percent, "0.5 %", "10 %")] | None = None
    """How many points more."""
    cap_time: Annotated[Seconds, within(read_duration, "5 s", "4 h")] | None = None
    """The longest; then more load, or faster."""
    cap_distance: Annotated[Metres, within(read_length, "5 m", "100 km")] | None = None
    """The furthest; then more load, or faster."""
    cap_reps: Annotated[int, Field(ge=1, le=100), WHOLE] | None = None
    """The most repetitions; then more load."""
    cap_sets: Annotated[int, Field(ge=1, le=30), WHOLE] | None = None
    """The most sets; then each harder."""
    misses: Annotated[int, Field(ge=1, le=5), WHOLE] = 2
    """Failed sessions in a row after which the load goes back by a tenth."""

    @model_validator(mode="after")
    def _has_its_step(self) -> "Progress":
        wanted = {
            **dict.fromkeys(NEEDS_MASS, "step"),
            "hold": "step_time",
            "time": "step_time",
            "distance": "step_distance",
            "reps": "step_reps",
            "sets": "step_sets",
            "pace": "step_pace",
            "speed": "step_percent",
        }.get(self.rule)
        if self.next_load and (self.step is not None or self.rule not in _BY_NEXT):
            raise refuse(
                "pair",
                "'next-load' stands in place of 'step', in the rules 'linear', 'two-for-two' and "
                "'double'",
            )
        if wanted is not None and getattr(self, wanted) is None and not self.next_load:
            key = wanted.replace("_", "-")
            example = {
                "step": "2.5 kg", "step-time": "5 s", "step-distance": "10 m",
                "step-percent": "2 %", "step-reps": "1", "step-sets": "1", "step-pace": "1 s",
            }[key]  # fmt: skip
            raise refuse(
                "pair", f"the rule '{self.rule}' needs '{key}', such as '{sample(example)}'"
            )
        long = (self.step_time or 0) > _LONGEST_HOLD_STEP_S
        if self.rule == "hold" and (long or (self.cap_time or 0) > _LONGEST_HOLD_S):
            text = "a hold goes up by 60 s at most, and to 10 min; for work by the clock write "
            raise refuse("range", f"{text}'time +2 min to 40 min'")
        return self


_BY_NEXT = ("linear", "two-for-two", "double")
_NEXT = ("rule", "next-load")
_ONE = (
    r"(?:heavier\s+)?"
    r"(?:load|one|size|step|pair|weight|dumbbell|kettlebell|bell|bag|plate|pin|band)s?"
)
_TIME = r"(\d\S*\s*(?:s|min|h)|\d+:\d\d)"
_FAR = r"(\d\S*\s*(?:mi?|km|ft|yd))"

_FORMS: tuple[tuple[str, tuple[str, ...]], ...] = (
    (r"(linear|two-for-two|double|open-set)\s+\+?(\d\S*\s*(?:kgs?|lbs?|g))", ("rule", "step")),
    (rf"({'|'.join(_BY_NEXT)})\s+(?:to\s+)?(?:the\s+)?(next)(?:\s+{_ONE})?", _NEXT),
    (r"(hold)\s+\+?(\d\S*\s*s)(?:\s+to\s+(\d\S*(?:\s*s)?))?", ("rule", "step-time", "cap-time")),
    (rf"(time)\s+\+?{_TIME}(?:\s+to\s+{_TIME})?", ("rule", "step-time", "cap-time")),
    (rf"(distance)\s+\+?{_FAR}(?:\s+to\s+{_FAR})?", ("rule", "step-distance", "cap-distance")),
    (r"(reps)\s+\+?(\d+)(?:\s+to\s+(\d+))?", ("rule", "step-reps", "cap-reps")),
    (r"(sets)\s+\+?(\d+)(?:\s+to\s+(\d+))?", ("rule", "step-sets", "cap-sets")),
    (r"(pace)\s+[-−–]\s*(\d\S*\s*s)", ("rule", "step-pace")),
    (r"(speed)\s+\+?(\d\S*\s*%)", ("rule", "step-percent")),
    (r"(listed|effort)", ("rule",)),
)

HOW_TO_WRITE = (
    "'linear +2.5 kg', 'double +2 kg', 'double next dumbbell', 'reps +1 to 12', "
    "'hold +5 s to 60 s', 'listed', 'speed +2 %', or of rowing, running and the like "
    "'distance +500 m', 'sets +1 to 8' or 'pace -1 s'"
)


_COUNTS = ("step-reps", "cap-reps", "step-sets", "cap-sets")


def _read(value: Any) -> Any:
    """One line becomes the long form; the long form passes."""
    if not isinstance(value, str):
        return value
    for pattern, keys in _FORMS:
        found = re.fullmatch(pattern, value.strip(), re.IGNORECASE)
        if found:
            return {
                key: _typed(key, text)
                for key, text in zip(keys, found.groups(), strict=True)
                if text is not None
            }
    raise refuse(
        "progress",
        f"{shown(value)} is not a rule for going on; write it like {sample(HOW_TO_WRITE)}",
    )


def _typed(key: str, text: str) -> str | int | bool:
    if key == "rule":
        return text.lower()
    return True if key == "next-load" else int(text) if key in _COUNTS else text


ProgressText = Annotated[Progress, BeforeValidator(_read)]
"""A rule for going on, in one line or in its long form."""


def progress_text(rule: Progress) -> str:
    """The rule in one line, as it may be written.

    >>> progress_text(Progress(rule="linear", step="2.5 kg"))
    'linear +2.5 kg'
    >>> progress_text(Progress.model_validate({"rule": "double", "next-load": True}))
    'double next'
    """
    if rule.next_load:
        return f"{rule.rule} next"
    step, cap = _AMOUNTS[rule.rule](rule) if rule.rule in _AMOUNTS else (rule.step, None)
    if step is None:
        return rule.rule
    sign = "-" if rule.rule == "pace" else "+"
    ends = [one.label if isinstance(one, Mass) else str(one) for one in (step, cap) if one]
    return f"{rule.rule} {sign}{' to '.join(ends)}"


def time_text(seconds: float) -> str:
    """A time as it may be written; whole minutes as such.

    >>> time_text(120), time_text(90)
    ('2 min', '90 s')
    """
    return f"{seconds / 60:g} min" if seconds % 60 == 0 else f"{seconds:g} s"


def _both(
    step: str, cap: str, text: Callable[[Any], str]
) -> Callable[[Progress], tuple[str | None, str | None]]:
    def found(rule: Progress) -> tuple[str | None, str | None]:
        low, high = getattr(rule, step), getattr(rule, cap) if cap else None
        return low and text(low), high and text(high)

    return found


_AMOUNTS: Mapping[str, Callable[[Progress], tuple[str | None, str | None]]] = {
    "hold": _both("step_time", "cap_time", "{:g} s".format),
    "time": _both("step_time", "cap_time", time_text),
    "distance": _both("step_distance", "cap_distance", length_text),
    "reps": _both("step_reps", "cap_reps", str),
    "sets": _both("step_sets", "cap_sets", str),
    "pace": _both("step_pace", "", "{:g} s".format),
    "speed": _both("step_percent", "", "{:g} %".format),
}
"""Step and cap of a rule whose step is no mass, as they may be written."""
