/* Seconds in figures and by signals, and the tempo of repetitions. */

/** @param {number} seconds */
const face = seconds => `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;

/** The number of seconds to go at which somebody who can't see the clock is told: passed now?
    @param {number} before
    @param {number} now */
const passed = (before, now) => [0, 10, 30].find(call => before > call && now <= call);

/** Heights at the beginning and at the end of a part, where 1 is up; a hold is at the bottom.
    @type {Record<string, [number, number]>} */
const HEIGHTS = { down: [1, 0], hold: [0, 0], up: [0, 1], fast: [0, 1] };

/** What a tempo asks for so many seconds after its beginning: {word, left: whole seconds, rep,
    from and to}; 'over' after the last of so many repetitions, null where nothing takes time.
    Parts are [kind, seconds, word], as phone/train.py has them.
    @param {[kind: string, seconds: number, word: string][]} parts
    @param {number} reps
    @param {number} seconds */
function tempo(parts, reps, seconds) {
  const whole = parts.reduce((sum, [, length]) => sum + length, 0);
  if (!whole) return null;
  const rep = Math.floor(seconds / whole) + 1;
  if (reps && rep > reps) return 'over';
  let gone = seconds % whole;
  let height = parts[0][0] === 'down' ? 1 : 0;
  for (const [kind, length, word] of parts) {
    const [from, to] = HEIGHTS[kind] || [height, height];
    if (gone < length) return { word, left: Math.ceil(length - gone), rep, from, to };
    gone -= length;
    height = to;
  }
  return null;
}

/** @type {AudioContext | undefined} */
let sound;
/** @typedef {{sound?: boolean, buzz?: boolean}} On  which signals are switched on */
const can = { sound: () => globalThis.AudioContext, buzz: () => navigator.vibrate };

/** Browsers let a page sound only after a tap: called from each.
    @param {On} on */
function wake(on) {
  if (!on.sound || !can.sound()) return;
  sound = sound || new AudioContext();
  sound.resume();
}

/** A signal in the ways that are switched on.
    @param {On} on
    @param {boolean} [long] */
function signal(on, long) {
  if (on.buzz && can.buzz()) navigator.vibrate(long ? 400 : 80);
  if (!on.sound || !sound) return;
  const tone = sound.createOscillator();
  tone.frequency.value = long ? 880 : 520;
  tone.connect(sound.destination);
  tone.start();
  tone.stop(sound.currentTime + (long ? 0.4 : 0.08));
}

export { face, passed, tempo, can, wake, signal };
