"""A load from a percentage of a base, the base from a repetition maximum, rounding to a step.

Which loads a room's plates can really make is another matter: this module only divides,
multiplies and rounds.
"""

from math import floor

from strength_handbook.calc.registry import Evidence, formula
from strength_handbook.calc.repetitions import TEXTBOOK_CHART, Chart, percent_for_reps

_SUBJECT = "Load from percent"


@formula(
    subject=_SUBJECT,
    title="Load at a percentage of a base",
    equation="load = base × % ÷ 100",
    inputs={
        "base_kg": "base = tested value or body weight, kg",
        "percent": "% = percent of the base",
    },
    output="load, kg, not rounded",
    ranges={"base_kg": (0, 1000), "percent": (0, 500)},
    source="definition",
    evidence=Evidence.ARITHMETIC,
)
def load_at_percent(base_kg: float, percent: float) -> float:
    """Load at `percent` of the tested value `base_kg`.

    >>> load_at_percent(140, 70)
    98.0
    """
    return base_kg * percent / 100


@formula(
    subject=_SUBJECT,
    title="Percentage that a load is of its base",
    equation="% = 100 × load ÷ base",
    inputs={
        "load_kg": "load = what is lifted, kg",
        "base_kg": "base = tested value or body weight, kg",
    },
    output="% of the base",
    ranges={"load_kg": (0, 1000), "base_kg": (0.001, 1000)},
    source="definition",
    evidence=Evidence.ARITHMETIC,
)
def percent_of_base(load_kg: float, base_kg: float) -> float:
    """Percentage really lifted, after rounding the load to what can be loaded.

    >>> percent_of_base(97.5, 140)
    69.64
    """
    return 100 * load_kg / base_kg


@formula(
    subject=_SUBJECT,
    title="Best single from a repetition maximum, by the chart",
    equation="1RM = load ÷ (chart(reps) ÷ 100)",
    inputs={
        "load_kg": "load = what was lifted, kg",
        "reps": "reps = most repetitions possible with it",
        "chart": "chart = repetitions and percent, the textbook's unless a lift has its own",
    },
    output="estimated 1RM, kg",
    ranges={"load_kg": (0, 1000)},
    source="Sheppard and Triplett 2016. Program design for resistance training. In: Essentials "
    "of Strength Training and Conditioning, 4th ed. Human Kinetics, ch. 17",
    evidence=Evidence.PUBLISHED,
    error="Trustworthy above 75 % and below 10 repetitions.",
)
def one_rep_max_from_chart(load_kg: float, reps: float, chart: Chart = TEXTBOOK_CHART) -> float:
    """Estimated 1RM from a tested 3RM, 5RM and so on.

    Raises:
        OutOfRangeError: outside the chart.

    >>> one_rep_max_from_chart(115, 3)
    123.66
    """
    return 100 * load_kg / percent_for_reps(reps, chart)


@formula(
    subject=_SUBJECT,
    title="Rounding to the nearest step, ties up",
    equation="rounded = step × the whole part of (value ÷ step + ½)",
    inputs={
        "value": "value = what is rounded, any unit",
        "step": "step = smallest step, same unit",
    },
    output="rounded value",
    ranges={"step": (1e-6, 1e6)},
    source="Sheppard and Triplett 2016, Essentials of Strength Training and Conditioning, 4th "
    "ed., ch. 17: loads to the nearest 5 lb",
    evidence=Evidence.ARITHMETIC,
)
def round_to_step(value: float, step: float) -> float:
    """Nearest multiple of `step`; halfway goes up, unlike the language's own rounding.

    >>> round_to_step(157.25, 5), round_to_step(82.5, 5), round_to_step(98, 2.5)
    (155.0, 85.0, 97.5)
    """
    # A product such as 0.95 × 150 may fall a rounding error short of its tie.
    steps = floor(value / step + 0.5 + 1e-9)
    return float(steps * step)
