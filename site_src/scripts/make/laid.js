// A proposal as it is run: laid on the clock, shown in its rows and on sheets, kept for the run, saved and handed on. Fetched with the first
// proposal, whose run data take as long.

import { entryText, partTexts } from "../compose/entry.js";
import { make } from "../lib/dom.js";
import { inWords, today } from "../lib/today.js";
import { hear } from "./between.js";
import { handed, keepRun, saveFile } from "./hand.js";
import { laid } from "./lay.js";
import { whose } from "./names.js";
import { gearWords, sheets } from "./paper.js";
import { changedText, fromWords, notKept } from "./saved.js";
import { showMade } from "./show-made.js";

const NOT_KEPT = "This browser keeps nothing, so that a run of it can’t be begun. Print it, or open its pieces one by one.";

hear("make-lay", (own) => {
  own.made = laid(own.data, own.request, own.proposal, own.told, own.sources, own.here);
});
hear("make-made", showMade);
hear("make-save", (own) => {
  const changed = own.changed && { ...own.changed, composed: partTexts(own.asked, own.order), from: fromWords(own.changed.file, own.changed.wanted) };
  saveFile(own.name, changed ? changedText(changed) : entryText(own.asked, own.order, own.start));
  own.nodes = [make("p", { role: "status" }, `Saved as ${own.name}.`), ...(changed ? [make("p", { class: "hint" }, notKept(changed))] : [])];
});
hear("make-keep", (own) => {
  own.problem = keepRun(own.run, own.made) ? "" : NOT_KEPT;
});
hear("make-hand", (own) => {
  own.nodes = handed(own.title, own.link);
});
hear("make-sheets", (own) => {
  const { data, asked, file, proposal, made: { run, tapped }, adults, unit } = own;
  own.sheets = sheets(run, {
    focus: file?.focus ?? proposal.focus, where: whose(data, { ...asked, start: "" }).split(" · ")[1] ?? "", day: inWords(asked.on || today), adults, unit,
    isKnown: (part) => unit === "m" || !tapped.includes(proposal.parts[part]), gear: gearWords(own), titles: new Map(data.gear.map(([id, title]) => [id, title.toLowerCase()])),
    printed: `${file ? `Made from “${file.title}”` : "Composed"}; not in the club’s repository. Printed ${inWords(today)}.`,
  });
});
