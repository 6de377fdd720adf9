"""The table of all kinds of problems, each with its explanation."""

from collections.abc import Mapping

from strength_handbook.reading.explain_accepted import ACCEPTED
from strength_handbook.reading.explain_content import CONTENT
from strength_handbook.reading.explain_figures import FIGURES
from strength_handbook.reading.explain_room import ROOM
from strength_handbook.reading.explain_since import SINCE
from strength_handbook.reading.explain_yaml import YAML
from strength_handbook.reading.explanation import Explanation

EXPLANATIONS: Mapping[str, Explanation] = {
    **YAML,
    **CONTENT,
    **FIGURES,
    **ROOM,
    **ACCEPTED,
    **SINCE,
}
"""Every slug that a problem of the files can have."""
