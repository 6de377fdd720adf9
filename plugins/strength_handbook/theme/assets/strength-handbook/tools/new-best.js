/* From a tested set to a new best single, kept with one tap. The same small form on the page of test
   day, in my numbers and at the end of a session; the numbers are made in loads.js.

   strengthHandbook.newBest
     form(base, lists, {load, reps}, kept)   the form for one tested value; `load` in grams as it was
                                             on the bar or the belt; `kept()` is called after a tap
     pick(bases, lists, kept)                the same with a list of lifts to choose from */
import { find, on, make, button, json } from '../dom.js';
import * as words from '../load-words.js';
import * as mine from '../mine.js';
import * as people from '../people.js';
import * as store from '../store.js';
import { toGrams } from '../whole-numbers.js';
import { asExpected, singleOf } from './singles.js';
import { compare } from './test-day.js';

const MOST_REPS = 15;

/** The body's share of what moves, in grams; null where the body weight is not known. */
function bodyOf([, , share], me) {
  if (!share) return 0;
  return me.body ? Math.round((me.body * share) / 1e8) : null;
}

function form(base, lists, start = {}, kept = () => {}) {
  const { units } = lists;
  const own = lists.bases[base];
  const withBody = own[1] === 'system';
  const numbers = () => people.me() || { bases: {} };
  const field = (text, value, mode) => {
    const input = make('input', { inputMode: mode, autocomplete: 'off', maxLength: 12, value });
    return [input, make('label', '', text + ' ', input)];
  };
  const grams = start.load === undefined ? '' : words.bare(start.load, units);
  const [weight, weightLabel] =
    field(withBody ? `On the belt, ${units} (help with a minus)` : `Lifted, ${units}`, grams, 'text');
  const [reps, repsLabel] = field('Repetitions', start.reps || '', 'numeric');
  const says = make('div');
  says.setAttribute('aria-live', 'polite');
  const keep = (value, undo) => {
    const me = numbers();
    const before = me.bases[base];
    const bases = { ...me.bases };
    if (value === undefined) delete bases[base];
    else bases[base] = value;
    if (!store.set('mine', { ...me, bases })) {
      says.append(make('p', 'sh-error', store.trouble()));
      return;
    }
    says.replaceChildren(make('p', '',
      value === undefined ? 'Taken back. ' : `${own[0]}: ${words.mass(value, units)} is kept. `,
      !undo && button('Undo', () => keep(before, true))));
    kept();
  };

  /** A signed number: what hangs on a belt may also be help. */
  function typed(text) {
    const found = /^([-−–]?)\s*(.+)$/.exec(text.trim());
    const size = found && toGrams(found[2], units);
    return size === null || !found ? null : found[1] ? -size : size;
  }

  function show() {
    const me = numbers();
    const [load, count] = [typed(weight.value), Number(reps.value)];
    if (!weight.value.trim() || !reps.value.trim()) return says.replaceChildren();
    const line = text => says.replaceChildren(make('p', '', text));
    const body = bodyOf(own, me);
    if (load === null || (load < 0 && !withBody)) return line('Write a number, such as 72.5.');
    if (!Number.isInteger(count) || count < 1 || count > MOST_REPS) {
      return line(`Write whole repetitions, 1 to ${MOST_REPS}.`);
    }
    if (body === null) return line('Your body weight counts too: enter it in my numbers first.');
    const total = load + body;
    const found = singleOf(total, count, lists);
    if (!found) return line('Write a number, such as 72.5.');
    const before = me.bases[base];
    const span = [found.low, found.high].map(mg => words.planned(mg, units));
    const sum = withBody ? ` Together ${words.mass(total, units)}, body included.` : '';
    const about = count === 1 ? `A best ${withBody ? 'total' : 'single'} of ${words.mass(total, units)}.`
      : `A best ${withBody ? 'total' : 'single'} of about ${words.mass(found.grams, units)} ` +
        `(other formulas: ${span.join(' to ')}).`;
    const care = found.caution ? ' So many repetitions say little about a single.' : '';
    const same = before !== undefined && asExpected(total, count, before, base, me, lists);
    const verdict = same || before === undefined ? '' : compare(before, found.grams);
    says.replaceChildren(
      make('p', '', about + sum + care),
      make('p', '', same ? `Just what ${words.mass(before, units)} lets expect: it stays.`
        : before === undefined ? '' : `So far ${words.mass(before, units)}. ${verdict}`),
      !same && found.grams !== before
        ? button(`Make ${words.mass(found.grams, units)} my best`, () => keep(found.grams)) : '');
    return undefined;
  }
  for (const input of [weight, reps]) on(input, 'input', show);
  const whole = make('fieldset', 'sh-new-best', make('legend', '', own[0]),
    make('div', 'sh-pairs', weightLabel, repsLabel), says);
  show();
  return whole;
}

function pick(bases, lists, kept) {
  const list = make('select', { id: 'sh-lift' }, ...bases.map(base =>
    make('option', { value: base }, lists.bases[base][0])));
  const place = make('div', '', form(bases[0], lists, {}, kept));
  on(list, 'change', () => place.replaceChildren(form(list.value, lists, {}, kept)));
  return make('div', 'sh-box sh-today', make('label', { htmlFor: 'sh-lift' }, 'Lift '), list, place);
}

const block = find('script.sh-tested');
function start() {
  mine.withLists(lists => {
    const known = json(block).filter(base => lists.bases[base]);
    if (known.length) {
      block.after(pick(known, lists, () => document.dispatchEvent(new Event('sh-new-best'))));
    }
  });
}

if (block) start();

export { form, pick };
