"""What can't be read: it has two meanings, or says what a dose can't hold. Each with what to write.

Common practice of the trade, no source.
"""

from strength_handbook.dose.meant import (
    behind_work,
    not_behind_work,
    not_for_jumps,
    not_to_go,
    not_weighed,
    weighed,
    without_sets,
    without_top,
)
from strength_handbook.dose.spelling import Unclear, unclear
from strength_handbook.dose.unclear_load import UNCLEAR_LOADS
from strength_handbook.dose.unclear_machine import UNCLEAR_MACHINES

UNCLEAR: tuple[Unclear, ...] = (
    *UNCLEAR_LOADS,
    *UNCLEAR_MACHINES,
    unclear(
        "'{all}' can mean {n} sets of {n2}, '{n}x{n2}', or {n2} sets of {n}, '{n2}x{n}'; write one "
        "of them",
        "{n} {x} {n2} {set}",
    ),
    unclear(
        "'{all}' can be a set in parts, '{sets}x({n}+{other})/20 s', or different on each side, "
        "'{sets}x{n} ES' where they are alike, or a load without its unit, '@ BW+{other} {unit}'; "
        "write one of them",
        "{sets} {x} {n} + {other}",
    ),
    unclear(
        "'{seconds}' has no unit; write '{n2}x{n} @ {seconds} {unit}' or '{n}x{n2} @ {seconds} "
        "{unit}'",
        "{seconds} {x} {n} {x} {n2}",
    ),
    unclear(
        "'{n2}' has no unit; write '{sets}x{n} @ {n2} {unit}'",
        "{sets} {x} {n} {x} {n2}",
    ),
    unclear(
        "a set in parts has its pause: write '{sets}x({n}+{n2}+{n3})/20 s'",
        "{sets} {x} {n} + {n2} + {n3}",
    ),
    unclear(
        "'{all}' can be the work, '1x{time}', or the rest, 'rest {time}'; write one of them",
        "{time}", only=not_behind_work,
    ),
    unclear(
        "'{all}' can be a rest, 'rest {short}', or a pause in each repetition, 'pause {short} at "
        "the bottom'; write one of them",
        "{short}", only=behind_work,
    ),
    unclear(
        "'{all}' can be a distance, '1 -> {n} m', or a rest, 'rest {n} min'; write one of them",
        "{n} m", only=not_to_go,
    ),
    unclear(
        "'{all}' can be minutes, '{sets}x{n} min', or feet, '{sets} -> {n} ft'; write one of them",
        "{sets} {x} {n} '", "{sets} {x} {n} ′", only=not_to_go,
    ),
    unclear(
        "'{all}' can be work and rest, '{sets}x{time}, rest {time2}', or one side and then the "
        "other, '{sets}x{time} ES'; write one of them",
        "{sets} {x} {time} / {time2}", "{sets} {x} {time} + {time2}", only=not_to_go,
    ),
    unclear(
        "'{all}' can be work and rest, '{n} s on {n2} s off', repetitions on each side, 'reps {n} "
        "ES', or a range, '{n}-{n2}'; write one of them",
        "{n}/{n2}", only=not_to_go,
    ),
    *(
        unclear(
            "'{all}' can be work and rest, '{sets}x{a} s, rest {b} s', repetitions on each side, "
            "'{sets}x{a} ES', or a range, '{a}-{b}'; write one of them"
            .replace("{a}", f"{{{a}}}").replace("{b}", f"{{{b}}}"),
            f"{{sets}} {{x}} {{{a}}}/{{{b}}}", only=there,
        )
        for a, b, there in (("n", "n2", not_weighed), ("n", "other", weighed),
                            ("seconds", "n2", weighed))
    ),
    unclear(
        "'{all}' can mean so many on each side, 'ES', or in all; write 'ES', or half of them 'ES'",
        "alternating", "alternate sides", "alternating sides", "alternating legs",
        "both sides", "both legs", "both arms",
    ),
    unclear(
        "'{all}' can mean {n} minutes, '{n}x3 every 60 s', or {n} repetitions every minute, "
        "'10x{n} every 60 s'; write one of them",
        "EMOM {n}", "EMOM {x} {n}", "EMOM: {n}",
    ),
    unclear(
        "'{all}' can be a tempo, 'tempo {big}-{big2}-{big3}-{big4}', or sets that differ, "
        "'{big}, {big2}, {big3}, {big4}'; write one of them",
        "{big}-{big2}-{big3}-{big4}", only=without_sets,
    ),
    unclear(
        "sets that differ have a comma between: write '{big}, {big2}, {big3}'",
        "{big}-{big2}-{big3}", only=without_sets,
    ),
    unclear(
        "sets that differ are written side by side: '3x5 @ 70/75/80 %', or '5 @ 70 %, 3 @ "
        "75 %'",
        "@ {number}/{number2}/{percent}", "{number}/{number2}/{percent}",
        "@ {number}, {number2}, {percent}", "@ {number}/{number2}/{number3} %",
    ),
    unclear(
        "'{all}' can be a range of time, '{sets}x{number}-{time}', or repetitions and a rest, "
        "'{sets}x{number}, rest {time}'; write one of them",
        "{sets} {x} {number} {apart} {time}",
    ),
    unclear(
        "say how slow, such as 'tempo 3-0-1-0' for 3 s down",
        "slow {down}", "slow negatives", "controlled {down}",
    ),
    unclear(
        "'{all}' can be a lowering in each repetition, 'tempo {n}-0-1-0', or lowering only, "
        "'tempo {n}-0-1-0, return by the legs'; write one of them",
        "{n} {sec} negatives", "{n} {sec} eccentrics",
    ),
    unclear(
        "'{all}' can mean today's best, 'ramp to 1RM', with a share of it behind, '3x5 @ 80 % of "
        "top', or a set with some left, such as 'ramp to 1 @ RPE 8'; write one of them",
        "{work_up} [a] [{manner}] {single}",
    ),
    *(
        unclear(
            f"'{{all}}' can mean today's best, 'ramp to {n}RM', or a set with some left, such as "
            f"'ramp to {n} @ RPE 8'; write one of them",
            f"{{work_up}} [a] [{{manner}}] {{{word}}}", f"{{manner}} {{{word}}}",
            f"a {{manner}} {{{word}}}", f"{{manner}} {{{word}}} for the day",
            only=without_sets,
        )
        for n, word in ((2, "double"), (3, "triple"))
    ),
    unclear(
        "'{all}' can be a test, 'test {n}RM in 4 attempts', today's best, 'ramp to {n}RM', or how "
        "heavy, '3x{n} @ {n}RM'; write one of them",
        "{n} {rm}", only=without_sets,
    ),
    unclear(
        "'{all}' can mean today's best, 'ramp to 1RM', or a set with some left, such as "
        "'ramp to 1 @ RPE 8'; write one of them",
        "max single", "{manner} single", "[a] [{manner}] single for the day",
        only=without_sets,
    ),
    unclear(
        "a top set with some left is written with the word of its effort, and what follows as a "
        "share of it, or with its own: 'ramp to 1 @ RPE 8, 3x5 @ 90 % of top', or 'ramp to 1 @ RPE "
        "8, 3x5, RPE 7'",
        "[a] [top] {single} @ RPE {effort} [,] then", "[a] [top] {single} @ {small} [,] then",
        "[top] {n} @ RPE {effort} [,] then", "[top] {n} @ {small} [,] then",
        "{work_up} [a] {single} @ RPE {effort}", "{work_up} [a] {single} @ {small}",
    ),
    unclear(
        "'{n}' counts sets or repetitions; write '1x{n}, RPE {effort}' or 'sets {n}, RPE {effort}'",
        "{n} @ RPE {effort}",
    ),
    unclear(
        "'{all}' can mean less than last week, or than today's best: write the load itself, such "
        "as '@ 70 %', or 'ramp to 1RM, 3x5 @ 90 % of top'",
        "[@] {minus} {percent}", "{percent} less", "{percent} lighter", only=without_top,
    ),
    unclear(
        "'{all}' can be {n} steps in all, 'reps {n}', or {n} with each leg, 'reps {n} ES'; write "
        "one of them",
        "{n} steps", "{sets} {x} {n} steps", "{sets} {set} of {n} steps",
    ),
    unclear("a height is written as 'box {height}'", "@ {height}", "from {height}",
            only=not_for_jumps),
    unclear(
        "a set in parts has its pause: write '{sets}x({n}+{n2}+{n3})/20 s'",
        "{sets} {x} {n}.{n2}.{n3}",
    ),
    unclear(
        "'{all}' can mean today's best, 'ramp to {n}RM', or a set with some left, such as "
        "'ramp to {n} @ RPE 8'; write one of them",
        "{work_up} [a] [{manner}] {n}", "[a] heavy {n}",
        only=without_sets,
    ),
    unclear(
        "say how long, such as 'rest 2:00'",
        "rest as needed", "rest as required", "rest as long as needed", "full rest",
        "full recovery",
    ),
    unclear(
        "rounds over several exercises can't be written here: write sets, such as '{n}x10'; "
        "exercises with one letter, B1 and B2, are done in turn",
        "{n} rounds", "{n} rounds of", "{n} rds", "{n} rounds:",
    ),
    unclear(
        "a number of repetitions in all can't be written: write sets, such as '5x10', or "
        "'5xAMRAP floor 5 cap 12' and the number in the slot's 'note'",
        "{n} [{rep}] {few_sets}", "{n} {name} {few_sets}", "{few_sets}",
        "{n} reps total, any sets", "any sets",
        "{n} total", "{n} reps total", "{n} total reps", "{n} in total", "{n} reps in total",
    ),
    unclear(
        "a hold to the limit can't be written: write its seconds, such as 'ISO 3x30 s, RPE 8'",
        "max hold", "hold max", "max time", "{sets} {x} max hold", "{sets} {x} max time",
    ),
    unclear(
        "say the pace below which the set is over, such as '{minutes} min AMRAP, pace 8/min'",
        "AMRAP {minutes}", "{limit} in {minutes}", "{limit} for {minutes}", "AMRAP {minutes}:",
        "{minutes} AMRAP:", "{minutes} {limit}",
    ),
    unclear(
        "weight that comes off in the last set only makes it a slot of its own: the sets before it "
        "here, and behind them, with an order of its own, 'strip 2 loads -20 % 8 a load @ 60 %'",
        "drop {percent} on the last set", "drop {percent} on last set", "last set drop set",
        "last set: drop set", "drop set on the last", "drop set on the last set",
        "last set drop to {mass}", "+ drop set on the last", "last set a drop set",
        "drop {mass} on the last set", "last set drop {percent}", "last set drop {mass}",
        "last set is a drop set", "with a drop set on the last set", "+ 1 drop set", "+ drop set",
    ),
    unclear(
        "say how many, such as '{sets}x8, RIR 2'; or, where the sets are open, '{sets}xAMRAP floor "
        "5 cap 12'",
        "{sets} {x} submax", "{sets} {x} sub-max", "{sets} {set} submax", "{sets} {set} sub-max",
        "{sets} {set} of submax", "{sets} {x} some",
    ),
    unclear(
        "say how many there must be at least, such as '{sets}xAMRAP floor 5 cap {n}'",
        "{sets} {set} {limit} of {n}", "{sets} {x} {limit} of {n}", "{sets} {x} {limit} (cap {n})",
        "{sets} {x} {limit}, cap {n}", "{sets} {set} {limit}, cap {n}",
        "{sets} {x} {limit}, at most {n}", "{sets} {x} {limit}, stop at {n}",
    ),
    unclear(
        "write the last set with what it must have, where it ends and what is left: 'last set 5+ "
        "cap 10 RIR 1'",
        "last set {limit}", "last {limit}", "last set open", "last set to failure",
    ),
    unclear(
        "'{all}' can be a pause in the set, '{sets}x({n}+{n2}+{n3})/{time}', or the rest behind "
        "it; write the first, and 'rest 3:00' behind it",
        "{sets} {set} of {n} + {n2} + {n3}, {time} rest", "{sets} {x} ({n}+{n2}+{n3}), {time} rest",
        "{sets} {set} of {n} + {n2} + {n3}, rest {time}", "{sets} {x} ({n}+{n2}+{n3}), rest {time}",
    ),
    unclear(
        "a set in parts has its pause: write '{sets}x({n}+{n2}+{n3})/20 s'",
        "{sets} {set} of {n} + {n2} + {n3}", "{sets} clusters of {n}-{n2}-{n3}",
        "{sets} clusters of {n}+{n2}+{n3}", "{sets} cluster sets of {n}+{n2}+{n3}",
    ),
    unclear(
        "say how many there must be at least, such as '{sets}xAMRAP floor 5 cap 12'",
        "{sets} {x} max", "{sets} {x} max reps", "{sets} {x} as many as possible",
        "{sets} {x} as many reps as possible", "{sets} {set} to failure", "{sets} {x} failure",
        "{sets} {set} of {limit}", "{sets} {x} to failure",
    ),
    unclear(
        "write an open set as '3x5+ cap 12', or '3x5, last set 5+ cap 10 RIR 1'",
        "to failure", "till failure", "until failure", "to the limit", "last set to failure",
        "all out",
    ),
    unclear(
        "say where as in 'pause {moment} at the top'",
        "[{along}] [{a}] {moment} {squeeze} at", "[{along}] [{a}] {moment} {squeeze} in",
        "squeeze {moment} at", "squeeze {moment} in",
    ),
    unclear(
        "say where a pause is: write 'pause 2 s at the bottom'",
        "{time} pause", "with {time} pause", "paused", "with a {time} pause",
        "[{along}] [{a}] {n} {sec} {still}",
    ),
    unclear(
        "here is no last week to go on from: write the dose in full",
        "same", "same as last week", "as last week", "repeat",
    ),
)  # fmt: skip
"""All of it."""
