"""A command imports only what it needs: told by what is loaded then, never by a clock."""

import json
import subprocess
import sys

import pytest

import demo

PAGES = {"jinja2", "markupsafe", "segno", "minify_html", "rjsmin", "markdown", "mkdocs", "material"}
"""Packages that make pages and sites."""
MODEL = {"pydantic", "pydantic_core", "yaml"}
"""Packages that read files."""
OWN_PAGES = {"strength_handbook.pages.site", "strength_handbook.pages.render"}

SCRIPT = """
import contextlib, io, json, sys
from strength_handbook.cli import main
with contextlib.redirect_stdout(io.StringIO()) as said:
    try:
        main(json.loads(sys.argv[1]))
    except SystemExit as end:
        code = end.code
print(json.dumps([code or 0, said.getvalue(), sorted(sys.modules)]))
"""


def loaded(*words: str) -> tuple[str, set[str]]:
    """What a command prints, and the modules that are loaded when it has ended well."""
    done = subprocess.run(
        [sys.executable, "-c", SCRIPT, json.dumps(words)],
        cwd=demo.ROOT, capture_output=True, encoding="utf-8", check=True,
    )  # fmt: skip
    code, said, modules = json.loads(done.stdout)
    assert code == 0, done.stderr
    return said, set(modules)


@pytest.mark.parametrize("words", [["--help"], ["check", "--help"], ["new", "--help"]])
def test_help_loads_nothing_that_reads_files_or_writes_pages(words: list[str]) -> None:
    said, modules = loaded(*words)
    assert "Usage:" in said
    assert not modules & (PAGES | MODEL | OWN_PAGES)
    own = {one for one in modules if one.startswith("strength_handbook")}
    parts = ("", ".cli", ".cli_begin", ".cli_new", ".cli_room", ".cli_shared")
    assert own == {f"strength_handbook{part}" for part in parts}


@pytest.mark.parametrize("form", ["text", "json"])
def test_a_check_loads_nothing_that_writes_pages(form: str) -> None:
    said, modules = loaded("check", "--format", form)
    assert said
    assert modules >= MODEL
    assert not modules & (PAGES | OWN_PAGES)
    assert not any(one.startswith("strength_handbook.pages") for one in modules)


def test_what_fields_say_is_read_when_somebody_asks() -> None:
    """Reading the model's sources at each start cost more than all else a command did to begin."""
    script = (
        "import inspect; read, asked = inspect.findsource, []\n"
        "inspect.findsource = lambda what: asked.append(what) or read(what)\n"
        "from strength_handbook.reading.book import MODELS, Exercise\n"
        "from strength_handbook.model.field_words import field_words\n"
        "before = len(asked); print(before, field_words(Exercise)['name'], len(asked), sep='|')"
    )
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, encoding="utf-8", check=True
    )
    before, said, after = done.stdout.strip().split("|")
    assert (before, said) == ("0", "The trade's name; the same everywhere.")
    assert int(after) > 0
