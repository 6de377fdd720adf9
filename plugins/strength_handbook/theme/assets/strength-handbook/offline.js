/* Asks the browser to keep the handbook on this phone, and says honestly whether it does. */
(function () {
  "use strict";
  var root = new URL("../../", document.currentScript.src);
  var line = document.getElementById("sh-kept");

  function say(words) {
    if (!line) return;
    line.textContent = words;
    line.hidden = false;
  }

  if (location.protocol === "file:") return;
  if (!("serviceWorker" in navigator)) {
    say("This address starts with http, so your browser keeps no copy: pages need a signal.");
    return;
  }
  navigator.serviceWorker.register(new URL("sw.js", root)).then(
    function () {
      navigator.serviceWorker.ready.then(function () {
        say("Kept on this phone: all pages open without a signal.");
      });
    },
    function () {
      say("Your browser keeps no copy of this handbook: pages need a signal.");
    }
  );
})();
