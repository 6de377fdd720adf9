/* On a borrowed phone every page says so, and says nothing of a phone that keeps things. */
import { find, all, make, link } from './dom.js';
import { root } from './place.js';
import * as store from './store.js';

/** The line under the title, there or gone, and the words for where things are kept. */
const borrowed = () => {
  find('#sh-borrowed-line')?.remove();
  const now = store.borrowed();
  for (const part of all('[data-sh-where]')) {
    part.dataset.shWhere ||= part.textContent;
    part.textContent = now ? 'Kept in this tab only, nothing is sent.' : part.dataset.shWhere;
  }
  if (!now) return;
  const line = make('p', { id: 'sh-borrowed-line', className: 'sh-box' }, make('b', '', 'Borrowed phone. '),
    'What you enter counts in this tab only. ', link(root + 'my-numbers/', 'Give it back'), '.');
  find('h1')?.after(line);
};
borrowed();

export { borrowed };
