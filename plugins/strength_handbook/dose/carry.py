"""Walks with a load, and one thing carried by several."""

from collections.abc import Iterator
from typing import Any

from strength_handbook.calc.pace import pace_seconds
from strength_handbook.calc.set_duration import carry_seconds
from strength_handbook.dose.clause import reads, take
from strength_handbook.dose.going import GOING, LONGEST_CARRY_M, distance_words
from strength_handbook.dose.key import (
    BY_METHOD,
    STAYS,
    Amount,
    AtDoor,
    Board,
    Datum,
    InLine,
    Key,
    KeyUse,
    Lesson,
    Method,
    OnBoard,
    Said,
    Told,
    taught,
)
from strength_handbook.dose.line_words import COUNT, LATER, MASS, METRES_SPAN, TIME
from strength_handbook.dose.share import Lasting, Pace, Paced, Share, Walk
from strength_handbook.dose.texts import (
    clock_words,
    line_count,
    line_length,
    line_mass,
    line_time,
    sets_words,
    whole,
)
from strength_handbook.model.dose import Distance, Dose
from strength_handbook.model.dose_part import DosePart
from strength_handbook.model.methods import Team
from strength_handbook.model.printed import NBSP, clock, count_word, length_words, metres
from strength_handbook.model.span import Span, ends, middle_of


def _line_distance(length: float, part: DosePart) -> str:
    far = line_length(length, "m")
    sign = "x" if ends(length)[1] > LONGEST_CARRY_M else " -> "
    return f"distance {far}" if part.sets is None else f"{line_count(part.sets)}{sign}{far}"


def _distance_words(length: float, told: Told) -> str:
    if told.dose.going is not None:
        return distance_words(length, told)
    sets = sets_words(told.dose.sets, "walk", "walks")
    return f"{sets} of {length_words(length)}{told.sides} {told.load}"


def _metres(dose: Dose) -> float | None:
    return dose.work.metres if isinstance(dose.work, Distance) else None


def _planned_m(dose: Dose) -> float | None:
    """Metres to plan with; of a range their middle."""
    far = _metres(dose)
    return None if far is None else middle_of(far)


def _range_m(dose: Dose) -> str | None:
    """Both ends, where it may be less or more."""
    far = _metres(dose)
    return f"{far:g}" if isinstance(far, Span) else None


def _distance_step(a: Dose, b: Dose) -> Iterator[str]:
    was, now = _metres(a), _metres(b)
    if was is not None and now is not None and was != now:
        farther = "farther" if now > was else "less far"
        yield f"{farther}: {metres(now)} instead of {metres(was)}"


_CARRY = Method("carry", Lesson("a carry", "Walk tall, and set it down before it falls."))


def _share(length: float, pace: Pace) -> Share:
    """The walk, after what is held before it; or the way at the usual pace."""
    length, going = middle_of(length), pace.dose.going
    if going is not None and going.per_m:
        seconds = pace_seconds(length, middle_of(going.pace), going.per_m)
        return Share(seconds, (Paced(length, going),), formula="pace_seconds")
    speed, pause = pace.rule("walking-speed"), pace.dose.said.pause
    walk, held = carry_seconds(length, speed), pause.time if pause else 0.0
    before = (Lasting(held, "held"),) if held else ()
    return Share(
        walk + held,
        (*before, Walk(length, speed)),
        held_s=held,
        formula="carry_seconds",
        rules=("walking-speed",),
    )


DISTANCE = Key[float](
    field="distance",
    read=reads(
        (rf"({COUNT})\s*(?:[x×]|->|→)\s*({METRES_SPAN})", take("sets", "distance")),
        (rf"distance\s+({METRES_SPAN})", take("distance")),
        advice={"distance": "metres belong after 'distance', such as 'distance 40 m'"},
    ),
    line=(InLine.SET, _line_distance),
    board=((OnBoard.SET, lambda length, _: metres(length)),),
    words=((Said.TASK, _distance_words),),
    step=_distance_step,
    method=lambda _, dose: _CARRY if dose.going is None else GOING,
    data=(
        Datum("distance_m", _planned_m, Amount("distance", "m", "length")),
        Datum("distance_m_range", _range_m, Amount("distance", "m", "both ends")),
    ),
    door=AtDoor.CARRIED,
    use=KeyUse(BY_METHOD, lambda length, _: {"m": whole(ends(length)[1])}, _share),
)


def _line_team(team: Team, _: DosePart) -> str:
    turns = "" if team.turn_every is None else f" turn {line_time(team.turn_every)}"
    return f"team {team.bearers} x {line_mass(team.mass)}{turns}"


def _board_team(team: Team, _: Board) -> Iterator[str]:
    yield f"{team.bearers} carry {team.mass.label.replace(' ', NBSP)}"
    if team.turn_every is not None:
        yield f"change places every {clock(team.turn_every)}"


def _team_words(team: Team, _: Told) -> Iterator[str]:
    yield f"{count_word(team.bearers)} people carry {team.mass.label} together"
    if team.turn_every is not None:
        yield f"Change places every {clock_words(team.turn_every)}"


TEAM = Key[Team](
    field="team",
    read=reads(
        (
            rf"team\s+(\d+)\s*[x×]\s*({MASS})(?:{LATER}turn(?:\s+every)?\s+({TIME}))?",
            take("team.bearers", "team.mass", "team.turn-every"),
        ),
        advice={"team": "write a team like 'team 6 x 100 kg turn 60 s'"},
    ),
    line=(InLine.WITH, _line_team),
    board=((OnBoard.WITH, _board_team),),
    words=((Said.SET_UP, _team_words),),
    door=STAYS,
    use=taught("a team carry", "Lift, walk and set down together, on one voice."),
)


KEYS: tuple[Key[Any], ...] = (DISTANCE, TEAM)
