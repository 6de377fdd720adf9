"""The pages for coaches, followed to the letter on a copy of the demo."""

import re
import shlex
from collections.abc import Iterable
from html import unescape
from pathlib import Path

import pytest
from click.testing import CliRunner

import coach_pages
import demo
from strength_handbook.checked import Checked, check_folder, errors_in
from strength_handbook.cli import main
from strength_handbook.pages.coach.drafts import coach_pages as generated_for_the_coach
from strength_handbook.pages.page import Page
from strength_handbook.pages.site import site_parts
from strength_handbook.reading.yaml_source import read_source

PAGES = sorted(path.name for path in coach_pages.FOLDER.glob("*.md"))
WITH_EXAMPLES = [page for page in PAGES if coach_pages.steps(page)]


def plain(text: str) -> str:
    """With ordinary spaces, and one of them where there were several."""
    return " ".join(text.split())


def html_at(address: str, checked: Checked) -> str:
    """The generated page at an address; empty where there is none."""
    assert checked.worked is not None, errors_in(checked.problems)
    if address.startswith("coach/"):
        made: Iterable[Page] = generated_for_the_coach(checked)
    else:
        # Only what is about the program, session or exercise that the address names.
        parts = [
            part
            for part in site_parts(checked.worked)
            if all(word in address for word in part.name[1:] if isinstance(word, str))
        ]
        made = (page for part in parts for page in part.make())
    return next((page.html for page in made if page.url == address), "")


def words_at(address: str, checked: Checked) -> str:
    """The words of a generated page; empty where there is none."""
    return plain(unescape(re.sub(r"<[^>]+>", "", html_at(address, checked))))


def follow_page(page: str, root: Path) -> list[str]:
    """Do everything a page says; returns what turned out otherwise."""
    find, wrong = "", []
    now: Checked | None = None
    for step in coach_pages.steps(page):
        if step.kind == "example":
            find, now = coach_pages.follow(step, root, find), None
            continue
        if step.kind == "answer":
            checked = check_folder(root / "programs", "programs")
            wrong += [] if answered(step.text, checked) else [step.text]
            continue
        now = now or check_folder(root / "programs")
        words = words_at(step.target, now)
        assert step.promised, step.text
        wrong += [f"{step.target}: {said}" for said in step.promised if plain(said) not in words]
    return wrong


def answered(text: str, checked: Checked) -> bool:
    """The check says just this, with file, line and column."""
    return [str(problem) for problem in checked.problems] == text.strip().split("\n")


@pytest.fixture
def root(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A copy of the demo, on 1 December 2026: its dates would come to an end one day."""
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1796083200")
    return demo.copy_demo(tmp_path)


def test_the_readme_shows_the_same_answer() -> None:
    (answer,) = [one.text for one in coach_pages.steps("publish.md") if one.kind == "answer"]
    assert answer.strip() in (demo.ROOT / "README.md").read_text(encoding="utf-8")


def test_there_are_pages_with_examples() -> None:
    assert {
        "change-a-week.md", "write-an-exercise.md", "write-a-program.md", "publish.md",
        "print.md", "hand-over.md", "accept.md",
    } <= set(WITH_EXAMPLES)  # fmt: skip


@pytest.mark.parametrize("page", WITH_EXAMPLES)
def test_a_page_that_is_followed_keeps_its_promises(page: str, root: Path) -> None:
    assert follow_page(page, root) == []
    assert errors_in(check_folder(root / "programs").problems) == []


def test_a_promise_that_is_not_kept_is_found(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    step = coach_pages.Step("promise", "winter/week-02/a-lift/", "begin", "> `9 × 9 @ 99 %`")
    monkeypatch.setattr(coach_pages, "steps", lambda _: [step])
    assert follow_page("any.md", root) == ["winter/week-02/a-lift/: 9 × 9 @ 99 %"]


def test_lines_that_are_there_twice_are_not_replaced(tmp_path: Path) -> None:
    file = tmp_path / "a.yml"
    file.write_text("a:\n  x: 1\nb:\n  x: 1\n", encoding="utf-8")
    with pytest.raises(AssertionError, match="is 2 times"):
        coach_pages.replace(file, "x: 1\n", "x: 2\n")
    coach_pages.replace(file, "b:\n  x: 1\n", "b:\n  x: 3\n")
    assert file.read_text(encoding="utf-8") == "a:\n  x: 1\nb:\n  x: 3\n"


def test_the_new_exercise_has_the_table_that_the_page_promises(root: Path) -> None:
    """14, 20 and 28 % of 75 kg are 10.5, 15 and 21 kg; the bells are 8, 12, 16, 20, 24 …"""
    follow_page("write-an-exercise.md", root)
    html = html_at("exercises/goblet-squat/", check_folder(root / "programs"))
    rows = [
        re.findall(r"<t[hd][^>]*>(.*?)</t[hd]>", row, re.DOTALL)
        for row in re.findall(r"<tr>(.*?)</tr>", html, re.DOTALL)
    ]
    cells = [[plain(re.sub(r"<[^>]+>", "", cell)) for cell in row] for row in rows]
    assert ["75", "8", "12", "20"] in cells
    text = (coach_pages.FOLDER / "write-an-exercise.md").read_text(encoding="utf-8")
    assert "8 kg when new, 12 kg with some practice, 20 kg when strong" in text


def test_the_new_program_stands_beside_the_old_one(root: Path) -> None:
    follow_page("write-a-program.md", root)
    checked = check_folder(root / "programs")
    new = [f"spring/week-0{week}/a-stones/" for week in range(1, 5)]
    assert [at for at in ("winter/week-01/a-lift/", *new) if not html_at(at, checked)] == []
    assert html_at("spring/week-05/a-stones/", checked) == ""


def test_the_accepted_finding_is_not_reported_any_more(root: Path) -> None:
    place = "week 3, a-lift A trap-bar-deadlift"
    follow_page("accept.md", root)
    checked = check_folder(root / "programs")
    assert (place, "rest-short") in [(one.at.text, one.slug) for one, _ in checked.accepted]
    assert place not in [one.at.text for one in checked.findings if one.slug == "rest-short"]


def test_every_block_of_yaml_is_yaml() -> None:
    for page in PAGES:
        text = (coach_pages.FOLDER / page).read_text(encoding="utf-8")
        for block in re.findall(r"```yaml\n(.*?)^```", text, re.DOTALL | re.MULTILINE):
            # A list is a part of something; on a page that stands in words.
            whole = f"part:\n{block}" if block.startswith("-") else block
            source, problems = read_source(whole.encode(), page)
            assert source is not None, problems


@pytest.mark.parametrize(("page", "line"), coach_pages.commands())
def test_every_command_works(
    page: str, line: str, root: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(root)
    name, *words = shlex.split(line)
    if name == "mkdocs":  # tests of the plugin build sites
        assert words in (["build", "--strict"], ["serve"]), page
        return
    assert name == "strength-handbook"
    # Nobody can be asked here.
    done = CliRunner().invoke(main, [*words, *(["--yes"] if words[0] == "init" else [])])
    assert done.exit_code == 0, done.output
