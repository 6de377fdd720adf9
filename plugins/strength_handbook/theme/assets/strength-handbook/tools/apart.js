/* How the member's own load comes off a bar in the rack, pair by pair, as a list. */
(function (site) {
  'use strict';

  /** Pairs from outside in: [{plate, hold}]; `held` are the stacks whose outer pair asks for it. */
  site.apart = (parts, held) => parts.map((plate, place) => ({
    plate, hold: held.some(stack => String(stack) === String(parts.slice(0, place + 1))),
  })).reverse();

  const { loads, words, mine, dom: { find, all, on, make, json } } = site;

  function fill(drawer, block, lists) {
    const { shApart: held, first } = drawer.dataset;
    const load = loads.make(json(block), mine.me(), lists);
    const pairs = load && load.parts ? site.apart(load.parts, JSON.parse(held)) : [];
    drawer.replaceChildren(drawer.firstElementChild, make('p', '', !load || load.need
      ? 'A number is missing in my numbers.' : `${words.amount(load, lists.units)}. ` +
      (pairs.length ? first + 'From outside in, never one side bare first.' : 'Nothing on the bar.')),
    make('ol', '', ...pairs.map(({ plate, hold }) => {
      const text = words.bare(plate, lists.units);
      return make('li', '', `left ${text}, right ${text}`, hold && make('b', '', ': somebody holds the bar'));
    })));
  }

  all('[data-sh-apart]').forEach(drawer => {
    // Session mode moves the drawer, not the block.
    const block = find('.sh-dose-data', drawer.parentNode);
    drawer.hidden = !mine.me();
    on(drawer, 'toggle', () => drawer.open && mine.me() && mine.withLists(lists => fill(drawer, block, lists)));
  });
})(globalThis.strengthHandbook);
