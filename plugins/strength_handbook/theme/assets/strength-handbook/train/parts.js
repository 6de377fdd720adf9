/* What several views of session mode say and do. A view is {head, inside, more}: a heading, what stands
   under it, and what may be opened below; it also sets the large button. */
import { find, on, make, some } from '../dom.js';
import * as words from '../load-words.js';
import * as mine from '../mine.js';
import { toGrams } from '../whole-numbers.js';
import * as steps from './steps.js';

/** @import { App } from './types.js' */

/** @param {any} words
    @param {string} [name] */
const line = (words, name) => words && make('p', name, words);

/** @param {App} app */
const parts = app => {
  /** @param {string} order */
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
      `wrong` gives what is wrong with a text, or nothing; `known` is what counts where it is empty.
      @param {string} name
      @param {string} label
      @param {((text: string) => any) | null} wrong
      @param {any} [known]
      @param {object} [more] */
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

  /** @param {string} text */
  const noLoad = text => text.trim() && toGrams(text, app.data.units) !== 0 && !mine.lifted(text, app.data.units) &&
    'Write a number, such as 72.5.';

  /** A field for a load; the one that is known stands in it, and counts where it is left empty.
      @param {string} name
      @param {string} label
      @param {number} [known]  grams */
  const loadField = (name, label, known) => field(name, label, noLoad,
    known === undefined ? '' : words.bare(Math.abs(known), app.data.units), { inputMode: 'decimal' });

  /** The same for a load on top of body weight, which may also be help: that is said beside it, and has to be
      said where nobody knows it.
      @param {string} name
      @param {string} label
      @param {number} [known]  grams, below zero for help */
  const bodyField = (name, label, known) => {
    const way = 'way.' + name;
    const chosen = app.typed[way] || (known === undefined ? '' : known < 0 ? 'help' : 'belt');
    const select = make('select', '', ...Object.entries({ '': '…', belt: 'on the belt', help: 'of help' }).map(([value, words]) =>
      value || !chosen ? make('option', { value, selected: value === chosen }, words) : ''));
    /** @param {string} text */
    const unsaid = text => noLoad(text) || (toGrams(text, app.data.units) && !select.value && 'Choose: on the belt, or of help.');
    const shown = known === undefined ? '' : words.bare(Math.abs(known), app.data.units);
    const whole = field(name, label, unsaid, shown, { inputMode: 'decimal' });
    const input = find('input', whole);
    // What was chosen by itself counts as said, once a number is typed.
    on(input, 'input', () => select.value && app.type(way, select.value));
    on(select, 'change', () => {
      app.type(way, select.value);
      input.dispatchEvent(new Event('input'));
    });
    return [whole, make('label', '', 'It is ', select)];
  };

  /** One or the other, by what the exercise is loaded with.
      @param {boolean} body
      @param {string} name
      @param {string} label
      @param {number} [known]  grams, below zero for help */
  const anyLoad = (body, name, label, known) => (body ? bodyField(name, label, known) : [loadField(name, label, known)]);

  return { called, heading, done, whole, field, anyLoad };
};

export { line, parts };
