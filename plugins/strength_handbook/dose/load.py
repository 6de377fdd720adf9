"""How heavy: in a line, on a board, and in plain words that end a sentence."""

from typing import Any

from strength_handbook.dose.clause import reads, take
from strength_handbook.dose.key import (
    IN_RECIPE,
    NO_LESSON,
    NO_SHARE,
    STAYS,
    Amount,
    Because,
    Board,
    Datum,
    InLine,
    Key,
    KeyUse,
    OnBoard,
    Said,
)
from strength_handbook.dose.line_words import LOAD, PERCENT
from strength_handbook.dose.texts import line_mass, line_number, percent_words
from strength_handbook.model.dose import Dose
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.load import (
    BodyWeight,
    FixedLoad,
    Load,
    PercentOfBase,
    PercentOfBodyMass,
    PercentOfEffort,
    PercentOfSystem,
    PercentOfTop,
    PercentOfTrainingMax,
    RepMax,
    Setting,
)
from strength_handbook.model.loading import InHands, OnBar
from strength_handbook.model.pace import PaceOfBest
from strength_handbook.model.printed import NBSP, count_word
from strength_handbook.model.quantities import Mass
from strength_handbook.model.span import ends


def load_in_words(load: Load | None, exercise: Exercise) -> str:
    """The load as the end of a sentence, or nothing where effort alone decides."""
    match load:
        case None:
            return ""
        case PercentOfBase(percent):
            best = "tested best" if exercise.going is not None else "best single"
            return f"at {percent_words(percent)} of your {best}"
        case PercentOfSystem(percent):
            return f"at {percent_words(percent)} of your best total, body included"
        case PercentOfBodyMass(percent):
            return f"with {percent_words(percent)} of your body weight{_where(exercise)}"
        case FixedLoad():
            return f"with {load.text.replace('–', ' to ')}{_where(exercise)}"
        case BodyWeight(change, sign):
            if not change.grams:
                return "with body weight only"
            return f"with {change.label} {'added' if sign > 0 else 'taken off'}"
        case RepMax(reps, percent):
            share = "" if percent == 100 else f"{percent_words(percent)} of "
            return f"with {share}a load you could lift {count_word(reps)} times"
        case PercentOfEffort(percent, reserve):
            good = f"{count_word(reserve)} good {'one' if reserve == 1 else 'ones'}"
            return f"with {percent_words(percent)} of a load that would leave {good}"
        case PercentOfTop(percent):
            return f"at {percent_words(percent)} of it"
        case PercentOfTrainingMax(percent):
            return f"at {percent_words(percent)} of your training max"
        case PaceOfBest(seconds):
            return f"at {_pace_words(seconds, exercise)}"
        case Setting(value):
            return f"at {value:g} on the machine"


def _pace_words(seconds: float, exercise: Exercise) -> str:
    """The pace of the best, and how much slower or faster."""
    low, high = sorted(abs(end) for end in ends(seconds))
    if not high:
        return "the pace of your tested best"
    many = f"{low:g}" if low == high else f"{low:g} to {high:g}"
    than = "slower" if seconds > 0 else "faster"
    per = exercise.going.per if exercise.going is not None else ""
    return f"a pace {many} s {than} for {per} than your tested best"


_AT = "a load belongs after '@', such as '@ 74 %', '@ 60 kg', '@ 25 % BM' or '@ BW+10 kg'"
_HELD = {"one-hand": " in one hand", "both-hands": " in both hands", "both-arms": " in both arms"}


def _held(exercise: Exercise) -> str:
    """How one weight is held: as its file says, else by whether the sides are done in turn."""
    own = getattr(exercise.load, "held", None)
    handle = isinstance(exercise.load, OnBar)
    return own or ("one-hand" if handle or exercise.sides == "each" else "both-hands")


def _where(exercise: Exercise) -> str:
    if isinstance(exercise.load, InHands | OnBar):
        if exercise.load.hands == 2:
            return " in each hand"
        if exercise.load.hands == 1:
            return _HELD[_held(exercise)]
    return " on your back" if getattr(exercise.load, "carrier", None) == "pack" else ""


def line_load(load: Load) -> str:
    """With all digits, so that it comes back the same."""
    match load:
        case FixedLoad(both=None):
            return line_mass(load.mass)
        case FixedLoad():
            low, high = map(line_mass, load.ends)
            return f"{low.removesuffix(f' {load.mass.unit}')}-{high}"
        case BodyWeight(change, sign):
            plain = load == BodyWeight(Mass(0))
            return "BW" if plain else f"BW{'+' if sign > 0 else '-'}{line_mass(change)}"
        case Setting(value):
            return f"{line_number(value)} units"
        case PaceOfBest():
            return load.text.replace("−", "-").replace("–", "-")
    percent: float | None = getattr(load, "percent", None)
    if percent is None:
        return load.text
    return load.text.replace(f"{percent:g} %", f"{line_number(percent)} %")


def load_on_board(load: Load, board: Board) -> str:
    """With its sign, in one piece where it is short."""
    # Only this one is long enough to need a second line.
    text = load.text.replace(" %", f"{board.gap}%")
    long = board.dose is not None and isinstance(load, PercentOfEffort)
    return f"{board.at}{text if long else text.replace(' ', NBSP)}"


def _published(dose: Dose) -> str | None:
    """Of sets that differ only a load that they have in common."""
    load = dose.part.load if dose.series else dose.load
    return None if load is None else load.text


LOAD_KEY = Key[Load](
    field="load",
    read=reads(
        (rf"@\s*({LOAD})", take("load")),
        advice={"load": "write '@' for 'load', such as '@ 74 %' or '@ 60 kg'"},
        also={"@": _AT},
    ),
    line=(InLine.SET, lambda load, _: f"@ {line_load(load)}"),
    board=((OnBoard.BESIDE, load_on_board),),
    words=Because("it ends the sentence about the sets"),
    step=Because("heavier or lighter follows from what the room can make"),
    data=(Datum("load", _published, Amount("load", kind="text")),),
    door=STAYS,
    use=KeyUse(NO_LESSON, IN_RECIPE, NO_SHARE),
)


TRAINING_MAX = Key[float](
    field="training_max",
    read=reads(
        (rf"TM\s+({PERCENT})", take("training-max")),
        advice={"TM": "a percentage belongs after 'TM', such as 'TM 95 %'"},
    ),
    line=(InLine.WITH, lambda share, _: f"TM {line_number(share)} %"),
    board=((OnBoard.WITH, lambda share, board: f"TM{NBSP}={NBSP}{share:g}{board.gap}%"),),
    words=(
        (Said.SET_UP, lambda share, _: f"Your training max is {share:g} % of your best single"),
    ),
    step=Because("the notation tells it where nothing else is different"),
    door=STAYS,
    use=KeyUse(NO_LESSON, IN_RECIPE, NO_SHARE),
)


KEYS: tuple[Key[Any], ...] = (LOAD_KEY, TRAINING_MAX)
