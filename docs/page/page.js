// SPDX-License-Identifier: BSL-1.0
// The page at the bench. `aqueth` is the package; make_page.py puts it in front of this.
const find = (id) => document.getElementById(id);
const forms = { reading: find("reading-form"), water: find("water-form"), check: find("check-form") };
let decimal_sign = ".";

// --- units of the instruments
const scales = {
    volume_fraction_at_20_celsius: { unit: "% vol", of_one: 100, celsius: 20 },
    volume_fraction_at_15_celsius: { unit: "% vol", of_one: 100, celsius: 15 },
    volume_fraction_at_15_56_celsius: { unit: "% vol", of_one: 100, celsius: 15.56 },
    volume_fraction_at_60_fahrenheit: { unit: "% vol", of_one: 100, celsius: 140 / 9 },
    us_proof: { unit: "US proof", of_one: 1, celsius: 140 / 9 },
    mass_fraction: { unit: "% mass", of_one: 100, celsius: 20 },
};
const together = (number, unit) => `${number}\u00a0${unit.replaceAll(" ", "\u00a0")}`; // on one line
const scale = () => scales[find("scale").value];
const fahrenheit = () => find("thermometer").value === "fahrenheit";
const units = {
    strength: { name: () => scale().unit, read: (x) => x / scale().of_one, show: (x) => together(text_of(x * scale().of_one, 2), scale().unit) },
    temperature: {
        name: () => (fahrenheit() ? "°F" : "°C"),
        read: (x) => (fahrenheit() ? (x - 32) / 1.8 : x),
        show: (x) => (fahrenheit() ? together(text_of(x * 1.8 + 32, 1), "°F") : together(text_of(x, 1), "°C")),
    },
    amount: { name: () => "", read: (x) => x, show: (x) => text_of(x, 3) },
};

function text_of(x, decimals) {
    const text = x.toFixed(decimals);
    return (Number(text) === 0 ? text.replace("-", "") : text.replace("-", "−")).replace(".", decimal_sign);
}
// four figures, but no more than three decimals
const amount_text = (x) => text_of(x, Math.max(0, Math.min(3, 3 - Math.floor(Math.log10(Math.max(x, 1e-9))))));

// --- fields
class Problem extends Error {
    constructor(field, message) {
        super(message);
        this.field = field;
    }
}
const kind_of = (id) => (id === "amount" ? "amount" : /temperature/.test(id) ? "temperature" : "strength");

function note(id, message, wrong) {
    const field = find(id), element = find(`${id}-note`);
    if (element.textContent !== message) element.textContent = message;
    field.closest(".field").classList.toggle("wrong", wrong);
    if (wrong) field.setAttribute("aria-invalid", "true");
    else field.removeAttribute("aria-invalid");
}

/** The number in a field, in the unit of the library; null for an empty field. */
function number_in(id) {
    const text = find(id).value.trim().replace("−", "-");
    if (text === "" || text === "-") {
        note(id, "", false);
        return null;
    }
    if (!/^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/.test(text))
        throw new Problem(id, "This is not a number. Write 84.5 or 84,5, with no unit and no mark between thousands.");
    // 1,250 could be meant as a thousand and more
    const mistakable = /^[+-]?[1-9]\d{0,2}[.,]\d{3}$/.test(text);
    note(id, mistakable ? `Read as ${text.replace(/[.,]/, decimal_sign)}, with three decimals. For thousands, leave out the mark.` : "", false);
    return units[kind_of(id)].read(Number(text.replace(",", ".")));
}

const fields_of = (form) => [...form.querySelectorAll("input")].map((input) => input.id);

/** The numbers of a form; null if a field is empty. Every field that holds no number is marked. */
function numbers_in(form) {
    const numbers = {}, problems = [];
    for (const id of fields_of(form)) {
        try {
            numbers[id] = number_in(id);
        } catch (problem) {
            if (!(problem instanceof Problem)) throw problem;
            problems.push(problem);
        }
    }
    for (const { field, message } of problems.slice(1)) note(field, message, true);
    if (problems.length > 0) throw problems[0];
    return Object.values(numbers).includes(null) ? null : numbers;
}

