"""What one set is: so many repetitions, a hold, a walk, a time, or a set of several parts."""

from dataclasses import dataclass
from typing import Any

from strength_handbook.model.count import Count
from strength_handbook.model.methods import Cluster, Strip
from strength_handbook.model.span import ends


@dataclass(frozen=True, slots=True)
class Reps:
    """A set is so many repetitions."""

    count: Count


@dataclass(frozen=True, slots=True)
class Hold:
    """A set is one hold; of a range of seconds its middle counts."""

    seconds: float

    @property
    def longest_s(self) -> float:
        """Seconds of a hold that is as long as it may be."""
        return ends(self.seconds)[1]


@dataclass(frozen=True, slots=True)
class Distance:
    """A set is one walk."""

    metres: float


@dataclass(frozen=True, slots=True)
class Clock:
    """A set lasts so long; of a range its middle counts."""

    seconds: float


@dataclass(frozen=True, slots=True)
class ClusterSet:
    """A set in parts with short pauses."""

    cluster: Cluster


@dataclass(frozen=True, slots=True)
class StripSet:
    """A set with weight coming off on the way."""

    strip: Strip


Work = Reps | Hold | Distance | Clock | ClusterSet | StripSet


def work_of(values: dict[str, Any]) -> Work | None:
    """The work that keys of a dose say, by their names; None where none of them does."""
    kinds: dict[str, type[Work]] = {
        "reps": Reps, "hold": Hold, "distance": Distance, "time": Clock, "cluster": ClusterSet,
        "strip": StripSet,
    }  # fmt: skip
    for name, kind in kinds.items():
        if name in values:
            return kind(values[name])
    return None
