/* Only in a copy that opens from a file: finding a page, addresses that scripts make, and whether
   this browser keeps a member's numbers from one page to the next. */
(function () {
  'use strict';

  const root = new URL('../../', document.currentScript.src);
  const FRONT = 'index.html';
  const find = (selector, inside = document) => inside.querySelector(selector);

  /* The handbook's scripts write addresses as on a server, where a folder is enough. They compare
     these links with their own; whoever follows one gets the file. */
  for (const one of document.querySelectorAll('.sh-weeks-list a')) {
    one.href = one.href.replace(/\/index\.html$/, '/');
  }
  function toFile({ target }) {
    const link = target instanceof Element && target.closest('a[href]');
    if (link && link.href.startsWith(root.href) && link.pathname.endsWith('/')) link.pathname += FRONT;
  }
  for (const kind of ['pointerdown', 'focusin', 'click', 'contextmenu', 'dragstart']) {
    document.addEventListener(kind, toFile, true);
  }

  /* Some browsers keep what a page of a folder remembers from the folder's other pages. */
  const KEY = 'strength-handbook-copy';
  const APART = 'Opened from a file, this browser keeps your numbers for one page only: the other ' +
    'pages do not see them. Use the load tables there, or another browser.';

  function askAnotherPage() {
    try {
      localStorage.setItem(KEY, 'here');
    } catch {
      return; // nothing is kept at all, which the page says itself
    }
    const frame = document.createElement('iframe');
    Object.assign(frame, { hidden: true, title: '', src: new URL('assets/strength-handbook/kept.html', root) });
    addEventListener('message', event => {
      if (event.source !== frame.contentWindow) return;
      if (event.data !== 'here') {
        const line = Object.assign(document.createElement('p'), { textContent: APART, id: 'sh-apart' });
        line.setAttribute('role', 'status');
        find('h1').after(line);
      }
      localStorage.removeItem(KEY);
      frame.remove();
    });
    document.body.append(frame);
  }
  if (find('#sh-kept, [data-sh-numbers], [data-sh-everything]')) askAnotherPage();

  /* Finding: every word typed must begin a word of the line; best titles first. */
  const form = find('[data-sh-find]');
  if (!form) return;
  const field = find('input', form);
  const status = find('[role=status]', form);
  const list = find('.sh-found');
  const whole = find('[data-sh-all]');
  const PLAIN = { ß: 'ss', æ: 'ae', œ: 'oe', ø: 'o', đ: 'd', ð: 'd', ł: 'l', þ: 'th', ı: 'i' };

  const words = text => text.toLowerCase().normalize('NFKD').replace(/\p{M}/gu, '')
    .replace(/[ßæœøđðłþı]/g, sign => PLAIN[sign]).match(/[\p{L}\p{N}]+/gu) || [];

  const entries = [...whole.querySelectorAll('li')].map(line => {
    const link = find('a', line);
    const note = find(':scope > small', line);
    return {
      link, note,
      title: words(link.textContent),
      near: words(note ? note.textContent : ''),
      far: (line.dataset.w || '').split(' '),
    };
  });

  /** Where a line lies: its page and its chapter. */
  function above(link) {
    const page = link.closest('ul ul') && link.closest('ul ul').closest('li');
    return [page && find('a', page).textContent, find('h2', link.closest('section')).textContent]
      .filter(Boolean).join(', ');
  }

  /** How far a line is from what was typed; Infinity where a word is missing. */
  function distance({ title, near, far }, typed) {
    let sum = title[0] && typed[0] && title[0].startsWith(typed[0]) ? 0 : 1;
    for (const word of typed) {
      const begins = one => one.startsWith(word);
      sum += title.includes(word) ? 0 : title.some(begins) ? 4 : near.some(begins) ? 40
        : far.some(begins) ? 400 : Infinity;
    }
    return sum + Math.min(title.length, 20) / 100;
  }

  function row({ link, note }) {
    const line = document.createElement('li');
    const place = document.createElement('small');
    place.textContent = above(link);
    line.append(link.cloneNode(true), ...(note ? [note.cloneNode(true)] : []), place);
    return line;
  }

  function show() {
    const typed = words(field.value);
    history.replaceState(field.value, '');
    const best = typed.length ? entries.map(one => [distance(one, typed), one])
      .filter(([far]) => far < Infinity).sort((a, b) => a[0] - b[0]) : [];
    list.replaceChildren(...best.map(([, one]) => row(one)));
    list.hidden = !best.length;
    whole.hidden = best.length > 0;
    status.textContent = !typed.length ? '' : best.length ? `${best.length} found`
      : 'Nothing found: try fewer or shorter words. Below is everything.';
  }

  form.hidden = false;
  field.addEventListener('input', show);
  form.addEventListener('submit', event => {
    event.preventDefault();
    const first = find('a', list);
    if (first) first.focus();
  });
  // Back from a page that was found: the same words again.
  if (typeof history.state === 'string') field.value = history.state;
  show();
  field.focus();
})();
