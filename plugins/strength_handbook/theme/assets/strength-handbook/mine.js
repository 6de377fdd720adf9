/* Puts the member's own loads on a page, beside the tables everybody sees.

   Every dose has a block of data (plan/phone.py); the lists it picks from are loaded only where
   there are numbers of one's own. Without them, and without this file, nothing changes. */
(function (site) {
  'use strict';

  const { find, all, on, make, json } = site.dom;
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

  /** One side of a bar, inner plate first; the words beside it say the same. */
  function picture(load, units) {
    const { scale, parts } = load;
    if (!parts.length || !['bar', 'hung', 'pivot'].includes(scale.kind)) return null;
    const SVG = 'http://www.w3.org/2000/svg';
    const put = (tag, values, text) => {
      const made = document.createElementNS(SVG, tag);
      for (const [key, value] of Object.entries(values)) made.setAttribute(key, value);
      if (text) made.textContent = text;
      return made;
    };
    const most = Math.max(...scale.parts);
    const width = 14 + parts.length * 30;
    const drawn = put('svg', { viewBox: `0 0 ${width} 62`, width, height: 62, 'aria-hidden': true });
    drawn.append(put('path', { d: `M0 24H${width}M8 18v12` }));
    parts.forEach((part, place) => {
      const tall = 14 + 30 * Math.sqrt(part / most);
      const x = 12 + place * 30;
      drawn.append(
        put('rect', { x: x + 6, y: 24 - tall / 2, width: 14, height: tall, rx: 2 }),
        put('text', { x: x + 13, y: 59 }, site.words.bare(part, units)));
    });
    return make('span', 'sh-mine-bar', drawn);
  }

  /** A missing number, and where to enter it. */
  function missing(need, lists) {
    const name = need === 'body' ? 'Your body weight' : lists.bases[need][0];
    return make('p', '', name + ' is not in ', site.dom.link(root + 'my-numbers/', 'my numbers'), ' yet.');
  }

  /** A load in one line. */
  function said(load, lists) {
    const { amount, made } = site.words;
    return make('span', '', make('b', '', amount(load, lists.units)), ' ' + made(load, lists.units));
  }

  /** The loads that today's recipe comes to, as the parts of a panel. */
  function shown(recipe, me, lists) {
    const { loads, words } = site;
    const load = loads.make(recipe, me, lists);
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
        picture(load, lists.units),
        ...notes.filter(Boolean).map(text => make('p', 'sh-note', text)),
        recipe.t && byTop(recipe, me, lists),
      ],
    };
  }

  /** A field for today's top set, and what follows from it. */
  function byTop(recipe, me, lists) {
    const { loads, words } = site;
    const { units } = lists;
    const field = make('input', { inputMode: 'decimal', autocomplete: 'off' });
    const result = make('output');
    const expected = loads.expectedTop(recipe, me, lists);
    const show = () => {
      const top = loads.toGrams(field.value, units);
      result.replaceChildren();
      if (!field.value.trim()) return;
      const ok = top !== null && top > 0 && top <= MOST;
      const load = ok && loads.backOff(recipe, top, me, lists);
      result.append(!ok ? 'Write a number, such as 62.5.'
        : load.need ? missing(load.need, lists) : make('span', '', 'Then ', said(load, lists)));
      const drawn = load && !load.need && picture(load, units);
      if (drawn) result.append(drawn);
    };
    on(field, 'input', show);
    const hint = expected === null ? '' : ' (expect about ' + words.bare(expected, units) + ')';
    return make('p', '', make('label', '', `My top today, ${units}${hint} `, field), ' ', result);
  }

  /** Everything else that follows from the load, a line each. */
  function more(recipe, load, me, lists) {
    const { loads, words } = site;
    const { units } = lists;
    const lines = [];
    const add = (name, ...text) => lines.push(make('li', '', name + ': ', ...text));
    const ramp = loads.ramp(recipe, me, lists);
    if (ramp) {
      add('Warm-up', ramp.map(step => {
        const change = words.moves(step, units);
        return words.bare(step.grams, units) + (step.reps ? ' × ' + step.reps : '') +
          (change ? ` (${change})` : '');
      }).join(', ') + '.');
    }
    const ladder = loads.ladder(recipe, me, lists);
    if (ladder) {
      const steps = ladder.steps.map(step =>
        `${words.amount(step.load, units)} for ${step.reps.join(' to ')}`);
      add('Way up', [...steps, 'first attempt '].join(', '), said(ladder.first, lists));
      if (ladder.up) add('Good attempt', words.span(ladder.up, units));
      if (ladder.down) add('Missed attempt', words.span(ladder.down, units));
    }
    if (load && recipe.c !== undefined) {
      const strips = loads.strips(recipe, load, lists);
      add('Strips', strips === null
        ? 'what is here allows no such strips; take the next lighter load each time.'
        : strips.map(({ grams, off, hold }) => words.mass(grams, units) +
          (off.length ? ` (${words.moves({ off }, units)}${hold ? ', somebody holds the bar' : ''})` : ''))
          .join(' → '));
    }
    for (const [place, own] of recipe.d || []) {
      // Without a load of today's, only what my numbers decide is news.
      const found = load || (own.z === undefined && own.f === undefined)
        ? loads.door(own, load, me, lists) : null;
      if (found && !found.need) add(lists.doors[place], said(found, lists));
    }
    for (const [when, move] of (load && recipe.n) || []) {
      const found = loads.next(move, load, me, lists);
      if (found) add('Next time. ' + when, said(found, lists));
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
    const own = me();
    if (site.store.trouble()) say(site.store.trouble());
    if (!own) return;
    const recipes = blocks.map(json);
    const now = ++turn;
    withLists(lists => {
      if (now !== turn) return;
      let panels;
      try {
        panels = recipes.map(recipe => panel(recipe, own, lists));
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

  site.mine = { isMine, me, withLists };
  on(document, 'DOMContentLoaded', () => fill());
  on(globalThis, 'pageshow', event => event.persisted && fill());
  on(globalThis, 'storage', event => (event.key || ' mine').endsWith(' mine') && fill());
})(globalThis.strengthHandbook);
