/* Where somebody is in a session: it follows from what was tapped, and when. Pure.

   An action is [what, which, at], at in milliseconds since 1970: 'done' with the place of a step,
   'miss' for an attempt that was none, or 'set' with all that is left of its set; 'start' of its
   clock; 'go' to it; 'less' by one set, 'out' altogether and 'in' again with an order; 'vary' with
   the place of a variant, -1 for none; 'reps' with a place, and how many there were; 'door' with an
   order, and which door was taken, '' for none. What is no step of the list is passed over.
   play(list, actions)      {at: place of the step, marks: 'done', 'miss' or 'out' by place, started:
                            when, rest: {from, until, chain: letter of the set that begins then},
                            vary: the variant, reps: counted by place, doors: by order, cut: places
                            of strips that a set was ended before, held: seconds by place, where
                            the clock of a set was ended before its time}
   beyond(step, place)      does a step lie beyond what a variant asks for?
   waits(list, played)      must somebody tap to begin?
   due(list, played, now)   what the clock has done since: an action or nothing
   undo(actions)            without the last tap
   clock(list, played, now) {word, left or since: seconds}; left is below 0 once it is over. */

/** @import { Act, Clock, Mark, Played, Rest, Step } from './types.js' */

const READY = 5000; // between a tap and the work
const LATE = 2000; // by itself a set starts only where somebody is there to see it

/** @param {Step} one
    @param {Step} other */
const sameSet = (one, other) => one.kind === other.kind && one.o === other.o && one.n === other.n;

/** The next open step: onwards, then from the front; the end comes last.
    @param {Step[]} list
    @param {(Mark | undefined)[]} marks
    @param {number} from */
function next(list, marks, from) {
  const end = list.length - 1;
  if (from >= end) return end;
  for (let step = 1; step <= end; step += 1) {
    if (!marks[(from + step) % end]) return (from + step) % end;
  }
  return end;
}

/** Rest after a step that was done at a moment, of a set that began at another.
    @param {Step} step
    @param {number} at
    @param {number} began
    @returns {Rest | null} */
function restAfter(step, at, began) {
  if (!step.part || step.kind === 'up' || step.turn || step.rest === 0 || (step.strip && !step.last)) {
    return null;
  }
  const { every, rest } = step;
  if (!every || !step.last) return { from: at, until: rest && at + rest * 1000 };
  return { from: at, until: Math.max((began || at) + every * 1000, at), chain: step.o[0] };
}

/** Does a step begin where the interval of the one before ends?
    @param {Step} step
    @param {Rest | null} rest */
const chained = (step, rest) => step.every && rest && rest.chain === step.o[0];

/** Is a step beyond what a variant asks for?
    @param {Step} step
    @param {number} place */
const beyond = ({ v, n, kind }, place) => {
  const less = v?.[place];
  return Number(n) > less?.of || (kind === 'top' && less?.top === 0);
};

/** @param {Step[]} list
    @param {Act[]} actions
    @returns {Played} */
function play(list, actions) {
  /** @type {(Mark | undefined)[]} */
  const marks = [];
  /** @type {Record<number, number>} */
  const reps = {};
  /** @type {Record<string, string>} */
  const doors = {};
  /** @type {Record<number, boolean>} */
  const cut = {};
  /** @type {Record<number, number>} */
  const held = {};
  let [at, started, began, vary] = [0, 0, 0, -1];
  /** @type {Rest | null} */
  let rest = null;
  /** @param {number} to */
  const go = to => { [at, started] = [to, 0]; };
  for (const [what, which, when, more] of actions) {
    if (what === 'turn') continue; // somebody else's, see turns.js
    // Of a list with other steps.
    if (/done|set|miss|go|reps/.test(what) && !list[which]) continue;
    if (what === 'start') started = when;
    else if (what === 'reps') reps[which] = more;
    else if (what === 'door') doors[which] = more;
    else if (what === 'go') go(which);
    else if (/done|set|miss/.test(what)) {
      /** @param {Step} one */
      const ends = one => one === list[which] ||
        (what === 'set' && sameSet(one, list[which]) && one.side === list[which].side);
      const mine = [...list.keys()].filter(place => ends(list[place]));
      for (const place of mine) {
        marks[place] = what === 'miss' ? what : 'done';
        cut[place] = place > which;
      }
      const step = list[mine[mine.length - 1]];
      const seconds = started ? Math.floor((when - started - READY) / 1000) : Infinity;
      if (seconds < (step.work ?? 0)) held[which] = Math.max(seconds, 0);
      else delete held[which];
      if (started) began = started + (step.work ? READY : 0);
      else if (chained(step, rest)) began = rest?.until ?? 0;
      rest = restAfter(step, when, began);
      if (step.last) began = 0;
      go(next(list, marks, which));
    } else {
      if (what === 'vary') {
        list.forEach((step, place) => {
          if (marks[place] === 'out' && beyond(step, vary)) marks[place] = undefined;
          if (beyond(step, which)) marks[place] ||= 'out';
        });
        vary = which;
      }
      /** @type {(Mark | undefined)[]} */
      const [from, to] = what === 'in' ? ['out', undefined] : [undefined, 'out'];
      const mine = [...list.keys()].filter(one => list[one].o === which && marks[one] === from);
      const last = list[mine[mine.length - 1]];
      for (const one of mine) if (what !== 'less' || sameSet(list[one], last)) marks[one] = to;
      if (marks[at]) go(next(list, marks, at));
      else if (list[at].kind === 'end') go(next(list, marks, -1));
    }
  }
  return { at, marks, started, rest, vary, reps, doors, cut, held };
}

/** @param {Step[]} list
    @param {Played} played
    @param {number} now
    @returns {Act | undefined} */
function due(list, { at, started, rest }, now) {
  const step = list[at];
  if (!step.work) return undefined;
  const end = started + READY + step.work * 1000;
  if (started) return now < end ? undefined : ['done', at, end];
  const until = chained(step, rest) && rest?.until;
  return !until || now < until || now > until + LATE ? undefined : ['start', at, until - READY];
}

/** @param {Act[]} actions */
function undo(actions) {
  const left = actions.slice(0, -1);
  // What the clock ended would end again at once.
  if (left.at(-1)?.[0] === 'start') left.pop();
  return left;
}

/** @param {Step[]} list
    @param {Played} played
    @param {number} now
    @returns {Clock | null} */
function clock(list, { at, started, rest }, now) {
  const step = list[at];
  /** @param {number} from */
  const since = from => (now - from) / 1000;
  if (started && !step.work) return { word: 'Under way', since: since(started) };
  if (started && step.work) {
    const ready = -since(started + READY);
    if (ready > 0) return { word: 'Get ready', left: ready };
    const enough = step.least && -ready >= step.least;
    return { word: enough ? 'Enough: end it or go on' : step.hold ? 'Hold' : 'Work', left: ready + step.work };
  }
  if (!rest) return null;
  if (!rest.until) return { word: 'Since the last one', since: since(rest.from) };
  const left = -since(rest.until);
  const [wait, over] = chained(step, rest) ? ['Next start', 'Start now']
    : [Number(step.part) > 1 ? 'Pause' : 'Rest', 'Ready when you are'];
  return { word: left > 0 ? wait : over, left };
}

/** @param {Step[]} list
    @param {Played} played */
function waits(list, { at, started, rest }) {
  const step = list[at];
  const begins = step.every && step.part === 1 && step.side !== 'right' && !chained(step, rest);
  return !started && !!(step.work || begins);
}

export { play, due, undo, clock, waits, beyond };
