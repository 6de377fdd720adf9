"""Explanations of problems with what a file says."""

from strength_handbook.reading.explanation import Explanation as E  # noqa: N817  # a table

_THING = (
    "Whatever a file names by its short name must be written somewhere. The message offers the "
    "nearest name that exists. "
)

CONTENT = {
    "count": E(
        "Sets and repetitions are a whole number, a range, or a floor that may be passed.",
        "reps: five",
        "reps: 5        # or 8-12, or 5+",
    ),
    "date": E(
        "A date is year-month-day, so that nobody has to guess which number is the month.",
        "valid-until: 31/3/2027",
        "valid-until: 2027-03-31",
    ),
    "drop": E(
        "What comes off between two loads of a strip set: a share of the load, a mass, or plates "
        "of each side.",
        "strip: {loads: 3, drop: less}",
        "strip: {loads: 3, drop: 20 %}",
    ),
    "dose": E(
        "A dose in one line is sets by repetitions (or seconds, or metres), then load, tempo, "
        "effort and rest in any order. The column shows the first word that can't be read.",
        "1: 4x5 at 74 %, RIR 2",
        "1: 4x5 @ 74 %, tempo 4-1-X-0, RIR 2, rest 2:30",
    ),
    "media": E(
        "Photos (.jpg, .png, .webp) and short films (.mp4, .webm) lie in media/ beside room.yml. "
        "The build makes photos small and leaves place and day behind; a film is published as it "
        "is, so it must be short and say no place.",
        "- photo: Step down.HEIC",
        "- photo: step-down.jpg\n  shows: One heel over the edge of the box.\n  people: agreed",
    ),
    "media-unused": E(
        "A file in media/ that no exercise names is not published; perhaps it was forgotten.",
        "media/old.jpg, and no exercise shows it",
        "media:\n  - photo: old.jpg\n    shows: Standing on the box.\n    people: nobody",
    ),
    "file-name": E(
        "The kind of a file follows from its place and name: room.yml, house-rules.yml and "
        "lifters.yml at the top, exercises/<id>.yml, <program>/program.yml and "
        "<program>/<number>-<wave>.yml. The id is also the page's address.",
        "exercises/Box Squat.yaml",
        "exercises/box-squat.yml",
    ),
    "endurance": E(
        "What is rowed, skied, ridden, run, walked, swum or stepped is done by time or distance, "
        "with how hard it is behind it. What is carried goes 1000 m at most, and a set of anything "
        "else lasts 40 minutes at most.",
        "1: 3x5 @ 60 kg",
        "1: 6x500 m, RPE 8, 26 spm, rest 2:00",
    ),
    "form": E(
        "The word has a fixed form here, such as a short name in small letters and hyphens, or an "
        "order letter with a digit.",
        "order: b-1",
        "order: B1",
    ),
    "incomplete-dose": E(
        "A week leaves out what the slot says, and the slot what the exercise says. Put together, "
        "something is still missing: how many sets, or of what. Write it in any of the three.",
        "1: tempo 3-0-1-0, RIR 3",
        "1: 3x5, tempo 3-0-1-0, RIR 3",
    ),
    "series": E(
        "Sets that differ stand side by side: each part has its sets, repetitions and load, and "
        "may have its own rest. Effort, tempo and all else stands behind them and holds for all. "
        "Where more is different, each kind needs a slot, with an order of its own.",
        "1: 5 @ 65 %, 3 @ 100 kg",
        "1: 5 @ 65 %, 3 @ 75 %, 1+ @ 85 %, rest 3:00",
    ),
    "pace": E(
        "A pace is the time for the distance that 'per' names, such as 500 m: written as minutes "
        "and seconds, without that distance.",
        "typical: 2:10/500 m",
        "typical: 2:10",
    ),
    "length": E("A text or list is too short or too long for its place on the page."),
    "load": E(
        "A load says what it is a part of: percent of the tested value, kilograms, percent of body "
        "mass, body weight with something added, or a repetition maximum.",
        "load: 74",
        "load: 74 %     # or 60 kg, 25 % BM, BW+10 kg, 8RM, 90 % of top, 70 % system",
    ),
    "masses": E(
        "A row of fixed masses is either one mass, or the lightest, the heaviest and the step.",
        "masses: [{from: 4 kg, to: 36 kg}]",
        "masses: [{from: 4 kg, to: 36 kg, by: 2 kg, count: 2}]",
    ),
    "missing-key": E(
        "Something that every page needs is not there. The place shown is the block it belongs to.",
        "faults:\n  - see: Hips shoot up.",
        "faults:\n  - see: Hips shoot up.\n    fix: Pause just off the floor.",
    ),
    "no-base": E(
        "A percentage needs a tested value to be a part of. Name it with 'base' in the slot, or in "
        "the load of the exercise; the values are listed under 'bases' in program.yml.",
        "exercise: standing-press\nweeks:\n  1: 3x5 @ 70 %",
        "exercise: standing-press\nbase: press-1rm\nweeks:\n  1: 3x5 @ 70 %",
    ),
    "no-file": E("A file that the others build on is not there, or can't be opened."),
    "no-program": E(
        "There is a room, and no program: the site has no weeks and no sessions. A program is a "
        "folder beside room.yml with a program.yml and a file for each wave.",
    ),
    "no-folder": E(
        "The folder with the program files is not there. Go to the handbook's folder first, or "
        "name the right one.",
        "strength-handbook check program",
        "strength-handbook check programs",
    ),
    "not-a-system": E(
        "'% system' means percent of the lifter's own share plus what hangs on the belt. The "
        "tested value must be such a total, or the load comes out far too heavy.",
        "pull-up-1rm: {name: Pull-up, kind: 1RM, …}",
        "pull-up-1rm: {name: Pull-up, kind: system, …}",
    ),
    "number": E("A plain number is expected, without a unit.", "count: two", "count: 2"),
    "order-twice": E(
        "Two slots of a session have the same order in one week, so nobody could tell which comes "
        "first. Pairs are written B1 and B2. Where one exercise follows another in the same place, "
        "both have its order, each with its own weeks.",
        "- order: B1\n…\n- order: B1",
        "- order: B1\n…\n- order: B2",
    ),
    "pair": E(
        "Two keys belong together: a number that is not your own needs its source beside it.",
        "share: 64 %",
        "share: 64 %\nshare-source: measured on a bathroom scale, own members",
    ),
    "progress": E(
        "How to go on when a week went well is one of a few rules, each with its step.",
        "progress: a bit more each week",
        "progress: linear +2.5 kg     # or double +2 kg, reps +1 to 12, listed, effort",
    ),
    "pulls": E(
        "A band's pull is read on a scale at two to six heights, and grows with the height.",
        "pulls: {30 cm: 9 kg, 60 cm: 4 kg}",
        "pulls: {30 cm: 4 kg, 60 cm: 9 kg, 90 cm: 14 kg}",
    ),
    "range": E("The number is outside what makes sense here; the message says the limit."),
    "same-name": E(
        "Two things in the room have the same short name, so no exercise could say which it means.",
        "kit:\n  rack: {name: shoe rack}\nracks:\n  rack: {name: power rack, …}",
        "kit:\n  shoe-rack: {name: shoe rack}\nracks:\n  rack: {name: power rack, …}",
    ),
    "shape": E(
        "A single value stands where a list or a block of keys belongs, or the other way round.",
        "set-up: Feet under the bar.",
        "set-up:\n  - Feet under the bar.\n  - Hands outside the knees.\n  - Look ahead.",
    ),
    "tempo": E(
        "A tempo has four fields, always lower-pause-lift-pause, in whole seconds. X in the third "
        "means: lift as fast as you can.",
        "tempo: 3-1",
        "tempo: 3-1-X-0",
    ),
    "text": E("Words are expected here.", "name: [press, standing]", "name: Standing press"),
    "too-large": E(
        "A file or a number is larger than anything real, or there are more files than any gym "
        "writes; probably a slip of the keys, or something else lies in the folder."
    ),
    "too-many": E("A list has more entries than its page can carry; the message says how many."),
    "top": E(
        "'top' asks for a ramp to today's best load for so many repetitions.",
        "top: heavy 5",
        "top: 5RM       # or none, to take it away for a week",
    ),
    "true-false": E("Only true or false fits here.", "optional: maybe", "optional: true"),
    "twice": E(
        "The same word stands in two places that exclude each other; it would be counted twice.",
        "direct: [glutes, hamstrings]\nhelping: [glutes]",
        "direct: [glutes, hamstrings]\nhelping: [back-extensors]",
    ),
    "two-kinds": E(
        "Two keys that exclude each other: a set is counted in repetitions, or held, or walked, or "
        "timed; effort is RIR or RPE; a pause is 'rest' or 'every'.",
        "reps: 5\nhold: 30 s",
        "hold: 30 s",
    ),
    "unit": E(
        "A number that means kilograms, seconds, metres or percent is written with its unit, so "
        "that 90 can't be read as seconds by one and minutes by the other.",
        "rest: 90",
        "rest: 90 s     # or 1:30",
    ),
    "unknown-bar": E(_THING + "Bars stand in room.yml under 'bars'."),
    "unknown-band": E(
        _THING + "Bands stand in room.yml under 'bands', each with a number of its own."
    ),
    "unknown-base": E(_THING + "Tested values stand in program.yml under 'bases'."),
    "unknown-carrier": E(_THING + "Belts, packs and sleds stand in room.yml under 'carriers'."),
    "unknown-chain": E(_THING + "Chains stand in room.yml under 'chains'."),
    "unknown-exercise": E(
        _THING + "An exercise's short name is its file name without .yml.",
        "exercise: trapbar-deadlift",
        "exercise: trap-bar-deadlift",
    ),
    "unknown-hand-weight": E(_THING + "These stand in room.yml under 'hand-weights'."),
    "unknown-house-rule": E(
        _THING + "The page 'How the numbers are made' lists all house rules with their values."
    ),
    "split-text": E(
        "In brackets a comma begins the next entry, also in the middle of a sentence. A text with "
        "a comma stands in quotes, or on a line of its own after '- '.",
        "before: [Zip the belly up, look down.]",
        'before: ["Zip the belly up, look down."]',
    ),
    "unknown-key": E(
        "No such key is known in this place. A misspelt key would silently count for nothing, so "
        "it is refused; the message offers the nearest one.",
        "rep: 5",
        "reps: 5",
    ),
    "unknown-machine": E(_THING + "Machines stand in room.yml under 'machines'."),
    "unknown-part": E(
        "A hand-written page asks for a generated part that does not exist. The nearest name is in "
        "the message.",
        "<!-- handbook:this-weak -->",
        "<!-- handbook:this-week -->",
    ),
    "unknown-pivot": E(_THING + "Pivots stand in room.yml under 'pivots'."),
    "unknown-rack": E(_THING + "Racks stand in room.yml under 'racks'."),
    "unknown-stack": E(_THING + "Cable columns stand in room.yml under 'stacks'."),
    "unknown-thing-in-the-room": E(_THING + "Everything in the room stands in room.yml."),
    "unknown-word": E(
        "Only certain words are possible here, because pages, sums and cautions are made from "
        "them. The message lists them.",
        "pattern: hinging",
        "pattern: hinge",
    ),
    "week": E(
        "A week is named that the wave does not have. A wave's weeks stand in its key 'weeks'.",
        "weeks: 1-4\ndeload: 5",
        "weeks: 1-4\ndeload: 4",
    ),
    "week-twice": E(
        "Two waves of a program claim the same week. Each week belongs to one.",
        "1-brakes.yml: weeks: 1-4\n2-hold.yml: weeks: 4-8",
        "1-brakes.yml: weeks: 1-4\n2-hold.yml: weeks: 5-8",
    ),
    "weeks": E(
        "Weeks are a number or a run of numbers, counted from 1.",
        "weeks: first to fourth",
        "weeks: 1-4",
    ),
}
