"""Closed lists of words: patterns, muscles, hazards and what each hazard obliges us to say."""

from enum import StrEnum


class Pattern(StrEnum):
    """The movement a lift belongs to."""

    SQUAT = "squat"
    HINGE = "hinge"
    SINGLE_LEG = "single-leg"
    HORIZONTAL_PUSH = "horizontal-push"
    VERTICAL_PUSH = "vertical-push"
    HORIZONTAL_PULL = "horizontal-pull"
    VERTICAL_PULL = "vertical-pull"
    CARRY = "carry"
    TRUNK = "trunk"
    ISOLATED = "isolated"
    JUMP = "jump"
    ENDURANCE = "endurance"


class Muscle(StrEnum):
    """Muscle groups in everyday words."""

    QUADS = "quads"
    HAMSTRINGS = "hamstrings"
    GLUTES = "glutes"
    ADDUCTORS = "adductors"
    CALVES = "calves"
    SHINS = "shins"
    HIP_FLEXORS = "hip-flexors"
    BACK_EXTENSORS = "back-extensors"
    ABS = "abs"
    OBLIQUES = "obliques"
    LATS = "lats"
    UPPER_BACK = "upper-back"
    CHEST = "chest"
    SHOULDERS = "shoulders"
    BICEPS = "biceps"
    TRICEPS = "triceps"
    FOREARMS = "forearms"
    NECK = "neck"


class Hazard(StrEnum):
    """What can hurt in an exercise; each one brings its caution to the page."""

    OVERHEAD = "overhead"
    SUPINE_BAR = "supine-bar"
    SUPINE = "supine"
    BAR_ON_BACK = "bar-on-back"
    RACK = "rack"
    DUMBBELLS_OVER_BODY = "dumbbells-over-body"
    BAND = "band"
    CHAIN = "chain"
    BELT = "belt"
    PACK = "pack"
    PLATE_HELD = "plate-held"
    PLATE_ON_BACK = "plate-on-back"
    PIVOT = "pivot"
    BOX = "box"
    HEAVY_ECCENTRIC = "heavy-eccentric"
    LONG_HOLD = "long-hold"
    BREATH_HOLD = "breath-hold"
    PARTNER_CONTACT = "partner-contact"
    CABLE = "cable"
    MACHINE = "machine"
    CARRY = "carry"
    HEAVY_PULL = "heavy-pull"
    IMPACT = "impact"
    INVERSION = "inversion"
    HANGING = "hanging"
    SLED = "sled"
    PUSH_ON_PINS = "push-on-pins"
    SWING = "swing"
    HARD_CONDITIONING = "hard-conditioning"


