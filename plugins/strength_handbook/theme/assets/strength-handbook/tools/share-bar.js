/* One bar for two, three or four lifters in turn: who lifts when, with which plates. Pure; the same
   search as calc/shared_bar.py, which says how it works. A test compares the two.

   plan(rack, own, sets)  rack: {plates: [[grams, width of each plate of one side, …], …], sleeve};
                          own: everybody's plates of one side as each would load them alone. Gives
                          {order: places, stacks: plates by place, moves, alone}: plates moved on one
                          side from the empty bar to the last set, and the same with the own ones. */
import { MOST_AT_A_BAR } from '../people.js';
import { plateChange } from '../ramps.js';

/** @typedef {[moves: number, plates: number]} Cost
    @typedef {[one: number, other: number, times: number, pair: string]} Often  how often two follow each other
    @typedef {Record<string, number[]>} Sharers  for each pair all who share what these two do
    @typedef {{grams: number, widths: number[], lighter: Set<number>}} Kind
    @typedef {{cost: Cost, widths: number[], chosen: number[][]}} Label */


const MOST_STEPS = 100000; // as the build

/** @param {number[]} numbers */
const sum = numbers => numbers.reduce((all, one) => all + one, 0);

/** Plates moved on one side when all lift in turn, from the empty bar to the last set.
    @param {number[][]} stacks
    @param {number} sets */
function count(stacks, sets) {
  let moves = 0;
  /** @type {number[]} */
  let bar = [];
  for (let set = 0; set < sets * stacks.length; set += 1) {
    const { off, on } = plateChange(bar, bar = stacks[set % stacks.length]);
    moves += off.length + on.length;
  }
  return moves;
}

/** Everything in every order, the first orders first.
    @param {number[]} places
    @returns {number[][]} */
const orders = places => (places.length < 2 ? [places] : places.flatMap(first =>
  orders(places.filter(one => one !== first)).map(rest => [first, ...rest])));

/** Every choice of so many from a list, in the list's order.
    @template T
    @param {T[]} list
    @param {number} size
    @returns {T[][]} */
function choose(list, size) {
  if (!size) return [[]];
  return list.flatMap((first, place) =>
    choose(list.slice(place + 1), size - 1).map(rest => [first, ...rest]));
}

/** @param {number} one
    @param {number} other */
const pair = (one, other) => Math.min(one, other) + ',' + Math.max(one, other);

/** Every way in which lifters share inner plates: for each pair all who share what these two do.
    @param {number[]} places
    @returns {Sharers[]} */
function trees(places) {
  if (places.length < 2) return [{}];
  const [first, ...others] = places;
  /** @type {Sharers[]} */
  const found = [];
  for (let size = 0; size < others.length; size += 1) {
    for (const chosen of choose(others, size)) {
      const one = [first, ...chosen];
      const rest = others.filter(other => !chosen.includes(other));
      const here = Object.fromEntries(one.flatMap(a => rest.map(b => [pair(a, b), places])));
      for (const left of trees(one)) for (const right of trees(rest)) found.push({ ...here, ...left, ...right });
    }
  }
  return found;
}

/** How often each two follow each other: [[place, place, times], …].
    @param {number} people
    @param {number} sets
    @returns {Often[]} */
function weights(people, sets) {
  /** @type {Map<string, number>} */
  const found = new Map();
  for (let place = 0; place + 1 < people; place += 1) found.set(pair(place, place + 1), sets);
  const round = pair(0, people - 1);
  if (people > 1) found.set(round, (found.get(round) || 0) + sets - 1);
  return [...found].map(([two, times]) => {
    const [one, other] = two.split(',').map(Number);
    return [one, other, times, two];
  });
}

/** Plates by mass, heavy first: [{grams, widths: of none, one, two, …, lighter: what lighter ones
    can add}].
    @param {number[][]} plates
    @returns {Kind[]} */
function kinds(plates) {
  let lighter = new Set([0]);
  return plates.map(([grams, ...each]) => {
    let widest = 0;
    const widths = [widest, ...each.map(width => (widest += width))];
    const kind = { grams, widths, lighter };
    lighter = new Set([...lighter].flatMap(mass => widths.map((_, number) => mass + number * grams)));
    return kind;
  }).reverse();
}

/** How many plates of a size each may take, so that lighter ones can make up the rest.
    @param {Kind} kind
    @param {number[]} rest
    @returns {number[][]} */
function choices({ grams, widths, lighter }, rest) {
  return rest.reduce((/** @type {number[][]} */ found, mass) => {
    const some = [...widths.keys()].reverse().filter(number => lighter.has(mass - number * grams));
    return found.flatMap(before => some.map(number => [...before, number]));
  }, [[]]);
}

/** A cost is [plate moves, plates carried by all].
    @param {Cost} one
    @param {Cost} other */
const less = (one, other) => one[0] < other[0] || (one[0] === other[0] && one[1] < other[1]);
/** @param {Cost} one
    @param {Cost} other
    @returns {Cost} */
const add = (one, other) => [one[0] + other[0], one[1] + other[1]];

/** What the sizes from a place on must still cost; each two lifters looked at by themselves.
    @param {Kind[]} list */
