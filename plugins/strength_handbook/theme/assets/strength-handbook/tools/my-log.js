/* The member's log: finished sessions as session mode keeps them (log/<program>/<week>/<session>),
   entries by hand (by-hand: a list of {day, exercise, load, reps, effort, note}), and a trend. */
import * as days from '../days.js';
import { find, on, make, json, some, button, tell } from '../dom.js';
import * as words from '../load-words.js';
import * as record from '../record.js';
import * as store from '../store.js';
import { toGrams } from '../whole-numbers.js';
import { apart, doneSet } from './done-words.js';

const form = find('[data-sh-log]');
function start() {
  const { units } = form.dataset;
  const { elements } = form;
  const more = button('', () => {
    most += AT_ONCE;
    show('');
  });
  const [list, drawing, only] = ['list', 'trend', 'only'].map(name => find('#sh-log-' + name));
  const says = form.lastElementChild;
  const buttons = says.previousElementSibling;
  const plans = json(find('.sh-log-plans'));
  const AT_ONCE = 50; // entries: a phone is slow with thousands
  const MOST_POINTS = 100;
  let most = AT_ONCE;
  /** @type {any} */
  let changed = null; // the entry that the form corrects

  const { byHand } = record;
  const names = new Map([...elements.exercise.options].map(one => [one.value, one.text]));
  const name = id => names.get(id) || id;
  const own = (from, key) => (Object.hasOwn(from, key) ? from[key] : undefined);
  const after = (one, text) => (one === null || one === undefined || one === '' ? '' : text + one);

  /** What the handbook knows of a session: title, exercises by order, variants. */
  function planOf({ program, week, session }) {
    const [, , , title = session, slots = {}, variants = []] = (own(plans, program) || [])
      .find(([first, last, id]) => id === session && first <= week && week <= last) || [];
    return { title, slots, variants };
  }

  const said = grams => words.kept(grams, units);

  /** Seconds or metres of one set or entry. */
  const counted = ({ seconds, metres }) => after(seconds, ' ') + (seconds ? ' s' : '') +
    after(metres, ' ') + (metres ? ' m' : '');

  /** One exercise of a session: its heaviest set, and how many repetitions each had; of strip sets, and
      where sets had other loads, each load in order. What all of it comes to stands behind it. */
  function lifted(one) {
    const { exercise, load, sets } = one;
    const all = record.tonnage(one);
    const tonnage = all === undefined ? '' : `tonnage ${words.mass(all, units)}`;
    if (apart(sets)) {
      return some(', ', name(exercise) + ': ' + sets.map(set => doneSet(set, units)).join('; '), tonnage);
    }
    const reps = sets.map(one => one.reps).filter(one => one !== undefined);
    const same = new Set(reps).size === 1;
    const tries = sets.some(one => one.missed) ? sets.map(one => some(' ', one.missed ? 'missed' : 'good',
      one.grams !== undefined && said(one.grams))).join(', ') : '';
    return some(', ', some(': ', some(' ', name(exercise), load !== undefined && said(load)) +
      (same ? ' × ' + reps[0] : reps.length ? ' × ' + reps.join(' · ') : '') + (sets.length ? counted(sets[0]) : ''), tries), tonnage);
  }

  /** A finished session as an entry: its top lift is the first with a load. */
  function finished({ key, at, log }) {
    const { title, slots, variants } = planOf(at);
    const points = Object.entries(log.slots).map(([order, one]) => ({
      order, exercise: one.exercise || own(slots, order) || order, load: record.heaviest(one), sets: one.sets,
      times: one.times, body: one.body,
    })).filter(one => one.sets.length);
    const top = points.find(one => one.load);
    const { done, of } = record.sum(log);
    return { ...log, key, points, top, exercise: top?.exercise, load: top?.load, reps: null, order: top?.order,
      title: some(', ', `week ${at.week}`, title, at.time > 1 && `time ${at.time}`,
        log.variant !== null && (variants[log.variant] || 'made less'), `${done} of ${of} sets`) };
  }

  /** Everything that is kept, newest first. */
  const entries = () => [
    ...byHand().map((one, place) => ({ ...one, place, points: [one], title: '' })),
    ...record.all().map(finished),
  ].sort((a, b) => (a.day < b.day ? 1 : -1));

  /** An entry in a line: of one exercise, if one is asked for, else of its first with a load. */
  function line(one) {
    const point = one.points.find(({ exercise }) => exercise === only.value) || one.top || one;
    const what = one.key ? point.exercise && lifted(point)
      : name(one.exercise) + (one.load ? ' ' + words.mass(one.load, units) : '') + after(one.reps, ' × ') + counted(one);
    return some('; ', one.title, what, after(one.effort, 'effort '), one.note);
  }

  /** One exercise over time: a line, and the same in words. */
  function trend(all) {
    const points = all.flatMap(one => one.points.filter(({ exercise, load }) => load && exercise === only.value)
      .map(({ load }) => ({ load, day: days.parse(one.day) ?? 0 }))).slice(0, MOST_POINTS).reverse();
    drawing.hidden = points.length < 2;
    if (drawing.hidden) return;
    const spread = (values, size) => {
      const [low, high] = [Math.min(...values), Math.max(...values)];
      return values.map(one => (high > low ? (size * (one - low)) / (high - low) : size / 2));
    };
    const xs = spread(points.map(one => one.day), 280);
    const ys = spread(points.map(one => -one.load), 70);
    find('polyline', drawing).setAttribute('points', xs.map((x, place) => `${x},${ys[place]}`).join(' '));
    drawing.lastElementChild.textContent = points
      .map(({ load, day }) => `${days.iso(day)}: ${said(load)}`).join(', ');
  }

  function change(text, one, run) {
    const made = button(text, run);
    made.setAttribute('aria-label', `${text}: ${days.written(one.day)}, ${line(one)}`);
    return made;
  }

  /** Takes an entry out, or puts another in its place. */
  function put(one, value) {
    if (one && one.key && !value) return store.remove(one.key);
    if (one && one.key) {
      const { day, effort, note, load } = value;
      const log = record.read(store.get(one.key, record.isLog));
      if (!log) return false; // taken out in another tab
      // What is put right is the load that was shown: the heaviest.
      if (load && load !== one.load) {
        for (const set of log.slots[one.order].sets.flatMap(record.loads)) {
          if (set.grams === one.load) set.grams = load;
        }
      }
      return store.set(one.key, { ...log, day, effort, note });
    }
    const all = byHand();
    all.splice(one ? one.place : all.length, 1, ...(value ? [value] : []));
    return record.keepByHand(all);
  }

  /** The form for an entry, or for a new one. */
  function edit(one) {
    changed = one;
    // A test of nothing in the handbook stands under its own words.
    if (one && one.exercise && !names.has(one.exercise)) {
      names.set(one.exercise, one.exercise);
      elements.exercise.append(make('option', { value: one.exercise }, one.exercise));
    }
    elements.day.value = one ? one.day : days.iso(days.number(new Date()));
    for (const field of ['exercise', 'reps', 'effort', 'note']) {
      elements[field].value = (one && one[field]) ?? '';
    }
    elements.load.value = one && one.load ? words.bare(one.load, units) : '';
    elements.exercise.disabled = elements.reps.disabled = !!(one && one.key);
    elements.load.disabled = !!(one && one.key && !one.order);
    elements.load.setAttribute('aria-invalid', false);
    elements.cancel.hidden = !one;
  }

  /** The list, and news behind the part that somebody has just used. */
  function show(text, near) {
    const all = entries();
    const chosen = all.filter(one => !only.value || one.points.some(({ exercise }) => exercise === only.value));
    list.replaceChildren(...chosen.slice(0, most).map(one => make('li', '',
      make('b', '', days.written(one.day)), make('br'), line(one), make('p', 'sh-buttons',
        change('Change', one, () => {
          edit(one);
          elements.day.focus();
        }),
        change('Delete', one, () => {
          put(one);
          edit(null);
          show('Deleted.', only.closest('p'));
          only.focus();
        })))));
    more.hidden = chosen.length <= most;
    more.textContent = `Show ${Math.min(AT_ONCE, chosen.length - most)} more of ${chosen.length}`;
    trend(all);
    tell(says, some(' ', store.trouble(), text, !all.length && 'Nothing kept yet.'), near);
  }

  on(form, 'submit', event => {
    event.preventDefault();
    const text = key => elements[key].value.trim();
    const whole = key => (text(key) ? Number(text(key)) : null);
    const load = text('load') ? toGrams(text('load'), units) : 0;
    if (load === null) {
      tell(says, 'Write a number, such as 72.5.', elements.load.closest('.sh-pairs'));
      elements.load.setAttribute('aria-invalid', true);
      elements.load.focus();
      return;
    }
    const value = { day: text('day'), exercise: elements.exercise.value, load: load || null,
      reps: whole('reps'), effort: whole('effort'), note: text('note') };
    for (const key of ['test', 'seconds', 'metres']) if (changed && !changed.key && changed[key]) value[key] = changed[key];
    if (put(changed, value) === false) return show('');
    edit(null);
    show(`Kept ${store.where()}.`, buttons);
  });
  on(elements.cancel, 'click', () => edit(null));
  on(only, 'change', () => show(''));
  list.after(more);
  form.parentNode.hidden = false;
  find('[data-sh-without]').hidden = true;
  edit(null);
  show('');
}

if (form) start();
