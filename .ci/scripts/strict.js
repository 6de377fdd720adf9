/* Holds every script to stricter types than it is written in so far: no more values without a type than
   strict.json says, and no fewer either, so that what was won stays. With --write it is written anew. */
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';

const KNOWN = new URL('strict.json', import.meta.url);
const SCRIPTS = '../../plugins/strength_handbook/theme/assets/strength-handbook/';

const { stdout, error } = spawnSync('npx', ['tsc', '--project', 'tsconfig.strict.json', '--pretty', 'false'],
  { cwd: new URL('.', import.meta.url), encoding: 'utf8' });
if (error) throw error;

/** How many complaints there are, by script. */
const found = {};
for (const [, file] of stdout.matchAll(/^(\S+?)\(\d+,\d+\): error /gm)) {
  const name = file.replace(SCRIPTS, '');
  found[name] = (found[name] ?? 0) + 1;
}
const sorted = Object.fromEntries(Object.entries(found).sort(([one], [other]) => (one < other ? -1 : 1)));

if (process.argv.includes('--write')) {
  writeFileSync(KNOWN, JSON.stringify(sorted, null, 2) + '\n');
} else {
  const known = JSON.parse(readFileSync(KNOWN, 'utf8'));
  for (const name of new Set([...Object.keys(known), ...Object.keys(found)])) {
    const [now, before] = [found[name] ?? 0, known[name] ?? 0];
    if (now === before) continue;
    process.exitCode = 1;
    if (now > before) {
      const where = stdout.split('\n').filter(line => line.startsWith(`${SCRIPTS}${name}(`));
      console.error([`${name}: ${now} values without a type, ${before} were allowed`, ...where].join('\n'));
    } else console.error(`${name}: only ${now} values without a type are left: run npm run strict -- --write`);
  }
}
