/* Session mode after a set of which nobody knows how many repetitions it had; of a strip set each load is
   asked for. */
import { make, button } from '../../dom.js';
import * as say from '../../load-words.js';
import { line } from '../parts.js';

/** @import { App } from '../types.js' */

const MANY = 12;

/** @param {App} app */
const countViews = app => ({
  /** How many there were in the set that was done last; the rest runs meanwhile. */
  count() {
    const [place, ...others] = app.counting;
    const step = app.list[place];
    const { open, each = [0, 0], reps, strip, part = 1, parts = 1 } = step;
    const grams = strip ? app.today.gramsOf(step, place) : undefined;
    const [floor, cap] = open || [0, 0];
    // Of an open set from its floor; else fewer than were asked.
    const most = open ? cap || floor + MANY : each[1] || reps || MANY;
    const low = open ? Math.max(0, floor - 3) : 0;
    const next = others.length ? 'count' : 'step';
    const counted = n => {
      app.counting = others;
      app.act('reps', place, next, n);
    };
    app.bar('I don’t know', () => {
      app.counting = others;
      app.show(next, true);
    });
    return {
      head: ['How many repetitions?'],
      inside: [
        strip && make('p', 'sh-train-part', `Load ${part} of ${parts}`,
          grams === undefined ? '' : `, ${say.mass(grams, app.data.units)}`),
        line('Whole and good ones, each side where there are two.'),
        make('div', 'sh-train-efforts', ...[...Array(most - low + 1).keys()].map(n =>
          button(`${low + n}`, () => counted(low + n), 'sh-train-number')))],
    };
  },
});

export { countViews };
