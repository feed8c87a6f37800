// Spares a reload: sends the form in the background and shows the answer in place.
// Without this script the form works as it is.
"use strict";

(function () {
  // address holds only what was filled in, so that it stays short enough to share.
  function address(form) {
    const query = new URLSearchParams();
    for (const [name, text] of new FormData(form)) {
      if (String(text).trim() !== "") query.append(name, text);
    }
    return "/?" + query.toString();
  }

  async function show(url) {
    const main = document.getElementById("main");
    main.classList.add("waiting");
    try {
      const answer = await fetch(url, { headers: { Accept: "text/html" } });
      const page = new DOMParser().parseFromString(await answer.text(), "text/html");
      for (const part of ["header.top", "#main", "footer"]) {
        const next = page.querySelector(part);
        const now = document.querySelector(part);
        if (next && now) now.replaceWith(next);
      }
      document.title = page.title;
      window.scrollTo(0, 0);
      const heading = document.querySelector("#main h1");
      if (heading) {
        heading.tabIndex = -1;
        heading.focus({ preventScroll: true });
      }
    } catch (e) {
      window.location.assign(url); // let the browser say what is wrong
    }
  }

  document.addEventListener("submit", function (event) {
    if (event.target.id !== "form") return;
    event.preventDefault();
    const url = address(event.target);
    window.history.pushState(null, "", url);
    show(url);
  });

  window.addEventListener("popstate", function () {
    if (!window.location.hash) show(window.location.pathname + window.location.search);
  });
})();
