/* From a member's numbers to the load of a dose. No page and no browser in here: the same files run
   under node, where a test compares them with what the build works out. `types.js` says what a recipe,
   the lists and a load hold; a missing number gives {need: id or 'body'}. */
import { plateChange } from './ramps.js';
import { achieve, baseOf, best, bodyOf, scaleOf } from './scale.js';
import { stripsOf } from './strips.js';
import { WHOLE, halfEven, toMg } from './whole-numbers.js';

/** @import { Lists, Load, Me, Move, Need, Recipe, SeriesLoad } from './types.js' */

/** The load of a recipe; null where today's top or effort decides.
    @param {Recipe} recipe
    @param {Me} me
    @param {Lists} lists
    @returns {Load | Need | null} */
function make(recipe, me, lists, percent = recipe.p) {
  const { b = '', f, m } = recipe;
  if (percent === undefined && f === undefined && m === undefined) return null;
  const body = bodyOf(recipe, me);
  const base = percent === undefined ? 0 : baseOf(recipe, me);
  if (base === undefined) return { need: b };
  if (body === null || (m !== undefined && !me.body)) return { need: 'body' };
  let wanted;
  if (percent !== undefined) wanted = toMg(BigInt(base) * BigInt(percent) - body);
  else if (m !== undefined) wanted = toMg(BigInt(me.body ?? 0) * BigInt(m));
  else wanted = (f ?? 0) * 1000;
  return achieve(wanted, scaleOf(lists, recipe.s), body, base, lists);
}

/** Where to start by body weight: [[words, load], ...], the most careful one first, those that can
    be put on; empty where no table says so or the body weight is not known. Between two rows of a
    table the lighter one counts; below the first one nothing is known.
    @param {Recipe} recipe
    @param {Me} me
    @param {Lists} lists
    @returns {[label: string, load: Load][]} */
function start(recipe, me, lists) {
  const table = lists.starts[recipe.y ?? ''];
  const body = bodyOf(recipe, me);
  const own = me.body;
  if (!table || !own || body === null) return [];
  const row = (table.r ?? []).findLast(([heavy]) => heavy !== null && heavy <= own) ?? [];
  const wanted = table.z ? table.z.map(share => toMg(body * (BigInt(share) - WHOLE), WHOLE))
    : row.slice(1).map(grams => grams === null ? null : grams * 1000);
  const scale = scaleOf(lists, recipe.s);
  return wanted.flatMap((mg, place) => {
    const load = mg === null ? null : achieve(mg, scale, body, 0, lists);
    return load && load.grams !== null ? [/** @type {[string, Load]} */ ([table.n[place], load])] : [];
  });
}

/** Lightest and heaviest where people judge their effort one repetition off; else null.
    @param {Recipe} recipe
    @param {Me} me
    @param {Lists} lists
    @returns {Load[] | null} null where a number is missing, too */
function range(recipe, me, lists) {
  const found = (recipe.e ?? []).flatMap(percent => {
    const load = make(recipe, me, lists, percent);
    return load && load.need === undefined ? [load] : [];
  });
  return found.length ? found : null;
}

/** The load of a door: a share of everything that moves today, or its own recipe. A share of what is
    not known is not known.
    @param {Recipe} recipe
    @param {Load | null} today
    @param {Me} me
    @param {Lists} lists
    @returns {Load | Need | null} */
function door(recipe, today, me, lists) {
  if (recipe.z === undefined) return make(recipe, me, lists);
  if (!today) return null;
  const body = bodyOf(recipe, me);
  if (body === null) return { need: 'body' };
  const moves = BigInt(today.wanted) * 100000n + today.body;
  const wanted = toMg(moves * BigInt(recipe.z) - body * WHOLE, WHOLE);
  const same = halfEven(body, WHOLE) === halfEven(today.body, WHOLE);
  return achieve(wanted, scaleOf(lists, recipe.s), body, same ? today.reference : 0, lists);
}

/** The load after a result, from today's; null where it stays or is not known.
    @param {Move} move
    @param {Load} today
    @param {Me} me
    @param {Lists} lists
    @returns {Load | null} */
