/* Warm-up steps to a load, and what changes on a bar from one load to the next. No page in here. */
import { baseOf, best, partsOf, scaleOf } from './scale.js';
import { toMg } from './whole-numbers.js';

/** @import { Lists, Me, RampStep, Recipe, Scale } from './types.js' */

/** Steps to a load of a scale, `parts` as they are on one side then.
    @param {Scale} scale
    @param {number} top
    @returns {RampStep[]} */
function way(scale, top) {
  /** @type {number[]} */
  let parts = [];
  return ((scale.ramps || {})[top] || []).map(([grams, reps, added, taken = []]) => {
    const [on, off] = [partsOf(scale, added), partsOf(scale, taken)];
    parts = [...parts.slice(0, parts.length - off.length), ...on];
    return { grams, reps, on, off, parts };
  });
}

/** Warm-up steps to today's load or top; none where none is known.
    @param {Recipe} recipe
    @param {Me} me
    @param {Lists} lists */
function rampOf(recipe, me, lists) {
  const base = baseOf(recipe, me);
  const scale = scaleOf(lists, recipe.s);
  if (recipe.r === undefined || base === undefined || !scale) return [];
  const top = best(scale, toMg(BigInt(base) * BigInt(recipe.r)));
  return top ? way(scale, top[0]) : [];
}

/** What comes off and goes on one side, in that order; lists of plates from inner to outer.
    @param {number[]} from
    @param {number[]} to */
function plateChange(from, to) {
  let same = 0;
  while (same < from.length && from[same] === to[same]) same += 1;
  return { off: from.slice(same).reverse(), on: to.slice(same) };
}

export { way, rampOf, plateChange };
