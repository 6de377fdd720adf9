"""Other spellings of what a dose can say: the one place where they stand.

Common practice of the trade, no source. What has two meanings stands in `unclear`.
"""

from strength_handbook.dose.spelling import Spelling, spelled

SPELLINGS: tuple[Spelling, ...] = (
    spelled("tempo {tempo}", "tempo {tempo}", "tempo: {tempo}", "@ tempo {tempo}"),
    spelled("tempo {no_reps}", "{no_reps}", "@ {no_reps}", "{no_reps} tempo"),
    spelled("tempo {fast}", "{fast}", "@ {fast}", behind_sets=True),
    spelled("tempo {fast}", "{fast} tempo"),
    spelled("tempo {digits}", "{digits}", "{digits} tempo"),
    spelled(
        "{sets}x{reps}",
        "{sets} {set} of {reps}", "{sets} {set} {x} {reps}", "{sets} {set} by {reps}",
        "{sets} by {reps}", "{sets} {x} {reps}",
    ),
    spelled(
        "{sets}x{labelled}",
        "{sets} {set} of {labelled}", "{sets} {set} {labelled}", "{labelled} {x} {sets} {set}",
        "{labelled} for {sets} {set}",
    ),
    spelled("{sets}x{reps} @ {load}", "{sets} {x} {reps} {x} {load}"),
    spelled("{sets}x{n}-{other}", "{sets} {x} {n} to {other}", "{sets} {set} of {n} to {other}"),
    spelled("{n}x{n} @ {load}", "{load} {x} {n} {x} {again}"),
    spelled("{sets}x{n} ES", "{sets} {x} {n} + {again}", "{sets} {set} of {n} + {again}"),
    spelled("reps {n} ES", "{n} + {again}", "{n} left, {again} right", "{n} left {again} right"),
    spelled("sets {sets}", "{sets} {set}", "sets: {sets}"),
    spelled("reps {labelled}", "{labelled}"),
    spelled("reps {reps}", "reps: {reps}"),
    spelled("ES", "{side}", "({side})"),
    spelled(
        "{sets}x{time}",
        "{sets} {set} of {time}", "{sets} {set} {x} {time}", "{sets} {x} {time}",
        "{time} {x} {sets}", "{time} {x} {sets} {set}",
    ),
    spelled(
        "ISO {sets}x{time}",
        "{sets} {x} {time} {hold}", "{sets} {set} of {time} {hold}", "{sets} {hold} of {time}",
        "{sets} {hold} {x} {time}", "{hold} {sets} {x} {time}", "{sets} {set} {x} {time} {hold}",
        "{sets} {x} {hold} {time}",
    ),
    spelled("ISO {sets}x{time} ES", "{sets} {x} {time} {side} {hold}",
            "{sets} {set} of {time} {side} {hold}"),
    spelled("hold {time}", "{time} {hold}", "hold {time}", "hold for {time}"),
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
        "{sets} -> {length}", "{sets} → {length}",
    ),
    spelled("distance {length}", "{length}"),
    spelled("@ {load}", "{load}", "@ {load}", "at {load}", "with {load}", "w/ {load}", "{load} for",
            "{load}:"),
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
    spelled(
        "RIR {n}",
        "RIR: {n}", "RIR = {n}", "{n} RIR", "@ {n} RIR", "at {n} RIR", "at RIR {n}", "{n} {tank}",
        "leave {n}", "leaving {n}", "leave {n} {tank}", "leaving {n} {tank}", "keep {n} {tank}",
        "with {n} {tank}", "@ {n} {tank}",
    ),
    spelled(
        "RPE {effort}",
        "RPE: {effort}", "RPE = {effort}", "{effort} RPE", "@ {effort} RPE", "at RPE {effort}",
        "effort {effort}", "RPE {effort}/10", "@ RPE {effort}/10", "effort {effort}/10",
        "effort {effort} out of 10",
    ),
    spelled(
        "rest {pause}",
        "{pause} rest", "rest {pause}", "rest: {pause}", "rest of {pause}", "{pause} of rest",
        "rest for {pause}", "with {pause} rest", "w/ {pause} rest", "w {pause} rest",
        "{pause} rest between sets",
        "rest {pause} between sets", "{pause} between sets", "{pause} recovery", "{pause} off",
        "resting {pause}", "{pause} break",
    ),
    spelled("rest {seconds} s", "rest {seconds}", "rest: {seconds}", "{seconds} rest"),
    spelled("rest 0 s", "no rest", "without rest"),
    spelled("every {pause}", "every {pause}", "a set every {pause}", "one set every {pause}",
            "on the {pause}", "set every {pause}"),
    spelled("every {n} min", "E{n}MOM", "E{n}MOM:"),
    spelled("every 60 s", "EMOM", "EMOM:", "every minute", "on the minute",
            "every minute on the minute"),
    spelled("sets {minutes}, every 60 s", "EMOM {minutes}", "{minutes} EMOM", "EMOM for {minutes}",
            "EMOM {minutes}:", "{minutes} EMOM:"),
    spelled("{sets}x{labelled}, every 60 s", "EMOM {sets}: {labelled}", "EMOM {sets}, {labelled}",
            "EMOM {sets} {labelled}"),
    spelled("{sets}x{reps}, every 60 s", "EMOM {sets} {x} {reps}"),
    spelled("{sets}xAMRAP floor {n}", "{sets} {x} AMRAP, at least {n}",
            "{sets} {x} max, at least {n}", "{sets} {x} max reps, at least {n}",
            "{sets} {x} AMRAP at least {n}", "{sets} {x} AMRAP min {n}"),
    spelled("ramp to {n}RM", "work up to {n} RM", "work up to a {n} RM", "build to {n} RM",
            "build to a {n} RM", "build up to {n} RM", "build up to a {n} RM"),
    spelled("box {height}", "box {height}", "{height} box", "box: {height}"),
    spelled("cap {n}", "at most {n}", "no more than {n}", "capped at {n}"),
)  # fmt: skip
"""All of them."""

SWALLOWED = tuple(one for one in SPELLINGS if one.house.split()[0] in ("rest", "every", "RIR"))
"""Those that no words of the coach's own may run on into."""

NO_PLACES = tuple(one for one in SPELLINGS if one.house.split()[0] in ("@", "RIR", "RPE", "cap"))
"""Those that after 'at' are no position of a hold."""
