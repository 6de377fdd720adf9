"""The command `strength-handbook init`: a gym's own folder from nothing."""

import shutil
import sys
from pathlib import Path

import click

from strength_handbook.cli_room import answered, asks_about_the_room, refuse_wrong
from strength_handbook.cli_shared import FOLDER, writing


@click.command()
@click.argument("out", type=FOLDER, metavar="DIR")
@asks_about_the_room
def init(out: Path, *, yes: bool, **given: str | None) -> None:
    """Begin a gym's own handbook in DIR.

    Asks for what isn't given, then writes pages, a room, ready exercises and a program of two
    weeks that builds at once. What nobody has answered says "Not yet filled in" on the pages, and
    'strength-handbook check' names each place. An existing file is never touched.
    """
    from strength_handbook.checked import current_day, shown_path
    from strength_handbook.publish.first_gym.beginning import begin_gym, refuse_files
    from strength_handbook.publish.first_gym.gym_files import gym_files

    refuse_wrong(given)
    with writing():
        refuse_files(out)
        files = gym_files(answered(given, yes=yes), current_day())
        open_places = begin_gym(out, files)
    ready = sum(address.startswith("programs/exercises/") for address in files)
    shown = shown_path(out)
    click.echo(f"\n{shown} is there: a room, pages, {ready} exercises, a program of two weeks.")
    click.echo("Next:")
    for number, step in enumerate(_steps(shown, open_places), 1):
        click.echo(f"  {number}. {step}")


def _steps(shown: str, open_places: int) -> list[str]:
    """What to do then."""
    from strength_handbook.checked import counted

    places, own = counted(open_places, "place"), _own_folder()
    return [
        *([] if shown == "." else [f"cd {shown}"]),
        f"{own}mkdocs serve, and open http://127.0.0.1:8000/ (each save shows the page anew)",
        "measure the room; the page 'Measure the room' says how, line by line",
        f"fill in {places}; {own}strength-handbook check names each",
        f"{own}strength-handbook new exercise --from-shelf lists more ready exercises",
        f"{own}mkdocs build --strict, when all is true",
    ]


def _own_folder() -> str:
    """Where the commands are, if typing their names alone would not find them."""
    own = Path(sys.argv[0]).resolve().parent / "mkdocs"
    found = shutil.which("mkdocs")
    known = not own.exists() or (found is not None and Path(found).resolve() == own)
    return "" if known else f"{own.parent.as_posix()}/"
