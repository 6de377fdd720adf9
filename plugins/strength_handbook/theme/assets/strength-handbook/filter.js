/* Narrows the list of exercises; each entry says in `data-not` which filters leave it out. */
import { find, all, on } from './dom.js';

const form = find('[data-sh-filter]');
function start() {
  const entries = all('.sh-index > li');

  function show() {
    const only = new FormData(form).getAll('only');
    for (const entry of entries) {
      entry.hidden = only.some(name => entry.dataset.not.split(' ').includes(name));
    }
    for (const list of all('.sh-index')) {
      list.hidden = list.previousElementSibling.hidden = !find('li:not([hidden])', list);
    }
    const left = entries.filter(entry => !entry.hidden).length;
    form.lastElementChild.textContent = only.length ? `${left} of ${entries.length} exercises` : '';
  }

  on(form, 'change', show);
  form.hidden = false;
  show(); // a browser may bring ticks back
}

if (form) start();
