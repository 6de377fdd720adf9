/* What several views of session mode say and do. A view is {head, inside, more}: a heading, what stands
   under it, and what may be opened below; it also sets the large button. */
import { on, make, some } from '../dom.js';
import * as words from '../load-words.js';
import * as mine from '../mine.js';
import { toGrams } from '../whole-numbers.js';
import * as steps from './steps.js';

/** @import { App } from './types.js' */

const line = (words, name) => words && make('p', name, words);

/** @param {App} app */
const parts = app => {
  const called = order => `${order} ${app.slots[order].name}`;
  const heading = () => [make('span', 'sh-order', app.step.o), ' ' + app.slots[app.step.o].name];
  /** A set that is over, and the question how many there were; the rest runs from the tap. */
  const counted = () => {
    const { at, doors } = app.now;
    app.counting = app.step.strip && !doors[app.step.o] ? steps.strips(app.list, at) : [at];
    app.act('done', app.now.at, 'count');
  };
  /** A strip set that ends before its last load: how many there were with the load that is on; with each
      before it too, where the plan says no number. */
  const ended = () => {
    const { at } = app.now;
    const [fewest, most] = app.step.each || [];
    app.counting = fewest && fewest === most ? [at] : steps.strips(app.list, at).filter(one => one <= at);
    app.act('set', at, 'count');
  };
  /** @param {string} words
      @param {string} [besides]
      @param {'count' | 'set' | 'miss'} [what]  that is done by the button besides */
  const done = (words, besides, what = 'miss') => app.bar(
    words, app.step.open && app.step.last ? counted : () => app.act('done', app.now.at),
    besides, { count: counted, set: ended, miss: () => app.act('miss', app.now.at) }[what]);
  /** Exercise and set in one line, for ears. */
  const whole = () => some(', ', app.step.o && called(app.step.o), steps.name(app.step));

  /** A field that is kept as it is typed, and marked where it says nothing that can be used.
      `wrong` gives what is wrong with a text, or nothing; `known` is what counts where it is empty. */
  const field = (name, label, wrong, known = '', more = {}) => {
    const value = app.typed[name] ?? known;
    const input = make('input', { autocomplete: 'off', value, placeholder: known, maxLength: 60, ...more });
    const says = make('span', 'sh-error');
    const check = () => {
      const text = wrong ? wrong(input.value) : '';
      says.textContent = text || '';
      input.setAttribute('aria-invalid', !!text);
    };
    on(input, 'input', () => {
      app.type(name, input.value);
      check();
    });
    check();
    return make('label', '', label, ' ', input, says);
  };

  const noLoad = text => text.trim() && toGrams(text, app.data.units) !== 0 && !mine.lifted(text, app.data.units) &&
    'Write a number, such as 72.5.';

  /** A field for a load; the one that is known stands in it, and counts where it is left empty. */
  const loadField = (name, label, known) => field(name, label, noLoad,
    known === undefined ? '' : words.bare(Math.abs(known), app.data.units), { inputMode: 'decimal' });

  return { called, heading, done, whole, field, loadField };
};

export { line, parts };
