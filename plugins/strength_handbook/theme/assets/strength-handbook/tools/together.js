/* The form for those who share a bar, and under each such bar who lifts when and what changes. */
import { find, all, on, make, link, button, json } from '../dom.js';
import * as words from '../load-words.js';
import { withLists, said, plates, refill } from '../mine.js';
import { MOST_AT_A_BAR, isMine, others, today } from '../people.js';
import { root } from '../place.js';
import * as store from '../store.js';
import { toGrams } from '../whole-numbers.js';
import * as oneBar from './one-bar.js';

const box = find('[data-sh-together]');
function start() {
  const slots = all('[data-sets]').map(slot => ({ slot, block: find('.sh-dose-data', slot) }));
  const says = make('p', { role: 'status' });
  const LIFTERS = ['Lifter B', 'Lifter C, if you are three', 'Lifter D, if you are four'];
  let fields, keep, forget;

  const face = seconds => `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;

  const called = name => (name === 'me' ? 'Me' : name);

  /** Words about a change, the plates in them for ears too. */
  function changed(what, units) {
    const text = oneBar.said(what, units) + '.';
    return what.off.length + what.on.length ? plates(text, units) : text;
  }

  /** Where one bar is too slow for the interval. */
  const eachTheirOwn = ({ round, every }) => make('p', 'sh-part', make('b', '', 'A bar each.'),
    ` On one bar a round of all takes about ${face(Math.ceil(round))}, and a set starts every ${face(every)}. ` +
    `No second bar? Then begin a round every ${face(10 * Math.ceil(round / 10))}, in this order.`);

  /** Everybody in turn, what changes after each, and who spots; for one bar. */
  function turns({ slot, block }, lists) {
    const shared = oneBar.at(block, lists);
    if (!shared) return '';
    const { missing } = shared;
    if (!shared.turns) {
      return make('p', 'sh-bar', missing.length ? `One bar: a number is missing for this lift (${missing.map(called).join(', ')}).`
        : 'One bar: nothing to put on for two of you.');
    }
    const { units } = lists;
    const { turns: all, moves, alone, sets, apart } = shared;
    const { x, e, v } = json(block);
    const hangs = all.some(({ top }) => top && top.hangs);
    const lines = all.map((turn, place) => {
      const next = all[(place + 1) % all.length];
      return make('li', '', make('b', '', called(turn.name)), ': ', (x || e) && 'about ', said(turn.load, lists),
        turn.top && turn.top.hangs && ', ' + turn.top.what, '.', make('br'), `Then for ${next.name}: `,
        changed(oneBar.change(turn, next), units));
    });
    const spot = find(`[data-spot=${slot.getAttribute('aria-labelledby')}]`)?.dataset;
    const drawer = make('details', 'sh-heavy sh-bar', make('summary', '', 'One bar, in this order'),
      apart && eachTheirOwn(shared),
      make('p', '', 'First: ', changed(oneBar.change(null, all[0]), units)),
      make('ol', '', ...lines),
      missing.length && make('p', '', `Without ${missing.map(called).join(', ')}: a number is missing.`),
      v && hangs && make('p', '', make('b', '', 'Off before the first plate moves: '), 'bands and chains, one of you at each side, ',
        'both at the same time, while the plates are still on. Last on again, each lifter’s own.'),
      make('p', 'sh-note', 'These plates count for all of you here, in place of each one’s own list and steps: ' +
        `${moves} moves on each side in ${sets} sets each` + (alone > moves ? `, ${alone} with everybody’s own.` : '.')),
      spot && make('p', '', all.length <= Number(spot.count) ? 'Too few to spot: ask somebody.'
        : Number(spot.count) > 1 ? 'The others spot.' : 'Whoever lifts next spots.', ' ', spot.says));
    drawer.open = true;
    return drawer;
  }

  const clear = () => all('.sh-bar').forEach(old => old.remove());

  function show(lists) {
    clear();
    const { people, keep: kept } = others();
    if (people.length) slots.forEach(one => one.block.after(turns(one, lists)));
    if (!fields) return;
    keep.checked = kept;
    forget.hidden = !people.length;
    for (const field of fields) {
      const me = people[field.place];
      const grams = me && (field.key === 'body' ? me.body : me.bases[field.key]);
      field.value = grams ? words.bare(grams, lists.units) : '';
    }
  }

  /** The form, with a field for every number that the bars of this page ask for. */
  function build(lists) {
    const { units, bases } = lists;
    const keys = new Set();
    for (const { block } of slots) {
      const { p, b, w, m } = json(block);
      if (w || m) keys.add('body');
      if (p) keys.add(b);
    }
    const form = make('form', '', ...LIFTERS.map((name, place) =>
      make('fieldset', '', make('legend', '', name), ...[...keys].map(key => make('label', '',
        `${key === 'body' ? 'Body weight' : bases[key][0]}, ${units} `,
        make('input', { place, key, inputMode: 'decimal', autocomplete: 'off' }))))),
    make('label', 'sh-check', keep = make('input', { type: 'checkbox' }), ' Keep after today'),
    make('p', 'sh-buttons', make('button', '', 'Show the order'), ' ', forget = button('Forget them', () => {
      store.remove('together');
      show(lists);
      refill();
      says.textContent = 'Forgotten.';
    })),
    make('p', 'sh-note', 'Your own come from ', link(root + 'my-numbers/', 'my numbers'),
      '. Kept on this phone, for today only unless you say so. ' +
      `More than ${MOST_AT_A_BAR}? Take a second bar.`), says);
    fields = all('[inputmode]', form);
    on(form, 'submit', event => {
      event.preventDefault();
      const people = [];
      const wrong = fields.find(field => {
        const { place, key, value } = field;
        const grams = value.trim() && toGrams(value, units);
        const me = people[place] = people[place] || { bases: {} };
        if (grams && key === 'body') me.body = grams;
        else if (grams) me.bases[key] = grams;
        field.setAttribute('aria-invalid', grams === null || !isMine(me));
        return field.ariaInvalid === 'true';
      });
      says.textContent = wrong ? 'Write a number, such as 72.5.' : '';
      if (wrong) return wrong.focus();
      store.set('together', { day: today(), keep: keep.checked,
        people: people.filter(me => me.body || Object.keys(me.bases).length) });
      show(lists);
      refill();
      says.textContent = store.trouble() || 'See each bar below.';
    });
    box.append(form);
    show(lists);
  }

  const opened = () => box.open && !fields && withLists(build);
  on(box, 'toggle', opened);
  opened(); // already, where it is read again
  if (others().people.length) withLists(show);
}

if (box) start();
