"""What the handbook knows of one key of a dose; `dose.table` has an entry for every one.

An entry says how its key is read from a line, written back into one, printed on a board and said
in words; how a change of it is told, how it is taught, what of it is published and what a phone
gets. Whatever it leaves out it leaves out on purpose: then it says why (`Because`).
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from enum import Enum, Flag, IntEnum, auto
from typing import Any, Generic, Literal, TypeAlias, TypeVar

from strength_handbook.dose.clause import Clause
from strength_handbook.dose.share import Pace, Share
from strength_handbook.model.dose import Dose, DosePart
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.printed import NBSP

T = TypeVar("T")
Scene = TypeVar("Scene")


@dataclass(frozen=True, slots=True)
class Because:
    """Nothing, on purpose.

    Attributes:
        why: the reason.
    """

    why: str


BY_METHOD = Because("it is taught as the method that it makes of a set")
DIGEST = Because("a digest of all that is said tells that it has changed")
NO_LESSON = Because("nobody must be taught it")
IN_RECIPE = Because("its loads are in the recipe of the slot")
NO_SHARE = Because("a set takes as long and has as many repetitions without it")
ON_PAGE = Because("the page says it in words, and session mode has nothing to count of it")


class InLine(IntEnum):
    """Where a key stands in a line; those of `SET` are one clause."""

    LESS, DAY, SET, WITH, OPEN, MANNER, EVERY, REST, WORDS = range(9)


class OnBoard(IntEnum):
    """Where a key stands on a board; of a whole dose, `SET` to `ON_TOP` are one piece."""

    LESS, DAY, SET, BESIDE, ON_TOP, BEHIND, WITH, OPEN, MANNER, EVERY, REST, WORDS = range(12)


class Said(IntEnum):
    """Where a sentence stands: the task, what is got ready, the way, when to stop, the rhythm."""

    (
        DAY,
        TASK,
        ON_TOP,
        SET_UP,
        WHERE,
        READY,
        MOVE,
        BREATH,
        STOP,
        EFFORT,
        LAST,
        EVERY,
        SHARED,
        REST,
    ) = range(14)


@dataclass(frozen=True, slots=True)
class Board:
    """What a piece of notation may depend on beside its value.

    Attributes:
        part: all keys together.
        dose: the whole dose; None for a part, which says only what it says.
        short: in the shortest form that a coach still reads.
    """

    part: DosePart
    dose: Dose | None = None
    short: bool = False

    @property
    def gap(self) -> str:
        """Between a number and its percent sign, and around the signs for times and to."""
        return "" if self.short else NBSP

    @property
    def at(self) -> str:
        """Before a load."""
        return f"@{self.gap}"

    @property
    def each_side(self) -> str:
        """One side after the other."""
        return "ES" if self.short else "each side"

    @property
    def effort(self) -> str:
        """Before a number from 1 to 10."""
        return f"RPE{NBSP}" if self.short else f"effort{NBSP}"


@dataclass(frozen=True, slots=True)
class Told:
    """What a sentence may depend on beside its value.

    Attributes:
        dose: the whole dose.
        part: all of its keys.
        exercise: what is done.
        load: how heavy, as the end of a sentence; empty where effort alone decides.
    """

    dose: Dose
    part: DosePart
    exercise: Exercise
    load: str

    @property
    def sides(self) -> str:
        """The end of a sentence that says how often."""
        return " on each side" if self.dose.each_side else ""


Text: TypeAlias = Callable[[T, Scene], str | Iterable[str]]
"""From a value and what it may depend on to no text, one or several."""


Line: TypeAlias = tuple[InLine, Text[T, DosePart]]
"""How a value is written back into a line, so that reading it gives the same value."""

Piece: TypeAlias = tuple[OnBoard, Text[T, Board]]
"""How a value is printed on a board."""

Sentence: TypeAlias = tuple[Said, Text[T, Told]]
"""What is said of a value in plain words; without capital and full stop."""


class Way(Enum):
    """Where a key is different, a set is done in another way, and told as it is now."""

    OTHER = auto()


WAY = Way.OTHER

Step: TypeAlias = Callable[[Dose, Dose], Iterable[str]]
"""What is different from one week to the next: more or fewer, longer or shorter."""


@dataclass(frozen=True, slots=True)
class Lesson:
    """A way to do a set that somebody must be taught.

    Attributes:
        name: as the coach announces it.
        say: one sentence to teach it with. Common practice, no source.
        when: where it must be taught; None for wherever its key is written.
    """

    name: str
    say: str
    when: Callable[[Dose], bool] | None = None


@dataclass(frozen=True, slots=True)
class Method:
    """How sets are done, in one word, as it is published.

    Attributes:
        word: the word.
        lesson: how it is taught.
    """

    word: str
    lesson: Lesson | Because


@dataclass(frozen=True, slots=True)
class Amount:
    """A number of things, or what else a publication has of a dose, and how a change is told.

    Attributes:
        one: what one of them is called; for a time and other things, what stands before them.
        several: what several are called; for a length its unit.
        kind: what it is.
    """

    one: str
    several: str = ""
    kind: Literal["count", "low end", "range", "both ends", "time", "length", "text", "yes"] = (
        "count"
    )


@dataclass(frozen=True, slots=True)
class Datum:
    """A key of the published data.

    Attributes:
        key: its name there.
        value: what a dose comes to; None where it has none.
        told: how a change of it is told.
    """

    key: str
    value: Callable[[Dose], Any]
    told: Amount


class AtDoor(Flag):
    """What becomes of today's value where another exercise is done, or this one made different.

    `CARRIED` is taken over by an exercise without a dose of its own, `OF_SETS` goes where the door
    has other sets, `OF_REPS` where it asks for no repetitions; what `STAYS` is today's.
    """

    STAYS = 0
    CARRIED = auto()
    OF_SETS = auto()
    OF_REPS = auto()


STAYS = AtDoor.STAYS


@dataclass(frozen=True)
class KeyUse(Generic[T]):
    """What a key is good for beside being said.

    Attributes:
        lesson: how it is taught.
        phone: what session mode gets, by the letters of `phone.train`.
        one_set: the seconds and repetitions that it adds to a set.
    """

    lesson: Lesson | Because
    phone: Callable[[T, Dose], Mapping[str, Any]] | Because
    one_set: Callable[[T, Pace], Share] | Because


SAID_ONLY: KeyUse[Any] = KeyUse(NO_LESSON, ON_PAGE, NO_SHARE)
"""For a key that is said, and nothing more: not taught, not counted, not timed."""


def taught(name: str, say: str, when: Callable[[Dose], bool] | None = None) -> KeyUse[Any]:
    """The same for one that is taught."""
    return KeyUse(Lesson(name, say, when), ON_PAGE, NO_SHARE)


@dataclass(frozen=True, kw_only=True)
class Key(Generic[T]):
    """One key of a dose.

    Attributes:
        field: its field in `DosePart`.
        read: the clauses that fill it.
        line: how it is written back.
        board: how it is printed; several pieces where it stands at several places.
        words: what is said of it.
        door: what becomes of it where a door is taken.
        use: how it is taught, what a phone gets, and what it adds to a set.
        step: how a change from week to week is told.
        method: how the sets are done, for a key that decides it; what a set is decides last.
        data: what is published of it; what is not is in a digest.
    """

    field: str
    read: Clause | Because
    line: Line[T] | Because
    board: tuple[Piece[T], ...] | Because
    words: tuple[Sentence[T], ...] | Because
    door: AtDoor
    use: KeyUse[T]
    step: Step | Way | Because = WAY
    method: Callable[[T, Dose], Method] | None = None
    data: tuple[Datum, ...] | Because = DIGEST

    def value(self, part: DosePart) -> T | None:
        """What a part says; None where it says nothing."""
        found: T | None = getattr(part, self.field)
        return None if found == {} else found


def texts(found: str | Iterable[str]) -> Iterator[str]:
    """The texts that are no empty ones."""
    return filter(None, (found,) if isinstance(found, str) else found)
