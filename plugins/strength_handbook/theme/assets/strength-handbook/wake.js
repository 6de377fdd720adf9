/* Does what a reader needs of the theme at once: light or dark, drawers that a link leads into.
   The theme's own script is loaded on first need: for search, shortcuts and marked words. */
(function () {
  "use strict";
  var root = document.documentElement;
  var later = document.getElementById("sh-later");
  var awake = false;

  root.classList.remove("no-js");
  root.classList.add("js");

  function wake(then) {
    if (awake || !later) return;
    awake = true;
    var script = document.createElement("script");
    script.src = later.src;
    if (then) script.addEventListener("load", then);
    document.body.appendChild(script);
  }

  /* Light, dark or as the phone is set; kept where the theme's own script looks for it. */
  var dark = matchMedia("(prefers-color-scheme: dark)");
  var options = [].slice.call(document.querySelectorAll("[data-md-component=palette] input"));

  function kept() {
    try {
      return __md_get("__palette") || {};
    } catch (error) {
      return {}; /* blocked or spoilt storage */
    }
  }

  function paint() {
    var own = kept().color;
    var set = own && own.media !== "(prefers-color-scheme)";
    var scheme = set ? own.scheme : dark.matches ? "slate" : "default";
    document.body.setAttribute("data-md-color-scheme", scheme);
    var current = options[kept().index] || options[0];
    options.forEach(function (option) {
      option.checked = option === current;
      option.nextElementSibling.hidden = option !== current;
    });
  }

  options.forEach(function (option, index) {
    option.addEventListener("change", function () {
      if (awake) return;
      var colour = {};
      ["media", "scheme", "primary", "accent"].forEach(function (part) {
        colour[part] = option.getAttribute("data-md-color-" + part);
      });
      __md_set("__palette", { index: index, color: colour });
      paint();
    });
  });
  dark.addEventListener("change", function () {
    if (!awake) paint();
  });
  paint();

  /* A link to something inside a closed drawer opens the drawer. */
  function open() {
    var target = document.getElementById(decodeURIComponent(location.hash.slice(1)));
    var box = target && target.closest("details:not([open])");
    if (!box) return;
    for (; box; box = box.parentElement.closest("details:not([open])")) box.open = true;
    target.scrollIntoView();
  }

  ["pointerdown", "focusin", "click"].forEach(function (kind) {
    document.addEventListener(
      kind,
      function (event) {
        if (event.target.closest(".md-search, [for=__search]")) wake();
      },
      { passive: true }
    );
  });
  document.addEventListener("keydown", function (event) {
    if (awake || !later || event.metaKey || event.ctrlKey || event.altKey) return;
    if (event.target.closest("input, textarea, select")) return;
    if (["f", "s", "/"].indexOf(event.key) < 0) return;
    event.preventDefault();
    wake(function () {
      document.dispatchEvent(new KeyboardEvent("keydown", { key: event.key, bubbles: true }));
    });
  });
  addEventListener("hashchange", open);
  open();
  if (/[?&]h=/.test(location.search)) wake();
  /* From a page without a search of its own. */
  if (later && /[?&]search\b/.test(location.search)) {
    wake(function () {
      document.getElementById("__search").click();
      document.querySelector(".md-search__input").focus();
    });
  }
})();
