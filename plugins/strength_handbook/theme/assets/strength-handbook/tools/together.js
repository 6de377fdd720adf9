/* Two or three lifters on one bar: who lifts when, and which plates change in between. */
(function (site) {
  'use strict';

  /** What comes off and goes on one side, in that order; lists of plates from inner to outer. */
  function change(from, to) {
    let same = 0;
    while (same < from.length && from[same] === to[same]) same += 1;
    return { off: from.slice(same).reverse(), on: to.slice(same) };
  }

  /** Plates moved on one side when all lift in turn, from the empty bar to the last set. */
  function count(stacks, sets) {
    let [moves, bar] = [0, []];
    for (let set = 0; set < sets * stacks.length; set += 1) {
      const { off, on } = change(bar, bar = stacks[set % stacks.length]);
      moves += off.length + on.length;
    }
    return moves;
  }

  const orders = places => (places.length < 2 ? [places] : places.flatMap(first =>
    orders(places.filter(one => one !== first)).map(rest => [first, ...rest])));

  /** The order with the fewest moves, the first of equal ones: {order, moves, most}. */
  function plan(stacks, sets) {
    const all = orders([...stacks.keys()])
      .map(order => ({ order, moves: count(order.map(place => stacks[place]), sets) }))
      .sort((a, b) => a.moves - b.moves);
    return { ...all[0], most: all.at(-1).moves };
  }

  site.together = { change, plan };
  const { find, all, on, make, json } = site.dom;
  const form = find('[data-sh-together]');
  if (!form) return;
  const { store, loads, words, mine: { isMine, me: myself, withLists } } = site;
  const today = () => new Date().toDateString();
  const { keep, forget } = form.elements;
  const fields = all('[inputmode]', form);
  const says = form.lastElementChild;
  const { units } = form.dataset;

  /** Others' numbers, unless they were for another day. */
  function others() {
    const kept = store.get('together', value => value.people.every(isMine));
    if (kept && (kept.keep || kept.day === today())) return kept;
    store.remove('together');
    return { people: [] };
  }

  /** Everybody in turn, what changes after each, and who spots; for one bar. */
  function turns(slot, block, lists) {
    const recipe = json(block);
    const ready = [myself(), ...others().people]
      .map((me, place) => ({ name: ['me', 'B', 'C'][place], load: me && loads.make(recipe, me, lists) }))
      .filter(({ load }) => load && load.grams > 0);
    if (ready.length < 2) return ['One bar: a number is missing for this lift.'];
    const { order, moves, most } = plan(ready.map(one => one.load.parts), +slot.dataset.sets);
    const lines = order.map((place, turn) => {
      const { name, load } = ready[place];
      const next = ready[order[(turn + 1) % order.length]];
      const what = words.moves(change(load.parts, next.load.parts), units);
      return make('li', '', make('b', '', (name === 'me' ? 'Me: ' : name + ': ') +
        (recipe.x || recipe.e ? 'about ' : '') + words.amount(load, units)),
        ` ${words.made(load, units)}.`, make('br'),
        `Then for ${next.name}: ${what ? what + ' a side' : 'no change'}.`);
    });
    const spot = find(`[data-spot=${slot.getAttribute('aria-labelledby')}]`);
    return [
      make('b', '', 'One bar, in this order'), make('ol', '', ...lines),
      make('p', 'sh-note', `${moves} plates move on each side in ${slot.dataset.sets} sets each` +
        (most > moves ? `; in the worst order ${most}.` : '.')),
      spot && make('p', '', order.length <= spot.dataset.count ? 'Too few to spot: ask somebody.'
        : +spot.dataset.count > 1 ? 'The others spot.' : 'Whoever lifts next spots.', ' ', spot.textContent),
    ];
  }

  const clear = () => all('.sh-bar').forEach(old => old.remove());

  function show() {
    clear();
    const { people, keep: kept } = others();
    keep.checked = !!kept;
    forget.hidden = !people.length;
    for (const field of fields) {
      const [place, name] = field.name.split(' ');
      const me = people[place];
      const grams = me && (name === 'body' ? me.body : me.bases[name]);
      field.value = grams ? words.bare(grams, units) : '';
    }
    if (!people.length) return;
    withLists(lists => {
      clear();
      all('[data-sets]').forEach(slot => {
        const block = find('.sh-dose-data', slot);
        block.after(make('div', 'sh-bar', ...turns(slot, block, lists)));
      });
    });
  }

  on(form, 'submit', event => {
    event.preventDefault();
    const people = [];
    const wrong = fields.find(field => {
      const [place, name] = field.name.split(' ');
      const grams = field.value.trim() && loads.toGrams(field.value, units);
      const me = people[place] = people[place] || { bases: {} };
      if (grams && name === 'body') me.body = grams;
      else if (grams) me.bases[name] = grams;
      field.setAttribute('aria-invalid', grams === null || !isMine(me));
      return field.ariaInvalid === 'true';
    });
    says.textContent = wrong ? 'Write a number, such as 72.5.' : '';
    if (wrong) return wrong.focus();
    store.set('together', { day: today(), keep: keep.checked,
      people: people.filter(me => me.body || Object.keys(me.bases).length) });
    show();
    says.textContent = store.trouble() || 'See each bar below.';
  });
  on(forget, 'click', () => {
    store.remove('together');
    show();
    says.textContent = 'Forgotten.';
  });
  show();
})(globalThis.strengthHandbook);
