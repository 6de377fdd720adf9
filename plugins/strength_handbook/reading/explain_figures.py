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
    "heels-slide": E(
        "Heels that rest on a box stay on their place while the hips rise. The knee's angle says "
        "how far away they are.",
        "turn: {pose: bridge, knee: 130, feet: 30 cm}",
        "turn: {pose: bridge, knee: 110, feet: 30 cm}",
    ),
    "inside-thing": E(
        "A hand, foot, knee or hip is inside a box or bench. 'at' says where its middle is, "
        "centimetres ahead of the standing ankle.",
        "things: [{thing: box, height: 40 cm, at: 0}]",
        "things: [{thing: box, height: 40 cm, at: -40}]",
    ),
    "joint-range": E(
        "A joint would go further than joints do. Angles are between two parts of the body: a "
        "straight knee is 180 and gets smaller as it bends; the message says the limits.",
        "turn: {pose: squat, knee: 80, lean: 90}",
        "turn: {pose: squat, knee: 80}",
    ),
    "line-without-end": E(
        "A cable, strap, rope or pivoted bar is fastened to something that the figure has to show: "
        "a column, a sled or an anchor on a beam, a pivot.",
        "holds: strap",
        "holds: strap, things: [{thing: anchor, height: 215 cm, at: 45}]",
    ),
    "off-pad": E(
        "A trunk lies along its pad from the start to the end. A chest lies on a 'chest-rest', "
        "leaning forward; a back leans back on an 'adjustable-bench'. Arms move, the pad does not.",
        "turn: {pose: seated, ground: 45 cm, lean: 20}  # with thing: adjustable-bench",
        "turn: {pose: seated, ground: 45 cm, lean: -60}",
    ),
    "out-of-reach": E(
        "Hands or feet can't get where the pose puts them, however the free joints turn.",
        "turn: {pose: hinge, knee: 178, hands: 5 cm}",
        "turn: {pose: hinge, knee: 130, hands: 20 cm}",
    ),
    "pins-not-met": E(
        "With 'moves: push' the bar pushes up against pins, so it touches one of them from below "
        "at the turn.",
        "turn: {pose: hinge, knee: 125, hands: 40 cm, hands-at: 8}",
        "turn: {pose: hinge, knee: 125, hands: 50 cm, hands-at: 8}",
    ),
    "strap-length": E(
        "Straps from an anchor do not stretch: the hands are as far from it at each moment. Where "
        "the body leans less, the elbows bend.",
        "turn: {pose: standing, ankle: 97, hands: 122 cm, hands-at: 10}",
        "turn: {pose: standing, ankle: 97, hands: 122 cm, hands-at: -4}",
    ),
    "under-floor": E(
        "A part of the body, or a plate, is under the floor. A full plate's middle is 22.5 cm high "
        "when it lies on the floor.",
        "start: {pose: hinge, knee: 110, hands: 10 cm}",
        "start: {pose: hinge, knee: 110, hands: 23 cm}",
    ),
}
