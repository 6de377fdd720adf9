"""The command `strength-handbook new`: a new file or program, in a handbook that is there."""

from pathlib import Path

import click

from strength_handbook.cli_shared import PROGRAMS, existing, writing


@click.group()
def new() -> None:
    """Begin a new file or program."""


@new.command()
@click.argument("name")
@PROGRAMS
def exercise(name: str, programs: Path) -> None:
    """Begin the file of an exercise, with every field explained.

    NAME is what members call it, such as "Step-down"; an existing file is never touched.
    """
    folder = existing(programs)

    from strength_handbook.checked import shown_path
    from strength_handbook.publish.starter import new_exercise

    with writing():
        path = new_exercise(name, folder)
    click.echo(
        f"{shown_path(path)} is there; change its examples, then run: strength-handbook check"
    )


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
