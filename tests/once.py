"""What is made once in a run and shared by all its workers: folders that nobody writes into."""

from collections.abc import Callable
from pathlib import Path

import pytest
from filelock import FileLock


def once(base: pytest.TempPathFactory, name: str, make: Callable[[Path], object]) -> Path:
    """A folder of this run, made by the worker that asks first; the others wait for it.

    Args:
        base: of the worker.
        name: of the folder, unique in the run.
        make: fills the folder it is given, which is there and empty. If it raises, so does this,
            and the next to ask tries again in another folder.
    """
    shared = base.getbasetemp()
    if shared.name.startswith("popen-"):  # each worker has its own folder in that of the run
        shared = shared.parent
    done = shared / f"{name}.done"
    with FileLock(shared / f"{name}.lock"):
        if not done.exists():
            folder = base.mktemp(name)
            make(folder)
            done.write_text(str(folder), encoding="utf-8")
    return Path(done.read_text(encoding="utf-8"))
