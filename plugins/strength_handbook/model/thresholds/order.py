"""Thresholds of the checks in `review/checks/order*.py`."""

from strength_handbook.model.rule_kind import RuleKind

THRESHOLDS: dict[str, RuleKind] = {}
