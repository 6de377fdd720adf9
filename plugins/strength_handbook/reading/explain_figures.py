"""Explanations of problems with the drawing of a body."""

from strength_handbook.reading.explanation import Explanation as E  # noqa: N817  # a table

FIGURES = {
    "bar-in-body": E(
        "The bar of a figure goes through its body. With no 'shoulder' written, straight arms hold "
        "the bar against the legs.",
        "start: {pose: standing, shoulder: 0}",
        "start: {pose: standing}",
    ),
    "contact-misses": E(
        "'hands' says how high the hands are, and other angles of the pose put them elsewhere. "
        "Leave out 'hip' and 'lean': the trunk then bends until the hands are there.",
        "turn: {pose: hinge, lean: 20, hands: 30 cm}",
        "turn: {pose: hinge, hands: 30 cm}",
    ),
    "falls-over": E(
        "The balance of a body with its load is above its feet, or it falls. Of ankle, hip and "
        "lean, one is enough: the others follow from balance.",
        "turn: {pose: squat, ankle: 90, lean: 0}",
        "turn: {pose: squat, knee: 80}",
    ),
    "joint-range": E(
        "A joint would go further than joints do. Angles are between two parts of the body: a "
        "straight knee is 180 and gets smaller as it bends; the message says the limits.",
        "turn: {pose: squat, knee: 80, lean: 90}",
        "turn: {pose: squat, knee: 80}",
    ),
    "out-of-reach": E(
        "Hands or feet can't get where the pose puts them, however the free joints turn.",
        "turn: {pose: hinge, knee: 178, hands: 5 cm}",
        "turn: {pose: hinge, knee: 130, hands: 20 cm}",
    ),
    "under-floor": E(
        "A part of the body, or a plate, is under the floor. A full plate's middle is 22.5 cm high "
        "when it lies on the floor.",
        "start: {pose: hinge, knee: 110, hands: 10 cm}",
        "start: {pose: hinge, knee: 110, hands: 23 cm}",
    ),
}
