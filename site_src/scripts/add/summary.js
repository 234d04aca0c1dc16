// What is left to do, as a list whose links lead to the fields: mistakes in full, then what is only still to be filled in.
"use strict";

(function (deck) {
  const add = (deck.add = deck.add ?? {});
  const { make } = deck;
  const many = (count, one, more) => `${count} ${count === 1 ? one : more}`;

  /** The name of a place among others of its name: "Safety 1: Hazard", "Effort: From". */
  function nameOf(slot) {
    let around = add.slotAround(slot);
    while (around?.place.bare) {
      around = add.slotAround(around); // a box without a name of its own
    }
    return slot.place.of || !around ? slot.told : `${around.told}: ${slot.told}`;
  }

  function linkTo(slot, text) {
    const link = make("a", { href: `#${slot.target.id}` }, text);
    link.addEventListener("click", (event) => {
      event.preventDefault();
      slot.focus();
      slot.show();
    });
    return link;
  }

  const isBlank = ({ code }) => code === "missing-key" || code === "no-name";

  /** Put the findings beside their fields and into the list below `page`. Returns how many there are. */
  add.summarise = function (page, form, findings) {
    const all = add.slotsWithin(form);
    all.forEach((slot) => { slot.findings = []; });
    findings.forEach(({ slot, ...finding }) => slot.findings.push(finding));
    all.forEach((slot) => slot.show());
    const wrong = findings.filter((finding) => !isBlank(finding));
    const blank = findings.filter(isBlank);
    const told = wrong.map(({ slot, message, mend }) => make("li", {}, linkTo(slot, `${nameOf(slot)}: ${message}`), ...add.mendLine(mend)));
    page.querySelector("[data-mistakes]").replaceChildren(...told);
    page.querySelector("[data-blanks-head]").hidden = !blank.length || !wrong.length;
    page.querySelector("[data-blanks]").replaceChildren(...blank.map(({ slot }) => make("li", {}, linkTo(slot, nameOf(slot)))));
    const count = [wrong.length ? many(wrong.length, "thing to mend", "things to mend") : "", blank.length ? `${blank.length} still to fill in` : ""];
    const line = count.filter(Boolean).join(", ");
    return { number: findings.length, line: line ? `${line}.` : "Everything that can be checked here is in order." };
  };

  /** Show every message, those of fields too that nobody has been to. */
  add.showAll = function (form) {
    for (const slot of add.slotsWithin(form)) {
      slot.touched = true;
      slot.show();
    }
  };
})(window.deck);
