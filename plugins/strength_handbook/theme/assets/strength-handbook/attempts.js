/* A test: the way up to it, and the next attempt. No page in here. */
import { achieve, baseOf, bodyOf, scaleOf } from './scale.js';
import { WHOLE, toMg } from './whole-numbers.js';

/** @import { Attempt, Lists, Load, Me, Recipe, Step } from './types.js' */

/** What is tested: how its loads are made from totals in parts of a whole; null where a number is
    missing.
    @param {Recipe} recipe
    @param {Me} me
    @param {Lists} lists */
function tested(recipe, me, lists) {
  const base = baseOf(recipe, me);
  const body = bodyOf(recipe, me);
  if (!recipe.l || base === undefined || body === null) return null;
  const { n, p, f, u, d } = recipe.l;
  const scale = scaleOf(lists, recipe.s);
  const expected = BigInt(base) * BigInt(p);
  const reference = toMg(expected) / 1000;
  /** The load with which so much moves: a share of it, as a fraction.
      @param {bigint} moves
      @param {bigint} over
      @param {bigint} under */
  const at = (moves, over, under) =>
    achieve(toMg(moves * over - body * under, under), scale, body, reference, lists);
  return { scale, body, expected, at, first: BigInt(f), up: u, down: d, shares: recipe.l.w,
    most: n > 1 ? BigInt(base) * WHOLE : null };
}

/** The next attempt: {low, high}; null where no load is left between what went and what did not.
    `good` is the heaviest good attempt in grams as loaded, `missed` the lightest missed one above
    it, or null; `wasGood` is the last one.
    @param {Recipe} recipe
    @param {Me} me
    @param {Lists} lists
    @param {number | null} good
    @param {number | null} missed
    @param {boolean} wasGood
    @returns {Attempt | null} */
function nextAttempt(recipe, me, lists, good, missed, wasGood) {
  const test = tested(recipe, me, lists);
  const last = wasGood ? good : missed;
  if (!test || last === null) return null;
  const { scale, body, at, most } = test;
  /** @param {number} grams */
  const moves = grams => BigInt(grams) * WHOLE + body;
  /** @param {Load} load */
  const open = load => load.grams !== null && (good === null || load.grams > good) &&
    (missed === null || load.grams < missed) &&
    (most === null || moves(load.grams) <= most + WHOLE / 2n);
  const steps = wasGood ? test.up : [-test.down[1], -test.down[0]];
  let [low, high] = steps.map(step => {
    const over = WHOLE + BigInt(step);
    return most !== null && moves(last) * over > most * WHOLE
      ? at(most, 1n, 1n) : at(moves(last), over, WHOLE);
  });
  const { slack = 0, steps: masses = [] } = scale || {};
  /** @param {Step | undefined} found */
  const beside = found => found && at(moves(found[0]), 1n, 1n);
  if (!open(low) && good !== null && good >= 0) {
    low = beside(masses.find(step => step[0] > good + slack)) || low;
  }
  if (!open(high) && missed !== null && missed >= 0) {
    high = beside(masses.filter(step => step[0] < missed - slack).pop()) || high;
  }
  if (!open(low)) low = high;
  if (!open(high)) high = low;
  if (!open(low)) return null;
  return { low: Number(low.grams) <= Number(high.grams) ? low : high, high };
}

/** The way up to a test: {steps: [{load, reps}], first, good, missed}, the last two as `attempt`
    makes them; null where it can't be put on.
    @param {Recipe} recipe
    @param {Me} me
    @param {Lists} lists */
function ladderOf(recipe, me, lists) {
  const test = tested(recipe, me, lists);
  if (!test) return null;
  const { scale, body, expected, at } = test;
  let first = at(expected, test.first, WHOLE);
  if (first.grams === null) first = at(expected, 1n, 1n);
  if (first.grams === null) return null;
  /** @type {{load: Load, reps: [number, number]}[]} */
  const steps = [];
  let heaviest = first.grams;
  test.shares.map((one, place) => ({ share: BigInt(one), reps: lists.test_reps[place] })).reverse()
    .forEach(({ share, reps }) => {
      let load = at(expected, test.first * share, WHOLE * WHOLE);
      if (load.grams === null && scale && scale.steps.length) {
        load = at(BigInt(scale.steps[0][0]) * WHOLE + body, 1n, 1n);
      }
      if (load.grams !== null && load.grams < heaviest) {
        steps.unshift({ load, reps });
        heaviest = load.grams;
      }
    });
  return {
    steps, first,
    good: nextAttempt(recipe, me, lists, first.grams, null, true),
    missed: nextAttempt(recipe, me, lists, null, first.grams, false),
  };
}

export { nextAttempt, ladderOf };
