"""Sets that differ: any of them come back from their line, and what does not fit is refused."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import ValidationError

from books import exercise as written_exercise
from strength_handbook.dose.printing import dose_line, in_words, notation
from strength_handbook.model.count import Count
from strength_handbook.model.dose import Dose, DosePart, complete
from strength_handbook.model.exercise import Exercise
from strength_handbook.model.lighter import first_sets, lighter, with_reserve
from strength_handbook.model.load import PercentOfBase
from strength_handbook.reading.long_form import stored
from strength_handbook.reading.notation import read_dose, read_house

LIFT = Exercise.model_validate(written_exercise())


def part_of(line: str) -> DosePart:
    return DosePart.model_validate(stored(read_dose(line)))


def dose_of(line: str) -> Dose:
    return complete(part_of(line))


loads = st.sampled_from(
    ["{} %", "{} % TM", "{} % BM", "{} % system", "{} kg", "{} lb", "BW+{} kg", "{} units"]
)
counts = st.integers(1, 100).map(str) | st.builds("{}-{}".format, st.integers(1, 9), st.just(12))
shared = st.fixed_dictionaries(
    {},
    optional={
        "tempo": st.just("3-1-X-0"), "rir": st.integers(0, 5), "rest": st.just("2:30"),
        "each-side": st.just(True), "cap": st.just(12),  # noqa: FBT003  # a value of the data
    },
)  # fmt: skip


@st.composite
def series(draw: st.DrawFn) -> dict[str, Any]:
    """Sets that differ in the long form, with loads of one kind or none, and what all have."""
    kind = draw(loads | st.none())
    parts: list[dict[str, Any]] = []
    # Neighbours differ: those that are alike are one part.
    for reps in draw(st.lists(counts, min_size=2, max_size=5, unique=True)):
        part: dict[str, Any] = {"sets": draw(st.integers(1, 5)), "reps": reps}
        if kind:
            part["load"] = kind.format(draw(st.integers(2, 300).map(lambda n: f"{n / 2:g}")))
        if draw(st.booleans()):
            part["rest"] = draw(st.sampled_from(["45 s", "2:00", "3 min"]))
        parts.append(part)
    parts[-1].pop("rest", None)  # what stands last is that of all
    if parts[-1]["sets"] == 1 and draw(st.booleans()):
        parts[-1]["reps"] = "1+"
    return {"series": parts, **draw(shared)}


@given(series())
def test_any_sets_that_differ_come_back_from_their_line(long: dict[str, Any]) -> None:
    part = DosePart.model_validate(long)
    line = dose_line(part)
    assert DosePart.model_validate(stored(read_house(line))) == part
    assert part_of(line) == part


@given(series())
def test_a_complete_dose_says_what_was_written(long: dict[str, Any]) -> None:
    part = DosePart.model_validate(long)
    dose = complete(part)
    assert part.series is not None
    assert dose.sets.high == sum(one.sets for one in part.series)
    assert [one.sets.high for one in dose.series] == [one.sets for one in part.series]
    assert [one.reps for one in dose.series] == [one.reps for one in part.series]
    own = [one.load for one in part.series]
    assert [one.load for one in dose.series] == own
    again = complete(dose.part)
    assert [(one.work, one.load, one.rest) for one in again.series] == [
        (one.work, one.load, one.rest) for one in dose.series
    ]
    assert notation(dose)
    assert in_words(dose, LIFT)


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("5 @ 65 %, 3 @ 100 kg", "all in percent or all as masses"),
        ("5+ @ 65 %, 3 @ 75 %", "only the very last"),
        ("5 @ 65 %, 3x3+ @ 75 %", "only the very last"),
        ("5 @ 65 %, 3 @ 75 %, strip 3 loads", "here are strip and series"),
        ("5 @ 65 %, 3 @ 75 %, last set 3+ cap 5 RIR 1", "write the last one open"),
        ("ramp to 5RM, 5 @ 90 % of top, 5 @ 80 % of top", "its own slot"),
        ("5 @ 65 %, 3 @ 75 %, bands 20 % at top", "its own slot"),
        ("5 @ 65 %, rest 60 s, 3 @ 75 %, every 2 min", "either rest or every"),
        ("1x5 @ 65 %, 1x3", "one for each or for none"),
    ],
)
def test_what_does_not_fit_is_refused_with_what_to_write(line: str, words: str) -> None:
    with pytest.raises(ValidationError) as caught:
        part_of(line)
    assert words in str(caught.value)


def test_a_week_s_sets_that_differ_take_the_place_of_the_slot_s() -> None:
    slot = part_of("4x5 @ 70 %, RIR 2, rest 2:00")
    dose = complete(part_of("5 @ 65 %, 3 @ 75 %"), slot)
    assert [one.load for one in dose.series] == [PercentOfBase(65), PercentOfBase(75)]
    assert {(one.reserve, one.rest) for one in dose.series} == {(2, 120)}
    # Without loads of their own they have the slot's.
    dose = complete(part_of("5, 3, 1"), slot)
    assert {one.load for one in dose.series} == {PercentOfBase(70)}
    # And plain sets take the place of sets that differ.
    plain = complete(part_of("3x5 @ 60 %"), part_of("5 @ 65 %, 3 @ 75 %, RIR 2"))
    assert (plain.series, plain.sets, plain.reserve) == ((), Count(3, 3), 2)


@pytest.mark.parametrize("own", ["@ 70 %", "sets 2", "bands 20 % at top"])
def test_a_week_that_does_not_go_with_the_slot_s_sets_is_told(own: str) -> None:
    with pytest.raises(ValueError, match="sets that differ don't go with"):
        complete(part_of(own), part_of("5 @ 65 %, 3 @ 75 %"))


def test_the_whole_has_the_load_and_repetitions_of_its_heaviest_sets() -> None:
    heavy_last, heavy_first = (
        dose_of("5 @ 65 %, 3 @ 75 %, 1 @ 85 %"),
        dose_of("3 @ 85 %, 3x8 @ 70 %"),
    )
    assert (heavy_last.load, heavy_last.reps) == (PercentOfBase(85), Count(1, 1))
    assert (heavy_first.load, heavy_first.reps) == (PercentOfBase(85), Count(3, 3))
    same = dose_of("10, 8, 6 @ 70 %")
    assert (same.load, same.reps, same.sets) == (PercentOfBase(70), Count(10, 10), Count(3, 3))


def test_less_of_them_are_the_first_ones_with_less_load() -> None:
    dose = dose_of("2x5 @ 60 %, 2x3 @ 80 %, 1+ @ 90 %")
    easy = lighter(dose, 60, 50, 100)
    assert notation(easy).replace("\u00a0", " ") == "2 × 5 @ 30 %, 1 × 3 @ 40 %"
    # None of what is left stays open.
    assert notation(lighter(dose, 100, 100, 100)).endswith("1\u00a0@\u00a090\u00a0%")
    # Where only some alike are left, they are plain sets.
    assert first_sets(dose, 2).series == ()
    assert notation(first_sets(dose, 2)).replace("\u00a0", " ") == "2 × 5 @ 60 %"
    assert with_reserve(dose, 3).reserve == 3
    assert "RIR\u00a03" in notation(with_reserve(dose, 3))
