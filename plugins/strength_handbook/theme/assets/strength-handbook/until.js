/* After the last day of a program its pages say so. The day stands on the page; the phone's own clock
   says what today is. */
import * as days from './days.js';
import { all, make } from './dom.js';

const today = days.number(new Date());
for (const part of all('[data-sh-until]')) {
  const last = days.parse(part.dataset.shUntil);
  if (last === null || today <= last) continue;
  part.closest('p').after(make('p', 'sh-box sh-caution',
    make('b', '', `This program was valid until ${days.long(last)}.`),
    ' Ask the coach for the next one: days and loads here may be out of date.'));
}
