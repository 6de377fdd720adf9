"""Methods that are more than one dose: pairs, rules for going on, doors, variants of a session."""

from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import TypeAdapter

from books import EFFORT, exercise, slots_of, work
from strength_handbook.dose.printing import partial_notation
from strength_handbook.model.dose_part import DosePart
from strength_handbook.model.progress import Progress, ProgressText, progress_text
from strength_handbook.model.tempo import Tempo
from strength_handbook.reading.yaml_source import read_source

HERE = Path(__file__).parent
READ: TypeAdapter[Progress] = TypeAdapter(ProgressText)


def examples(section: str) -> list[dict[str, Any]]:
    source, problems = read_source((HERE / "doses.yml").read_bytes(), "doses.yml")
    assert source is not None, problems
    assert isinstance(source.data, dict)
    found: Any = source.data[section]
    return list(found)


def test_every_method_has_an_example() -> None:
    found = {one["v"] for section in ("progress", "doors", "sessions") for one in examples(section)}
    assert found == {"V24", "V34", "V35", "V36", "V37", "V38", "V41", "V42"}


@pytest.mark.parametrize("one", examples("progress"), ids=lambda one: one["line"])
def test_a_rule_for_going_on_is_written_in_two_ways(one: dict[str, Any]) -> None:
    rule = READ.validate_python(one["line"])
    assert rule == READ.validate_python(one["long"])
    assert progress_text(rule) == one["line"]


tenths = st.integers(5, 100).map(lambda n: f"{n / 10:g}")
rules = st.one_of(
    st.builds(
        lambda rule, step, unit: {"rule": rule, "step": f"{step} {unit}"},
        st.sampled_from(["linear", "two-for-two", "double", "open-set"]),
        tenths,
        st.sampled_from(["kg", "lb"]),
    ),
    st.builds(
        lambda step, cap: (
            {"rule": "hold", "step-time": f"{step} s"} | ({"cap-time": f"{cap} s"} if cap else {})
        ),
        st.integers(1, 60),
        st.none() | st.integers(5, 600),
    ),
    st.builds(lambda step: {"rule": "distance", "step-distance": f"{step} m"}, st.integers(1, 200)),
    st.builds(
        lambda step, cap: (
            {"rule": "time", "step-time": f"{step} s"} | ({"cap-time": f"{cap} s"} if cap else {})
        ),
        st.integers(1, 1800),
        st.none() | st.integers(5, 14_400),
    ),
    st.builds(
        lambda rule, step, cap: (
            {"rule": rule, f"step-{rule}": step} | ({f"cap-{rule}": cap} if cap else {})
        ),
        st.sampled_from(["reps", "sets"]),
        st.integers(1, 5),
        st.none() | st.integers(1, 30),
    ),
    st.builds(lambda step: {"rule": "pace", "step-pace": f"{step} s"}, tenths),
    st.builds(lambda step: {"rule": "speed", "step-percent": f"{step} %"}, tenths),
    st.builds(lambda rule: {"rule": rule}, st.sampled_from(["listed", "effort"])),
)


@given(rules)
def test_any_rule_comes_back_from_its_line(long: dict[str, Any]) -> None:
    rule = READ.validate_python(long)
    assert READ.validate_python(progress_text(rule)) == rule


@pytest.mark.parametrize("one", examples("doors"), ids=lambda one: one["part"])
def test_a_door_changes_the_dose(one: dict[str, Any], tmp_path: Path) -> None:
    lift = exercise(load=EFFORT)
    lift["doors"]["taken"] = one["door"]
    worked = work(
        tmp_path,
        exercises={"lift": lift, "other": exercise(load=EFFORT)},
        sessions={"a": [{"order": "A", "exercise": "lift", "weeks": {"1": "3x5"}}]},
    )
    found = worked.book.exercises["lift"].doors.taken
    assert found.dose == DosePart.model_validate(one["long"])
    assert partial_notation(found.dose).replace("\u00a0", " ") == one["part"]


@pytest.mark.parametrize("one", examples("sessions"), ids=lambda one: one["slots"][0]["order"])
def test_a_session(one: dict[str, Any], tmp_path: Path) -> None:
    expect = one["expect"]
    session = {key: value for key, value in one.items() if key not in ("v", "expect")}
    worked = work(
        tmp_path,
        exercises={"lift": exercise(load=EFFORT)},
        sessions={"a": {"title": "A", "purpose": "To train."} | session},
    )
    found = worked.programs[0].week(1).sessions[0]
    assert found.minutes.total == pytest.approx(float(expect["minutes"]), abs=1e-3)
    assert [letter for letter, _ in found.minutes.starts] == expect["letters"]
    assert list(slots_of(worked)) == [slot["order"] for slot in one["slots"]]
    assert found.session.optional == ("optional" in one)
    for variant in found.session.variants:
        assert variant.keep_sets == float(expect["keep-sets"])
        assert variant.leave_out == expect["leave-out"]
        assert variant.tempo == Tempo.parse(expect["tempo"])
    assert bool(found.session.variants) == ("variants" in one)
