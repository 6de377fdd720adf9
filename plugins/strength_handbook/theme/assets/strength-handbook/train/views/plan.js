/* Session mode where somebody is late, or the bar is taken: variants, another order. */
import { make, button } from '../../dom.js';
import * as guide from '../guide.js';
import * as log from '../log.js';
import * as page from '../page.js';
import { line, parts } from '../parts.js';

/** @import { App } from '../types.js' */

/** @param {App} app */
const planViews = app => {
  const { called } = parts(app);

  /** Late, or another order. */
  function plan() {
    const { list, now } = app;
    const [late] = page.copies(document, '.sh-late > span');
    app.bar('Back', () => app.show('step'));
    const row = ([order, one]) => {
      const own = [...list.keys()].filter(place => list[place].o === order);
      const open = own.find(place => !now.marks[place]);
      const can = (words, what, which, view) => {
        const made = button(words, () => app.act(what, which, view));
        made.ariaLabel = `${words}: ${called(order)}`;
        return made;
      };
      const words = !one.sets.length && own.every(place => now.marks[place] === 'out')
        ? 'left out' : `${one.sets.length} of ${one.of} done`;
      return make('li', '', line(`${called(order)}: ${words}`),
        make('div', 'sh-train-row', ...(open === undefined ? [] : [can('Go here', 'go', open),
          can('One set fewer', 'less', order, 'plan'), can('Leave out', 'out', order, 'plan')]),
        own.some(place => now.marks[place] === 'out') && can('Take back in', 'in', order, 'plan')));
    };
    return {
      head: ['Running late? Change the order?'],
      inside: [late && line(late, 'sh-train-part'),
        make('div', 'sh-train-row', ...app.data.variants.map(({ says: words }, place) =>
          guide.toggle(words, place === now.vary, () =>
            app.act('vary', place === now.vary ? -1 : place, 'plan')))),
        make('ul', 'sh-train-list', ...Object.entries(log.slots(app, true)).map(row)),
        button('End the session here', () => app.act('go', list.length - 1))],
    };
  }

  return { plan };
};

export { planViews };
