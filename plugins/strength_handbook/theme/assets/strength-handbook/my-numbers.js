/* The page "My numbers": enter, show, save as a file, delete. */
(function (site) {
  'use strict';

  const at = name => document.querySelector(`[data-sh-${name}]`);

  function start() {
    const form = at('numbers');
    if (!form) return;
    const { store, loads, words, mine } = site;
    const units = form.querySelector('label').textContent.endsWith('lb') ? 'lb' : 'kg';
    const fields = [...form.querySelectorAll('input')];
    const borrowed = document.getElementById('sh-borrowed');
    const errorOf = field => document.getElementById(field.id + '-error');

    /** Trouble is always said; other news only where there is none. */
    function say(text) {
      const trouble = store.trouble();
      at('says').textContent = [trouble, text].filter(Boolean).join(' ');
    }

    function show() {
      const me = store.get('mine', mine.isMine) || { bases: {} };
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

    form.addEventListener('submit', event => {
      event.preventDefault();
      const me = { bases: {} };
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
        say((store.borrowed() ? 'Kept until this tab closes.' : 'Kept on this phone.') +
          (beyond.length ? ` Is this right? ${beyond.join('; ')}: beyond the tables.` : ''));
      } else say('');
    });

    borrowed.addEventListener('change', () => {
      const now = store.borrowed(borrowed.checked);
      show();
      say(now ? 'Borrowed: everything is forgotten when this tab closes.'
        : borrowed.checked ? 'This browser can forget nothing by itself: delete your numbers when ' +
          'you are done.' : 'What was entered on the borrowed phone is forgotten.');
      borrowed.checked = now;
    });

    at('export').addEventListener('click', () => {
      const link = mine.make('a');
      link.href = URL.createObjectURL(new Blob([store.exportText()], { type: 'application/json' }));
      link.download = 'my-numbers.json';
      link.click();
      URL.revokeObjectURL(link.href);
      say('Saved as my-numbers.json.');
    });

    at('import').addEventListener('change', async event => {
      const [file] = event.target.files;
      if (!file) return;
      const wrong = store.importText(await file.text());
      event.target.value = '';
      show();
      say(wrong || 'The saved copy is back.');
    });

    const ask = yes => { at('sure').hidden = !yes; };
    at('delete').addEventListener('click', () => {
      ask(true);
      at('no').focus();
    });
    at('no').addEventListener('click', () => {
      ask(false);
      at('delete').focus();
    });
    at('yes').addEventListener('click', () => {
      store.clear();
      show();
      say('Everything is deleted.');
      at('delete').focus();
    });

    at('without').hidden = true;
    form.hidden = at('kept').hidden = false;
    show();
    say('');
  }

  site.ready(start);
})((globalThis.strengthHandbook = globalThis.strengthHandbook || {}));
