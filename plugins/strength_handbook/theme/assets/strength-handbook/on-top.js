/* Bands and chains on a bar: what they make of its load. No page in here. */
import { baseOf } from './scale.js';
import { POUND, halfEven } from './whole-numbers.js';

/** @import { Chain, Lists, Load, Me, OnTop, Recipe, Units } from './types.js' */

/** Micrograms of pull as whole half kilograms, or whole pounds.
    @param {bigint} pull
    @param {Units} units */
function halves(pull, units) {
  const fine = units === 'lb' ? halfEven(pull * 100000n, POUND) : halfEven(pull, 500n);
  return halfEven(BigInt(fine), 1000000n);
}

/** What bands or chains make of a bar: {what, hangs, bottom, middle, top, share}; null without any.
    Loads are counted in half kilograms, or in pounds; the share is of the best where the dose's
    is one of it, else of the load at the top.
    @param {Recipe} recipe
    @param {Load} today
    @param {Me} me
    @param {Lists} lists
    @returns {OnTop | null}
    @throws {RangeError} where page and lists are of two publications */
function onTopOf(recipe, today, me, lists) {
  if (!recipe.v || !today.grams) return null;
  const list = lists.on_top[recipe.v];
  if (!list) throw new RangeError('no such list: ' + recipe.v);
  const base = baseOf(recipe, me);
  /** @type {Chain | undefined} */
  let found;
  if (list.chains) {
    const loads = (today.scale?.steps ?? []).filter(step => step[0]);
    const pairs = list.pairs?.[loads.findIndex(step => step[0] === today.grams)];
    found = pairs === undefined ? undefined : list.chains[pairs];
  } else {
    if (recipe.q !== undefined && base === undefined) return null;
    const wanted = BigInt(base || 0) * BigInt(recipe.q || 0);
    let least = Infinity;
    for (const [what, pull, ...adds] of list.bands ?? []) {
      const gap = BigInt(pull) * 100n - wanted;
      const distance = halfEven(gap < 0n ? -gap : gap, 100n);
      if (distance < least) [least, found] = [distance, [what, ...adds]];
    }
  }
  if (!found) throw new RangeError('not in the list: ' + today.grams);
  const weight = BigInt(today.grams) * 1000000n;
  const [what, ...adds] = found;
  const totals = adds.map(add => weight + BigInt(add));
  const [bottom, middle, top] = totals.map(one => halves(one, lists.units));
  const ofBest = recipe.q !== undefined;
  const whole = ofBest ? BigInt(base ?? 0) * 1000000n : totals[2];
  return { what, hangs: adds[2] > 0, bottom, middle, top, ofBest, share: halfEven(BigInt(adds[2]) * 100n, whole) };
}

export { onTopOf };
