/* Reads {script, question} from standard input: the phone's modules as one script, and {lists, cases}.
   Works every case out as a phone does, prints the answers. A case is [recipe, me, tops]. */
'use strict';
const { readFileSync } = require('node:fs');
const { runInThisContext } = require('node:vm');
const { script, question } = JSON.parse(readFileSync(0, 'utf8'));
runInThisContext(script);
const modules = globalThis.strengthHandbook;
const { loads, 'load-words': words } = modules;
const { ladderOf, nextAttempt } = modules.attempts;
const { onTopOf } = modules['on-top'];
const { rampOf } = modules.ramps;
const { stripsOf } = modules.strips;
const { toGrams } = modules['whole-numbers'];
const { asExpected, singleOf } = modules['tools/singles'];

/** A load as numbers and words; null where there is none. */
function plain(load, lists) {
  if (!load || load.need) return null;
  const { units } = lists;
  return {
    wanted: load.wanted,
    grams: load.grams,
    parts: load.parts,
    made: words.made(load, units),
    amount: words.amount(load, units),
    apart: words.apart(load, lists),
  };
}

/** Every sequence of results of four attempts, the lower end taken each time: grams of the ranges. */
function attempts(recipe, me, lists, first) {
  return [...Array(8).keys()].map(code => {
    let [now, good, missed] = [first, null, null];
    return [0, 1, 2].map(bit => {
      const was = !!(code >> bit & 1);
      if (now === null) return null;
      if (was) good = now;
      else missed = now;
      const found = nextAttempt(recipe, me, lists, good, missed, was);
      now = found && found.low.grams;
      return found && [found.low.grams, found.high.grams];
    });
  });
}

function answer(recipe, me, tops, lists) {
  const load = loads.make(recipe, me, lists);
  const today = load && !load.need ? load : null;
  const one = found => plain(found, lists);
  const all = found => found && found.map(one);
  const range = found => found && [one(found.low), one(found.high)];
  const ladder = ladderOf(recipe, me, lists);
  return {
    load: one(loads.settle(load, recipe, lists)),
    mine: one(loads.settle(load, recipe, lists)),
    series: today && loads.series(recipe, me, lists).map(set => [one(set.load), set.off, set.on]),
    range: today && all(loads.range(recipe, me, lists)),
    doors: (recipe.d || []).filter(([, own]) => today || own.z === undefined).map(([place, own]) =>
      [lists.doors[place], one(loads.door(own, today, me, lists))]),
    next: today && (recipe.n || []).map(([when, move]) =>
      [when, one(loads.next(move, today, me, lists))]),
    ramp: rampOf(recipe, me, lists),
    ladder: ladder && {
      steps: ladder.steps.map(({ load: step, reps }) => [one(step), reps]),
      first: one(ladder.first),
      good: range(ladder.good), missed: range(ladder.missed), attempts: attempts(recipe, me, lists, ladder.first.grams),
    },
    strips: today && recipe.c !== undefined ? stripsOf(recipe, today, lists) : null,
    on_top: today && onTopOf(recipe, today, me, lists),
    expected: loads.expectedTop(recipe, me, lists),
    back_off: recipe.t === undefined ? null : tops.map(top => one(loads.backOff(recipe, top, me, lists))),
  };
}

function answers(asked) {
  return asked.typed
    ? asked.typed.map(([typed, units]) => toGrams(typed, units))
    : asked.singles ? asked.singles.map(([total, reps]) => singleOf(total, reps, asked.lists))
    : asked.starts ? asked.starts.map(one => loads.start(...one, asked.lists)
      .map(([label, load]) => [label, load.grams]))
    : asked.expected ? asked.expected.map(one => asExpected(...one, asked.lists))
    : asked.understood ? asked.understood.map(one => words.understood(...one))
    : asked.heard ? asked.heard.map(one => words.heard(...one))
    : asked.grams
      ? asked.grams.map(one => ['kg', 'lb'].flatMap(unit => [words.bare(one, unit), words.stamped(one, unit)]))
      : asked.cases.map(([recipe, me, tops]) => answer(recipe, me, tops, asked.lists));
}

process.stdout.write(JSON.stringify(answers(question)));
