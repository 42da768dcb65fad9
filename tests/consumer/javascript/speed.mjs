// SPDX-License-Identifier: BSL-1.0
// Time of a call and of an element, the least of several runs. usage: node speed.mjs
import * as aqueth from "aqueth";

let kept = 0;
function nanoseconds(count, run) {
    let least = Infinity;
    for (let k = 0; k < 300; ++k) {
        const start = performance.now();
        run(count);
        least = Math.min(least, ((performance.now() - start) * 1e6) / count);
    }
    return least.toFixed(0);
}

const length = 10000; // short, so that some runs are not interrupted
const w = Float64Array.from({ length }, (_, k) => 0.2 + (0.5 * k) / length);
const celsius = w.map((x) => 20 + x);
const scale = "volume_fraction_at_20_celsius", glass = 25e-6;
const density = { kg_m3: new Float64Array(length), refused: new Uint8Array(length) };
const reading = { strength: density.kg_m3, refused: density.refused };
const table = [
    ["function", "ns a call", "ns an element"],
    ["density_kg_m3", nanoseconds(length, (n) => { for (let k = 0; k < n; ++k) kept += aqueth.density_kg_m3(w[k], celsius[k]); }),
     nanoseconds(length, () => aqueth.density_kg_m3_array(w, celsius, density))],
    ["strength_from_reading", nanoseconds(length, (n) => { for (let k = 0; k < n; ++k) kept += aqueth.strength_from_reading(w[k], celsius[k], scale, glass); }),
     nanoseconds(length, () => aqueth.strength_from_reading_array(w, celsius, scale, glass, reading))],
];
for (const row of table) console.log(row.join("\t"));
if (Number.isNaN(kept)) throw new Error("an answer is missing");