function bounds(list) {
  /** @type {Map<string, number>} */
  const known = new Map();
  /** @param {string} key
      @param {() => number} run
      @returns {number} */
  function once(key, run) {
    const before = known.get(key);
    if (before !== undefined) return before;
    const value = run();
    known.set(key, value);
    return value;
  }
  /** @param {number} place
      @param {number} mass
      @returns {number} */
  const plates = (place, mass) => (place === list.length ? 0 : once(place + ' ' + mass, () =>
    Math.min(...choices(list[place], [mass]).map(([number]) =>
      number + plates(place + 1, mass - number * list[place].grams)))));
  /** @param {number} place
      @param {number} one
      @param {number} other
      @returns {number} */
  const apart = (place, one, other) => (one === other ? 0 : one > other ? apart(place, other, one)
    : once([place, one, other].join(), () => Math.min(...choices(list[place], [one, other]).map(([a, b]) =>
      Math.abs(a - b) + apart(place + 1, one - a * list[place].grams, other - b * list[place].grams)))));
  /** @param {number} place
      @param {number[]} rest
      @param {Often[]} often
      @returns {Cost} */
  return (place, rest, often) => {
    const each = rest.map(mass => plates(place, mass));
    return [each[0] + sum(often.map(([a, b, times]) => times * apart(place, rest[a], rest[b]))), sum(each)];
  };
}

/** Moves of one size of plate over all sets.
    @param {number[]} counts
    @param {Often[]} often
    @param {Sharers} sharers */
const moved = (counts, often, sharers) => counts[0] + sum(often.map(([a, b, times, two]) =>
  times * (counts[a] + counts[b] - 2 * Math.min(...sharers[two].map(one => counts[one])))));

/** Does nothing that can still come make the other partial plan better?
    @param {Label} one
    @param {Label} other */
const beats = (one, other) => !less(other.cost, one.cost) &&
  one.widths.every((width, place) => width <= other.widths[place]);

/** Each lifter's plates: innermost what most share, and within that the heavy ones.
    @param {Kind[]} list
    @param {number[]} order
    @param {Sharers} sharers
    @param {number[][]} chosen */
function arranged(list, order, sharers, chosen) {
  const groups = [...new Set(Object.values(sharers))].sort((one, other) => other.length - one.length);
  /** @type {number[][]} */
  const stacks = [];
  order.forEach((lifter, place) => {
    /** @type {number[]} */
    const stack = [];
    const used = list.map(() => 0);
    for (const group of [...groups.filter(one => one.includes(place)), [place]]) {
      list.forEach(({ grams }, kind) => {
        const common = Math.min(...group.map(one => chosen[kind][one]));
        for (; used[kind] < common; used[kind] += 1) stack.push(grams);
      });
    }
    stacks[lifter] = stack;
  });
  return stacks;
}

/** @param {{plates?: number[][], sleeve?: number}} rack
    @param {number[][]} own
    @param {number} sets */
function plan({ plates = [], sleeve }, own, sets) {
  if (own.length > MOST_AT_A_BAR) throw new RangeError('too many for one bar: ' + own.length);
  const list = kinds(plates);
  const least = bounds(list);
  const room = sleeve ?? Infinity; // on the sleeve
  const narrow = sum(list.map(({ widths }) => Math.max(...widths))) > room;
  const often = weights(own.length, sets);
  let steps = 0;

  /** The best choice of plates for an order, if there is one below the best cost so far.
      @param {number[]} start
      @param {Sharers} sharers
      @param {Cost} best */
  function cheapest(start, sharers, best) {
    /** @type {Map<string, {rest: number[], labels: Label[]}>} */
    let layer = new Map([[start.join(), { rest: start, labels: [{ cost: [0, 0], widths: [], chosen: [] }] }]]);
    for (const [place, kind] of list.entries()) {
      /** @type {typeof layer} */
      const following = new Map();
      for (const { rest, labels } of layer.values()) {
        for (const counts of choices(kind, rest)) {
          const left = rest.map((mass, one) => mass - counts[one] * kind.grams);
          /** @type {Cost} */
          const more = [moved(counts, often, sharers), sum(counts)];
          const lowest = add(more, least(place + 1, left, often));
          for (const label of labels) {
            steps += 1;
            if (!less(add(label.cost, lowest), best)) continue;
            const widths = narrow ? counts.map((number, one) => (label.widths[one] || 0) + kind.widths[number]) : [];
            if (narrow && Math.max(...widths) > room) continue;
            const key = left.join();
            const there = following.get(key) || { rest: left, labels: [] };
            following.set(key, there);
            /** @type {Label} */
            const made = { cost: add(label.cost, more), widths, chosen: [...label.chosen, counts] };
            if (there.labels.some(known => beats(known, made))) continue;
            there.labels = [...there.labels.filter(known => !beats(made, known)), made];
          }
        }
        if (steps > MOST_STEPS) return null;
      }
      layer = following;
    }
    const done = layer.get(start.map(() => 0).join());
    return done ? done.labels.reduce((one, other) => (less(other.cost, one.cost) ? other : one)) : null;
  }

  const all = orders([...own.keys()]);
  const moves = all.map(order => count(order.map(place => own[place]), sets));
  const alone = Math.min(...moves);
  let found = { order: all[moves.indexOf(alone)], stacks: own, moves: alone, alone };
  /** @type {Cost} */
  let best = [alone, sum(own.map(stack => stack.length))];
  const ways = all.flatMap(order => {
    const start = order.map(place => sum(own[place]));
    return trees([...order.keys()]).map(sharers => ({ order, sharers, start, lowest: least(0, start, often) }));
  }).sort((one, other) => (less(one.lowest, other.lowest) ? -1 : less(other.lowest, one.lowest) ? 1 : 0));
  for (const { order, sharers, start, lowest } of ways) {
    const label = less(lowest, best) && cheapest(start, sharers, best);
    if (!label) continue;
    best = label.cost;
    found = { order, stacks: arranged(list, order, sharers, label.chosen), moves: best[0], alone };
  }
  return found;
}

export { plan };