function next(move, today, me, lists) {
  const { grams: now } = today;
  if (now === null) return null;
  /** @param {number} mg */
  const at = mg => achieve(mg, today.scale, today.body, today.reference, lists);
  /** @param {Load | Need | null} load */
  const heavier = load => (load && load.need === undefined && load.grams !== null && load.grams > now ? load : null);
  /** @type {Load | Need | null} */
  let load = null;
  if (move.u !== undefined) {
    load = heavier(at((now + move.u) * 1000));
    const bands = (today.scale && today.scale.helps) || [];
    if (!load && now < 0 && bands.length) {
      const [less] = bands.findLast(([grams]) => grams < today.help) || [0];
      load = at(-less * 1000);
    } else if (!load && today.scale && now >= 0) {
      const limit = now + (today.scale.slack || 0);
      const above = today.scale.steps.find(step => step[0] > limit);
      load = above ? at(above[0] * 1000) : null;
    }
  } else if (move.d) {
    const moves = BigInt(now) * WHOLE + today.body;
    load = at(toMg(moves * 9n - today.body * 10n, 10n));
  } else if (move.p !== undefined) {
    load = at(toMg(BigInt(Math.round(today.reference)) * BigInt(move.p) - today.body));
  } else if (move.l) {
    load = make(move.l, me, lists);
  } else if (move.h) {
    // A load of nothing says nothing about the next one.
    load = now ? heavier(make(move.h, me, lists)) : null;
  }
  return load && load.need === undefined && load.grams !== null && load.grams !== now ? load : null;
}

/** Plates that stand in a stack, so that inner ones can stay on; null where none do.
    @param {Load | undefined} load */
const stackOf = load => (load?.scale && /bar|hung|pivot/.test(load.scale.kind) && load.grams !== null && !load.help
  ? load.parts : null);

/** The loads of sets that differ, in order, with what moves on the bar or belt between them; empty where
    all sets have one load, or a number is missing.
    @param {Recipe} recipe
    @param {Me} me
    @param {Lists} lists
    @returns {SeriesLoad[]} */
function series(recipe, me, lists) {
  /** @type {SeriesLoad[]} */
  const found = [];
  for (const [words, own] of recipe.k ?? []) {
    const load = make({ s: recipe.s, b: recipe.b, w: recipe.w, ...own }, me, lists);
    if (!load || load.need !== undefined) return [];
    const [before, after] = [found.at(-1)?.load, load].map(stackOf);
    found.push({ words, load, ...(before && after ? plateChange(before, after) : { off: [], on: [] }) });
  }
  return found;
}

/** Today's load with its plates in the order in which strips take them off.
    @param {Load | Need | null} load
    @param {Recipe} recipe
    @param {Lists} lists
    @returns {Load | Need | null} */
function settle(load, recipe, lists) {
  if (!load || load.need !== undefined) return load;
  const [first] = stripsOf(recipe, load, lists) ?? [];
  return first && first.grams === load.grams ? { ...load, parts: first.parts } : load;
}

/** The top set that the tested value lets expect, in grams; null where it is not known.
    @param {Recipe} recipe
    @param {Me} me
    @param {Lists} lists */
function expectedTop(recipe, me, lists) {
  const base = baseOf(recipe, me);
  const body = bodyOf(recipe, me);
  const scale = scaleOf(lists, recipe.s);
  if (recipe.o === undefined || base === undefined || body === null || !scale) return null;
  const mg = toMg(BigInt(base) * BigInt(recipe.o) - body);
  const step = best(scale, Math.max(mg, 0));
  return step ? step[0] : null;
}

/** The load after a top set of so many grams.
    @param {Recipe} recipe
    @param {number} top
    @param {Me} me
    @param {Lists} lists
    @returns {Load | Need} */
function backOff(recipe, top, me, lists) {
  const body = bodyOf(recipe, me);
  if (body === null) return { need: 'body' };
  const moves = BigInt(top) * WHOLE + body;
  const wanted = toMg(moves * BigInt(recipe.t ?? 0) - body * WHOLE, WHOLE);
  const reference = top + Number(body) / Number(WHOLE);
  return achieve(wanted, scaleOf(lists, recipe.s), body, reference, lists);
}

export { make, series, start, range, door, next, settle, expectedTop, backOff };
