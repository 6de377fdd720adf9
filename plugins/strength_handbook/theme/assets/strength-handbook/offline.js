/* Asks the browser to keep the handbook on this phone, and says honestly whether it does. */
(function (site) {
  'use strict';

  const worker = new URL('../../sw.js', document.currentScript.src);
  const line = site.dom.find('#sh-kept');

  function say(words) {
    if (line) Object.assign(line, { textContent: words, hidden: false });
  }

  if (location.protocol === 'file:') return;
  const { serviceWorker } = navigator;
  if (!serviceWorker) {
    say('This address starts with http, so your browser keeps no copy: pages need a signal.');
    return;
  }
  serviceWorker.register(worker).then(
    () => serviceWorker.ready.then(() => say('Kept on this phone: all pages open without a signal.')),
    () => say('Your browser keeps no copy of this handbook: pages need a signal.'));
})(globalThis.strengthHandbook);
