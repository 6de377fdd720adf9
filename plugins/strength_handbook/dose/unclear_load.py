"""Loads that can't be read: they have two meanings, or aren't what the exercise is loaded with.

Each with what to write. Common practice of the trade, no source.
"""

from strength_handbook.dose.meant import (
    before_sets,
    not_loaded,
    not_of_kind,
    not_on_body,
    not_surely_two_weights,
    not_two_weights,
    not_two_weights_behind_sets,
    of_kind,
    on_body,
    pounds_to_come,
    two_weights,
    weighed,
    weights_to_come,
)
from strength_handbook.dose.spelled_load import THINGS, ways_with
from strength_handbook.dose.spelling import Unclear, unclear

UNCLEAR_LOADS: tuple[Unclear, ...] = (
    unclear(
        "'{all}' can mean {n} repetitions in each of {other} sets, '{other}x{n} @ {load}', or "
        "{other} repetitions in each of {n} sets, '{n}x{other} @ {load}'; write one of them",
        "{load} {x} {n} {x} {other}", "@ {load} {x} {n} {x} {other}",
    ),
    unclear(
        "'{all}' can mean {n} repetitions, '1x{n} @ {load}', or {n} sets, 'sets {n} @ {load}'; "
        "write one of them",
        "{load} {x} {n}", "@ {load} {x} {n}", "{load} for {n}", only=before_sets,
    ),
    unclear(
        "'{n}' counts sets or repetitions; write '1x{n} @ {load}' or 'sets {n} @ {load}'",
        "{n} @ {load}",
    ),
    unclear(
        "'{all}' can mean each side of the body, 'ES', or each hand and each end of the bar; in "
        "both hands a load is that of one already: write '@ {mass}', and 'ES' where the sides take "
        "turns",
        "[{with}] {mass} each", "[{with}] {mass} ea", "[{with}] {mass} ea.",
        "[{with}] {mass} {hand}",
        only=not_surely_two_weights,
    ),
    unclear(
        "'{all}' can mean each side of the body, 'ES', or each hand and each end of the bar; in "
        "both hands a load is that of one already: write '@ {mass}', and 'ES' where the sides take "
        "turns",
        "[{with}] {mass} per side", "[{with}] {mass} per arm", "[{with}] {mass} / side",
        "[{with}] {mass} / arm", "[{with}] {mass} a side", "[{with}] {mass} each arm",
        "[{with}] {mass} each side",
    ),
    unclear(
        "'{all}' are two weights, and this exercise isn't done with two; write '@ {mass}', what "
        "one weighs",
        "[{with}] {two} {mass} [{bells}]", "[{with}] {pair} {mass} [{bells}]",
        "[{with}] {mass} {x} 2", only=not_two_weights_behind_sets,
    ),
    unclear(
        "'{all}' are two weights, and this exercise isn't done with two; write what one weighs, "
        "such as '@ 16 kg'",
        "[{with}] {pair} {bare_mass}", only=not_two_weights,
    ),
    unclear(
        "'{all}' can mean an effort, 'RPE {small}', or a load, '@ {small} {unit}'; write one of "
        "them",
        "@ {small}",
    ),
    unclear(
        "'{all}' can mean an effort, 'RPE {small}-{small2}', or a load, '@ {small2} {unit}'; write "
        "one of them",
        "@ {small}-{small2}", "@ {small}–{small2}", "@ {small} to {small2}",
    ),
    unclear(
        "'{all}' can mean a tempo, 'tempo {digits}', or a load; write one with its word or unit",
        "@ {digits}",
    ),
    unclear(
        "'{all}' can mean a load on top of body weight or more than last week; here, where there "
        "is no last week, a load is written as what is lifted: '@ BW+{mass}', or '@ 60 kg'",
        "last week + {mass}", "last week +{mass}", "+{mass} from last week",
        "{mass} more than last week",
    ),
    unclear(
        "'{all}' can mean body weight less so much, '@ BW-{mass}', or less than last week, "
        "'last week -{mass}'; write one of them, or the load itself, such as '@ 60 kg'",
        "[@] {minus} {mass}",
    ),
    unclear(
        "'{all}' can mean body weight less so much, '@ BW-{mass}', or the load, '@ {mass}'; write "
        "one of them",
        "{dash} {mass}", only=on_body,
    ),
    unclear(
        "'{all}' can mean more than last week, 'last week +{mass}', or more than the bar; write "
        "the first so, and else what is lifted, such as '@ 60 kg'",
        "+{mass}", "@ +{mass}", "add {mass}", only=not_on_body,
    ),
    unclear(
        "'{all}' can mean more than last week, 'last week +{mass}', or on top of body weight, "
        "'@ BW+{mass}'; write one of them",
        "add {mass}", only=on_body,
    ),
    unclear(
        "'{all}' can mean {n} sets, 'sets {n} @ {one_load}', or {n} repetitions, '1x{n} @ "
        "{one_load}'; write one of them",
        "{n} {x} {one_load}", only=before_sets,
    ),
    *(
        unclear(
            "'{all}' is not what this exercise is loaded with; leave the thing out and write "
            "'@ {mass}'",
            *ways_with(thing), only=not_of_kind(kind),
        )
        for thing, kind in THINGS
    ),
    unclear(
        "'{all}' is not what this exercise is loaded with; leave the thing out and write "
        "'@ {mass}'",
        "[{with}] [{a}] {mass} {worn}", "[{with}] [{a}] {worn} [{with}] {mass}", only=not_on_body,
    ),
    unclear("'{n}' has no unit; write '@ {n} {unit}'", "{with} {two} {n}", only=two_weights),
    unclear(
        "'{all}' weighs something: write how much, such as '@ BW+10 kg'",
        "[{with}] [{a}] {worn}", only=not_loaded,
    ),
    unclear(
        "'{n}' has no unit; write 'BW+{n} {unit}'",
        "{body} + {n}", "@ {body} + {n}",
    ),
    *(
        unclear(
            f"'{{all}}' can be a rest, 'rest {{all}}', or the weights, '@ {{{value}}}'; write one "
            "of them",
            f"{{{value}}}", only=there,
        )
        for value, there in (("light_mass", weights_to_come), ("bare_mass", pounds_to_come))
    ),
    unclear(
        "'{all}' can be 21 s of work, '{sets}x21 s', or 21 repetitions in thirds of the way, "
        "'{sets}x21' with the thirds in the slot's 'note'; write one of them",
        "21s {x} {sets}", "{sets} {x} 21s", "{sets} {set} of 21s", only=weighed,
    ),
    unclear("'{all}' is written as what the bar weighs, such as '@ 20 kg'",
            "[{with}] [{a}] empty {barbell}", "{barbell} only", "just the {barbell}",
            only=of_kind("bar")),
    unclear("{bands}",
            "[{with}] [{a}] {colour} band", "[{with}] [{a}] {colour} bands",
            "[{with}] [{a}] {colour} band {side}", "[{with}] [{a}] {colour} bands {side}",
            "[{with}] [{a}] {colour} band {helped}", "band {helped}", "{with} [{a}] band",
            "{with} [{a}] bands", "+ [a] band", "+ band {side}", "{with} [{a}] band {side}",
            "+ {colour}", "+ {colour} band", "+ {colour} bands", "+ {colour} band {side}",
            "+ bands"),
    unclear("'{all}' can mean {n} in all, or {n} pairs, 'chains {n} pair'; {chains}",
            "+ {n} chain", "+ {n} chains", "{with} {n} chains"),
    unclear("{chains}", "+ chains", "+ chain", "{with} chains"),
)  # fmt: skip
"""All of them."""
