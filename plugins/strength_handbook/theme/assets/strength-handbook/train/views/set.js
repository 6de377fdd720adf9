/* Session mode at a set: how heavy, how it is done, when to stop. */
import * as days from '../../days.js';
import { find, on, make, some } from '../../dom.js';
import * as say from '../../load-words.js';
import * as mine from '../../mine.js';
import * as record from '../../record.js';
import * as guide from '../guide.js';
import * as page from '../page.js';
import { line, parts } from '../parts.js';
import * as steps from '../steps.js';
import * as turns from '../turns.js';
import * as walk from '../walk.js';

/** @import { Lists, Load, SeriesLoad, StripLoad } from '../../types.js'
    @import { App, Step } from '../types.js' */

/** @param {Step} step */
const repsWords = ({ each: [low, high] = [1, 1] }) => `${low === high ? low : low + ' to ' + high} repetition${high === 1 ? '' : 's'}`;

/** @param {App} app */
const setViews = app => {
  const { heading, done, anyLoad } = parts(app);

  /** Words of the button; of the one besides, and what that does.
      @param {Step} step
      @returns {[string, string?, ('count' | 'set' | 'miss')?]} */
  function doneWords({ many, kind, part = 1, parts = 1, strip, turn, attempt, last, open, each }) {
    if (kind === 'top') return ['Top set done'];
    if (part < parts) return strip ? ['Next load', 'Set done', 'set'] : ['Part done'];
    if (turn) return ['Left done'];
    if (attempt) return ['Good', 'Missed', 'miss'];
    const asks = last && !open && (strip || many || (each && each[1] > 1 && parts === 1)) && !app.now.doors[app.step.o];
    return asks ? ['Set done', each && each[0] === each[1] ? 'Fewer reps' : 'How many?', 'count'] : ['Set done'];
  }

  /** A load with its plates, large. */
  const large = (load, lists, ...more) => load && !load.need && load.grams !== null &&
    make('div', 'sh-mine', make('p', '', mine.said(load, lists)), ...more);

  /** The same with its picture.
      @param {Load | undefined} load
      @param {Lists} lists
      @param {any} [more] */
  const drawn = (load, lists, more = '') => large(load, lists, more,
    load?.parts.length ? mine.picture(load.scale, load.parts, lists.units) : '');

  /** The load that is on now in a strip set, as big as the first one was.
      @param {string} o
      @param {StripLoad} now */
  function onNow(o, { grams, off = [], hold, parts, says }) {
    const { lists, load } = app.today.known(o);
    const { units } = lists;
    const change = off.length ? ` (off ${say.joined(off, units)})` : '';
    return make('div', 'sh-mine', make('p', '', 'Mine now: ', mine.figure(says || say.mass(grams, units)), change,
      hold && make('b', '', ', somebody holds the bar')), mine.picture(load.scale, parts, units) || '');
  }

  /** The load of one of the sets that differ: all that is on now, and what has moved for it.
      @param {string} o
      @param {SeriesLoad} one */
  function onBar(o, one) {
    const { lists } = app.today.known(o);
    const change = say.moves(one, lists.units);
    return large(one.load, lists, change && line(`Since the set before: ${change}`),
      mine.seriesPicture(one, lists.units));
  }

  /** What to put on for an attempt: the least that is worth it, and how far one may go. */
  function attempt(o, at) {
    const { lists } = app.today.known(o) || {};
    const { low, high } = app.today.attempts(o).find(({ place }) => place === at) ?? {};
    const { k: unit = app.data.units, j } = app.slots[o];
    const own = app.today.grams(app.today.trying(o, at));
    const other = make('p', 'sh-field',
      ...anyLoad(!!j, app.today.trying(o, at), `I try another load, ${unit}`, own ? undefined : low?.grams ?? undefined));
    on(other, 'change', () => app.show('step'));
    return [
      own ? make('div', 'sh-mine', make('p', '', make('b', '', say.kept(own, app.data.units))))
        : lists && drawn(low, lists, high && Number(high.grams) > Number(low?.grams) && line(`up to ${say.amount(high, lists.units)}`)),
      lists && !low && !own && line('No load here is left to try: the test is over.', 'sh-train-part'),
      other,
    ];
  }

  /** The last time, where no number of mine says how heavy. */
  function lastTime(slot) {
    const last = record.last(slot.i);
    if (!last) return '';
    const sets = last.sets.map(one => record.loads(one).flatMap(({ grams, reps }) => (grams
      ? [say.kept(grams, app.data.units) + (reps ? ' × ' + reps : '')] : []))
      .join(' → ')).filter(Boolean);
    return line(`Last time, ${days.written(last.day)}: ${[...new Set(sets)].join(', ')}`, 'sh-train-part');
  }

  /** A door that was taken, in its own words. */
  function instead(o, key) {
    const { what } = page.doors(o).find(one => one.key === key) || {};
    const { lists } = app.today.known(o) || {};
    const load = app.today.ofDoor(app.step, key);
    const copy = what ? make('p', '', ...what.cloneNode(true).childNodes) : '';
    return [line(`Instead: ${app.doorName(o, key)}`, 'sh-train-part'), copy, load && drawn(load, lists)];
  }

  function set() {
    const { step, now, list } = app;
    const { o, part = 1, parts = 1 } = step;
    const slot = app.slots[o];
    const own = page.article(o);
    const less = page.less(o);
    const door = now.doors[o];
    const other = slot.d?.[door]; // another exercise has words of its own
    const copy = (select, from = own) => find(select, from)?.cloneNode(true);
    if (walk.waits(list, now)) app.bar('Start', () => app.act('start', now.at));
    else done(...doneWords(step));
    const strip = step.strip && app.today.strips(o)?.[part - 1];
    const { recipe, load: planned } = app.today.known(o) || {};
    const load = planned || (recipe?.t && app.today.top(o));
    const one = app.today.oneOf(step);
    const noTop = slot.v?.[now.vary]?.top === 0;
    const panel = noTop && !page.hasOwn(o) ? undefined : page.borrow(page.panel(o));
    const mySteps = panel && page.borrow(find('details', panel));
    // Without a top set there is nothing after it.
    const drawers = page.drawers(o).filter(one => !noTop || find('[data-door]', one)).map(page.borrow);
    const { t = slot.t, y = slot.y || [], z = slot.z } = { ...slot.v?.[now.vary] };
    const [inWords, ...notes] = page.copies(own, ':scope > .sh-words');
    const [floor, cap] = step.open || [];
    const reps = step.open ? cap || 0 : step.kind === 'top' || (parts > 1 && !step.strip) ? step.reps : step.each?.[1] || 0;
    // Of a strip set each load that nobody knows is asked for.
    const free = step.kind === 'set' && slot.k && !door && !step.attempt && (step.strip && part > 1 ? !strip : !load);
    const hasPanel = panel && panel.children.length; // not where only the steps were in it
    return {
      head: heading(),
      inside: [
        make('p', 'sh-train-set', make('b', '', steps.name(step)), page.tally(list, now)),
        app.turn && turns.todo(app.turn),
        ...(door ? instead(o, door) : []),
        copy('.sh-setup'),
        floor && line('At least ' + some(', at most ', floor, cap) + '. You count.', 'sh-train-part'),
        step.alike !== undefined && !floor && line(`This set: ${repsWords(step)}`, 'sh-train-part'),
        parts > 1 && !step.strip && line(`This part: ${step.reps} repetition${step.reps === 1 ? '' : 's'}`, 'sh-train-part'),
        ...(step.attempt ? attempt(o, now.at) : door ? []
          : [(strip && part > 1 && onNow(o, strip)) || (one && onBar(o, one)) || (hasPanel && panel)]),
        copy('.sh-dose', less),
        ...(door ? [] : y.map(words => line(words))),
        free && lastTime(slot),
        free && make('p', 'sh-field', ...anyLoad(!!slot.j, app.today.fieldOf(step), `I take, ${slot.k}`)),
        !door && (copy('.sh-heavy-line') || (!panel && drawers.shift())),
        line((other || slot).x, 'sh-train-stop'), // before the cues: it is never below the fold
        !other && copy('.sh-voice'),
        !door && t?.length && guide.tempo(app, 'Tempo ' + z, t, reps),
        ...(other ? [] : [...page.copies(less, '.sh-note'), ...notes]).map(one => line(one)),
      ],
      more: [mySteps, ...drawers, !less && !other && line(inWords, 'sh-note')],
    };
  }

  return { top: set, set };
};

export { setViews };
