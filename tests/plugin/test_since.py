"""The option `since`: what changed stands on overview and home, and on a draft for the coach."""

import shutil
from pathlib import Path

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.exceptions import Abort

import demo
from tiny import MKDOCS, write_tiny

WAVE = "programs/spring/1-start.yml"
LINE = "Week 2: chair squat: 4 sets instead of 3."
OPTION = MKDOCS.replace(
    "  - strength-handbook\n", "  - strength-handbook:\n      since: published\n"
)
assert OPTION != MKDOCS


@pytest.fixture
def root(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The smallest handbook, published once, with the option, in another current folder."""
    root = write_tiny(tmp_path / "gym", OPTION)
    monkeypatch.chdir(tmp_path)
    demo.build_site(root, tmp_path / "first")
    (root / "published").mkdir()
    shutil.copy(tmp_path / "first/data/spring.json", root / "published")
    return root


def page(site: Path, address: str) -> str:
    return (site / address / "index.html").read_text(encoding="utf-8")


def test_without_a_change_nothing_is_said(root: Path, tmp_path: Path) -> None:
    site = demo.build_site(root, tmp_path / "site")
    for address in ("", "spring"):
        assert "What changed" not in page(site, address)


def test_members_read_it_on_home_and_overview(root: Path, tmp_path: Path) -> None:
    demo.change(root / WAVE, "2: 3x8", "2: 4x8")
    demo.change(root / "programs/spring/program.yml", '"1"', '"2"')
    kept = (root / "published/spring.json").read_bytes()
    site = demo.build_site(root, tmp_path / "site")
    home, overview = page(site, ""), page(site, "spring")
    for html in (home, overview):
        assert f"<li>{LINE}</li>" in html
        assert "Since version 1." in html
    assert '<h2 id="changed">What changed</h2>' in overview
    assert 'href="#changed"' in overview  # in the page's own list of headings
    assert "<h3>What changed</h3>" in home
    assert not (site / "coach").exists()
    assert (root / "published/spring.json").read_bytes() == kept
    assert [path.name for path in (root / "published").iterdir()] == ["spring.json"]


def test_a_hand_written_home_page_has_it_too(root: Path, tmp_path: Path) -> None:
    demo.change(root / WAVE, "2: 3x8", "2: 4x8")
    home = "# The gym\n\n<!-- handbook:this-week -->\n\nWelcome.\n"
    (root / "handbook/index.md").write_text(home, encoding="utf-8")
    site = demo.build_site(root, tmp_path / "site")
    assert LINE in page(site, "")
    assert "<p>Welcome.</p>" in page(site, "")


def test_the_coach_reads_all_of_it_in_serve(root: Path, tmp_path: Path) -> None:
    demo.change(root / WAVE, "2: 3x8", "2: 4x8")
    config = load_config(str(root / "mkdocs.yml"), site_dir=str(tmp_path / "site"))
    config.plugins.on_startup(command="serve", dirty=False)
    build(config, serve_url="http://127.0.0.1:8000/")
    html = page(tmp_path / "site", "coach/spring/since")
    assert "Changes since version 1" in html
    assert LINE in html
    assert "<dt>week 2, a-squat A chair-squat</dt><dd>4 sets instead of 3</dd>" in html
    assert "The version is still 1." in html
    assert "spring/since/" in page(tmp_path / "site", "coach")  # in the list of drafts


def test_a_version_that_was_not_raised_stops_a_strict_build(root: Path, tmp_path: Path) -> None:
    demo.change(root / WAVE, "2: 3x8", "2: 4x8")
    out = str(tmp_path / "strict")
    config = load_config(str(root / "mkdocs.yml"), site_dir=out, strict=True)
    config.plugins.on_startup(command="build", dirty=False)
    with pytest.raises(Abort):
        build(config)
    assert not Path(out).exists()


@pytest.mark.parametrize("content", [None, "{", '{"schema": 9}'])
def test_a_file_that_cannot_be_compared_is_a_warning_and_the_site_is_built(
    root: Path, tmp_path: Path, content: str | None, caplog: pytest.LogCaptureFixture
) -> None:
    if content is None:
        shutil.rmtree(root / "published")
    else:
        (root / "published/spring.json").write_text(content, encoding="utf-8")
    site = demo.build_site(root, tmp_path / "site")
    assert "since-file" in caplog.text
    assert "What changed" not in page(site, "spring")
