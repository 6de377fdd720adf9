"""Explanations of what the room cannot serve."""

from strength_handbook.reading.explanation import Explanation as E  # noqa: N817  # a table

ROOM = {
    "above-best": E(
        "Several repetitions are asked for with more than the best single. That is lifted once at "
        "most. Lowering alone may be heavier: say with 'return-by' how the weight gets back up.",
        "1: 3x3 @ 110 %",
        "1: {sets: 3, reps: 3, load: 110 %, return-by: both spotters lift it}",
    ),
    "bands": E(
        "A pair of bands must hang on a bar whose heights are known, and both bands must have been "
        "read at these heights. They must be taut at the bottom, since a slack band snaps tight, "
        "and differ by a tenth at most, or the bar is dragged to one side. Nothing is guessed "
        "beyond the readings: read the band at the missing height, or take another pair.",
        "bands: {pair: [22-a, 45-a]}",
        "bands: {pair: [22-a, 22-b]}    # or {top-share: 20 %}, and the handbook picks a pair",
    ),
    "chains": E(
        "Chains hang on a bar whose heights are known; the exercise says which chains. Some of "
        "each must stay on the floor at the top: a chain that hangs free adds the same at every "
        "height and swings. There must be as many pairs as are asked for.",
        "chains: {pairs: 6}",
        "chains: {pairs: 2}             # or {top-share: 20 %}, and the handbook counts them",
    ),
    "help": E(
        "A band that takes weight off a body-weight lift must have been read: hang it up, put a "
        "scale in the loop, pull to where the foot or knee is at the bottom.",
        "45-a: {width: 45 mm}",
        "45-a: {width: 45 mm, help: 31 kg}",
    ),
    "hooks": E(
        "The bar can't lie in the rack of this exercise: the hooks are wider apart than the "
        "collars. Either number may be mistaken. Measure hooks from middle to middle, and the bar "
        "between the two inner collars."
    ),
    "no-such-box": E(
        "The dose asks for a box of a height that the room does not have. Members would take "
        "another one, and the floor plan counts none. Boxes have their height in room.yml.",
        "9: 4x3, box 35 cm          # the boxes are 20, 30 and 40 cm",
        "9: 4x3, box 30 cm",
    ),
    "no-such-load": E(
        "Nobody could put this load on with what the room has: no plates make it, it lies beyond "
        "the lightest or heaviest thing there is, or for every example lifter it does.",
        "1: 3x10 @ 40 kg            # the dumbbells end at 36 kg",
        "1: 3x10 @ 36 kg",
    ),
    "pivot": E(
        "The hands can't be where the exercise says: beyond the end of the bar, below the pivot or "
        "higher than the bar reaches. 'grip' is measured along the bar from its end in the pivot, "
        "the two heights from the floor.",
        "reach: {grip: 2.3 m, bottom: 1.2 m, top: 1.9 m}     # on a bar of 2.2 m",
        "reach: {grip: 2.1 m, bottom: 1.2 m, top: 1.9 m}",
    ),
}