CAUTIONS: dict[Hazard, str] = {
    Hazard.OVERHEAD: (
        "Weight goes overhead. Keep two steps clear all round, and nobody within reach. Ask the "
        "coach first if a shoulder or the neck is sore."
    ),
    Hazard.SUPINE_BAR: (
        "You lie under a bar. Set the safeties just below your lowest correct position, or have a "
        "spotter. Never alone without safeties."
    ),
    Hazard.SUPINE: (
        "You lie on your back. If lying flat makes you dizzy, or you are pregnant, ask your "
        "clinician and use another door."
    ),
    Hazard.BAR_ON_BACK: (
        "A bar rests on your back. Set the safeties one hole below your lowest correct position, "
        "both sides the same, and practise a miss with the empty bar."
    ),
    Hazard.RACK: (
        "Load and unload one plate at a time, changing sides. A bar with plates on one side only "
        "can tip out of the hooks."
    ),
    Hazard.DUMBBELLS_OVER_BODY: (
        "Weights are above your body. A partner hands them over and takes them back at the wrist. "
        "Alone, take a pair you can lower outwards."
    ),
    Hazard.BAND: (
        "A stretched band hits hard. Check it for nicks before use, keep your face out of its "
        "line, and hook or unhook it with a hand on the band. Follow the maker's limits."
    ),
    Hazard.CHAIN: (
        "Chains fall and pinch. Clip the leader to the same link on both sides, keep toes out, and "
        "never wrap a chain round a hand."
    ),
    Hazard.BELT: (
        "Weight hangs from you. Clip the chain to itself, step on and off from a box, and don't "
        "jump down. Stay within the rating on the belt."
    ),
    Hazard.PACK: (
        "A loaded pack moves your balance. Tighten both straps, keep the load high and still, and "
        "have a rail or wall within reach at first."
    ),
    Hazard.PLATE_HELD: (
        "Hold the plate with both hands. Where no step says how far out, it stays against the "
        "body. Never hold it over the face or behind the neck."
    ),
    Hazard.PLATE_ON_BACK: (
        "A partner lays the plate on the shoulder blades and takes it off. Agree on the word "
        "'off'. No plate close to failure."
    ),
    Hazard.PIVOT: (
        "The bar swings in an arc. Keep the arc clear, seat the bar in a proper pivot, collar the "
        "plates and never let go at the top."
    ),
    Hazard.BOX: (
        "Boxes slide and tip. Put the box against a wall or on rubber, check that the top is dry, "
        "and step down; don't jump down."
    ),
    Hazard.HEAVY_ECCENTRIC: (
        "Slow or heavy lowering makes you sore for one to three days, more so the first time. "
        "Start with the small dose. Dark urine, swelling or pain far beyond soreness: medical care "
        "the same day."
    ),
    Hazard.LONG_HOLD: (
        "Long holds raise blood pressure. Keep breathing and talk in short words; ease off if you "
        "can't. Blood pressure, heart or eye trouble: ask your clinician first."
    ),
    Hazard.BREATH_HOLD: (
        "Heavy sets tempt you to hold your breath, which raises blood pressure. Breathe out as you "
        "lift. Blood pressure, heart, eye or hernia trouble: ask your clinician first."
    ),
    Hazard.PARTNER_CONTACT: (
        "Your partner is the resistance. Start at half effort, agree on the word 'off', and let go "
        "the moment it is said."
    ),
    Hazard.CABLE: (
        "Push the pin fully in, close the clip, keep hands off the stack and let it down under "
        "control. Report a frayed cable and leave the machine alone."
    ),
    Hazard.MACHINE: (
        "Set seat and stops to your marks before the first repetition, keep hands off moving "
        "parts, and follow the plate on the machine and the maker's manual."
    ),
    Hazard.CARRY: (
        "Toes and shins are under the weight. Clear the lane, set down on the mat by bending the "
        "knees, and turn slowly. Let go outwards if grip fails."
    ),
    Hazard.HEAVY_PULL: (
        "A heavy pull from the floor loads the back. Nobody stands in front or astride the bar. "
        "End the set when the back rounds and does not come back."
    ),
    Hazard.IMPACT: (
        "Landing loads knees, hips and pelvic floor. Land softly, stop at the first heavy landing, "
        "and use a door if joints complain."
    ),
    Hazard.INVERSION: (
        "Your head is below your heart. Come up slowly. Blood pressure or eye trouble: ask your "
        "clinician first."
    ),
    Hazard.HANGING: (
        "You hang above the floor. Keep a box under the bar and step down; don't drop. Dry hands "
        "and handles first."
    ),
    Hazard.SLED: (
        "Keep the lane and three metres beyond it clear. Don't wrap rope round a hand, and look "
        "behind before you walk backwards."
    ),
    Hazard.PUSH_ON_PINS: (
        "You push against steel that does not give. The bar lies under both pins, the rack is "
        "fixed, and the push grows over one to three seconds."
    ),
    Hazard.SWING: (
        "The bell leaves along the line of the swing if grip fails. Two metres clear in front and "
        "behind, dry handle, nobody in line."
    ),
    Hazard.HARD_CONDITIONING: (
        "Hard work drives heart and breath. New to it, pregnant, heart, lung or blood pressure "
        "trouble: ask your clinician first. Drink, and go easier in heat. Chest pain, dizziness or "
        "feeling faint: stop and tell somebody."
    ),
}
"""One caution for every hazard; general information that defers to the staff, the maker's manual
and the member's clinician. Common practice, no source, unless the safety page says otherwise."""

ON_TOP_STEPS: dict[Hazard, str] = {
    Hazard.BAND: (
        "Bands: plates and collars first, then one band on each side, from pegs that are rated for "
        "them, alike left and right. Take both off before the first plate."
    ),
    Hazard.CHAIN: (
        "Chains: plates and collars first, then the same link on both sides, so that some of each "
        "stays on the floor at the bottom. Take them off before the first plate."
    ),
}
"""What a week with bands or chains adds to the set-up. Common practice, no source."""

HAZARD_NAMES: dict[Hazard, str] = {
    Hazard.OVERHEAD: "weight overhead",
    Hazard.SUPINE_BAR: "a bar above you",
    Hazard.SUPINE: "lying on the back",
    Hazard.BAR_ON_BACK: "a bar on the back",
    Hazard.RACK: "a bar that can tip in its rack",
    Hazard.DUMBBELLS_OVER_BODY: "weights above the body",
    Hazard.BAND: "stretched bands",
    Hazard.CHAIN: "hanging chains",
    Hazard.BELT: "weight on a belt",
    Hazard.PACK: "a loaded pack",
    Hazard.PLATE_HELD: "a plate in the hands",
    Hazard.PLATE_ON_BACK: "a plate on the back",
    Hazard.PIVOT: "a bar that swings",
    Hazard.BOX: "a box that can slip",
    Hazard.HEAVY_ECCENTRIC: "soreness for days",
    Hazard.LONG_HOLD: "long holds and blood pressure",
    Hazard.BREATH_HOLD: "held breath",
    Hazard.PARTNER_CONTACT: "a partner's force",
    Hazard.CABLE: "a cable stack",
    Hazard.MACHINE: "moving parts",
    Hazard.CARRY: "weight above the toes",
    Hazard.HEAVY_PULL: "a rounding back",
    Hazard.IMPACT: "hard landings",
    Hazard.INVERSION: "head below the heart",
    Hazard.HANGING: "a drop from the bar",
    Hazard.SLED: "a moving sled",
    Hazard.PUSH_ON_PINS: "pushing against steel",
    Hazard.SWING: "a bell that flies",
    Hazard.HARD_CONDITIONING: "a racing heart",
}
"""Every hazard in a few words, for the line under a dose; the caution stands with the exercise."""
