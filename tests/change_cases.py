"""A small program, changes of its files, and what is then said of each.

For the tests of the comparison of two publications.
"""

import copy
import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

from books import BAR, EFFORT, KG_ROOM, base, exercise, slot, work
from strength_handbook.record.change import ChangeKind
from strength_handbook.record.data import program_data

Data = dict[str, Any]

LIFT = "trap-bar-deadlift"
PARTS: Data = {
    "exercises": {
        LIFT: exercise("Trap-bar deadlift", BAR, hazards=["heavy-pull"]),
        "step-down": exercise("Step-down", EFFORT),
        "side-plank": exercise("Side plank", EFFORT),
    },
    "sessions": {
        "a-lift": {
            "title": "Lift",
            "day": "monday",
            "slots": [
                slot(
                    "A", LIFT, base="best", rest="2:00",
                    dose={"1": "3x5 @ 70 %", "2": "3x5 @ 74 %", "3": "3x5 @ 78 %"},
                ),
                slot("B", "step-down", dict.fromkeys("123", "2x8, tempo 3-0-1-0, RIR 3")),
            ],
        },
        "b-hold": {
            "title": "Hold",
            "slots": [slot("A", "side-plank", dict.fromkeys("123", "ISO 2x20 s ES, rest 60 s"))],
        },
    },
    "bases": {"best": base(LIFT)},
    "lifters": {
        "P1": {"bodyweight": "72 kg", "bases": {"best": "140 kg"}},
        "P2": {"bodyweight": "60 kg", "bases": {"best": "100 kg"}},
    },
}  # fmt: skip


def publish(folder: Path, change: Callable[[Data], object] | None = None) -> Data:
    """The data of the small program, with the files changed before."""
    parts = copy.deepcopy(PARTS)
    if change is not None:
        change(parts)
    folder.mkdir(parents=True)
    worked = work(folder, **parts)
    data: Data = json.loads(json.dumps(program_data(worked, worked.programs[0])))
    return data


def slots(parts: Data, session: str = "a-lift") -> list[Data]:
    found: list[Data] = parts["sessions"][session]["slots"]
    return found


