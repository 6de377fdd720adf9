"""Why a dose can't be put together from its parts."""

from strength_handbook.model.dose_part import refused_beside


class IncompleteDoseError(ValueError):
    """A dose that leaves something out that nobody has said anywhere.

    Attributes:
        missing: the keys that are missing, in a coach's words.
    """

    def __init__(self, missing: list[str]) -> None:
        self.missing = missing
        super().__init__(f"the dose lacks {' and '.join(missing)}")


class InconsistentDoseError(IncompleteDoseError):
    """A dose whose parts do not go together: the week has sets that differ, the slot has bands."""

    def __init__(self, key: str) -> None:
        ValueError.__init__(self, refused_beside(key))
        self.missing = [key]
