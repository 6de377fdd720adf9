"""What mkdocs.yml may say under `strength-handbook`."""

from mkdocs.config import config_options as opt
from mkdocs.config.base import Config


class HandbookConfig(Config):
    """Options under `strength-handbook` in mkdocs.yml."""

    programs = opt.Dir(exists=False, default="programs")
    """The folder with the program files, relative to mkdocs.yml."""

    drafts = opt.Type(bool, default=False)
    """Publish exercises that are only begun too, marked DRAFT."""

    publish = opt.Optional(opt.Choice(("coaches",)))
    """`coaches`: the pages for coaches are on the built site too, not only in `mkdocs serve`."""

    since = opt.Optional(opt.FilesystemObject(exists=False))
    """`data/<program>.json` of the last publication, or a folder of such files; only read."""
