/* Reads {lists, cases} from standard input, works every case out as a phone does, prints the
   answers. A case is [recipe, me, tops]. */
'use strict';
const folder = process.argv[2];
for (const name of ['loads.js', 'load-words.js']) require(`${folder}/${name}`);
const { loads, words } = globalThis.strengthHandbook;

/** A load as numbers and words; null where there is none. */
function plain(load, lists) {
  if (!load || load.need) return null;
  const { units } = lists;
  return {
    wanted: load.wanted,
    grams: load.grams,
    parts: load.parts,
    amount: words.amount(load, units),
    apart: words.apart(load, lists),
  };
}

function answer(recipe, me, tops, lists) {
  const load = loads.make(recipe, me, lists);
  const today = load && !load.need ? load : null;
  const one = found => plain(found, lists);
  const all = found => found && found.map(one);
  const ladder = loads.ladder(recipe, me, lists);
  return {
    load: one(load),
    range: today && all(loads.range(recipe, me, lists)),
    doors: (recipe.d || []).filter(([, own]) => today || own.z === undefined).map(([place, own]) =>
      [lists.doors[place], one(loads.door(own, today, me, lists))]),
    next: today && (recipe.n || []).map(([when, move]) =>
      [when, one(loads.next(move, today, me, lists))]),
    ramp: loads.ramp(recipe, me, lists),
    ladder: ladder && {
      steps: ladder.steps.map(({ load: step, reps }) => [one(step), reps]),
      first: one(ladder.first), up: all(ladder.up), down: all(ladder.down),
    },
    strips: today && recipe.c !== undefined ? loads.strips(recipe, today, lists) : null,
    on_top: today && loads.onTop(recipe, today, me, lists),
    helping: today && words.helping(recipe, today, lists),
    expected: loads.expectedTop(recipe, me, lists),
    back_off: recipe.t === undefined ? null : tops.map(top => one(loads.backOff(recipe, top, me, lists))),
  };
}

let text = '';
process.stdin.setEncoding('utf8');
process.stdin.on('data', part => { text += part; });
process.stdin.on('end', () => {
  const asked = JSON.parse(text);
  const found = asked.typed
    ? asked.typed.map(([typed, units]) => loads.toGrams(typed, units))
    : asked.understood ? asked.understood.map(one => words.understood(...one))
    : asked.heard ? asked.heard.map(one => words.heard(...one))
    : asked.grams
      ? asked.grams.map(one => ['kg', 'lb'].map(unit => words.bare(one, unit)))
      : asked.cases.map(([recipe, me, tops]) => answer(recipe, me, tops, asked.lists));
  process.stdout.write(JSON.stringify(found));
});
