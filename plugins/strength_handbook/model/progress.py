"""What happens next: rules that turn the last result into the next load, as data."""

import re
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field, model_validator

from strength_handbook.model.length import length_text
from strength_handbook.model.plain import WHOLE, within
from strength_handbook.model.quantities import (
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
    "linear", "two-for-two", "double", "listed", "open-set", "hold", "distance", "effort", "speed"
]

NEEDS_MASS = ("linear", "two-for-two", "double", "open-set")
"""Rules whose step is a mass."""


class Progress(Shape):
    """How a slot goes on from week to week."""

    rule: RuleName
    """`linear`: a step when all repetitions were done at or under the effort. `two-for-two`: a step
    after two spare repetitions in two sessions. `double`: a step when all sets reach the top of the
    range. `listed`: the weeks say it. `open-set`: by what the open set gave. `hold`, `distance`:
    longer, then heavier. `effort`: the same load closer to the limit. `speed`: only while fast."""
    step: MassText | None = None
    """How much heavier."""
    step_time: Annotated[Seconds, within(read_duration, "1 s", "60 s")] | None = None
    """How much longer."""
    step_distance: Annotated[Metres, within(read_length, "1 m", "200 m")] | None = None
    """How much further."""
    step_percent: Annotated[Percent, within(read_percent, "0.5 %", "10 %")] | None = None
    """How many points more."""
    cap_time: Annotated[Seconds, within(read_duration, "5 s", "10 min")] | None = None
    """The longest hold; then more load."""
    misses: Annotated[int, Field(ge=1, le=5), WHOLE] = 2
    """Failed sessions in a row after which the load goes back by a tenth."""

    @model_validator(mode="after")
    def _has_its_step(self) -> "Progress":
        wanted = {
            **dict.fromkeys(NEEDS_MASS, "step"),
            "hold": "step_time",
            "distance": "step_distance",
            "speed": "step_percent",
        }.get(self.rule)
        if wanted is not None and getattr(self, wanted) is None:
            key = wanted.replace("_", "-")
            example = {
                "step": "2.5 kg", "step-time": "5 s", "step-distance": "10 m", "step-percent": "2 %"
            }[key]  # fmt: skip
            raise refuse(
                "pair", f"the rule '{self.rule}' needs '{key}', such as '{sample(example)}'"
            )
        return self


_FORMS: tuple[tuple[str, tuple[str, ...]], ...] = (
    (r"(linear|two-for-two|double|open-set)\s+\+?(\d\S*\s*(?:kgs?|lbs?|g))", ("rule", "step")),
    (r"(hold)\s+\+?(\d\S*\s*s)(?:\s+to\s+(\d\S*(?:\s*s)?))?", ("rule", "step-time", "cap-time")),
    (r"(distance)\s+\+?(\d\S*\s*(?:mi?|ft|yd))", ("rule", "step-distance")),
    (r"(speed)\s+\+?(\d\S*\s*%)", ("rule", "step-percent")),
    (r"(listed|effort)", ("rule",)),
)

HOW_TO_WRITE = "'linear +2.5 kg', 'double +2 kg', 'hold +5 s to 60 s', 'listed' or 'speed +2 %'"


def _read(value: Any) -> Any:
    """One line becomes the long form; the long form passes."""
    if not isinstance(value, str):
        return value
    for pattern, keys in _FORMS:
        found = re.fullmatch(pattern, value.strip(), re.IGNORECASE)
        if found:
            return {
                key: text.lower() if key == "rule" else text
                for key, text in zip(keys, found.groups(), strict=True)
                if text is not None
            }
    raise refuse(
        "progress",
        f"{shown(value)} is not a rule for going on; write it like {sample(HOW_TO_WRITE)}",
    )


ProgressText = Annotated[Progress, BeforeValidator(_read)]
"""A rule for going on, in one line or in its long form."""


def progress_text(rule: Progress) -> str:
    """The rule in one line, as it may be written.

    >>> progress_text(Progress(rule="linear", step="2.5 kg"))
    'linear +2.5 kg'
    """
    step = {
        "hold": rule.step_time and f"+{rule.step_time:g} s",
        "distance": rule.step_distance and f"+{length_text(rule.step_distance)}",
        "speed": rule.step_percent and f"+{rule.step_percent:g} %",
    }.get(rule.rule, rule.step and f"+{rule.step.label}")
    cap = f" to {rule.cap_time:g} s" if rule.cap_time else ""
    return f"{rule.rule} {step}{cap}" if step else rule.rule
