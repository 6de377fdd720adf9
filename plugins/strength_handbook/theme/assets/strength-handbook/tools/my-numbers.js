/* The page "My numbers": enter, show, save as a file, delete. */
import { borrowed } from '../borrowed.js';
import { find, all, on, button, link, some, tell } from '../dom.js';
import * as words from '../load-words.js';
import * as paces from '../paces.js';
import * as people from '../people.js';
import * as store from '../store.js';
import { toGrams } from '../whole-numbers.js';
import { everything } from './everything.js';

/** @import { Me } from '../types.js' */

const at = name => find(`[data-sh-${name}]`);
const form = at('numbers');
function start() {
  const { units } = form.dataset;
  const fields = all('input', form);
  const tick = find('#sh-borrowed');
  const errorOf = field => find(`#${field.id}-error`);

  /** Trouble is always said, before other news, behind what was used. */
  const say = (text, near) => tell(at('says'), some(' ', store.trouble(), text), near);

  const onClick = (name, run) => on(at(name), 'click', run);
  const row = name => at(name).closest('p');

  function show() {
    const me = people.me() || { bases: {} };
    for (const field of fields) {
      const { kind } = field.dataset;
      const kept = kind ? me.bests?.[field.name.slice(5)] : field.name === 'body' ? me.body : me.bases[field.name.slice(5)];
      field.value = kept === undefined ? '' : kind ? paces.typed(kept, kind) : words.bare(kept, units);
      mark(field, '');
    }
    tick.checked = store.borrowed();
    at('everything').replaceChildren(...everything(units));
    const aside = Object.keys(store.aside()).length;
    at('everything').append(aside ? button('Forget what could not be read', () => {
      store.forgetAside();
      show();
      say('Forgotten.', row('export'));
    }, 'sh-danger') : '');
    at('sure').hidden = true;
  }

  function mark(field, text) {
    errorOf(field).textContent = text;
    field.setAttribute('aria-invalid', text !== '');
  }

  /** What a field says in grams; undefined where it is empty or wrong. */
  function read(field) {
    const text = field.value.trim();
    const { low, high, says, kind } = field.dataset;
    const grams = kind ? paces.read(text, kind) : toGrams(text, units);
    let wrong = '';
    if (text && grams === null && kind) wrong = `Write ${kind === 'watts' ? 'watts, such as 210' : 'minutes and seconds, such as 7:40'}.`;
    else if (text && grams === null) wrong = 'Write a number, such as 72.5.';
    else if (text && (Number(grams) < low || Number(grams) > high)) wrong = `Write a number ${says}.`;
    mark(field, wrong);
    return (text && !wrong ? grams : null) ?? undefined;
  }

  const beyondTables = field => {
    const { from, to, kind } = field.dataset;
    const grams = kind ? paces.read(field.value.trim(), kind) : toGrams(field.value, units);
    return grams !== null && from && (grams < from || grams > to);
  };

  on(form, 'submit', event => {
    event.preventDefault();
    /** @type {Me} */
    const me = { bases: {} };
    const heard = fields.filter(field => !field.dataset.kind).map(field => words.understood(field.value, units)).join('');
    for (const field of fields) {
      const grams = read(field);
      if (grams === undefined) continue;
      if (field.dataset.kind) (me.bests ??= {})[field.name.slice(5)] = grams;
      else if (field.name === 'body') me.body = grams;
      else me.bases[field.name.slice(5)] = grams;
    }
    const wrong = fields.find(field => errorOf(field).textContent);
    if (wrong) {
      wrong.focus();
      say('Not kept yet: see the field that is marked.', form);
    } else if (me.body === undefined && !Object.keys(me.bases).length && !me.bests) {
      store.remove('mine');
      show();
      say('Nothing is entered, and nothing is kept.', form);
    } else if (store.set('mine', me)) {
      const beyond = fields.filter(beyondTables).map(field => field.dataset.name);
      show();
      say(heard + `Kept ${store.where()}.` +
        (beyond.length ? ` Is this right? ${beyond.join('; ')}: beyond the tables.` : ''), form);
    } else say('', form);
  });

  on(tick, 'change', () => {
    const now = store.borrowed(tick.checked);
    show();
    borrowed();
    say(now ? 'Borrowed: stay in this tab, and untick when you are done.'
      : tick.checked ? 'This browser can forget nothing by itself: delete your numbers when ' +
        'you are done.' : 'What was entered on the borrowed phone is forgotten.', tick.parentNode);
    tick.checked = now;
  });

  onClick('export', () => {
    const file = link(URL.createObjectURL(new Blob([store.exportText()], { type: 'application/json' })), '');
    file.download = 'my-numbers.json';
    file.click();
    URL.revokeObjectURL(file.href);
    say('Saved as my-numbers.json.', row('export'));
  });

  on(at('import'), 'change', async event => {
    const [file] = event.target.files;
    if (!file) return;
    const wrong = store.importText(await file.text());
    event.target.value = '';
    show();
    say(wrong || 'The saved copy is back.', row('export'));
  });

  const ask = (yes, next) => {
    at('sure').hidden = !yes;
    at(next).focus();
  };
  onClick('delete', () => ask(true, 'no'));
  onClick('no', () => ask(false, 'delete'));
  onClick('yes', () => {
    store.clear();
    show();
    say('Everything is deleted.', row('delete'));
    at('delete').focus();
  });

  at('without').hidden = true;
  form.hidden = at('kept').hidden = at('tested').hidden = false;
  on(document, 'sh-new-best', show);
  show();
  say('');
}

if (form) start();
