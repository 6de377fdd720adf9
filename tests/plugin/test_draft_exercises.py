"""Exercises that are only begun: shown by `mkdocs serve`, refused by a build unless it is told."""

import re
from pathlib import Path

import pytest
from mkdocs.exceptions import Abort

import demo
from tiny import MKDOCS, write_tiny

EXERCISE = "programs/exercises/chair-squat.yml"
BEGUN = """\
name: Chair squat
load: {kind: effort, by: A deeper squat makes it heavier.}
cues:
  before: [Whole foot on the floor.]
  during: [Sit down between the heels.]
  finish: [Push the floor away.]
dose: rest 2:00
stop: [End the set when the heels come up twice.]
"""


def begun(root: Path, mkdocs: str = MKDOCS) -> Path:
    write_tiny(root, mkdocs)
    (root / EXERCISE).write_text(BEGUN, encoding="utf-8")
    return root


def page(site: Path, address: str) -> str:
    return (site / address / "index.html").read_text(encoding="utf-8")


def test_serve_shows_it_marked_with_what_is_missing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(begun(tmp_path))
    site = demo.build_drafts(tmp_path, tmp_path / "site")
    shown = page(site, "exercises/chair-squat")
    assert "Chair squat (DRAFT)</h1>" in shown
    assert re.search(r"DRAFT\..*Still to be written: pattern, role, stations", shown)
    assert "Push the floor away." in shown
    assert "Chair squat (DRAFT)" in page(site, "spring/week-01/a-squat")
    assert "draft" in page(site, "coach/findings")


def test_a_build_refuses_it_and_says_what_is_missing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    monkeypatch.chdir(begun(tmp_path))
    with pytest.raises(Abort):
        demo.build_site(tmp_path, tmp_path / "site")
    assert f"{EXERCISE}:1:7: error draft: exercise chair-squat: only begun" in caplog.text
    assert not (tmp_path / "site").exists()


def test_a_build_that_is_told_publishes_it_with_its_mark(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    told = MKDOCS.replace("- strength-handbook\n", "- strength-handbook: {drafts: true}\n")
    assert told != MKDOCS
    monkeypatch.chdir(begun(tmp_path, told))
    site = demo.build_site(tmp_path, tmp_path / "site")
    shown = page(site, "exercises/chair-squat")
    assert "Chair squat (DRAFT)</h1>" in shown
    assert "Still to be written: pattern" in shown
    assert "(DRAFT)" in page(site, "cards/spring/start")
    assert "(DRAFT)" in page(site, "spring/week-01/a-squat")


def test_check_and_export_pass_it_where_they_are_told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(begun(tmp_path))
    refused = [demo.handbook(tmp_path, "check"), demo.handbook(tmp_path, "export", "out")]
    assert [done.returncode for done in refused] == [1, 1]
    assert "error draft: exercise chair-squat: only begun" in refused[0].stdout
    assert not (tmp_path / "out").exists()
    passed = [
        demo.handbook(tmp_path, "check", "--drafts"),
        demo.handbook(tmp_path, "export", "out", "--drafts"),
    ]
    assert [done.returncode for done in passed] == [0, 0], passed
    assert "note draft: exercise chair-squat: only begun" in passed[0].stdout
    assert "(DRAFT)" in (tmp_path / "out/exercises/chair-squat.md").read_text(encoding="utf-8")
