/* A session as a list of steps, from the slots of plan/train.py. Pure.

   list(slots, warmUp)  {kind: 'warm', 'up' (to the first set), 'top', 'set' or 'end', o: order,
                        n, of, few: which set of how many, or of fewer; side; part, parts; reps: of
                        this part; strip: weight comes off; work, hold, rest, every, attempt, open:
                        [floor, cap]; turn: only the side changes; last: the set is complete;
                        v: what is different in each variant}
   name(step)           which set it is, in words. */
(function (train) {
  'use strict';

  /** One set, by sides and parts. */
  function set(slot, n, of, few) {
    const [parts, pause] = slot.c || [Array(slot.l || 1).fill(0), 0];
    const [floor, cap, all] = slot.n || [];
    return (slot.b ? ['left', 'right'] : ['']).flatMap(side => parts.map((reps, place) => {
      const ends = place + 1 === parts.length;
      return {
        kind: 'set', o: slot.o, v: slot.v, n, of, few, side, reps, part: place + 1, parts: parts.length,
        strip: !!slot.l, attempt: !!slot.a, work: slot.w, hold: !!slot.h, every: slot.e,
        rest: ends ? slot.r : pause, open: floor && (all || n === of) ? [floor, cap] : null,
        turn: ends && side === 'left', last: ends && side !== 'left',
      };
    }));
  }

  /** One letter in rounds; who has fewer sets is done earlier. */
  function group(slots) {
    const counts = slots.map(slot => [slot.s || 0].flat());
    const found = slots.flatMap(({ o, v, g, p, r }) => {
      const own = { o, v, n: 1, of: 1, part: 1, parts: 1, rest: r };
      return [...(g ? [{ ...own, kind: 'up' }] : []),
        ...(p ? [{ ...own, kind: 'top', reps: p, last: true }] : [])];
    });
    for (let n = 1; n <= Math.max(...counts.flat()); n += 1) {
      slots.forEach((slot, place) => {
        const [few, most = few] = counts[place];
        if (n <= most) found.push(...set(slot, n, most, few));
      });
    }
    return found;
  }

  function list(slots, warmUp) {
    const groups = [];
    slots.forEach((slot, place) => {
      if (place && slots[place - 1].o[0] === slot.o[0]) groups.at(-1).push(slot);
      else groups.push([slot]);
    });
    return [...(warmUp ? [{ kind: 'warm', o: '' }] : []), ...groups.flatMap(group),
      { kind: 'end', o: '' }];
  }

  const NAMES = { warm: 'Warm-up', end: 'The end', up: 'On the way up' };

  function name(step) {
    if (NAMES[step.kind]) return NAMES[step.kind];
    if (step.kind === 'top') return `Today’s top set of ${step.reps}`;
    return [
      `${step.attempt ? 'Attempt' : 'Set'} ${step.n} of ${step.few < step.of ? step.few + ' to ' : ''}${Math.max(step.n, step.of)}`,
      step.side,
      step.parts > 1 && `${step.strip ? 'load' : 'part'} ${step.part} of ${step.parts}`,
    ].filter(Boolean).join(', ');
  }

  train.steps = { list, name };
})(strengthHandbook.train);
