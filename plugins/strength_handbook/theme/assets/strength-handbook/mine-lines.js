/* A load of the member's own as parts of a page: in one line, drawn, step by step, and what follows
   from it. What the numbers are, loads.js says; where they go, mine.js. */
import { ladderOf } from './attempts.js';
import { make } from './dom.js';
import * as words from './load-words.js';
import * as loads from './loads.js';
import { plateChange, rampOf } from './ramps.js';
import { stripsOf } from './strips.js';

/** @import { Attempt, Lists, Load, Me, Recipe, Scale, SeriesLoad, Units } from './types.js'
    @typedef {{parts: number[], grams?: number, reps?: number, on?: number[], off?: number[], hold?: boolean,
      says?: string}} Change  of a bar: what is on it then, and what came on or off */

/** One side of a bar, or what hangs on a belt or lies in a pack, inner plate first; the words beside it
    say the same. From a place on the plates move, `is-on` or `is-off`.
    @param {Scale | null} scale
    @param {number[]} parts
    @param {Units} units
    @param {number} [from]
    @param {string} [moves] */
const picture = (scale, parts, units, from = parts.length, moves = '') => scale && /bar|hung|pivot/.test(scale.kind) &&
  make('span', { className: 'sh-mine-bar' + (scale.kind === 'hung' ? ' is-hung' : ''), ariaHidden: true, style: `width: ${24 + 28 * parts.length}px` },
    ...parts.map((part, place) => {
      const style = `height: ${14 + 30 * Math.sqrt(part / scale.parts[0])}px`;
      const plate = make('i', { className: place >= from ? moves : '', style });
      plate.dataset.kg = words.stamped(part, units);
      return plate;
    }));

/** Words about plates, which ears hear in other words.
    @param {string} text
    @param {Units} units */
const plates = (text, units, more = '') => text &&
  make('span', { role: 'img', ariaLabel: words.heard(text + more, units) }, text);

/** Steps below each other: the bar as it then stands, and what changed on each side.
    @param {Change[]} list
    @param {Scale | null} scale
    @param {Units} units
    @param {string} [between] */
const steps = (list, scale, units, between) => make('ol', 'sh-steps', ...list.map((step, place) => {
  const { grams = 0, reps, parts, on, off = [], hold, says } = step;
  const change = words.moves(step, units);
  return make('li', '',
    on ? picture(scale, parts, units, parts.length - on.length, 'is-on')
      : picture(scale, [...parts, ...off.slice().reverse()], units, parts.length, 'is-off'),
    make('span', '', says || words.mass(grams, units), reps && ' × ' + reps, !says && change && ' ',
      !says && change && plates(`(${change})`, units, ' a side'), hold && make('b', '', ', somebody holds the bar'),
      list[place + 1] && between));
}));

/** A load in one line.
    @param {Load} load
    @param {{units: Units}} lists */
const said = (load, { units }) => make('span', '', figure(words.amount(load, units)), ' ',
  plates(words.made(load, units), units));

/** One of the sets that differ, in a line: its load, and what it is made of or what moves before it.
    @param {SeriesLoad} one
    @param {{units: Units}} lists */
function seriesLine({ words: sets, load, off, on }, { units }) {
  const change = words.moves({ off, on }, units);
  return make('span', '', sets + ': ', figure(words.amount(load, units)), ' ',
    change ? plates(`(${change})`, units, sideOf(load)) : plates(words.made(load, units), units));
}

/** Where plates move, for ears.
    @param {Load} load */
const sideOf = ({ scale }) => (scale && scale.kind === 'bar' ? ' a side' : '');

/** What is on for one of the sets that differ: plates that went on last stand out.
    @param {SeriesLoad} one
    @param {Units} units */
const seriesPicture = ({ load, on }, units) =>
  load.parts.length && picture(load.scale, load.parts, units, load.parts.length - on.length, 'is-on');

/** All of them, one below the other.
    @param {SeriesLoad[]} sets
    @param {Lists} lists */
const series = (sets, lists) => make('ol', 'sh-steps', ...sets.map(one =>
  make('li', '', seriesPicture(one, lists.units), seriesLine(one, lists))));

/** How heavy; where it is short, session mode has room to show it very large.
    @param {string} text */
const figure = text => make('b', text.length < 10 ? 'sh-mine-large' : '', text);

/** Everything else that follows from the load, a line each.
    @param {Recipe} recipe
    @param {Load | null} load
    @param {Me} me
    @param {Lists} lists */
function following(recipe, load, me, lists) {
  const { units } = lists;
  /** @type {HTMLElement[]} */
  const lines = [];
  /** @param {string} name
      @param {...any} text */
  const add = (name, ...text) => lines.push(make('li', '', name + ': ', ...text));
  const ramp = recipe.r ? rampOf(recipe, me, lists) : [];
  if (ramp.length) {
    const last = ramp[ramp.length - 1];
    const before = ramp[ramp.length - 2]?.parts ?? [];
    // Strips have a stack of their own.
    if (load && last.grams === load.grams) Object.assign(last, { parts: load.parts }, plateChange(before, load.parts));
    add('Warm-up', steps(ramp, lists.scales[recipe.s ?? ''], units, ', '));
    const less = load && load.grams !== null ? (last.grams - load.grams) / 2 : 0;
    if (less && !recipe.k) add('After a top of ' + words.mass(last.grams, units), words.mass(less, units), ' less on each side');
  }
  const ladder = ladderOf(recipe, me, lists);
  if (ladder) {
    /** @param {Load} load
        @param {string} before
        @param {string} [after] */
    const up = (load, before, after) => make('li', '',
      load.parts.length && picture(load.scale, load.parts, units), make('span', '', before, said(load, lists), after));
    add('Way up', make('ol', 'sh-steps', ...ladder.steps.map(({ load, reps }) =>
      up(load, '', ` for ${reps.join(' to ')}, `)), up(ladder.first, 'first attempt ')));
    /** @param {string} name
        @param {Attempt | null} next */
    const then = (name, next) => next && add(name, words.span([next.low, next.high], units));
    then('Good attempt', ladder.good);
    then('Missed attempt', ladder.missed);
  }
  if (load && recipe.c !== undefined) {
    const strips = stripsOf(recipe, load, lists);
    add('Strips', strips === null
      ? 'what is here allows no such strips; take the next lighter load each time.'
      : steps(strips, load.scale, units, ' → '));
  }
  for (const [place, door] of recipe.d || []) {
    // Without a load of today's, only what my numbers decide is news.
    const found = load || (door.z === undefined && door.f === undefined)
      ? loads.door(door, load, me, lists) : null;
    if (found && found.need === undefined) add(lists.doors[place], said(found, lists));
  }
  if (!load) return lines;
  for (const [when, move] of recipe.n ?? []) {
    const found = loads.next(move, load, me, lists);
    if (found) add('Next time. ' + when, make('b', '', words.amount(found, units)));
    // A point or two more may be less than the next plate.
    else if (move.p !== undefined && load.grams !== null) add('Next time. ' + when, 'the same plates as today');
  }
  return lines;
}

export { picture, plates, said, seriesLine, seriesPicture, series, figure, steps, following };
