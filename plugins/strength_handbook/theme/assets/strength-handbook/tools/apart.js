/* How the member's own load comes off a bar in the rack, pair by pair, as a list. */
(function (site) {
  'use strict';

  /** Pairs from outside in: [{plate, hold}]; `held` are the stacks whose outer pair asks for it. */
  site.apart = (parts, held) => parts.map((plate, place) => ({
    plate, hold: held.some(stack => String(stack) === String(parts.slice(0, place + 1))),
  })).reverse();

  const { store, loads, words, mine: { make, isMine } } = site;
  const here = document.currentScript.src;

  /** Loads the file of lists, once it is needed. */
  site.withLists = then => {
    if (site.lists) return then();
    const src = new URL('../../../data/scales.js', here);
    document.head.append(Object.assign(make('script'), { src, onload: then }));
  };

  function fill(drawer, block) {
    const { shApart: held, first } = drawer.dataset;
    const recipe = JSON.parse(block.textContent);
    const { lists } = site;
    const load = loads.make(recipe, store.get('mine', isMine), lists);
    const pairs = load && load.parts ? site.apart(load.parts, JSON.parse(held)) : [];
    drawer.replaceChildren(drawer.firstElementChild, make('p', '', !load || load.need
      ? 'A number is missing in my numbers.' : `${words.amount(load, lists.units)}. ` +
      (pairs.length ? first + 'From outside in, never one side bare first.' : 'Nothing on the bar.')),
    make('ol', '', ...pairs.map(({ plate, hold }) => {
      const text = words.bare(plate, lists.units);
      return make('li', '', `left ${text}, right ${text}`, hold && make('b', '', ': somebody holds the bar'));
    })));
  }

  document.querySelectorAll('details[data-sh-apart]').forEach(drawer => {
    // Session mode moves the drawer, not the block.
    const block = drawer.parentNode.querySelector('.sh-dose-data');
    drawer.hidden = !store.get('mine', isMine);
    drawer.addEventListener('toggle', () => drawer.open && site.withLists(() => fill(drawer, block)));
  });
})(globalThis.strengthHandbook);
