"""Cables, stacks and pneumatic machines: the load at the handle from two scale readings.

A hanging scale measures ratio, carriage and friction of one machine, and no machine's numbers hold
for another one. Where nobody read it, the ratio on its label is all there is to go by.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations
from typing import Literal

from strength_handbook.calc.registry import Evidence, formula

_SUBJECT = "Cables and machines"


@dataclass(frozen=True, slots=True)
class ScaleReading:
    """One setting read twice with a hanging scale.

    Attributes:
        setting: what the machine shows: kg on the pin, or its own unit.
        up: kgf while pulling slowly.
        down: kgf while letting down slowly.
    """

    setting: float
    up: float
    down: float

    @property
    def mean(self) -> float:
        """Load at the handle without friction, kgf."""
        return (self.up + self.down) / 2

    @property
    def friction(self) -> float:
        """Half the difference of the two readings, kgf."""
        return (self.up - self.down) / 2


@dataclass(frozen=True, slots=True)
class CableLine:
    """Load at the handle = carriage + slope × setting.

    Attributes:
        carriage: kgf at setting 0 (empty carriage, handle, springs).
        slope: kgf per unit of the setting.
    """

    carriage: float
    slope: float

    @property
    def ratio(self) -> float:
        """Units of the setting for one kgf at the handle: about 2 on a two-to-one pulley."""
        return 1 / self.slope

    def load(self, setting: float) -> float:
        """Load at the handle in kgf."""
        return self.carriage + self.slope * setting


@formula(
    subject=_SUBJECT,
    title="Load line of a machine from two scale readings",
    equation="F = a + b × setting;  b = (F₂ − F₁) ÷ (setting₂ − setting₁)",
    inputs={
        "first": "setting₁, F₁ = first setting and what a scale in the handle read, kg of pull",
        "second": "setting₂, F₂ = second setting and what the scale read, kg of pull",
    },
    output="a, kg of pull at setting 0, and b, kg of pull for each step of the setting",
    source="common practice, no source",
    evidence=Evidence.MEASURED,
    error="Holds for the machine that was read, for no other.",
)
def cable_line(first: ScaleReading, second: ScaleReading) -> CableLine:
    """The straight line through two readings; their order does not matter.

    Raises:
        ValueError: for two readings at one setting, or a load that does not rise with it.

    Example:
        >>> line = cable_line(ScaleReading(10, 6.4, 5.6), ScaleReading(50, 27.0, 25.0))
        >>> line.carriage, line.slope, line.ratio
        (1.0, 0.5, 2.0)
    """
    span = second.setting - first.setting
    if span == 0:
        raise ValueError(f"both readings were taken at setting {first.setting:g}")
    slope = (second.mean - first.mean) / span
    if slope <= 0:
        raise ValueError("the load at the handle does not rise with the setting")
    return CableLine(carriage=first.mean - slope * first.setting, slope=slope)


@formula(
    subject=_SUBJECT,
    title="Pull at the handle from the pin and the label",
    equation="F = m ÷ n",
    inputs={
        "pin": "m = what the pin lifts, kg",
        "ratio": "n = how many times slower than the handle the stack moves (2 on a two-to-one "
        "pulley)",
    },
    output="F, kg of pull",
    source="law of the lever on pulleys: what is won in way is paid in force; friction left out",
    evidence=Evidence.ARITHMETIC,
    error="Friction makes the way up heavier and the way down lighter; read it with a scale.",
)
def cable_pull(pin: float, ratio: float) -> float:
    """Pull at the handle without friction, in the unit of the pin.

    Raises:
        ValueError: for a ratio that is not above 0.

    Example:
        >>> cable_pull(40, 2)
        20.0
    """
    if ratio <= 0:
        raise ValueError(f"a pulley's ratio is above 0, not {ratio:g}")
    return pin / ratio


@dataclass(frozen=True, slots=True)
class CableSetting:
    """A setting that can be chosen on the machine.

    Attributes:
        pin: setting of the pin.
        add_ons: extra weights laid on the stack, in the unit of the setting.
        load: kgf at the handle.
    """

    pin: float
    add_ons: tuple[float, ...]
    load: float


def _settings(
    line: CableLine, pins: Sequence[float], add_ons: Sequence[float]
) -> Iterator[CableSetting]:
    for count in range(len(add_ons) + 1):
        for extra in combinations(sorted(add_ons), count):
            for pin in pins:
                yield CableSetting(pin, extra, line.load(pin + sum(extra)))


@formula(
    subject=_SUBJECT,
    title="Pin and add-on weights for a wanted load",
    equation="setting = (F − a) ÷ b, taken to the pins and add-ons that exist",
    inputs={
        "line": "a, b = load line of this machine, kg of pull and kg of pull per step",
        "wanted": "F = pull wanted in the hand, kg of pull",
        "pins": "pins that exist, kg on the plate or own unit",
        "add_ons": "add-on weights that exist, kg",
        "policy": "whether the nearest below is taken, or the nearest",
    },
    output="pin, add-ons and the pull they give",
    source="common practice, no source",
    evidence=Evidence.ARITHMETIC,
)
def cable_setting(
    line: CableLine,
    wanted: float,
    pins: Sequence[float],
    add_ons: Sequence[float] = (),
    policy: Literal["down", "nearest"] = "down",
) -> CableSetting | None:
    """The setting closest to the wanted load; of equal ones the lighter, then fewest add-ons.

    Args:
        line: load line of the machine.
        wanted: kgf at the handle.
        pins: settings of the pin that exist.
        add_ons: extra weights in the unit of the setting, each usable once.
        policy: ``down`` never exceeds the wanted load, ``nearest`` may.

    Returns:
        The setting, or None when even the lightest one exceeds the wanted load (``down``).

    Example:
        >>> cable_setting(CableLine(1.0, 0.5), 20.0, range(5, 100, 5), [2.5])
        CableSetting(pin=35, add_ons=(2.5,), load=19.75)
    """
    # Rounded: a load that meets the wish exactly is not above it for its last binary digits.
    possible = (
        setting
        for setting in _settings(line, pins, add_ons)
        if policy == "nearest" or round(setting.load - wanted, 9) <= 0
    )
    return min(
        possible,
        key=lambda s: (round(abs(s.load - wanted), 9), s.load, len(s.add_ons), s.pin),
        default=None,
    )
