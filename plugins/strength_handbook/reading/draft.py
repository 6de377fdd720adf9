"""An exercise that is only begun: what it needs to be shown, and what stands for the rest.

It needs a name, how it is loaded, one cue and a stop rule. Where nothing is known yet, the careful
answer stands: not alone, and stop where something hurts.
"""

from strength_handbook.model.exercise import DRAFT
from strength_handbook.reading.source import Plain, Source, value_at

OPEN = "Still to be written."
"""What members would read in place of a text."""
_NEEDED = ("name", "load", "stop")
_CUES = ("before", "during", "finish", "voice")
_DOOR: Plain = {"how": OPEN}
_REST: dict[str, Plain] = {
    "pattern": "isolated",  # the movement about which the checks assume least
    "role": "assistance",
    "stations": [],
    "poses": {"start": OPEN, "turn": OPEN, "end": OPEN},
    "set-up": [OPEN],
    "breathing": OPEN,
    "spotting": {"spotters": 0, "where": OPEN, "alone": "no", "alone-how": OPEN},
    "doors": {
        "easier": _DOOR, "harder": _DOOR, "hurts": {"how": "Stop for today and tell the coach."},
        "taken": _DOOR, "no-partner": _DOOR,
    },
    "faults": [{"see": OPEN, "fix": OPEN}],
    "why": OPEN,
    "muscles": {"direct": []},
}  # fmt: skip
_BY_PARTS = ("hurts",)
"""Where anything that is written is enough."""
_FEWEST_STEPS = 3


def filled_up(source: Source) -> tuple[Plain, tuple[str, ...]]:
    """An exercise's data with something in every place that has to be filled, and which were empty.

    Args:
        source: the file.

    Returns:
        The data as they are and nothing missing, where all is there or too little to show it.
    """
    data = source.data
    if not isinstance(data, dict) or "missing" in data or not all(map(data.get, _NEEDED)):
        return data, ()
    if not any(value_at(data, ("cues", key)) for key in _CUES):
        return data, ()
    missing: list[str] = []
    filled = _filled(data, _REST, "", missing)
    steps = data.get("set-up")
    if isinstance(steps, list) and 0 < len(steps) < _FEWEST_STEPS:
        missing.append(f"set-up with {_FEWEST_STEPS} steps at least")
    if not missing:
        return data, ()
    return filled | {"name": f"{data['name']} {DRAFT}", "missing": [*missing]}, tuple(missing)


def _filled(
    data: dict[str, Plain], rest: dict[str, Plain], above: str, missing: list[str]
) -> dict[str, Plain]:
    """Data with what is missing of the rest; each is named on the list."""
    filled = dict(data)
    for key, value in rest.items():
        own = data.get(key)
        if own is None or own in ([], {}):
            missing.append(f"{above}{key}")
            filled[key] = value
        elif isinstance(own, dict) and isinstance(value, dict) and key not in _BY_PARTS:
            filled[key] = _filled(own, value, f"{above}{key}: ", missing)
    return filled
