"""The list of formulas as a whole: nothing registered without what a reader needs to check it."""

import importlib
import inspect
import math
import pkgutil
import re
from collections.abc import Callable, Iterator
from types import ModuleType

import pytest

from strength_handbook import calc
from strength_handbook.calc.registry import (
    Evidence,
    Formula,
    OutOfRangeError,
    all_formulas,
    formula,
)

FORMULAS = all_formulas()
MODULES = [
    importlib.import_module(f"{calc.__name__}.{info.name}")
    for info in pkgutil.iter_modules(calc.__path__)
]


def public_functions(module: ModuleType) -> Iterator[tuple[str, Callable[..., object]]]:
    for name, value in vars(module).items():
        # One that keeps its answers is a function all the same.
        known = inspect.isfunction(inspect.unwrap(value))
        here = known and value.__module__ == module.__name__
        if here and not name.startswith("_"):
            yield name, value


FUNCTIONS = {name: value for module in MODULES for name, value in public_functions(module)}
RANGES = [(entry, name) for entry in FORMULAS for name in entry.ranges]


def entry_id(entry: Formula) -> str:
    return entry.id


def test_every_module_is_walked() -> None:
    assert {"one_rep_max", "volume", "duration"} <= {m.__name__.split(".")[-1] for m in MODULES}
    assert {"epley_1985", "foster_2001", "session_time"} <= {entry.id for entry in FORMULAS}


def test_list_is_sorted_and_without_doubles() -> None:
    keys = [(entry.subject, entry.id) for entry in FORMULAS]
    assert keys == sorted(keys)
    assert len({entry.id for entry in FORMULAS}) == len(FORMULAS)


def test_kinds_of_evidence_as_printed() -> None:
    # A reader sees these four words beside the figures.
    assert set(Evidence) == {"measured", "published", "arithmetic", "house rule"}
    assert {entry.evidence for entry in FORMULAS} == set(Evidence)


def test_an_exact_formula_states_no_error() -> None:
    errors = {entry.id: entry.error for entry in FORMULAS}
    assert errors["load_at_percent"] == errors["plate_centres"] == ""
    assert errors["epley_1985"]


@pytest.mark.parametrize("entry", FORMULAS, ids=entry_id)
def test_entry_is_complete(entry: Formula) -> None:
    assert entry.id in FUNCTIONS, "registered under a name that no module offers"
    for words in (entry.subject, entry.title, entry.equation, entry.output, entry.source):
        assert words.strip()
    assert all(unit.strip() for unit in entry.inputs.values())


@pytest.mark.parametrize("entry", FORMULAS, ids=entry_id)
def test_inputs_are_the_functions_parameters(entry: Formula) -> None:
    assert list(entry.inputs) == list(inspect.signature(FUNCTIONS[entry.id]).parameters)
    for meaning in entry.inputs.values():
        assert "_" not in meaning.split(" = ")[-1], "a name from the code says nothing to a coach"


@pytest.mark.parametrize("entry", FORMULAS, ids=entry_id)
def test_defined_symbols_stand_in_the_equation(entry: Formula) -> None:
    for symbol in _defined(entry):
        assert symbol in entry.equation


@pytest.mark.parametrize("entry", FORMULAS, ids=entry_id)
def test_letters_of_the_equation_are_defined(entry: Formula) -> None:
    equation = entry.equation
    letters = {
        found[1]
        for found in re.finditer(r"(?<![\w'])([A-Za-zα-ω])(?:[₀-₉ᵢₐₗ₋]+|_\w+)?(?![\w'])", equation)
        # What stands left of an equals sign is defined by it; after a number it is a unit.
        if not re.match(r"(\(h\))? =", equation[found.end() :])
        and not re.search(r"\d\s?$", equation[: found.start()])
    }
    known = {symbol[0] for symbol in _defined(entry) if len(re.split("[₀-₉ᵢₐₗ_]", symbol)[0]) == 1}
    known |= set(re.findall(r"(?:^|;)\s*(\w)(?:[₀-₉ᵢ]|_\w+)?(?:\(h\))? =", equation))
    known |= set(re.findall(r"\b(\w)\b", entry.output))
    article = {"a"} if re.search(r"\b(?:a|an) [a-z]{2}", equation) else set()
    assert letters <= known | article


def _defined(entry: Formula) -> set[str]:
    """Symbols that the inputs define: `w` from `w = load lifted, kg`."""
    parts = [part for meaning in entry.inputs.values() for part in meaning.split("; ")]
    return {name for part in parts if " = " in part for name in part.split(" = ")[0].split(", ")}


@pytest.mark.parametrize(
    ("entry", "name"), RANGES, ids=[f"{entry.id}-{name}" for entry, name in RANGES]
)
def test_refuses_outside_its_range(entry: Formula, name: str) -> None:
    low, high = entry.ranges[name]
    assert low < high
    function = FUNCTIONS[entry.id]
    # No other argument is looked at before the ranges are.
    others = dict.fromkeys(inspect.signature(function).parameters)
    outside = [math.nextafter(low, -math.inf), low - 1, math.nan]
    if math.isfinite(high):
        outside += [math.nextafter(high, math.inf), high + 1]
    for value in outside:
        with pytest.raises(OutOfRangeError) as refusal:
            function(**others | {name: value})
        assert (refusal.value.formula, refusal.value.name) == (entry.id, name)
        assert (refusal.value.low, refusal.value.high) == (low, high)


@pytest.mark.parametrize("name", sorted(FUNCTIONS))
def test_public_functions_carry_an_example(name: str) -> None:
    if FUNCTIONS[name].__module__.endswith(".registry"):
        return  # the list itself is covered here
    assert ">>> " in (inspect.getdoc(FUNCTIONS[name]) or "")


def test_range_ends_are_allowed_and_checked_by_name_too() -> None:
    zourdos = FUNCTIONS["zourdos_2016"]
    assert zourdos(5) == 5
    assert zourdos(rpe=10) == 0
    with pytest.raises(OutOfRangeError, match=r"zourdos_2016: rpe = 4.9 is outside 5 to 10"):
        zourdos(rpe=4.9)


def test_registration_mistakes_are_refused() -> None:
    with pytest.raises(ValueError, match="twice"):
        _register("epley_1985", {})
    with pytest.raises(ValueError, match="no such input: weight"):
        _register("not_registered", {"weight": (0, 1)})
    assert "not_registered" not in {entry.id for entry in all_formulas()}


def _register(name: str, ranges: dict[str, tuple[float, float]]) -> None:
    def function(load: float) -> float:
        return load

    function.__name__ = name
    formula(
        subject="Test",
        title="Test",
        equation="load",
        inputs={"load": "kg"},
        output="kg",
        source=calc.__name__,
        evidence=FORMULAS[0].evidence,
        ranges=ranges,
    )(function)
