"""Hand-written pages for coaches are on the built site only where mkdocs.yml says so."""

from pathlib import Path

import demo
from strength_handbook.publish.for_coaches import FOR_COACHES
from tiny import MKDOCS, write_tiny

PAGE = "# Change a week\n\n![Hooks](hooks.svg)\n"
NAV = """\
nav:
  - Home: index.md
  - programs/
  - Note: note.md
  - For coaches:
      - Change a week: for-coaches/change.md
"""


def gym(root: Path, publish: str) -> Path:
    """A small gym with a page for coaches that its nav names, and a picture on it."""
    write_tiny(root, mkdocs=f"{MKDOCS.rstrip()}{publish}\n{NAV}")
    folder = root / "handbook" / FOR_COACHES
    folder.mkdir(parents=True)
    (folder / "change.md").write_text(PAGE, encoding="utf-8")
    (folder / "hooks.svg").write_text("<svg xmlns='http://www.w3.org/2000/svg'/>", encoding="utf-8")
    return root


def published(root: Path) -> tuple[bool, str]:
    """Whether a strict build has the folder, and all texts of the site."""
    done = demo.mkdocs(root, "build", "--strict")
    assert done.returncode == 0, done.stderr
    files = [
        path for path in (root / "site").rglob("*") if path.suffix in (".html", ".json", ".js")
    ]
    every = "".join(path.read_text(encoding="utf-8") for path in files)
    return (root / "site" / FOR_COACHES).exists(), every


def test_a_build_leaves_them_out(tmp_path: Path) -> None:
    there, texts = published(gym(tmp_path / "gym", ""))
    assert not there
    assert "for-coaches" not in texts
    assert "For coaches" not in texts


def test_a_build_has_them_where_it_is_said(tmp_path: Path) -> None:
    there, texts = published(gym(tmp_path / "gym", ":\n      publish: coaches"))
    assert there
    assert "For coaches" in texts


def test_another_word_is_refused_with_what_can_stand_there(tmp_path: Path) -> None:
    root = gym(tmp_path / "gym", ":\n      publish: everything")
    done = demo.mkdocs(root, "build")
    assert done.returncode != 0
    assert "option 'publish'" in done.stderr
    assert "coaches" in done.stderr
    assert "Traceback" not in done.stderr
