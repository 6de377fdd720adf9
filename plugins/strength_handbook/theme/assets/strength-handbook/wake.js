/* Does what a reader needs of the theme at once: light or dark, drawers that a link leads into.
   The theme's own script is loaded on first need: for search, shortcuts and marked words. */
import { find, all, on, make } from './dom.js';
import { root } from './place.js';

const later = find('#sh-later');
let awake = false;

document.documentElement.classList.replace('no-js', 'js');

/** @param {() => void} [onload] */
function wake(onload) {
  if (awake || !later) return;
  awake = true;
  document.body.append(make('script', { src: later.src, onload }));
}

/* Light, dark or as the phone is set; kept where the theme's own script looks for it. */
const KEPT = new URL(root).pathname + '.__palette';
const dark = matchMedia('(prefers-color-scheme: dark)');
const options = all('[data-md-component=palette] input');

function kept() {
  try {
    return JSON.parse(localStorage.getItem(KEPT) ?? '{}') || {};
  } catch {
    return {}; // blocked or spoilt storage
  }
}

function paint() {
  const { color, index } = kept();
  const set = color && color.media !== '(prefers-color-scheme)';
  const scheme = set ? color.scheme : dark.matches ? 'slate' : 'default';
  /* At once: colours half-way between light and dark can't be read. */
  document.body.setAttribute('data-md-color-switching', '');
  document.body.setAttribute('data-md-color-scheme', scheme);
  setTimeout(() => document.body.removeAttribute('data-md-color-switching'));
  const current = options[index] || options[0];
  for (const option of options) {
    option.checked = option === current;
    option.nextElementSibling.hidden = option !== current;
  }
}

options.forEach((option, index) => on(option, 'change', () => {
  if (awake) return;
  const color = Object.fromEntries(['media', 'scheme', 'primary', 'accent'].map(part =>
    [part, option.getAttribute('data-md-color-' + part)]));
  try {
    localStorage.setItem(KEPT, JSON.stringify({ index, color }));
  } catch {
    // blocked or full: the page stays as it is
  }
  paint();
}));
on(dark, 'change', () => awake || paint());
paint();

/** The place that the address names; empty where it can't be read, such as `#%`. */
function place() {
  try {
    return decodeURIComponent(location.hash.slice(1));
  } catch {
    return '';
  }
}

/* A link to something inside a closed drawer opens the drawer. */
function open() {
  const target = document.getElementById(place());
  /** @param {Element | null} part
      @returns {HTMLDetailsElement | null | undefined} */
  const closed = part => part?.closest('details:not([open])');
  let box = closed(target);
  if (!target || !box) return;
  for (; box; box = closed(box.parentElement)) box.open = true;
  target.scrollIntoView();
}

const search = () => wake(() => {
  find('#__search').click();
  find('.md-search__input').focus();
});

for (const kind of ['pointerdown', 'focusin', 'click']) {
  on(document, kind, event => event.target.closest('.md-search, [for=__search]') && wake());
}
on(document, 'keydown', event => {
  if (awake || !later || event.key !== '/' || event.target.closest('input, textarea, select')) return;
  event.preventDefault();
  search();
});
on(globalThis, 'hashchange', open);
open();
if (/[?&]h=/.test(location.search)) wake();
/* From a page without a search of its own. */
if (/[?&]search\b/.test(location.search)) search();
