"""Explanations of what can be wrong when a program is compared with an earlier publication."""

from strength_handbook.reading.explanation import Explanation as E  # noqa: N817  # a table

SINCE = {
    "same-version": E(
        "Something is different from the publication you compare with, and the version is not. "
        "The version stands on every page and every printed card. Raise it, so that an old card "
        "gives itself away.",
        'version: "2026.1"',
        'version: "2026.2"',
    ),
    "since-file": E(
        "The file after '--since', or under 'since' in mkdocs.yml, can't be compared with the "
        "program. It must be the file data/<program>.json of an earlier site, as it was "
        "published. It is only read, never written. Keep a copy of it each time you publish."
    ),
}
