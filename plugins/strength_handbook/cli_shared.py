"""What all commands use: how a folder is named, and refusals as messages."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import click

FOLDER = click.Path(file_okay=False, path_type=Path)
PROGRAMS = click.option(
    "--programs", type=FOLDER, default=Path("programs"), show_default=True, metavar="DIR",
    help="The folder with the program files.",
)  # fmt: skip

DRAFTS = click.option(
    "--drafts", is_flag=True,
    help="Exercises that are only begun may pass, as with 'drafts: true' in mkdocs.yml.",
)  # fmt: skip


@contextmanager
def writing() -> Iterator[None]:
    """Refusals and failures to write as messages of the command."""
    from strength_handbook.publish.command_errors import FailedError, MisuseError

    try:
        yield
    except MisuseError as error:
        raise click.UsageError(str(error)) from None
    except FailedError as error:
        raise click.ClickException(str(error)) from None
    except OSError as error:
        raise click.ClickException(f"can't write '{error.filename}': {error.strerror}") from None


def existing(folder: Path) -> Path:
    """The program folder; also found from the folder above it.

    Raises:
        click.UsageError: where there is none.
    """
    if not folder.is_dir():
        text = f"there is no folder '{folder}' here; go to the handbook's folder, or name another"
        raise click.UsageError(text)
    return inner(folder)


def inner(folder: Path) -> Path:
    """The program folder, also where the folder above it is named."""
    inner = folder / "programs"
    return inner if inner.is_dir() and not (folder / "room.yml").exists() else folder
