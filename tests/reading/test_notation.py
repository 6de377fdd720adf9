"""A dose in one line means what the long form says, in any order and spacing."""

from collections.abc import Mapping
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from strength_handbook.dose.line_words import LONGEST
from strength_handbook.model.dose_part import DosePart
from strength_handbook.reading.doses import expand_doses
from strength_handbook.reading.notation import NotationError, read_dose
from strength_handbook.reading.source import Mark, Source
from thorough import tries

Long = Mapping[str, Any]

# The trade's written notation; common practice, no source.
LINES: dict[str, Long] = {
    "3x5": {"sets": 3, "reps": 5},
    "3 x 5": {"sets": 3, "reps": 5},
    "3×5": {"sets": 3, "reps": 5},
    "3x5 reps": {"sets": 3, "reps": 5},
    "3x8-12": {"sets": 3, "reps": "8-12"},
    "3x8–12": {"sets": 3, "reps": "8-12"},
    "1x5+": {"sets": 1, "reps": "5+"},
    "6x40 s": {"sets": 6, "time": "40 s"},
    "6x1:30": {"sets": 6, "time": "90 s"},
    "2x5 min": {"sets": 2, "time": "5 min"},
    "ISO 3x20 s": {"sets": 3, "hold": "20 s"},
    "iso 3x0:20": {"sets": 3, "hold": "20 s"},
    "3 -> 30 m": {"sets": 3, "distance": "30 m"},
    "3→30 m": {"sets": 3, "distance": "30 m"},
    "3x30 m": {"sets": 3, "distance": "30 m"},
    "2 -> 100 ft": {"sets": 2, "distance": "30.48 m"},
    "3x5 @ 70 %": {"sets": 3, "reps": 5, "load": "70 %"},
    "3x5@70%": {"sets": 3, "reps": 5, "load": "70 %"},
    "3x5 @ 72,5 %": {"sets": 3, "reps": 5, "load": "72.5 %"},
    "3x5 @ 60 kg": {"sets": 3, "reps": 5, "load": "60 kg"},
    "3x5 @ 60 kgs": {"sets": 3, "reps": 5, "load": "60 kg"},
    "3x5 @ BW+10 kgs": {"sets": 3, "reps": 5, "load": "BW+10 kg"},
    "3x5 @ 135 lb": {"sets": 3, "reps": 5, "load": "135 lb"},
    "3x5 @ 25 % BM": {"sets": 3, "reps": 5, "load": "25 % BM"},
    "3 -> 20 m @ 25 % BM/hand": {"sets": 3, "distance": "20 m", "load": "25 % BM"},
    "3x5 @ 70 % system": {"sets": 3, "reps": 5, "load": "70 % system"},
    "3x5 @ 70 % of system": {"sets": 3, "reps": 5, "load": "70 % system"},
    "2x5 @ 90 % of top, top 5RM": {"sets": 2, "reps": 5, "load": "90 % of top", "top": "5RM"},
    "2x5 @ 90 % of the top, top 5 RM": {
        "sets": 2, "reps": 5, "load": "90 % of top", "top": "5RM",
    },
    "2x5 @ 65 % top 5RM": {"sets": 2, "reps": 5, "load": "65 %", "top": "5RM"},
    "2x5 @ 65 %, top none": {"sets": 2, "reps": 5, "load": "65 %", "top": "none"},
    "3x5 @ BW": {"sets": 3, "reps": 5, "load": "BW"},
    "3x5 @ BW+10 kg": {"sets": 3, "reps": 5, "load": "BW+10 kg"},
    "3x5 @ BW − 15 kg": {"sets": 3, "reps": 5, "load": "BW-15 kg"},
    "3x6 @ 8RM": {"sets": 3, "reps": 6, "load": "8RM"},
    "3x10 @ 42 units": {"sets": 3, "reps": 10, "load": "42 units"},
    "3x5, tempo 3-1-X-0": {"sets": 3, "reps": 5, "tempo": "3-1-X-0"},
    "3x5, 3-1-X-0": {"sets": 3, "reps": 5, "tempo": "3-1-X-0"},
    "3x5, tempo 4/1/X/0": {"sets": 3, "reps": 5, "tempo": "4-1-X-0"},
    "3x5, 4/1/x/0": {"sets": 3, "reps": 5, "tempo": "4-1-X-0"},
    "3x5 tempo 3–1–x–0": {"sets": 3, "reps": 5, "tempo": "3-1-X-0"},
    "3x5, RIR 2": {"sets": 3, "reps": 5, "rir": 2},
    "3x5 rir2": {"sets": 3, "reps": 5, "rir": 2},
    "3x5, RPE 7.5": {"sets": 3, "reps": 5, "rpe": 7.5},
    "3x5, rest 2:30": {"sets": 3, "reps": 5, "rest": "150 s"},
    "3x5, rest 90 s": {"sets": 3, "reps": 5, "rest": "90 s"},
    "3x5, rest 2 min": {"sets": 3, "reps": 5, "rest": "2 min"},
    "8x3, every 60 s": {"sets": 8, "reps": 3, "every": "60 s"},
    "8x3 E60s": {"sets": 8, "reps": 3, "every": "60 s"},
    "8x3 E 60 s": {"sets": 8, "reps": 3, "every": "60 s"},
    "3x6 ES": {"sets": 3, "reps": 6, "each-side": True},
    "3x6 each side": {"sets": 3, "reps": 6, "each-side": True},
    "2x5, last set 5+ cap 10 RIR 1": {
        "sets": 2, "reps": 5, "last-set": {"floor": 5, "cap": 10, "rir": 1},
    },
    "2x5; last set 5+, cap 10, RIR 1; RIR 2": {
        "sets": 2, "reps": 5, "last-set": {"floor": 5, "cap": 10, "rir": 1}, "rir": 2,
    },
    "RIR 3": {"rir": 3},
    "@ 60 kg": {"load": "60 kg"},
    "rest 1:00, 3x5": {"sets": 3, "reps": 5, "rest": "60 s"},
    " 4x5 @ 74 %, tempo 4-1-X-0, RIR 2, rest 2:30 ": {
        "sets": 4, "reps": 5, "load": "74 %", "tempo": "4-1-X-0", "rir": 2, "rest": "2:30",
    },
}  # fmt: skip


