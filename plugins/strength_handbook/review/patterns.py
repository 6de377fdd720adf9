"""Patterns taken together, as coaches speak of them."""

from strength_handbook.model.words import Pattern

LOWER = (Pattern.SQUAT, Pattern.HINGE, Pattern.SINGLE_LEG)
"""Lifts of legs and back."""
PUSH = (Pattern.HORIZONTAL_PUSH, Pattern.VERTICAL_PUSH)
PULL = (Pattern.HORIZONTAL_PULL, Pattern.VERTICAL_PULL)
UPPER = (*PUSH, *PULL)
"""Lifts of arms and shoulders."""
KNEE = (Pattern.SQUAT, Pattern.SINGLE_LEG)
"""Lifts in which the knees do most."""
