"""Other spellings of what a dose can say, all together; here those of sets, clock and rest.

Common practice of the trade, no source. What has two meanings stands in `unclear`.
"""

from strength_handbook.dose.meant import (
    behind_top,
    behind_work,
    for_jumps,
    surely_of_kind,
    without_sets,
)
from strength_handbook.dose.spelled_load import LOADS
from strength_handbook.dose.spelled_manner import MANNERS
from strength_handbook.dose.spelling import Spelling, spelled

SPELLINGS: tuple[Spelling, ...] = (
    *MANNERS,
    *LOADS,
    spelled(
        "{sets}x{reps}",
        "{sets} {set} of {reps}", "{sets} {set} {x} {reps}", "{sets} {set} by {reps}",
        "{sets} by {reps}", "{sets} {x} {reps}",
    ),
    spelled(
        "{sets}x{labelled}",
        "{sets} {set} of {labelled}", "{sets} {set} {labelled}", "{labelled} {x} {sets} {set}",
        "{labelled} for {sets} {set}",
        "{labelled} {x} {sets}",
    ),
    spelled("{sets}x{reps} @ {load}", "{sets} {x} {reps} {x} {load}"),
    spelled("{sets}x{n}-{other}", "{sets} {x} {n} to {other}", "{sets} {set} of {n} to {other}"),
    spelled("{sets}x{reps} @ {load}", "{sets} {x} {reps}: {load}", "{sets} {x} {reps} / {load}",
            "{sets} {set} of {reps}: {load}"),
    spelled("{sets}x1", "{sets} [{x}] {single}"),
    spelled("{sets}x2", "{sets} [{x}] {double}"),
    spelled("{sets}x3", "{sets} [{x}] {triple}"),
    spelled("{sets}x1, remark {manner}", "{sets} {manner} {single}"),
    spelled("{sets}x2, remark {manner}", "{sets} {manner} {double}"),
    spelled("{sets}x3, remark {manner}", "{sets} {manner} {triple}"),
    spelled("1x1", "[a] [top] single", only=without_sets),
    spelled("1x2", "[a] [top] double", only=without_sets),
    spelled("1x3", "[a] [top] triple", only=without_sets),
    spelled("{n}x{n} @ {load}", "{load} {x} {n} {x} {again}"),
    spelled("{sets}x{n} ES", "{sets} {x} {n} + {again}", "{sets} {set} of {n} + {again}"),
    spelled("{sets}x{n} ES", "{sets} {x} {n} {l} [+] [/] [,] {again} {r}",
            "{sets} {x} {l} {n} [+] [/] [,] {r} {again}",
            "{sets} {set} of {n} {l} [+] [/] [,] {again} {r}",
            "{sets} {x} {n} {l} [+] [,] {same_sets} {x} {again} {r}",
            "{sets} {x} {n} {r} [+] [,] {same_sets} {x} {again} {l}"),
    spelled("reps {n} ES", "{n} + {again}", "{n} {l} [+] [/] [,] {again} {r}"),
    # The way up to the first set is worked out.
    spelled("", "{warm_up} [first]", "{warm_up} [,] then", "after [{a}] {warm_up}",
            "{sets} {warm_up} [{set}]", "{sets} {warm_up} [{set}] [,] then", "working",
            "work sets", "working sets"),
    spelled("", "straight sets", "sets across", "straight across", "across"),
    spelled("sets {sets}", "{sets} {set}", "sets: {sets}"),
    spelled("reps {labelled}", "{labelled}"),
    spelled("reps {reps}", "reps: {reps}"),
    spelled("ES", "{side}", "({side})"),
    spelled(
        "{sets}x{work}",
        "{sets} {set} of {work}", "{sets} {set} {x} {work}", "{sets} {x} {work}",
        "{work} {x} {sets}", "{work} {x} {sets} {set}",
    ),
    spelled(
        "ISO {sets}x{work}",
        "{sets} {x} {work} {hold}", "{sets} {set} of {work} {hold}", "{sets} {hold} of {work}",
        "{sets} {hold} {x} {work}", "{hold} {sets} {x} {work}", "{sets} {set} {x} {work} {hold}",
        "{sets} {x} {hold} {work}", "{hold} {work} {x} {sets}",
    ),
    spelled("ISO {sets}x{work} ES", "{sets} {x} {work} {side} {hold}",
            "{sets} {set} of {work} {side} {hold}"),
    spelled("hold {work}", "{work} {hold}", "hold {work}", "hold for {work}"),
    spelled(
        "{sets}x{time}, rest {time2}",
        "{sets} {x} {time} on, {time2} off", "{sets} {x} {time} on {time2} off",
        "{sets} {x} {time} on / {time2} off",
        "{sets} {x} ( {time} on {time2} off )", "{sets} {x} ( {time} on / {time2} off )",
        "{time} on {time2} off {x} {sets}", "{time} on / {time2} off {x} {sets}",
        "{sets} {x} {time} work {time2} rest",
    ),
    spelled("time {time}, rest {time2}", "{time} on {time2} off", "{time} on / {time2} off",
            "{time} on, {time2} off"),
    spelled(
        "{sets} -> {length}",
        "{sets} {x} {length}", "{sets} {set} of {length}", "{sets} {set} {x} {length}",
        "{sets} -> {length}", "{sets} → {length}", "{sets} lengths of {length}",
        "{sets} trips of {length}", "{sets} walks of {length}", "{sets} runs of {length}",
    ),
    spelled("{sets} -> {far_length}", "{far_length} {x} {sets}", "{far_length} {x} {sets} {set}",
            only=surely_of_kind("hands", "carrier")),
    spelled("distance {length}", "{length}"),
    spelled(
        "rest {resting}",
        "{resting} rest", "rest {resting}", "rest: {resting}", "rest of {resting}",
        "{resting} of rest", "rest for {resting}", "with {resting} rest", "w/ {resting} rest",
        "w {resting} rest", "{resting} rest {between} [{set}]", "rest {resting} {between} [{set}]",
        "{resting} {between} [{set}]", "{resting} recovery", "{resting} off",
        "resting {resting}",
        "{resting} break",
    ),
    # Behind sets and what is done in them, a time as long as a rest is one.
    spelled("rest {long}", "{long}", "{along} {long}", only=behind_work),
    spelled("rest {seconds} s", "rest {seconds}", "rest: {seconds}", "{seconds} rest"),
    spelled("rest {bare_range}", "rest {bare_range}", "rest: {bare_range}", "{bare_range} rest"),
    spelled("rest {resting}", "R: {resting}", "R {resting}", "R = {resting}"),
    spelled("rest {seconds} s", "R: {seconds}", "R {seconds}"),
    spelled("rest 0 s", "no rest", "without rest"),
    spelled("every {pause}", "every {pause}", "a set every {pause}", "one set every {pause}",
            "on the {pause}", "set every {pause}"),
    spelled("every {n} min", "E{n}MOM", "E{n}MOM:"),
    spelled("{sets}x{reps}, every {n} min", "E{n}MOM {x} {sets}: {reps}",
            "E{n}MOM {x} {sets}, {reps}"),
    spelled("{sets}x{labelled}, every {n} min", "E{n}MOM {x} {sets} {labelled}"),
    spelled("every 60 s", "EMOM", "EMOM:", "every minute", "on the minute",
            "every minute on the minute"),
    spelled("sets {minutes}, every 60 s", "EMOM {minutes}", "{minutes} EMOM", "EMOM for {minutes}",
            "EMOM {minutes}:", "{minutes} EMOM:", "OTM {minutes}", "{minutes} OTM"),
    spelled("{sets}x{labelled}, every 60 s", "EMOM {sets}: {labelled}", "EMOM {sets}, {labelled}",
            "EMOM {sets} {labelled}"),
    spelled("{sets}x{reps}, every 60 s", "EMOM {sets} {x} {reps}", "EMOM {sets}: {reps}"),
    spelled("{sets}xAMRAP floor {n}", "{sets} {x} AMRAP, at least {n}",
            "{sets} {x} max, at least {n}", "{sets} {x} max reps, at least {n}",
            "{sets} {x} AMRAP at least {n}", "{sets} {x} AMRAP min {n}"),
    spelled("ramp to 1RM", "work [up] to [a] {todays_best}", "build [up] to [a] {todays_best}"),
    spelled("", "then", "and then", only=behind_top),
    spelled("ramp to {n}RM", "work up to {n} RM", "work up to a {n} RM", "build to {n} RM",
            "build to a {n} RM", "build up to {n} RM", "build up to a {n} RM"),
    spelled("box {height}", "box {height}", "{height} box", "box: {height}", "to [a] {height} box",
            "onto [a] {height} box"),
    spelled("box {height}", "@ {height}", "from [a] {height} [box]", only=for_jumps),
    spelled("cap {n}", "at most {n}", "no more than {n}", "capped at {n}"),
)  # fmt: skip
"""All of them."""

SWALLOWED = tuple(one for one in SPELLINGS if one.house.startswith(("rest ", "every ", "RIR ")))
"""Those that no words of the coach's own may run on into."""

NO_PLACES = tuple(one for one in SPELLINGS if one.house.startswith(("@ ", "RIR ", "RPE ", "cap ")))
"""Those that after 'at' are no position of a hold."""
