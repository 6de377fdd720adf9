"""The command `strength-handbook`: check, copy, export, schema and new.

Exit codes: 0 all is well, 1 the files have errors, 2 the command was not used as it should be.
"""

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import click

from strength_handbook.checked import check_folder, counted, errors_in, shown_path
from strength_handbook.pages.site import write_pages
from strength_handbook.publish.explained import UnknownSlugError, explained
from strength_handbook.publish.export import ForeignFolderError, export
from strength_handbook.publish.file_copy.assembling import NoIndexError
from strength_handbook.publish.file_copy.building import FailedBuildError
from strength_handbook.publish.file_copy.making import make_copy
from strength_handbook.publish.json_schema import SCHEMAS, schema_text
from strength_handbook.publish.report import as_json, as_lines, change_lines
from strength_handbook.publish.report_screen import on_screen
from strength_handbook.publish.since import read_since
from strength_handbook.publish.starter import StarterError, new_exercise
from strength_handbook.reading.problem import sorted_problems

FOLDER = click.Path(file_okay=False, path_type=Path)
PROGRAMS = click.option(
    "--programs", type=FOLDER, default=Path("programs"), show_default=True, metavar="DIR",
    help="The folder with the program files.",
)  # fmt: skip


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="strength-handbook")
def main() -> None:
    """Check and publish a gym's handbook from its program files."""


@main.command()
@click.argument("folder", type=FOLDER, required=False, metavar="[DIR]")
@PROGRAMS
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text")
@click.option("--explain", "slug", metavar="SLUG", help="Say what one kind of finding means.")
@click.option(
    "--since", type=click.Path(exists=True, path_type=Path), metavar="FILE",
    help="Also list what changed since data/<program>.json of an earlier site, or a folder of such "
    "files.",
)  # fmt: skip
def check(
    folder: Path | None, programs: Path, form: str, slug: str | None, since: Path | None
) -> None:
    """Report everything that is wrong in the program files of DIR (default: programs).

    On a terminal in groups. In a pipe one line each: file:line:column: error, warn or note, kind:
    text; then the sums.
    """
    if slug is not None:
        click.echo(_explained(slug, _inner(folder or programs)))
        return
    folder = _existing(folder or programs)
    checked = check_folder(folder)
    compared = read_since(since, checked)
    problems = sorted_problems([*checked.problems, *compared.problems])
    asked, accepted = compared if since else None, len(checked.accepted)
    if form == "json":
        click.echo(as_json(checked, problems, asked))
    elif on_terminal():
        for line in on_screen(problems, shown_path(folder), accepted, asked):
            click.echo(line, color=False if os.environ.get("NO_COLOR") else None)
    else:
        changes = change_lines(checked.desk, compared)
        for line in as_lines(problems, shown_path(folder), accepted, changes):
            click.echo(line)
    raise SystemExit(1 if errors_in(problems) else 0)


@main.command("copy")
@click.argument("out", type=FOLDER, metavar="DIR")
@click.option(
    "--config", "-f", type=click.Path(dir_okay=False, path_type=Path), default=Path("mkdocs.yml"),
    show_default=True, metavar="FILE", help="The handbook's configuration.",
)  # fmt: skip
@click.option("--strict", is_flag=True, help="Stop at warnings that nobody accepted.")
def copy_command(out: Path, config: Path, *, strict: bool) -> None:
    """Build the handbook and write a copy into DIR that opens from a file, with search.

    Beside DIR goes the same as one .zip, named after gym and version. Open index.html in it; no
    server is needed. An earlier copy in DIR is replaced when the new one is complete; any other
    folder is left alone.
    """
    if not config.is_file():
        text = f"there is no '{config}' here; go to the handbook's folder, or name it: --config"
        raise click.UsageError(text)
    with _writing():
        made = make_copy(config, out, strict=strict)
    for line in filter(None, made.warnings.splitlines()):
        click.echo(line, err=True)
    for page, address in made.broken:
        click.echo(f"{page}: '{address}' leads to nothing in the copy", err=True)
    click.echo(f"{counted(made.number, 'file')} written to {shown_path(out)}; open index.html")
    click.echo(f"the same, {made.size / 1e6:.1f} MB, in {shown_path(made.archive)}")


@main.command("export")
@click.argument("out", type=FOLDER, metavar="DIR")
@PROGRAMS
def export_command(out: Path, programs: Path) -> None:
    """Write the generated pages as Markdown files into DIR, for any other site builder."""
    checked = check_folder(_existing(programs))
    if checked.worked is None:
        for line in as_lines(checked.problems, shown_path(programs)):
            click.echo(line, err=True)
        raise SystemExit(1)
    with _writing():
        number = export(write_pages(checked.worked), out)
    click.echo(f"{counted(number, 'file')} written to {shown_path(out)}")


@main.command()
@click.argument("out", type=FOLDER, metavar="DIR")
def schema(out: Path) -> None:
    """Write a JSON Schema for each kind of program file into DIR, for completion in editors.

    An editor with YAML support takes it from the first line of a file in programs/exercises:

    # yaml-language-server: $schema=../../.schema/exercise.json
    """
    with _writing():
        out.mkdir(parents=True, exist_ok=True)
        for kind in SCHEMAS:
            (out / f"{kind}.json").write_text(schema_text(kind), encoding="utf-8")
    click.echo(f"{counted(len(SCHEMAS), 'file')} written to {shown_path(out)}")


@main.group()
def new() -> None:
    """Begin a new file."""


@new.command()
@click.argument("name")
@PROGRAMS
def exercise(name: str, programs: Path) -> None:
    """Begin the file of an exercise, with every field explained.

    NAME is what members call it, such as "Step-down"; an existing file is never touched.
    """
    folder = _existing(programs)
    with _writing():
        path = new_exercise(name, folder)
    click.echo(
        f"{shown_path(path)} is there; change its examples, then run: strength-handbook check"
    )


@contextmanager
def _writing() -> Iterator[None]:
    """Refusals and failures to write as messages of the command."""
    try:
        yield
    except (ForeignFolderError, StarterError) as error:
        raise click.UsageError(str(error)) from None
    except (FailedBuildError, NoIndexError) as error:
        raise click.ClickException(str(error)) from None
    except OSError as error:
        raise click.ClickException(f"can't write '{error.filename}': {error.strerror}") from None


def _existing(folder: Path) -> Path:
    """The program folder; also found from the folder above it.

    Raises:
        click.UsageError: where there is none.
    """
    if not folder.is_dir():
        text = f"there is no folder '{folder}' here; go to the handbook's folder, or name another"
        raise click.UsageError(text)
    return _inner(folder)


def _inner(folder: Path) -> Path:
    inner = folder / "programs"
    return inner if inner.is_dir() and not (folder / "room.yml").exists() else folder


def _explained(slug: str, folder: Path) -> str:
    try:
        return explained(slug, folder)
    except UnknownSlugError as error:
        raise click.UsageError(str(error)) from None


def on_terminal() -> bool:
    """True where a person reads what is printed."""
    return sys.stdout.isatty()


if __name__ == "__main__":
    main(prog_name="strength-handbook")
