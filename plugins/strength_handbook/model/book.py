"""Everything a gym has written, put together and checked: what the other parts work on."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from strength_handbook.model.exercise import Exercise
from strength_handbook.model.house_rules import RULES, HouseRules, read_value
from strength_handbook.model.lifter import Lifter
from strength_handbook.model.media import MediaFile
from strength_handbook.model.program import Program, Wave
from strength_handbook.model.room import Room


@dataclass(frozen=True)
class WrittenProgram:
    """A program with its waves in order."""

    id: str
    program: Program
    waves: tuple[Wave, ...]
    wave_ids: tuple[str, ...]
    """Short name of each wave, from its file name."""

    @property
    def weeks(self) -> tuple[int, ...]:
        """All week numbers, in order."""
        return tuple(sorted(week for wave in self.waves for week in wave.weeks))


@dataclass(frozen=True, eq=False)
class Book:
    """Room, rules, lifters, exercises and programs of one gym."""

    room: Room
    rules: HouseRules
    lifters: Mapping[str, Lifter]
    exercises: Mapping[str, Exercise]
    programs: tuple[WrittenProgram, ...]
    rule_values: Mapping[str, float]
    """Every house rule's number: the coach's, or the default."""
    media: Mapping[str, MediaFile] = field(default_factory=dict)
    """Photos and films that exercises show, by name."""

    def rule(self, slug: str) -> float:
        """The value of a house rule.

        Raises:
            KeyError: where there is no such rule.
        """
        return self.rule_values[slug]


def rule_values(rules: HouseRules) -> dict[str, float]:
    """Every rule's number: what the coach wrote, else the default.

    Raises:
        ValueError: where a written value has the wrong unit.
    """
    own = {slug: rule.value for slug, rule in rules.rules.items()}
    return {
        slug: read_value(own[slug], kind) if slug in own else kind.default
        for slug, kind in RULES.items()
    }
