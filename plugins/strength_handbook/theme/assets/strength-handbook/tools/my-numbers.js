/* The page "My numbers": enter, show, save as a file, delete. */
(function (site) {
  'use strict';

  const { find, all, on, link, some } = site.dom;
  const at = name => find(`[data-sh-${name}]`);
  const form = at('numbers');
  if (!form) return;
  const { store, loads, words, mine } = site;
  const units = find('label', form).textContent.endsWith('lb') ? 'lb' : 'kg';
  const fields = all('input', form);
  const borrowed = find('#sh-borrowed');
  const errorOf = field => find(`#${field.id}-error`);

  /** Trouble is always said, before other news. */
  function say(text) {
    at('says').textContent = some(' ', store.trouble(), text);
  }

  const onClick = (name, run) => on(at(name), 'click', run);

  function show() {
    const me = mine.me() || { bases: {} };
    for (const field of fields) {
      const grams = field.name === 'body' ? me.body : me.bases[field.name.slice(5)];
      field.value = grams === undefined ? '' : words.bare(grams, units);
      mark(field, '');
    }
    borrowed.checked = store.borrowed();
    at('everything').textContent = store.exportText();
    at('sure').hidden = true;
  }

  function mark(field, text) {
    errorOf(field).textContent = text;
    field.setAttribute('aria-invalid', text !== '');
  }

  /** What a field says in grams; undefined where it is empty or wrong. */
  function read(field) {
    const text = field.value.trim();
    const grams = loads.toGrams(text, units);
    const { low, high, says } = field.dataset;
    let wrong = '';
    if (text && grams === null) wrong = 'Write a number, such as 72.5.';
    else if (text && (grams < low || grams > high)) wrong = `Write a number ${says}.`;
    mark(field, wrong);
    return text && !wrong ? grams : undefined;
  }

  const beyondTables = field => {
    const grams = loads.toGrams(field.value, units);
    const { from, to } = field.dataset;
    return grams !== null && from && (grams < from || grams > to);
  };

  on(form, 'submit', event => {
    event.preventDefault();
    const me = { bases: {} };
    const heard = fields.map(field => words.understood(field.value, units)).join('');
    for (const field of fields) {
      const grams = read(field);
      if (grams === undefined) continue;
      if (field.name === 'body') me.body = grams;
      else me.bases[field.name.slice(5)] = grams;
    }
    const wrong = fields.find(field => errorOf(field).textContent);
    if (wrong) {
      wrong.focus();
      say('Not kept yet: see the field that is marked.');
    } else if (me.body === undefined && !Object.keys(me.bases).length) {
      store.remove('mine');
      show();
      say('Nothing is entered, and nothing is kept.');
    } else if (store.set('mine', me)) {
      const beyond = fields.filter(beyondTables).map(field => field.dataset.name);
      show();
      say(heard + (store.borrowed() ? 'Kept in this tab only.' : 'Kept on this phone.') +
        (beyond.length ? ` Is this right? ${beyond.join('; ')}: beyond the tables.` : ''));
    } else say('');
  });

  on(borrowed, 'change', () => {
    const now = store.borrowed(borrowed.checked);
    show();
    say(now ? 'Borrowed: stay in this tab, and untick when you are done.'
      : borrowed.checked ? 'This browser can forget nothing by itself: delete your numbers when ' +
        'you are done.' : 'What was entered on the borrowed phone is forgotten.');
    borrowed.checked = now;
  });

  onClick('export', () => {
    const file = link(URL.createObjectURL(new Blob([store.exportText()], { type: 'application/json' })));
    file.download = 'my-numbers.json';
    file.click();
    URL.revokeObjectURL(file.href);
    say('Saved as my-numbers.json.');
  });

  on(at('import'), 'change', async event => {
    const [file] = event.target.files;
    if (!file) return;
    const wrong = store.importText(await file.text());
    event.target.value = '';
    show();
    say(wrong || 'The saved copy is back.');
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
    say('Everything is deleted.');
    at('delete').focus();
  });

  at('without').hidden = true;
  form.hidden = at('kept').hidden = false;
  show();
  say('');
})(globalThis.strengthHandbook);
