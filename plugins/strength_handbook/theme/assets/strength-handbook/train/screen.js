/* Session mode: one exercise at a time, over the page of its session.

   What is kept while it runs stands in running.js. Everything follows from the taps, the fields and the
   time, so that a locked phone or a page that is read again shows the right rest. A second member on
   the phone would be a second such value. */
import { find, on, make, link, button, json } from '../dom.js';
import { tools } from '../later.js';
import * as store from '../store.js';
import * as trainButton from '../train-button.js';
import * as clock from './clock.js';
import * as guide from './guide.js';
import { keeping as keepingOf } from './keeping.js';
import * as page from './page.js';
import { parts } from './parts.js';
import * as steps from './steps.js';
import { today } from './today.js';
import * as turns from './turns.js';
import { againViews } from './views/again.js';
import { beforeViews } from './views/before.js';
import { countViews } from './views/count.js';
import { endViews } from './views/end.js';
import { insteadViews } from './views/instead.js';
import { isDrawn, movementViews } from './views/movement.js';
import { planViews } from './views/plan.js';
import { setViews } from './views/set.js';
import * as walk from './walk.js';

/** @import { App, View } from './types.js' */

const VIEWS = [turns.turnViews, beforeViews, setViews, countViews, insteadViews, planViews, movementViews, endViews, againViews];
const SIGNALS = 'train/signals';
const SLIP = 300; // milliseconds in which a second tap is none
const SET = 2000; // and no set takes less

/* The session and where somebody is in it: data, list, slots of the page; acts, ticks, typed, on as
   they are kept; view, now, step, beat as they are shown; today: how heavy each step is. */
/** @type {App} */
const app = /** @type {any} */ ({});
/** @type {any} */
let dialog;
/** Parts of the screen by name.
    @type {Record<string, any>} */
let part;
/** What is shown, by kind of step or by name.
    @type {Record<string, () => View>} */
let views;
/** @type {() => string} */
let whole;
/** Seconds that were left when the clock was last looked at.
    @type {number | null} */
let before;
/** @type {ReturnType<typeof setInterval>} */
let timer;
/** @type {WakeLockSentinel | null} */
let lock;
/** @type {MutationObserver} */
let watch;
/** @type {ReturnType<typeof keepingOf>} */
let keeping;

/** @param {string} words */
const say = words => { part.says.textContent = words; };

/** One tap: kept, and a view shown. */
app.act = (what, which, view, more) => {
  app.acts = [...app.acts, more === undefined ? [what, which, Date.now()] : [what, which, Date.now(), more]];
  app.keepNow();
  app.show(view || 'step', view !== undefined);
};

app.again = () => {
  keeping.forget();
  app.show('step', true);
};

/** Keeps a log under a key, and ends the session. */
app.finish = (value, key) => {
  if (!keeping.keep(key, value)) return;
  app.kept = value;
  keeping.forget();
  app.show('kept');
};

app.doorName = (order, key) => page.doors(order).find(one => one.key === key)?.name || '';

app.leave = () => dialog.close();

/** The large button, and one beside it: words, what it does. */
app.bar = (words, run, besides = '', other) => {
  [part.main.textContent, part.main.run] = [words, run];
  [part.other.textContent, part.other.run] = [besides, other];
  part.other.hidden = !besides;
};

/** Exercise and set, and whose turn it is where a bar is shared, for ears. */
const told = () => (app.turn ? turns.said(app, app.turn) : whole());

/** Fills the screen with a view; the focus goes to a heading that is new. */
function draw(view, focus) {
  page.giveBack();
  app.view = view;
  app.now = walk.play(app.list, app.acts);
  keeping.takeTops();
  page.vary(app.now.vary);
  const step = app.list[app.now.at];
  app.step = { ...step, ...step.v?.[app.now.vary] };
  app.beat = before = null;
  const { at: old, place } = part.now.dataset;
  const walks = view === 'step';
  app.turn = walks ? turns.at(app) : null;
  app.waits = !!app.turn && !app.turn.mine; // somebody else lifts
  const { head, inside, more = [] } = views[walks ? (app.waits ? 'turn' : app.step.kind) : view]();
  part.title.replaceChildren(...head);
  part.now.dataset.kind = app.step.kind;
  // The next set of the same exercise: the finger stays where it is.
  part.now.dataset.at = walks ? app.step.kind + app.step.o : view;
  part.now.dataset.place = app.now.at;
  part.now.replaceChildren(part.title, ...inside.filter(Boolean));
  const switches = walks && app.step.kind !== 'end' && guide.signals(app);
  part.more.replaceChildren(...[...more, switches].filter(Boolean));
  part.instead.hidden = !walks || app.waits || app.step.kind !== 'set' || !page.doors(app.step.o).length;
  part.movement.hidden = !walks || !isDrawn(app);
  part.undo.disabled = !app.acts.length;
  part.undo.parentElement.hidden = !walks;
  tick();
  if (focus || old !== part.now.dataset.at || !dialog.contains(document.activeElement)) {
    part.title.focus({ preventScroll: true });
    dialog.scrollTop = 0;
  } else if (place !== part.now.dataset.place) dialog.scrollTop = 0;
  if (walks) say(`${told()}. ${part.word.textContent}`);
}

/** Shows a view from the start. Where that fails, the page is whole again and there is a way out. */
app.show = (view, focus) => {
  try {
    draw(view, focus);
  } catch (error) {
    page.giveBack(true);
    part.title.textContent = 'This cannot be shown';
    part.now.dataset.at = 'failed';
    part.now.replaceChildren(part.title, make('p', '', 'It all stands on the page. What you tapped is kept.'));
    part.more.replaceChildren();
    app.bar('Back to the page', app.leave);
    throw error;
  } finally {
    watch.takeRecords(); // what was moved here is no news
  }
};