def one_line(line: str) -> DosePart:
    """What a line means, the way a file's doses are read."""
    source = Source("a.yml", {"dose": line}, {("dose",): Mark(1, 7, 7)}, {})
    out = expand_doses(source)
    expanded, problems = out.source, out.problems
    assert problems == []
    assert isinstance(expanded.data, dict)
    return DosePart.model_validate(expanded.data["dose"])


@pytest.mark.parametrize(("line", "long"), LINES.items(), ids=LINES)
def test_a_line_means_its_long_form(line: str, long: Long) -> None:
    assert one_line(line) == DosePart.model_validate(long)


def test_each_value_knows_its_column() -> None:
    line = "4x8-12 ES @ 74 % system, tempo 4-1-X-0, RIR 2, last set 5+ cap 10 RIR 1, rest 2:30"
    for found in read_dose(line):
        if found.key != ("each-side",):
            assert line[found.start :].startswith(str(found.value)), found


@pytest.mark.parametrize(
    ("line", "start"),
    [
        ("3x5 @ 70 %, quietly", 12),
        ("  quietly 3x5", 2),
        ("3x5 @ 70 %, 3x6 quietly", 12),
        ("3x5 @ 70", 4),
        ("3x5 @", 4),
        ("3x5, rest", 5),
        ("3x5, rest 9, RIR 2", 5),
        ("3x5 RIR 2 RIR 3", 14),
        ("3x5\u2003!", 4),
        ("", 0),
        (" , ; ", 0),
        ("x" * (LONGEST + 1), 0),
    ],
)
def test_what_cannot_be_read_is_shown_at_its_word(line: str, start: int) -> None:
    with pytest.raises(NotationError) as caught:
        read_dose(line)
    assert caught.value.start == start
    assert len(str(caught.value)) < 250


SPACE = st.sampled_from(("", " ", "  "))
GAP = st.sampled_from((" ", ", ", "; ", "  ", " , "))
SECONDS = st.integers(1, 600)


@st.composite
def durations(draw: st.DrawFn, low: int = 1, high: int = 600) -> tuple[str, str]:
    """A time in two spellings: for the line and for the long form."""
    seconds = draw(st.integers(low, high))
    line = draw(
        st.sampled_from((f"{seconds} s", f"{seconds}s", f"{seconds // 60}:{seconds % 60:02}"))
    )
    return line, f"{seconds} s"


