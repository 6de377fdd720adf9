/* Puts the member's own loads on a page, beside the tables everybody sees.

   Every dose has a block of data (phone/recipes.py); the lists it picks from are loaded only where
   there are numbers of one's own. Without them, and without this file, nothing changes. */
import { find, all, on, make, link, json } from './dom.js';
import * as later from './later.js';
import { lists as kept } from './load-lists.js';
import * as words from './load-words.js';
import * as loads from './loads.js';
import { picture, plates, said, seriesLine, seriesPicture, series, figure, steps, following } from './mine-lines.js';
import { onTopOf } from './on-top.js';
import * as paces from './paces.js';
import { MOST_LOAD, me, others } from './people.js';
import { root } from './place.js';
import * as running from './running.js';
import * as store from './store.js';
import { toGrams } from './whole-numbers.js';

/** @import { AimRecipe, Lists, Me, Load, Recipe, Units } from './types.js' */

let known = new Map(); // by block: what the page knows of its load
let turn = 0; // of filling the page: what a later one overtakes is dropped
/** @param {Recipe} recipe
    @param {Me} me
    @param {Lists} lists */
const own = (recipe, me, lists) => loads.settle(loads.make(recipe, me, lists), recipe, lists);

/** A missing number, and where to enter it.
    @param {string} need
    @param {Lists} lists */
function missing(need, lists) {
  const name = need === 'body' ? 'Your body weight' : lists.bases[need][0];
  return make('p', '', name + ' is not in ', link(root + 'my-numbers/', 'my numbers'), ' yet.');
}

/** Where somebody without a tested value starts, by body weight; null where no table says so.
    @param {Recipe} recipe
    @param {Me} me
    @param {Lists} lists */
function begin(recipe, me, lists) {
  const found = loads.start(recipe, me, lists);
  if (!found.length) return null;
  /** @param {[label: string, load: Load]} found */
  const one = ([label, load]) => [said(load, lists), ` (${label})`];
  const [first, next] = found;
  return make('p', 'sh-start', 'To start, by body weight: ', ...one(first),
    ...(next && next[1].grams !== first[1].grams ? [' to ', ...one(next)] : []),
    '. Careful on purpose; the effort limit comes first.');
}

/** The load that a recipe comes to today, once the top set is known: this one and no other.
    @param {Recipe} recipe
    @param {Me} me
    @param {Lists} lists
    @param {number} [top] */
const ofToday = (recipe, me, lists, top) =>
  (top ? loads.backOff(recipe, top, me, lists) : own(recipe, me, lists));

/** The loads that today's recipe comes to, as the parts of a panel.
    @param {Recipe} recipe
    @param {Me} me
    @param {Lists} lists
    @param {HTMLElement} block
    @param {number} [lifted] */
function shown(recipe, me, lists, block, lifted) {
  const alone = ofToday(recipe, me, lists, lifted);
  const load = later.tools.sharedLoad ? later.tools.sharedLoad(block, alone, lists) : alone;
  const first = load && !load.need ? null : begin(recipe, me, lists);
  if (!load) return { parts: [first].filter(Boolean) };
  if (load.need !== undefined) return { parts: [first, missing(load.need, lists)].filter(Boolean) };
  // Body weight and nothing else is what the dose itself says.
  if (recipe.f === 0) return { load, parts: [] };
  const sets = loads.series(recipe, me, lists);
  if (sets.length) {
    return { load, parts: [make('p', '', recipe.e ? 'Mine, about:' : 'Mine:'), series(sets, lists),
      ...sets.map(one => words.apart(one.load, lists)).filter(Boolean).map((text, place, all) =>
        all.indexOf(text) === place && make('p', 'sh-note', text))] };
  }
  const range = !lifted && loads.range(recipe, me, lists);
  const top = onTopOf(recipe, load, me, lists);
  const about = !lifted && (range || recipe.x || recipe.t) ? 'about ' : '';
  const notes = [
    words.apart(load, lists),
    range && 'People judge effort about one off: ' + words.span(range, lists.units) + '.',
    top && words.onTop(top, lists.units),
  ];
  return {
    load,
    parts: [
      make('p', '', 'Mine: ' + about, said(load, lists)),
      lifted && make('p', 'sh-note', `After a top of ${words.mass(lifted, lists.units)}.`),
      load.parts.length && picture(load.scale, load.parts, lists.units),
      ...notes.filter(Boolean).map(text => make('p', 'sh-note', text)),
    ],
  };
}

