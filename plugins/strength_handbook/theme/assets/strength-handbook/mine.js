/* Puts the member's own loads on a page, beside the tables everybody sees.

   Every dose has a block of data (plan/phone.py); the lists it picks from are loaded only where
   there are numbers of one's own. Without them, and without this file, nothing changes. */
(function (site) {
  'use strict';

  const { loads, words, dom: { find, all, on, make, json } } = site;
  const root = new URL('../../', document.currentScript.src).href;
  const MOST_BODY = 300000;
  const MOST = 500000;
  let turn = 0; // of filling the page: what a later one overtakes is dropped
  const whole = (value, most) => Number.isInteger(value) && value > 0 && value <= most;

  /** Numbers as my-numbers.js keeps them; anything else in their place is damaged. */
  function isMine(value) {
    return (value.body === undefined || whole(value.body, MOST_BODY)) &&
      Object.values(value.bases).every(grams => whole(grams, MOST));
  }

  /** What the member has entered; undefined where nothing is. */
  const me = () => site.store.get('mine', isMine);

  /** One side of a bar, inner plate first; the words beside it say the same. From a place on the
      plates move, `is-on` or `is-off`. */
  const picture = ({ kind, parts: [most] }, parts, units, from, moves) => /bar|hung|pivot/.test(kind) &&
    make('span', { className: 'sh-mine-bar', ariaHidden: true, style: `width: ${20 + 30 * parts.length}px` },
      ...parts.map((part, place) => {
        const style = `height: ${14 + 30 * Math.sqrt(part / most)}px`;
        const plate = make('i', { className: place >= from ? moves : '', style });
        plate.dataset.kg = words.bare(part, units);
        return plate;
      }));

  /** Words about plates, which ears hear in other words. */
  const plates = (text, units, more = '') => text &&
    make('span', { role: 'img', ariaLabel: words.heard(text + more, units) }, text);

  /** Steps below each other: the bar as it then stands, and what changed on each side. */
  const steps = (list, scale, units, between) => make('ol', 'sh-steps', ...list.map((step, place) => {
    const { grams, reps, parts, on, off, hold, says } = step;
    const change = words.moves(step, units);
    return make('li', '',
      on ? picture(scale, parts, units, parts.length - on.length, 'is-on')
        : picture(scale, [...parts, ...off.slice().reverse()], units, parts.length, 'is-off'),
      make('span', '', says || words.mass(grams, units), reps && ' × ' + reps, !says && change && ' ',
        !says && change && plates(`(${change})`, units, ' a side'), hold && make('b', '', ', somebody holds the bar'),
        list[place + 1] && between));
  }));

  const own = (recipe, me, lists) => loads.settle(loads.make(recipe, me, lists), recipe, me, lists);

  /** A missing number, and where to enter it. */
  function missing(need, lists) {
    const name = need === 'body' ? 'Your body weight' : lists.bases[need][0];
    return make('p', '', name + ' is not in ', site.dom.link(root + 'my-numbers/', 'my numbers'), ' yet.');
  }

  /** A load in one line. */
  const said = (load, { units }) =>
    make('span', '', make('b', '', words.amount(load, units)), ' ', plates(words.made(load, units), units));

  /** The loads that today's recipe comes to, as the parts of a panel. */
  function shown(recipe, me, lists) {
    const load = own(recipe, me, lists);
    if (!load) return { parts: recipe.t ? [byTop(recipe, me, lists)] : [] };
    if (load.need) return { parts: [missing(load.need, lists)] };
    // Body weight and nothing else is what the dose itself says.
    if (recipe.f === 0) return { load, parts: [] };
    const range = loads.range(recipe, me, lists);
    const top = loads.onTop(recipe, load, me, lists);
    const about = range || recipe.x || recipe.t ? 'about ' : '';
    const notes = [
      words.apart(load, lists),
      range && 'People judge effort about one off: ' + words.span(range, lists.units) + '.',
      top && words.onTop(top, lists.units),
      words.helping(recipe, load, lists),
    ];
    return {
      load,
      parts: [
        make('p', '', 'Mine: ' + about, said(load, lists)),
        load.parts.length && picture(load.scale, load.parts, lists.units),
        ...notes.filter(Boolean).map(text => make('p', 'sh-note', text)),
        recipe.t && byTop(recipe, me, lists),
      ],
    };
  }

  /** A field for today's top set, and what follows from it. */
  function byTop(recipe, me, lists) {
    const { units } = lists;
    const field = make('input', { inputMode: 'decimal', autocomplete: 'off' });
    const result = make('output');
    const expected = loads.expectedTop(recipe, me, lists);
    const show = () => {
      const top = loads.toGrams(field.value, units);
      result.replaceChildren();
      if (!field.value.trim()) return;
      const ok = top !== null && top > 0 && top <= MOST;
      const load = ok && loads.settle(loads.backOff(recipe, top, me, lists), recipe, me, lists);
      result.append(...!ok ? ['Write a number, such as 62.5.'] : load.need ? [missing(load.need, lists)]
        : [words.understood(field.value, units), 'Then ', said(load, lists), picture(load.scale, load.parts, units) || '']);
    };
    on(field, 'input', show);
    const hint = expected === null ? '' : ' (expect about ' + words.bare(expected, units) + ')';
    return make('p', '', make('label', '', `My top today, ${units}${hint} `, field), ' ', result);
  }

  /** Everything else that follows from the load, a line each. */
  function more(recipe, load, me, lists) {
    const { units } = lists;
    const lines = [];
    const add = (name, ...text) => lines.push(make('li', '', name + ': ', ...text));
    const ramp = recipe.r ? loads.ramp(recipe, me, lists) : [];
    if (ramp.length) {
      const [before, last] = [{ parts: [] }, ...ramp].slice(-2);
      // Strips have a stack of their own.
      if (load && last.grams === load.grams) Object.assign(last, { parts: load.parts }, loads.change(before.parts, load.parts));
      add('Warm-up', steps(ramp, lists.scales[recipe.s], units, ', '));
      const less = load ? (last.grams - load.grams) / 2 : 0;
      if (less) add('After a top of ' + words.bare(last.grams, units), words.mass(less, units), ' less on each side');
    }
    const ladder = loads.ladder(recipe, me, lists);
    if (ladder) {
      const up = ladder.steps.map(step =>
        `${words.amount(step.load, units)} for ${step.reps.join(' to ')}`);
      add('Way up', [...up, 'first attempt '].join(', '), said(ladder.first, lists));
      if (ladder.up) add('Good attempt', words.span(ladder.up, units));
      if (ladder.down) add('Missed attempt', words.span(ladder.down, units));
    }
    if (load && recipe.c !== undefined) {
      const strips = loads.strips(recipe, load, lists);
      add('Strips', strips === null
        ? 'what is here allows no such strips; take the next lighter load each time.'
        : steps(strips, load.scale, units, ' → '));
    }
    for (const [place, door] of recipe.d || []) {
      // Without a load of today's, only what my numbers decide is news.
      const found = load || (door.z === undefined && door.f === undefined)
        ? loads.door(door, load, me, lists) : null;
      if (found && !found.need) add(lists.doors[place], said(found, lists));
    }
    for (const [when, move] of (load && recipe.n) || []) {
      const found = loads.next(move, load, me, lists);
      if (found) add('Next time. ' + when, make('b', '', words.amount(found, units)));
    }
    return lines;
  }

  function panel(recipe, me, lists) {
    const { load, parts } = shown(recipe, me, lists);
    const lines = more(recipe, load, me, lists);
    if (lines.length) {
      parts.push(make('details', 'sh-heavy', make('summary', '', 'My steps'), make('ul', '', ...lines)));
    }
    return [parts.some(Boolean) && make('div', 'sh-mine', ...parts), load];
  }

  /** Loads the file of lists once; `again` asks for a fresh copy where the kept one does not fit. */
  function withLists(then, again) {
    if (site.lists && !again) return then(site.lists);
    return document.head.append(make('script', {
      src: root + 'data/scales.js' + (again ? '?' + again : ''),
      onload: () => then(site.lists),
      onerror: () => say('The list of loads did not come: use the tables, or load this page again.'),
    }));
  }

  /** A line under the page's title. */
  function say(text) {
    const line = make('p', 'sh-mine', text);
    line.setAttribute('role', 'status');
    find('h1').after(line);
  }

  /** Every panel of the page, again from the start: the numbers may have changed in another tab. */
  function fill(again) {
    all('.sh-mine').forEach(old => old.remove());
    const blocks = all('script.sh-dose-data');
    if (!blocks.length) return;
    const numbers = me();
    if (site.store.trouble()) say(site.store.trouble());
    if (!numbers) return;
    const recipes = blocks.map(json);
    const now = ++turn;
    withLists(lists => {
      if (now !== turn) return;
      let panels;
      try {
        panels = recipes.map(recipe => panel(recipe, numbers, lists));
      } catch (error) {
        // A list with this page's name is not in the file: page and file are of two publications.
        if (!(error instanceof RangeError)) throw error;
        if (again) say('This page and the list of loads do not fit together: use the tables.');
        else fill(recipes[0].s || 'fresh');
        return;
      }
      blocks.forEach((block, place) => {
        const [made, load] = panels[place];
        const week = block.closest('.sh-week');
        if (made) block.after(made);
        if (week && load) {
          find('summary', week).append(make('span', 'sh-mine', 'Mine: ', said(load, lists)));
        }
      });
    }, again);
  }

  site.mine = { isMine, me, withLists, own, said, plates, steps, root };
  on(document, 'DOMContentLoaded', () => fill());
  on(globalThis, 'pageshow', event => event.persisted && fill());
  on(globalThis, 'storage', event => (event.key || ' mine').endsWith(' mine') && fill());
})(globalThis.strengthHandbook);
