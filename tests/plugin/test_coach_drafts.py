"""The pages for the coach: there in `mkdocs serve`, errors or not, and never in a build."""

import logging
import re
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config

import books
import demo
from tiny import write_tiny

Serve = Callable[[], None]
WAVE = "programs/spring/1-start.yml"
PAGES = {
    "coach", "coach/findings", "coach/substitutes", "coach/calendar",
    *(f"coach/spring/{name}" for name in (
        "one-page", "changes", "teach-in", "floor", "put-out", "stress", "handover",
    )),
}  # fmt: skip


@pytest.fixture
def root(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The smallest handbook, in the current folder."""
    monkeypatch.chdir(tmp_path)
    return write_tiny(tmp_path)


@pytest.fixture
def serve(root: Path) -> Serve:
    """What `mkdocs serve` does: one start, then a build for each change."""

    def config() -> object:
        return load_config(str(root / "mkdocs.yml"), site_dir=str(root / "site"))

    config().plugins.on_startup(command="serve", dirty=False)  # type: ignore[attr-defined]
    return lambda: build(config(), serve_url="http://127.0.0.1:8000/")  # type: ignore[arg-type]


def read(root: Path, address: str) -> str:
    return (root / "site" / address / "index.html").read_text(encoding="utf-8")


def drafts(site: Path) -> set[str]:
    return {path.parent.relative_to(site).as_posix() for path in site.glob("coach/**/index.html")}


def test_serve_has_them_all_with_a_chapter_in_the_sidebar(root: Path, serve: Serve) -> None:
    serve()
    assert drafts(root / "site") == PAGES
    sidebar = read(root, "spring").split("md-sidebar--primary", 1)[1]
    links = re.findall(r'href="([^"#]+)" class="md-nav__link', sidebar)
    assert "../coach/" in links
    assert "../coach/spring/one-page/" in links
    assert "Coach's desk" in sidebar
    # In the order of the sidebar one leads to the next.
    assert 'rel="next" href="../substitutes/"' in read(root, "coach/findings")


def test_serve_says_nothing_of_the_pages_it_makes(
    root: Path, serve: Serve, caplog: pytest.LogCaptureFixture
) -> None:
    assert root.is_dir()
    with caplog.at_level(logging.INFO, "mkdocs"):
        serve()
    assert "coach/" not in caplog.text
    assert "excluded" not in caplog.text


def test_a_build_has_none_and_no_page_names_them(root: Path) -> None:
    site = demo.build_site(root, root / "built")
    assert (site / "spring/index.html").is_file()
    assert not (site / "coach").exists()
    for page in (*site.rglob("*.html"), *site.rglob("*.xml"), *site.rglob("*.json")):
        assert not re.search(r"[\"'/>]coach/", page.read_text(encoding="utf-8")), page


def test_a_build_does_not_make_them(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from strength_handbook import plugin

    def never(*_: object) -> None:
        raise AssertionError

    monkeypatch.setattr(plugin, "coach_pages", never)
    demo.build_site(root, root / "built")


def test_files_that_cannot_be_read_keep_the_last_ones_and_renew_the_findings(
    root: Path, serve: Serve
) -> None:
    serve()
    before = read(root, "coach/spring/one-page").split("<article", 1)[1]
    demo.change(root / WAVE, "2x8", "2x")
    serve()
    assert drafts(root / "site") == PAGES
    assert read(root, "coach/spring/one-page").split("<article", 1)[1] == before
    findings = read(root, "coach/findings").split("<article", 1)[1]
    assert f"{WAVE}:13:14" in findings
    assert 'role="alert"' in read(root, "coach/findings")


def test_what_the_checks_refuse_holds_nothing_back_and_is_shown_from_the_start(
    root: Path, serve: Serve, caplog: pytest.LogCaptureFixture
) -> None:
    # Five kilograms of a bar that weighs twenty: read well, and never to be had.
    shutil.rmtree(root / "programs")
    books.write_files(
        root / "programs",
        exercises={"lift": books.exercise()},
        sessions={"a": [books.slot("A", "lift", "2x8 @ 5 kg, RIR 3, rest 2:00")]},
    )
    with caplog.at_level(logging.ERROR, "mkdocs"):
        serve()
    assert "plan/1-first.yml" in caplog.text
    assert 'role="alert"' not in read(root, "")
    slot = read(root, "plan/week-01/a").split("id=slot-a", 1)[1]
    assert "no 5 kg can be made with the bar" in slot.split("</article>", 1)[0]
    assert drafts(root / "site") == {page.replace("spring", "plan") for page in PAGES}
    assert "Error" in read(root, "coach/findings")
    assert "5 kg" in read(root, "coach/findings")