/** What was typed as a load in grams; undefined where it is none that anybody lifts.
    @param {string} text
    @param {Units} units */
function lifted(text, units) {
  const grams = toGrams(text, units);
  return grams !== null && grams > 0 && grams <= MOST_LOAD ? grams : undefined;
}

/** A field for today's top set, kept under a name if it has one; `changed` gets it in grams.
    @param {Recipe} recipe
    @param {Me} me
    @param {Lists} lists
    @param {string} name
    @param {(grams?: number) => void} changed */
function topField(recipe, me, lists, name, changed) {
  const { units } = lists;
  const field = make('input', { inputMode: 'decimal', autocomplete: 'off', value: name && running.typed(name) });
  const wrong = make('output', 'sh-error');
  const expected = loads.expectedTop(recipe, me, lists);
  const check = () => {
    const top = lifted(field.value, units);
    const bad = field.value.trim() && !top;
    field.setAttribute('aria-invalid', !!bad);
    wrong.textContent = bad ? 'Write a number, such as 62.5.' : words.understood(field.value, units);
    changed(top);
  };
  on(field, 'input', () => {
    if (name) running.type(name, field.value);
    check();
  });
  check();
  const hint = expected === null ? '' : ' (expect about ' + words.mass(expected, units) + ')';
  return make('p', 'sh-top', make('label', '', `My top today, ${units}${hint} `, field), ' ', wrong);
}

/** @param {Recipe} recipe
    @param {Load | null | undefined} load
    @param {Me} me
    @param {Lists} lists */
function stepsDrawer(recipe, load, me, lists) {
  const lines = following(recipe, load ?? null, me, lists);
  // Without a way up and strips these are loads of doors, and of the next time.
  const steps = recipe.c !== undefined || lines.some(one => find('.sh-steps', one));
  return lines.length &&
    make('details', 'sh-heavy', make('summary', '', steps ? 'My steps' : 'My other loads'), make('ul', '', ...lines));
}

/** @param {number[]} watts */
const power = watts => (watts.length ? [...new Set(watts)].join('–') + '\u00a0W' : '');

/** What comes next at another pace, or other watts.
    @param {Recipe} recipe
    @param {number} best  tenths of seconds, or of watts */
function nextAims({ n = [] }, best) {
  const lines = n.flatMap(([when, { a }]) => {
    if (!a) return [];
    const { pace, watts } = paces.aim(a, best);
    return [make('li', '', `Next time. ${when}: `, make('b', '', pace.length ? paces.split(pace) : power(watts)),
      pace.length && ` for ${a.n}`)];
  });
  return lines.length && make('details', 'sh-heavy', make('summary', '', 'My next time'), make('ul', '', ...lines));
}

/** My own pace or watts; what is missing, and where to enter it.
    @param {AimRecipe} aim
    @param {Recipe} recipe
    @param {Me} me
    @param {Lists} lists */
function ownAim(aim, recipe, me, lists) {
  const best = me.bests?.[aim.b];
  if (best === undefined) {
    return make('div', 'sh-mine', make('p', '', `${lists.bests[aim.b]} is not in `, link(root + 'my-numbers/', 'my numbers'), ' yet.'));
  }
  const { pace, piece, watts } = paces.aim(aim, best);
  const next = nextAims(recipe, best);
  if (!pace.length) return make('div', 'sh-mine', make('p', '', 'Mine: ', figure(power(watts))), next);
  return make('div', 'sh-mine', make('p', '', 'Mine: ', figure(paces.split(pace)), ` for ${aim.n}`),
    piece.length && make('p', '', `Each ${aim.j}: ${paces.split(piece)}`),
    watts.length && make('p', 'sh-note', `About ${power(watts)} on a rowing machine; its display comes first.`), next);
}

