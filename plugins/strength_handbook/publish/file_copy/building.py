"""The site a copy is made from, built by `mkdocs build` into a folder of its own.

A process of its own: whatever a configuration does, it does as in any other build, and the last
site is not touched.
"""

import os
import re
import subprocess
import sys
from pathlib import Path

from strength_handbook.publish.command_errors import FailedError

_QUIET = re.compile(r"(?:INFO|DEBUG) +- ")


class FailedBuildError(FailedError):
    """What the build said."""


def build_site(config: Path, site: Path, *, strict: bool = False) -> str:
    """Build the handbook; gives the build's warnings.

    Args:
        config: `mkdocs.yml`.
        site: the folder to build into.
        strict: stop at warnings that nobody accepted.

    Raises:
        FailedBuildError: where the build fails; its message is the build's.
    """
    words = ["build", "--config-file", str(config), "--site-dir", str(site)]
    done = subprocess.run(  # noqa: S603  # the words are ours, and no shell reads them
        [sys.executable, "-m", "mkdocs", *words, *(["--strict"] if strict else [])],
        env=os.environ | {"NO_MKDOCS_2_WARNING": "1", "PYTHONUTF8": "1"},
        stdin=subprocess.DEVNULL,
        capture_output=True,
        encoding="utf-8",
        errors="replace",
        check=False,
    )
    lines = (done.stdout + done.stderr).splitlines()
    said = "\n".join(line for line in lines if not _QUIET.match(line)).strip()
    if done.returncode:
        raise FailedBuildError(said)
    return said
