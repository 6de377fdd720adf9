"""`strength-handbook new wave`: a copy behind the last one, renumbered, that builds at once."""

import re
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

import demo
from strength_handbook.checked import check_folder, errors_in
from strength_handbook.cli import main
from strength_handbook.reading.book import read_book
from tiny import write_tiny


def append(*words: str) -> Result:
    result = CliRunner().invoke(main, ["new", "wave", *words])
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result


@pytest.fixture
def root(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    return write_tiny(tmp_path)


@pytest.mark.parametrize("number", [1, 2, 3])
def test_each_wave_of_the_demo_is_copied_with_its_doses_and_comments(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, number: int
) -> None:
    root = demo.copy_demo(tmp_path)
    monkeypatch.chdir(root)
    before = {path: path.read_bytes() for path in root.rglob("*.yml")}
    result = append("winter", "--from", str(number), "--name", "Once more: again")
    assert result.exit_code == 0, result.output
    new = root / "programs/winter/4-once-more-again.yml"
    assert result.stdout.startswith("programs/winter/4-once-more-again.yml is there")
    assert {path: path.read_bytes() for path in root.rglob("*.yml") if path != new} == before

    written = read_book(root / "programs").written
    *old, copied = written.waves_of("winter")
    origin, last = old[number - 1].model, max(week for one in old for week in one.model.weeks)
    shift = last + 1 - origin.weeks[0]
    assert copied.model.wave == "Once more: again"
    assert copied.model.weeks == tuple(week + shift for week in origin.weeks)
    assert copied.model.deload == tuple(week + shift for week in origin.deload)
    assert copied.model.tests == tuple(week + shift for week in origin.tests)
    for name, session in origin.sessions.items():
        for mine, theirs in zip(copied.model.sessions[name].slots, session.slots, strict=True):
            assert list(mine.weeks) == [week + shift for week in theirs.weeks]
            parts = zip(mine.weeks.values(), theirs.weeks.values(), strict=True)
            for here, there in parts:
                if there is not None and there.deload_of is not None:
                    assert here is not None
                    assert here.deload_of == there.deload_of + shift
                else:
                    assert here == there
    of_demo = next((root / "programs/winter").glob(f"{number}-*.yml")).read_text(encoding="utf-8")
    assert new.read_text(encoding="utf-8").count("#") == of_demo.count("#")


def test_it_builds_at_once(root: Path) -> None:
    demo.change(
        root / "programs/spring/1-start.yml",
        "weeks: 1-2\n",
        "'weeks' : '1 - 2' # two of them\ndeload: [2] # an easy end\n",
    )
    demo.change(
        root / "programs/spring/1-start.yml",
        "          2: 3x8",
        "          # less\n          2: deload of week 1, sets 60 %, RIR 5",
    )
    assert append("spring", "--from", "1").exit_code == 0
    text = (root / "programs/spring/2-second.yml").read_text(encoding="utf-8")
    assert text.startswith('wave: "Second wave"\n')
    assert "'weeks' : 3-4 # two of them\ndeload: [4] # an easy end\n" in text
    assert "          # less\n          4: deload of week 3, " in text
    assert append("spring", "--from", "2").exit_code == 0
    assert "5: 2x8" in (root / "programs/spring/3-third.yml").read_text(encoding="utf-8")
    assert errors_in(check_folder(root / "programs").problems) == []
    site = demo.build_site(root, root / "site")
    assert (site / "spring/week-06/a-squat/index.html").is_file()


def test_weeks_that_share_a_line_and_those_that_go_on_are_renumbered(root: Path) -> None:
    wave = root / "programs/spring/1-start.yml"
    text = wave.read_text(encoding="utf-8")
    ways = ("          1-2: 2x8\n", "          1: 2x8\n          2: as week 1, one set more\n")
    for way, copied in zip(ways, ("3-4: 2x8", "4: as week 3, one set more"), strict=True):
        weeks = re.sub(r"          1: .*\n          2: .*\n", way, text)
        assert weeks != text
        wave.write_text(weeks, encoding="utf-8")
        assert append("spring", "--from", "1", "--name", f"From {way[10:13]}").exit_code == 0
        (new,) = root.glob("programs/spring/2-*.yml")
        assert f"          {copied}\n" in new.read_text(encoding="utf-8")
        new.unlink()


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["summer", "--from", "1"], "no program 'summer' can be read here; there is 'spring'"),
        (["spring", "--from", "7"], "--from: 'spring' has no wave 7; there is '1'"),
        (["spring"], "Missing option '--from'"),
        (["spring", "--from", "one"], "'one' is not a valid integer"),
        (["spring", "--from", "1", "--name", "START"], "has a wave 'start' already"),
        (["spring", "--from", "1", "--name", "深"], "has no letter from a to z"),
    ],
)
def test_what_to_write_instead(root: Path, words: list[str], says: str) -> None:
    before = sorted(root.rglob("*"))
    result = append(*words)
    assert result.exit_code == 2
    assert says in re.sub(r"\s+", " ", result.output)
    assert sorted(root.rglob("*")) == before


def test_a_program_ends_after_sixty_weeks(root: Path) -> None:
    wave = root / "programs/spring/1-start.yml"
    demo.change(wave, "weeks: 1-2", "weeks: 59-60")
    demo.change(wave, "          1: 2x8\n          2:", "          59: 2x8\n          60:")
    result = append("spring", "--from", "1")
    assert result.exit_code == 2
    assert "at most 60 weeks; begin a new program" in re.sub(r"\s+", " ", result.output)


def test_a_broken_program_is_said_in_words(root: Path) -> None:
    demo.change(root / "programs/spring/1-start.yml", "wave: Start", "wave: [Start")
    result = append("spring", "--from", "1")
    assert result.exit_code == 2
    demo.change(root / "programs/spring/1-start.yml", "wave: [Start", "wave: Start")
    demo.change(root / "programs/spring/1-start.yml", "1: 2x8", "1: 2xx")
    assert "1-start.yml has errors; run" in append("spring", "--from", "1").output
    assert "no program 'spring' can be read here" in re.sub(r"\s+", " ", result.output)
