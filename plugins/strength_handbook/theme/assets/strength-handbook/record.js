/* What is kept of a session that is over, as log/<program>/<week>/<session>; a second time in the same
   week has /2 behind it, and nothing is written over.

     form     2
     day      'YYYY-MM-DD' of the first tap, by the phone's clock
     variant  which of the session's written variants was done, counted from 0; null for all of it
     slots    by order: {exercise: id or null, door: key of what was done instead or null, of: sets
              asked, sets: [{reps, seconds, metres, grams, top, missed}], times, body}. Sets stand there
              once they are done, both sides as one; what is not known is left out. Grams as the bar,
              the hand or the belt has them, below 0 where weight was taken off. A strip set has
              {strips: [{reps, grams}]}, one for each load that was lifted, and `reps` beside it only
              where they are known in all. `times` says how often a load counts in a repetition, for each
              hand and side, `body` the grams of the body that go along; without `times` nobody knows
     effort   0 to 10, or null
     note     at most 60 letters

   The form before had {sets: {A: {done, of, load: 'words', tries: 'good, missed'}}}: it is read as form 2
   and kept as it is. Logs of form 2 from before strips were told apart have one load for such a set.
   No page in here. */
import * as days from './days.js';
import * as store from './store.js';
import { toGrams } from './whole-numbers.js';

/** @typedef {{reps?: number, grams?: number}} Lifted  repetitions with one load
    @typedef {Lifted & {seconds?: number, metres?: number, top?: boolean, missed?: boolean, strips?: Lifted[]}} DoneSet
    @typedef {{exercise: string | null, door: string | null, of: number, sets: DoneSet[], times?: number,
      body?: number}} DoneSlot
    @typedef {{form: 2, day: string, variant: number | null, slots: Record<string, DoneSlot>, effort: number | null,
      note: string}} Log
    @typedef {{program: string, week: number, session: string, time: number}} Place
    @typedef {{day: string, exercise: string, load: number | null, reps: number | null, effort: number | null,
      note: string, test?: string, seconds?: number | null, metres?: number | null}} ByHand */

const MOST = 60;
const DAY = /^\d{4}-\d\d-\d\d$/;
const PREFIX = 'log/';

/** @param {unknown} value */
const isCount = value => Number.isInteger(value) && Number(value) >= 0 && Number(value) < 1000;
/** @param {unknown} value */
const isGrams = value => value === undefined || (Number.isInteger(value) && Math.abs(Number(value)) <= 1e6);
/** @param {any} value */
const isEffort = value => value === null || (typeof value === 'number' && value >= 0 && value <= 10);
/** @param {any} one
    @returns {boolean} */
const isLifted = one => isGrams(one.grams) && [one.reps, one.seconds, one.metres].every(value =>
  value === undefined || (value >= 0 && value < 100000));
/** @param {any} one */
const isSet = one => isLifted(one) && (one.strips === undefined ||
  (Array.isArray(one.strips) && one.strips.length > 0 && one.strips.length <= 20 && one.strips.every(isLifted)));
/** @param {any} one */
const isSlot = one => isCount(one.of) && Array.isArray(one.sets) && one.sets.length <= 100 &&
  one.sets.every(isSet) && [one.exercise, one.door].every(id => id === null || typeof id === 'string') &&
  (one.times === undefined || isCount(one.times)) && isGrams(one.body);
/** @param {any} value */
const hasRest = value => DAY.test(value.day) && isEffort(value.effort) && typeof value.note === 'string';

/** Grams of a load as the form before had it in words; undefined for none.
    @param {string} words */
function gramsOf(words) {
  const found = /^\+?(\d+(?:\.\d+)?)\s(kg|lb)(.*)/.exec(words);
  if (!found) return undefined;
  const grams = toGrams(found[1] + found[2], found[2]);
  if (grams === null) return undefined;
  return /^ of help/.test(found[3]) ? -grams : grams;
}

/** A slot of the form before. Loads of sets that nobody did are no loads.
    @param {any} slot
    @returns {DoneSlot} */
function converted({ done, of, load, tries = '' }) {
  if (!isCount(done) || !isCount(of) || done > 100 || typeof load !== 'string') throw new RangeError('no slot');
  const grams = gramsOf(load);
  const missed = String(tries).split(', ').map(word => word === 'missed');
  return { exercise: null, door: null, of, sets: [...Array(done).keys()].map(place => ({
    ...(grams === undefined ? {} : { grams }), ...(missed[place] ? { missed: true } : {}),
  })) };
}

/** A kept value in form 2; null where it is none of ours.
    @param {any} value
    @returns {Log | null} */
function read(value) {
  try {
    if (!hasRest(value)) return null;
    if (value.form === 2) {
      const fine = Object.values(value.slots).every(isSlot) &&
        (value.variant === null || isCount(value.variant));
      return fine ? value : null;
    }
    if (value.form !== undefined) return null;
    const { day, effort, note } = value;
    const slots = Object.fromEntries(
      Object.entries(value.sets).map(([order, one]) => [order, converted(one)]));
    return { form: 2, day, variant: null, slots, effort, note };
  } catch {
    return null;
  }
}

/** @param {unknown} value */
const isLog = value => read(value) !== null;

/** Program, week, session and which time of a key; null where it is no log's.
    @param {string} key */
function place(key) {
  const found = /^log\/([^/]+)\/(\d{1,4})\/([^/]+?)(?:\/(\d{1,3}))?$/.exec(key);
  return found && { program: found[1], week: +found[2], session: found[3], time: +(found[4] || 1) };
}

/** Every log of the phone, in no order.
    @returns {{key: string, at: Place, log: Log}[]} */
const all = () => store.keys(PREFIX).flatMap(key => {
  const at = place(key);
  const log = at && read(store.get(key, isLog));
  return at && log ? [{ key, at, log }] : [];
});

/** @param {string} at */
const base = at => PREFIX + at;

/** The logs of one session in one week.
    @param {string} at */
const of = at => all().filter(one => one.key === base(at) || one.key.startsWith(base(at) + '/'));

/** A key that is free, for another time in the same week.
    @param {string} at */
function free(at) {
  const taken = new Set(store.keys(base(at)));
  let time = 1;
  const named = () => base(at) + (time > 1 ? '/' + time : '');
  while (taken.has(named())) time += 1;
  return named();
}

/** Every load of a set with its repetitions: of a strip set each load, else the one.
    @param {DoneSet} set
    @returns {Lifted[]} */
const loads = set => set.strips ?? [set];

/** Repetitions of a set in all; undefined where they are not known.
    @param {DoneSet} set
    @returns {number | undefined} */
const repsOf = ({ reps, strips = [] }) => reps ?? (strips.length && strips.every(one => one.reps !== undefined)
  ? strips.reduce((all, one) => all + (one.reps ?? 0), 0) : undefined);

/** Repetitions times what each moved, strip by strip, in grams; undefined where anything of it is not known.
    Missed ones moved nothing.
    @param {Pick<DoneSlot, 'sets' | 'times' | 'body'>} slot
    @returns {number | undefined} */
function tonnage({ sets, times, body = 0 }) {
  const every = sets.filter(set => !set.missed).flatMap(loads);
  if (!times || !every.length) return undefined;
  let all = 0;
  for (const { reps, grams } of every) {
    if (reps === undefined || grams === undefined) return undefined;
    all += reps * times * (grams + body);
  }
  return all;
}

/** The last time that an exercise was done with a load: {day, sets}; undefined where there is none.
    @param {string} exercise */
function last(exercise) {
  const found = all().flatMap(({ log }) => Object.values(log.slots)
    .filter(one => one.exercise === exercise && one.sets.some(set => loads(set).some(({ grams }) => grams)))
    .map(one => ({ day: log.day, sets: one.sets })));
  return found.sort((one, other) => (one.day < other.day ? 1 : -1))[0];
}

/** Sets done and asked.
    @param {Log} log */
function sum({ slots }) {
  const every = Object.values(slots);
  return { done: every.reduce((total, one) => total + one.sets.length, 0),
    of: every.reduce((total, one) => total + one.of, 0) };
}

/** The heaviest set that was lifted, in grams; undefined without a load.
    @param {{sets: DoneSet[]}} slot */
function heaviest({ sets }) {
  const lifted = sets.filter(({ missed }) => !missed).flatMap(loads)
    .flatMap(({ grams }) => (grams === undefined ? [] : [grams]));
  return lifted.length ? Math.max(...lifted) : undefined;
}

/* Entries by hand: {day, exercise: id or words, load: grams, reps, effort, note}, null where nothing is
   said; of a test whose result is no load also {test: its words, seconds or metres}. */
const HAND = 'by-hand';
/** @param {any[]} entries */
const isHand = entries => entries.every(one => DAY.test(one.day) && days.parse(one.day) !== null &&
  typeof one.exercise === 'string' && typeof one.note === 'string' &&
  [one.load, one.reps, one.effort, one.seconds ?? null, one.metres ?? null].every(value => value === null || value >= 0));
/** @returns {ByHand[]} */
const byHand = () => store.get(HAND, isHand) || [];
/** @param {ByHand[]} entries */
const keepByHand = entries => store.set(HAND, entries);

export { MOST, isLog, read, place, all, of, free, last, sum, loads, repsOf, tonnage, heaviest, byHand, keepByHand };
