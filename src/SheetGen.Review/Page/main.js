import { applyLook, lookButton } from "./look.js";
import { append, button, byId } from "./dom.js";
import { remember } from "./marks.js";
import { drawHead } from "./basis.js";
import { drawCard } from "./card.js";
import { drawCharts } from "./charts.js";
import { drawEffect } from "./effectlist.js";
import { drawElevation, elevationPlace } from "./elevation.js";
import { drawFilter, setFilter } from "./filter.js";
import { drawFindings } from "./findinglist.js";
import { drawLegend } from "./legend.js";
import { drawTable } from "./nailtable.js";
import { drawPlan, planPlace } from "./plan.js";
import { drawSpace, measureFrames, paintNow, pickAt, placeInWindow } from "./space.js";
import { listenToKeys, showHelp } from "./keys.js";
import { byMark } from "./data.js";
import { chooseNail, state } from "./store.js";
import { roomToTurn } from "./turn.js";
import { bcfFiles } from "./bcf.js";
import { bytesOf, fileButtons, reviewText, takeBcf, takeOlder, takeReview } from "./reviewfile.js";
import { followFile } from "./watch.js";

/** Puts the page together. */

applyLook();
remember();
append(byId("tools"), [...fileButtons(), lookButton(), button("Print", () => print()), button("Keys", showHelp)]);
drawHead();
drawFilter();
drawElevation();
drawLegend();
drawPlan();
drawSpace();
drawCard();
drawFindings();
drawCharts();
drawEffect();
drawTable();
listenToKeys();
takeOlder();
followFile();
addEventListener("beforeprint", paintNow);

/** For tests and scripts: where things are drawn, what a click would choose. */
globalThis.sheetgenReview = Object.freeze({
  chosen: () => state.chosen === null ? null : { ...state.chosen },
  marks: () => [...state.marks],
  shown: () => [...state.shown],
  choose: chooseNail,
  filter: setFilter,
  pickAt, placeInWindow, measureFrames,
  elevationPlace, planPlace,
  reviewText, takeReview, takeBcf: (bytes, name) => takeBcf(new Uint8Array(bytes), name), bcfFiles, bcfBytes: bytesOf,
  roomToTurn: mark => roomToTurn(byMark.get(mark)),
});
