/* The home page and a program's overview open on today's week and session. */
import * as days from './days.js';
import { find, all, on, make, link, button, some, json } from './dom.js';
import * as store from './store.js';

/** @typedef {import('./days.js').Program} Program
    @typedef {import('./days.js').Session} Session
    @typedef {ReturnType<typeof days.find> | null} Found  where today lies; null without a start */

/** Does a session stand in the log, once or again?
    @param {Session} one */
const done = one => store.keys(one.log).some(key => key === one.log || key.startsWith(one.log + '/'));
/** @param {Session} one */
const to = one => make('span', '', link(one.at, one.title), one.optional && ' (optional)', done(one) && ' (done)');
/** @param {Session[]} several */
const listed = several => several.flatMap((one, place) => [place ? ', ' : '', to(one)]);

/** What today is, in one or two sentences; what is to be opened today stands below them.
    @param {Program} program
    @param {number | null} start
    @param {number} today
    @param {Found} found */
function sentences(program, start, today, found) {
  /** @param {number} number */
  const week = number => link(days.weekAt(program, number), 'week ' + number);
  if (start === null || !found) {
    const last = store.get('last/' + program.id, Number.isInteger);
    return last ? [make('b', '', 'Last opened: ', week(last), '.')]
      : ['Say once which week you are in, and this page opens on it.'];
  }
  const { when, week: number, today: now, next } = found;
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
  const says = [`${days.said(today, { day: 'numeric', month: 'long' })}, `, week(number),
    ` of ${program.last}. `];
  if (all.every(one => one.day < 0)) return [...says, 'Its sessions: ', ...listed(all), '.'];
  if (now.length) return says;
  return [...says, 'No session today.', ...(!next ? [] : [' Next: ', to(next),
    (next.day < 0 ? '' : ', ' + days.said(next.day + 4)) +
    (next.week > number ? `, week ${next.week}.` : '.')])];
}

/** The way into each session of today, one large button each.
    @param {Program} program
    @param {Found} found */
function doors(program, found) {
  if (found?.when !== 'in') return [];
  return found.today.map(one => {
    const door = link(one.at, '');
    door.className = 'sh-go';
    door.append(make('b', '', one.title, done(one) && ' ✓'),
      make('span', '', some(' · ', days.wave(program, one.week), `${one.minutes} min`)),
      make('span', 'sh-go-on', done(one) ? 'Open it again' : 'Open today’s session'));
    return door;
  });
}

/** On the home page only the weeks around this one are in sight, until somebody asks for all.
    @param {Program} program
    @param {Found} found */
function nearWeeks(program, found) {
  const list = find(`.sh-near[data-program="${program.id}"]`);
  if (!list) return;
  const week = found?.when === 'in' && !list.classList.contains('is-whole') ? found.week : null;
  all('li[data-week]', list).forEach(one => {
    one.hidden = week !== null && Math.abs(one.dataset.week - week) > 1;
  });
  all('.sh-wave', list).forEach(one => {
    one.hidden = all('li', one.nextElementSibling).every(line => line.hidden);
  });
  find('.sh-all-weeks', list)?.remove();
  if (week !== null) {
    list.append(button('All weeks', () => {
      list.classList.add('is-whole');
      nearWeeks(program, found);
      find('a', list).focus();
    }, 'sh-all-weeks'));
  }
}

/** This week's column in the chart of the waves.
    @param {Found} found
    @param {ParentNode} section */
function here(found, section) {
  const chart = find('.sh-waves svg', section);
  if (!chart) return;
  const week = found?.when === 'in' ? found.week : null;
  all('[data-week]', chart).forEach(one => one.classList.toggle('is-here', +one.dataset.week === week));
  find('.sh-here', section).textContent = week === null ? '' : ` You are in week ${week}.`;
}

/** Today's links in the list of weeks.
    @param {Program} program
    @param {Found} found */
function mark(program, found) {
  /** @param {string} at */
  const full = at => new URL(at, location.href).href;
  /* What is done, for every week of the list. */
  all('.sh-done').forEach(old => old.remove());
  const finished = new Set();
  for (let one = program.first; one <= program.last; one += 1) {
    days.sessions(program, one).filter(done).forEach(({ at }) => finished.add(full(at)));
  }
  all('.sh-weeks-list a').filter(one => finished.has(one.href))
    .forEach(one => one.after(make('span', 'sh-done', ' ✓', make('span', 'sh-heard', ' done'))));
  const here = found?.when === 'in'
    ? [days.weekAt(program, found.week), ...found.today.map(one => one.at)].map(full) : [];
  all('.sh-weeks-list a').forEach(one => {
    if (here.includes(one.href)) one.setAttribute('aria-current', 'date');
    else if (one.href.startsWith(full(program.at))) one.removeAttribute('aria-current');
  });
}

all('.sh-days').forEach(block => {
  const program = json(block);
  // What stands between the data and its box is none of ours.
  let box = block.nextElementSibling;
  while (box && !box.matches('.sh-today')) box = box.nextElementSibling;
  const form = box && find('form', box);
  if (!form) return;
  const { week, date, back } = form.elements;
  const show = () => {
    const today = days.number(new Date());
    const start = days.start(program);
    const found = start === null ? null : days.find(program, start, today);
    box.firstElementChild.replaceChildren(...sentences(program, start, today, found), ' ' + store.trouble());
    find('.sh-doors-today', box).replaceChildren(...doors(program, found));
    week.value = found ? found.week : '';
    date.value = start === null ? '' : days.iso(start);
    back.hidden = !days.own(program);
    mark(program, found);
    here(found, box.parentElement);
    nearWeeks(program, found);
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
