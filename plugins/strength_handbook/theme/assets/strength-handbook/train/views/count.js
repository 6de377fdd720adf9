/* Session mode after a set of which nobody knows how many repetitions it had; of a strip set each load is
   asked for. */
import { make, button } from '../../dom.js';
import * as say from '../../load-words.js';
import { line } from '../parts.js';

/** @import { App } from '../types.js' */

const MANY = 12;

/** @param {App} app */
const countViews = app => {
  /** As many as there were in a time: too many to choose from.
      @param {number} people
      @param {(n: number) => void} counted
      @param {() => void} unknown */
  function inTime(people, counted, unknown) {
    const input = make('input', { inputMode: 'numeric', autocomplete: 'off', maxLength: 3 });
    const says = make('span', 'sh-error');
    app.bar('That many', () => {
      if (/^\d+$/.test(input.value.trim())) return counted(Number(input.value));
      says.textContent = 'Write a whole number, such as 24.';
      return input.focus();
    }, 'I don’t know', unknown);
    return {
      head: ['How many repetitions?'],
      inside: [
        line(people > 1 ? 'Your own, not your partner’s: whole and good ones.' : 'Whole and good ones, each side where there are two.'),
        make('p', 'sh-field', make('label', '', 'Repetitions ', input, says))],
    };
  }

  return {
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
      const unknown = () => {
        app.counting = others;
        app.show(next, true);
      };
      if (step.many) return inTime(step.many, counted, unknown);
      app.bar('I don’t know', unknown);
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
  };
};

export { countViews };
