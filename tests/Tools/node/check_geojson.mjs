// Checks a GeoJSON file (RFC 7946) with @placemarkio/check-geojson and prints its features as JSON, or fails with the issues.
// Usage: node check_geojson.mjs FILE
import fs from "fs";
import { check } from "@placemarkio/check-geojson";

try {
  console.log(JSON.stringify(check(fs.readFileSync(process.argv[2], "utf8")).features));
} catch (e) {
  console.error(JSON.stringify(e.issues ?? String(e)));
  process.exit(1);
}
