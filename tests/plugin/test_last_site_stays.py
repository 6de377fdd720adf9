"""Whatever ends a build, the last site is there to the byte; a good build takes its place whole."""

import os
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

import demo
from tiny import MKDOCS, write_tiny

pytestmark = pytest.mark.slow

Files = dict[str, bytes]

HOOK = """\
import errno, logging, os, signal, subprocess, sys
count = 0
def on_post_page(output, page, config):
    global count
    count += 1
    if count == 3 and not os.environ.get("INNER"):
        {does}
    return output
"""

KILLED = "os.kill(os.getpid(), signal.SIGKILL)"
FULL = "raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC), 'week-01/index.html')"
READ_ONLY = "raise OSError(errno.EROFS, os.strerror(errno.EROFS), 'site/index.html')"
LATE = 'logging.getLogger("mkdocs.plugins.other").warning("found late")'
SECOND = (
    'subprocess.run([sys.executable, "-m", "mkdocs", "build", "-q"], check=True, '
    'env=os.environ | {"INNER": "1"})'
)


def files(folder: Path) -> Files:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file()
    }


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A small handbook with its first site, which also has a server's hidden file."""
    root = write_tiny(tmp_path_factory.mktemp("built") / "gym")
    done = demo.mkdocs(root, "build", "--strict")
    assert done.returncode == 0, done.stderr
    (root / "site/.htaccess").write_text("ErrorDocument 404 /404.html\n", encoding="utf-8")
    return root


@pytest.fixture
def root(built: Path, tmp_path: Path) -> Path:
    """A copy of it, to be spoilt."""
    return Path(shutil.copytree(built, tmp_path / "gym"))


def hooked(root: Path, does: str, number: int = 3) -> None:
    """From now on builds do this while they write pages."""
    text = HOOK.replace("count == 3", f"count == {number}").format(does=does)
    (root / "hook.py").write_text(text, encoding="utf-8")
    (root / "mkdocs.yml").write_text(MKDOCS + "hooks: [hook.py]\n", encoding="utf-8")
    demo.change(root / "programs/room.yml", "gym: The Shed", "gym: The Barn")


def beside(root: Path) -> list[str]:
    return [path.name for path in root.iterdir() if path.name.startswith(".")]


@pytest.mark.parametrize("number", [1, 9])
def test_a_killed_build_leaves_the_site_and_the_next_clears_up(root: Path, number: int) -> None:
    before = files(root / "site")
    hooked(root, KILLED, number)
    assert demo.mkdocs(root, "build").returncode < 0
    assert files(root / "site") == before
    assert len(beside(root)) == 1
    (root / "mkdocs.yml").write_text(MKDOCS, encoding="utf-8")
    assert demo.mkdocs(root, "build").returncode == 0
    assert beside(root) == []
    assert "The Barn" in (root / "site/index.html").read_text("utf-8")
    assert (root / "site/.htaccess").is_file()


@pytest.mark.parametrize(
    ("does", "says"),
    [
        (FULL, "No space left on device ('week-01/index.html'); the last good site is untouched."),
        (READ_ONLY, "Read-only file system ('site/index.html'); the last good site is untouched."),
        (LATE, "1 warning: nothing was published, the last good site is untouched."),
    ],
    ids=["full disk", "read-only", "late warning"],
)
def test_a_build_that_ends_badly_leaves_the_site_and_says_why(
    root: Path, does: str, says: str
) -> None:
    before = files(root / "site")
    hooked(root, does)
    done = demo.mkdocs(root, "build", "--strict")
    assert done.returncode == 1
    assert says in done.stderr
    assert "Traceback" not in done.stderr
    assert files(root / "site") == before
    assert beside(root) == []


def test_a_late_warning_stops_no_plain_build(root: Path) -> None:
    hooked(root, LATE)
    assert demo.mkdocs(root, "build").returncode == 0
    assert "The Barn" in (root / "site/index.html").read_text("utf-8")


