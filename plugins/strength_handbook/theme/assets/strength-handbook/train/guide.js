/* Tempo and signals: the buttons that show a repetition second by second, or switch a signal on. */
(function (site) {
  'use strict';

  const { train, dom: { make, button } } = site;
  const { clock } = train;

  /** A button that is in or out, as `run` says. */
  function toggle(words, is, run) {
    const made = button(words, () => { made.ariaPressed = run(); });
    made.ariaPressed = is;
    return made;
  }

  /** Switches for the signals that the browser has. */
  function signals(app) {
    const some = [['sound', 'Sound'], ['buzz', 'Buzz']].filter(([name]) => clock.can[name]());
    return some.length ? make('p', 'sh-train-row', 'Tell me by ', ...some.map(([name, words]) =>
      toggle(words, !!app.on[name], () => {
        app.on = { ...app.on, [name]: !app.on[name] };
        app.keepSignals();
        clock.wake(app.on);
        clock.signal(app.on);
        return app.on[name];
      }))) : '';
  }

  /** A tempo as a word and a weight that moves. */
  function tempo(app, text, u) {
    const word = make('span', 'sh-train-beat');
    const weight = make('i');
    const track = make('span', 'sh-train-track', weight);
    let shown;
    const runs = start => () => {
      const seconds = (Date.now() - start) / 1000 - 3;
      const found = seconds < 0 ? { word: 'Get ready', left: Math.ceil(-seconds), from: !u, to: !u }
        : clock.tempo(text, u, seconds);
      if (!found) return;
      word.textContent = `${found.word} ${found.left}`;
      const phase = [found.rep, found.word, found.to].join();
      if (phase === shown) return;
      shown = phase;
      weight.animate({ bottom: [found.from, found.to].map(at => at * 80 + '%') },
        { duration: found.left * 1000, fill: 'forwards' });
      clock.signal(app.on);
    };
    track.hidden = true;
    return make('div', 'sh-train-tempo', toggle('Tempo ' + text, false, () => {
      app.beat = app.beat ? null : runs(Date.now());
      word.textContent = '';
      track.hidden = !app.beat;
      if (app.beat) app.beat();
      return !!app.beat;
    }), word, track);
  }

  train.guide = { toggle, signals, tempo };
})(strengthHandbook);
