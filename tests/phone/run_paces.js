/* Reads {script, question} from standard input: the phone's modules as one script, and {cases, typed}.
   Prints what each case, [recipe, amount], comes to as a phone shows it; then each of `typed`, [text,
   kind], as it is read. */
'use strict';
const { readFileSync } = require('node:fs');
const { runInThisContext } = require('node:vm');
const { script, question } = JSON.parse(readFileSync(0, 'utf8'));
runInThisContext(script);
const { paces } = globalThis.strengthHandbook;
const shown = ([recipe, amount]) => {
  const { pace, piece, watts } = paces.aim(recipe, amount);
  return [paces.split(pace), paces.split(piece), [...new Set(watts)].join('–')];
};
console.log(JSON.stringify([
  ...question.cases.map(shown),
  ...question.typed.map(([text, kind]) => paces.read(text, kind)),
]));
