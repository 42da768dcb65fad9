// SPDX-License-Identifier: BSL-1.0
// The page at the bench, from its file, in a headless Chromium: by keyboard and by touch, on a phone and on a desk.
// usage: node page.mjs <chromium> <page> <directory for pictures> <table of Gay-Lussac>
import assert from "node:assert/strict";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { start } from "./chromium.mjs";

const [program, file, pictures, gay_lussac] = process.argv.slice(2);
const address = pathToFileURL(file).href;
const browser = await start(program);
let checks = 0;

const text = async (page, id) => (await page.run(`document.getElementById("${id}").innerText`)).replaceAll("\u00a0", " ");
async function fill(page, values) {
    for (const [id, value] of Object.entries(values)) {
        await page.run(`{ const field = document.getElementById("${id}"); field.value = ${JSON.stringify(String(value))};
                          field.dispatchEvent(new Event("input", { bubbles: true })); }`);
    }
}
async function shows(page, id, expected) {
    ++checks;
    const found = await text(page, id);
    assert.ok(expected instanceof RegExp ? expected.test(found) : found.includes(expected), `${id} shows "${found}", not ${expected}`);
}
const numbers_of = async (page, id) => [...(await text(page, id)).replaceAll(",", ".").matchAll(/−?\d+(?:\.\d+)?/g)].map((match) => Number(match[0].replace("−", "-")));

// Colours of every visible text against what is behind it: WCAG 2, 4.5 to 1. Labels, and nothing wider than the window.
const look = `(() => {
    const light = (colour) => colour.match(/[\\d.]+/g).slice(0, 3).map((x) => x / 255)
        .map((x) => (x <= 0.04045 ? x / 12.92 : ((x + 0.055) / 1.055) ** 2.4)).reduce((sum, x, k) => sum + x * [0.2126, 0.7152, 0.0722][k], 0);
    const behind = (element) => {
        for (let e = element; e; e = e.parentElement) {
            const colour = getComputedStyle(e).backgroundColor;
            if (!/, 0\\)$|transparent/.test(colour)) return colour;
        }
        return "rgb(255, 255, 255)";
    };
    let least = Infinity, where = "";
    for (const element of document.querySelectorAll("body *")) {
        const own = [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent.trim());
        if (!own || element.disabled || /SCRIPT|OPTION/.test(element.tagName) || element.offsetParent === null) continue;
        const [a, b] = [light(getComputedStyle(element).color), light(behind(element))].sort((x, y) => y - x);
        if ((a + 0.05) / (b + 0.05) < least) [least, where] = [(a + 0.05) / (b + 0.05), element.outerHTML.slice(0, 80)];
    }
    const fields = [...document.querySelectorAll("input, select")];
    return { contrast: least, where,
        unlabelled: fields.filter((field) => field.labels.length === 0 && !field.ariaLabel).map((field) => field.id),
        small: [...document.querySelectorAll("input, select, button")].filter((e) => e.offsetHeight < 44).map((e) => e.id),
        wide: document.documentElement.scrollWidth - document.documentElement.clientWidth };
})()`;
async function looks_well(page, what) {
    const found = await page.run(look);
    console.log(`${what}: least contrast ${found.contrast.toFixed(1)}, ${found.wide} px wider than the window`);
    assert.ok(found.contrast >= 4.5, found.where);
    assert.deepEqual([found.unlabelled, found.small], [[], []]);
    assert.ok(found.wide <= 0, `${what}: ${found.wide} px too wide`);
    checks += 4;
}
const keep = async (page, name) => writeFileSync(join(pictures, `${name}.png`), await page.picture());

