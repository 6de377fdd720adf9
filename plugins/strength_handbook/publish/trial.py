"""A file tried among the others before it is written."""

import shutil
import tempfile
from pathlib import Path

from strength_handbook.publish.command_errors import MisuseError
from strength_handbook.reading.book import read_book
from strength_handbook.reading.problem import Severity


def refuse_unreadable(programs: Path, name: str, text: str) -> None:
    """Read a program folder with a new file in a copy of it.

    Args:
        programs: the folder; nothing in it is changed.
        name: the file's address in it.
        text: what would be written.

    Raises:
        MisuseError: where the file could not be read; the message says what is wrong with it.
    """
    with tempfile.TemporaryDirectory() as beside:
        copy = Path(beside) / programs.name
        shutil.copytree(programs, copy)
        (copy / name).write_text(text, encoding="utf-8")
        shown = f"{programs.name}/{name}"
        wrong = [
            str(problem)
            for problem in read_book(copy, programs.name).problems
            if problem.file == shown and problem.severity is Severity.ERROR
        ]
    if wrong:
        raise MisuseError("nothing was written, for it could not be read\n" + "\n".join(wrong))
