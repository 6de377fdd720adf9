"""What can't be read of machines, carries and what is rowed or run: pins, paces, watts, far ways.

Each with what to write. Common practice of the trade, no source.
"""

from strength_handbook.dose.meant import not_to_go, not_weighed, surely_of_kind
from strength_handbook.dose.spelling import Unclear, unclear

_MACHINE = (
    "can't be written here yet; write the time, such as '1x20 min, RPE 4', and this in the slot's "
    "'note'"
)
_PACE = (
    "a pace refers to a tested best, so that it fits everybody: write '@ pace +8 s' or '@ 85 %', "
    "with a best of program.yml as the slot's 'base'"
)
_PIN = "a pin is written as what it is marked with, such as '@ 40 {unit}'; {pins}"
_WATTS = (
    "watts refer to a tested best, so that they fit everybody: write '@ 75 %', with a best of "
    "program.yml that is in watts as the slot's 'base'"
)
_FAR = (
    "more than 1000 m is no carry; write it in an exercise whose file says 'load: "
    "{{kind: endurance, of: run}}'"
)

UNCLEAR_MACHINES: tuple[Unclear, ...] = (
    unclear(
        "two paces in turn can't be written; write '{sets}x{time}, rest {time2}' where the easy "
        "part is the rest",
        "{sets} {x} {time} hard [/] [,] {time2} easy",
    ),
    unclear(_FAR, "{far}", only=not_weighed),
    unclear(_FAR, "{sets} {x} {far}", "{sets} {set} of {far}", "{sets} -> {far}", "{far} row",
            "{far} run", "{far} ski", "{far} ride", "{far} bike", only=not_to_go),
    unclear(_PIN, "[@] [{a}] pin {n}", "[@] [{a}] pin [no.] {n}", "[@] pin{n}",
            "[@] [{a}] pin #{n}"),
    # 'at pin 9' is a place in a rack, and a load on a stack only.
    unclear(_PIN, "[{with}] [{a}] pin {n}", "[{with}] [{a}] pin [no.] {n}",
            "[{with}] [{a}] pin #{n}", only=surely_of_kind("stack")),
    unclear("a plate of a stack is written as what stands on it, such as '@ 40 {unit}'; {pins}",
            "[{with}] [{a}] plate {n}", only=surely_of_kind("stack")),
    unclear(f"calories {_MACHINE}", "{n} cal", "{n} cals", "{n} calories", "{sets} {x} {n} cal",
            "{sets} {x} {n} cals", "{sets} {x} {n} calories"),
    unclear(_PACE, "@ {time} / {n} m", "@ {time} / km", "@ {time} / mile",
            "@ {time} pace", "{time} / {n} m", "{time} / km", "@ {time} / mi", "@ {far} pace",
            "@ {far} pace + {n} s", "@ {far} pace +{n} s", "@ race pace"),
    unclear(_WATTS, "@ {n} W", "{n} W", "@ {n} watts", "{n} watts"),
    unclear(f"a heart rate {_MACHINE}", "zone {n}", "@ zone {n}", "in zone {n}", "Z{n}", "@ Z{n}",
            "@ {percent} HRmax", "@ {percent} HR", "@ {percent} of max HR", "@ {n} bpm", "{n} bpm",
            "@ {percent} max HR", "@ {percent} HRR"),
    unclear(f"a bar speed {_MACHINE}", "@ {number} m/s", "{number} m/s", "loss {percent}",
            "{percent} loss"),
)  # fmt: skip
"""All of them."""
