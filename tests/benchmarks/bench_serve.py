"""How soon a save is seen in `mkdocs serve`: of an exercise, a wave and the room.

    python tests/benchmarks/bench_serve.py [--exercises 300] [--programs 2] [--runs 5] [FOLDER]

Run by hand; nothing here is a test. A real `mkdocs serve` runs in a process of its own; this one
saves, waits for the word that browsers wait for, and gets a page that shows the change.

- told: seconds from the save until a browser that shows the site is told to ask again.
- seen: seconds from the save until the changed page has arrived.
- CPU: seconds of the server's process for both, other pages and checks left to later.

Without a folder, a handbook is generated; with one, a copy of it is taken.
"""

import argparse
import os
import re
import shutil
import socket
import statistics
import subprocess
import sys
import tempfile
import time
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

# Run as a script, outside pytest's path.
sys.path.insert(0, str(Path(__file__).parents[1]))

from benchmarks.generated_programs import generate

START_S = 600
TICKS = os.sysconf("SC_CLK_TCK")


@contextmanager
def serving(root: Path) -> Iterator[tuple[str, int]]:
    """A server; its address and the id of its process."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    command = [sys.executable, "-m", "mkdocs", "serve", "-q", "-a", f"127.0.0.1:{port}"]
    process = subprocess.Popen(command, cwd=root, env=os.environ | {"NO_MKDOCS_2_WARNING": "1"})
    address, end = f"http://127.0.0.1:{port}/", time.monotonic() + START_S
    try:
        while True:
            try:
                get(address)
                break
            except OSError:
                if time.monotonic() > end or process.poll() is not None:
                    raise
                time.sleep(0.2)
        yield address, process.pid
    finally:
        process.terminate()
        process.wait()


def get(address: str) -> str:
    """What stands at an address."""
    with urllib.request.urlopen(address, timeout=START_S) as answer:  # noqa: S310  # our server
        text: str = answer.read().decode()
    return text


def cpu(pid: int) -> float:
    """Seconds of CPU of a process so far."""
    fields = Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()
    return (int(fields[11]) + int(fields[12])) / TICKS


def rested(pid: int) -> float:
    """Seconds of CPU of a process so far, once it has done what the last save left to do."""
    used = cpu(pid)
    while True:
        time.sleep(1)
        if used == (used := cpu(pid)):
            return used


def save(server: tuple[str, int], path: Path, page: str) -> tuple[float, float, float]:
    """Save a file and wait for the page that shows it; the seconds until told, seen, and of CPU.

    Raises:
        SystemExit: where the page that comes is the old one.
    """
    address, pid = server
    before = get(address + page)
    epoch = re.findall(r"livereload\((\d+), \d+\)", before)[-1]
    used = rested(pid)
    start = time.monotonic()
    path.write_text(changed(path.read_text("utf-8")), "utf-8")
    get(f"{address}livereload/{epoch}/1")
    told = time.monotonic() - start
    after = get(address + page)
    seen, took = time.monotonic() - start, cpu(pid) - used
    if bare(after) == bare(before):
        raise SystemExit(f"{path}: nothing new on {page}")
    return told, seen, took


def changed(text: str) -> str:
    """The file with a longer reason or note, or with another number in its first dose."""
    said = re.search(r"^ *(?:why|note): [A-Z].*[a-z.]$", text, re.MULTILINE)
    if said is not None and not text.startswith("wave:"):
        return f"{text[: said.end()]} Now{text[said.end() :]}"
    dose = re.search(r"(?<=\dx)\d+", text)
    if dose is None:
        raise SystemExit("no dose")
    other = int(dose[0]) + (1 if int(dose[0]) % 2 == 0 else -1)
    return f"{text[: dose.start()]}{other}{text[dose.end() :]}"


def bare(html: str) -> str:
    """A page without the script for reloading."""
    return html.rpartition("<script>")[0]


def measure(root: Path, runs: int) -> None:
    """Save each kind of file in turn, and print."""
    programs = root / "programs"
    wave = min(programs.glob("*/1-*.yml"))
    exercise = min((programs / "exercises").glob("*.yml"))
    kinds = {
        "exercise": (exercise, f"exercises/{exercise.stem}/"),
        "wave": (wave, f"{wave.parent.name}/week-01/"),
        "room": (programs / "room.yml", "room/"),
    }
    found: dict[str, list[tuple[float, float, float]]] = {name: [] for name in kinds}
    with serving(root) as server:
        for _ in range(runs):
            for name, (path, page) in kinds.items():
                found[name].append(save(server, path, page))
    print(f"load of the machine {os.getloadavg()[0]:.1f}; medians of {runs}, least in brackets")
    for name, several in found.items():
        told, seen, used = zip(*several, strict=True)
        parts = (("told", told), ("seen", seen), ("CPU", used))
        print(f"{name:<9}", *(
            f"{what} {statistics.median(one):.2f} ({min(one):.2f}) s" for what, one in parts
        ))  # fmt: skip


def main() -> None:
    """Read the options and measure."""
    options = argparse.ArgumentParser(description="Time a save in mkdocs serve.")
    options.add_argument("folder", type=Path, nargs="?", help="a handbook, to be copied")
    options.add_argument("--exercises", type=int, default=300)
    options.add_argument("--programs", type=int, default=2)
    options.add_argument("--runs", type=int, default=5)
    chosen = options.parse_args()
    with tempfile.TemporaryDirectory() as place:
        root = Path(place) / "handbook"
        if chosen.folder is None:
            generate(root, chosen.exercises, chosen.programs)
        else:
            root.mkdir()
            for name in ("programs", "handbook"):
                shutil.copytree(chosen.folder / name, root / name)
            shutil.copy(chosen.folder / "mkdocs.yml", root)
        measure(root, chosen.runs)


if __name__ == "__main__":
    main()
