"""The command `strength-handbook init`: a gym's own folder from nothing."""

import shutil
import sys
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

import click

from strength_handbook.cli_shared import FOLDER, writing

if TYPE_CHECKING:
    from strength_handbook.publish.first_gym.answers import Answers

_LATER = "Enter alone leaves a place to fill in later."


@click.command()
@click.argument("out", type=FOLDER, metavar="DIR")
@click.option("--gym", metavar="NAME", help="The gym's name.")
@click.option("--units", metavar="kg|lb", help="What plates are stamped in; lb brings inches too.")
@click.option("--bars", metavar="LINE", help="Such as '2x20, 1x15' or '2x45, trap bar 55'.")
@click.option(
    "--plates", metavar="LINE", help="Single plates at each rack: '4x20, 2x10' or '45 lb x 4'."
)
@click.option("--racks", metavar="NUMBER", help="How many racks.")
@click.option(
    "--hands", metavar="LINE", help="Such as 'dumbbells 5-50 by 5, kettlebells 25, 35', or none."
)
@click.option("--machines", metavar="LINE", help="Such as 'leg press, rower x2', or none.")
@click.option("--number", metavar="NUMBER", help="The emergency number.")
@click.option("--place", metavar="ADDRESS", help="Where the ambulance has to come.")
@click.option("--yes", is_flag=True, help="Ask nothing; what isn't given is filled in later.")
def init(out: Path, *, yes: bool, **given: str | None) -> None:
    """Begin a gym's own handbook in DIR.

    Asks for what isn't given, then writes pages, a room, ready exercises and a program of two
    weeks that builds at once. What nobody has answered says "Not yet filled in" on the pages, and
    'strength-handbook check' names each place. An existing file is never touched.
    """
    from strength_handbook.checked import current_day, shown_path
    from strength_handbook.publish.first_gym.answers import read_answers
    from strength_handbook.publish.first_gym.beginning import begin_gym, refuse_files
    from strength_handbook.publish.first_gym.gym_files import gym_files

    answers, wrong = read_answers(given)
    if wrong:
        raise click.UsageError("\n".join(f"--{key}: {text}" for key, text in wrong))
    with writing():
        refuse_files(out)
        if not yes:
            answers = _asked(given)
        open_places = begin_gym(out, gym_files(answers, current_day()))
    shown = shown_path(out)
    click.echo(f"\n{shown} is there: a room, pages, eight exercises, a program of two weeks.")
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
        f"fill in {places}; {own}strength-handbook check names each",
        f"{own}mkdocs build --strict, when all is true",
    ]


def _own_folder() -> str:
    """Where the commands are, if typing their names alone would not find them."""
    own = Path(sys.argv[0]).resolve().parent / "mkdocs"
    found = shutil.which("mkdocs")
    known = not own.exists() or (found is not None and Path(found).resolve() == own)
    return "" if known else f"{own.parent.as_posix()}/"


def _asked(given: Mapping[str, str | None]) -> "Answers":
    """Ask for what isn't given, each until it can be read.

    Raises:
        click.UsageError: where nobody can be asked.
    """
    from strength_handbook.publish.first_gym.answers import QUESTIONS, read_answers, understood

    missing = [question for question in QUESTIONS if given.get(question.key) is None]
    if missing and not somebody_there():
        options = ", ".join(f"--{question.key}" for question in missing)
        text = f"nobody can be asked here; add --yes, or these too: {options}"
        raise click.UsageError(text)
    said = dict(given)
    if missing:
        click.echo(_LATER)
    for question in missing:
        while True:
            asks = question.asks[read_answers(said)[0].units]
            said[question.key] = click.prompt(asks, default="", show_default=False)
            answers, wrong = read_answers(said)
            if not wrong:
                break
            for _, text in wrong:
                click.echo(f"  {text}")
        if told := understood(answers, question.key):
            click.echo(f"  That is {told}.")
    return read_answers(said)[0]


def somebody_there() -> bool:
    """True where a person can be asked."""
    return sys.stdin.isatty()
