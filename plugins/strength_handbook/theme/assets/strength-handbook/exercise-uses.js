/* An exercise's page shows this week's use of it and the next one, or the one its address names. The page
   itself has the first use and a link to each (pages/use_html.py); the others come from a file beside it,
   and where that does not come the page stays as it is. */
import { prepare } from './apart.js';
import * as days from './days.js';
import { find, all, on, make, link, some } from './dom.js';
import * as mine from './mine.js';
import * as store from './store.js';

/** @typedef {{link: HTMLAnchorElement, week: number, day: number, at: number | null, last: boolean}} Use
      `at` is its day, or the Sunday of its week; `last` says that its week was the last one opened
    @typedef {{says: string, link: HTMLAnchorElement}} Shown
    @typedef {import('./types.js').UseData} UseData */

/** What a day shows of an exercise's uses: today's or this week's, and the one after it.
    @param {Use[]} uses
    @param {number} today
    @returns {Shown[]} */
function around(uses, today) {
  const dated = uses.filter(use => use.at !== null).sort((a, b) => (a.at ?? 0) - (b.at ?? 0));
  const week = days.monday(today);
  const here = dated.filter(use => days.monday(use.at ?? 0) === week);
  const now = here.find(use => use.at === today) || here.find(use => (use.at ?? 0) > today) || here.at(-1);
  const next = dated.find(use => use !== now && (use.at ?? 0) > Math.max(today, now?.at ?? today));
  /** @param {Use} use */
  const weekday = use => use.day >= 0 && days.said(use.at ?? 0);
  return [
    ...(now ? [{ says: now.at === today && now.day >= 0 ? 'Today' : some(', ', 'This week', weekday(now)), link: now.link }] : []),
    ...(next ? [{ says: some(', ', 'Next', weekday(next)), link: next.link }] : []),
  ];
}

/** @param {HTMLElement} list
    @returns {Use[]} */
function usesIn(list) {
  return all('a[data-week]', list).map(one => {
    const { program = '', start } = one.parentElement.dataset;
    const [week, day] = [+one.dataset.week, +one.dataset.day];
    const first = days.start({ id: program, start });
    return {
      link: one, week, day, last: store.get('last/' + program, Number.isInteger) === week,
      at: first === null ? null : first + 7 * (week - 1) + (day < 0 ? 6 : day),
    };
  });
}

/** @param {Use[]} uses
    @returns {Shown[]} */
function chosen(uses) {
  const named = uses.find(use => '#' + use.link.id === location.hash);
  if (named) return [{ says: '', link: named.link }];
  const found = around(uses, days.number(new Date()));
  const last = uses.find(use => use.at === null && use.last);
  return found.length || !last ? found : [{ says: 'Last opened', link: last.link }];
}

/** @param {HTMLElement} list
    @param {(data: Record<string, UseData>) => void} then */
function withData(list, then) {
  const { strengthHandbook } = globalThis;
  const came = () => strengthHandbook.uses && then(strengthHandbook.uses);
  if (strengthHandbook.uses) came();
  else document.head.append(make('script', { src: list.dataset.uses, onload: came }));
}

/** The drawer for one's own bar taken apart, as the build makes it.
    @param {[held: number[][], first: string]} apart */
function drawer([held, first]) {
  const made = make('details', { className: 'sh-heavy', hidden: true },
    make('summary', '', 'Unloading my bar, step by step'));
  Object.assign(made.dataset, { shApart: JSON.stringify(held), first });
  return made;
}

/** One use as the page shows its first one (templates/use.html).
    @param {UseData} use
    @param {string} says */
const section = (use, says) => make('section', { className: 'sh-use', ariaLabel: use.title },
  make('p', 'sh-use-title', says && `${says}: `, make('b', '', use.title), use.easy && ' (easy week)'),
  make('p', 'sh-dose', ...use.dose.map((piece, place) => (place % 2 ? make('span', 'sh-tempo', piece) : piece))),
  use.mine && make('script', { type: 'application/json', className: 'sh-dose-data', textContent: JSON.stringify(use.mine) }),
  use.apart && drawer(use.apart),
  ...use.words.map(line => make('p', 'sh-words', line)),
  use.alone && make('p', 'sh-note', make('b', '', 'Alone?'), ' ' + use.alone),
  use.note && make('p', 'sh-note', use.note),
  ...use.ways.map(([to, words, after]) => make('p', '', link(to, words), after)));

/** @param {HTMLElement} list */
function show(list) {
  const picked = chosen(usesIn(list));
  all('a[data-week]', list).forEach(one => one.removeAttribute('aria-current'));
  if (!picked.length) return;
  picked[0].link.setAttribute('aria-current', 'true');
  withData(list, data => {
    const old = all('.sh-use');
    old[0].before(...picked.map(one => section(data[one.link.id], one.says)));
    old.forEach(one => one.remove());
    prepare(document);
    mine.refill();
    if (!picked[0].says) find('.sh-use').scrollIntoView();
  });
}

const list = find('[data-uses]');
if (list) {
  show(list);
  on(globalThis, 'hashchange', () => show(list));
}

export { around };
