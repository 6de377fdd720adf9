"""What `strength-handbook check` prints: in a pipe, on a terminal, as JSON, and explained."""

import json
import os
import pty
import re
import subprocess
import sys
from pathlib import Path

import pytest
import yaml
from click.testing import CliRunner, Result

import desks
from strength_handbook import cli
from strength_handbook.checked import check_folder
from strength_handbook.publish.report_screen import on_screen
from strength_handbook.reading.explain import EXPLANATIONS
from strength_handbook.reading.problem import Problem, Severity
from strength_handbook.review.catalogue import CHECKS
from strength_handbook.review.check import Family
from strength_handbook.review.finding import Reported

LINE = re.compile(r"[^:\s]+:\d+:\d+: (error|warn|note) [a-z0-9-]+: .+")
SUMS = re.compile(r"programs: \d+ errors?, \d+ warnings?, \d+ notes?(; \d+ accepted)?")
COLOUR = re.compile(r"\x1b\[[\d;]*m")

SHORT_REST: desks.Edits = {"brook/1-slow.yml": {"sessions.a-lift.slots.0.rest": "1:50"}}
"""One warning in an otherwise clean folder: `rest-short` in week 3."""
AT = "week 3, a-lift A trap-bar-deadlift"
ENTRY = {"finding": "rest-short", "at": AT, "reason": "The bar is carried back by two."}


def folder(root: Path, edits: desks.Edits) -> Path:
    desks.write(desks.edited(edits), root / "programs")
    return root


@pytest.fixture
def root(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with one warning, in the current folder."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1796083200")  # 2026-12-01, the day of the checks
    return folder(tmp_path, SHORT_REST)


def accept(root: Path, **more: str) -> None:
    accepted = {"brook/program.yml": {"accepted": [ENTRY | more]}}
    folder(root, {**SHORT_REST, **accepted})


def run(*words: str, colour: bool = False) -> Result:
    result = CliRunner().invoke(cli.main, words, color=colour)
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result


def test_in_a_pipe_each_finding_is_one_line_with_its_smallest_change(root: Path) -> None:
    problem, *others = check_folder(root / "programs").problems
    line, last = run("check").stdout.splitlines()
    assert others == []
    assert LINE.fullmatch(line)
    assert line == str(problem)
    assert "Smallest change: write 'rest 2:00'" in line
    assert last == "programs: 0 errors, 1 warning, 0 notes"
    assert run("check").exit_code == 0


def test_in_a_pipe_there_is_no_colour_even_where_it_could_be(
    root: Path,  # noqa: ARG001  # current folder
) -> None:
    assert "\x1b" not in run("check", colour=True).stdout


def test_accepted_warnings_are_counted_after_the_sums(root: Path) -> None:
    accept(root)
    (last,) = run("check").stdout.splitlines()
    assert last == "programs: 0 errors, 0 warnings, 0 notes; 1 accepted"
    assert SUMS.fullmatch(last)


def test_json_says_what_is_behind_a_finding(root: Path) -> None:  # noqa: ARG001  # current folder
    data = json.loads(run("check", "--format", "json").stdout)
    (finding,) = data["findings"]
    check = CHECKS["rest-short"]
    assert (finding["slug"], finding["severity"], finding["at"]) == ("rest-short", "warn", AT)
    assert finding["family"] == "Rest and recovery"
    assert finding["change"].startswith("write 'rest 2:00'")
    assert (finding["why"], finding["source"]) == (check.why, check.source)
    assert (data["errors"], data["warnings"], data["notes"]) == (0, 1, 0)
    assert data["accepted"] == []
    assert "changes" not in data


@pytest.mark.parametrize("until", ["2027-01-31", None])
def test_json_lists_what_is_accepted_and_until_when(root: Path, until: str | None) -> None:
    accept(root, **({"until": until} if until else {}))
    data = json.loads(run("check", "--format", "json").stdout)
    assert data["findings"] == []
    (entry,) = data["accepted"]
    assert (entry["slug"], entry["at"]) == ("rest-short", AT)
    assert entry["reason"] == ENTRY["reason"]
    if until:
        assert entry["until"] == until
    else:  # the last day of the wave, where the program has a first day
        assert entry["until"] is None or re.fullmatch(r"\d{4}-\d{2}-\d{2}", entry["until"])


def a(slug: str, severity: Severity, family: Family | None = None, change: str = "") -> Problem:
    if family is None:
        return Problem("programs/room.yml", 3, 1, slug, f"{slug} is wrong", severity)
    text = "week 1, a-lift: " + "much is computed here, " * 8 + "and a limit"
    text += f". Smallest change: {change}" if change else ""
    return Reported("programs/x.yml", 9, 5, slug, text, severity, family=family, change=change)


MANY = [
    a("one", Severity.NOTE, Family.WORDS),
    a("two", Severity.WARN, Family.SAFETY, "write less"),
    a("three", Severity.ERROR, Family.LOAD, "write more"),
    a("four", Severity.WARN, Family.COMPLETE),
    a("five", Severity.WARN),
    a("six", Severity.ERROR),
]


