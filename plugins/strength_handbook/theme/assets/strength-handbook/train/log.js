/* What a session comes to, in the form that is kept (record.js): from the taps and from what was typed. */
import * as days from '../days.js';
import * as record from '../record.js';
import * as steps from './steps.js';
import * as walk from './walk.js';

/** @import { App, Slot, Step } from './types.js'
    @import { DoneSet, DoneSlot, Lifted, Log } from '../record.js' */

/** Repetitions set by set as they were typed: numbers with anything between; null where one is none. */
function counts(text) {
  const words = text.trim().split(/[\s,;·+]+/).filter(Boolean);
  return words.every(word => /^\d{1,3}$/.test(word)) ? words.map(Number) : null;
}

/** Repetitions of a set as planned, or of one load of a strip set; undefined where the plan leaves them open.
    @param {Step} step
    @param {Slot} slot */
function planned({ each, reps }, slot) {
  if (slot.c) return slot.c[0].reduce((/** @type {number} */ sum, /** @type {number} */ one) => sum + one, 0);
  if (!each) return reps || undefined;
  return each[0] === each[1] ? each[0] : undefined;
}

/** A strip set that is over: each load that was lifted. `typed` has the repetitions load by load, of the
    sets before as well; what of it is this set's is taken off its front.
    @param {App} app
    @param {number} place  of its last step
    @param {number[]} typed
    @param {number} [total]  as it was typed
    @returns {DoneSet} */
function stripSet(app, place, typed, total) {
  const lifted = steps.strips(app.list, place).filter(one => !app.now.cut[one]);
  /** @type {Lifted[]} */
  const strips = lifted.map(one => {
    const reps = typed.shift() ?? app.now.reps[one] ?? planned(app.list[one], {});
    const grams = app.today.gramsOf(app.list[one], one);
    return { ...(reps === undefined ? {} : { reps }), ...(grams === undefined ? {} : { grams }) };
  });
  const { all: [fewest, most] = [], parts } = app.list[place];
  // As planned in all, where the set was done to its end and nobody counted.
  const asked = fewest === most && lifted.length === parts ? fewest : undefined;
  const all = strips.some(one => one.reps !== undefined) ? undefined : total ?? asked;
  return { ...(all === undefined ? {} : { reps: all }), strips };
}

/** Seconds of a set by the clock, of the side or part that was ended first; undefined where the clock was
    ended before it began: nobody knows then.
    @param {App} app
    @param {number} place  of its last step */
function seconds({ list, now }, place) {
  const { work, o, n } = list[place];
  if (!work) return undefined;
  const held = [...list.keys()].filter(one => list[one].kind === 'set' && list[one].o === o && list[one].n === n)
    .map(one => now.held[one] ?? work);
  return Math.min(...held) || undefined;
}

/** One set that is over.
    @param {App} app */
function set(app, step, place, typed) {
  const slot = app.slots[step.o];
  const door = app.now.doors[step.o]; // what it asks stands in its words only
  const mark = app.now.marks[place];
  const counted = typed ?? app.now.reps[place];
  const reps = counted ?? (step.kind === 'top' ? step.reps : step.open || door ? undefined : planned(step, slot));
  const grams = app.today.gramsOf(step, place);
  const time = door ? undefined : seconds(app, place);
  return {
    ...(reps === undefined || (mark === 'miss' && counted === undefined) ? {} : { reps }),
    ...(time === undefined ? {} : { seconds: time }),
    ...(step.metres && !door ? { metres: step.metres } : {}),
    ...(grams === undefined ? {} : { grams }),
    ...(step.kind === 'top' ? { top: true } : {}),
    ...(mark === 'miss' ? { missed: true } : {}),
  };
}

/** Places of whole sets that are over, by order.
    @param {App} app
    @param {string} order */
const over = (app, order) => [...app.list.keys()].filter(place => app.list[place].o === order &&
  app.list[place].last && ['done', 'miss'].includes(app.now.marks[place] ?? ''));

/** How often a load counts in a repetition, and what of the body goes along; empty where nobody knows.
    @param {App} app
    @param {string} order */
function moved(app, order) {
  const { f = [1, 0], b } = app.slots[order];
  if (!f || app.now.doors[order]) return {};
  const [hands, share] = f;
  const body = share ? app.today.known(order)?.me.body : 0;
  if (body === undefined) return {};
  return { times: hands * (b ? 2 : 1), ...(share ? { body: Math.round(body * share / 1e8) } : {}) };
}

/** Sets by order: {A: {exercise, door, of, sets}}; `of` is what the variant asks, with what was
    taken back in. What it leaves out is there only where `left` says so.
    @param {App} app
    @param {boolean} [left]
    @returns {Record<string, DoneSlot>} */
function slots(app, left) {
  const { list, now, data } = app;
  return Object.fromEntries(data.slots.map(({ o, i, d = {} }) => {
    const door = now.doors[o] || null;
    const asked = list.filter((step, place) => step.o === o && step.last &&
      (!walk.beyond(step, now.vary) || now.marks[place] !== 'out')).length;
    const typed = counts(app.typed['reps.' + o] || '') || [];
    const strips = counts(app.typed['strips.' + o] || '') || [];
    const sets = over(app, o).map((place, number) => (list[place].strip && !door ? stripSet(app, place, strips, typed[number])
      : set(app, list[place], place, typed[number])));
    const exercise = (door && d[door] ? d[door].i : i) || null;
    const weighed = sets.some(one => record.loads(one).some(({ grams }) => grams !== undefined));
    return [o, { exercise, door, of: Math.max(asked, sets.length), sets, ...(weighed ? moved(app, o) : {}) }];
  }).filter(([, one]) => left || one.of));
}

/** The whole of it.
    @returns {Log}
    @param {App} app */
function make(app) {
  const { effort = '', note = '' } = app.typed;
  const day = days.iso(days.number(new Date(app.acts[0]?.[2] || Date.now())));
  return {
    form: 2, day, variant: app.now.vary < 0 ? null : app.data.variants[app.now.vary]?.number ?? app.now.vary, slots: slots(app),
    effort: effort === '' ? null : Number(effort), note: note.trim().slice(0, record.MOST),
  };
}

export { counts, over, slots, make };
