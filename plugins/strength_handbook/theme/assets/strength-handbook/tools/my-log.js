/* The member's log: finished sessions as session mode keeps them (log/<program>/<week>/<session>),
   entries by hand (by-hand: a list of {day, exercise, load, reps, effort, note}), and a trend. */
(function (site) {
  'use strict';

  const { days, store, loads, words } = site;
  const { find, on, make, json, some, button } = site.dom;
  const form = find('[data-sh-log]');
  if (!form) return;
  const { units } = form.dataset;
  const { elements } = form;
  const [list, drawing, only] = ['list', 'trend', 'only'].map(name => find('#sh-log-' + name));
  const says = form.lastElementChild;
  const plans = json(find('.sh-log-plans'));
  const HAND = 'by-hand';
  let changed = null; // the entry that the form corrects

  const isText = value => typeof value === 'string';
  const isHand = all => all.every(one => days.parse(one.day) !== null && isText(one.exercise) &&
    isText(one.note) && [one.load, one.reps, one.effort].every(value => value === null || value >= 0));
  const isLog = value => days.parse(value.day) !== null && isText(value.note) &&
    Object.values(value.sets).every(one => isText(one.load) && one.done >= 0 && one.of >= 0);
  const byHand = () => store.get(HAND, isHand) || [];
  const name = id => ([...elements.exercise.options].find(one => one.value === id) || { text: id }).text;
  /** A load as it stands in the log, `+7.5 kg = …`; null for help and for none. */
  const grams = text => loads.toGrams((/^\+?([\d.]+)\s(?!.*of help)/.exec(text) || [])[1] || '', units);
  const after = (one, text) => (one === null || one === '' ? '' : text + one);

  /** A finished session as an entry: its top set is the first with a load. */
  function finished(key, value) {
    const [, program, week, session] = key.split('/');
    const [, , , title, slots] = (plans[program] || [])
      .find(([first, last, id]) => id === session && first <= week && week <= last) || [0, 0, 0, session, {}];
    const points = Object.entries(value.sets).map(([order, one]) => ({
      order, exercise: slots[order] || order, load: grams(one.load),
    }));
    const [top = {}] = points.filter(one => one.load);
    const sum = part => Object.values(value.sets).reduce((all, one) => all + one[part], 0);
    return { ...value, key, points, exercise: top.exercise, load: top.load, reps: null, order: top.order,
      title: some('; ', `week ${week}, ${title}, ${sum('done')} of ${sum('of')} sets`,
        ...Object.values(value.sets).map(one => one.tries)) };
  }

  /** Everything that is kept, newest first. */
  function entries() {
    const keys = Object.keys(store.all()).filter(key => key.startsWith('log/'));
    return [
      ...byHand().map((one, place) => ({ ...one, place, points: [one], title: '' })),
      ...keys.flatMap(key => {
        const value = store.get(key, isLog);
        return value ? [finished(key, value)] : [];
      }),
    ].sort((a, b) => (a.day < b.day ? 1 : -1));
  }

  function line(one) {
    const top = one.exercise && name(one.exercise) + (one.load ? ' ' + words.mass(one.load, units) : '') +
      after(one.reps, ' × ');
    return some('; ', one.title, top, after(one.effort, 'effort '), one.note);
  }

  /** One exercise over time: a line, and the same in words. */
  function trend(all) {
    const points = all.flatMap(one => one.points.filter(({ exercise, load }) => load && exercise === only.value)
      .map(({ load }) => ({ load, day: days.parse(one.day) }))).reverse();
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
      .map(({ load, day }) => `${days.iso(day)}: ${words.mass(load, units)}`).join(', ');
  }

  function change(text, one, run) {
    const made = button(text, run);
    made.setAttribute('aria-label', `${text}: ${days.long(days.parse(one.day))}, ${line(one)}`);
    return made;
  }

  /** Takes an entry out, or puts another in its place. */
  function put(one, value) {
    if (one && one.key && !value) return store.remove(one.key);
    if (one && one.key) {
      const { day, effort, note, load } = value;
      const { sets } = store.get(one.key, isLog);
      if (load && load !== one.load) sets[one.order].load = words.mass(load, units);
      return store.set(one.key, { day, sets, effort, note });
    }
    const all = byHand();
    all.splice(one ? one.place : all.length, 1, ...(value ? [value] : []));
    return store.set(HAND, all);
  }

  /** The form for an entry, or for a new one. */
  function edit(one) {
    changed = one;
    elements.day.value = one ? one.day : days.iso(days.number(new Date()));
    for (const field of ['exercise', 'reps', 'effort', 'note']) {
      elements[field].value = (one && one[field]) ?? '';
    }
    elements.load.value = one && one.load ? words.bare(one.load, units) : '';
    elements.exercise.disabled = elements.reps.disabled = !!(one && one.key);
    elements.load.disabled = !!(one && one.key && !one.order);
    elements.cancel.hidden = !one;
  }

  function show(text) {
    const all = entries();
    const chosen = all.filter(one => !only.value || one.points.some(({ exercise }) => exercise === only.value));
    list.replaceChildren(...chosen.map(one => make('li', '',
      make('b', '', days.long(days.parse(one.day))), make('br'), line(one), make('p', 'sh-buttons',
        change('Change', one, () => {
          edit(one);
          elements.day.focus();
        }),
        change('Delete', one, () => {
          put(one);
          edit(null);
          show('Deleted.');
        })))));
    trend(all);
    says.textContent = some(' ', store.trouble(), text, !all.length && 'Nothing kept yet.');
  }

  on(form, 'submit', event => {
    event.preventDefault();
    const text = key => elements[key].value.trim();
    const whole = key => (text(key) ? Number(text(key)) : null);
    const load = text('load') ? loads.toGrams(text('load'), units) : 0;
    if (load === null) {
      says.textContent = 'Write a number, such as 72.5.';
      elements.load.focus();
      return;
    }
    const value = { day: text('day'), exercise: elements.exercise.value, load: load || null,
      reps: whole('reps'), effort: whole('effort'), note: text('note') };
    if (put(changed, value) === false) return show('');
    edit(null);
    show('Kept on this phone.');
  });
  on(elements.cancel, 'click', () => edit(null));
  on(only, 'change', () => show(''));
  form.parentNode.hidden = false;
  find('[data-sh-without]').hidden = true;
  edit(null);
  show('');
})(globalThis.strengthHandbook);
