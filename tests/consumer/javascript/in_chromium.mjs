// SPDX-License-Identifier: BSL-1.0
// The installed package in a page and in a worker of a headless Chromium, as a server offers it, without a bundler.
// usage: node in_chromium.mjs <chromium> <vectors.tsv> <functions.tsv> <codes.tsv>
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createServer } from "node:http";
import { start } from "./chromium.mjs";

const [program, ...tables] = process.argv.slice(2);
const script = { type: "text/javascript" };
const files = {
    "/": { type: "text/html", text: "<!doctype html><title>aqueth</title>" },
    "/aqueth.js": { ...script, text: readFileSync("node_modules/aqueth/aqueth.js") },
    "/vectors.mjs": { ...script, text: readFileSync("vectors.mjs") },
    "/ask.mjs": { ...script, text: `
        import * as aqueth from "/aqueth.js";
        import { ask_all, signatures } from "/vectors.mjs";
        const [vectors, functions, codes] = await Promise.all(["/0", "/1", "/2"].map(async (path) => (await fetch(path)).text()));
        export const found = ask_all(aqueth, signatures(functions, codes), vectors);
        if (typeof document === "undefined") postMessage(found);` },
};
tables.forEach((path, k) => (files[`/${k}`] = { type: "text/plain; charset=utf-8", text: readFileSync(path) }));

const server = createServer((request, response) => {
    const file = files[request.url];
    response.writeHead(file ? 200 : 404, { "Content-Type": file?.type ?? "text/plain" }).end(file?.text);
});
await new Promise((resolve) => server.listen(0, "127.0.0.1", resolve));
const browser = await start(program);
try {
    const page = await browser.open(`http://127.0.0.1:${server.address().port}/`);
    const places = {
        page: `import("/ask.mjs").then((module) => module.found)`,
        worker: `new Promise((resolve, reject) => {
            const worker = new Worker("/ask.mjs", { type: "module" });
            worker.onmessage = (message) => resolve(message.data);
            worker.onerror = (event) => reject(new Error(event.message));
        })`,
    };
    for (const [place, expression] of Object.entries(places)) {
        const found = await page.run(expression);
        console.log(`${browser.version}, ${place}: ${found.asked} questions, ${found.refused} of them refused, ${found.wrong} answered wrongly`);
        assert.deepEqual(found.first_wrong, []);
        assert.ok(found.asked > 1000);
    }
} finally {
    await browser.stop();
    server.close();
}
