"""Sets in parts with short pauses: clusters and rest-pause sets."""

import re
from collections.abc import Iterator
from dataclasses import replace
from typing import Any

from strength_handbook.calc.set_duration import broken_set_seconds
from strength_handbook.dose.clause import Found, reads
from strength_handbook.dose.key import (
    BY_METHOD,
    AtDoor,
    InLine,
    Key,
    KeyUse,
    Lesson,
    Method,
    OnBoard,
    Said,
    Told,
)
from strength_handbook.dose.line_words import COUNT, NUMBER, SETS, TIME
from strength_handbook.dose.share import Pace, Share, Times
from strength_handbook.dose.texts import clock_words, line_count, line_time, sets_words, whole
from strength_handbook.model.dose import Dose
from strength_handbook.model.dose_part import DosePart
from strength_handbook.model.methods import Cluster
from strength_handbook.model.printed import clock, count_word

_ADVICE = "write a set in parts with its pause, such as '3x(2+2+2)/20 s'"

_PATTERN = (
    rf"(?:{SETS})?\(\s*(\d+(?:\s*\+\s*\d+)+)\s*\)\s*/\s*({TIME}|{NUMBER})"
    rf"(?:\s*[x×]\s*({COUNT}))?"
)


def _found(found: re.Match[str]) -> Iterator[Found]:
    for group in (1, 4):  # the sets stand in front, or behind with an x
        if found[group] is not None:
            yield Found(("sets",), found[group], found.start(group))
    for index, part in enumerate(re.finditer(r"\d+", found[2])):
        yield Found(("cluster", "parts", index), part[0], found.start(2) + part.start())
    pause = found[3] if re.search(r"[:a-z]", found[3], re.IGNORECASE) else f"{found[3]} s"
    yield Found(("cluster", "pause"), pause, found.start(3))


def _line(cluster: Cluster, part: DosePart) -> str:
    sets = "" if part.sets is None else f"{line_count(part.sets)}x"
    return f"{sets}({'+'.join(map(str, cluster.parts))})/{line_time(cluster.pause)}"


def _words(cluster: Cluster, told: Told) -> Iterator[str]:
    between = ", then " if cluster.falling else ", "
    parts = between.join(count_word(part) for part in cluster.parts)
    pause = f"with {clock_words(cluster.pause)} between"
    yield f"{sets_words(told.dose.sets)}{told.sides}: {parts}, {pause}"
    if told.load:
        yield f"Do them {told.load}"


_REST_PAUSE = Lesson(
    "rest-pause sets", "One set with short pauses; each part is smaller than the one before."
)
_CLUSTERS = Lesson("cluster sets", "One set in parts; put it down for the short pause, then go on.")


def _method(cluster: Cluster, _: Dose) -> Method:
    if cluster.falling:
        return Method("rest-pause", _REST_PAUSE)
    return Method("cluster", _CLUSTERS)


def _guide(cluster: Cluster, _: Dose) -> dict[str, Any]:
    return {"c": [cluster.parts, whole(cluster.pause)]}


def _share(cluster: Cluster, pace: Pace) -> Share:
    reps = pace.repetitions(cluster.reps)
    return replace(
        reps,
        seconds=broken_set_seconds(cluster.parts, pace.rep_s, cluster.pause),
        terms=(*reps.terms, Times(len(cluster.parts) - 1, cluster.pause)),
        formula="broken_set_seconds",
    )


CLUSTER = Key[Cluster](
    field="cluster",
    read=reads((_PATTERN, _found), also={"cluster": _ADVICE}),
    line=(InLine.SET, _line),
    board=(
        (
            OnBoard.SET,
            lambda cluster, _: f"({'+'.join(map(str, cluster.parts))})/{clock(cluster.pause)}",
        ),
    ),
    words=((Said.TASK, _words),),
    method=_method,
    door=AtDoor.CARRIED,
    use=KeyUse(BY_METHOD, _guide, _share),
)


KEYS: tuple[Key[Any], ...] = (CLUSTER,)
