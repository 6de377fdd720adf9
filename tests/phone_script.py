"""What the phone's arithmetic answers: its script under node."""

import json
import os
import shutil
import subprocess
from pathlib import Path
from typing import Any

import pytest

import demo
from strength_handbook.publish.bundle import linked_script

RUNNER = Path(__file__).parent / "phone" / "run_loads.js"
MODULES = ("attempts", "load-words", "loads", "on-top", "ramps", "strips", "whole-numbers",
           "tools/singles")  # fmt: skip
SCRIPTS = demo.PACKAGE / "theme" / "assets" / "strength-handbook"


def ask(
    question: dict[str, Any], runner: Path = RUNNER, modules: tuple[str, ...] = MODULES
) -> list[Any]:
    """The script's answers; skips the test where node is missing and not required."""
    node = shutil.which("node")
    if node is None:
        if os.environ.get("STRENGTH_HANDBOOK_BROWSER") == "required":
            pytest.fail("no node found; install it (apt-get install nodejs)")
        pytest.skip("no node found; install it (apt-get install nodejs)")
    script = linked_script(SCRIPTS, *modules)
    done = subprocess.run(
        [node, str(runner)],
        input=json.dumps({"script": script, "question": question}),
        capture_output=True,
        encoding="utf-8",
        check=False,
    )
    assert done.returncode == 0, done.stderr
    answers: list[Any] = json.loads(done.stdout)
    return answers
