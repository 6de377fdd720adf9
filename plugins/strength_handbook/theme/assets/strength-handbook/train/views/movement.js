/* Session mode where somebody wants to see the movement: the gym's own photo of the exercise that is
   done, and its drawing. */
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

/** Is there a picture of what is done now?
    @param {App} app */
const isDrawn = app => !!(done(app)?.F || done(app)?.P);

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
    const { i, F, P } = /** @type {any} */ (done(app));
    app.bar('Back', () => app.show('step', true));
    const photo = P && make('img', { className: 'sh-photo', src: root + P[0], alt: P[1] });
    if (P) on(photo, 'error', () => photo.replaceWith(line('The photo did not come: it needs a signal.')));
    if (!F) return { head: ['The movement'], inside: [photo] };
    const picture = make('img', { className: 'sh-picture', src: `${root}exercises/${i}/figure.svg`, alt: 'Drawing' });
    withWords(words => { picture.alt = words[i]; });
    on(picture, 'error', () => picture.replaceWith(line('The drawing did not come. It stands on the exercise’s page.')));
    return { head: ['The movement'], inside: P ? [photo, picture] : [picture] };
  },
});

export { isDrawn, movementViews };