def decimals(low: int, high: int) -> st.SearchStrategy[str]:
    return st.integers(low * 4, high * 4).map(lambda quarters: f"{quarters / 4:g}")


@st.composite
def loads(draw: st.DrawFn) -> tuple[str, str]:
    number = draw(decimals(1, 150))
    space = draw(SPACE)
    long, line = draw(
        st.sampled_from(
            (
                (f"{number} %", f"{number}{space}%"),
                (f"{number} % system", f"{number} % of system"),
                (f"{number} % BM", f"{number}{space}%{space}BM"),
                (f"{number} kg", f"{number}{space}kg"),
                (f"{number} lb", f"{number.replace('.', ',')} lb"),
                (f"BW+{number} kg", f"BW{space}+{space}{number} kg"),
                (f"BW-{number} kg", f"bw−{number} kg"),
                ("BW", "BW"),
                ("8RM", f"8{space}RM"),
                (f"{number} units", f"{number}{space}units"),
            )
        )
    )
    return line, long


@st.composite
def doses(draw: st.DrawFn) -> tuple[str, dict[str, Any]]:
    """A dose as a line, and the same in the long form."""
    sets = draw(st.integers(1, 50))
    space = draw(SPACE)
    low, more = draw(st.tuples(st.integers(1, 100), st.integers(1, 100)))
    kind = draw(st.sampled_from(("reps", "range", "open", "hold", "time", "distance")))
    long: dict[str, Any] = {"sets": sets}
    if kind in ("reps", "range", "open"):
        long["reps"] = {"reps": str(low), "range": f"{low}-{low + more}", "open": f"{low}+"}[kind]
        work = f"{sets}{space}{draw(st.sampled_from('x×'))}{space}{long['reps']}"
    elif kind == "distance":
        long["distance"] = f"{low} m"
        work = f"{sets}{space}{draw(st.sampled_from(('->', '→', 'x')))}{space}{low}{space}m"
    else:
        time, long[kind] = draw(durations())
        work = f"{'ISO ' if kind == 'hold' else ''}{sets}{space}x{space}{time}"
    clauses = [work]
    if draw(st.booleans()):
        line, long["load"] = draw(loads())
        clauses.append(f"@{draw(SPACE)}{line}")
    if draw(st.booleans()):
        fields = draw(st.tuples(*[st.integers(0, 30)] * 4))
        lift = draw(st.sampled_from(("X", "x", str(fields[2]))))
        tempo = f"{fields[0]}-{fields[1]}-{lift}-{fields[3]}"
        long["tempo"] = tempo.upper()
        clauses.append(draw(st.sampled_from((f"tempo {tempo}", tempo))))
    effort = draw(st.sampled_from((None, "rir", "rpe")))
    if effort:
        long[effort] = draw(st.integers(1, 9))
        clauses.append(f"{effort.upper()} {long[effort]}")
    pause = draw(st.sampled_from((None, "rest", "every")))
    if pause:
        line, long[pause] = draw(durations())
        clauses.append(f"{pause} {line}")
    if draw(st.booleans()):
        long["each-side"] = True
        clauses.append(draw(st.sampled_from(("ES", "each side"))))
    if draw(st.booleans()):
        long["top"] = f"{draw(st.integers(1, 20))}RM"
        clauses.append(f"top {long['top']}")
    clauses = draw(st.permutations(clauses))
    gap = draw(GAP)
    return gap.join(clauses), long


@settings(deadline=None, max_examples=tries(200, 2000))
@given(doses())
def test_a_printed_dose_is_read_back(dose: tuple[str, dict[str, Any]]) -> None:
    line, long = dose
    assert one_line(line) == DosePart.model_validate(long)


@settings(deadline=None, max_examples=tries(300, 3000))
@given(st.text(max_size=40) | st.from_regex(r"[0-9x@%a-zRIPEST:+\- ,.]{0,40}", fullmatch=True))
def test_any_text_is_read_or_refused_inside_itself(line: str) -> None:
    refused: NotationError | None = None
    try:
        found = read_dose(line)
    except NotationError as error:
        refused = error
    if refused is not None:
        assert 0 <= refused.start <= len(line)
        assert str(refused)
    else:
        assert found
        assert len({value.key for value in found}) == len(found)
