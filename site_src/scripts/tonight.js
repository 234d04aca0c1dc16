// Tonight: today first, then the days to come; what is over is folded away.

import { all, make, one } from "./lib/dom.js";
import { today } from "./lib/today.js";

const box = one("[data-days]");
const days = all("[data-on]", box);
const over = days.filter((day) => (day.dataset.on ?? "") < today);
const now = days.find((day) => day.dataset.on === today);
if (now) {
  one("h2", now).prepend("Tonight, ");
} else {
  box.prepend(make("p", {}, "Nothing is planned today."));
}
if (over.length) {
  const heading = make("summary", {}, make("h2", {}, "Earlier"), " ", make("span", { class: "fold-count" }, String(over.length)));
  box.append(make("details", { class: "fold" }, heading, ...over));
}
