"""How a dose is written, and what the words mean."""

NOTATION: tuple[tuple[str, str], ...] = (
    ("4 × 5", "Four sets of five repetitions."),
    ("8–12", "Anything from eight to twelve; the same load until all sets reach twelve."),
    ("5+", "At least five, then on while it stays good, to the stated stop."),
    ("6:00 AMRAP", "As many good ones as you can in six minutes, while the pace holds."),
    ("(2+2+2)/20 s", "One set in three parts of two, with 20 seconds between them."),
    ("↓ 3 loads −20 %", "Three loads without rest; each time about a fifth comes off."),
    ("Σ 36", "36 repetitions in all, however they fall to the loads."),
    ("ramp to 5RM", "Work up to today's best set of five, only adding weight."),
    ("test 3RM", "Find today's best set of three, in no more attempts than stated."),
    ("@ 74 %", "With 74 per cent of the tested value that is named."),
    ("@ 70 % system", "With 70 per cent of your best total: body plus what was added."),
    ("@ 25 % BM", "With 25 per cent of your body weight; in carries for each hand."),
    ("BW+10 {units}", "Body weight and 10 {units} more. BW−10 {units}: 10 {units} of help."),
    ("8RM", "The heaviest load you could lift eight times."),
    ("90 % of top", "With 90 per cent of today's heaviest set."),
    ("85 % TM", "With 85 per cent of a training max, which is a bit less than your best single."),
    ("+ bands, + chains", "They make the lift heavier on the way up."),
    ("RIR 2", "Stop with two good repetitions left (repetitions in reserve)."),
    ("effort 7", "Seven out of ten, where ten is all you have."),
    ("5-1-X-0", "Lower five seconds, pause one, lift as fast as you can, no pause at the top."),
    ("X", "As fast as you can. The order is always lower, pause, lift, pause."),
    ("each side", "All repetitions with one side, then with the other. Weaker side first."),
    ("B1 → B2", "One set of B1, rest, one set of B2, rest, and again."),
    ("30 s hold", "Get into the position and stay there for 30 seconds."),
    ("pause 2 s", "Hold two seconds inside each repetition, at the stated place."),
    ("push at pin 9", "Push against what does not move; let the force grow, never jerk."),
    ("back up by", "Only the lowering counts; that is how the weight gets back up."),
    ("4 → 40 m", "Four walks of 40 metres."),
    ("every 60 s", "Start a set each minute; what is left of the minute is rest."),
    ("rest 2:30", "Rest two and a half minutes."),
)
"""What stands in a dose, and its meaning; `{units}` is the gym's own word for its masses."""


def notation(units: str) -> list[tuple[str, str]]:
    """How a dose is written, in the gym's units.

    >>> dict(notation("lb"))["BW+10 lb"]
    'Body weight and 10 lb more. BW−10 lb: 10 lb of help.'
    """
    return [(sign.format(units=units), words.format(units=units)) for sign, words in NOTATION]


GLOSSARY: tuple[tuple[str, str], ...] = (
    ("Base", "The tested value that a percentage refers to, such as your best single."),
    ("Deload", "A week of less, so that the body can catch up. Its pages say “easy week”."),
    ("Door", "A prepared way out: easier, harder, it hurts, it's taken, no partner."),
    ("Dose", "What an exercise asks this week: sets, repetitions, load, tempo, rest."),
    ("Eccentric", "The lowering part of a lift. Slow lowering makes you sore the first time."),
    ("Hard set", "A set close enough to your limit to count for a muscle."),
    ("Isometric", "A hold: the muscle works and nothing moves."),
    ("1RM, 5RM", "The most you can lift once, or five times, with good form."),
    ("Repetitions in reserve", "How many more good ones you had. People guess about one off."),
    ("Session", "One visit to the gym."),
    ("Spotter", "A helper who stands ready to take the weight, and knows the word for it."),
    ("System", "Your body and what hangs on it, together: what a pull-up really lifts."),
    ("Tempo", "How fast each part of a repetition goes."),
    ("Wave", "Three to five weeks with one emphasis."),
)
