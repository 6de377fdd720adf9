/* Two or three lifters on one bar: who lifts when, and which plates change in between. */
(function (site) {
  'use strict';

  const { change } = site.loads;

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

  site.together = { plan };
  const { find, all, on, make, link, button, json } = site.dom;
  const box = find('[data-sh-together]');
  if (!box) return;
  const { store, loads, words, mine: { isMine, me: myself, withLists, said, plates, root } } = site;
  const today = () => new Date().toDateString();
  const slots = all('[data-sets]').map(slot => ({ slot, block: find('.sh-dose-data', slot) }));
  const says = make('p', { role: 'status' });
  let fields, keep, forget;

  /** Others' numbers, unless they were for another day. */
  function others() {
    const kept = store.get('together', value => value.people.every(isMine));
    if (kept && (kept.keep || kept.day === today())) return kept;
    store.remove('together');
    return { people: [] };
  }

  /** Everybody in turn, what changes after each, and who spots; for one bar. */
  function turns({ slot, block }, lists) {
    const recipe = json(block);
    const { units } = lists;
    const ready = [myself(), ...others().people]
      .map((me, place) => ({ name: ['me', 'B', 'C'][place], load: me && loads.make(recipe, me, lists) }))
      .filter(({ load }) => load && load.grams > 0);
    if (ready.length < 2) return make('p', 'sh-bar', 'One bar: a number is missing for this lift.');
    const { sets } = slot.dataset;
    const { order, moves, most } = plan(ready.map(one => one.load.parts), +sets);
    const lines = order.map((place, turn) => {
      const { name, load } = ready[place];
      const next = ready[order[(turn + 1) % order.length]];
      const what = words.moves(change(load.parts, next.load.parts), units);
      return make('li', '', make('b', '', name === 'me' ? 'Me' : name), ': ', (recipe.x || recipe.e) && 'about ',
        said(load, lists), '.', make('br'), `Then for ${next.name}: `,
        what ? plates(what + ' a side', units) : 'no change', '.');
    });
    const spot = find(`[data-spot=${slot.getAttribute('aria-labelledby')}]`);
    const drawer = make('details', 'sh-heavy sh-bar', make('summary', '', 'One bar, in this order'), make('ol', '', ...lines),
      make('p', 'sh-note', `Load as listed here, not by my steps; few plates move: ${moves} on each side in ${sets} sets each` + (most > moves ? `, in the worst order ${most}.` : '.')),
      spot && make('p', '', order.length <= spot.dataset.count ? 'Too few to spot: ask somebody.'
        : +spot.dataset.count > 1 ? 'The others spot.' : 'Whoever lifts next spots.', ' ', spot.textContent));
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
    const form = make('form', '', ...['Lifter B', 'Lifter C, if you are three'].map((name, place) =>
      make('fieldset', '', make('legend', '', name), ...[...keys].map(key => make('label', '',
        `${key === 'body' ? 'Body weight' : bases[key][0]}, ${units} `,
        make('input', { place, key, inputMode: 'decimal', autocomplete: 'off' }))))),
    make('label', 'sh-check', keep = make('input', { type: 'checkbox' }), ' Keep after today'),
    make('p', 'sh-buttons', make('button', '', 'Show the order'), ' ', forget = button('Forget them', () => {
      store.remove('together');
      show(lists);
      says.textContent = 'Forgotten.';
    })),
    make('p', 'sh-note', 'Your own come from ', link(root + 'my-numbers/', 'my numbers'),
      '. Kept on this phone, for today only unless you say so.'), says);
    fields = all('[inputmode]', form);
    on(form, 'submit', event => {
      event.preventDefault();
      const people = [];
      const wrong = fields.find(field => {
        const { place, key, value } = field;
        const grams = value.trim() && loads.toGrams(value, units);
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
      says.textContent = store.trouble() || 'See each bar below.';
    });
    box.append(form);
    show(lists);
  }

  const opened = () => box.open && !fields && withLists(build);
  on(box, 'toggle', opened);
  opened(); // already, where it is read again
  if (others().people.length) withLists(show);
})(globalThis.strengthHandbook);
