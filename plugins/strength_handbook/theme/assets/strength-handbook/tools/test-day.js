/* Whether a retest shows a change: the build's limits, in whole numbers, are only compared. */
(function (site) {
  'use strict';

  /** The verdict on two results in grams; limits are percentages of the first, in millionths. */
  site.judge = (before, after, likely, sure) => {
    const change = BigInt(Math.abs(after - before)) * 100000000n;
    const beyond = limit => change && change >= BigInt(limit) * BigInt(before);
    const way = after > before ? 'up' : 'down';
    return beyond(sure) ? 'clearly ' + way : beyond(likely) ? 'probably ' + way : "can't tell";
  };

  const form = site.dom.find('[data-sh-judge]');
  if (!form) return;
  const { likely, sure, units, noise } = form.dataset;
  site.dom.on(form, 'input', () => {
    const fields = [...form.elements].map(field => field.value.trim());
    const [one, two] = fields.map(text => site.loads.toGrams(text, units));
    const change = (100 * (two - one)) / one;
    form.lastElementChild.textContent = !fields.every(Boolean) ? ''
      : !one || two === null ? 'Write two numbers, such as 72.5.'
        : fields.map(text => site.words.understood(text, units)).join('') +
          `${change < 0 ? '−' : '+'}${Math.abs(change).toFixed(1)} %: ` +
          `${site.judge(one, two, likely, sure)}. ${noise}`;
  });
  form.hidden = false;
})(globalThis.strengthHandbook);
