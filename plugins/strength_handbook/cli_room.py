"""What commands ask about a room: as options, or of the coach at the keyboard."""

import sys
from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from strength_handbook.publish.first_gym.answers import Answers

_LATER = "Enter alone leaves a place to fill in later."
_ABOUT_THE_ROOM = (
    click.option("--gym", metavar="NAME", help="The gym's name."),
    click.option(
        "--units", metavar="kg|lb", help="What plates are stamped in; lb brings inches too."
    ),
    click.option(
        "--bars", metavar="LINE", help="Such as '2x20, 1x15' or '2x45, trap bar 55', or none."
    ),
    click.option(
        "--plates", metavar="LINE", help="Single plates at each rack: '4x20, 2x10' or '45 lb x 4'."
    ),
    click.option("--racks", metavar="NUMBER", help="How many racks; 0 or none."),
    click.option(
        "--hands", metavar="LINE",
        help="Such as 'dumbbells 5-50 by 5, kettlebells 25, 35', or none.",
    ),
    click.option(
        "--machines", metavar="LINE",
        help="And other things, such as 'leg press 1-20, rower x2, 4 chairs', or none.",
    ),
    click.option("--number", metavar="NUMBER", help="The emergency number."),
    click.option("--place", metavar="ADDRESS", help="Where the ambulance has to come."),
    click.option("--yes", is_flag=True, help="Ask nothing; what isn't given is filled in later."),
)  # fmt: skip


def asks_about_the_room(command: Callable[..., None]) -> Callable[..., None]:
    """The options of a command that begins a room."""
    for option in reversed(_ABOUT_THE_ROOM):
        command = option(command)
    return command


def refuse_wrong(given: Mapping[str, str | None]) -> None:
    """Refuse options that can't be read, all at once, before anybody is asked.

    Raises:
        click.UsageError: naming each.
    """
    from strength_handbook.publish.first_gym.answers import read_answers

    _, wrong = read_answers(given)
    if wrong:
        raise click.UsageError("\n".join(f"--{key}: {text}" for key, text in wrong))


def answered(given: Mapping[str, str | None], *, yes: bool) -> "Answers":
    """What is known of the room: as given, and asked for what isn't, each until it can be read.

    Args:
        given: text of each option, None where it is not given; all can be read.
        yes: ask nothing.

    Raises:
        click.UsageError: where nobody can be asked.
    """
    from strength_handbook.publish.first_gym.answers import QUESTIONS, read_answers, understood

    known = read_answers(given)[0]
    for question in QUESTIONS:
        if given.get(question.key) and (told := understood(known, question.key)):
            click.echo(f"--{question.key}: that is {told}.")
    if yes:
        return known
    missing = [
        question
        for question in QUESTIONS
        if given.get(question.key) is None and question.is_asked(known)
    ]
    if missing and not somebody_there():
        options = ", ".join(f"--{question.key}" for question in missing)
        text = f"nobody can be asked here; add --yes, or these too: {options}"
        raise click.UsageError(text)
    said = dict(given)
    if missing:
        click.echo(_LATER)
    for question in missing:
        if not question.is_asked(read_answers(said)[0]):
            continue
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