try {
    // --- on the desk, by keyboard alone
    const desk = await browser.open(address);
    await desk.run(`document.getElementById("reading").focus()`);
    await desk.type("84");
    await desk.tab();
    await desk.type("31");
    await shows(desk, "reading-answer", "True strength 80.76 % vol"); // docs/reading_warm_spirit.md
    await shows(desk, "reading-answer", /74\.37 % mass\s/);
    await shows(desk, "reading-answer", /847\.6 kg\/m³/);
    await desk.tab(); // the sign
    await desk.tab();
    assert.equal(await desk.run("document.activeElement.id"), "amount");
    await desk.type("2");
    await desk.tab();
    await desk.tab();
    assert.equal(await desk.run("document.activeElement.id"), "take-strength");
    await desk.key("Enter", 13, { text: "\r" });
    for (let k = 0; k < 4; ++k) await desk.tab();
    assert.equal(await desk.run("document.activeElement.id"), "target");
    await desk.type("45");
    await desk.tab();
    await desk.type("15");
    // docs/diluting.md: 1.638 kg of water by the balance, or 1.641 L of it at 15 °C
    await shows(desk, "water-answer", "Add 1.638 kg of water, on the scale");
    await shows(desk, "water-answer", "or 1.641 L of it, at 15.0 °C");
    await desk.run(`document.getElementById("take-target").click()`);
    await fill(desk, { "mixture-temperature": 22 });
    await shows(desk, "check-answer", "The alcoholometer must show 45.77 % vol");
    await looks_well(desk, "desk");
    await keep(desk, "desk");

    // The table of Gay-Lussac: volumes of water for 100 volumes of spirit, all at 15 °C. It is off by up to 0.03 % vol of
    // the strength reached (tests/published/gay_lussac_dilution_test.cpp), and the page shows four figures.
    await fill(desk, { scale: "volume_fraction_at_15_celsius", amount: 100, "spirit-temperature": 15, "water-temperature": 15 });
    let rows = 0;
    for (const line of readFileSync(gay_lussac, "utf8").split("\n")) {
        const [from, to, volumes, doubt] = line.split(",");
        if (!/^\d+$/.test(from) || doubt !== "") continue;
        await fill(desk, { strength: from, target: to });
        const litres = Number((await text(desk, "water-answer")).match(/or ([\d.]+) L of it/)[1]);
        assert.ok(Math.abs(litres - volumes) <= (0.03 * 100 * from) / to ** 2 + 0.05, `${from} to ${to}: ${litres}, not ${volumes}`);
        ++rows;
    }
    assert.equal(rows, 203);
    checks += rows;
    await fill(desk, { scale: "volume_fraction_at_20_celsius" });

    // 200 % zoom of a window of 1280 pixels: 640 of them are left; and the narrowest window of WCAG 2, 320.
    for (const width of [640, 320]) {
        await desk.send("Emulation.setDeviceMetricsOverride", { width, height: 512, deviceScaleFactor: 2, mobile: false });
        await looks_well(desk, `${width} px`);
    }
    await keep(desk, "narrow");

    // --- on a phone: comma, refusals beside the fields
    const phone = await browser.open(address, { width: 390, height: 844, phone: true });
    await fill(phone, { reading: "84,0", "reading-temperature": "31" });
    await shows(phone, "reading-answer", "True strength 80,76 % vol");
    const refusals = [
        ["reading", "84 %", "This is not a number. Write 84.5 or 84,5"],
        ["reading", "1.084,5", "This is not a number."],
        ["reading", "101", "Must be from 0,00 % vol to 100,00 % vol."],
        ["reading", "0,5", /^Must be from \d,\d\d % vol to 100,00 % vol: what the instrument can show between water/],
        ["reading-temperature", "99,0", /^Must be from −\d+,\d °C to \d\d,\d °C: .*boiling point/],
    ];
    for (const [id, value, expected] of refusals) {
        await fill(phone, { reading: "84,0", "reading-temperature": "31,0" });
        await fill(phone, { [id]: value });
        await shows(phone, `${id}-note`, expected);
        await shows(phone, "reading-answer", "No answer: see the marked field.");
        assert.equal(await phone.run(`document.getElementById("${id}").getAttribute("aria-invalid")`), "true");
    }
    await fill(phone, { reading: "12", "reading-temperature": "-19" });
    await shows(phone, "reading-temperature-note", /freezes/);
    await phone.run(`document.querySelector("[data-sign=reading-temperature]").click()`);
    assert.equal(await phone.run(`document.getElementById("reading-temperature").value`), "19");
    await shows(phone, "reading-temperature-note", /^$/);
    await fill(phone, { reading: "84,0", "reading-temperature": "31" });
    await phone.run(`document.getElementById("take-strength").click()`);
    await fill(phone, { "water-temperature": "15", target: "85" });
    await fill(phone, { amount: "1,250" });
    await shows(phone, "amount-note", "Read as 1,250, with three decimals.");
    await shows(phone, "target-note", "Must not be higher than the strength of the spirit");
    for (const [id, value, expected] of [
        ["amount", "-1", "Must be 0,000 or more"], ["amount", "0", "more than nothing"], ["target", "0", "no amount of water"], ["strength", "150", "Must be from 0,00 % vol to 100,00 % vol."],
        ["water-temperature", "-3", "freezes"], ["water-temperature", "101", "Must be from"], ["spirit-temperature", "99", "Must be from −20,0 °C"]]) {
        await fill(phone, { amount: "2", strength: "80,76", "spirit-temperature": "31", target: "45", "water-temperature": "15" });
        await shows(phone, "water-answer", "Add 1,638 kg");
        await fill(phone, { [id]: value });
        await shows(phone, `${id}-note`, expected);
        await shows(phone, "water-answer", "No answer");
    }
    // Every field that holds no number is marked, and a mark goes when its field is mended, whatever the others hold.
    await fill(phone, { amount: "x", strength: "y" });
    await shows(phone, "amount-note", "not a number");
    await shows(phone, "strength-note", "not a number");
    await keep(phone, "phone_refused");
    await fill(phone, { strength: "80,76" });
    await shows(phone, "strength-note", /^$/);
    await fill(phone, { amount: "2" });
    await fill(phone, { "spirit-temperature": "31", checked: "45", "mixture-temperature": "99" });
    await shows(phone, "mixture-temperature-note", "Must be from");
    await fill(phone, { "mixture-temperature": "22" });
    await shows(phone, "check-answer", "must show 45,77 % vol");
    await looks_well(phone, "phone");
    await keep(phone, "phone");
    await phone.send("Emulation.setEmulatedMedia", { features: [{ name: "prefers-color-scheme", value: "dark" }] });
    await looks_well(phone, "phone, dark");
    await keep(phone, "phone_dark");

    // Fahrenheit and proof; a weighed amount is the same amount.
    await fill(phone, { scale: "us_proof", thermometer: "fahrenheit", reading: "193", "reading-temperature": "75" });
    await shows(phone, "reading-answer", /True strength 18\d,\d\d US proof/);
    await fill(phone, { scale: "volume_fraction_at_20_celsius", thermometer: "celsius", amount: "2" });
    const [, litres_water] = await numbers_of(phone, "water-answer");
    const kg = (await text(phone, "water-answer")).match(/([\d,]+) kg on the scale,/)[1];
    await fill(phone, { "amount-unit": "kg", amount: kg });
    assert.ok(Math.abs((await numbers_of(phone, "water-answer"))[1] - litres_water) < 0.002);

    for (const page of [desk, phone]) {
        assert.deepEqual(page.problems, []);
        assert.deepEqual(page.requests.filter((url) => url !== address && !url.startsWith("data:")), [], "the page asked for something");
    }
    console.log(`${browser.version}: ${checks} checks of the page`);
} finally {
    await browser.stop();
}
