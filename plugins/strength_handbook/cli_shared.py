"""What all commands use: how a folder is named, and refusals as messages."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import click

FOLDER = click.Path(file_okay=False, path_type=Path)


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