// Sentences for what the library refuses, in the units of the field.
const plain_reasons = {
    hydrometer_water_to_ethanol: "what the instrument can show between water and pure ethanol at this temperature",
    liquid_above_freezing_point: "from where it freezes to the end of OIML R 22",
    oiml_r22: "the range of OIML R 22",
    none: "",
};
/** Asks the library; a refusal becomes the problem of a field, or of the field of the temperature. */
function ask(field_of_others, question, field_of_temperature = field_of_others) {
    try {
        return question();
    } catch (why) {
        if (!(why instanceof aqueth.Refusal)) throw why;
        const field = why.argument === "temperature" ? field_of_temperature : field_of_others;
        const reason = plain_reasons[why.limit] ?? why.reason, { show } = units[kind_of(field)];
        const after = reason === "" ? "" : `: ${reason}`;
        if (why.upper === Infinity) throw new Problem(field, `Must be ${show(why.lower)} or more${after}.`);
        throw new Problem(field, `Must be from ${show(why.lower)} to ${show(why.upper)}${after}.`);
    }
}

// --- answers
const of = (name, words, className) => Object.assign(document.createElement(name), { textContent: words, className: className ?? "" });

function show(id, main, or, rows) {
    const list = document.createElement("dl");
    for (const [term, value] of rows) list.append(of("dt", term), of("dd", value));
    find(id).replaceChildren(of("p", main, "main"), ...(or ? [of("p", or, "or")] : []), ...(rows.length ? [list] : []));
}

const glass = () => Number(find("glass").value);

function answer_reading({ reading, "reading-temperature": celsius }) {
    const strength = ask("reading", () => aqueth.strength_from_reading(reading, celsius, find("scale").value, glass()), "reading-temperature");
    const w = aqueth.convert_strength(strength, find("scale").value, "mass_fraction");
    ask("reading-temperature", () => aqueth.density_kg_m3(w, celsius));
    const correction = (strength - reading) * scale().of_one;
    const others = find("scale").value === "mass_fraction"
        ? [["by volume", `${text_of(100 * aqueth.convert_strength(w, "mass_fraction", "volume_fraction_at_20_celsius"), 2)} % vol at 20 °C`]]
        : [["by mass", `${text_of(100 * w, 2)} % mass`]];
    show("reading-answer", `True strength ${units.strength.show(strength)}`, "", [
        ["correction", `${correction > 0 ? "+" : ""}${text_of(correction, 2)}`],
        ...others,
        ["density now", `${text_of(aqueth.density_kg_m3(w, celsius), 1)} kg/m³`],
    ]);
    return { strength, celsius };
}

function answer_water({ amount, strength, "spirit-temperature": spirit_celsius, target, "water-temperature": water_celsius }) {
    const fraction = (field, x) => ask(field, () => aqueth.convert_strength(x, find("scale").value, "mass_fraction"));
    const w = fraction("strength", strength), wanted = fraction("target", target);
    const density = ask("spirit-temperature", () => aqueth.density_kg_m3(w, spirit_celsius));
    const water_density = ask("water-temperature", () => aqueth.density_kg_m3(0, water_celsius));
    if (amount === 0) throw new Problem("amount", "Must be more than nothing.");
    const kg = ask("amount", () => (find("amount-unit").value === "kg"
        ? aqueth.mass_from_balance_kg(amount, density) : aqueth.mass_of_volume_kg(amount, w, spirit_celsius)));
    if (wanted > w) throw new Problem("target", "Must not be higher than the strength of the spirit: water only weakens.");
    if (wanted === 0) throw new Problem("target", "Must be more than 0: no amount of water takes all spirit out.");
    const celsius = scale().celsius;
    const plan = ask("target", () => aqueth.dilute(kg, w, spirit_celsius, wanted, 0, water_celsius, celsius));
    const water_litres = aqueth.volume_litres(plan.added_kg, 0, water_celsius, water_celsius);
    const rows = [
        ["spirit", `${together(amount_text(aqueth.balance_indication_kg(kg, density)), "kg")} on the scale, ${together(amount_text((1000 * kg) / density), "L")}`],
        ["mixture", `${together(amount_text(aqueth.volume_litres(plan.product_kg, wanted, celsius, celsius)), "L")} at ${units.temperature.show(celsius)}`],
        ["lost in mixing", `${amount_text(plan.contraction_litres)} L`],
    ];
    try {
        const fresh = aqueth.mix(kg, w, spirit_celsius, plan.added_kg, 0, water_celsius);
        rows.push(["mixed at once", `about ${units.temperature.show(fresh.product_celsius)}`]);
    } catch (why) {
        if (!(why instanceof aqueth.Refusal)) throw why; // heats of mixing are not known there: the row is left out
    }
    show("water-answer", `Add ${together(amount_text(aqueth.balance_indication_kg(plan.added_kg, water_density)), "kg")} of water, on the scale`,
        `or ${together(amount_text(water_litres), "L")} of it, at ${units.temperature.show(water_celsius)}`, rows);
}

