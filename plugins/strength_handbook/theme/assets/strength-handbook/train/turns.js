/* Session mode where a bar is shared: whose turn it is, what changes on the bar, whose rest runs.

   Everything follows from the taps: ['turn', [order, name, 1 where somebody sits out], at] beside
   those of walk.js, and from the common plan (tools/one-bar.js). Exercises that are done in turn with
   another one, and bars that are too slow for their interval, are not led.

   at(app)          null, or {o, units, turn, mine, from, set, sets, bar: {unhang, off, on, hang}, next}:
                    whose turn it is, and what is to be done on the bar before it
   clock(app, now)  of whoever lifts next, like walk.clock */
import { find, make } from '../dom.js';
import { lists as kept } from '../load-lists.js';
import * as mine from '../mine.js';
import * as oneBar from '../tools/one-bar.js';
import * as page from './page.js';
import { line } from './parts.js';
import * as walk from './walk.js';

/** @import { Change, Turn } from '../tools/one-bar.js'
    @typedef {{name: string, at: number, out?: number}} Lifted
    @typedef {{o: string, open: number, turn: Turn, mine: boolean, from?: Turn, last?: Lifted, set: number,
      sets: number, bar: Change, next: Turn, before?: Lifted}} State  whose turn it is on a shared bar */

/** @import { App } from './types.js' */

/** The common plan of an exercise; null where nobody shares it now.
    @param {App} app
    @param {string} o */
function planOf(app, o) {
  const alone = app.data.slots.filter(slot => slot.o[0] === o[0]).length === 1;
  const block = alone && kept() && find('.sh-dose-data', page.article(o));
  if (!block || page.less(o)?.querySelector('.sh-dose-data')) return null;
  const plan = oneBar.at(block, kept());
  if (!plan?.turns || !plan.sets || plan.apart) return null;
  const { turns, sets } = plan;
  return turns.some(({ name }) => name === 'me') ? { turns, sets } : null;
}

/** Every set of an exercise so far, in order of time.
    @param {App} app
    @param {string} o
    @returns {Lifted[]} */
function lifted({ acts, list }, o) {
  return acts.flatMap(/** @returns {Lifted[]} */ ([what, which, at]) => {
    if (what === 'turn') return which[0] === o ? [{ name: which[1], at, out: which[2] }] : [];
    const step = /done|set|miss/.test(what) && list[which];
    const ends = step && step.o === o && step.kind === 'set' && (step.last || what === 'set');
    return ends ? [{ name: 'me', at }] : [];
  });
}

/** An exercise on a shared bar: whose turn it is; null where all are through.
    @param {App} app
    @param {string} o
    @returns {State | null} */
function stateOf(app, o) {
  const plan = planOf(app, o);
  if (!plan) return null;
  const own = [...app.list.keys()].filter(place =>
    app.list[place].o === o && app.list[place].kind === 'set' && app.list[place].last);
  const open = own.filter(place => !app.now.marks[place]).length;
  const left = own.filter(place => app.now.marks[place] !== 'out').length;
  const so = lifted(app, o);
  const count = name => (name === 'me' ? left - open : so.filter(one => one.name === name).length);
  const { turns, sets } = plan;
  for (let set = 1; set <= Math.max(sets, left); set += 1) {
    const place = turns.findIndex(({ name }) => count(name) < set && set <= (name === 'me' ? left : sets));
    if (place < 0) continue;
    const turn = turns[place];
    const last = so.findLast(({ out }) => !out);
    const from = last && turns.find(({ name }) => name === last.name);
    return {
      o, open, turn, mine: turn.name === 'me', from, last, set, sets: turn.name === 'me' ? left : sets,
      bar: oneBar.change(from || null, turn), next: turns[(place + 1) % turns.length],
      before: so.findLast(({ name, out }) => name === turn.name && !out),
    };
  }
  return null;
}

/** @param {App} app
    @returns {State | null} */
function at(app) {
  const { step, acts, list } = app;
  // Who lifts after my last set still has one to do, while the list is at another exercise.
  const last = acts.findLast(([what]) => /done|set|miss|turn/.test(what));
  const o = last && (last[0] === 'turn' ? last[1][0] : list[last[1]]?.o);
  if (o && o !== step.o) {
    const left = lifted(app, o).some(({ name }) => name === 'me') && stateOf(app, o);
    if (left && !left.mine && !left.open) return left;
  }
  if (step.kind !== 'set' || !step.o) return null;
  const state = stateOf(app, step.o);
  if (!state || state.mine) return state;
  // Nobody else begins inside my set.
  return step.part === 1 && step.side !== 'right' && !app.now.started ? state : null;
}

/** @param {App} app
    @param {number} now */
function clock(app, now) {
  const { turn } = app;
  if (!turn || turn.mine) return walk.clock(app.list, app.now, now);
  const { r, e } = app.slots[turn.o];
  const since = from => (now - from) / 1000;
  // Inside an interval all follow one clock: that of my next start.
  if (e) return walk.clock(app.list, app.now, now);
  if (turn.before && r) {
    const left = r - since(turn.before.at);
    return { word: left > 0 ? `Rest of ${turn.turn.name}` : `Ready when ${turn.turn.name} is`, left };
  }
  return turn.last ? { word: 'Since the last one', since: since(turn.last.at) } : null;
}

/** @param {State} turn */
const who = ({ mine, turn }) => (mine ? 'My turn' : `${turn.name}’s turn`);

/** What is to be done on the bar, in words; whole where nobody has lifted yet.
    @param {State} turn */
function todo(turn) {
  const { units } = kept();
  const text = oneBar.said(turn.bar, units);
  const { off, on } = turn.bar;
  return make('p', 'sh-train-part', make('b', '', who(turn)), ': ',
    !turn.from && 'from the empty bar, ', off.length + on.length ? mine.plates(text, units) : text, '.');
}

/** For ears.
    @param {App} app
    @param {State} turn */
const said = (app, turn) => `${app.slots[turn.o].name}, ${who(turn)}, set ${turn.set} of ${turn.sets}. ` +
  oneBar.said(turn.bar, kept().units);

/** @param {App} app */
const turnViews = app => {
  /** Somebody else lifts: what changes, how heavy, who comes next. */
  function turn() {
    const now = /** @type {State} */ (app.turn);
    const { name, load, top } = now.turn;
    const lists = kept();
    app.bar(`${name}’s set done`, () => app.act('turn', [now.o, name]),
      `${name} sits out`, () => app.act('turn', [now.o, name, 1]));
    return {
      head: [make('span', 'sh-order', now.o), ' ' + app.slots[now.o].name],
      inside: [
        make('p', 'sh-train-set', make('b', '', `${who(now)}, set ${now.set} of ${now.sets}`)),
        todo(now),
        make('div', 'sh-mine', make('p', '', `${name}: `, mine.said(load, lists),
          top && top.hangs && ', ' + top.what),
        load.parts.length && mine.picture(load.scale, load.parts, lists.units)),
        line(now.next.name === 'me' ? 'Then I lift.' : `Then ${now.next.name} lifts.`),
      ],
    };
  }

  return { turn };
};

export { at, clock, todo, said, who, turnViews };
