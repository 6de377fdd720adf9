"""What README.md tells people to type is right, and CI runs the same tests."""

import re
import tomllib
from datetime import date
from pathlib import Path

import pytest
import yaml
from click.testing import CliRunner

import demo
from strength_handbook.checked import check_folder
from strength_handbook.cli import main
from strength_handbook.model.program import Accepted
from strength_handbook.reading.notation import read_dose
from strength_handbook.reading.problem import Severity
from strength_handbook.review.catalogue import CHECKS

README = (demo.ROOT / "README.md").read_text(encoding="utf-8")
CI = (demo.ROOT / ".ci" / "run").read_text(encoding="utf-8")
TESTS = "python3 -m venv .venv && .venv/bin/pip install -q -e '.[test,oracles]' && .venv/bin/pytest"

BLOCKS = [
    block.strip().split("\n")
    for block in re.findall(r"^```(?:bash|console|sh|shell)?\n(.*?)^```", README, re.M | re.S)
]
COMMANDS = [line for block in BLOCKS for line in block if line and not line.startswith("#")]


def test_readme_has_commands_each_on_one_line() -> None:
    assert COMMANDS
    assert not [line for line in COMMANDS if line.endswith("\\") or line.startswith((" ", "&&"))]


def test_readme_gives_one_line_for_the_tests() -> None:
    assert TESTS in COMMANDS


def test_readme_installs_into_an_environment_of_its_own() -> None:
    installs = [line for line in COMMANDS if "pip install" in line]
    assert installs
    assert all("venv" in line for line in installs)


def test_ci_runs_the_same_parts() -> None:
    lines = [line.strip() for line in CI.split("\n")]
    for part in TESTS.split(" && "):
        assert any(line == part or line.endswith(f" {part}") for line in lines), part


def test_ci_fails_at_the_first_error_and_never_builds_quietly() -> None:
    assert "set -euo pipefail" in CI
    (build,) = [line for line in CI.split("\n") if "mkdocs build" in line]
    assert "--strict" in build
    assert not re.search(r"\s(-q|--quiet|-v|--verbose)\b", build)


def test_the_history_begins_with_the_version_of_the_package() -> None:
    project = tomllib.loads((demo.ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    history = (demo.ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    versions = re.findall(r"^### (\d\S+) \(", history, re.M)
    assert versions[0] == project["version"]
    assert versions == sorted(versions, reverse=True)


def test_readme_names_every_command() -> None:
    for command in ("mkdocs serve", "mkdocs build", "strength-handbook check"):
        assert command in README


_TABLE = README.split("| You want |")[1].split("\n\n")[0]
DOSES = [
    dose for row in _TABLE.splitlines()[2:] for dose in re.findall("`([^`]+)`", row.split("|")[2])
]
WEEKS = ("deload of", "last week")
"""What only a week after another can say; the page on doses has these, and is tried as a whole."""


@pytest.mark.parametrize("dose", [one for one in DOSES if not one.startswith(WEEKS)])
def test_each_dose_of_the_table_is_read(dose: str) -> None:
    assert {found.key[0] for found in read_dose(dose)} & {
        "reps",
        "hold",
        "distance",
        "time",
        "test",
    }


def test_the_table_has_doses_of_weeks() -> None:
    assert len(DOSES) > 15
    notation = (demo.ROOT / "handbook/for-coaches/dose-notation.md").read_text(encoding="utf-8")
    for begin in WEEKS:
        assert any(one.startswith(begin) for one in DOSES)
        assert begin in notation


def test_the_accepted_warning_is_written_as_it_has_to_be() -> None:
    (block,) = [one for one in re.findall(r"```yaml\n(.*?)```", README, re.S) if "accepted:" in one]
    (entry,) = yaml.safe_load(block)["accepted"]
    until = Accepted.model_validate(entry).until
    assert until is not None
    assert until > date(2026, 12, 1)
    assert entry["finding"] in CHECKS


@pytest.mark.slow
def test_the_first_evening_is_right_word_for_word(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The commands as they are typed, in a gym in pounds; nothing that was made is an error."""
    monkeypatch.chdir(tmp_path)
    options = ["--units", "lb", "--bars", "2x45", "--racks", "2", "--plates", "4x45,4x10", "--yes"]
    assert ".venv/bin/strength-handbook init my-gym" in COMMANDS
    assert CliRunner().invoke(main, ["init", "my-gym", *options]).exit_code == 0
    assert "cd my-gym" in COMMANDS
    monkeypatch.chdir(tmp_path / "my-gym")
    typed = re.search('`strength-handbook new program "Spring" (.*?)`', README)
    assert typed is not None
    made = CliRunner().invoke(main, ["new", "program", "Spring", *typed[1].split()])
    assert made.exit_code == 0, made.output
    waves = sorted(Path("programs/spring").glob("[12]-*.yml"))
    assert [yaml.safe_load(one.read_text(encoding="utf-8"))["weeks"] for one in waves] == [
        "1-4",
        "5-8",
    ]
    problems = check_folder(Path("programs")).problems
    assert [one.text for one in problems if one.severity is Severity.ERROR] == []
