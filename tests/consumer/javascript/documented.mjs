// SPDX-License-Identifier: BSL-1.0
// Runs the JavaScript of pages; where a comment says what a line prints, it must. usage: node documented.mjs <page>...
import { readFileSync, writeFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

let failed = 0, checked = 0;
const print = console.log;
for (const [n, path] of process.argv.slice(2).entries()) {
    const codes = [...readFileSync(path, "utf8").matchAll(/^```js\n(.*?)^```$/gms)].map((match) => match[1]);
    for (const [k, code] of codes.entries()) {
        const file = `documented_${n}_${k}.mjs`, printed = [];
        writeFileSync(file, code);
        console.log = (...values) => printed.push(values.map(String).join(" "));
        await import(pathToFileURL(file));
        console.log = print;
        const said = [...code.matchAll(/console\.log\(.*\/\/ (.*)$/gm)].map((match) => match[1]);
        checked += said.length;
        said.forEach((line, i) => {
            if (printed[i] === line) return;
            ++failed;
            print(`${path}: says ${line}, prints ${printed[i]}`);
        });
    }
}
console.log(`${checked} lines of output checked, ${failed} wrong`);
process.exitCode = failed > 0 || checked === 0 ? 1 : 0;
