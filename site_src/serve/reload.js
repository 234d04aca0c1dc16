// Only under `almanac serve`: asks whether this page is another by now, loads it again if so, and shows what is found wrong.

const { page = "", version = "0" } = document.currentScript?.dataset ?? {};
const PATIENCE_MS = 1000;
let told = "";

/**
 * What was found, at the foot of the page until nothing is; styles are set here because no style sheet of the site knows of it.
 * @param {string} message
 */
function show(message) {
  document.getElementById("almanac-findings")?.remove();
  if (!message) {
    return;
  }
  const box = document.createElement("pre");
  box.id = "almanac-findings";
  box.setAttribute("role", "status");
  box.textContent = message;
  Object.assign(box.style, {
    position: "fixed", inset: "auto 0 0 0", margin: "0", padding: "1rem", maxHeight: "40vh", overflow: "auto", zIndex: "99",
    whiteSpace: "pre-wrap", color: "#000000", background: "#ffe9a8", borderTop: "2px solid #000000", fontSize: "0.7rem",
  });
  document.body.append(box);
}

async function ask() {
  try {
    const query = new URLSearchParams({ page, since: version, told });
    const answer = await (await fetch(`/_serve/changes?${query}`)).json();
    if (answer.reload) {
      location.reload();
      return;
    }
    told = answer.told;
    show(answer.message);
    ask();
  } catch {
    setTimeout(ask, PATIENCE_MS); // the server has stopped, and may come back
  }
}

ask();
