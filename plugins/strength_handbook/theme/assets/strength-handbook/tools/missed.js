/* After an absence: the page's own words for what happened, and where they lead today. */
(function (site) {
  'use strict';

  const { days, store, dom: { find, all, on, link, json } } = site;
  const form = find('[data-sh-missed]');
  if (!form) return;
  const program = json(find('.sh-days'));
  const rows = all('[data-then]');

  /** Where a row leads: today's or the next session, made less, or a week. */
  function leads({ then }) {
    const week = number => [link(days.weekAt(program, number), 'Week ' + number), '.'];
    const log = new RegExp(`^log/${program.id}/(\\d+)/`);
    const done = Object.keys(store.all()).map(key => +(log.exec(key) || [])[1] || 0);
    const start = days.start(program);
    const { today, next } = start === null ? {} : days.find(program, start, days.number(new Date()));
    const one = today && (today[0] || next);
    if (then === 'first') return week(program.first);
    if (then === 'again' && Math.max(...done) > 0) return week(Math.max(...done));
    if (!then) return [];
    if (then === 'again' || !one) return [link(program.at, 'Choose it here'), '.'];
    // By the next session the day after is over.
    const less = then === 'less' && today[0] && one.variants;
    return [today[0] ? 'Today: ' : 'Next: ',
      link(one.at + (less ? '#less' : ''), `week ${one.week}, ${one.title}${less ? ', made less' : ''}`), '.'];
  }

  on(form, 'change', event => {
    const row = rows[event.target.value];
    form.lastElementChild.replaceChildren(...(row ? [row.textContent + ' ', ...leads(row.dataset)] : []));
  });
  form.hidden = false;
})(globalThis.strengthHandbook);
