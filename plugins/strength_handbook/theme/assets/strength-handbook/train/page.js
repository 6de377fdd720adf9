/* What session mode takes from the page. It moves the page's own parts over and back again: nothing
   is said twice, and fields and drawers work in both places. */
(function (site) {
  'use strict';

  const { train, dom: { find, all, make } } = site;
  let away = [];
  let variant;

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

  const vary = place => { variant = all('.sh-less')[place]; };

  /** The line of an exercise in the variant that was chosen. */
  const less = order => variant &&
    all('li', variant).find(one => one.textContent.startsWith(order + ' '));

  /** The member's load; a variant has its own where it is another one. */
  const panel = order =>
    less(order)?.querySelector('div.sh-mine') || find('div.sh-mine', article(order));

  const drawers = order => all(':scope > details', article(order));
  const texts = (part, selector) => (part ? all(selector, part).map(one => one.textContent) : []);

  /** A line of the member's own steps, in pieces; empty where the page has none. */
  function ownLine(order, title, between) {
    return texts(panel(order), 'li').filter(one => one.startsWith(title + ': '))
      .flatMap(one => one.slice(title.length + 2).replace(/\.$/, '').split(between));
  }

  /** The load as it stands on the page, for the log; '' where none is known. */
  function load(order) {
    const said = /^Mine: (?:about )?(.*\S)|Then ([^=]*\S)/; // then: after today's top
    return texts(panel(order), 'p').flatMap(one => said.exec(one)?.slice(1) || []).findLast(Boolean) || '';
  }

  /** Chalk strokes for the sets; the words beside them say the same. */
  function tally(list, { marks, at }) {
    const now = list[at];
    return make('span', { className: 'sh-train-tally', ariaHidden: true }, ...list.map((step, place) =>
      step.last && step.o === now.o && make('i', 'is-' + (marks[place] ||
        (step.n === now.n && step.kind === now.kind ? 'now' : 'open')))));
  }

  train.page = { article, borrow, giveBack, vary, less, panel, drawers, texts, ownLine, load, tally };
})(strengthHandbook);
