/* How heavy each step is today, as data: from the member's numbers, from today's top set, from the
   attempts so far, and from what was typed instead. The panel on the page shows the same. */
import { ladderOf, nextAttempt } from '../attempts.js';
import * as loads from '../loads.js';
import * as mine from '../mine.js';
import { achieve, bodyOf, scaleOf } from '../scale.js';
import { stripsOf } from '../strips.js';
import { toGrams } from '../whole-numbers.js';
import * as page from './page.js';

/** @import { App, Step } from './types.js'
    @import { Load, Need } from '../types.js' */

/** @param {App} app */
const today = app => {
  const { units } = app.data;
  const typed = name => app.typed[name] || '';
  const trying = (order, place) => `load.${order}.${place}`;
  /** The field for the load of a step, or of one load of a strip set, or of sets that differ.
      @param {Step} step */
  const fieldOf = ({ o, strip, part = 1, alike = 0 }) =>
    'load.' + o + (strip && part > 1 && !app.now.doors[o] ? '.strip' + part : alike ? '.alike' + alike : '');

  /** One of the sets that differ, as loads.js makes them; undefined where all have one load, or none is known.
      @param {Step} step */
  function oneOf({ o, alike }) {
    const { recipe, me, lists } = known(o) || {};
    return recipe && alike !== undefined ? loads.series(recipe, me, lists)[alike] : undefined;
  }

  /** What the page knows of a load. A variant that looks for no best of today leaves it to effort. */
  function known(order) {
    const noTop = app.slots[order].v?.[app.now.vary]?.top === 0;
    return noTop && !page.hasOwn(order) ? undefined : page.known(order);
  }

  /** Is it a load that may be help as well, with the exercise that is done?
      @param {string} name  of its field, 'load.' and the order first */
  function onBody(name) {
    const [kind, order] = name.split('.');
    const { d = {}, ...slot } = app.slots[order] || {};
    return kind === 'load' && !!(d[app.now.doors[order]] || slot).j;
  }

  /** A typed load in grams: undefined where nothing was typed, null where it is no load; 0 is the body
      alone. */
  function grams(name) {
    if (!typed(name).trim()) return undefined;
    const found = toGrams(typed(name), units) === 0 ? 0 : mine.lifted(typed(name), units);
    if (found === undefined) return null;
    if (found && onBody(name) && !typed('way.' + name)) return null; // nobody said which
    return found && typed('way.' + name) === 'help' ? -found : found;
  }

  /** Today's top set in grams, or undefined. */
  const top = order => grams('top.' + order) || undefined;

  /** The load of a door that was taken, where the member's numbers decide it.
      @param {Step} step
      @param {string} key
      @returns {Load | null} */
  function ofDoor(step, key) {
    const { recipe = {}, me, lists, load: heaviest = null } = known(step.o) || {};
    const load = oneOf(step)?.load ?? heaviest;
    const [, door] = (recipe.d || []).find(([place]) => lists.door_keys[place] === key) || [];
    if (!door || (!load && (door.z !== undefined || door.f !== undefined))) return null;
    const found = loads.door(door, load, me, lists);
    return found && found.need === undefined ? found : null;
  }

  /** The attempts of a test so far: [{place, low, high, grams, good}], `good` undefined where it is
      still to come, `low` and `high` loads or undefined. */
  function attempts(order) {
    const { list, now } = app;
    const { recipe, me, lists } = known(order) || {};
    const ladder = recipe && recipe.l ? ladderOf(recipe, me, lists) : null;
    /** @type {{low?: Load, high?: Load} | null} */
    let next = ladder ? { low: ladder.first, high: ladder.first } : {};
    /** @type {number | null} */
    let best = null;
    /** @type {number | null} */
    let least = null;
    return [...list.keys()].filter(place => list[place].o === order && list[place].attempt).map(place => {
      const { low, high } = next || {};
      const own = grams(trying(order, place));
      const taken = own || (low && low.grams !== null ? low.grams : undefined);
      const mark = now.marks[place];
      const good = mark === 'done' ? true : mark === 'miss' ? false : undefined;
      if (good === undefined) return { place, low, high, grams: taken, good };
      if (taken !== undefined) {
        if (good) best = Math.max(best ?? taken, taken);
        else least = Math.min(least ?? taken, taken);
        if (least !== null && best !== null && least <= best) least = null; // lifted since
      }
      next = ladder && taken !== undefined ? nextAttempt(recipe, me, lists, best, least, good) : {};
      return { place, low, high, grams: taken, good };
    });
  }

  /** The load of a step: {load} as loads.js makes them, or {grams} where a number was typed, or {}.
      @returns {{load?: Load | Need | null, grams?: number}} */
  function of(step, place) {
    const { o, kind } = step;
    if (kind === 'top') return { grams: top(o) };
    if (step.attempt) return attempts(o).find(one => one.place === place) || {};
    const door = app.now.doors[o];
    const own = grams(fieldOf(step));
    if (typeof own === 'number') return { grams: own };
    if (door) return { load: ofDoor(step, door) };
    if (step.strip && step.part > 1) return { grams: strips(o)?.[step.part - 1]?.grams };
    const { recipe, me, lists, load } = known(o) || {};
    if (recipe && recipe.t && top(o)) return { load: mine.ofToday(recipe, me, lists, top(o)) };
    return { load: oneOf(step)?.load ?? load };
  }

  /** The same in grams; undefined where nobody knows. */
  function gramsOf(step, place) {
    const { load, grams: found } = of(step, place);
    if (found !== undefined) return found;
    if (!load || load.need !== undefined || load.grams === null) return undefined;
    return load.grams || load.scale ? load.grams : undefined;
  }

  /** Loads of a strip set, the first of them today's: what was typed, or follows today's top set, or is
      planned; null where they are not known. */
  function strips(order) {
    const { recipe, me, lists, load } = known(order) || {};
    if (!recipe || recipe.c === undefined) return null;
    const own = grams('load.' + order);
    const body = bodyOf(recipe, me);
    let first = load;
    if (typeof own === 'number' && body !== null) first = achieve(own * 1000, scaleOf(lists, recipe.s), body, own, lists);
    else if (recipe.t && top(order)) first = mine.ofToday(recipe, me, lists, top(order));
    if (!first || first.need !== undefined || (typeof own === 'number' && first.grams !== own)) return null;
    return stripsOf(recipe, first, lists);
  }

  return { units, known, grams, top, trying, fieldOf, attempts, of, oneOf, gramsOf, strips, ofDoor };
};

export { today };
