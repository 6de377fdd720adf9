"""What a field says of itself where the usual does not hold for it, always with the reason.

The usual: a text is prose that checks read, and a field is compared with an earlier publication.
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class NotProse:
    """A text that is no words of the coach's own choosing: a reference, a number.

    Attributes:
        why: the reason.
    """

    why: str


@dataclass(frozen=True, slots=True)
class Label:
    """A name that the handbook gives to something: no sentence, and capitals tell nothing.

    Attributes:
        why: the reason.
        place: it may be named after somebody: a street, a hall.
    """

    why: str
    place: bool = False


@dataclass(frozen=True, slots=True)
class NamesThings:
    """Sentences in which the handbook may name places and things of its own for the first time.

    Attributes:
        why: the reason.
        place: they may be named after somebody: a street, a hall.
    """

    why: str
    place: bool = False


@dataclass(frozen=True, slots=True)
class CoachOnly:
    """A text that no member reads.

    Attributes:
        why: the reason.
    """

    why: str


@dataclass(frozen=True, slots=True)
class Compared:
    """A field whose value stands in the published data by itself.

    Attributes:
        key: under which key.
    """

    key: str


@dataclass(frozen=True, slots=True)
class NotCompared:
    """A field that changes no page that members read.

    Attributes:
        why: the reason.
    """

    why: str
