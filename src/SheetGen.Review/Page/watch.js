import { append, byId, el, replace } from "./dom.js";
import { chosenNail, chooseNail } from "./store.js";

/** While the project file is watched: asks the address that the page came from for news, shows faults, and follows to a newer page. */

const PLACE = "sheetgen.review chosen";

export function followFile() {
  const own = Number(document.querySelector("meta[name=watched-page]")?.content || 0);
  if (!own || location.protocol !== "http:") return;
  const kept = sessionStorage.getItem(PLACE);
  if (kept) chooseNail(kept);
  const bar = el("div", { id: "watch", role: "status" });
  byId("news").before(bar);
  ask(own, bar);
}

async function ask(own, bar) {
  for (let after = 0, failures = 0; failures < 5;) {
    try {
      const news = await (await fetch("news?after=" + after)).json();
      failures = 0;
      after = news.version;
      if (news.page > own) {
        sessionStorage.setItem(PLACE, chosenNail()?.mark ?? "");
        location.reload();
        return;
      }
      show(bar, news);
    } catch {
      failures++;
      await new Promise(done => setTimeout(done, 1000));
    }
  }
  bar.className = "stale";
  replace(bar, "No longer watching: the program has ended. What stands here is the last good wall.");
}

function show(bar, news) {
  bar.className = news.faults.length ? "bad" : "";
  replace(bar, news.building ? "Building the saved file ..." : news.faults.length ? "The saved file has faults; what stands below is the last good wall." : "Watching: save the project file, and this page follows.");
  if (news.faults.length) append(bar, [el("ul", {}, news.faults.map(f => el("li", { text: f })))]);
}
