/* What is kept of a session that is over: as log/<program>/<week>/<session>, such as
   log/winter/3/a-lift, and a second time in the same week takes the place of the first.

     day     'YYYY-MM-DD' of the first tap, by the phone's clock
     sets    by order: {A: {done: 4, of: 4, load: '107.5 kg = trap bar 25 + …'}}. Whole sets, both
             sides, with top set and attempts; load as it stood on the page or as the member put it
             right, '' where neither is known. Of a test also tries: 'good, missed'
     effort  0 to 10, or null
     note    at most 60 letters */
(function (site) {
  'use strict';

  const { train, days, dom: { some } } = site;
  const MOST = 60;
  const key = at => 'log/' + at;

  /** Whole sets by order, as they are kept. */
  function counted(list, { marks }) {
    const sets = {};
    list.forEach(({ o, last, attempt }, place) => {
      if (!last) return;
      const own = sets[o] = sets[o] || { done: 0, of: 0, load: train.page.load(o) };
      own.of += 1;
      if (!/done|miss/.test(marks[place])) return;
      own.done += 1;
      if (attempt) own.tries = some(', ', own.tries, marks[place] === 'done' ? 'good' : 'missed');
    });
    return sets;
  }

  /** The value itself; `at` is a moment of the day. */
  function make(at, sets, effort, note) {
    const day = days.iso(days.number(new Date(at)));
    return { day, sets, effort, note: note.trim().slice(0, MOST) };
  }

  train.log = { MOST, key, counted, make };
})(strengthHandbook);
