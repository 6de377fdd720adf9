"""Hand-written pages beside generated ones, and what mkdocs.yml may say about the sidebar."""

import re
from pathlib import Path

import pytest

import demo
from strength_handbook.publish.handwritten import check_handwritten, marks
from strength_handbook.reading.problem import Severity
from tiny import MKDOCS, write_tiny

PROGRAM = [
    "spring/", "spring/week-01/", "spring/week-02/", "spring/missed/", "spring/test-day/",
]  # fmt: skip
"""The chapter of the only program."""


def build(tmp_path: Path, mkdocs: str = MKDOCS, **pages: str) -> Path:
    root = write_tiny(tmp_path, mkdocs)
    for name, text in pages.items():
        path = root / "handbook" / f"{name.replace('__', '/').replace('_', '-')}.md"
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return demo.build_site(root, tmp_path / "site")


def sidebar(site: Path) -> list[str]:
    html = (site / "index.html").read_text(encoding="utf-8")
    part = html.split("md-sidebar--primary", 1)[1].split("md-sidebar--secondary", 1)[0]
    links = re.findall(r'<a href="([^"#]+)" class="md-nav__link[^"]*">', part)
    return list(dict.fromkeys(links))


def test_a_handwritten_page_stands_in_for_the_generated_one(tmp_path: Path) -> None:
    site = build(tmp_path, exercises__chair_squat="# My own words\n\nSit down slowly.\n")
    html = (site / "exercises/chair-squat/index.html").read_text(encoding="utf-8")
    assert "Sit down slowly." in html
    assert "Sit down between your heels" not in html


def test_one_at_the_same_address_but_another_file_name_does_too(tmp_path: Path) -> None:
    site = build(tmp_path, room__index="# Our shed\n")
    html = (site / "room/index.html").read_text(encoding="utf-8")
    assert html.count("<h1") == 1
    assert "Our shed" in html


def test_links_to_safety_lead_somewhere_before_anybody_has_written_it(tmp_path: Path) -> None:
    site = build(tmp_path)
    session = (site / "spring/week-01/a-squat/index.html").read_text(encoding="utf-8")
    assert "../safety/" in session
    html = (site / "safety/index.html").read_text(encoding="utf-8")
    assert "1 Mill Lane" in html
    assert "Chest pain or pressure" in html
    own = build(tmp_path / "own", safety="# Our own words\n")
    assert "Chest pain" not in (own / "safety/index.html").read_text(encoding="utf-8")


def test_a_data_file_of_ones_own_is_kept(tmp_path: Path) -> None:
    root = write_tiny(tmp_path)
    (root / "handbook/data").mkdir()
    (root / "handbook/data/spring.json").write_text("{}", encoding="utf-8")
    site = demo.build_site(root, tmp_path / "site")
    assert (site / "data/spring.json").read_text(encoding="utf-8") == "{}"


def test_a_handwritten_page_may_link_into_generated_ones(
    tmp_path: Path, caplog: pytest.LogCaptureFixture
) -> None:
    strict = f"{MKDOCS}validation: {{anchors: warn, links: {{not_found: warn}}}}\n"
    build(tmp_path / "1", strict, other="[set up](exercises/chair-squat.md#set-up)\n")
    assert "chair-squat" not in caplog.text
    build(tmp_path / "2", strict, other="[set up](exercises/chair-squat.md#no-such-place)\n")
    assert "does not contain an anchor '#no-such-place'" in caplog.text


def test_without_a_nav_the_sidebar_has_everything_in_a_sensible_order(tmp_path: Path) -> None:
    assert sidebar(build(tmp_path)) == [
        ".", *PROGRAM, "my-numbers/", "my-log/", "exercises/", "room/",
        "cards/", "safety/", "numbers/", "words/", "note/",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("nav", "expected"),
    [
        ("[note.md, programs/]", ["note/", *PROGRAM]),
        ("[note.md, Plans: programs/]", ["note/", *PROGRAM]),
        ("[All: [programs/, note.md]]", [*PROGRAM, "note/"]),
        ("[note.md]", ["note/"]),
    ],
)
def test_the_entry_programs_stands_for_all_programs(
    tmp_path: Path, nav: str, expected: list[str]
) -> None:
    site = build(tmp_path, f"{MKDOCS}nav: {nav}\n")
    assert [link for link in sidebar(site) if link != "."] == expected


def test_a_coachs_own_style_comes_after_ours(tmp_path: Path) -> None:
    site = build(tmp_path, f"{MKDOCS}extra_css: [mine.css]\n")
    html = (site / "index.html").read_text(encoding="utf-8")
    assert html.index("strength-handbook/handbook.") < html.index("mine.css")


def test_marks_shown_as_code_are_no_marks() -> None:
    text = """\
    Text <!-- handbook:one --> and `<!-- handbook:code -->` and <!--handbook:two-->

    ```html
    <!-- handbook:fenced -->
    ```

    ~~~~
    ```
    <!-- handbook:fenced -->
    ~~~~
    ``a ` <!-- handbook:code -->`` <!-- handbook:three -->
    """
    lines = "\n".join(line.removeprefix("    ") for line in text.split("\n"))
    assert [(name, line) for name, line, _ in marks(lines)] == [
        ("one", 1), ("two", 1), ("three", 11)
    ]  # fmt: skip


def test_a_page_in_another_encoding_is_reported_before_it_stops_mkdocs(tmp_path: Path) -> None:
    (tmp_path / "a.md").write_bytes("# Für alle".encode("latin-1"))
    (problem,) = check_handwritten(tmp_path, ())
    assert (problem.slug, problem.line, problem.column) == ("not-utf-8", 1, 4)


def test_a_place_that_is_not_yet_filled_in_is_a_warning_with_its_line(tmp_path: Path) -> None:
    text = "# Keys\n\nAsk: not yet filled in (who has one).\n\n`Not yet filled in (x)` is a sign.\n"
    (tmp_path / "keys.md").write_text(text, encoding="utf-8")
    (problem,) = check_handwritten(tmp_path, ())
    assert (problem.line, problem.column, problem.slug) == (3, 6, "not-filled-in")
    assert problem.severity is Severity.WARN
    assert problem.text == "write who has one, and take 'Not yet filled in (…)' out"
