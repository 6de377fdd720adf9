/* The home page and a program's overview open on today's week and session. */
(function (site) {
  'use strict';

  const { days, store, dom: { find, all, on, make, link, json } } = site;
  const to = one => make('span', '', link(one.at, one.title), one.optional && ' (optional)');
  const listed = several => several.flatMap((one, place) => [place ? ', ' : '', to(one)]);

  /** What today is, in one or two sentences. */
  function sentences(program, start, today) {
    const week = number => link(days.weekAt(program, number), 'week ' + number);
    if (start === null) {
      const last = store.get('last/' + program.id, Number.isInteger);
      return last ? [make('b', '', 'Last opened: ', week(last), '.')]
        : ['Say once which week you are in, and this page opens on it.'];
    }
    const { when, week: number, today: now, next } = days.find(program, start, today);
    if (when === 'before') {
      const begins = start + 7 * (program.first - 1);
      return [make('b', '', `Not begun. It starts on ${days.long(begins)}`), begins - today === 1
        ? ', tomorrow' : `, in ${begins - today} days`, ': ', week(program.first), '.'];
    }
    if (when === 'after') {
      return [make('b', '', `It ended on ${days.long(start + 7 * program.last - 1)}.`),
        ' Ask the coach what comes next.'];
    }
    const all = days.sessions(program, number);
    const says = [make('b', '', 'This week: ', week(number), '.'), ' '];
    if (all.every(one => one.day < 0)) return [...says, 'Its sessions: ', ...listed(all), '.'];
    if (now.length) return [...says, make('b', '', 'Today: ', ...listed(now), '.')];
    return [...says, 'No session today.', ...(!next ? [] : [' Next: ', to(next),
      (next.day < 0 ? '' : ', ' + days.said(next.day + 4)) +
      (next.week > number ? `, week ${next.week}.` : '.')])];
  }

  /** Today's links in the list of weeks. */
  function mark(program, start, today) {
    const { when, week, today: now } = start === null ? {} : days.find(program, start, today);
    const full = at => new URL(at, location).href;
    const here = when === 'in' ? [days.weekAt(program, week), ...now.map(one => one.at)].map(full) : [];
    all('.sh-weeks-list a').forEach(one => {
      if (here.includes(one.href)) one.setAttribute('aria-current', 'date');
      else if (one.href.startsWith(full(program.at))) one.removeAttribute('aria-current');
    });
  }

  all('.sh-days').forEach(block => {
    const program = json(block);
    const box = block.nextElementSibling;
    const form = find('form', box);
    if (!form) return;
    const { week, date, back } = form.elements;
    const show = () => {
      const today = days.number(new Date());
      const start = days.start(program);
      box.firstElementChild.replaceChildren(...sentences(program, start, today), ' ' + store.trouble());
      week.value = start === null ? '' : days.find(program, start, today).week;
      date.value = start === null ? '' : days.iso(start);
      back.hidden = !days.own(program);
      mark(program, start, today);
    };
    on(form, 'change', event => {
      const day = event.target === date ? days.parse(date.value)
        : week.value && days.startFor(+week.value, days.number(new Date()));
      if (day) store.set('start/' + program.id, days.iso(days.monday(day)));
      show();
    });
    on(back, 'click', () => {
      store.remove('start/' + program.id);
      show();
      week.focus();
    });
    show();
    // A phone that slept over midnight.
    on(document, 'visibilitychange', show);
  });
})(globalThis.strengthHandbook);
