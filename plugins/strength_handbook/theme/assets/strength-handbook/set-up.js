/* My set-up numbers, kept per exercise and shown in every session; and which week was opened last. */
import { find, all, on, make } from './dom.js';
import * as store from './store.js';

/** @param {any} value */
const isSetUp = value => !Array.isArray(value) && Object.values(value).every(
  text => typeof text === 'string' && text.length <= 60);
/** @param {string} id
    @returns {Record<string, string>} */
const read = id => store.get('setup/' + id, isSetUp) || {};

/** A set-up in one line; empty where nothing is kept.
    @param {string} id */
function line(id) {
  const said = Object.entries(read(id)).map(([name, text]) => (name === 'note' ? text : `${name} ${text}`));
  return said.length ? 'My set-up: ' + said.join(' · ') : '';
}

all('article[data-exercise]').forEach(slot => {
  const text = line(slot.dataset.exercise);
  if (text) find('.sh-dose', slot).after(make('p', 'sh-setup', text));
});
const week = /([^/]+)\/week-(\d\d)\//.exec(location.pathname);
if (week && store.get('last/' + week[1]) !== +week[2]) store.set('last/' + week[1], +week[2]);

const form = find('[data-sh-setup]');
function start() {
  const id = form.dataset.shSetup;
  const drawer = form.parentNode;
  const now = make('p', 'sh-setup', line(id));
  drawer.before(now);
  drawer.hidden = false;
  for (const [name, text] of Object.entries(read(id))) {
    if (form.elements[name]) form.elements[name].value = text;
  }
  on(form, 'submit', event => {
    event.preventDefault();
    const kept = [...new FormData(form)].filter(([, text]) => String(text).trim());
    if (kept.length) store.set('setup/' + id, Object.fromEntries(kept));
    else store.remove('setup/' + id);
    form.lastElementChild.textContent = store.trouble() || `Kept ${store.where()}.`;
    now.textContent = line(id);
  });
}

if (form) start();
