"""Thresholds of the checks in `review/checks/complete*.py`."""

from strength_handbook.model.rule_kind import RuleKind

THRESHOLDS: dict[str, RuleKind] = {}
