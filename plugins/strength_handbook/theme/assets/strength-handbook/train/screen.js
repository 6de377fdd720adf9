/* Session mode: one exercise at a time, over the page of its session.

   Kept while it runs, as train/<session>: {page: the session's data, acts: what was tapped, ticks, last:
   when}. Everything follows from the taps and the time, so that a locked phone or a page that is
   read again shows the right rest. A second member on the phone would be a second such value. */
(function (site) {
  'use strict';

  const { train, store } = site;
  const { find, on, make, link, button, json } = site.dom;
  const { page, walk, steps, clock, log, guide } = train;
  const HASH = '#train';
  const now = () => 'train/' + app.data.at; // each session has its own
  const SIGNALS = 'train/signals';
  const LONGEST = 12 * 3600 * 1000;
  const SLIP = 300; // milliseconds in which a second tap is none
  const SET = 2000; // and no set takes less

  /* The session and where somebody is in it: text, data, list, slots of the page; acts, ticks, on as
     they are kept; view, now, step, beat as they are shown. */
  const app = {};
  let dialog, opener, part, views, before, timer, lock, watch;

  const say = words => { part.says.textContent = words; };

  function keep(key, value) {
    part.trouble.textContent = store.set(key, value) ? '' : store.trouble();
    return !part.trouble.textContent;
  }

  app.keepNow = () =>
    keep(now(), { page: app.text, acts: app.acts, ticks: app.ticks, last: Date.now() });
  app.keepSignals = () => keep(SIGNALS, app.on);

  const isNow = value => value.acts.every(Array.isArray) && Array.isArray(value.ticks);

  /** What was kept of this very page, if it is not too old. */
  function kept() {
    const found = store.get(now(), isNow);
    const fits = found && found.page === app.text && found.acts.length + found.ticks.length;
    return fits && Date.now() - found.last < LONGEST ? found : null;
  }

  function forget() {
    [app.acts, app.ticks] = [[], []];
    store.remove(now());
  }

  /** One tap: kept and shown. */
  app.act = (what, which, stay) => {
    app.acts = [...app.acts, [what, which, Date.now()]];
    app.keepNow();
    app.show(stay || 'step', stay);
  };

  app.again = () => {
    forget();
    app.show('step', true);
  };

  app.finish = (...how) => {
    if (!keep(log.key(app.data.at), log.make(app.acts[0]?.[2] || Date.now(), ...how))) return;
    forget();
    app.show('kept');
  };

  app.leave = () => dialog.close();

  /** The large button, and one beside it: words, what it does. */
  app.bar = (words, run, besides = '', other) => {
    [part.main.textContent, part.main.run] = [words, run];
    [part.other.textContent, part.other.run] = [besides, other];
    part.other.hidden = !besides;
  };

  /** Shows a view from the start; the focus goes to a heading that is new. */
  app.show = (view, focus) => {
    page.giveBack();
    app.view = view;
    app.now = walk.play(app.list, app.acts);
    page.vary(app.now.vary);
    const step = app.list[app.now.at];
    app.step = { ...step, ...step.v?.[app.now.vary] };
    app.beat = before = null;
    const old = part.title.textContent;
    const walks = view === 'step';
    const { head, inside, more = [] } = views[walks ? app.step.kind : view]();
    part.title.replaceChildren(...head);
    part.now.dataset.kind = app.step.kind;
    part.now.replaceChildren(part.title, ...inside.filter(Boolean));
    const switches = walks && app.step.kind !== 'end' && guide.signals(app);
    part.more.replaceChildren(...[...more, switches].filter(Boolean));
    part.undo.disabled = !app.acts.length;
    part.undo.parentElement.hidden = !walks;
    tick();
    if (focus || old !== part.title.textContent || !dialog.contains(document.activeElement)) {
      part.title.focus({ preventScroll: true });
      dialog.scrollTop = 0;
    }
    if (walks) say(`${views.whole()}. ${part.word.textContent}`);
    watch.takeRecords(); // what was moved here is no news
  };

  /** What the clock says: five times a second, and at once when the page is seen again. */
  function tick() {
    const time = Date.now();
    const more = app.view === 'step' && walk.due(app.list, app.now, time);
    if (more) {
      app.acts = [...app.acts, more];
      app.keepNow();
      clock.signal(app.on, true);
      app.show('step');
      return;
    }
    if (app.beat) app.beat();
    const found = app.step.kind !== 'end' && walk.clock(app.list, app.now, time);
    part.clock.hidden = !found;
    part.word.textContent = found ? found.word : '';
    if (!found) return;
    const runs = found.left !== undefined;
    const left = runs ? Math.ceil(found.left) : 0;
    const call = runs && before !== null ? clock.passed(before, left) : undefined;
    before = runs ? left : null;
    part.clock.classList.toggle('is-over', runs && left <= 0);
    part.figure.textContent = left > 0 ? clock.face(left)
      : (runs ? '+' : '') + clock.face(Math.floor(runs ? -found.left : found.since));
    if (call) say(`${call} seconds`);
    if (call === 0) {
      say(`${found.word}. ${views.whole()}`);
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
    part.title.id = 'sh-train-title';
    part.title.tabIndex = -1;
    part.clock.role = 'timer';
    part.clock.append(part.word, part.figure);
    part.says.role = 'status';
    dialog.setAttribute('aria-labelledby', part.title.id);
    dialog.append(
      make('div', 'sh-train-top', button('Leave', app.leave),
        link('#emergency', 'Somebody hurt?')), part.clock, part.now,
      make('div', 'sh-train-bar', part.trouble, make('div', 'sh-train-row', part.other, part.main),
        make('div', 'sh-train-row', part.undo, button('Late? Other order?', () => app.show('plan')))),
      part.more, part.says);
    on(dialog, 'click', () => clock.wake(app.on));
    on(dialog, 'close', closed);
    opener.after(dialog);
  }

  function enter() {
    if (dialog.open) return;
    const found = kept();
    [app.acts, app.ticks] = found ? [found.acts, found.ticks] : [[], []];
    app.on = store.get(SIGNALS) || {};
    dialog.showModal();
    app.show(found ? 'ask' : 'step', true);
    timer = setInterval(tick, 200);
    stayAwake();
  }

  /** The phone's back button and ours leave the same way. */
  function closed() {
    clearInterval(timer);
    page.giveBack();
    lock?.release();
    if (location.hash === HASH) {
      if (history.state?.train) history.back();
      else history.replaceState(null, '', location.href.split('#')[0]);
    }
    label();
  }

  const label = () => { opener.textContent = kept() ? 'Go on training' : 'Train this session'; };

  function byAddress() {
    if (location.hash === HASH) enter();
    else if (dialog.open) dialog.close();
  }

  /* The button, on a session's page only. */
  const block = find('.sh-train-data');
  if (!block || !globalThis.HTMLDialogElement) return;
  app.text = block.textContent;
  app.data = json(block);
  const { slots } = app.data;
  app.slots = Object.fromEntries(slots.map(slot =>
    [slot.o, { ...slot, name: find('h2 a', page.article(slot.o)).textContent }]));
  app.list = steps.list(slots, find('#warm-up + ol'));
  views = train.views(app);
  opener = button('', () => {
    location.hash = HASH;
    history.replaceState({ train: true }, '');
    enter();
  }, 'sh-train-open');
  block.after(opener);
  build();
  label();
  // Loads that come while it is open.
  watch = new MutationObserver(() => dialog.open && app.view === 'step' && app.show('step'));
  slots.forEach(({ o }) => watch.observe(page.article(o), { childList: true }));
  byAddress();
  on(globalThis, 'hashchange', byAddress);
  on(document, 'visibilitychange', () => {
    if (!dialog.open || document.hidden) return;
    tick();
    stayAwake();
  });
})(strengthHandbook);
