"""Explanations of what can be wrong with an accepted warning."""

from strength_handbook.reading.explanation import Explanation as E  # noqa: N817  # a table

_RIGHT = (
    "accepted:\n"
    "  - finding: rest-short\n"
    "    at: weeks 1-3, a-lift B1 neutral-grip-pull-up\n"
    "    reason: The pairs take turns, so that everybody rests twice as long.\n"
    "    until: 2027-03-31"
)

ACCEPTED = {
    "accepted-error": E(
        "An error is something impossible or unsafe. It stops a publication and can't be accepted; "
        "it can only be mended."
    ),
    "accepted-expired": E(
        "A warning is accepted until a day: the one in 'until', else the last day of the wave it "
        "is in. After that somebody must look again. The warning is back until then."
    ),
    "accepted-nothing": E(
        "An entry must name a finding that is there, with the words of the place as 'check' prints "
        "them. Otherwise it would silence something later that nobody has looked at. A finding "
        "moves where weeks or members are changed; the message says where the nearest one is.",
        right=_RIGHT,
    ),
    "accepted-twice": E(
        "Two entries name the same finding at the same place. Keep the one whose reason holds."
    ),
    "reason": E(
        "A reason is for whoever takes over: a sentence with words in it, not a nod. A reason with "
        "'#' in it needs quotes, since what follows ' #' is a comment.",
        wrong="reason: okay okay okay",
        right="reason: The pairs take turns, so that everybody rests twice as long.",
    ),
    "accepted-unknown": E(
        "There is no check of that name. 'check --explain NAME' explains each of them.",
        right=_RIGHT,
    ),
}
