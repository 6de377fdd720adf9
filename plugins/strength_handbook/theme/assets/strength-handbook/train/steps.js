/* A session as a list of steps, from the slots of phone/train.py. Pure.

   shape(list)          which steps there are, as a text: equal where a tap means the same
   list(slots, warmUp)  {kind: 'warm', 'up' (to the first set), 'top', 'set' or 'end', o: order,
                        n, of, few: which set of how many, or of fewer; side; part, parts; reps: of
                        this part; strip: weight comes off; each: repetitions of
                        the set, or with each load of a strip set, fewest and most; all: of the
                        whole strip set; alike: of sets that differ the place of those it is one of;
                        many: people who do as many as possible in its time;
                        metres; work (of a range the most), least, hold, rest, every, attempt, open:
                        [floor, cap]; turn: only the side changes; last: the set is complete;
                        v: what is different in each variant}
   strips(list, place)  places of the loads of the strip set that a step belongs to, of its side
   name(step)           which set it is, in words. */

/** @import { Slot, Step } from './types.js' */

/** Of sets that differ those to which a set belongs: their place, repetitions and rest.
    @param {Slot} slot
    @param {number} n */
function alike(slot, n) {
  let left = n;
  const kind = (slot.D ?? []).findIndex((/** @type {number[]} */ [sets]) => (left -= sets) <= 0);
  if (kind < 0) return { kind: undefined, each: slot.q, rest: slot.r };
  const [, low, high, rest = slot.r] = slot.D[kind];
  return { kind, each: /** @type {[number, number]} */ ([low, high]), rest };
}

/** One set, by sides and parts.
    @param {Slot} slot
    @param {number} n
    @param {number} of
    @param {number} few
    @returns {Step[]} */
function set(slot, n, of, few) {
  /** @type {[number[], number]} */
  const [parts, pause] = slot.c || [Array(slot.l || 1).fill(0), 0];
  const [floor, cap, all] = slot.n || [];
  const { kind, each, rest } = alike(slot, n);
  return (slot.b ? ['left', 'right'] : ['']).flatMap(side => parts.map((reps, place) => {
    const ends = place + 1 === parts.length;
    return {
      kind: 'set', o: slot.o, v: slot.v, n, of, few, side, reps, part: place + 1, parts: parts.length,
      strip: !!slot.l, all: slot.u, attempt: !!slot.a, many: slot.N, alike: kind, each, metres: slot.m,
      work: slot.w, least: slot.W, hold: !!slot.h, every: slot.e,
      rest: ends ? rest : pause, open: floor && (all || n === of) ? [floor, cap] : null,
      turn: ends && side === 'left', last: ends && side !== 'left',
    };
  }));
}

/** One letter in rounds; who has fewer sets is done earlier.
    @param {Slot[]} slots */
function group(slots) {
  const counts = slots.map(slot => [slot.s || 0].flat());
  /** @type {Step[]} */
  const found = [];
  for (const { o, v, g, p, P, r } of slots) {
    const own = { o, v, n: 1, of: 1, part: 1, parts: 1, rest: r };
    if (g) found.push({ ...own, kind: 'up' });
    if (p) found.push({ ...own, kind: 'top', reps: p, leaves: P, last: true });
  }
  for (let n = 1; n <= Math.max(...counts.flat()); n += 1) {
    slots.forEach((slot, place) => {
      const [few, most = few] = counts[place];
      if (n <= most) found.push(...set(slot, n, most, few));
    });
  }
  return found;
}

/** @param {Slot[]} slots
    @param {unknown} warmUp
    @returns {Step[]} */
function list(slots, warmUp) {
  /** @type {Slot[][]} */
  const groups = [];
  for (const slot of slots) {
    const last = groups[groups.length - 1];
    if (last && last[0].o[0] === slot.o[0]) last.push(slot);
    else groups.push([slot]);
  }
  /** @type {Step[]} */
  const found = [...groups.flatMap(group), { kind: 'end', o: '' }];
  if (warmUp) found.unshift({ kind: 'warm', o: '' });
  return found;
}

/** @param {Step[]} list
    @param {number} place */
const strips = (list, place) => [...list.keys()].filter(one => ['kind', 'o', 'n', 'side'].every(key =>
  list[one][/** @type {'o'} */ (key)] === list[place][/** @type {'o'} */ (key)]));

/** @param {Step[]} steps */
const shape = steps => steps.map(({ kind, o, n = '', side = '', part = '', parts = '', work = '' }) =>
  [kind, o, n, side, part, parts, work].join()).join(' ');

/** @type {Record<string, string>} */
const NAMES = { warm: 'Warm-up', end: 'The end', up: 'On the way up' };

/** @param {Step} step */
function name(step) {
  const { n = 1, of = 1, few = of, parts = 1 } = step;
  if (NAMES[step.kind]) return NAMES[step.kind];
  if (step.kind === 'top') return `Today’s top set of ${step.reps}` + (step.leaves ? `, ${step.leaves} left` : '');
  return [
    `${step.attempt ? 'Attempt' : 'Set'} ${n} of ${few < of ? few + ' to ' : ''}${Math.max(n, of)}`,
    step.side,
    parts > 1 && `${step.strip ? 'load' : 'part'} ${step.part} of ${parts}`,
  ].filter(Boolean).join(', ');
}

export { list, strips, shape, name };