def test_a_link_to_nowhere_leaves_the_last_site(root: Path) -> None:
    before = files(root / "site")
    config = MKDOCS + "validation: {links: {anchors: warn}}\n"
    (root / "mkdocs.yml").write_text(config, encoding="utf-8")
    demo.change(root / "handbook/note.md", "# A note", "# A note\n\n[x](note.md#nowhere)")
    done = demo.mkdocs(root, "build", "--strict")
    assert done.returncode == 1
    assert "nowhere" in done.stderr
    assert files(root / "site") == before


def test_two_builds_at_a_time_leave_one_whole_site(root: Path) -> None:
    hooked(root, SECOND)
    done = demo.mkdocs(root, "build")
    assert done.returncode == 0, done.stderr
    both = files(root / "site")
    assert demo.mkdocs(root, "build", "-d", "alone").returncode == 0
    assert files(root / "alone") | {".htaccess": both[".htaccess"]} == both
    assert beside(root) == []


def test_another_theme_is_refused_in_one_sentence(root: Path) -> None:
    before = files(root / "site")
    config = MKDOCS.replace("{name: material, font: false}", "mkdocs")
    (root / "mkdocs.yml").write_text(config, encoding="utf-8")
    done = demo.mkdocs(root, "build")
    assert done.returncode == 1
    assert "the handbook needs the theme 'material'" in done.stderr
    assert "Traceback" not in done.stderr
    assert files(root / "site") == before


def test_pages_that_are_gone_leave_the_site_and_its_folder_stays_the_same(root: Path) -> None:
    number = (root / "site").stat().st_ino
    (root / "handbook/note.md").rename(root / "handbook/other.md")
    assert demo.mkdocs(root, "build").returncode == 0
    assert not (root / "site/note").exists()
    assert (root / "site/other/index.html").is_file()
    assert (root / "site").stat().st_ino == number


def test_a_linked_site_folder_stays_linked(root: Path) -> None:
    (root / "site").rename(root / "real")
    (root / "site").symlink_to("real")
    hooked(root, "pass")
    assert demo.mkdocs(root, "build").returncode == 0
    assert (root / "site").is_symlink()
    assert "The Barn" in (root / "real/index.html").read_text("utf-8")


def _as_it_is(_root: Path) -> str:
    return "programs"


def _inside(root: Path) -> str:
    (root / "handbook/site").mkdir()
    return "programs/site"


def _linked(root: Path) -> str:
    (root / "out").symlink_to("programs")
    return "out"


def _holding(root: Path) -> str:
    (root / "all").mkdir()
    (root / "programs").rename(root / "all/programs")
    config = MKDOCS.replace("strength-handbook", "strength-handbook: {programs: all/programs}")
    (root / "mkdocs.yml").write_text(config, encoding="utf-8")
    return "all"


def _project(root: Path) -> str:
    (root / "handbook").rename(root.parent / "handbook")
    config = MKDOCS.replace("docs_dir: handbook", "docs_dir: ../handbook")
    (root / "mkdocs.yml").write_text(config, encoding="utf-8")
    return "."


@pytest.mark.parametrize("made", [_as_it_is, _inside, _linked, _holding, _project])
def test_no_site_is_written_over_a_persons_files(root: Path, made: Callable[[Path], str]) -> None:
    folder = made(root)
    before = files(root)
    done = demo.mkdocs(root, "build", "--strict", "-d", folder)
    assert done.returncode == 1
    assert "the site can't be written to" in done.stderr
    assert "Traceback" not in done.stderr
    assert files(root) == before


def test_a_site_folder_that_is_a_file_is_refused(root: Path) -> None:
    (root / "flat").write_text("mine", encoding="utf-8")
    done = demo.mkdocs(root, "build", "-d", "flat")
    assert done.returncode == 1
    assert "which is a file" in done.stderr
    assert (root / "flat").read_text("utf-8") == "mine"


def test_nobody_else_may_read_less_than_before(root: Path) -> None:
    # The folder beside is private while it is written; what is published is not.
    for path in (root / "site").rglob("*"):
        assert path.stat().st_mode & 0o044 == 0o044 & ~_umask(), path


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask
