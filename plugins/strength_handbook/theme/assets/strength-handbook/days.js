/* Which week and session a day is: pure functions, the clock is handed in.

   A day is a whole number, counted in local calendar days: neither the hour nor summer time moves
   it. A program is the content of a block `sh-days` (pages/tools_html.py). */
import * as store from './store.js';

/** @typedef {[id: string, title: string, day: number, known: number]} Planned
    @typedef {object} Program
    @property {string} id
    @property {string} at
    @property {string | null} [start]
    @property {number} first
    @property {number} last
    @property {[first: number, last: number, sessions: Planned[], minutes: number[][]][]} runs
    @property {[wave: string, weeks: number][]} waves
    @typedef {{title: string, day: number, week: number, minutes: number, at: string, log: string,
      optional: boolean, variants: boolean}} Session */

const DAY = 86400000;

/** The local calendar day of a moment.
    @param {Date} moment */
const number = moment =>
  Date.UTC(moment.getFullYear(), moment.getMonth(), moment.getDate()) / DAY;
/** @param {number} day */
const iso = day => new Date(day * DAY).toISOString().slice(0, 10);
/** @param {number} day */
const weekday = day => (((day + 3) % 7) + 7) % 7; // day 0, 1 January 1970, was a Thursday
/** @param {number} day */
const monday = day => day - weekday(day);

/** The day of a text such as 2027-01-04; null if the calendar has none such.
    @param {string} text */
function parse(text) {
  const day = Date.parse(text + 'T00:00Z') / DAY;
  return Number.isInteger(day) && iso(day) === text ? day : null;
}

/** A day in words: its weekday, and what else is asked for.
    @param {number} day
    @param {Intl.DateTimeFormatOptions} [more] */
const said = (day, more) => new Date(day * DAY).toLocaleDateString('en-GB',
  { timeZone: 'UTC', weekday: 'long', ...more });
/** @param {number} day */
const long = day => said(day, { day: 'numeric', month: 'long', year: 'numeric' });
/** A day that is kept as a text, in words; the text itself where it is none.
    @param {string} text */
function written(text) {
  const day = parse(text);
  return day === null ? text : long(day);
}

/** @param {Program} program
    @param {number} week */
const weekAt = (program, week) => `${program.at}week-${String(week).padStart(2, '0')}/`;

/** Sessions of a week by weekday, each with its address.
    @param {Program} program
    @param {number} week
    @returns {Session[]} */
function sessions(program, week) {
  const run = program.runs.find(([first, last]) => first <= week && week <= last);
  if (!run) return [];
  const minutes = run[3][week - run[0]];
  return run[2].map(([id, title, day, known], place) => ({
    title, day, week, minutes: minutes[place], at: weekAt(program, week) + id + '/', log: `log/${program.id}/${week}/${id}`,
    optional: (known & 1) > 0, variants: (known & 2) > 0,
  })).sort((a, b) => a.day - b.day);
}

/** The name of the wave that a week is in.
    @param {Program} program
    @param {number} week */
function wave(program, week) {
  let last = program.first - 1;
  for (const [name, weeks] of program.waves) {
    last += weeks;
    if (week <= last) return name;
  }
  return '';
}

/** Where a day lies in a program that began on a Monday: {when, week, today, next}; `today` has
    the sessions of that day, `next` is the first one after it.
    @param {Program} program
    @param {number} start
    @param {number} day */
function find(program, start, day) {
  const week = Math.floor((day - start) / 7) + 1;
  const { first, last } = program;
  const here = weekday(day);
  const today = sessions(program, week).filter(one => one.day === here);
  let next = sessions(program, week).find(one => one.day > here);
  for (let later = Math.max(week + 1, first); !next && later <= last; later += 1) {
    [next] = sessions(program, later);
  }
  return { when: week < first ? 'before' : week > last ? 'after' : 'in', week, today, next };
}

/** The Monday of week 1 for somebody who is in a week on a day.
    @param {number} week
    @param {number} day */
const startFor = (week, day) => monday(day) - 7 * (week - 1);

/** The member's own Monday of week 1 as a text, if one is kept.
    @param {Pick<Program, 'id'>} program
    @returns {string | undefined} */
const own = program => store.get('start/' + program.id, text => parse(text) !== null);

/** The Monday of week 1: the member's own, else the program's, else null.
    @param {Pick<Program, 'id' | 'start'>} program */
function start(program) {
  const day = parse(own(program) || program.start || '');
  return day === null ? null : monday(day);
}

export { number, parse, iso, monday, said, long, written, sessions, weekAt, wave, find, startFor, own, start };
