"""Other spellings of how heavy: with what it is held, worn or pushed, and in which share of what.

Common practice of the trade, no source.
"""

from strength_handbook.dose.meant import (
    Only,
    behind_sets,
    behind_top,
    loaded,
    not_on_body,
    of_kind,
    off_body_behind_sets,
    on_body,
    surely_of_kind,
    surely_two_weights,
    two_weights,
    two_weights_behind_reps,
    two_weights_behind_sets,
    weighed,
    weighed_behind_work,
)
from strength_handbook.dose.spelling import Spelling, spelled

THINGS = (("bells", "hands"), ("barbell", "bar"), ("plates", "plate"), ("sled", "carrier"))
"""Words for a thing, and how an exercise is loaded that is done with it."""


def ways_with(thing: str) -> tuple[str, str]:
    """How a mass is written with the thing that has it."""
    return (
        f"[{{with}}] [{{a}}] {{mass}} {{{thing}}}",
        f"[{{with}}] [{{a}}] {{{thing}}} [{{with}}] {{mass}}",
    )


def _of_both(*ways: str, only: Only) -> tuple[Spelling, Spelling]:
    """A mass, and the same with a range of it."""
    ranges = (way.replace("{mass}", "{masses}") for way in ways)
    return spelled("@ {mass}", *ways, only=only), spelled("@ {masses}", *ranges, only=only)


LOADS: tuple[Spelling, ...] = (
    spelled("@ {load}", "{load}", "@ {load}", "at {load}", "with {load}", "w/ {load}", "{load} for",
            "{load}:", "@ {load}:"),
    spelled("@ {share}", "[{with}] {share} [of] [your] [{a}] {best}"),
    spelled("@ {share} TM", "[{with}] {share} [of] [your] [{a}] training max"),
    spelled("@ {share} of top", "{share} {of_it}", "@ {share} {of_it}", only=behind_top),
    spelled("@ {percent} of top", "{percent} {of_it}", "@ {percent} {of_it}",
            "at {percent} {of_it}", "with {percent} {of_it}", only=behind_top),
    spelled("@ {off} of top", "[@] {minus}{off}", "{dash} {off}", "less {off}", "minus {off}",
            "{off} less", "{off} lighter", "drop {off}", only=behind_top),
    spelled("@ {percent}", "{dash} {percent}", only=behind_sets),
    spelled("@ {mass}", "{dash} {mass}", only=off_body_behind_sets),
    spelled("@ {percent}", "[{with}] {percent} [of] [your] [{a}] {best}"),
    spelled("@ {percent} TM", "[{with}] {percent} [of] [your] [{a}] training max"),
    *_of_both("[{with}] {two} {mass} [{bells}]", "[{with}] {mass} {x} 2",
              only=two_weights_behind_sets),
    *_of_both("[{with}] {pair} {mass} [{bells}]", only=two_weights),
    spelled("@ {bare_mass}", "[{with}] {pair} {bare_mass}", only=two_weights),
    spelled("@ {bare_mass}", "{with} [the] {bare_mass}", "{with} {two} {bare_mass}",
            only=two_weights_behind_reps),
    *_of_both("[{with}] {mass} {per_bell}", only=of_kind("hands")),
    *_of_both("[{with}] {mass} {hand}", "[{with}] {mass} each", "[{with}] {mass} ea",
              "[{with}] {mass} ea.", "[{with}] {bells} [{with}] {mass} each",
              only=surely_two_weights),
    # Too much for a percentage, so a mass in the unit of the room.
    spelled("@ {plain}", "@ {plain}", "{with} {plain}", "{plain}:", only=weighed),
    spelled("@ {plain}", "{plain}", only=weighed_behind_work),
    spelled("@ {kilo}", "[{with}] [{a}] {kilo} [{bells}]", only=weighed),
    spelled("{sets}x{reps} @ {mass}", "{two} {mass} [{bells}] {sets} {x} {reps}",
            only=surely_two_weights),
    spelled("@ {mass}", "{mass} on", "{mass} on it", only=surely_of_kind("carrier")),
    spelled("{sets}x{reps} @ BW+{mass}", "{sets} {x} {reps} [{body}] + {mass}",
            only=surely_of_kind("body-weight")),
    *(
        one
        for thing, kind in THINGS
        for one in _of_both(*ways_with(thing), only=of_kind(kind))
    ),
    spelled("@ BW+{mass}", "[{with}] [{a}] [+] {mass} {worn}",
            "[{with}] [{a}] {worn} [{with}] [+] {mass}", "[{with}] {body} + {mass} {worn}",
            "[{with}] [{a}] {worn} of {mass}",
            only=on_body),
    *(
        spelled("", f"[{{along}}] [{{a}}] {{{thing}}}", only=of_kind(kind))
        for thing, kind in THINGS
    ),
    spelled("", "[{along}] [{a}] {worn}", only=loaded),
    spelled("remark with a belt", "[{along}] [{a}] belt", only=not_on_body),
    spelled("@ {load}", "[{with}] {about} {load}"),
    spelled("@ {percent} BM", "[{with}] {about} {percent} [of] {body}"),
    spelled("@ {n}RM", "{with} [your] [{a}] {n} RM [weight]",
            "[{with}] {a} {weight} {could} do {n} times",
            "[{with}] {a} {weight} {could} lift {n} times"),
    spelled("@ {mass}", "[{with}] [{a}] pin [at] {mass}", "[{with}] [{a}] {mass} pin",
            "[{with}] {mass} {stack}", only=surely_of_kind("stack")),
    spelled("@ {half_mass}", "[{with}] {half_mass} {of_both}", only=surely_two_weights),
    spelled("@ {half_share} BM", "[{with}] {half_share} [of] {body} {of_both}",
            only=surely_two_weights),
    spelled("@ BW+{mass}", "weighted [with] [+] {mass}", "weighted, [+] {mass}", only=on_body),
    spelled("@ BW-{mass}", "[@] {body} [-] {mass} [(] {helped} [)]", only=on_body),
    # One on each side is a pair.
    spelled("chains {n} pair", "+ {n} chain [/] {side}", "+ {n} chains [/] {side}",
            "{along} {n} chain {side}", "{along} {n} chains {side}", "+ {n} pairs of chains",
            "+ {n} pair of chains", "{along} {n} pairs of chains", "{along} {n} pair of chains"),
    spelled("@ BW", "{body}", "@ {body}", "at {body}", "with {body}", "{body} only"),
    spelled(
        "@ {times} % BM",
        "@ {times} {x} {body}", "{times} {x} {body}", "@ {times} {body}", "{times} {body}",
        "@ {body} {x} {times}", "{body} {x} {times}", "at {times} {x} {body}",
    ),
    spelled(
        "@ {percent} BM",
        "@ {percent} {body}", "@ {percent} of {body}", "{percent} {body}", "{percent} of {body}",
    ),
    spelled("@ BW+{mass}", "@ {body} + {mass}", "{body} + {mass}", "@ {body} plus {mass}",
            "{body} plus {mass}", "@ +{mass}", "+{mass}"),
    spelled("@ BW-{mass}", "@ {body} - {mass}", "{body} - {mass}", "@ {body} minus {mass}",
            "{body} minus {mass}", "@ {body} – {mass}", "@ {body} − {mass}"),
    spelled("@ BW-{mass}", "[@] [-] {mass} {helped}", "[@] {helped} [-] {mass}",
            "{helped} by {mass}", only=on_body),
)  # fmt: skip
"""All of them."""
