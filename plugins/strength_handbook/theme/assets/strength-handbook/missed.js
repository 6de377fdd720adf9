/* After an absence: what to do, in the page's words, and where that leads today. */
import * as days from './days.js';
import { find, on, link, json } from './dom.js';
import * as store from './store.js';

const form = find('[data-sh-missed]');
function start() {
  const program = json(find('.sh-days'));
  /** Where an answer leads: today's or the next session, made less, or a week.
      @param {string} then  as pages/missed_page.py has them */
  function leads(then) {
    /** @param {number} number */
    const week = number => [link(days.weekAt(program, number), 'Week ' + number), '.'];
    const log = new RegExp(`^log/${program.id}/(\\d+)/`);
    const done = Object.keys(store.all()).map(key => +(log.exec(key) || [])[1] || 0);
    const start = days.start(program);
    const found = start === null ? null : days.find(program, start, days.number(new Date()));
    const today = found?.today[0];
    const one = today ?? found?.next;
    if (then === 'first') return week(program.first);
    if (then === 'again' && Math.max(...done) > 0) return week(Math.max(...done));
    if (!then) return [];
    if (then === 'again' || !one) return [link(program.at, 'Choose it here'), '.'];
    // By the next session the day after is over.
    const less = then === 'less' && today?.variants;
    return [today ? 'Today: ' : 'Next: ',
      link(one.at + (less ? '#less' : ''), `week ${one.week}, ${one.title}${less ? ', made less' : ''}`), '.'];
  }

  on(form, 'change', event => {
    const { says, then } = event.target.selectedOptions[0].dataset;
    form.lastElementChild.replaceChildren(...(says ? [says + ' ', ...leads(then)] : []));
  });
  form.hidden = false;
}

if (form) start();
