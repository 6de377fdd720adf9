/* How the member's own load comes off a bar in the rack, pair by pair, drawn and in words. */
(function (site) {
  'use strict';

  /** Pairs from outside in: [{plate, hold}]; `held` are the stacks whose outer pair asks for it. */
  site.apart = (parts, held) => parts.map((plate, place) => ({
    plate, hold: held.some(stack => String(stack) === String(parts.slice(0, place + 1))),
  })).reverse();

  const { words, mine, dom: { find, all, on, make, json } } = site;

  function fill(drawer, block, lists) {
    const { shApart: held, first } = drawer.dataset;
    const load = mine.own(json(block), mine.me(), lists);
    const pairs = load && load.parts ? site.apart(load.parts, JSON.parse(held)) : [];
    drawer.replaceChildren(drawer.firstElementChild, make('p', '', !load || load.need
      ? 'A number is missing in my numbers.' : `${words.amount(load, lists.units)}. ` +
      (pairs.length ? first + 'From outside in, never one side bare first.' : 'Nothing on the bar.')),
    mine.steps(pairs.map(({ plate, hold }, place) => {
      const text = words.bare(plate, lists.units);
      const parts = load.parts.slice(0, -1 - place);
      return { parts, off: [plate], hold, says: `left ${text}, right ${text}` };
    }), load.scale, lists.units));
  }

  all('[data-sh-apart]').forEach(drawer => {
    // Session mode moves the drawer, not the block.
    const block = find('.sh-dose-data', drawer.parentNode);
    if (!mine.me()) return drawer.remove(); // session mode takes the first drawer
    drawer.hidden = false;
    on(drawer, 'toggle', () => drawer.open && mine.me() && mine.withLists(lists => fill(drawer, block, lists)));
  });
})(globalThis.strengthHandbook);
