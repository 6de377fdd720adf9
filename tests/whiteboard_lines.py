"""Lines of a whiteboard with the meaning that their writers gave them, beside what is read."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import groupby
from pathlib import Path
from typing import Any

import yaml

from strength_handbook.dose.kit import NamedKit
from strength_handbook.model.count import Count
from strength_handbook.model.dose_part import DosePart
from strength_handbook.model.load import (
    BodyWeight,
    FixedLoad,
    Load,
    PercentOfBase,
    PercentOfBodyMass,
    PercentOfTop,
    PercentOfTrainingMax,
    RepMax,
)
from strength_handbook.model.methods import SeriesPart
from strength_handbook.model.pace import PaceOfBest
from strength_handbook.model.samples import samples_in
from strength_handbook.model.span import ends
from strength_handbook.reading.doing import Doing
from strength_handbook.reading.long_form import stored
from strength_handbook.reading.notation import NotationError, read_dose

FOLDER = Path(__file__).parent / "dose" / "whiteboard"
KIT = NamedKit(("yellow", "green", "red", "black", "purple"), 2)
DOING = {
    "bar lift": Doing(kind="bar", hands=0, kit=KIT),
    "bodyweight": Doing(kind="body-weight", hands=0, kit=KIT),
    "dumbbells": Doing(kind="hands", hands=2, kit=KIT),
    "kettlebell": Doing(kind="hands", hands=1, kit=KIT),
    "stack machine": Doing(kind="stack", hands=0, kit=KIT),
    "plate machine": Doing(kind="plate", hands=0, kit=KIT),
    "band": Doing(kind="effort", hands=0, kit=KIT),
    "hold": Doing(kind="body-weight", hands=0, kit=KIT),
    "carry": Doing(kind="hands", hands=2, kit=KIT),
    "sled": Doing(kind="carrier", hands=0, kit=KIT),
    "jump": Doing(kind="body-weight", hands=0, jump=True, kit=KIT),
    "throw": Doing(kind="hands", hands=1, kit=KIT),
    **dict.fromkeys(
        ("row", "ride", "ski", "run", "swim", "step machine"), Doing(kind="endurance", hands=0)
    ),
}
"""How what a line was written for is loaded."""
KG = 2.20462262
SIDE_BY_SIDE = re.compile(r"\s*[,+]\s*(?=[A-Za-z]|\d+ kg chains|\d+ chains?)")


@dataclass(frozen=True)
class Line:
    """One line.

    Attributes:
        text: as it was written.
        of: for what.
        units: of the room.
        means: what its writer meant; None where there was nothing to say.
        ask: why a reader would ask back; empty where it is plain.
    """

    text: str
    of: str
    units: str
    means: dict[str, Any] | None
    ask: str = ""


def lines(folder: Path = FOLDER) -> list[Line]:
    """All of them."""
    return [
        Line(
            one["line"], one["of"], one.get("units", "kg"), one.get("means"),
            str(one.get("ask", "")),
        )
        for file in sorted(folder.glob("*.yml"))
        for one in yaml.safe_load(file.read_text(encoding="utf-8"))
    ]  # fmt: skip


def read(line: Line) -> DosePart:
    """What is read of it.

    Raises:
        NotationError: where it is refused.
    """
    with samples_in(line.units):
        part = DosePart.model_validate(stored(read_dose(line.text, DOING[line.of])))
    if isinstance(part.load, BodyWeight) and DOING[line.of].kind != "body-weight":
        # The files' check of doses against their exercises, 'no-such-load'.
        raise NotationError(0, "there is no 'BW' here; write a load")
    if DOING[line.of].kind == "endurance" and part.reps is not None:
        # The same for repetitions of what is rowed or run.
        raise NotationError(0, "nothing is counted here; write '4x50 m' or '4x50 s'")
    return part


Facts = frozenset[tuple[Any, ...]]
"""What is said of a load: each kind with both ends."""


@dataclass
class Meaning:
    """What is compared.

    Attributes:
        groups: sets that are alike, with what is done and how heavy.
        more: rest, interval, sides and the like.
    """

    groups: list[tuple[Any, ...]] = field(default_factory=list)
    more: dict[str, Any] = field(default_factory=dict)


def both(value: Any) -> tuple[float, float] | None:
    """Both ends of a number, as it stands in a file or in a dose; None where there is none."""
    return None if value is None else span(value)


def span(value: Any) -> tuple[float, float]:
    """The same of a number that is there."""
    if isinstance(value, str):
        several = [float(one) for one in re.split(r"\s*[-–]\s*", value)]
        low, high = several[0], several[-1]
    else:
        low, high = ends(value)
    return round(low, 1), round(high, 1)


def text_of_count(count: Count | None) -> str:
    """Repetitions: `5`, `8-12`, `5+`."""
    return "" if count is None else count.text.replace("–", "-")


def _mass(number: str, unit: str) -> tuple[Any, ...]:
    low, high = (float(one) for one in (number.split("-") * 2)[:2])
    return tuple(round(end / (KG if unit.startswith("lb") else 1), 1) for end in (low, high))


N = r"(\d+(?:\.\d+)?(?:-\d+(?:\.\d+)?)?)"
_LOADS: tuple[tuple[str, Any], ...] = (
    (rf"{N} %( of training base| TM)", lambda m: ("TM", *span(m[1]))),
    (rf"top set {N} %|{N} % of top set", lambda m: ("top", *span(m[1] or m[2]))),
    (rf"top set -{N} %", lambda m: ("top", 100 - float(m[1]), 100 - float(m[1]))),
    (rf"{N} % of bodyweight", lambda m: ("BM", *span(m[1]))),
    (rf"{N} %", lambda m: ("%", *span(m[1]))),
    (rf"(?:2 x )?{N} (kg|lb)(?: each)?", lambda m: ("mass", *_mass(m[1], m[2]))),
    (rf"(?:bodyweight )?\+ ?{N} (kg|lb)", lambda m: ("added", *_mass(m[1], m[2]))),
    (rf"(?:bodyweight )?[-−] ?{N} (kg|lb)", lambda m: ("off", *_mass(m[1], m[2]))),
    (r"bodyweight|BW", lambda _: ("added", 0.0, 0.0)),
    (rf"RPE {N}", lambda m: ("RPE", *span(m[1]))),
    (rf"RIR {N}", lambda m: ("RIR", *span(m[1]))),
    (r"(\d+) ?RM", lambda m: ("RM", int(m[1]))),
    (
        r"(\d+) (?:pairs? of )?chains? ?(?:a side|each side|per side)?",
        lambda m: ("chains", int(m[1])),
    ),
    (r"(\d+)RM test", lambda m: ("RM", int(m[1]))),
)


def load_facts(text: str | None) -> Facts:
    """A load as its writer says it; what is not understood stands there as it is."""
    if text in (None, "heavy"):  # that word is kept as a remark
        return frozenset()
    found = []
    for one in (
        SIDE_BY_SIDE.split(str(text)) if not str(text).startswith("bodyweight +") else [text]
    ):
        matches = ((re.fullmatch(pattern, one.strip()), make) for pattern, make in _LOADS)
        found.append(next((make(m) for m, make in matches if m), (one,)))
    return frozenset(found)


def _of_load(load: Load | None) -> Iterator[tuple[Any, ...]]:
    match load:
        case None:
            return
        case PercentOfBase(percent):
            yield ("%", *span(percent))
        case PercentOfTrainingMax(percent):
            yield ("TM", *span(percent))
        case PercentOfTop(percent):
            yield ("top", *span(percent))
        case PercentOfBodyMass(percent):
            yield ("BM", *span(percent))
        case FixedLoad():
            yield ("mass", *(round(end.grams / 1000, 1) for end in load.ends))
        case BodyWeight(change, sign):
            kg = round(change.grams / 1000, 1)
            yield ("added" if sign > 0 else "off", kg, kg)
        case RepMax(reps, 100):
            yield ("RM", reps)
        case PaceOfBest():
            yield ("pace", load.text)
        case _:
            yield (load.text,)


def wanted(line: Line) -> Meaning:
    """The meaning of a line in the form that is compared."""
    means = line.means or {}
    found = Meaning()
    for one in means.get("sets", []):
        group = (
            str(one.get("sets", "")), str(one.get("reps", "")), both(_max(one.get("seconds"))),
            both(one.get("metres")), load_facts(one.get("load", _share(one.get("aim")))),
        )  # fmt: skip
        found.groups += [group]
        for key in ("each_side", "tempo", "pause", "hold"):
            if key in one:
                found.more[key] = one[key]
    found.groups *= int(means.get("rounds", 1)) if found.groups and len(found.groups) > 1 else 1
    if "hold" in found.more and found.groups and found.groups[0][1]:
        found.more.setdefault("pause", found.more["hold"])  # a hold in each repetition
    for key in ("rest", "every", "total_reps"):
        if key in means:
            found.more[key] = means[key]
    return found


def _share(aim: Any) -> str | None:
    """A share of a best that a pace is aimed by."""
    found = re.search(rf"{N} %", str(aim))
    return f"{found[1]} %" if found else None


def _max(value: Any) -> Any:
    return None if value == "max" else value


def understood(part: DosePart) -> Meaning:
    """The same of what was read."""
    effort: list[tuple[Any, ...]] = []
    if part.rir is not None:
        effort.append(("RIR", *span(part.rir)))
    if part.rpe is not None:
        effort.append(("RPE", *span(part.rpe)))
    if part.chains is not None:
        effort.append(("chains", part.chains.pairs))
    if part.bands is not None:
        effort.append(("bands", *part.bands.pair))
    if part.assist is not None:
        effort.append((f"-{part.assist.band or part.assist.by} band",))
    found = Meaning()
    if part.top is not None and part.top != "none":
        m = re.fullmatch(r"(\d+)(?: @ (RPE|RIR) ([\d.–-]+)|RM)", str(part.top))
        assert m is not None, part.top
        top = (m[2], *span(m[3].replace("–", "-"))) if m[2] else ("RM", int(m[1]))
        found.groups.append(("1", m[1], None, None, frozenset([top])))
    if part.test is not None:
        rm = part.test.rm
        found.groups.append(("1", str(rm), None, None, frozenset([("RM", rm)])))
    seconds, metres = both(part.hold if part.time is None else part.time), both(part.distance)
    several: Sequence[SeriesPart | DosePart] = part.series or [part]
    for one in several:
        load = frozenset([*_of_load(one.load or part.load), *effort])
        reps = text_of_count(one.reps)
        if part.cluster is not None:
            reps = str(sum(part.cluster.parts))
        if part.density is not None:
            reps = "max"
        sets = str(one.sets) if isinstance(one.sets, int) else text_of_count(one.sets)
        if part.last_set is not None and sets.isdigit():
            found.groups.append((str(int(sets) - 1), reps, seconds, metres, load))
            last = frozenset([*_of_load(part.load), ("RIR", *span(part.last_set.rir))])
            found.groups.append(("1", f"{part.last_set.floor}+", seconds, metres, last))
        elif sets or reps or seconds or metres:
            found.groups.append((sets, reps, seconds, metres, load))
    found.more = {
        key: value
        for key, value in {
            "each_side": part.each_side,
            "tempo": part.tempo and part.tempo.text,
            "pause": part.pause and part.pause.time,
            "rest": part.rest,
            "every": part.every,
        }.items()
        if value is not None
    }
    return found


def merged(groups: list[tuple[Any, ...]]) -> list[tuple[Any, ...]]:
    """Neighbours that are alike as one."""
    found: list[tuple[Any, ...]] = []
    for rest, several in groupby(groups, lambda one: one[1:]):
        counts = [one[0] for one in several]
        whole = all(one.isdigit() for one in counts)
        found += (
            [(str(sum(map(int, counts))), *rest)] if whole else [(one, *rest) for one in counts]
        )
    return found


def differences(line: Line, part: DosePart) -> list[str]:
    """What was read and is not what was meant; empty where it is exactly that."""
    want, got = wanted(line), understood(part)
    found = []
    a, b = merged(want.groups), merged(got.groups)
    if len(a) != len(b) or not all(_same(x, y) for x, y in zip(a, b, strict=False)):
        found.append(f"sets {a} {b}")
    for key in ("rest", "every", "pause"):
        x, y = both(want.more.get(key)), both(got.more.get(key))
        if x != y:
            found.append(f"{key} {x} {y}")
    if bool(want.more.get("each_side")) != bool(got.more.get("each_side")):
        found.append("sides")
    if (want.more.get("tempo") is None) != (got.more.get("tempo") is None) or not _same_tempo(
        want.more.get("tempo"), got.more.get("tempo")
    ):
        found.append(f"tempo {want.more.get('tempo')} {got.more.get('tempo')}")
    if want.more.get("total_reps"):
        found.append("a total")
    return found


def _same(a: tuple[Any, ...], b: tuple[Any, ...]) -> bool:
    """One group; pounds and yards are as near as they were written."""
    if a[0] != b[0] or a[2] != b[2]:
        return False
    if not (a[1] == b[1] or (a[1] in ("max", "AMRAP") and b[1].endswith(("+", "max")))):
        return False
    near = (a[3] is None) == (b[3] is None) and (
        a[3] is None or all(abs(x - y) < 0.2 for x, y in zip(a[3], b[3], strict=True))
    )
    return near and _same_load(a[4], b[4])


def _same_load(a: Facts, b: Facts) -> bool:
    if len(a) != len(b):
        return False
    return all(any(_near(x, y) for y in b) for x in a)


def _near(x: tuple[Any, ...], y: tuple[Any, ...]) -> bool:
    if x[0] != y[0] or len(x) != len(y):
        return False
    return all(
        abs(i - j) < 0.25 if isinstance(i, float) and isinstance(j, float) else i == j
        for i, j in zip(x[1:], y[1:], strict=True)
    )


def _same_tempo(a: Any, b: Any) -> bool:
    if a is None or b is None:
        return True
    if down := re.match(r"(\d+) down", str(a)):
        return str(b).startswith(f"{down[1]}-")
    return [*str(a).replace("-", "")] == [*str(b).replace("-", "")]
