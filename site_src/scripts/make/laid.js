// A proposal as it is run: laid on the clock, shown in its rows and on sheets. Fetched with the first proposal, whose run data take as long.

import { hear } from "./between.js";
import { laid } from "./lay.js";
import { gearWords, sheets } from "./paper.js";
import { changedText, notKept } from "./saved.js";
import { showMade } from "./show-made.js";

hear("make-lay", (own) => {
  own.made = laid(own.data, own.request, own.proposal, own.told, own.sources, own.here);
});
hear("make-made", ({ box, made, proposal }) => showMade(box, made, proposal));
hear("make-save", (own) => {
  own.text = changedText(own);
  own.gone = notKept(own);
});
hear("make-sheets", (own) => {
  own.sheets = sheets(own.run, { ...own.told, gear: gearWords(own) });
});
