"""Ways to do a set that somebody must be taught, and one sentence to teach each with."""

from strength_handbook.plan.data import method
from strength_handbook.plan.worked import WorkedSlot

_METHODS = {
    "test": "a test", "ramp": "a ramp to the day's best", "back-off": "sets after a ramp",
    "interval": "sets by the clock", "hold": "holds", "carry": "a carry", "timed": "timed sets",
    "density": "as many as possible in a time", "rest-pause": "rest-pause sets",
    "cluster": "cluster sets", "strip": "strip sets", "open": "an open last set",
}  # fmt: skip
"""Each method as the coach announces it; plain sets need no lesson."""

SAY = {
    "a test": "Find today's best in few attempts; end at the first one that is not good.",
    "a ramp to the day's best": "Work up to today's best, only adding weight, while it is good.",
    "sets after a ramp": "First the day's best, then lighter sets with a share of it.",
    "sets by the clock": "Each set starts on the clock; end it when the speed drops.",
    "holds": "Get into the position, stay there, and keep breathing.",
    "a carry": "Walk tall, and set it down before it falls.",
    "timed sets": "Work by the clock, at a pace that you can keep.",
    "as many as possible in a time": "As many good ones as you can; stop when the pace drops.",
    "rest-pause sets": "One set with short pauses; each part is smaller than the one before.",
    "cluster sets": "One set in parts; put it down for the short pause, then go on.",
    "strip sets": "Weight comes off without rest, left and right in turn, and on it goes.",
    "an open last set": "The last set is open: the stated number, then on while it is good.",
    "bands on the bar": "Bands pull harder the higher you are; speed up all the way.",
    "chains on the bar": "Chains come off the floor as you rise; speed up all the way.",
    "a hold inside the repetition": "Stop and hold in each repetition, at the stated place.",
    "a push against pins": "Push against steel that does not move; let the force grow, never jerk.",
    "lowering only": "Only the lowering counts; the weight comes back up another way.",
    "a team carry": "Lift, walk and set down together, on one voice.",
    "help": "The help takes weight off; the control stays yours.",
    "lifting fast": "Every repetition as quick as the first, and under control.",
}  # fmt: skip
"""What the coach says of each. Common practice, no source."""


def ways_of(slot: WorkedSlot) -> list[str]:
    """How a slot is done, as far as it must be taught; each is a key of `SAY`."""
    said = slot.dose.said
    parts = (
        ("bands on the bar", said.bands), ("chains on the bar", said.chains),
        ("a hold inside the repetition", said.pause), ("a push against pins", said.push),
        ("lowering only", said.return_by), ("a team carry", said.team), ("help", said.assist),
    )  # fmt: skip
    ways = [_METHODS[way]] if (way := method(slot)) in _METHODS else []
    ways += [name for name, value in parts if value is not None]
    return [*ways, "lifting fast"] if slot.dose.fast else ways
