"""The list of formulas: what each computes, within which range, from which source.

A formula is registered by the `formula` decorator on the function that computes it. The decorator
also enforces the published range, so the list on the page and the behaviour of the code cannot
drift apart: outside its range a formula refuses with `OutOfRangeError`.
"""

import importlib
import inspect
import pkgutil
from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum
from functools import wraps
from typing import ParamSpec, TypeVar

P = ParamSpec("P")
R = TypeVar("R")


class Evidence(StrEnum):
    """Where a number comes from; printed beside every computed figure."""

    MEASURED = "measured"
    PUBLISHED = "published"
    ARITHMETIC = "arithmetic"
    HOUSE_RULE = "house rule"


class OutOfRangeError(ValueError):
    """An input lies outside the range in which a formula is known to hold."""

    def __init__(self, formula: str, name: str, value: float, low: float, high: float) -> None:
        self.formula, self.name, self.value, self.low, self.high = formula, name, value, low, high
        super().__init__(f"{formula}: {name} = {value:g} is outside {low:g} to {high:g}")


@dataclass(frozen=True)
class Formula:
    """One entry of the list.

    Attributes:
        id: the function's name, unique, for example ``epley_1985``.
        subject: heading it stands under, for example ``One-repetition maximum``.
        title: what it computes, in a coach's words.
        equation: the formula as printed, in plain text with real signs.
        inputs: for every parameter of the function what it means, with its unit. A symbol of the
            equation stands first, ``w = load lifted, kg``; several are parted by semicolons.
        output: what comes out, with its unit.
        ranges: lowest and highest valid value per input; enforced.
        source: author, year, journal, or the words "common practice, no source".
        evidence: kind of evidence.
        error: stated error or spread, in words; empty where the formula is exact.
    """

    id: str
    subject: str
    title: str
    equation: str
    inputs: dict[str, str]
    output: str
    ranges: dict[str, tuple[float, float]]
    source: str
    evidence: Evidence
    error: str


_FORMULAS: dict[str, Formula] = {}


def formula(
    *,
    subject: str,
    title: str,
    equation: str,
    inputs: dict[str, str],
    output: str,
    source: str,
    evidence: Evidence,
    ranges: dict[str, tuple[float, float]] | None = None,
    error: str = "",
) -> Callable[[Callable[P, R]], Callable[P, R]]:
    """Register the decorated function and enforce its ranges.

    Raises:
        OutOfRangeError: from the decorated function, when a numeric input is outside its range.
    """
    limits = ranges or {}

    def register(function: Callable[P, R]) -> Callable[P, R]:
        name = function.__name__
        if name in _FORMULAS:
            raise ValueError(f"formula {name} is registered twice")
        signature = inspect.signature(function)
        places = {key: place for place, key in enumerate(signature.parameters)}
        unknown = limits.keys() - places.keys()
        if unknown:
            raise ValueError(f"formula {name}: no such input: {', '.join(sorted(unknown))}")
        _FORMULAS[name] = Formula(
            name, subject, title, equation, inputs, output, limits, source, evidence, error
        )
        if not limits:
            return function

        @wraps(function)
        def checked(*args: P.args, **kwargs: P.kwargs) -> R:
            for key, (low, high) in limits.items():
                place = places[key]
                value = args[place] if place < len(args) else kwargs.get(key)
                if isinstance(value, int | float) and not low <= value <= high:
                    raise OutOfRangeError(name, key, value, low, high)
            return function(*args, **kwargs)

        return checked

    return register


def all_formulas() -> tuple[Formula, ...]:
    """Every registered formula, sorted by subject and name.

    Formulas register when their module is imported; this imports the whole package first.
    """
    package = importlib.import_module("strength_handbook.calc")
    for module in pkgutil.iter_modules(package.__path__):
        importlib.import_module(f"{package.__name__}.{module.name}")
    return tuple(sorted(_FORMULAS.values(), key=lambda f: (f.subject, f.id)))
