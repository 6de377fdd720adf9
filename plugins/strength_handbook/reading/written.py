"""The files that have their shape, sorted by what they describe."""

from dataclasses import dataclass, field
from typing import Generic, TypeVar

from pydantic import BaseModel

from strength_handbook.model.exercise import Exercise
from strength_handbook.model.house_rules import HouseRules
from strength_handbook.model.lifter import Lifters
from strength_handbook.model.program import Program, Wave
from strength_handbook.model.room import Room
from strength_handbook.reading.files import FileKind, FoundFile
from strength_handbook.reading.source import Source

M = TypeVar("M", bound=BaseModel)


@dataclass(frozen=True, slots=True)
class File(Generic[M]):
    """One typed file with its source.

    Attributes:
        model: what it says.
        source: where it says it.
        order: number of the wave, else 0.
        id: short name of the wave, else empty.
    """

    model: M
    source: Source
    order: int = 0
    id: str = ""


@dataclass
class Written:
    """All files that have their shape, by what they describe."""

    room: File[Room] | None = None
    rules: File[HouseRules] | None = None
    lifters: File[Lifters] | None = None
    exercises: dict[str, File[Exercise]] = field(default_factory=dict)
    programs: dict[str, File[Program]] = field(default_factory=dict)
    waves: dict[str, list[File[Wave]]] = field(default_factory=dict)
    broken: list[FoundFile] = field(default_factory=list)
    """Files with problems of their own: nothing is said about what they may lack or define. One
    that has its shape all the same stands in its place too."""

    def add(self, found: FoundFile, model: BaseModel, source: Source) -> None:
        """Put one file in its place."""
        if isinstance(model, Room):
            self.room = File(model, source)
        elif isinstance(model, HouseRules):
            self.rules = File(model, source)
        elif isinstance(model, Lifters):
            self.lifters = File(model, source)
        elif isinstance(model, Exercise):
            self.exercises[found.id] = File(model, source)
        elif isinstance(model, Program):
            self.programs[found.id] = File(model, source)
        elif isinstance(model, Wave):
            self.waves.setdefault(found.id, []).append(File(model, source, found.order, found.wave))

    def waves_of(self, program: str) -> list[File[Wave]]:
        """A program's waves in order."""
        return sorted(self.waves.get(program, []), key=lambda file: file.order)

    def unread(self, kind: FileKind, program: str = "") -> set[str]:
        """Ids of broken files of a kind."""
        return {f.id for f in self.broken if f.kind is kind and program in ("", f.id)}
