/* Strip sets: what comes off from load to load. No page in here. */
import { partsOf } from './scale.js';
import { WHOLE, halfEven } from './whole-numbers.js';

/** @import { Lists, Load, Recipe, Scale, StripLoad } from './types.js'
    @typedef {{miss: number, taken: number[][]}} Taken  how far the strips are from their aim, and groups of plates */

/** Every stack of one side for a mass, heaviest plates first: lists of plates, inner to outer.
    @param {number[][]} kinds  plate and count
    @param {number} grams
    @param {number} most
    @returns {number[][]} */
function stacks(kinds, grams, most) {
  if (!grams) return [[]];
  if (!kinds.length) return [];
  const [[plate, count], ...rest] = kinds;
  /** @type {number[][]} */
  const found = [];
  for (let many = Math.min(count, most, Math.floor(grams / plate)); many >= 0; many -= 1) {
    for (const stack of stacks(rest, grams - many * plate, most - many)) {
      found.push([...Array(many).fill(plate), ...stack]);
    }
  }
  return found;
}

/** Every different group of at most so many plates within a range of mass: [group, what stays].
    @param {number[]} stack
    @param {number} lightest
    @param {number} heaviest
    @param {number} most
    @returns {[group: number[], rest: number[]][]} */
function groups(stack, lightest, heaviest, most) {
  /** @type {[number[], number[]][]} */
  const found = [];
  /** @param {number} start
      @param {number[]} group
      @param {number[]} passed
      @param {number} mass */
  const extend = (start, group, passed, mass) => {
    if (group.length && mass >= lightest) found.push([group, [...passed, ...stack.slice(start)]]);
    if (group.length === most) return;
    for (let place = start; place < stack.length; place += 1) {
      const plate = stack[place];
      // Of equal plates only the first not yet passed is tried: the others give the same.
      if (mass + plate <= heaviest && (place === start || plate !== stack[place - 1])) {
        extend(place + 1, [...group, plate], [...passed, ...stack.slice(start, place)], mass + plate);
      }
    }
  };
  extend(0, [], [], 0);
  return found;
}

/** Least miss of the strips still to come, and their groups; `spare` plates more than one each.
    @param {number[]} stack
    @param {number} strips
    @param {number} spare
    @param {number} aim
    @param {number} along
    @returns {Taken | null} */
function onwards(stack, strips, spare, aim, along) {
  if (!strips) return { miss: 0, taken: [] };
  const all = sum(stack);
  const moves = all + along;
  const lowest = Math.ceil((aim - 5) * moves / 100) - along;
  const highest = Math.floor(Math.min(aim + 5, 99) * moves / 100) - along;
  /** @type {Taken | null} */
  let best = null;
  for (const [group, rest] of groups(stack, all - highest, all - lowest, 1 + spare)) {
    const later = onwards(rest, strips - 1, spare + 1 - group.length, aim, along);
    if (!later) continue;
    const miss = later.miss + Math.abs(100 * (sum(rest) + along) - aim * moves);
    if (!best || miss < best.miss) best = { miss, taken: [group, ...later.taken] };
  }
  return best;
}

/** @param {number[]} parts */
const sum = parts => parts.reduce((all, part) => all + part, 0);

/** Strips of a load that a body is part of: plates that come off alone; fewest, then nearest.
    @param {[count: number, aim: number, factor: number]} asked
    @param {Load} today
    @param {Scale} scale
    @param {number} grams */
function plateByPlate([count, aim, factor], today, scale, grams) {
  const along = halfEven(today.body * BigInt(factor), WHOLE * WHOLE);
  const kinds = (scale.plates ?? []).map(([place, many]) => [scale.parts[place], many]);
  const listed = today.parts.slice().sort((a, b) => b - a);
  const any = stacks(kinds, grams - scale.own, scale.most || 99);
  // The plates that are listed for the load, if their strips come off; else any others.
  const found = strippedFrom([listed], count, aim, along + scale.own)
    || strippedFrom(any, count, aim, along + scale.own);
  return found && stripped(found, grams);
}

/** The best of some stacks to strip: fewest plates taken off, then nearest; null if there is none.
    @param {number[][]} firsts
    @param {number} count
    @param {number} aim
    @param {number} along */
function strippedFrom(firsts, count, aim, along) {
  const longest = Math.max(0, ...firsts.map(stack => stack.length));
  for (let spare = 0; spare <= longest - count + 1; spare += 1) {
    /** @type {(Taken & {stack: number[]}) | null} */
    let best = null;
    for (const stack of firsts) {
      const found = onwards(stack, count - 1, spare, aim, along);
      if (found && (!best || found.miss < best.miss
        || (found.miss === best.miss && stack.length < best.stack.length))) best = { ...found, stack };
    }
    if (best) return best;
  }
  return null;
}

/** Loads from a stack and the groups that come off it, the last group innermost.
    @param {Taken & {stack: number[]}} found
    @param {number} grams
    @returns {StripLoad[]} */
function stripped({ stack, taken }, grams) {
  const inner = stack.slice();
  for (const plate of taken.flat()) inner.splice(inner.indexOf(plate), 1);
  let parts = [...inner, ...taken.slice().reverse().flat()];
  let now = grams;
  return [{ grams, off: [], hold: false, parts }, ...taken.map(group => {
    parts = parts.slice(0, parts.length - group.length);
    now -= sum(group);
    return { grams: now, off: group.slice().reverse(), hold: false, parts };
  })];
}

/** Loads of a strip set; null where what is here allows none.
    @param {Recipe} recipe
    @param {Load} today
    @param {Lists} lists
    @returns {StripLoad[] | null} */
function stripsOf(recipe, today, lists) {
  const { scale, grams: first } = today;
  if (recipe.c === undefined || first === null || today.help || !scale) return null;
  if (typeof recipe.c !== 'string') return plateByPlate(recipe.c, today, scale, first);
  const found = (lists.strips[recipe.c] || {})[first];
  if (!found) return null;
  let [[, , ...parts]] = found; // the first load comes with all its plates
  return found.map(([grams, hold, ...plates], place) => {
    const off = place ? plates : [];
    parts = off.length ? parts.slice(0, parts.length - off.length) : parts;
    // What has no plates that come off is put together as its step says.
    const step = scale.steps.find(one => one[0] === grams) ?? [grams];
    const own = parts.length ? parts : partsOf(scale, step.slice(1));
    return { grams, off, hold: !!hold, parts: own };
  });
}

export { stripsOf };
