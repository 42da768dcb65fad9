// SPDX-License-Identifier: BSL-1.0
// A headless Chromium, driven through its debugging pipe: nothing to install beside the browser.
import { spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

export async function start(program) {
    const profile = mkdtempSync(join(tmpdir(), "aqueth-chromium-"));
    const browser = spawn(program, ["--headless=new", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--no-first-run", "--hide-scrollbars",
        "--disable-background-networking", "--disable-component-update", "--remote-debugging-pipe", `--user-data-dir=${profile}`, "about:blank"],
        { stdio: ["ignore", "ignore", "ignore", "pipe", "pipe"] });
    const gone = new Promise((resolve) => browser.once("exit", resolve));
    const waiting = new Map(), listeners = [];
    let number = 0, text = "";
    browser.once("exit", (code) => {
        for (const { reject } of waiting.values()) reject(new Error(`the browser ended with ${code}`));
    });
    browser.stdio[4].setEncoding("utf8").on("data", (part) => {
        const messages = (text + part).split("\0");
        text = messages.pop();
        for (const message of messages.map((one) => JSON.parse(one))) {
            const asked = waiting.get(message.id);
            waiting.delete(message.id);
            if (!asked) listeners.forEach((listener) => listener(message));
            else if (message.error) asked.reject(new Error(`${asked.method}: ${message.error.message}`));
            else asked.resolve(message.result);
        }
    });
    const send = (method, params = {}, sessionId) => new Promise((resolve, reject) => {
        waiting.set(++number, { method, resolve, reject });
        browser.stdio[3].write(JSON.stringify({ id: number, method, params, sessionId }) + "\0");
    });

    /** A tab with the page of an address. */
    async function open(url, { width = 1280, height = 800, phone = false } = {}) {
        const { targetId } = await send("Target.createTarget", { url: "about:blank" });
        const { sessionId } = await send("Target.attachToTarget", { targetId, flatten: true });
        const here = (method, params) => send(method, params, sessionId);
        const problems = [], requests = [];
        listeners.push((message) => {
            if (message.sessionId !== sessionId) return;
            if (message.method === "Runtime.exceptionThrown") problems.push(message.params.exceptionDetails.exception?.description ?? message.params.exceptionDetails.text);
            if (message.method === "Log.entryAdded" && message.params.entry.level === "error") problems.push(message.params.entry.text);
            if (message.method === "Network.requestWillBeSent") requests.push(message.params.request.url);
        });
        await Promise.all(["Page.enable", "Runtime.enable", "Log.enable", "Network.enable"].map((method) => here(method)));
        await here("Emulation.setDeviceMetricsOverride", { width, height, deviceScaleFactor: phone ? 2 : 1, mobile: phone });
        const loaded = new Promise((resolve) => listeners.push((message) => {
            if (message.sessionId === sessionId && message.method === "Page.loadEventFired") resolve();
        }));
        await here("Page.navigate", { url });
        await loaded;
        const key = async (name, code, extra = {}) => {
            for (const type of ["keyDown", "keyUp"]) await here("Input.dispatchKeyEvent", { type, key: name, code: name, windowsVirtualKeyCode: code, ...extra });
        };
        return {
            problems, requests, send: here,
            async run(expression) {
                const { result, exceptionDetails } = await here("Runtime.evaluate", { expression, awaitPromise: true, returnByValue: true });
                if (exceptionDetails) throw new Error(exceptionDetails.exception?.description ?? exceptionDetails.text);
                return result.value;
            },
            tab: (back = false) => key("Tab", 9, back ? { modifiers: 8 } : {}),
            type: (words) => here("Input.insertText", { text: words }),
            key,
            /** the whole page as PNG */
            async picture() {
                const { cssContentSize: size } = await here("Page.getLayoutMetrics");
                const clip = { x: 0, y: 0, width: size.width, height: size.height, scale: 1 };
                return Buffer.from((await here("Page.captureScreenshot", { format: "png", captureBeyondViewport: true, clip })).data, "base64");
            },
        };
    }
    async function stop() {
        send("Browser.close").catch(() => {});
        await gone;
        rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
    }
    return { open, stop, version: (await send("Browser.getVersion")).product };
}
