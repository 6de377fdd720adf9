/* Everybody at one bar today: whose loads and plates, what changes from one to the next, whether it
   fits into the interval.

   at(block, lists)  null where nobody shares this bar, {missing: names} where numbers are, or
                     {turns, moves, alone, sets, round, every, apart}: turns in order, each
                     {name, load, top}, with the plates of the common plan; round: seconds until all
                     have lifted; apart: that is longer than the interval, so everybody takes a bar
   change(from, to)  {unhang, off, on, hang}: what comes off first, plates, what goes on last */
import { json } from '../dom.js';
import { tools } from '../later.js';
import * as words from '../load-words.js';
import * as mine from '../mine.js';
import { onTopOf } from '../on-top.js';
import { me, others } from '../people.js';
import { plateChange } from '../ramps.js';
import * as shareBar from './share-bar.js';

/** @import { Lists, Load, Need, OnTop, Scale, Units } from '../types.js'
    @typedef {{name: string, load: Load, top: OnTop | null}} Turn
    @typedef {{unhang: string, off: number[], on: number[], hang: string}} Change
    @typedef {{turns: Turn[], moves: number, alone: number, sets: number, round: number, every: number,
      apart: boolean}} Plan
    @typedef {{missing: string[]} & (Plan | Partial<Record<keyof Plan, undefined>>)} Shared */

const NAMES = ['me', 'B', 'C', 'D'];
const known = new Map(); // plans by what they follow from: pages ask again and again
/** What hangs on the bar besides plates, in words; empty where nothing does.
    @param {Turn | null | undefined} turn */
const hung = turn => (turn && turn.top && turn.top.hangs ? turn.top.what : '');

/** From one lifter, or from the empty bar, to the next. Bands and chains come off before the first
    plate moves and go on after the last.
    @param {Turn | null | undefined} from
    @param {Turn} to
    @returns {Change} */
function change(from, to) {
  const { off, on } = plateChange(from ? from.load.parts : [], to.load.parts);
  const [before, after] = [hung(from), hung(to)];
  const stays = !off.length && !on.length && before === after;
  return { unhang: stays ? '' : before, off, on, hang: stays ? '' : after };
}

/** Seconds from the last repetition of one to the first of the next; house rules.
    @param {Change} change
    @param {{people: number, plate: number, top: number}} rules */
function seconds({ unhang, off, on, hang }, { people, plate, top }) {
  return people + plate * (off.length + on.length) + top * [unhang, hang].filter(Boolean).length;
}

/** @param {Turn[]} ready
    @param {number} sets
    @param {Scale} scale
    @returns {ReturnType<typeof shareBar.plan>} */
function plan(ready, sets, scale) {
  const own = ready.map(({ load }) => load.parts);
  const key = JSON.stringify([scale.plates, scale.sleeve, own, sets]);
  if (!known.has(key)) known.set(key, shareBar.plan(scale, own, sets));
  return known.get(key);
}

/** @param {HTMLElement} block
    @param {Lists} lists
    @returns {Shared | null} */
function at(block, lists) {
  /** @type {HTMLElement | null} */
  const slot = block.closest('[data-sets]');
  const { people } = others();
  if (!slot || !people.length) return null;
  const recipe = json(block);
  const all = [me(), ...people].map((one, place) => {
    const load = one && mine.own(recipe, one, lists);
    return { name: NAMES[place], one, load };
  });
  const ready = all.flatMap(({ name, one, load }) => (one && load && load.need === undefined && Number(load.grams) > 0
    ? [{ name, load, top: onTopOf(recipe, load, one, lists) }] : []));
  const missing = all.filter(({ load }) => !load || load.need !== undefined).map(({ name }) => name);
  const scale = ready[0]?.load.scale;
  if (ready.length < 2 || !scale?.plates) return { missing };
  const [sets, every, work] = ['sets', 'every', 'work'].map(name => Number(slot.dataset[name] ?? 0));
  const { order, stacks, moves, alone } = plan(ready, sets, scale);
  const turns = order.map(place =>
    ({ ...ready[place], load: { ...ready[place].load, parts: stacks[place] } }));
  const round = turns.reduce((sum, turn, place) =>
    sum + work + seconds(change(turns.at(place - 1), turn), lists.swap), 0);
  return { turns, moves, alone, sets, round, every, apart: !!every && round > every, missing };
}

/** My load with the plates of the common plan; as it was where I use a bar alone.
    @param {HTMLElement} block
    @param {Load | Need | null} load
    @param {Lists} lists
    @returns {Load | Need | null} */
function sharedLoad(block, load, lists) {
  if (!load || load.need !== undefined || Number(load.grams) <= 0) return load;
  const shared = at(block, lists);
  const turn = shared?.apart ? undefined : shared?.turns?.find(({ name }) => name === 'me');
  return turn ? { ...load, parts: turn.load.parts } : load;
}

/** A change in words: ``bands 13-a and 13-b off first. Then plates off 2.5, on 10 a side. Then …``.
    @param {Change} change
    @param {Units} units */
function said({ unhang, off, on, hang }, units) {
  const moved = words.moves({ off, on }, units);
  const lines = [
    unhang && unhang + ' off first',
    moved && (unhang ? 'Then plates ' : 'plates ') + moved + ' a side',
    hang && (unhang || moved ? 'Last ' : '') + hang + ' on',
  ].filter(Boolean);
  return lines.length ? lines.join('. ') : 'no change';
}

tools.sharedLoad = sharedLoad;

export { at, change, sharedLoad, said };
