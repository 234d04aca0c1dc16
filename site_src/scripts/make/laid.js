// A proposal as it is run: laid on the clock, shown in its rows and on sheets, kept for the run, saved and handed on. Fetched with the first
// proposal, whose run data take as long.

import { entryText, partTexts } from "../compose/entry.js";
import { hear } from "./between.js";
import { handOn, keepRun, saveFile } from "./hand.js";
import { laid } from "./lay.js";
import { gearWords, sheets } from "./paper.js";
import { changedText, notKept } from "./saved.js";
import { showMade } from "./show-made.js";

hear("make-lay", (own) => {
  own.made = laid(own.data, own.request, own.proposal, own.told, own.sources, own.here);
});
hear("make-made", ({ box, made, proposal }) => showMade(box, made, proposal));
hear("make-save", (own) => {
  const changed = own.changed && { ...own.changed, composed: partTexts(own.asked, own.order) };
  own.text = changed ? changedText(changed) : entryText(own.asked, own.order, own.start);
  own.gone = changed ? notKept(changed) : "";
  saveFile(own.name, own.text);
});
hear("make-keep", (own) => {
  own.isKept = keepRun(own.run, own.made);
});
hear("make-hand", ({ title, link, told }) => {
  handOn(title, link).then((words) => { told.textContent = words; });
});
hear("make-sheets", (own) => {
  own.sheets = sheets(own.run, { ...own.told, gear: gearWords(own), titles: new Map(own.data.gear.map(([id, title]) => [id, title.toLowerCase()])) });
});
