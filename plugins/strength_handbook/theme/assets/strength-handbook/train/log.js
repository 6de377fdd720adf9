/* What is kept of a session that is over: as log/<program>/<week>/<session>, such as
   log/winter/3/a-lift, and a second time in the same week takes the place of the first.

     day     'YYYY-MM-DD' of the first tap, by the phone's clock
     sets    by order: {A: {done: 4, of: 4, load: '107.5 kg = trap bar 25 + …'}}. Whole sets, both
             sides, with top set and attempts; load as it stood on the page, '' if it did not
     effort  0 to 10, or null
     note    at most 60 letters */
(function (site) {
  'use strict';

  const { train, days } = site;
  const MOST = 60;
  const key = at => 'log/' + at;

  /** Whole sets by order, as they are kept. */
  function counted(list, marks) {
    const sets = {};
    list.forEach(({ o, last }, place) => {
      if (!last) return;
      sets[o] = sets[o] || { done: 0, of: 0, load: train.page.load(o) };
      sets[o].of += 1;
      if (marks[place] === 'done') sets[o].done += 1;
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
