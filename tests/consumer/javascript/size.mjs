// SPDX-License-Identifier: BSL-1.0
// Sizes, of which none may reach 120 kB compressed. usage: node size.mjs <tarball> <module> <page>
import { readFileSync } from "node:fs";
import { basename } from "node:path";
import { gzipSync } from "node:zlib";

const table = process.argv.slice(2).map((path) => {
    const bytes = readFileSync(path);
    return [basename(path), bytes.length, path.endsWith(".tgz") ? bytes.length : gzipSync(bytes, { level: 9 }).length];
});
for (const [name, size, compressed] of table) console.log(`${name}\t${size}\t${compressed}`);
process.exitCode = table.length === 3 && table.every(([, , compressed]) => compressed < 120000) ? 0 : 1;
