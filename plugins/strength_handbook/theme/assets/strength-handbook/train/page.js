/* What session mode takes from the page. It moves the page's own parts over and back again: nothing
   is said twice, and fields and drawers work in both places. */
(function (site) {
  'use strict';

  const { train, dom: { find, all, make } } = site;
  let away = [];

  const article = order => find('#slot-' + order.toLowerCase()).closest('article');

  /** Takes a part off the page, if there is one, and remembers its place. */
  function borrow(part) {
    if (!part) return part;
    const mark = document.createComment('');
    part.replaceWith(mark);
    away.push([mark, part]);
    return part;
  }

  /** Puts everything back; what another script has taken away stays away. */
  function giveBack() {
    for (const [mark, part] of away) mark.replaceWith(...(part.isConnected ? [part] : []));
    away = [];
  }

  const panel = order => find('div.sh-mine', article(order));
  const drawers = (order, title = '') => all(':scope > details', article(order))
    .filter(one => one.firstElementChild.textContent.startsWith(title));
  const texts = (part, selector) => all(selector, part).map(one => one.textContent);

  /** A line of the member's own steps, in pieces; empty where the page has none. */
  function ownLine(order, title, between) {
    const found = panel(order) ? texts(panel(order), 'li') : [];
    return found.filter(one => one.startsWith(title + ': '))
      .flatMap(one => one.slice(title.length + 2).replace(/\.$/, '').split(between));
  }

  /** The load as it stands on the page, for the log; '' where none is known. */
  function load(order) {
    const [line = ''] = panel(order) ? texts(panel(order), 'p') : [];
    return line.startsWith('Mine: ') ? line.replace(/^Mine: (about )?/, '').trim() : '';
  }

  /** Chalk strokes for the sets; the words beside them say the same. */
  function tally(list, { marks, at }) {
    const now = list[at];
    const drawn = make('span', 'sh-train-tally', ...list.map((step, place) =>
      step.last && step.o === now.o && make('i', 'is-' + (marks[place] ||
        (step.n === now.n && step.kind === now.kind ? 'now' : 'open')))));
    drawn.setAttribute('aria-hidden', 'true');
    return drawn;
  }

  train.page = { article, borrow, giveBack, panel, drawers, texts, ownLine, load, tally };
})(strengthHandbook);
