"""Other spellings of how a set is done: tempo, pauses, effort, and words that change no number.

A lowering or a lift that stands alone has no other pauses, and a lift of one second: so the advice
on tempo has always filled what is left out. Common practice of the trade, no source.
"""

from strength_handbook.dose.meant import behind_load, behind_reps, behind_sets
from strength_handbook.dose.spelling import Spelling, spelled

MANNERS: tuple[Spelling, ...] = (
    spelled("tempo {tempo}", "tempo {tempo}", "tempo: {tempo}", "@ tempo {tempo}"),
    spelled("tempo {three}", "tempo {three}", "tempo: {three}", "{three} tempo"),
    spelled("tempo {n}-0-1-0", "[{along}] [{a}] [slow] {n} {sec} {down}", "{down} {n} {sec}",
            "{down} for {n} {sec}", "{down} in {n} {sec}", "{down}: {n} {sec}"),
    spelled("tempo {n}-0-X-0", "{n} {sec} {down} [,] [/] {up_fast}",
            "{n} {sec} {down} and {up_fast}"),
    spelled("tempo {n}-{n2}-1-0", "{n} {sec} {down} [,] [/] {n2} {sec} {still}"),
    spelled("tempo {n}-0-{n2}-0", "{n} {sec} {down} [,] [/] {n2} {sec} up"),
    spelled("tempo {dashed}", "@ {dashed}", only=behind_sets),
    spelled("tempo {no_reps}", "{no_reps}", "@ {no_reps}", "{no_reps} tempo"),
    spelled("tempo {fast}", "{fast}", "@ {fast}", only=behind_sets),
    spelled("tempo {fast}", "{fast} tempo"),
    spelled("tempo {digits}", "{digits}", "{digits} tempo"),
    spelled("pause {moment} at {spot}", "[{along}] [{a}] {moment} {still} {spot}",
            "{still} {moment} {spot}", "{still} {spot} {moment}", "paused {moment} {spot}",
            "paused for {moment} {spot}",
            "[{along}] [{a}] {moment} {spot}"),
    spelled("pause {n} s at {spot}", "[{along}] [{a}] {n} {sec} {still} {spot}"),
    spelled("pause {moment} at {spot}", "[{along}] [{a}] {moment} {hold} {spot}",
            "{hold} {moment} {spot}", "{hold} for {moment} {spot}", "{hold} {spot} for {moment}",
            "{hold} {spot} {moment}", only=behind_reps),
    spelled("pause {moment} at the squeeze", "[{along}] [{a}] {moment} {squeeze}",
            "squeeze {moment}", "squeeze for {moment}"),
    spelled("pause {moment} at {spot}", "[{along}] [{a}] {moment} {squeeze} {spot}",
            "squeeze {moment} {spot}", "squeeze for {moment} {spot}"),
    spelled("tempo {three}", "{three}", only=behind_load),
    spelled("intent fast", "fast", "explosive", "explosively", "explosive up", "fast up", "quick",
            "quickly", "as fast as possible", "max speed", "max velocity", "max intent",
            "with speed", "bar speed fast", "fast bar speed", "speed", "speed reps"),
    spelled("intent controlled", "controlled", "under control", "with control"),
    spelled("intent slow", "slow", "slowly", "slow and controlled", "slow & controlled",
            "slow, controlled"),
    spelled("remark {manner}", "{manner}"),
    spelled(
        "RIR {left}",
        "RIR: {left}", "RIR = {left}", "{left} RIR", "@ {left} RIR", "at {left} RIR",
        "at RIR {left}", "{left} {tank}", "leave {left}", "leaving {left}", "leave {left} {tank}",
        "leaving {left} {tank}", "keep {left} {tank}", "with {left} {tank}", "@ {left} {tank}",
        "to {left} short of failure", "{left} short of failure",
    ),
    spelled("RIR {n}-{other}", "RIR {n} to {other}", "@ RIR {n} to {other}"),
    spelled("RPE {number}-{more}", "RPE {number} to {more}", "@ RPE {number} to {more}"),
    spelled(
        "RPE {effort}",
        "RPE: {effort}", "RPE = {effort}", "{effort} RPE", "@ {effort} RPE", "at RPE {effort}",
        "effort {effort}", "RPE {effort}/10", "@ RPE {effort}/10", "effort {effort}/10",
        "effort {effort} out of 10",
        "RPE cap {effort}", "cap RPE {effort}", "RPE max {effort}", "max RPE {effort}",
        "at most RPE {effort}", "no more than RPE {effort}", "up to RPE {effort}",
        "RPE {effort} max", "RPE {effort} cap",
    ),
)  # fmt: skip
"""All of them."""
