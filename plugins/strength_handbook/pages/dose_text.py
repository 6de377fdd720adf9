"""A dose in the trade's notation, and the same in plain words."""

from strength_handbook.pages.dose_notation import notation, partial_notation
from strength_handbook.pages.dose_words import clock_words, in_words, tempo_in_words

__all__ = ["clock_words", "in_words", "notation", "partial_notation", "tempo_in_words"]
