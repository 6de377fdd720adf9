"""Every kind of finding explained: mistakes in files, and checks with their limits."""

import textwrap
from collections.abc import Mapping
from pathlib import Path

from strength_handbook.model.book import rule_values
from strength_handbook.model.house_rules import RULES
from strength_handbook.model.samples import sample, samples_in
from strength_handbook.publish.command_errors import MisuseError
from strength_handbook.reading.book import read_book
from strength_handbook.reading.explain import EXPLANATIONS
from strength_handbook.reading.explanation import Explanation
from strength_handbook.reading.suggest import did_you_mean
from strength_handbook.review.catalogue import CHECKS, EXPLAINED
from strength_handbook.review.check import Check

ALL: Mapping[str, Explanation] = {**EXPLAINED, **EXPLANATIONS}
"""What each slug means; those of the checks are printed at more length."""

_WIDTH = 80


class UnknownSlugError(MisuseError):
    """No finding has that name; the message names the nearest."""


def explained(slug: str, folder: Path | None) -> str:
    """What a kind of finding means; for a check also its limits as they are here.

    Args:
        slug: the short word of a finding.
        folder: program folder whose house rules hold, or None for the handbook's own.

    Raises:
        UnknownSlugError: where no finding is called so.
    """
    if slug in CHECKS:
        return _check(CHECKS[slug], folder)
    if slug not in ALL:
        raise UnknownSlugError(f"no finding is called '{slug}'{did_you_mean(slug, ALL)}")
    with samples_in(_units(folder)):
        return sample(ALL[slug].text(slug))


def _check(one: Check, folder: Path | None) -> str:
    kind = f"{one.severity} in '{one.family}'"
    parts = [one.slug, kind, f"What: {one.what}", f"Why: {one.why}"]
    filled = [textwrap.fill(part, _WIDTH, break_on_hyphens=False) for part in parts]
    if one.rules:
        filled.append(_limits(one, folder))
    filled.append(textwrap.fill(f"Source of the limits: {one.source}.", _WIDTH))
    return "\n\n".join(filled)


def _limits(one: Check, folder: Path | None) -> str:
    written = _written(folder)
    head = (
        "Limits, as the house rules have them now:"
        if written is not None
        else "Limits of the handbook (no house rules could be read here):"
    )
    lines = [head]
    for slug in one.rules:
        rule = RULES[slug]
        value = rule.default if written is None else written[slug]
        own = "" if value == rule.default else f" (the handbook's own: {rule.default:g})"
        lines.append(
            textwrap.fill(
                f"{slug}: {f'{value:g} {rule.unit}'.strip()}{own}. {rule.what}", _WIDTH,
                initial_indent="  ", subsequent_indent="      ", break_on_hyphens=False,
            )
        )  # fmt: skip
    return "\n".join(lines)


def _units(folder: Path | None) -> str:
    """The units of a folder's room, whatever else is wrong in it."""
    room = read_book(folder).written.room if folder is not None and folder.is_dir() else None
    return room.model.units if room else "kg"


def _written(folder: Path | None) -> Mapping[str, float] | None:
    """The house rules of a folder, whatever else is wrong in it; None where they can't be read."""
    if folder is None or not folder.is_dir():
        return None
    rules = read_book(folder).written.rules
    try:
        return None if rules is None else rule_values(rules.model)
    except ValueError:
        return None
