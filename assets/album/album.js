/* The album works without this: here pairs of photos get a handle, and photos the arrow keys. */
(function () {
  "use strict";

  function slide(pair) {
    var both = pair.querySelector(".both");
    var range = pair.querySelector(".slide");
    var bar = pair.querySelector(".bar");
    function show() {
      both.style.setProperty("--cut", range.value + "%");
    }
    range.hidden = false;
    bar.hidden = false;
    pair.classList.add("sliding");
    range.addEventListener("input", show);
    show();
  }

  function turn(event) {
    var way = { ArrowLeft: "prev", ArrowRight: "next" }[event.key];
    var busy = event.altKey || event.ctrlKey || event.metaKey || event.shiftKey;
    if (!way || busy || /^(INPUT|TEXTAREA|SELECT)$/.test(event.target.tagName)) {
      return;
    }
    var link = document.querySelector("a[rel=" + way + "]");
    if (link && document.querySelector(".large")) {
      link.click();
    }
  }

  document.querySelectorAll(".pair.laid").forEach(slide);
  document.addEventListener("keydown", turn);
})();
