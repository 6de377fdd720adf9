/* How the member's own load comes off a bar in the rack, pair by pair, drawn and in words. */
import { find, all, on, make, json } from './dom.js';
import * as words from './load-words.js';
import * as mine from './mine.js';
import * as people from './people.js';

/** @import { Lists } from './types.js' */

/** Pairs from outside in: [{plate, hold}]; `held` are the stacks whose outer pair asks for it.
    @param {number[]} parts
    @param {number[][]} held */
const apart = (parts, held) => parts.map((plate, place) => ({
  plate, hold: held.some(stack => String(stack) === String(parts.slice(0, place + 1))),
})).reverse();

/** @param {HTMLElement} drawer
    @param {HTMLElement} block
    @param {Lists} lists */
function fill(drawer, block, lists) {
  const { shApart: held = '[]', first } = drawer.dataset;
  const me = people.me();
  const load = me && mine.own(json(block), me, lists);
  const title = drawer.firstElementChild;
  if (!load || load.need !== undefined) {
    drawer.replaceChildren(title ?? '', make('p', '', 'A number is missing in my numbers.'));
    return;
  }
  const pairs = apart(load.parts, JSON.parse(held));
  drawer.replaceChildren(title ?? '', make('p', '', `${words.amount(load, lists.units)}. ` +
    (pairs.length ? first + 'From outside in, never one side bare first.' : 'Nothing on the bar.')),
  mine.steps(pairs.map(({ plate, hold }, place) => {
    const text = words.stamped(plate, lists.units);
    const parts = load.parts.slice(0, -1 - place);
    return { parts, off: [plate], hold, says: `left ${text}, right ${text}` };
  }), load.scale, lists.units));
}

/** Every drawer inside a part of the page.
    @param {ParentNode} [inside] */
const prepare = inside => all('[data-sh-apart]', inside).forEach(drawer => {
  // Session mode moves the drawer, not the block.
  const block = find('.sh-dose-data', drawer.parentNode);
  if (!people.me()) return drawer.remove(); // session mode takes the first drawer
  drawer.hidden = false;
  on(drawer, 'toggle', () => drawer.open && people.me() && mine.withLists(lists => fill(drawer, block, lists)));
});

prepare();

export { apart, prepare };