# Each change of the files: what is said of it, and what members read of it first.
CASES: dict[str, tuple[Callable[[Data], object], ChangeKind, str, str]] = {
    # 76 % of 140 and 100 kg is 106.4 and 76 kg; a 20 kg bar and pairs from 1.25 kg: steps of 2.5.
    "load": (
        lambda parts: slots(parts)[0]["weeks"].update({"3": "3x5 @ 76 %"}),
        ChangeKind.LOAD,
        (
            f"week 3, a-lift A {LIFT}: 76 % instead of 78 %; "
            "P1 105 kg instead of 107.5 kg; P2 75 kg instead of 77.5 kg"
        ),
        "Week 3: trap-bar deadlift is lighter, 76 % instead of 78 %.",
    ),
    "load-up": (
        lambda parts: slots(parts)[0]["weeks"].update({"3": "3x5 @ 80 %"}),
        ChangeKind.LOAD,
        (
            f"week 3, a-lift A {LIFT}: 80 % instead of 78 %; "
            "P1 110 kg instead of 107.5 kg; P2 80 kg instead of 77.5 kg"
        ),
        "Week 3: trap-bar deadlift is heavier, 80 % instead of 78 %.",
    ),
    # Planned with 79 %, 110.6 and 79 kg.
    "load-range": (
        lambda parts: slots(parts)[0]["weeks"].update({"3": "3x5 @ 78-80 %"}),
        ChangeKind.LOAD,
        (
            f"week 3, a-lift A {LIFT}: 78–80 % instead of 78 %; "
            "P1 110 kg instead of 107.5 kg; P2 planned 79 kg instead of 78 kg"
        ),
        "Week 3: trap-bar deadlift is heavier, 78–80 % instead of 78 %.",
    ),
    "load-kind": (
        lambda parts: slots(parts)[0]["weeks"].update({"3": "3x5 @ 80 kg"}),
        ChangeKind.LOAD,
        (
            f"week 3, a-lift A {LIFT}: 80 kg instead of 78 %; "
            "P1 80 kg instead of 107.5 kg; P2 80 kg instead of 77.5 kg"
        ),
        "Week 3: trap-bar deadlift is loaded in another way, 80 kg instead of 78 %.",
    ),
    # Without the 1.25 kg plates the steps are 5 kg: every load goes down to the next ten or five.
    "plates": (
        lambda parts: parts.update(
            room=KG_ROOM | {"plates": [p for p in KG_ROOM["plates"] if p["mass"] != "1.25 kg"]}
        ),
        ChangeKind.LOAD,
        # 98 and 70, 103.6 and 74, 109.2 and 78 kg: of 97.5 and 70, 102.5 and 72.5, 107.5 and 77.5
        # without the smallest pair 95 and 70, 100 and 70, 105 and 75 are left.
        f"weeks 1-3, a-lift A {LIFT}: P1 2.5 kg lighter; P2 2.5 kg lighter",
        "Weeks 1 to 3: trap-bar deadlift is lighter.",
    ),
    "plates-in-the-room": (
        lambda parts: parts.update(
            room=KG_ROOM | {"plates": [p for p in KG_ROOM["plates"] if p["mass"] != "1.25 kg"]}
        ),
        ChangeKind.ROOM,
        "room plates: 1.25 kg taken out",
        "Weeks 1 to 3: trap-bar deadlift is lighter.",
    ),
    "kit": (
        lambda parts: parts.update(
            room=KG_ROOM | {"kit": {"floor": {"name": "floor", "count": 9}}}
        ),
        ChangeKind.ROOM,
        "room kit floor: count 9 instead of 20",
        "",
    ),
    "start-groups": (
        lambda parts: parts.update(group={"members": 6, "sharing": 2, "starts": 2}),
        ChangeKind.PROGRAM,
        "program: members 6 instead of 1, at a station 2 instead of 1, start groups 2 instead of 1",
        "",
    ),
    "goal-test": (
        lambda parts: parts.update(goals=[{"goal": "Be strong.", "test": "Five repetitions"}]),
        ChangeKind.PROGRAM,
        "program: test of 'Be strong.': Five repetitions instead of Lift.",
        "",
    ),
    "rest-range": (
        lambda parts: slots(parts)[0].update(rest="2:00-3:00"),
        ChangeKind.DOSE,
        f"weeks 1-3, a-lift A {LIFT}: rest 2:00–3:00 instead of 2:00",
        "Weeks 1 to 3: trap-bar deadlift: rest 2:00–3:00 instead of 2:00.",
    ),
    "hold-range": (
        lambda parts: slots(parts, "b-hold")[0]["weeks"].update(
            {"1": "ISO 2x20-30 s ES, rest 60 s"}
        ),
        ChangeKind.DOSE,
        "week 1, b-hold A side-plank: holds of 20–30\u00a0s instead of 20 s",
        "Week 1: side plank: holds of 20–30\u00a0s instead of 20 s.",
    ),
    "reps-left-range": (
        lambda parts: slots(parts)[1]["weeks"].update({"2": "2x8, tempo 3-0-1-0, RIR 2-3"}),
        ChangeKind.DOSE,
        "week 2, a-lift B step-down: 2–3 repetitions left instead of 3",
        "Week 2: step-down: 2–3 repetitions left instead of 3.",
    ),
    # The number to plan with stays the same.
    "reps-left-range-around": (
        lambda parts: slots(parts)[1]["weeks"].update({"2": "2x8, tempo 3-0-1-0, RIR 2-4"}),
        ChangeKind.DOSE,
        "week 2, a-lift B step-down: 2–4 repetitions left, as a range",
        "Week 2: step-down: 2–4 repetitions left, as a range.",
    ),
    "rest": (
        lambda parts: slots(parts)[0].update(rest="2:30"),
        ChangeKind.DOSE,
        f"weeks 1-3, a-lift A {LIFT}: rest 2:30 instead of 2:00",
        "Weeks 1 to 3: trap-bar deadlift: rest 2:30 instead of 2:00.",
    ),
    "sets": (
        lambda parts: slots(parts)[1]["weeks"].update({"2": "3x8, tempo 3-0-1-0, RIR 3"}),
        ChangeKind.DOSE,
        "week 2, a-lift B step-down: 3 sets instead of 2",
        "Week 2: step-down: 3 sets instead of 2.",
    ),
    "range": (
        lambda parts: slots(parts)[1]["weeks"].update({"2": "2x8-12, tempo 3-0-1-0, RIR 3"}),
        ChangeKind.DOSE,
        ("week 2, a-lift B step-down: 8-12 repetitions instead of 8"),
        "Week 2: step-down: 8-12 repetitions instead of 8.",
    ),
    "tempo-and-reserve": (
        lambda parts: slots(parts)[1]["weeks"].update({"2": "2x8, tempo 4-0-1-0, RIR 1"}),
        ChangeKind.DOSE,
        (
            "week 2, a-lift B step-down: 1 repetition left instead of 3, "
            "tempo 4-0-1-0 instead of 3-0-1-0"
        ),
        "Week 2: step-down: 1 repetition left instead of 3, tempo 4-0-1-0 instead of 3-0-1-0.",
    ),
    "hold": (
        lambda parts: slots(parts, "b-hold")[0]["weeks"].update({"1": "ISO 2x30 s ES, rest 60 s"}),
        ChangeKind.DOSE,
        "week 1, b-hold A side-plank: holds of 30 s instead of 20 s",
        "Week 1: side plank: holds of 30 s instead of 20 s.",
    ),
    "no-rest-written": (
        lambda parts: slots(parts)[0].pop("rest"),
        ChangeKind.DOSE,
        f"weeks 1-3, a-lift A {LIFT}: no more rest (before: 2:00)",
        "Weeks 1 to 3: trap-bar deadlift: no more rest (before: 2:00).",
    ),
    "position": (
        lambda parts: slots(parts)[1].update(position="knee over the toes"),
        ChangeKind.DOSE,
        "weeks 1-3, a-lift B step-down: new details, such as a pause, a position or a setting",
        "Weeks 1 to 3: step-down: new details, such as a pause, a position or a setting.",
    ),
    "gone": (
        lambda parts: slots(parts).pop(),
        ChangeKind.EXERCISE_GONE,
        "weeks 1-3, a-lift B step-down: taken out",
        "Weeks 1 to 3, Lift: step-down is left out.",
    ),
    "new": (
        lambda parts: slots(parts).append(slot("C", "side-plank", {"2": "ISO 2x20 s ES"})),
        ChangeKind.EXERCISE_NEW,
        "week 2, a-lift C side-plank: new",
        "Week 2, Lift: side plank is new.",
    ),
    "swapped": (
        lambda parts: slots(parts)[1].update(
            exercise="side-plank", weeks=dict.fromkeys("123", "ISO 2x20 s ES")
        ),
        ChangeKind.EXERCISE_SWAPPED,
        "weeks 1-3, a-lift B side-plank: side-plank instead of step-down",
        "Weeks 1 to 3, Lift: side plank instead of step-down.",
    ),
    "moved": (
        lambda parts: slots(parts)[1].update(order="C"),
        ChangeKind.EXERCISE_MOVED,
        "weeks 1-3, a-lift C step-down: C instead of B",
        "Weeks 1 to 3, Lift: step-down is C now, not B.",
    ),
    "session-gone": (
        lambda parts: parts["sessions"].pop("b-hold"),
        ChangeKind.SESSION_GONE,
        "weeks 1-3, b-hold: taken out",
        "Weeks 1 to 3: the session Hold is left out.",
    ),
    "session-new": (
        lambda parts: parts["sessions"].update(
            c={"title": "Third", "slots": [slot("A", "step-down", {"2": "2x8"})]}
        ),
        ChangeKind.SESSION_NEW,
        "week 2, c: new",
        "Week 2: the session Third is new.",
    ),
    "day": (
        lambda parts: parts["sessions"]["a-lift"].update(day="tuesday"),
        ChangeKind.SESSION,
        "weeks 1-3, a-lift: day tuesday instead of monday",
        "Weeks 1 to 3: Lift is on Tuesday now.",
    ),
    "warm-up": (
        lambda parts: parts["sessions"]["a-lift"].update({"warm-up": ["Row for five minutes."]}),
        ChangeKind.SESSION,
        "weeks 1-3, a-lift: purpose, warm-up or what to cut: other words",
        "",
    ),
    "hazard": (
        lambda parts: parts["exercises"]["step-down"].update(hazards=["box"]),
        ChangeKind.SAFETY,
        "exercise step-down: cautions: other words, hazards box instead of none",
        "Step-down: cautions changed. Read the page again before your next set.",
    ),
    "caution": (
        lambda parts: parts["exercises"][LIFT].update(cautions=["Chalk the handles."]),
        ChangeKind.SAFETY,
        f"exercise {LIFT}: cautions: other words",
        "Trap-bar deadlift: cautions changed. Read the page again before your next set.",
    ),
    "stop-and-spotting": (
        lambda parts: parts["exercises"][LIFT].update(
            stop=["Stop when the grip goes."],
            spotting=exercise()["spotting"] | {"spotters": 1},
        ),
        ChangeKind.SAFETY,
        f"exercise {LIFT}: spotting: other words, stop rule: other words",
        (
            "Trap-bar deadlift: spotting and stop rule changed. "
            "Read the page again before your next set."
        ),
    ),
    "door": (
        lambda parts: parts["exercises"][LIFT]["doors"].update(hurts={"how": "Row instead."}),
        ChangeKind.DOORS,
        f"exercise {LIFT}: hurts: other words",
        "Trap-bar deadlift: what to do instead has changed (hurts).",
    ),
    "door-of-slot": (
        lambda parts: slots(parts)[0].update(doors={"taken": "Take the long bar."}),
        ChangeKind.DOORS,
        f"weeks 1-3, a-lift A {LIFT}: taken: other words",
        "Trap-bar deadlift: what to do instead has changed (taken).",
    ),
    "cue": (
        lambda parts: parts["exercises"][LIFT].update(breathing="Breathe out at the top."),
        ChangeKind.TEXT,
        f"exercise {LIFT}: set-up, cues, faults or breathing: other words",
        "",
    ),
    "ask-first": (
        lambda parts: parts.update({"not-for": ["Chest pain? Talk to a clinician first."]}),
        ChangeKind.NOTICE,
        "program: who asks first: other words",
        "The list of who asks first has changed. Read it before you train.",
    ),
    "threshold": (
        lambda parts: parts.update(rules={"rest-heavy": "180 s"}),
        ChangeKind.RULE,
        "house rules: rest-heavy 180 s instead of 150 s",
        "",
    ),
    # Five minutes of warm-up make both sessions five minutes longer.
    "minutes": (
        lambda parts: parts.update({"warm-up": "5 min"}),
        ChangeKind.MINUTES,
        "weeks 1-3, b-hold: minutes 7.5 instead of 2.5",
        "",
    ),
    "volume": (
        lambda parts: parts["exercises"]["step-down"].update(muscles={"direct": ["glutes"]}),
        ChangeKind.VOLUME,
        "weeks 1-3: hard sets glutes 2 instead of none, hard sets quads 3 instead of 5",
        "",
    ),
    "lifter": (
        lambda parts: parts["lifters"]["P1"]["bases"].update(best="130 kg"),
        ChangeKind.LIFTER,
        "example lifters: P1 best 130 kg instead of 140 kg",
        "",
    ),
    "lifter-new": (
        lambda parts: parts["lifters"].update(P3={"bodyweight": "80 kg"}),
        ChangeKind.LIFTER,
        "example lifters: P3 new",
        "",
    ),
    "variant": (
        lambda parts: parts["sessions"]["a-lift"].update(
            variants=[{"when": "Only 45 minutes", "leave-out": ["B"]}]
        ),
        ChangeKind.VARIANT,
        "weeks 1-3, a-lift: 'Only 45 minutes' new",
        "Weeks 1 to 3, Lift: the shorter or easier version has changed.",
    ),
    "title": (
        lambda parts: parts.update(program="Another plan"),
        ChangeKind.PROGRAM,
        "program: title Another plan instead of Plan",
        "",
    ),
}
