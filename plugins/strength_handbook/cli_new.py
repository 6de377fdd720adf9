"""The command `strength-handbook new`: a new file or program, in a handbook that is there."""

from pathlib import Path

import click

from strength_handbook.cli_room import answered, asks_about_the_room, refuse_wrong
from strength_handbook.cli_shared import PROGRAMS, existing, writing


@click.group()
def new() -> None:
    """Begin a new file or program."""


@new.command()
@click.argument("names", nargs=-1, metavar="NAME")
@click.option(
    "--from-shelf", is_flag=True,
    help="Copy ready exercises; without a NAME, list those that this room allows.",
)  # fmt: skip
@click.option("--list", "one_a_line", is_flag=True, help="With --from-shelf: names only.")
@PROGRAMS
def exercise(names: tuple[str, ...], *, from_shelf: bool, one_a_line: bool, programs: Path) -> None:
    """Begin the file of an exercise, with every field explained, or take ready ones.

    NAME is what members call it, such as "Step-down"; an existing file is never touched. With
    --from-shelf there may be several; those that their doors lead to come along.
    """
    folder = existing(programs)
    if one_a_line and (names or not from_shelf):
        raise click.UsageError("--list goes with --from-shelf, without names")
    if from_shelf and not names:
        _list_shelf(folder, one_a_line=one_a_line)
    elif from_shelf:
        _take(names, folder)
    elif len(names) == 1:
        _begin(names[0], folder)
    elif names:
        text = f'one NAME is begun at a time; several words in quotes: "{" ".join(names)}"'
        raise click.UsageError(text)
    else:
        raise click.UsageError("give it a NAME, or take ready ones with --from-shelf")


def _begin(name: str, folder: Path) -> None:
    from strength_handbook.checked import shown_path
    from strength_handbook.publish.starter import new_exercise

    with writing():
        path = new_exercise(name, folder)
    click.echo(
        f"{shown_path(path)} is there; change its examples, then run: strength-handbook check"
    )


def _take(names: tuple[str, ...], folder: Path) -> None:
    from strength_handbook.checked import shown_path
    from strength_handbook.publish.shelf.taking import take

    with writing():
        asked, along = take(names, folder)
    for path in (*asked, *along):
        why = ", for a door leads to it" if path in along else ""
        click.echo(f"{shown_path(path)} is there{why}")
    click.echo("read them, change what is different here, then run: strength-handbook check")


def _list_shelf(folder: Path, *, one_a_line: bool) -> None:
    from strength_handbook.publish.shelf.taking import gym, listed

    with writing():
        allowed, waiting = listed(*gym(folder))
    if one_a_line:
        for ready in allowed:
            click.echo(ready.key)
        return
    for pattern in dict.fromkeys(ready.pattern for ready in allowed):
        click.echo(pattern)
        for ready in allowed:
            if ready.pattern == pattern:
                click.echo(f"  {ready.key:<32} {ready.also}".rstrip())
    if not allowed:
        click.echo("the gym has all that its room allows")
    if waiting:
        click.echo("not in this room (room.yml names no such thing)")
        for key, things in waiting.items():
            click.echo(f"  {key:<32} {', '.join(things)}")


@new.command("program")
@click.argument("name")
@click.option("--weeks", type=int, help="How many; 8 if neither this nor --waves is given.")
@click.option("--waves", metavar="4+2", help="Weeks of each wave; fours if left out.")
@click.option("--days", default="mon,thu", show_default=True, metavar="DAYS", help="Weekdays.")
@PROGRAMS
def program_command(
    name: str, weeks: int | None, waves: str | None, days: str, programs: Path
) -> None:
    """Begin a program that builds at once, with a slot in each session to go on from.

    NAME is what members call it, such as "Winter water"; an existing folder is never touched.
    """
    folder = existing(programs)

    from strength_handbook.checked import current_day, shown_path
    from strength_handbook.publish.new_program import new_program

    with writing():
        path = new_program(name, weeks, waves, days, folder, current_day())
    click.echo(
        f"{shown_path(path)} is there; fill in its places, then run: strength-handbook check"
    )


@new.command("wave")
@click.argument("program")
@click.option("--from", "number", type=int, required=True, metavar="NUMBER", help="Which to copy.")
@click.option("--name", help="What members call it; 'Third wave' and so on if left out.")
@PROGRAMS
def wave_command(program: str, number: int, name: str | None, programs: Path) -> None:
    """Append a wave to PROGRAM, copied from one that is there, with the weeks that follow.

    PROGRAM is the name of its folder, and NUMBER that of the wave's file. What is copied is not
    changed, and an existing file is never touched.
    """
    folder = existing(programs)

    from strength_handbook.checked import shown_path
    from strength_handbook.publish.new_wave import new_wave

    with writing():
        path = new_wave(program, number, name, folder)
    click.echo(f"{shown_path(path)} is there; change its doses, then run: strength-handbook check")


@new.command("lifter")
@click.option("--bodyweight", required=True, metavar="MASS", help="With its unit, such as '72 kg'.")
@click.option(
    "--base", "bases", multiple=True, metavar="BASE=MASS",
    help="A tested value, such as trap-bar-1rm='140 kg'; once for each.",
)  # fmt: skip
@PROGRAMS
def lifter_command(bodyweight: str, bases: tuple[str, ...], programs: Path) -> None:
    """Append an example lifter to lifters.yml: numbers only, never a name."""
    folder = existing(programs)

    from strength_handbook.checked import shown_path
    from strength_handbook.publish.new_lifter import FILE, new_lifter

    tested: dict[str, str] = {}
    for base in bases:
        key, _, value = (part.strip() for part in base.partition("="))
        if not key or not value or key in tested:
            again = "is given twice" if key in tested else "can't be read"
            text = f"--base: '{base}' {again}; write each once, like trap-bar-1rm='140 kg'"
            raise click.UsageError(text)
        tested[key] = value
    with writing():
        name = new_lifter(bodyweight.strip(), tested, folder)
    click.echo(f"{name} is in {shown_path(folder / FILE)} now; run: strength-handbook check")


@new.command("room")
@asks_about_the_room
@PROGRAMS
def room_command(programs: Path, *, yes: bool, **given: str | None) -> None:
    """Begin room.yml in a program folder that has none, such as that of a gym that has moved.

    Asks for what isn't given, as 'init' does. An existing room.yml is never touched.
    """
    folder = existing(programs)

    from strength_handbook.checked import current_day, shown_path
    from strength_handbook.publish.first_gym.gym_files import ROOM, room_text

    refuse_wrong(given)
    path = folder / ROOM
    if path.exists():
        text = f"{shown_path(path)} is there already; move it away first, and then run this again"
        raise click.UsageError(text)
    with writing():
        text = room_text(answered(given, yes=yes), current_day())
        with path.open("x", encoding="utf-8") as file:
            file.write(text)
    click.echo(
        f"{shown_path(path)} is there; fill in its places, then run: strength-handbook check"
    )
