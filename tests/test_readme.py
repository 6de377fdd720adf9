"""What README.md tells people to type is right, and CI runs the same tests."""

import re
import tomllib

import demo

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
