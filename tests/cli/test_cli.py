"""The command `strength-handbook`: what it prints, what it writes, how it ends."""

import json
import os
import re
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

import demo
from strength_handbook.cli import main
from tiny import write_tiny

LINE = re.compile(r"[^:\s]+:\d+:\d+: (error|warn|note) [a-z0-9-]+: .+")


@pytest.fixture
def root(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The smallest handbook, in the current folder."""
    monkeypatch.chdir(tmp_path)
    return write_tiny(tmp_path)


def run(*words: str, colour: bool = False) -> Result:
    result = CliRunner().invoke(main, words, color=colour)
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result


def test_the_demo_has_no_error() -> None:
    done = demo.handbook(demo.ROOT, "check")
    assert done.returncode == 0, done.stdout
    assert done.stdout.splitlines()[-1].startswith("programs: 0 errors, ")
    assert done.stderr == ""


def test_errors_are_sorted_lines_with_a_sum_and_end_with_1(root: Path) -> None:
    demo.change(root / "programs/spring/1-start.yml", "3x8", "x8")
    demo.change(root / "programs/spring/1-start.yml", "2x8", "2x")
    demo.change(root / "programs/room.yml", "gym:", "colour: red\ngym:")
    result = run("check")
    assert result.exit_code == 1
    *lines, last = result.stdout.splitlines()
    assert all(LINE.fullmatch(line) for line in lines)
    places = [line.split(": ")[0] for line in lines]
    assert places[0] == "programs/room.yml:1:1"
    assert places[1:] == ["programs/spring/1-start.yml:13:14", "programs/spring/1-start.yml:14:14"]
    assert last == f"programs: {len(lines)} errors, 0 warnings, 0 notes"


@pytest.mark.parametrize("page", ["cp1252", "cp437"])
def test_an_old_code_page_gets_question_marks_and_the_same_end(root: Path, page: str) -> None:
    demo.change(root / "programs/spring/program.yml", "Spring", "Spring → 2 ≤ Łódź")
    demo.change(root / "programs/spring/1-start.yml", "2x8", "2x8 ⇄ ≤ Łódź")
    done = subprocess.run(
        [sys.executable, "-m", "strength_handbook.cli", "check"],
        cwd=root, env=os.environ | {"PYTHONIOENCODING": page}, capture_output=True, check=False,
    )  # fmt: skip
    assert done.returncode == 1
    assert done.stderr == b""
    first, *_, last = done.stdout.decode(page).splitlines()
    assert "?" in first
    assert first.startswith("programs/spring/1-start.yml:13:")
    assert last.startswith("programs: 1 error")


@pytest.mark.parametrize("word", ["programs", ".", "./programs/"])
def test_the_folder_may_be_named_or_the_one_above_it(root: Path, word: str) -> None:
    demo.change(root / "programs/room.yml", "gym:", "colour: red\ngym:")
    result = run("check", word)
    assert result.stdout.startswith("programs/room.yml:1:1: error unknown-key: ")
    assert run("check", "--programs", word).stdout == result.stdout


def test_another_folder_is_shown_as_it_was_named(root: Path) -> None:
    (root / "programs").rename(root / "winter-plans")
    demo.change(root / "winter-plans/room.yml", "gym:", "gim:")
    assert run("check", "winter-plans").stdout.startswith("winter-plans/room.yml:1:1: error ")


def test_json_has_the_same_findings(root: Path) -> None:
    demo.change(root / "programs/room.yml", "gym:", "colour: red\ngym:")
    result = run("check", "--format", "json")
    assert result.exit_code == 1
    data = json.loads(result.stdout)
    lines = run("check").stdout.splitlines()[:-1]
    shown = [
        f"{f['file']}:{f['line']}:{f['column']}: {f['severity']} {f['slug']}: {f['text']}"
        for f in data["findings"]
    ]
    assert shown == lines
    assert (data["errors"], data["warnings"], data["notes"]) == (len(lines), 0, 0)


@pytest.mark.parametrize(
    "words",
    [
        ["check", "nowhere"],
        ["check", "--format", "xml"],
        ["check", "a", "b"],
        ["check", "programs/room.yml"],
        ["check", "--explain", "no-such-thing"],
        ["check", "--since", "no-such-file.json"],
        ["export"],
        ["new"],
        ["new", "program"],
        ["new", "wave", "x"],
        ["new", "exercise"],
        ["nonsense"],
        [],
    ],
)
def test_wrong_use_ends_with_2(root: Path, words: list[str]) -> None:  # noqa: ARG001  # current folder
    result = run(*words)
    assert result.exit_code == 2
    assert "Usage: " in result.output


def test_new_begins_a_file_that_is_wrong_only_in_the_sentences_of_its_example(root: Path) -> None:
    result = run("new", "exercise", "Step-down: slow")
    assert result.exit_code == 0
    assert result.stdout.startswith("programs/exercises/step-down-slow.yml is there")
    checked = run("check")
    assert checked.exit_code == 1
    errors = [line for line in checked.stdout.splitlines() if ": error " in line]
    assert len(errors) == 1
    assert ": error template-left: " in errors[0]
    demo.build_drafts(root, root / "site")
    html = (root / "site/exercises/step-down-slow/index.html").read_text(encoding="utf-8")
    assert "Step-down: slow" in html


def test_new_never_touches_a_file_that_is_there(root: Path) -> None:
    file = root / "programs/exercises/chair-squat.yml"
    before = file.read_bytes()
    result = run("new", "exercise", "CHAIR squat")
    assert result.exit_code == 2
    assert "chair-squat.yml' is there already; choose another name" in result.output
    assert file.read_bytes() == before


@pytest.mark.parametrize("name", ["", "深蹲", "Index", "x" * 61])
def test_new_says_why_a_name_will_not_do(root: Path, name: str) -> None:
    before = sorted((root / "programs").rglob("*"))
    assert run("new", "exercise", name).exit_code == 2
    assert sorted((root / "programs").rglob("*")) == before


def test_schema_writes_one_file_for_each_kind(root: Path) -> None:
    assert run("schema", ".schema").stdout == "6 files written to .schema\n"
    names = sorted(path.name for path in (root / ".schema").iterdir())
    kinds = ["exercise", "house-rules", "lifters", "program", "room", "wave"]
    assert names == [f"{kind}.json" for kind in kinds]


def test_export_writes_pages_data_and_styles(root: Path) -> None:
    result = run("export", "out")
    files = [path for path in (root / "out").rglob("*") if path.is_file()]
    assert result.stdout == f"{len(files) - 1} files written to out\n"
    assert (root / "out/spring/week-01/a-squat.md").is_file()
    assert json.loads((root / "out/data/spring.json").read_text(encoding="utf-8"))["schema"] == 1
    assert (root / "out/assets/strength-handbook/handbook.css").is_file()


def test_export_refuses_a_folder_with_other_peoples_files(root: Path) -> None:
    result = run("export", "programs")
    assert result.exit_code == 2
    assert "name an empty folder, or empty this one" in result.output
    assert not (root / "programs/index.md").exists()


def test_export_with_errors_shows_them_and_writes_nothing(root: Path) -> None:
    demo.change(root / "programs/room.yml", "gym:", "colour: red\ngym:")
    result = run("export", "out")
    assert result.exit_code == 1
    assert "programs/room.yml:1:1: error unknown-key: " in result.stderr
    assert not (root / "out").exists()


def test_a_folder_that_cannot_be_written_is_a_message(root: Path) -> None:
    (root / "a-file").write_text("", encoding="utf-8")
    for words in (["export", "a-file/out"], ["schema", "a-file/out"]):
        result = run(*words)
        assert result.exit_code == 1
        assert result.output.startswith("Error: can't write 'a-file/out'")
