"""The command `strength-handbook`: check, copy, export, init, schema, trace and new.

Each command imports what it needs when it runs: whoever asks for help, or checks a file at every
save, does not wait for the parts that write pages.

Exit codes: 0 all is well, 1 the files have errors, 2 the command was not used as it should be.
"""

import os
import sys
from collections.abc import Iterable, Sequence
from io import TextIOWrapper
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from strength_handbook.cli_begin import init
from strength_handbook.cli_new import new
from strength_handbook.cli_shared import DRAFTS, FOLDER, PROGRAMS, existing, inner, writing

if TYPE_CHECKING:
    from strength_handbook.checked import Checked
    from strength_handbook.reading.problem import Problem


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="strength-handbook")
def main() -> None:
    """Check and publish a gym's handbook from its program files."""
    # In a pipe to an old code page a sign that it lacks is a question mark, not the end.
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, TextIOWrapper):
            stream.reconfigure(errors="replace")


main.add_command(init)
main.add_command(new)


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
@DRAFTS
def check(
    folder: Path | None,
    programs: Path,
    form: str,
    slug: str | None,
    since: Path | None,
    *,
    drafts: bool,
) -> None:
    """Report everything that is wrong in the program files of DIR (default: programs).

    On a terminal in groups. In a pipe one line each: file:line:column: error, warn or note, kind:
    text; then the sums.
    """
    if slug is not None:
        click.echo(_explained(slug, inner(folder or programs)))
        return
    folder = existing(folder or programs)

    from strength_handbook.checked import check_folder, errors_in, shown_path
    from strength_handbook.publish.handwritten import open_places
    from strength_handbook.publish.progress import told
    from strength_handbook.publish.report import as_json, as_lines
    from strength_handbook.reading.problem import sorted_problems

    with told() as tell:
        checked = check_folder(folder, tell=tell, drafts=drafts)
    found, lines, data = _compared(since, checked, form)
    problems = sorted_problems([*found, *open_places(folder)])
    shown, accepted = shown_path(folder), len(checked.accepted)
    if form == "json":
        click.echo(as_json(checked, problems, data))
    elif on_terminal():
        from strength_handbook.publish.report_screen import on_screen

        for line in on_screen(problems, shown, accepted, lines):
            click.echo(line, color=False if os.environ.get("NO_COLOR") else None)
    else:
        for line in as_lines(problems, shown, accepted, lines):
            click.echo(line)
    raise SystemExit(1 if errors_in(problems) else 0)


def _compared(
    since: Path | None, checked: "Checked", form: str
) -> tuple[Sequence["Problem"], Iterable[str], dict[str, Any] | None]:
    """All problems, and what changed since an earlier publication as the form wants it."""
    if since is None:
        return checked.problems, (), None

    from strength_handbook.publish import report_changes
    from strength_handbook.publish.since import read_since
    from strength_handbook.reading.problem import sorted_problems

    compared = read_since(since, checked)
    problems = sorted_problems([*checked.problems, *compared.problems])
    if form == "json":
        return problems, (), report_changes.change_data(checked.desk, compared)
    if on_terminal():
        return problems, report_changes.changes_on_screen(compared), None
    return problems, report_changes.change_lines(checked.desk, compared), None


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

    from strength_handbook.checked import counted, shown_path
    from strength_handbook.publish.file_copy.making import make_copy
    from strength_handbook.publish.progress import told

    with writing(), told() as tell:
        made = make_copy(config, out, strict=strict, tell=tell)
    for line in filter(None, made.warnings.splitlines()):
        click.echo(line, err=True)
    for page, address in made.broken:
        click.echo(f"{page}: '{address}' leads to nothing in the copy", err=True)
    click.echo(f"{counted(made.number, 'file')} written to {shown_path(out)}; open index.html")
    click.echo(f"the same, {made.size / 1e6:.1f} MB, in {shown_path(made.archive)}")


@main.command("export")
@click.argument("out", type=FOLDER, metavar="DIR")
@PROGRAMS
@DRAFTS
def export_command(out: Path, programs: Path, *, drafts: bool) -> None:
    """Write the generated pages as Markdown files into DIR, for any other site builder."""
    programs = existing(programs)

    from strength_handbook.checked import check_folder, counted, shown_path
    from strength_handbook.pages.site import write_pages
    from strength_handbook.publish.export import export
    from strength_handbook.publish.progress import told
    from strength_handbook.publish.report import as_lines

    with told() as tell:
        checked = check_folder(programs, tell=tell, drafts=drafts)
    if checked.worked is None:
        for line in as_lines(checked.problems, shown_path(programs)):
            click.echo(line, err=True)
        raise SystemExit(1)
    with writing(), told() as tell:
        tell("writing the pages")
        number = export(write_pages(checked.worked), out)
    click.echo(f"{counted(number, 'file')} written to {shown_path(out)}")


@main.command()
@click.argument("out", type=FOLDER, metavar="DIR")
def schema(out: Path) -> None:
    """Write a JSON Schema for each kind of program file into DIR, for completion in editors.

    An editor with YAML support takes it from the first line of a file in programs/exercises:

    # yaml-language-server: $schema=../../.schema/exercise.json
    """
    from strength_handbook.checked import counted, shown_path
    from strength_handbook.publish.json_schema import SCHEMAS, schema_text

    with writing():
        out.mkdir(parents=True, exist_ok=True)
        for kind in SCHEMAS:
            (out / f"{kind}.json").write_text(schema_text(kind), encoding="utf-8")
    click.echo(f"{counted(len(SCHEMAS), 'file')} written to {shown_path(out)}")


@main.command("trace")
@click.argument("program")
@click.argument("week", type=int)
@click.argument("session")
@click.argument("letter")
@PROGRAMS
def trace_command(program: str, week: int, session: str, letter: str, programs: Path) -> None:
    """Follow one dose from its file to the phone, with the value at every stop.

    Such as: strength-handbook trace winter 3 a-lift A
    """
    folder = existing(programs)

    from strength_handbook.checked import check_folder, shown_path
    from strength_handbook.publish.report import as_lines
    from strength_handbook.trace import UnknownPlaceError, trace

    checked = check_folder(folder)
    if checked.desk is None:
        for line in as_lines(checked.problems, shown_path(programs)):
            click.echo(line, err=True)
        raise SystemExit(1)
    try:
        stops = list(trace(checked.desk, program, week, session, letter))
    except UnknownPlaceError as error:
        raise click.UsageError(str(error)) from None
    for number, stop in enumerate(stops, 1):
        click.echo(f"{number:2}  {stop.where}")
        for line in filter(None, stop.says):
            click.echo(f"    {line}")


def _explained(slug: str, folder: Path) -> str:
    from strength_handbook.publish.explained import UnknownSlugError, explained

    try:
        return explained(slug, folder)
    except UnknownSlugError as error:
        raise click.UsageError(str(error)) from None


def on_terminal() -> bool:
    """True where a person reads what is printed."""
    return sys.stdout.isatty()


if __name__ == "__main__":
    main(prog_name="strength-handbook")
