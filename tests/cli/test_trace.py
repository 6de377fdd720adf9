"""`strength-handbook trace`: every stop is real, and shows what the pages show."""

from importlib import import_module
from pathlib import Path

import pytest
from click.testing import CliRunner

import demo
from strength_handbook.checked import check_folder
from strength_handbook.cli import main
from strength_handbook.dose.printing import notation
from strength_handbook.review.desk import Desk, SlotAt
from strength_handbook.trace import Stop, UnknownPlaceError, trace
from tiny import write_tiny


@pytest.fixture(scope="module")
def desk() -> Desk:
    found = check_folder(demo.PROGRAMS).desk
    assert found is not None
    return found


def stops_of(desk: Desk, at: SlotAt) -> list[Stop]:
    return list(trace(desk, at.program.id, at.number, at.session.id, at.slot.order))


def test_every_stop_names_functions_that_are_there(desk: Desk) -> None:
    for stop in stops_of(desk, desk.slots[0]):
        for word in stop.where.replace(",", " ").split():
            if ":" in word:
                module, _, function = word.partition(":")
                assert callable(getattr(import_module(f"strength_handbook.{module}"), function))


def test_each_exercise_can_be_followed_to_its_notation_and_anchor(desk: Desk) -> None:
    one_each = {at.slot.exercise_id: at for at in desk.slots}
    for exercise, at in one_each.items():
        stops = {stop.where.partition(":")[0]: stop.says for stop in stops_of(desk, at)}
        assert stops["dose.printing"] == (notation(at.slot.dose),)
        assert stops["reading.yaml_source"][0].startswith(f"{at.wave.file}:")
        page, anchor = stops["pages.session_page"][1].split("#")
        assert page == f"exercises/{exercise}/"
        assert anchor.endswith(f"-{at.slot.order.lower()}")
        assert len(stops["plan.loads"]) == max(1, len(at.slot.loads))


@pytest.mark.parametrize(
    ("words", "text"),
    [
        (("summer", "1", "a-squat", "A"), "there is no program 'summer' here; there is spring"),
        (("spring", "7", "a-squat", "A"), "there is no week '7' here; there is 1, 2"),
        (("spring", "1", "a-squad", "A"), "a-squat; did you mean 'a-squat'?"),
        (("spring", "1", "a-squat", "B"), "there is no letter 'B' here; there is A"),
    ],
)
def test_what_is_not_there_is_said_with_what_is(
    tmp_path: Path, words: tuple[str, ...], text: str
) -> None:
    root = write_tiny(tmp_path)
    done = CliRunner().invoke(main, ["trace", *words, "--programs", str(root / "programs")])
    assert done.exit_code == 2
    assert text in done.output


def test_the_line_in_the_file_comes_first_and_files_with_errors_say_so(tmp_path: Path) -> None:
    root = write_tiny(tmp_path)
    words = ["trace", "Spring", "2", "a-squat", "a", "--programs", str(root / "programs")]
    done = CliRunner().invoke(main, words)
    assert done.exit_code == 0, done.output
    assert "2: 3x8" in done.output.splitlines()[2]
    demo.change(root / "programs/spring/1-start.yml", "3x8", "3x8 what")
    done = CliRunner().invoke(main, words)
    assert done.exit_code == 1
    assert "error dose" in done.output


def test_an_unknown_place_is_an_error_of_its_own(desk: Desk) -> None:
    with pytest.raises(UnknownPlaceError, match="there is no program"):
        list(trace(desk, "nowhere", 1, "a-lift", "A"))