/** What the clock says: five times a second, and at once when the page is seen again. */
function tick() {
  const time = Date.now();
  const more = app.view === 'step' && !app.waits && walk.due(app.list, app.now, time);
  if (more) {
    app.acts = [...app.acts, more];
    app.keepNow();
    clock.signal(app.on, true);
    // The time is up: only who lifted knows how many there were.
    const asks = more[0] === 'done' && app.step.many;
    if (asks) app.counting = [more[1]];
    app.show(asks ? 'count' : 'step');
    return;
  }
  if (app.beat) app.beat();
  const found = (app.waits || app.step.kind !== 'end') && turns.clock(app, time);
  part.clock.hidden = !found;
  part.word.textContent = found ? found.word : '';
  if (!found) return;
  const { left: rest, since = 0 } = found;
  const runs = rest !== undefined;
  const left = runs ? Math.ceil(rest) : 0;
  const call = runs && before !== null ? clock.passed(before, left) : undefined;
  before = runs ? left : null;
  part.clock.classList.toggle('is-over', runs && left <= 0);
  part.figure.textContent = left > 0 ? clock.face(left)
    : (runs ? '+' : '') + clock.face(Math.floor(runs ? -rest : since));
  if (call) say(`${call} seconds`);
  if (call === 0) {
    say(`${found.word}. ${told()}`);
    clock.signal(app.on, true);
  }
}

async function stayAwake() {
  try {
    lock = await navigator.wakeLock.request('screen');
    if (!dialog.open) lock.release();
  } catch {
    lock = null; // the clock is right all the same
  }
}

function build() {
  dialog = make('dialog', 'sh-train');
  part = { title: 'h2', clock: 'div', word: 'span', figure: 'b', now: 'div', more: 'div', says: 'p', trouble: 'p' };
  for (const name in part) part[name] = make(part[name], 'sh-train-' + name);
  let next = 0;
  for (const name of ['other', 'main']) {
    part[name] = button('', ({ timeStamp }) => {
      if (timeStamp < next) return;
      part[name].run();
      const wait = app.view === 'step' && app.step.kind === 'set' ? SET : SLIP;
      part[name].animate({ opacity: [0.3, 1] }, wait);
      next = timeStamp + wait;
    }, 'sh-train-' + name);
  }
  part.undo = button('Undo', () => {
    app.acts = walk.undo(app.acts);
    app.keepNow();
    app.show('step', true);
  });
  part.movement = button('Show the movement', () => app.show('movement', true), 'sh-train-movement');
  part.instead = button('Taken? Hurts?', () => app.show('instead'), 'sh-train-instead');
  part.title.id = 'sh-train-title';
  part.title.tabIndex = -1;
  part.clock.role = 'timer';
  part.clock.append(part.word, part.figure);
  part.says.role = 'status';
  dialog.setAttribute('aria-labelledby', part.title.id);
  dialog.append(
    make('div', 'sh-train-top', button('Leave', app.leave), part.movement,
      link('#emergency', 'Somebody hurt?')), part.clock, part.now,
    make('div', 'sh-train-bar', part.trouble, make('div', 'sh-train-row', part.other, part.main),
      make('div', 'sh-train-row', part.undo, part.instead, button('Running late? Change the order?', () => app.show('plan')))),
    part.more, part.says);
  on(dialog, 'click', () => clock.wake(app.on));
  on(dialog, 'close', closed);
  trainButton.opener.after(dialog);
}

function enter() {
  if (dialog.open) return;
  const runs = keeping.kept();
  const { acts, ticks, typed } = runs?.fits ? runs.found : { acts: [], ticks: [], typed: {} };
  Object.assign(app, { acts, ticks, typed });
  app.over = !runs || runs.fits ? null : { ...runs.found, same: runs.same };
  app.on = store.get(SIGNALS) || {};
  dialog.showModal();
  app.show(app.over ? 'over' : !runs || runs.fresh ? 'step' : 'ask', true);
  timer = setInterval(tick, 200);
  stayAwake();
}

/** The phone's back button and ours leave the same way. */
function closed() {
  clearInterval(timer);
  page.giveBack();
  lock?.release();
  trainButton.forget();
  label();
}

function label() {
  const runs = keeping.kept();
  trainButton.label(!!runs && !runs.fresh);
}

/* On a session's page only. */
function start() {
  app.data = json(trainButton.block);
  const { slots } = app.data;
  app.slots = Object.fromEntries(slots.map(slot =>
    [slot.o, slot]));
  app.list = steps.list(slots, find('#warm-up + ol'));
  app.shape = steps.shape(app.list);
  app.today = today(app);
  keeping = keepingOf(app, words => { part.trouble.textContent = words; });
  app.keepSignals = () => keeping.keep(SIGNALS, app.on);
  ({ whole } = parts(app));
  views = Object.assign({}, ...VIEWS.map(some => some(app)));
  build();
  label();
  // Loads that come while it is open.
  watch = new MutationObserver(() => dialog.open && app.view === 'step' && app.show('step'));
  slots.forEach(({ o }) => page.doors(o)); // before anything is taken off the page
  slots.forEach(({ o }) => watch.observe(page.article(o), { childList: true }));
  tools.train = { enter, leave: () => dialog.open && app.leave() };
  on(document, 'visibilitychange', () => {
    if (!dialog.open || document.hidden) return;
    tick();
    stayAwake();
  });
}

if (trainButton.block) start();
