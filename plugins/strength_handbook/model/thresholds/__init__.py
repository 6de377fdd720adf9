"""Thresholds of the checks: the limits that a program is held against, each a house rule.

One module for each family of checks, beside the checks' own names in `review/checks/<family>/`.
"""

from strength_handbook.model.rule_kind import RuleKind
from strength_handbook.model.thresholds import (
    complete,
    floor,
    load,
    order,
    recovery,
    safety,
    volume,
    words,
)

FAMILIES: dict[str, dict[str, RuleKind]] = {
    "Complete and consistent": complete.THRESHOLDS,
    "Load": load.THRESHOLDS,
    "Order": order.THRESHOLDS,
    "Volume": volume.THRESHOLDS,
    "Rest and recovery": recovery.THRESHOLDS,
    "Floor and equipment": floor.THRESHOLDS,
    "Safety": safety.THRESHOLDS,
    "Words": words.THRESHOLDS,
}
"""Thresholds by the title of their family."""

THRESHOLDS: dict[str, RuleKind] = {
    slug: kind for thresholds in FAMILIES.values() for slug, kind in thresholds.items()
}
