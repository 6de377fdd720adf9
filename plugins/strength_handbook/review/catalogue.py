"""All checks, and what they find, in order: the one list of what a program is held against."""

from collections.abc import Callable, Iterable, Iterator
from importlib import import_module
from pkgutil import walk_packages
from types import ModuleType

from strength_handbook.reading.explanation import Explanation
from strength_handbook.review import checks
from strength_handbook.review.check import Check, Family
from strength_handbook.review.desk import Desk
from strength_handbook.review.echoes import weeks_together, without_echoes
from strength_handbook.review.finding import Finding, Reported
from strength_handbook.review.typed import typed_lines

_MODULES: tuple[ModuleType, ...] = tuple(
    import_module(name)
    for name in sorted(
        module.name for module in walk_packages(checks.__path__, f"{checks.__name__}.")
    )
)
"""Where checks are; those of one family may stand in several modules."""

CHECKS: dict[str, Check] = {
    found.slug: found
    for module in _MODULES
    for found in vars(module).values()
    if isinstance(found, Check)
}
"""Every check by its slug."""


def review(
    desk: Desk,
    only: Iterable[Check] = tuple(CHECKS.values()),
    tell: Callable[[str], None] = lambda _: None,
) -> list[Finding]:
    """Everything the checks find, in order of families and files.

    What is only the echo of a slip of the keyboard is left out. Findings of one check at one place,
    or with the same words about one slot, are one finding for all their weeks together.

    Args:
        desk: what is looked at.
        only: these checks; all of them if left out.
        tell: takes the name of each check before it looks.
    """

    def found() -> Iterator[Finding]:
        for one in only:
            tell(f"checking {one.slug}")
            yield from one.run(one, desk)

    merged: dict[tuple[object, ...], Finding] = {}
    for finding in weeks_together(without_echoes(desk, found())):
        key = (finding.slug, finding.severity, finding.program, finding.spot.place,
               finding.at.what)  # fmt: skip
        merged[key] = merged[key].and_also(finding) if key in merged else finding
    return sorted(merged.values(), key=_order)


def _order(finding: Finding) -> tuple[object, ...]:
    families = list(Family)
    family = families.index(CHECKS[finding.slug].family) if finding.slug in CHECKS else 0
    return family, *finding.spot.place, finding.slug, finding.at.text, finding.text


def reported(finding: Finding) -> Reported:
    """A finding as a line for the coach."""
    check = CHECKS[finding.slug]
    change = finding.change.words if finding.change else ""
    text = f"{finding.at.text}: {finding.text}"
    if change and (lines := typed_lines(finding)):
        change += ", so: " + "; ".join(f"'{line}'" for line in lines)
    if change:
        text += f". Smallest change: {change}"
    return Reported(
        *finding.spot.place, finding.slug, text, finding.severity,
        family=check.family, at=finding.at.text, change=change, why=check.why, source=check.source,
    )  # fmt: skip


EXPLAINED: dict[str, Explanation] = {
    slug: Explanation(
        f"{one.what} Why: {one.why} Source of the limit: {one.source}."
        + (f" House rules: {', '.join(one.rules)}." if one.rules else "")
    )
    for slug, one in CHECKS.items()
}
"""What `check --explain` says of each check."""
