// Lane group, pool and units: chosen once, kept on the device, followed on every page. Without this script all of them show.
"use strict";

(function (deck) {
  const SUBJECT = "choices";
  const listeners = [];
  const choosers = () => document.querySelectorAll("[data-chooser]");
  let choices = {};

  function offered(name) {
    const values = new Set();
    for (const select of document.querySelectorAll(`[data-choose="${name}"]`)) {
      for (const option of select.options) {
        values.add(option.value);
      }
    }
    return values;
  }

  /** What holds on this page: what was chosen on this device, else what the page is written for. */
  function startingChoices() {
    const kept = deck.read(SUBJECT, {});
    const own = document.querySelector("[data-chooser]")?.dataset ?? {};
    const found = {};
    for (const [name, fallback] of [["group", own.ownGroup], ["pool", own.ownPool], ["units", "pool"]]) {
      const values = offered(name);
      found[name] = values.has(kept[name]) || (!values.size && kept[name]) ? kept[name] : fallback;
    }
    return found;
  }

  function unit() {
    if (choices.units === "m" || choices.units === "yd") {
      return choices.units;
    }
    return choices.pool ? (choices.pool.endsWith("yd") ? "yd" : "m") : "";
  }

  function showOnly(attribute, value) {
    if (value) {
      for (const element of document.querySelectorAll(`[data-${attribute}]`)) {
        element.hidden = element.dataset[attribute] !== value;
      }
    }
  }

  /** Show on the page what the choices say. */
  function apply() {
    showOnly("pool", choices.pool);
    showOnly("group", choices.group);
    showOnly("units", unit());
    for (const length of unit() ? document.querySelectorAll("[data-length]") : []) {
      length.textContent = `${length.dataset.length} ${unit()}`;
    }
    for (const select of document.querySelectorAll("[data-choose]")) {
      select.value = choices[select.dataset.choose] ?? select.value;
    }
  }

  function choose(name, value, keep = true) {
    choices = { ...choices, [name]: value };
    if (keep) {
      deck.write(SUBJECT, { ...deck.read(SUBJECT, {}), [name]: value });
    }
    apply();
    listeners.forEach((listener) => listener(choices));
  }

  deck.choices = {
    now: () => choices,
    choose,
    apply,
    onChange: (listener) => listeners.push(listener),
  };

  choices = startingChoices();
  for (const chooser of choosers()) {
    chooser.hidden = false;
    chooser.addEventListener("change", ({ target }) => {
      if (target.dataset.choose) {
        choose(target.dataset.choose, target.value);
      }
    });
  }
  apply();
})(window.deck);
