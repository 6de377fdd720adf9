/* What session mode shows: for each kind of step, and between them, {head, inside, more}: a heading,
   what stands under it, and what may be opened below. Each view also sets the large button. */
(function (site) {
  'use strict';

  const { train, dom: { find, on, make, button, some } } = site;
  const { page, walk, steps, log, guide } = train;
  const line = (words, name) => words && make('p', name, words);

  train.views = app => {
    const called = order => `${order} ${app.slots[order].name}`;
    const heading = () => [make('span', 'sh-order', app.step.o), ' ' + app.slots[app.step.o].name];
    const done = (words, besides, what) => app.bar(
      words, () => app.act('done', app.now.at), besides, () => app.act(what, app.now.at));

    /** Lines to tick off; ticks are kept. */
    function tickList(lines) {
      return make('ul', 'sh-train-ticks', ...lines.map((words, number) => {
        const name = `${app.now.at}.${number}`;
        const box = make('input', { type: 'checkbox', checked: app.ticks.includes(name) });
        on(box, 'change', () => {
          app.ticks = app.ticks.filter(one => one !== name).concat(box.checked ? name : []);
          app.keepNow();
        });
        return make('li', '', make('label', '', box, words));
      }));
    }

    function warm() {
      done('Warm-up done');
      return {
        head: [find('#warm-up').firstChild.textContent],
        inside: [tickList(page.texts(document, '#warm-up + ol > li'))],
      };
    }

    /** Steps up to the first set: the member's own to tick off, or the page's. */
    function up() {
      const { o } = app.step;
      done('Steps done');
      const lines = [...page.ownLine(o, 'Warm-up', /, (?=\d)/),
        ...page.ownLine(o, 'Way up', /, (?=[\d+]|body|bare|first)/)];
      const drawer = page.drawers(o).find(one => /teps/.test(one.firstElementChild.textContent));
      return {
        head: heading(),
        inside: [line(steps.name(app.step), 'sh-train-set'), ...(lines.length ? [tickList(lines)]
          : [line('Small steps up to today’s load.'), page.borrow(drawer && drawer.lastElementChild)])],
      };
    }

    function doneWords({ kind, part, parts, strip, turn, attempt }) {
      if (kind === 'top') return ['Top set done'];
      if (part < parts) return strip ? ['Next load', 'Set done', 'set'] : ['Part done'];
      return turn ? ['Left done'] : attempt ? ['Good', 'Missed', 'miss'] : ['Set done'];
    }

    function set() {
      const { step, now, list } = app;
      const { o, part, parts } = step;
      const slot = app.slots[o];
      const own = page.article(o);
      const less = page.less(o);
      const copy = (select, from = own) => find(select, from)?.cloneNode(true);
      if (walk.waits(list, now)) app.bar('Start', () => app.act('start', now.at));
      else done(...doneWords(step));
      const [load] = page.ownLine(o, 'Strips', ' → ').slice(part - 1);
      const panel = page.borrow(page.panel(o));
      const mySteps = panel && page.borrow(find('details', panel));
      const drawers = page.drawers(o).map(page.borrow);
      const tempo = find('.sh-tempo', less || own);
      const [inWords, ...notes] = page.texts(own, ':scope > .sh-words');
      const [floor, cap] = step.open || [];
      return {
        head: heading(),
        inside: [
          make('p', 'sh-train-set', make('b', '', steps.name(step)), page.tally(list, now)),
          copy('.sh-dose', less),
          copy('.sh-setup'),
          floor && line('At least ' + some(', at most ', floor, cap) + '. You count.', 'sh-train-part'),
          parts > 1 && line(step.strip ? load : `Now ${step.reps}`, 'sh-train-part'),
          panel,
          copy('.sh-heavy-line') || (!panel && drawers.shift()),
          tempo && guide.tempo(app, tempo.textContent, slot.u),
          tempo && own.textContent.includes(tempo.textContent) && line(/[^.]*down[^.]*\./.exec(inWords)),
          copy('.sh-voice'),
          line(slot.x, 'sh-train-stop'),
          ...[...page.texts(less, '.sh-note'), ...notes].map(one => line(one)),
        ],
        more: [mySteps, ...drawers, !less && line(inWords, 'sh-note')],
      };
    }

    function end() {
      const sets = log.counted(app.list, app.now);
      /** What was done, and a field for the load: as it stood on the page, of a test still empty. */
      const row = ([order, one]) => {
        const { a } = app.slots[order];
        const [, number, unit] = /^\+?([\d.]*)\s([^=]*)/.exec(one.done && (a ? ' ' + a : one.load)) || [];
        const words = some(', ', `${called(order)}: ${one.done} of ${one.of}`, one.tries, unit);
        if (!unit) return make('li', '', words);
        const field = make('input', { inputMode: 'decimal', autocomplete: 'off', value: number });
        on(field, 'change', () => { one.load = field.value.replace(',', '.') + ' ' + unit; });
        return make('li', 'sh-field', make('label', '', words, field));
      };
      const efforts = make('div', 'sh-train-efforts', ...[...Array(11).keys()].map(value =>
        make('label', '', make('input', { type: 'radio', name: 'sh-effort', value }), make('span', '', `${value}`))));
      const note = make('input', { maxLength: log.MOST, autocomplete: 'off' });
      app.bar('Keep it on this phone', () => {
        const chosen = find(':checked', efforts);
        app.finish(sets, chosen ? Number(chosen.value) : null, note.value);
      });
      return {
        head: [find('.sh-foot').textContent.split('.')[0]],
        inside: [
          make('ul', 'sh-train-list', ...Object.entries(sets).map(row)),
          make('fieldset', '', make('legend', '', 'Effort of the whole session, 0 to 10'), efforts),
          make('p', 'sh-field', make('label', '', 'One word', note)),
        ],
      };
    }

    /** Late, or another order. */
    function plan() {
      const { list, now } = app;
      const late = find('.sh-late');
      app.bar('Back', () => app.show('step'));
      const row = ([order, one]) => {
        const own = [...list.keys()].filter(place => list[place].o === order);
        const open = own.find(place => !now.marks[place]);
        const can = (words, ...what) => {
          const made = button(words, () => app.act(...what));
          made.ariaLabel = `${words}: ${called(order)}`;
          return made;
        };
        return make('li', '', line(`${called(order)}: ${one.done} of ${one.of} done`),
          make('div', 'sh-train-row', ...(open === undefined ? [] : [can('Go here', 'go', open),
            can('One set less', 'less', order, 'plan'), can('Leave out', 'out', order, 'plan')]),
          own.some(place => now.marks[place] === 'out') && can('Take back in', 'in', order, 'plan')));
      };
      return {
        head: ['Late? Another order?'],
        inside: [late && line(late.lastChild.textContent, 'sh-train-part'),
          make('div', 'sh-train-row', ...page.texts(document, '.sh-less > summary').map((words, place) =>
            guide.toggle(words, place === now.vary, () =>
              app.act('vary', place === now.vary ? -1 : place, 'plan')))),
          make('ul', 'sh-train-list', ...Object.entries(log.counted(list, now)).map(row)),
          button('End the session here', () => app.act('go', list.length - 1))],
      };
    }

    /** After a reload, or the next time the mode is opened. */
    function ask() {
      const name = steps.name(app.step);
      app.bar('Go on', () => app.show('step', true), 'Start again', app.again);
      const what = name[0].toLowerCase() + name.slice(1) + (app.step.o && ' of ' + app.step.o);
      return { head: [`Go on with ${what}?`], inside: [] };
    }

    function kept() {
      app.bar('Close', app.leave);
      return { head: ['Kept on this phone.'], inside: [] };
    }

    const whole = () => some(', ', app.step.o && called(app.step.o), steps.name(app.step));

    return { warm, up, top: set, set, end, plan, ask, kept, whole };
  };
})(strengthHandbook);
