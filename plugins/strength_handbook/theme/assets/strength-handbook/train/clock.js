/* Seconds in figures and by signals, and the tempo of a repetition. */
(function (train) {
  'use strict';

  const face = seconds => `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;

  /** The number of seconds to go at which somebody who can't see the clock is told: passed now? */
  const passed = (before, now) => [0, 10, 30].find(call => before > call && now <= call);

  /** What a tempo asks for so many seconds after its beginning: {word, left: whole seconds, rep,
      from and to: height, where 1 is up}. */
  function tempo(text, fromBottom, seconds) {
    const [down, low, up, high] = text.split('-').map(part => Number(part) || (part === 'X' ? 1 : 0));
    const phases = [['Down', down, 1, 0], ['Still', low, 0, 0],
      ['Up' + (text.includes('X') ? ', fast' : ''), up, 0, 1], ['Still', high, 1, 1]];
    if (fromBottom) phases.push(...phases.splice(0, 2));
    const whole = down + low + up + high;
    let gone = seconds % whole;
    for (const [word, length, from, to] of phases) {
      if (gone < length) {
        return { word, left: Math.ceil(length - gone), rep: Math.floor(seconds / whole) + 1, from, to };
      }
      gone -= length;
    }
    return null;
  }

  let sound;
  const can = { sound: () => globalThis.AudioContext, buzz: () => navigator.vibrate };

  /** Browsers let a page sound only after a tap: called from each. */
  function wake(on) {
    if (!on.sound || !can.sound()) return;
    sound = sound || new AudioContext();
    sound.resume();
  }

  /** A signal in the ways that are switched on. */
  function signal(on, long) {
    if (on.buzz && can.buzz()) navigator.vibrate(long ? 400 : 80);
    if (!on.sound || !sound) return;
    const tone = sound.createOscillator();
    tone.frequency.value = long ? 880 : 520;
    tone.connect(sound.destination);
    tone.start();
    tone.stop(sound.currentTime + (long ? 0.4 : 0.08));
  }

  train.clock = { face, passed, tempo, can, wake, signal };
})(strengthHandbook.train);
