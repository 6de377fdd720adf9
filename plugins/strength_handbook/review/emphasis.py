"""Does a wave do what it is for? Lowering, holding and fast repetitions, wave against wave."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass, field

from strength_handbook.plan.volume import Volume
from strength_handbook.plan.worked import WorkedProgram, WorkedWeek
from strength_handbook.review.lighter import is_named_apart, looks_lighter

MEASURES: Mapping[str, tuple[str, str]] = {
    "eccentric": ("s", "of lowering"),
    "isometric": ("s", "of holding"),
    "speed": ("", "fast repetitions"),
}
"""Each emphasis that can be measured: unit, and what is counted."""


@dataclass(frozen=True)
class WeekEmphasis:
    """What one week comes to, optional sessions left out.

    Attributes:
        week: its number.
        trains: neither a lighter week, named or not, nor one of tests.
        sums: seconds of lowering and of holding, and fast repetitions, by emphasis.
    """

    week: int
    trains: bool
    sums: Mapping[str, float]


@dataclass(frozen=True)
class WaveEmphasis:
    """What one wave comes to in a usual week.

    Attributes:
        id: short name of the wave.
        name: its title.
        emphasis: what it says it is for.
        means: mean of its training weeks, by emphasis.
        shares: that mean as a multiple of the mean of the other waves; None where they have none,
            or where there are no others.
        weeks: its weeks.
    """

    id: str
    name: str
    emphasis: str
    means: Mapping[str, float]
    shares: Mapping[str, float | None] = field(default_factory=dict)
    weeks: tuple[WeekEmphasis, ...] = ()

    @property
    def shown(self) -> str:
        """The measure to speak of: its own, else the one that stands out most."""
        if self.emphasis in MEASURES:
            return self.emphasis
        return max(MEASURES, key=lambda one: (self.shares.get(one) or 0, self.means[one]))

    @property
    def sentence(self) -> str:
        """One sentence for members: what they do more of in this wave."""
        return f"{self.name}: {amount(self.shown, self.means[self.shown])} a week{self._against}."

    @property
    def _against(self) -> str:
        share = self.shares.get(self.shown)
        if share is None:
            return "" if not self.shares else ", and none in the other waves"
        return f", {times(share)} times the other waves"


def amount(measure: str, value: float) -> str:
    """A sum with what it counts.

    >>> amount("eccentric", 410.2), amount("speed", 55)
    ('410 s of lowering', '55 fast repetitions')
    """
    return f"{number_of(measure, value)} {MEASURES[measure][1]}"


def number_of(measure: str, value: float) -> str:
    """A sum with its unit.

    >>> number_of("isometric", 79.6), number_of("speed", 55)
    ('80 s', '55')
    """
    return f"{value:.0f} {MEASURES[measure][0]}".strip()


def times(share: float) -> str:
    """A multiple, with as many places as somebody can picture.

    >>> times(2.14), times(0.06), times(12.3)
    ('2.1', '0.06', '12')
    """
    if share >= 10:
        return f"{share:.0f}"
    return f"{share:.1f}" if share >= 0.1 else f"{share:.2g}"


def measured(volume: Volume) -> dict[str, float]:
    """The three sums of a volume, by emphasis."""
    return {
        "eccentric": volume.eccentric_s,
        "isometric": volume.isometric_s,
        "speed": volume.fast_reps,
    }


def wave_emphases(program: WorkedProgram) -> tuple[WaveEmphasis, ...]:
    """Each wave that has a training week, in order, against the others."""
    alone: list[WaveEmphasis] = []
    for wave_id in dict.fromkeys(week.wave_id for week in program.weeks):
        weeks = [week for week in program.weeks if week.wave_id == wave_id]
        read = tuple(_week(week, looks_lighter(program)) for week in weeks)
        sums = [one.sums for one in read if one.trains]
        if sums:
            means = {one: _mean([each[one] for each in sums]) for one in MEASURES}
            wave = weeks[0].wave
            alone.append(WaveEmphasis(wave_id, wave.wave, wave.emphasis, means, {}, read))
    return tuple(_against(one, alone) for one in alone)


def _week(week: WorkedWeek, lighter: Collection[int]) -> WeekEmphasis:
    trains = not is_named_apart(week) and week.week not in lighter
    return WeekEmphasis(week.week, trains, measured(week.volume))


def _against(wave: WaveEmphasis, waves: list[WaveEmphasis]) -> WaveEmphasis:
    others = [one for one in waves if one is not wave]
    shares: dict[str, float | None] = {}
    for measure in MEASURES if others else ():
        usual = _mean([one.means[measure] for one in others])
        shares[measure] = wave.means[measure] / usual if usual else None
    return WaveEmphasis(wave.id, wave.name, wave.emphasis, wave.means, shares, wave.weeks)


def _mean(values: list[float]) -> float:
    return sum(values) / len(values)
