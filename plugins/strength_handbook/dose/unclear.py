"""What can't be read: it has two meanings, or says what a dose can't hold. Each with what to write.

Common practice of the trade, no source.
"""

from strength_handbook.dose.spelling import Unclear, unclear

_DIFFERENT = (
    "sets that differ can't stand in one line: give each its own slot, with an order of its own"
)
_MACHINE = (
    "can't be written here yet; write the time, such as '1x20 min, RPE 4', and this in the slot's "
    "'note'"
)
_ONE = "one number belongs here; write the one to plan with, such as"

UNCLEAR: tuple[Unclear, ...] = (
    unclear(
        "'{all}' can mean {n} repetitions in each of {other} sets, '{other}x{n} @ {load}', or "
        "{other} repetitions in each of {n} sets, '{n}x{other} @ {load}'; write one of them",
        "{load} {x} {n} {x} {other}", "@ {load} {x} {n} {x} {other}",
    ),
    unclear(
        "'{all}' can mean {n} repetitions, '1x{n} @ {load}', or {n} sets, 'sets {n} @ {load}'; "
        "write one of them",
        "{load} {x} {n}", "@ {load} {x} {n}", "{load} for {n}",
    ),
    unclear(
        "'{all}' can mean {n} sets of {n2}, '{n}x{n2}', or {n2} sets of {n}, '{n2}x{n}'; write one "
        "of them",
        "{n} {x} {n2} {set}",
    ),
    unclear(
        "'{n}' counts sets or repetitions; write '1x{n} @ {load}' or 'sets {n} @ {load}'",
        "{n} @ {load}",
    ),
    unclear(
        "'{all}' can mean each side of the body, 'ES', or each hand and each end of the bar; in "
        "both hands a load is that of one already: write '@ {mass}', and 'ES' where the sides take "
        "turns",
        "@ {mass} each", "@ {mass} ea", "@ {mass} ea.", "@ {mass} per side", "@ {mass} per arm",
        "@ {mass} / side", "@ {mass} / arm", "@ {mass} a side", "@ {mass} per hand",
        "@ {mass} each hand", "@ {mass} / hand", "@ {mass} per dumbbell", "@ {mass} each arm",
    ),
    unclear(
        "'{all}' can mean an effort, 'RPE {small}', or a load, '@ {small} {unit}'; write one of "
        "them",
        "@ {small}",
    ),
    unclear(
        "'{all}' can mean a tempo, 'tempo {digits}', or a load; write one with its word or unit",
        "@ {digits}",
    ),
    unclear(
        "'{all}' can mean a load on top of body weight or more than last week; a load is written "
        "as what is lifted: '@ BW+{mass}', or '@ 60 kg'",
        "last week + {mass}", "last week +{mass}", "+{mass} from last week",
        "{mass} more than last week",
    ),
    unclear(
        "'{all}' can mean body weight less so much, '@ BW-{mass}', or less than last week, which "
        "is written as the load itself, such as '@ 60 kg'",
        "-{mass}", "@ -{mass}", "- {mass}", "–{mass}",
    ),
    unclear(
        "'{all}' can mean more than last week, or more than the bar; a load is written as what is "
        "lifted, such as '@ 60 kg'",
        "+{mass}", "@ +{mass}", on_bar=True,
    ),
    unclear(
        "'{all}' can mean {n} sets, 'sets {n} @ {load}', or {n} repetitions, '1x{n} @ {load}'; "
        "write one of them",
        "{n} {x} {load}",
    ),
    unclear(
        "'{all}' can be a set in parts, '{sets}x({n}+{other})/20 s', or different on each side, "
        "'{sets}x{n} ES' where they are alike, or a load without its unit, '@ BW+{other} {unit}'; "
        "write one of them",
        "{sets} {x} {n} + {other}",
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
        "leave out what is held or worn, the exercise says it: write '@ {mass}'",
        "@ {mass} {gear}", "{mass} {gear}", "with {mass} {gear}", "@ {gear} {mass}",
    ),
    unclear(
        "'{n}' has no unit; write 'BW+{n} {unit}'",
        "{body} + {n}", "@ {body} + {n}",
    ),
    unclear(
        "'{all}' can be the work, '1x{time}', or the rest, 'rest {time}'; write one of them",
        "{time}",
    ),
    unclear(f"more than 1000 m {_MACHINE}", "{far}", "{sets} {x} {far}", "{sets} {set} of {far}",
            "{sets} -> {far}", "{far} row", "{far} run", "{far} ski", "{far} ride", "{far} bike"),
    unclear(
        "'{all}' can be a distance, '1 -> {n} m', or a rest, 'rest {n} min'; write one of them",
        "{n} m",
    ),
    unclear(
        "'{all}' can be minutes, '{sets}x{n} min', or feet, '{sets} -> {n} ft'; write one of them",
        "{sets} {x} {n} '", "{sets} {x} {n} ′",
    ),
    unclear(
        "'{all}' can be work and rest, '{sets}x{time}, rest {time2}', or one side and then the "
        "other, '{sets}x{time} ES'; write one of them",
        "{sets} {x} {time} / {time2}", "{sets} {x} {time} + {time2}",
    ),
    unclear(
        "'{all}' can be work and rest, '{n} s on {n2} s off', repetitions on each side, 'reps {n} "
        "ES', or a range, '{n}-{n2}'; write one of them",
        "{n}/{n2}", "{sets} {x} {n}/{n2}",
    ),
    unclear(
        "'{all}' can mean so many on each side, 'ES', or in all; write 'ES', or half of them 'ES'",
        "both sides", "both legs", "both arms",
    ),
    unclear(
        "'{all}' can mean {n} minutes, '{n}x3 every 60 s', or {n} repetitions every minute, "
        "'10x{n} every 60 s'; write one of them",
        "EMOM {n}", "EMOM {x} {n}", "EMOM: {n}",
    ),
    unclear(
        "'{all}' can be a tempo, 'tempo {big}-{big2}-{big3}-{big4}', or sets that differ, which "
        "need a slot each; write 'tempo' before a tempo",
        "{big}-{big2}-{big3}-{big4}", without_sets=True,
    ),
    unclear(
        _DIFFERENT,
        "{n}/{n2}/{n3}", "{n}/{n2}/{n3}+", "{n}/{n2}/{n3}/{n4}", "{n}, {n2}, {n3}",
        "{n}, {n2}, {n3}+", "{n}, {n2}, {n3}, {n4}", "{n}, {n2}, {n3}, {n4}, {n5}",
        "{sets} {x} {reps} @ {number}/{number2}/{percent}", "{n}-{n2}-{n3}-{n4}-{n5}",
        "{sets} {x} {n}/{n2}/{n3}", "{sets} {x} {n}, {n2}, {n3}",
        "@ {number}/{number2}/{percent}", "{number}/{number2}/{percent}",
        "@ {number}, {number2}, {percent}",
        "@ {number}/{number2}/{number3} %",
    ),
    unclear(f"{_ONE} '@ {{percent}}'", "@ {number}-{percent}", "{number}-{percent}",
            "@ {percent2}-{percent}", "@ {number}–{percent}", "@ {number} to {percent}"),
    unclear(f"{_ONE} '@ {{mass}}'", "@ {number}-{mass}", "{number}-{mass}", "@ {number}–{mass}",
            "@ {number} to {mass}"),
    unclear(f"{_ONE} 'RPE {{number}}'", "RPE {number2}-{number}", "@ RPE {number2}-{number}",
            "RPE {number2}–{number}", "@ RPE {number2}–{number}", "{number2}-{number} RPE"),
    unclear(f"{_ONE} 'RIR {{n}}'", "RIR {n}-{n2}", "@ RIR {n}-{n2}", "{n}-{n2} RIR", "RIR {n}–{n2}",
            "@ {n}-{n2} RIR", "{n}-{n2} {tank}"),
    unclear(f"{_ONE} 'rest {{time}}'", "rest {number}-{time}", "{number}-{time} rest",
            "rest {number}–{time}", "rest {time2}-{time}", "{time2}-{time} rest",
            "rest {number} to {time}"),
    unclear(f"{_ONE} '{{sets}}x{{time}}'", "{sets} {x} {number}-{time}",
            "{sets} {x} {number}–{time}"),
    unclear(f"{_ONE} '{{sets}} -> {{length}}'", "{sets} {x} {number}-{length}"),
    unclear(
        "a tempo has four fields: write 'tempo {n}-0-1-0' for {n} s down",
        "{n} s down", "{n} sec down", "{n} s eccentric", "{n} sec eccentric", "{n} s lowering",
        "{n} s negative", "{n} second eccentric", "{n} sec negative", "{n} s negatives",
    ),
    unclear(
        "rounds over several exercises can't be written here: write sets, such as '{n}x10'; "
        "exercises with one letter, B1 and B2, are done in turn",
        "{n} rounds", "{n} rounds of", "{n} rds", "{n} rounds:",
    ),
    unclear(
        "a number of repetitions in all can't be written: write sets, such as '5x10'",
        "{n} total", "{n} reps total", "{n} total reps", "{n} in total", "{n} reps in total",
    ),
    unclear(
        "a hold to the limit can't be written: write its seconds, such as 'ISO 3x30 s, RPE 8'",
        "max hold", "hold max", "max time", "{sets} {x} max hold", "{sets} {x} max time",
    ),
    unclear(
        "say how many there must be at least, such as '{sets}xAMRAP floor 5 cap 12'",
        "{sets} {x} max", "{sets} {x} max reps", "{sets} {set} to failure", "{sets} {x} failure",
        "{sets} {set} of max reps", "{sets} {x} to failure", "{sets} {set} of AMRAP",
    ),
    unclear(
        "write an open set as '3x5+ cap 12', or '3x5, last set 5+ cap 10 RIR 1'",
        "to failure", "till failure", "until failure", "to the limit", "last set to failure",
    ),
    unclear(
        "say where a pause is: write 'pause 2 s at the bottom'",
        "{time} pause", "with {time} pause", "paused", "with a {time} pause",
    ),
    unclear("leave out '{all}': all sets have one load already", "across", "straight sets"),
    unclear(
        "last week's dose isn't carried on: write this week's in full",
        "same", "same as last week", "as last week", "repeat",
    ),
    unclear(f"calories {_MACHINE}", "{n} cal", "{n} cals", "{n} calories", "{sets} {x} {n} cal",
            "{sets} {x} {n} cals", "{sets} {x} {n} calories"),
    unclear(f"a pace {_MACHINE}", "@ {time} / {n} m", "@ {time} / km", "@ {time} / mile",
            "@ {time} pace", "{time} / {n} m", "{time} / km", "@ {time} / mi"),
    unclear(f"watts {_MACHINE}", "@ {n} W", "{n} W", "@ {n} watts", "{n} watts"),
    unclear(f"a heart rate {_MACHINE}", "zone {n}", "@ zone {n}", "in zone {n}", "Z{n}", "@ Z{n}",
            "@ {percent} HRmax", "@ {percent} HR", "@ {percent} of max HR", "@ {n} bpm", "{n} bpm",
            "@ {percent} max HR", "@ {percent} HRR"),
    unclear(f"a bar speed {_MACHINE}", "@ {number} m/s", "{number} m/s", "loss {percent}",
            "{percent} loss"),
)  # fmt: skip
"""All of it."""
