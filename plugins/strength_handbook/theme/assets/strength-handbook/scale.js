/* From what is wanted to a load that can be put on. No page in here. */
import { POUND, halfEven } from './whole-numbers.js';

/** @import { Lists, Load, Me, Recipe, Scale, Step, Units } from './types.js' */

const POUND_SLACK = 10000; // mg; a pound is no whole number of grams

/** The scale of a name; null for none. A name that is not there is a file of another publication.
    @param {Lists} lists
    @param {string | undefined} id
    @throws {RangeError} */
function scaleOf(lists, id) {
  if (id === undefined) return null;
  const scale = lists.scales[id];
  if (!scale) throw new RangeError('no such scale: ' + id);
  return scale;
}

/** @param {Scale} scale
    @param {number[]} places */
const partsOf = (scale, places) => places.map(place => scale.parts[place]);

/** The step for a target by the scale's rounding; undefined where none may be taken.
    @param {Scale} scale
    @param {number} mg
    @returns {Step | undefined} */
function best(scale, mg) {
  const slack = (scale.slack || 0) * 1000;
  const below = scale.steps.filter(step => step[0] * 1000 <= mg + slack).pop();
  const above = scale.steps.find(step => step[0] * 1000 >= mg - slack);
  if (scale.round === 'down') return below;
  // The lightest is none where it lies too far above what is wanted.
  if (!below && above && above[0] * 1000 - mg > (scale.above || 0) * 1000 + slack) return undefined;
  if (scale.round === 'up') return above;
  if (!below || !above) return below || above;
  return mg - below[0] * 1000 <= above[0] * 1000 - mg + slack ? below : above;
}

/** Whole kilograms or pounds of help for a target below zero, in grams.
    @param {number} mg
    @param {Units} units */
function helpFor(mg, units) {
  const missing = BigInt(-mg - (units === 'lb' ? POUND_SLACK : 0));
  if (missing <= 0n) return 0;
  const [unit, amount] = units === 'lb' ? [POUND, missing * 100n] : [1000000n, missing];
  const count = (amount + unit - 1n) / unit;
  return units === 'lb' ? halfEven(count * POUND, 100000n) : Number(count) * 1000;
}

/** The band nearest to what is to be taken off, [grams, number], or [0, ''] if none is nearer;
    null beyond the strongest, and where no bands are taken.
    @param {number} mg
    @param {Scale | null} scale
    @returns {[grams: number, band: string] | null} */
function bandFor(mg, scale) {
  const bands = scale?.helps ?? [];
  const strongest = bands.at(-1);
  if (!scale || mg >= 0 || !strongest || -mg * 10 > strongest[0] * 11000) return null;
  const bare = best(scale, 0);
  /** @param {[grams: number, band: string]} one */
  const off = ([grams]) => Math.abs(-mg - grams * 1000);
  /** @type {[grams: number, band: string][]} */
  const all = [...bands];
  if (bare && !bare[0]) all.unshift([0, '']);
  // Of two equally near the one that helps more.
  return all.reduce((nearest, one) => (off(one) <= off(nearest) ? one : nearest));
}

/** The load for so many milligrams.
    @param {number} wanted
    @param {Scale | null} scale
    @param {bigint} body
    @param {number} reference
    @param {Lists} lists
    @returns {Load} */
function achieve(wanted, scale, body, reference, lists) {
  const [help, band] = bandFor(wanted, scale) || [helpFor(wanted, lists.units), ''];
  /** @type {Load} */
  const load = { wanted, scale, body, reference, help, band, grams: null, parts: [] };
  if (load.help) load.grams = -load.help;
  else if (!scale) load.grams = wanted <= 0 ? 0 : null;
  else {
    const step = best(scale, Math.max(wanted, 0));
    if (step) {
      load.grams = step[0];
      load.parts = partsOf(scale, step.slice(1));
    }
  }
  return load;
}

/** What of the body moves, in gram-percents; null where the body mass is not known.
    @param {Recipe} recipe
    @param {Me} me */
function bodyOf(recipe, me) {
  if (!recipe.w) return 0n;
  return me.body ? BigInt(me.body) * BigInt(recipe.w) : null;
}

/** The tested value that a recipe is of, in grams; undefined where it is of none, or where none is known.
    @param {Recipe} recipe
    @param {Me} me */
const baseOf = ({ b }, me) => (b === undefined ? undefined : me.bases[b]);

export { achieve, baseOf, best, bodyOf, partsOf, scaleOf };
