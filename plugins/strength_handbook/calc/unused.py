"""Published formulas that make no number of a handbook yet, each with the reason it is kept.

The page on how the numbers are made leaves them out; a test holds this list to the truth.
"""

_ORACLE = "another way to the same number, against which the one in use is tested"
_SPEED = "needs a measured bar speed, which no member is asked for"
_LOG = "needs a member's own log, which stays on the phone"

UNUSED: dict[str, str] = {
    "added_for_percent": _ORACLE,
    "base_after_velocity": _SPEED,
    "cable_line": "cable loads are printed as on the pin",
    "cable_setting": "cable loads are printed as on the pin",
    "chain_mass_per_metre": "chains are weighed in the room",
    "daily_totals": _LOG,
    "de_leva_1996_share": "shares of the body are written by the coach",
    "fewest_moves": _ORACLE,
    "foster_1998_monotony": _LOG,
    "foster_1998_strain": _LOG,
    "foster_2001": _LOG,
    "garcia_ramos_2018_two_point": _SPEED,
    "gonzalez_badillo_2010_bench": _SPEED,
    "gonzalez_badillo_2010_bench_velocity": _SPEED,
    "haff_triplett_2016_bar": _ORACLE,
    "helms_2016": "loads come from repetitions and reserve together",
    "judge_change": "the phone compares with the two limits, against which it is tested",
    "landmine_shares": _ORACLE,
    "least_minutes_held": "lower bound, against which the floor plan is tested",
    "least_minutes_shared": "lower bound, against which the floor plan is tested",
    "lifting_work": "no page prints joules",
    "loop_pull": "bands are read in place",
    "mean_load": "no page prints it",
    "mean_over_deviation": _LOG,
    "nearest_fixed": _ORACLE,
    "personal_kappa": "needs a member's own strip sets",
    "pull_for_share": _ORACLE,
    "relative_volume": "no page prints it",
    "round_to_step": _ORACLE,
    "rpe_from_rir": "reserve and effort are the same number, ten less the other",
    "sanchez_medina_2014_bench_pull": _SPEED,
    "sanchez_medina_2014_bench_pull_velocity": _SPEED,
    "sanchez_medina_2017_squat": _SPEED,
    "sanchez_medina_2017_squat_velocity": _SPEED,
    "stop_velocity": _SPEED,
    "strip_plan_to": _ORACLE,
    "suprak_2011_push_up": _ORACLE,
    "system_load": _ORACLE,
    "volume_load": "tonnage is summed by lifter, body share included",
    "zourdos_2016": "loads come from repetitions and reserve together",
}
"""Name of the formula and why it is kept."""