function answer_check({ checked, "mixture-temperature": celsius }) {
    const w = ask("checked", () => aqueth.convert_strength(checked, find("scale").value, "mass_fraction"));
    ask("mixture-temperature", () => aqueth.density_kg_m3(w, celsius));
    const reading = (at) => aqueth.reading_of_strength(w, at, find("scale").value, glass());
    const shown = ask("checked", () => reading(celsius), "mixture-temperature");
    const steps = fahrenheit() ? 5 : 3, per_step = fahrenheit() ? 1 / 1.8 : 1;
    const rows = [-1, 1].map((side) => celsius + side * steps * per_step).flatMap((at) => {
        try {
            return [[`at ${units.temperature.show(at)}`, units.strength.show(reading(at))]];
        } catch (why) {
            if (!(why instanceof aqueth.Refusal)) throw why; // out of range: the row is left out
            return [];
        }
    });
    show("check-answer", `The alcoholometer must show ${units.strength.show(shown)}`, "", rows);
}

const answers = { reading: answer_reading, water: answer_water, check: answer_check };
let last_reading = null;

function update(name) {
    const form = forms[name], output = find(`${name}-answer`);
    if (name === "reading") last_reading = null;
    const waiting = (words) => output.replaceChildren(of("p", words, "waiting"));
    try {
        const numbers = numbers_in(form);
        if (numbers === null) return waiting("Fill in every field of this step.");
        const result = answers[name](numbers);
        if (name === "reading") last_reading = result;
    } catch (problem) {
        if (!(problem instanceof Problem)) throw problem;
        note(problem.field, problem.message, true);
        waiting("No answer: see the marked field.");
    }
}

function update_all() {
    const all = Object.values(forms).flatMap(fields_of).map((id) => find(id).value);
    decimal_sign = all.some((text) => text.includes(",")) ? "," : ".";
    for (const element of document.querySelectorAll("[data-unit]")) element.textContent = units[element.dataset.unit].name();
    Object.keys(forms).forEach(update);
    find("take-strength").disabled = last_reading === null;
    find("take-target").disabled = find("target").value.trim() === "";
}

for (const form of Object.values(forms)) form.addEventListener("submit", (event) => event.preventDefault());
document.addEventListener("input", update_all);
document.addEventListener("click", (event) => {
    const sign = event.target.closest("[data-sign]");
    if (sign) { // the number pad of some phones has no minus
        const field = find(sign.dataset.sign), text = field.value.trim();
        field.value = /^[-−]/.test(text) ? text.slice(1) : `-${text}`;
        update_all();
        field.focus();
    }
});
find("take-strength").addEventListener("click", () => {
    find("strength").value = text_of(last_reading.strength * scale().of_one, 2);
    find("spirit-temperature").value = find("reading-temperature").value;
    update_all();
});
find("take-target").addEventListener("click", () => {
    find("checked").value = find("target").value;
    update_all();
});
find("version").textContent = aqueth.version;
update_all();
