"""The ends of every range: where each formula still answers, and that it ends there.

The values stand here a second time, with their reasons, because a range is a promise to the reader:
widening one by accident would print numbers that no source supports.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass, field

import pytest

from strength_handbook.calc import (
    allometry,
    bodyweight,
    chains,
    duration,
    effort,
    floor,
    landmine,
    one_rep_max,
    pace,
    percent_load,
    push_up,
    repetitions,
    retest,
    session_load,
    set_duration,
    strip_reps,
    tempo,
    variable_load,
    velocity,
    volume,
)
from strength_handbook.calc.barbell import BarShape
from strength_handbook.calc.registry import OutOfRangeError, all_formulas

LONG_CHART = ((1.0, 100.0), (40.0, 50.0))
LONG_BAR = BarShape(length=2.6)
NO_WEEK = tempo.TensionTime(1, 1, 1)

GENERAL_EQUATIONS = (
    one_rep_max.brzycki_1993,
    one_rep_max.epley_1985,
    one_rep_max.estimate_one_rep_max,
    one_rep_max.lander_1984,
    one_rep_max.lombardi_1989,
    one_rep_max.mayhew_1992,
    one_rep_max.oconner_1989,
    one_rep_max.wathan_1994,
)


@dataclass(frozen=True)
class Ends:
    """Lowest and highest value of one input; the other arguments stay as they are."""

    function: Callable[..., object]
    name: str
    low: float
    high: float
    others: dict[str, object] = field(default_factory=dict)

    @property
    def key(self) -> tuple[str, str]:
        return self.function.__name__, self.name


def ends(
    function: Callable[..., object], others: dict[str, object], **ranges: tuple[float, float]
) -> list[Ends]:
    """Several inputs of one function; while one varies the others stand at their lowest value."""
    lowest = others | {name: low for name, (low, _) in ranges.items()}
    return [Ends(function, name, low, high, lowest) for name, (low, high) in ranges.items()]


# The loads, speeds, angles, diameters and repetitions that were measured.
MEASURED = [
    # Speed at the best single and at 30 % of it; the loads of all three studies: 30 to 100 %.
    *ends(velocity.gonzalez_badillo_2010_bench, {}, velocity=(0.16, 1.33)),
    *ends(velocity.sanchez_medina_2017_squat, {}, velocity=(0.32, 1.47)),
    *ends(velocity.sanchez_medina_2014_bench_pull, {}, velocity=(0.50, 1.58)),
    *ends(velocity.gonzalez_badillo_2010_bench_velocity, {}, percent=(30, 100)),
    *ends(velocity.sanchez_medina_2017_squat_velocity, {}, percent=(30, 100)),
    *ends(velocity.sanchez_medina_2014_bench_pull_velocity, {}, percent=(30, 100)),
    # Melrose & Dawes 2015: 30, 45, 60 and 75 degrees.
    *ends(bodyweight.melrose_dawes_2015_row, {}, angle_deg=(30, 75)),
    # DIN 766 lists 6 to 20 mm among others; within 3 % there.
    *ends(chains.chain_mass_per_metre, {}, diameter_mm=(6, 20)),
    # Zourdos 2016: below RPE 5 the scale does not count repetitions.
    *ends(effort.zourdos_2016, {}, rpe=(5, 10)),
    *ends(effort.rpe_from_rir, {}, rir=(0, 5)),
    *ends(effort.helms_2016, {}, rpe=(5, 10)),
    # Statics with de Leva 1996, worked out for loads 10 to 40 cm below the shoulder line.
    *ends(push_up.back_load_leverage, {}, below_shoulder=(0.10, 0.40)),
]

# Scales, shares and angles that end by what they are.
BY_DEFINITION = [
    # Foster 2001: category ratio scale of 0 to 10; a day has 1440 minutes.
    *ends(session_load.foster_2001, {}, rpe=(0, 10), minutes=(0, 1440)),
    # Pelland 2025: indirect sets count 1, 0.5 or 0.
    *ends(volume.pelland_2025, {}, direct=(0, 1000), indirect=(0, 1000), indirect_weight=(0, 1)),
    # A right angle is a bar on its end.
    *ends(landmine.landmine_square, {"bar": LONG_BAR, "plates": [], "grip": 2}, angle_deg=(0, 90)),
    # A share of the whole cannot reach 100 %; 90 % is ten times the bar's weight.
    *ends(variable_load.pull_for_share, {"weight": 80}, share=(0, 90)),
    *ends(
        chains.chain_pairs_for_share,
        {"weight": 80, "chain": chains.ChainShape(5, 1), "top": 1, "available": 3},
        share=(0, 90),
    ),
]

# Guards against slips of the pen: common practice, no source.
GUARDS = [
    *(e for f in GENERAL_EQUATIONS for e in ends(f, {}, load_kg=(0, 1000), reps=(1, 15))),
    *ends(
        allometry.scale_strength,
        {"performance": 100},
        from_mass_kg=(20, 300),
        to_mass_kg=(20, 300),
    ),
    *ends(bodyweight.system_load, {"body_mass": 72}, k=(0.05, 1)),
    *ends(
        bodyweight.added_for_percent,
        {"body_mass": 72, "best_added": 12},
        percent=(0, 150),
        k=(0.05, 1),
    ),
    *ends(effort.percent_from_effort, {"chart": LONG_CHART}, reps=(1, 30), rir=(0, 10)),
    *ends(effort.reserve_is_reliable, {}, rir=(0, 30)),
    *ends(
        landmine.landmine_vertical,
        {"bar": LONG_BAR, "plates": []},
        grip=(0.3, 2.5),
        pivot_offset=(0, 0.2),
    ),
    *ends(percent_load.load_at_percent, {}, base_kg=(0, 1000), percent=(0, 500)),
    *ends(percent_load.percent_of_base, {}, load_kg=(0, 1000), base_kg=(0.001, 1000)),
    *ends(percent_load.one_rep_max_from_chart, {"reps": 5}, load_kg=(0, 1000)),
    *ends(percent_load.round_to_step, {"value": 100}, step=(1e-6, 1e6)),
    *ends(push_up.ebben_2011_push_up, {}, hands_above_feet=(-1.5, 1.5), stature=(1.2, 2.3)),
    *ends(
        repetitions.tempo_factor,
        {},
        eccentric_s=(0, 60),
        longest_pause_s=(0, 120),
        slow_factor=(0, 1),
    ),
    *ends(retest.smallest_believable_change, {}, cv_percent=(0, 30)),
    *ends(retest.near_certain_change, {}, cv_percent=(0, 30)),
    *ends(retest.judge_change, {}, before=(1e-9, 1e9), after=(0, 1e9), cv_percent=(0, 30)),
    *ends(
        set_duration.set_seconds,
        {},
        reps=(0, 1000),
        seconds_per_rep=(0, 120),
        hold_s=(0, 1_000_000),
        sides=(1, 2),
        side_change_s=(0, 600),
    ),
    *ends(
        set_duration.broken_set_seconds, {"parts": (5,)}, seconds_per_rep=(0, 120), pause_s=(0, 600)
    ),
    *ends(pace.pace_seconds, {}, distance_m=(0, 1e5), pace_s=(0.1, 36_000), per_m=(100, 1609.344)),
    *ends(
        pace.pace_of_time,
        {},
        time_s=(1, 500_000),
        distance_m=(100, 1e5),
        per_m=(100, 1609.344),
    ),
    *ends(pace.pace_at_percent, {}, best_pace_s=(0.1, 3600), percent=(10, 150)),
    *ends(pace.watts_at_percent, {}, best_w=(1, 2500), percent=(10, 150)),
    *ends(pace.rowing_watts, {}, pace_s=(50, 600)),
    *ends(
        set_duration.carry_seconds, {}, distance_m=(0, 100_000), speed_m_s=(0.1, 10), sides=(1, 2)
    ),
    *ends(duration.session_time, {"blocks": []}, overhead_min=(0, 120), warm_up_min=(0, 120)),
    *ends(
        floor.least_minutes_held,
        {},
        own_min=(0, 1440),
        pairs=(0, 400),
        units=(1, 1000),
        held_min=(0, 1440),
    ),
    *ends(
        floor.least_minutes_held_often,
        {"held_min": (8, 6)},
        own_min=(0, 1440),
        pairs=(0, 400),
        units=(1, 1000),
    ),
    *ends(
        floor.least_minutes_shared,
        {},
        own_min=(0, 1440),
        people=(0, 400),
        units=(1, 1000),
        busy_min=(0, 1440),
    ),
    *ends(strip_reps.strip_reps, {}, load_left=(0.5, 0.95), kappa=(0.4, 1.5), k=(20, 60)),
    *ends(
        tempo.rep_tension,
        {},
        lower_s=(0, 60),
        pause_s=(0, 120),
        lift_s=(0, 60),
        top_pause_s=(0, 120),
    ),
    *ends(tempo.total_tension, {"rep": NO_WEEK}, reps=(0, 10_000), sides=(1, 2)),
    *ends(velocity.stop_velocity, {"first": 0.6}, loss=(0, 60)),
    *ends(
        volume.relative_volume, {}, sets=(0, 1000), reps=(0, 1000), percent=(0, 200), sides=(1, 2)
    ),
    *ends(volume.isometric_dose, {}, holds=(0, 1000), seconds=(0, 3600), sides=(1, 2)),
    *ends(volume.lifting_work, {}, weight_n=(0, 20_000), distance_m=(0, 1000), reps=(0, 100_000)),
    *ends(volume.percent_change, {}, previous=(0, 1e9), current=(0, 1e9)),
    *ends(volume.volume_ratio, {}, first=(0, 1e9), second=(0, 1e9)),
]

ALL = [*MEASURED, *BY_DEFINITION, *GUARDS]


@pytest.mark.parametrize("one", ALL, ids=["-".join(one.key) for one in ALL])
def test_answers_at_both_ends_and_refuses_beyond(one: Ends) -> None:
    for value in (one.low, one.high):
        one.function(**one.others | {one.name: value})
    for value in (math.nextafter(one.low, -math.inf), math.nextafter(one.high, math.inf)):
        with pytest.raises(OutOfRangeError) as refusal:
            one.function(**one.others | {one.name: value})
        assert (refusal.value.formula, refusal.value.name) == one.key


def test_no_range_is_left_unexplained() -> None:
    stated = {one.key for one in ALL}
    assert stated == {(entry.id, name) for entry in all_formulas() for name in entry.ranges}
    assert len(stated) == len(ALL)
