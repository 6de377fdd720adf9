/* Session mode after the last set: what was done, how hard it was, one word. Every field is kept with every
   letter; nothing is kept in the log while a field says nothing that can be used. */
import { find, on, make, some } from '../../dom.js';
import * as record from '../../record.js';
import * as running from '../../running.js';
import * as store from '../../store.js';
import * as log from '../log.js';
import { line, parts } from '../parts.js';
import * as steps from '../steps.js';

/** @import { App } from '../types.js' */

/** @param {App} app */
const endViews = app => {
  const { called, field, anyLoad } = parts(app);

  const noCounts = text => log.counts(text) ? '' : 'Write numbers, such as 5 5 4.';

  /** Loads of one exercise as fields: of each attempt, of the top set, of the others. */
  function loads(o, one) {
    const { d = {}, ...slot } = app.slots[o];
    const { k, j } = d[one.door] || slot;
    const { today } = app;
    const tries = today.attempts(o).filter(({ good }) => good !== undefined);
    if (tries.length) {
      return tries.flatMap(({ place, good, grams }, number) =>
        anyLoad(!!j, today.trying(o, place), `Attempt ${number + 1}, ${good ? 'good' : 'missed'}, ${k || app.data.units}`, grams));
    }
    const has = kind => log.over(app, o).some(place => app.list[place].kind === kind);
    const known = one.sets.find(set => !set.top && set.grams !== undefined)?.grams;
    const places = log.over(app, o);
    if (places.length && app.list[places[0]].strip && !one.door) {
      return k ? steps.strips(app.list, places[0]).flatMap(place => {
        const step = app.list[place];
        return anyLoad(!!j, today.fieldOf(step), `Load ${step.part} of ${step.parts}, ${k}`, today.gramsOf(step, place));
      }) : [];
    }
    const kinds = [...new Map(places.map(place => [app.list[place].alike, place])).entries()];
    if (kinds.length > 1 && !one.door && k) {
      return kinds.flatMap(([, place]) => anyLoad(!!j, today.fieldOf(app.list[place]),
        `${steps.name(app.list[place])}, ${k}`, today.gramsOf(app.list[place], place)));
    }
    return [
      ...(has('top') ? anyLoad(false, 'top.' + o, `Top set, ${k || app.data.units}`) : []),
      ...(has('set') && k ? anyLoad(!!j, 'load.' + o, `${j ? 'Belt or help' : 'Load'}, ${k}`, known) : []),
    ];
  }

  function row([o, one]) {
    const { sets, of, exercise } = one;
    const tries = app.slots[o].a ? sets.map(set => (set.missed ? 'missed' : 'good')) : [];
    const words = some(', ', `${called(o)}: ${sets.length} of ${of}`, ...tries);
    const door = one.door && some(', ', 'done instead', exercise && app.doorName(o, one.door));
    if (!sets.length) return make('li', '', line(words), door && line(door, 'sh-note'));
    const strips = app.slots[o].l && !one.door;
    const every = strips ? sets.flatMap(record.loads) : sets;
    const known = every.every(set => set.reps !== undefined) ? every.map(set => set.reps).join(' ') : '';
    return make('li', 'sh-field', make('p', '', make('b', '', words)), door && line(door, 'sh-note'),
      ...loads(o, one), ['q', 'c', 'l', 'D', 'N'].some(key => app.slots[o][key])
        ? field((strips ? 'strips.' : 'reps.') + o, `Repetitions, ${strips ? 'load by load' : 'set by set'}`, noCounts, known) : '');
  }

  function end() {
    const efforts = make('div', 'sh-train-efforts', ...[...Array(11).keys()].map(value =>
      make('label', '', make('input', { type: 'radio', name: 'sh-effort', value, checked: app.typed.effort === `${value}` }),
        make('span', '', `${value}`))));
    on(efforts, 'change', ({ target }) => app.type('effort', target.value));
    const says = make('p', { className: 'sh-error', role: 'alert' });
    const list = make('ul', 'sh-train-list', ...Object.entries(log.slots(app)).map(row));
    app.bar(`Keep it ${store.where()}`, () => {
      const wrong = find('[aria-invalid=true]', list);
      says.textContent = wrong ? 'Not kept yet: see the field that is marked.' : '';
      if (wrong) return wrong.focus();
      app.ready = log.make(app);
      if (record.of(running.at).length) return app.show('twice', true);
      return app.finish(app.ready, record.free(running.at));
    });
    return {
      head: [app.data.close],
      inside: [
        says, list,
        make('fieldset', '', make('legend', '', 'Effort of the whole session, 0 to 10'), efforts),
        make('p', 'sh-field', field('note', 'One word', null, '', { maxLength: record.MOST })),
      ],
    };
  }

  return { end };
};

export { endViews };
