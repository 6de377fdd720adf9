"""The block from which a phone leads through a session, one set at a time."""

from markupsafe import Markup

from strength_handbook.pages.tools_html import block
from strength_handbook.plan.train import session_guide
from strength_handbook.plan.worked import Worked, WorkedProgram, WorkedSession, WorkedWeek


def train_data(
    worked: Worked, program: WorkedProgram, week: WorkedWeek, session: WorkedSession
) -> Markup:
    """Data that a script of ours asks for; nothing is seen of it without."""
    return block("sh-train-data", session_guide(worked.book, program, week, session))
