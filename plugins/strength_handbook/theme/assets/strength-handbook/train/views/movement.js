/* Session mode where somebody wants to see the movement: the drawing of the exercise that is done. */
import { make, on } from '../../dom.js';
import { root } from '../../place.js';
import { line } from '../parts.js';

/** @import { App } from '../types.js' */

/** The exercise of a step: the slot's, or that of the door that was taken.
    @param {App} app */
const done = app => {
  const slot = app.slots[app.step.o];
  return slot && (slot.d?.[app.now.doors[app.step.o]] || slot);
};

/** Is there a drawing of what is done now?
    @param {App} app */
const isDrawn = app => !!done(app)?.F;

/** What each drawing shows, in words: they come once, when the first is asked for.
    @param {(words: Record<string, string>) => void} then */
function withWords(then) {
  const { strengthHandbook } = globalThis;
  const came = () => strengthHandbook.figures && then(strengthHandbook.figures);
  if (strengthHandbook.figures) came();
  else document.head.append(make('script', { src: root + 'data/figures.js', onload: came }));
}

/** @param {App} app */
const movementViews = app => ({
  movement() {
    const { i } = /** @type {any} */ (done(app));
    app.bar('Back', () => app.show('step', true));
    const picture = make('img', { className: 'sh-picture', src: `${root}exercises/${i}/figure.svg`, alt: 'Drawing' });
    withWords(words => { picture.alt = words[i]; });
    on(picture, 'error', () => picture.replaceWith(line('The drawing did not come. It stands on the exercise’s page.')));
    return { head: ['The movement'], inside: [picture] };
  },
});

export { isDrawn, movementViews };
