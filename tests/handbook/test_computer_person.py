"""The page for the computer person: its copies and its way back, done with a shell."""

import re
import subprocess
import sys
from pathlib import Path

import coach_pages
import demo

PAGE = (coach_pages.FOLDER / "for-the-computer-person.md").read_text(encoding="utf-8")
KEEP, BACK = re.findall(r"^```bash\n(.*?)^```", PAGE, re.DOTALL | re.MULTILINE)


def shell(text: str, folder: Path) -> None:
    subprocess.run(["bash", "-e", "-c", text], cwd=folder, check=True)


def files(site: Path) -> dict[str, bytes]:
    return {
        path.relative_to(site).as_posix(): path.read_bytes()
        for path in site.rglob("*")
        if path.is_file()
    }


def test_what_is_kept_comes_back_and_tells_what_changed(tmp_path: Path) -> None:
    root = demo.copy_demo(tmp_path)
    assert demo.mkdocs(root, "build", "--strict").returncode == 0
    good = files(root / "site")
    shell(KEEP, root)
    demo.change(root / "programs/room.yml", "gym: The Wool Hall Strength Room", "gym: Barn")
    assert demo.mkdocs(root, "build", "--strict").returncode == 0
    assert files(root / "site") != good
    command = [
        str(Path(sys.executable).parent / "strength-handbook"),
        "check",
        "--since",
        "published",
    ]
    done = subprocess.run(command, cwd=root, capture_output=True, text=True, check=True)
    assert "Barn" in done.stdout
    shell(BACK, root)
    assert files(root / "site") == good