def test_on_a_terminal_errors_come_first_and_each_severity_by_family() -> None:
    text = COLOUR.sub("", "\n".join(on_screen(MANY, "programs", 2, width=80)))
    order = [
        "2 ERRORS", "Files", " six\n", "Load", " three\n",
        "3 WARNINGS", "Files", " five\n", "Complete and consistent", " four\n", "Safety", " two\n",
        "1 NOTE", "Words", " one\n", "2 findings accepted",
        "programs: 2 errors, 3 warnings, 1 note",
    ]  # fmt: skip
    at = -1
    for word in order:
        at = text.find(word, at + 1)
        assert at >= 0, word


def test_on_a_terminal_lines_are_short_and_the_change_has_its_own() -> None:
    lines = [COLOUR.sub("", one) for text in on_screen(MANY, "programs", width=72)
             for one in text.split("\n")]  # fmt: skip
    # A line to copy is never broken.
    assert max(len(line) for line in lines if "- {finding:" not in line) <= 72
    assert "      Smallest change: write less" in lines
    assert "      Smallest change: write more" in lines
    assert sum("Smallest change" in line for line in lines) == 2
    assert "" in lines


def test_on_a_terminal_each_warning_of_a_check_ends_with_a_line_to_copy(root: Path) -> None:
    def printed() -> list[str]:
        problems = check_folder(root / "programs").problems
        return COLOUR.sub("", "\n".join(on_screen(problems, "programs", width=60))).split("\n")

    (entry,) = [line for line in printed() if "- {finding:" in line]
    assert entry.startswith("      - ")
    # Pasted as it stands it is refused; with a reason the warning is gone.
    program = root / "programs/brook/program.yml"
    kept = program.read_text(encoding="utf-8")
    for reason, says in (("...", "too short"), ("The pairs take turns.", "1 accepted")):
        text = yaml.safe_dump(yaml.safe_load(kept), sort_keys=False)
        pasted = entry.removeprefix("    ").replace("...", reason)
        program.write_text(f"{text}accepted:\n{pasted}\n", encoding="utf-8")
        assert says in run("check").stdout
    program.write_text(kept, encoding="utf-8")
    text = "\n".join(on_screen(MANY, "programs", width=60))
    assert text.count("- {finding:") == 2  # neither errors nor notes, nor what no check found
    assert text.count("To let a warning stand") == 1


@pytest.mark.parametrize("width", [1, 40, 400])
def test_any_width_will_do(width: int) -> None:
    text = "\n".join(on_screen(MANY, "programs", width=width))
    for problem in MANY:
        assert problem.slug in text


def test_no_colour_where_it_is_not_wanted(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert root.is_dir()
    monkeypatch.setattr(cli, "on_terminal", lambda: True)
    coloured = run("check", colour=True).stdout
    assert "\x1b[33m" in coloured
    monkeypatch.setenv("NO_COLOR", "1")
    plain = run("check", colour=True).stdout
    assert plain == COLOUR.sub("", coloured)
    assert "1 WARNING" in plain


def test_a_real_terminal_gets_groups_and_colours(root: Path) -> None:
    ours, theirs = pty.openpty()
    environment = {key: value for key, value in os.environ.items() if key != "NO_COLOR"}
    command = [sys.executable, "-m", "strength_handbook.cli", "check"]
    done = subprocess.run(command, cwd=root, stdout=theirs, check=False, env=environment)
    os.close(theirs)
    printed = os.read(ours, 65536).decode()
    os.close(ours)
    assert done.returncode == 0
    assert "\x1b[" in printed
    assert "Rest and recovery" in printed


@pytest.mark.parametrize("slug", [*EXPLANATIONS, *CHECKS])
def test_every_kind_of_finding_is_explained(slug: str) -> None:
    result = run("check", "--explain", slug, "nowhere")
    assert result.exit_code == 0
    assert result.stdout.splitlines()[0] == slug
    assert max(map(len, result.stdout.splitlines())) <= 100


@pytest.mark.parametrize(
    ("word", "meant"), [("unknown-kee", "unknown-key"), ("rest-shrot", "rest-short")]
)
def test_a_misspelt_kind_gets_a_hint(word: str, meant: str) -> None:
    assert f"did you mean '{meant}'?" in run("check", "--explain", word).output


def test_a_check_is_explained_with_the_limits_of_this_house(root: Path) -> None:
    text = " ".join(run("check", "--explain", "rest-short").stdout.split())
    check = CHECKS["rest-short"]
    for part in (check.what, check.why, check.source, "rest-heavy: 150 s."):
        assert part in text
    rules = {"house-rules.yml": {"rules.rest-heavy": {"value": "200 s"}}}
    folder(root, rules)
    # Also while another file is wrong: that is when somebody asks.
    (root / "programs/room.yml").write_text("gim: x\n", encoding="utf-8")
    text = " ".join(run("check", "--explain", "rest-short").stdout.split())
    assert "as the house rules have them now" in text
    assert "rest-heavy: 200 s (the handbook's own: 150)." in text


def test_without_a_folder_the_handbooks_own_limits_are_named() -> None:
    text = run("check", "--explain", "rest-short", "nowhere").stdout
    assert "no house rules could be read" in text
    assert "rest-heavy: 150 s." in text
