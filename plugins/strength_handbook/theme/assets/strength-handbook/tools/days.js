/* Which week and session a day is: pure functions, the clock is handed in.

   A day is a whole number, counted in local calendar days: neither the hour nor summer time moves
   it. A program is the content of a block `sh-days` (pages/tools_html.py). */
(function (site) {
  'use strict';

  const DAY = 86400000;

  /** The local calendar day of a moment. */
  const number = moment =>
    Date.UTC(moment.getFullYear(), moment.getMonth(), moment.getDate()) / DAY;
  const iso = day => new Date(day * DAY).toISOString().slice(0, 10);
  const weekday = day => (((day + 3) % 7) + 7) % 7; // day 0, 1 January 1970, was a Thursday
  const monday = day => day - weekday(day);

  /** The day of a text such as 2027-01-04; null if the calendar has none such. */
  function parse(text) {
    const day = Date.parse(text + 'T00:00Z') / DAY;
    return Number.isInteger(day) && iso(day) === text ? day : null;
  }

  const said = (day, more) => new Date(day * DAY).toLocaleDateString('en-GB',
    { timeZone: 'UTC', weekday: 'long', ...more });
  const long = day => said(day, { day: 'numeric', month: 'long', year: 'numeric' });
  const weekAt = (program, week) => `${program.at}week-${String(week).padStart(2, '0')}/`;

  /** Sessions of a week by weekday, each with its address. */
  function sessions(program, week) {
    const run = program.runs.find(([first, last]) => first <= week && week <= last);
    return (run ? run[2] : []).map(([id, title, day, known]) => ({
      title, day, week, at: weekAt(program, week) + id + '/', optional: known & 1, variants: known & 2,
    })).sort((a, b) => a.day - b.day);
  }

  /** Where a day lies in a program that began on a Monday: {when, week, today, next}; `today` has
      the sessions of that day, `next` is the first one after it. */
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

  /** The Monday of week 1 for somebody who is in a week on a day. */
  const startFor = (week, day) => monday(day) - 7 * (week - 1);

  /** The member's own Monday of week 1 as a text, if one is kept. */
  const own = program => site.store.get('start/' + program.id, text => parse(text) !== null);

  /** The Monday of week 1: the member's own, else the program's, else null. */
  function start(program) {
    const text = own(program) || program.start;
    return text ? monday(parse(text)) : null;
  }

  site.days = {
    number, parse, iso, monday, said, long, sessions, weekAt, find, startFor, own, start,
  };
})(globalThis.strengthHandbook);
