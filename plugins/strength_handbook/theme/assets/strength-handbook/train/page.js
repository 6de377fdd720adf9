/* What session mode takes from the page. It moves the page's own parts over and back again: nothing
   is said twice, and fields and drawers work in both places. */
import { find, all, make } from '../dom.js';
import * as mine from '../mine.js';

let away = [];
let variant;

const article = order => find('#slot-' + order.toLowerCase()).closest('article');

/** Takes a part off the page, if there is one, and remembers its place. */
function borrow(part) {
  if (!part) return part;
  const mark = document.createComment('');
  part.replaceWith(mark);
  away.push([mark, part]);
  return part;
}

/** Puts everything back; what another script has taken away stays away. `all` puts back what was
    taken and shown nowhere, too. */
function giveBack(all) {
  for (const [mark, part] of away) mark.replaceWith(...(all || part.isConnected ? [part] : []));
  away = [];
}

const vary = place => { variant = all('.sh-less')[place]; };

/** The line of an exercise in the variant that was chosen; undefined where there is none. */
const less = order => (variant && find(`li[data-slot="${order}"]`, variant)) || undefined;

/** The member's load; a variant has its own where it is another one. */
const panel = order =>
  less(order)?.querySelector('div.sh-mine') || find('div.sh-mine', article(order));

const behind = new Map();

/** The doors of an exercise as they stand on its page: [{key, name, what}]; also while its drawers are away. */
function doors(order) {
  if (!behind.has(order)) {
    behind.set(order, all('[data-door]', article(order)).map(what =>
      ({ key: what.dataset.door, name: what.dataset.name, what })));
  }
  return behind.get(order);
}

const drawers = order => all(':scope > details', article(order));

/** Copies of what stands in a part of the page, one for each element that is found. */
const copies = (part, selector) => (part ? all(selector, part).map(one => {
  const copy = document.createDocumentFragment();
  copy.append(...one.cloneNode(true).childNodes);
  return copy;
}) : []);

/** The small steps up to a load, among an exercise's drawers. */
const upwards = order => find(':scope > details[data-up]', article(order));

/** Does the variant have a load of its own for an exercise? */
const hasOwn = order => !!(less(order) && find('.sh-dose-data', less(order)));

/** What the page knows of an exercise's load, as data: {recipe, me, lists, load}; undefined without numbers. */
function known(order) {
  const other = less(order) && find('.sh-dose-data', less(order));
  const block = other || find(':scope > .sh-dose-data', article(order));
  return block && mine.of(block);
}

/** Chalk strokes for the sets; the words beside them say the same. */
function tally(list, { marks, at }) {
  const now = list[at];
  return make('span', { className: 'sh-train-tally', ariaHidden: true }, ...list.map((step, place) =>
    step.last && step.o === now.o && make('i', 'is-' + (marks[place] ||
      (step.n === now.n && step.kind === now.kind ? 'now' : 'open')))));
}

export { article, borrow, giveBack, vary, less, panel, doors, drawers, upwards, copies, hasOwn, known, tally };
