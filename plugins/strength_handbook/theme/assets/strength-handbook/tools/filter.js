/* Narrows the list of exercises; each entry says in `data-not` which filters leave it out. */
(function () {
  'use strict';

  const form = document.querySelector('[data-sh-filter]');
  const entries = [...document.querySelectorAll('.sh-index > li')];

  function show() {
    const on = new FormData(form).getAll('only');
    for (const entry of entries) {
      entry.hidden = entry.dataset.not.split(' ').some(name => on.includes(name));
    }
    for (const list of document.querySelectorAll('.sh-index')) {
      list.hidden = list.previousElementSibling.hidden = !list.querySelector('li:not([hidden])');
    }
    const left = entries.filter(entry => !entry.hidden).length;
    form.lastElementChild.textContent = on.length ? `${left} of ${entries.length} exercises` : '';
  }

  form.addEventListener('change', show);
  form.hidden = false;
  show(); // a browser may bring ticks back
})();