/** A panel and today's load. Where a top set decides, the load follows what is typed.
    @param {Recipe} recipe
    @param {Me} me
    @param {Lists} lists
    @param {HTMLElement} block */
function panel(recipe, me, lists, block) {
  if (recipe.a) return [ownAim(recipe.a, recipe, me, lists), null];
  if (!recipe.t) {
    const { load, parts } = shown(recipe, me, lists, block);
    parts.push(stepsDrawer(recipe, load, me, lists));
    return [parts.some(Boolean) && make('div', 'sh-mine', ...parts), load];
  }
  const [first, last] = [make('div', 'sh-mine-load'), make('div')];
  let today;
  const field = topField(recipe, me, lists, topName(block), top => {
    const { load, parts } = shown(recipe, me, lists, block, top);
    today = load;
    first.replaceChildren(...parts.filter(Boolean));
    last.replaceChildren(...[stepsDrawer(recipe, load, me, lists)].filter(Boolean));
  });
  return [make('div', 'sh-mine', first, field, last), today];
}

/** Where today's top of a block is kept: on a session's page only.
    @param {HTMLElement} block */
function topName(block) {
  /** @type {HTMLElement | null} */
  const slot = block.closest('article[data-order]');
  return slot ? 'top.' + slot.dataset.order : '';
}

/** Loads the file of lists once; `again` asks for a fresh copy where the kept one does not fit.
    @param {(lists: Lists) => void} then
    @param {string} [again] */
function withLists(then, again) {
  if (kept() && !again) {
    then(kept());
    return;
  }
  document.head.append(make('script', {
    src: root + 'data/scales.js' + (again ? '?' + again : ''),
    onload: () => then(kept()),
    onerror: () => say('The list of loads did not come: use the tables, or load this page again.'),
  }));
}

/** A line under the page's title.
    @param {string} text */
function say(text) {
  const line = make('p', 'sh-mine', text);
  line.setAttribute('role', 'status');
  find('h1').after(line);
}

/** Where a bar is shared, plates follow the common plan, which comes with the tools. */
function waitForOthers() {
  if (later.here() || !find('[data-sh-together]') || !others().people.length) return;
  later.need(() => {}).then(came => (came ? fill()
    : say('The plan for your shared bar did not come: the plates below are your own.')));
}

/** Every panel of the page, again from the start: the numbers may have changed in another tab.
    @param {string} [again] */
function fill(again) {
  all('.sh-mine').forEach(old => old.remove());
  known = new Map();
  const blocks = all('script.sh-dose-data');
  if (!blocks.length) return;
  waitForOthers(); // who has no numbers sees the others' all the same
  const numbers = me();
  if (store.trouble()) say(store.trouble());
  if (!numbers) return;
  const recipes = blocks.map(json);
  const now = ++turn;
  withLists(lists => {
    if (now !== turn) return;
    let panels;
    try {
      panels = recipes.map((recipe, place) => panel(recipe, numbers, lists, blocks[place]));
    } catch (error) {
      // A list with this page's name is not in the file: page and file are of two publications.
      if (!(error instanceof RangeError)) throw error;
      if (again) say('This page and the list of loads do not fit together: use the tables.');
      else fill(recipes[0].s || 'fresh');
      return;
    }
    blocks.forEach((block, place) => {
      const [made, load] = panels[place];
      known.set(block, { recipe: recipes[place], me: numbers, lists, load });
      if (made) block.after(made);
    });
  }, again);
}

/** What is known of a block's load, for other scripts: {recipe, me, lists, load}, all as data.
    @param {HTMLElement} block */
const of = block => known.get(block);

const refill = () => fill();

on(document, 'DOMContentLoaded', refill);
on(globalThis, 'pageshow', event => event.persisted && fill());
on(globalThis, 'storage', event => (event.key || ' mine').endsWith(' mine') && fill());

export { withLists, own, ofToday, lifted, said, figure, picture, plates, steps, seriesLine, seriesPicture, of, refill };
