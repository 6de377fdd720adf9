/* Tests whose result is no load: seconds, metres, repetitions. What was entered stands in the log by hand,
   the last time beside the field, and where the coach knows how much such a test differs by itself, what a
   change says. On the page of test day, and at the end of a test's session.

   strengthHandbook.results.forms(exercise, sets)   the forms of an exercise's tests, with the best of the
                                                    sets that were done filled in */
import * as days from '../days.js';
import { find, on, make, button, json } from '../dom.js';
import * as record from '../record.js';
import * as store from '../store.js';
import { changed, judge } from './test-day.js';

const FIELDS = { seconds: 'seconds', metres: 'metres', repetitions: 'reps' };
const UNITS = { seconds: 's', metres: 'm', repetitions: 'repetitions' };
const MOST = 100000;

/** The last result of a test before a day; undefined without one. */
const last = ({ test, counted }, day) => record.byHand()
  .filter(one => one.test === test && one[FIELDS[counted]] > 0 && one.day < day)
  .sort((one, other) => (one.day < other.day ? 1 : -1))[0];

function form(test, start = '') {
  const field = FIELDS[test.counted];
  const unit = UNITS[test.counted];
  const input = make('input', { inputMode: 'decimal', autocomplete: 'off', maxLength: 8, value: start });
  const before = make('p', 'sh-note');
  const says = make('p');
  says.setAttribute('aria-live', 'polite');
  const today = () => days.iso(days.number(new Date()));

  /** A number as it was typed, to a tenth; null where it is none. */
  function typed() {
    const text = input.value.trim().replace(',', '.');
    const value = /^\d{1,5}(\.\d)?$/.test(text) ? Number(text) : 0;
    return value > 0 && value < MOST && (field !== 'reps' || Number.isInteger(value)) ? value : null;
  }

  /** What a change says: the build's limits, compared in thousandths. */
  function verdict(old, value) {
    const [one, two] = [old, value].map(number => Math.round(number * 1000));
    const change = changed(one, two);
    const [likely, sure] = test.limits ?? [];
    return test.limits ? `${change}: ${judge(one, two, likely, sure)}.`
      : `${change}: can't tell. Nobody has measured here how much this test differs by itself.`;
  }

  function show() {
    const found = last(test, today());
    before.textContent = found ? `Last time, ${days.written(found.day)}: ${found[field]} ${unit}.` : 'No result is kept yet.';
    const value = typed();
    says.textContent = !input.value.trim() ? ''
      : value === null ? `Write a number, such as ${field === 'reps' ? '12' : '62.5'}.`
        : found ? verdict(found[field], value) : '';
    return value;
  }

  function keep() {
    const value = show();
    if (value === null) {
      if (!input.value.trim()) says.textContent = 'Write a number first.';
      return input.focus();
    }
    const entry = { day: today(), exercise: test.exercise || test.test, load: null, reps: null, effort: null,
      note: '', test: test.test, [field]: value };
    // A second result of the day takes the first one's place.
    const others = record.byHand().filter(one => one.test !== test.test || one.day !== entry.day);
    const done = record.keepByHand([...others, entry]);
    says.textContent = done ? `${says.textContent} Kept ${store.where()}, in my log.`.trim() : store.trouble();
    return undefined;
  }

  on(input, 'input', show);
  const whole = make('fieldset', 'sh-new-best', make('legend', '', test.test), before,
    make('div', 'sh-pairs', make('label', '', `Result, ${unit} `, input)), button('Keep this result', keep), says);
  show();
  return whole;
}

const block = find('script.sh-results');
const tests = block ? json(block) : [];

/** The best of some sets, as the start of a field. */
const best = (sets, { counted }) => Math.max(0, ...sets.map(one =>
  (counted === 'repetitions' ? record.repsOf(one) : one[FIELDS[counted]]) || 0)) || '';

const onTestDay = block && !find('.sh-train-data');
if (onTestDay) block.after(make('div', 'sh-box sh-today', ...tests.map(one => form(one))));

/** The forms of an exercise's tests, with the best of the sets that were done filled in. */
const forms = (exercise, sets) => (exercise === null ? [] : tests.filter(one => one.exercise === exercise))
  .map(one => form(one, String(best(sets, one))));

export { forms };
