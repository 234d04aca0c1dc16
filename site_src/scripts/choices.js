// The pool and the lane group, once chosen, stay chosen on every page of this device. Without this script all of them show.
"use strict";

(function () {
  const KEY = "deck-almanac-choices";

  function stored() {
    try {
      return JSON.parse(localStorage.getItem(KEY)) || {};
    } catch {
      return {}; // a browser that keeps nothing, or something that is not ours
    }
  }

  function store(choices) {
    try {
      localStorage.setItem(KEY, JSON.stringify(choices));
    } catch {
      // nothing is kept; the choice still holds on this page
    }
  }

  function labelled(text, options, chosen, onChange) {
    const label = document.createElement("label");
    const select = document.createElement("select");
    for (const [value, title] of options) {
      select.append(new Option(title, value, false, value === chosen));
    }
    select.addEventListener("change", () => onChange(select.value));
    label.append(text, select);
    return label;
  }

  function show(choices) {
    for (const pool of document.querySelectorAll("[data-pool]")) {
      pool.hidden = pool.dataset.pool !== choices.pool;
    }
    for (const group of document.querySelectorAll("[data-group]")) {
      group.hidden = group.dataset.group !== choices.group;
    }
  }

  function groupsOn(page) {
    const groups = new Map();
    for (const section of page.querySelectorAll("[data-group]")) {
      groups.set(section.dataset.group, section.querySelector("h4").textContent);
    }
    return groups;
  }

  function start() {
    const chooser = document.querySelector("[data-chooser]");
    if (!chooser || chooser.childElementCount) {
      return;
    }
    const pools = chooser.dataset.pools.trim().split(" ");
    const groups = groupsOn(document);
    const meant = chooser.dataset.meant.split(" ").filter(Boolean);
    const kept = stored();
    const choices = {
      pool: pools.includes(kept.pool) ? kept.pool : chooser.dataset.own,
      group: groups.has(kept.group) ? kept.group : meant[0] || groups.keys().next().value,
    };
    const change = (name) => (value) => {
      choices[name] = value;
      store({ ...stored(), [name]: value });
      show(choices);
    };
    chooser.append(
      labelled("Lane group", [...groups], choices.group, change("group")),
      labelled("Pool", pools.map((pool) => [pool, pool]), choices.pool, change("pool")),
    );
    show(choices);
  }

  if (document.readyState === "loading") {
    document.addEventListener("DOMContentLoaded", start);
  } else {
    start();
  }
})();
