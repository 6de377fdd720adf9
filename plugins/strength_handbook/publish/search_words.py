"""Words that people type for a page and that do not stand on it: other names, short forms, slips.

Words of the trade and common slips of the keyboard; common practice, no source. The search weighs
them like tags, above everything else, so that the page they mean comes first.
"""

from collections.abc import MutableMapping
from typing import Any

SAFETY = "safety.md"

_HELP = ("back pain", "chest pain", "knee pain", "pain", "hurt", "injury", "dizzy", "faint",
         "emergency", "ambulance", "first aid", "112", "911", "999")  # fmt: skip
"""What leads to the page with when to stop and where help is, before any exercise."""

_OTHER: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("pull-up", ("chin up", "chin-up", "chinup", "pullup", "pull ups")),
    ("deadlift", ("dead lift", "deadlft", "dl")),
    ("romanian deadlift", ("rdl", "stiff leg deadlift")),
    ("trap-bar deadlift", ("hex bar", "trapbar")),
    ("squat", ("squt", "sqaut", "squats")),
    ("split squat", ("lunge", "bss", "rfess")),
    ("floor press", ("bench press", "bench", "chest press")),
    ("standing press", ("overhead press", "ohp", "shoulder press", "military press")),
    ("push press", ("landmine",)),
    ("row", ("rowing", "rows")),
    ("swing", ("kb swing", "swings", "kettlebel")),
    ("carry", ("farmers walk", "farmer walk", "loaded walk")),
    ("leg curl", ("hamstring curl",)),
    ("nordic", ("nordic curl", "hamstring")),
    ("calf", ("calf raise", "heel raise")),
    ("plank", ("side bridge", "planks")),
    ("hang", ("grip", "dead hang")),
    ("pinch", ("grip",)),
    ("jump", ("plyo", "box jumps")),
    ("step-up", ("step up", "stepup")),
    ("bridge", ("glute bridge", "hip bridge")),
    ("sled", ("sledge", "sled push")),
)
"""What an exercise's name holds, and what else it is called."""


def search_words(uri: str, title: str) -> list[str]:
    """What else a page is to be found by.

    Args:
        uri: path of its source.
        title: its title.

    >>> search_words("exercises/neutral-grip-pull-up.md", "Neutral-grip pull-up")[:2]
    ['chin up', 'chin-up']
    >>> search_words("winter/week-01/index.md", "Week 1")
    []
    """
    if uri == SAFETY:
        return list(_HELP)
    if not uri.startswith("exercises/"):
        return []
    name = title.casefold()
    return list(dict.fromkeys(word for part, others in _OTHER if part in name for word in others))


def with_words(meta: MutableMapping[str, Any], uri: str, title: str) -> MutableMapping[str, Any]:
    """A page's keys with the words among its tags, as the search reads them."""
    words = search_words(uri, title)
    tags = meta.get("tags")
    return {**meta, "tags": [*(tags if isinstance(tags, list) else []), *words]} if words else meta
