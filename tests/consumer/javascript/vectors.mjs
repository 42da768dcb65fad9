// SPDX-License-Identifier: BSL-1.0
// Asks every question of vectors.tsv of the package, one by one and in columns. Runs in Node, browsers and workers.

const rows_of = (text) =>
    text.split("\n").filter((line) => line !== "" && !line.startsWith("#")).slice(1).map((line) => line.split("\t"));

const number_of = (text) => (/^-?inf$/.test(text) ? Infinity * (text[0] === "-" ? -1 : 1) : text === "nan" ? NaN : Number(text));
const numbers_of = (text) => text.split(" ").map(number_of);

/** What functions.tsv and codes.tsv say about the functions. */
export function signatures(functions_text, codes_text) {
    const codes = {};
    for (const [enumeration, number, name] of rows_of(codes_text)) (codes[enumeration] ??= [])[Number(number)] = name;
    const functions = new Map();
    for (const [name, results, given] of rows_of(functions_text)) {
        const enumerations = given.split("; ").map((argument) => argument.split(" ")).map((parts) => (parts.length === 2 ? parts[1] : null));
        functions.set(name, { results: results.split(" ").map((result) => result.split("=")[0]), enumerations });
    }
    return { codes, functions };
}

function alike(found, expected, tolerance) {
    if (Number.isNaN(expected)) return Number.isNaN(found);
    if (!Number.isFinite(expected)) return found === expected;
    return Math.abs(found - expected) <= tolerance * Math.max(1, Math.abs(expected));
}

/** @returns the counts of questions, refusals and wrong answers, and what was wrong */
export function ask_all(aqueth, { codes, functions }, vectors_text) {
    const wrong = [];
    let asked = 0, refused = 0;
    const groups = new Map(); // questions that differ in numbers only go into one call of the function for many
    for (const [name, arguments_text, outcome, third, fourth] of rows_of(vectors_text)) {
        const { results, enumerations } = functions.get(name);
        const question = numbers_of(arguments_text).map((value, k) => (enumerations[k] ? codes[enumerations[k]][value] : value));
        const expected = numbers_of(third), tail = numbers_of(fourth);
        const good = (values) => results.every((_, k) => (outcome === "ok" ? alike(values[k], expected[k], tail[0]) : Number.isNaN(values[k])));
        const complain = (text) => wrong.push(`${name}(${question.join(", ")}): ${text}`);
        ++asked;
        if (outcome !== "ok") ++refused;
        try {
            const answer = aqueth[name](...question);
            const values = results.length === 1 ? [answer] : results.map((result) => answer[result]);
            if (outcome !== "ok") complain(`answered ${values}, not refused`);
            else if (!good(values)) complain(`answered ${values}, not ${expected}`);
        } catch (why) {
            if (!(why instanceof aqueth.Refusal)) throw why;
            if (outcome === "ok") complain(`refused: ${why.message}`);
            else if (why.argument !== codes.argument[expected[0]] || why.limit !== codes.limit[expected[1]] ||
                     !alike(why.lower, tail[0], 1e-9) || !alike(why.upper, tail[1], 1e-9)) complain(`refused otherwise: ${why.message}`);
        }
        const key = JSON.stringify([name, question.filter((_, k) => enumerations[k])]);
        if (!groups.has(key)) groups.set(key, { name, results, enumerations, rows: [] });
        groups.get(key).rows.push({ question, good, complain, refused: outcome === "ok" ? 0 : 1 });
    }
    for (const { name, results, enumerations, rows } of groups.values()) {
        const length = 2500; // more than two blocks, and no whole number of them
        const inputs = enumerations.map((enumeration, k) =>
            enumeration ? rows[0].question[k] : Float64Array.from({ length }, (_, n) => rows[n % rows.length].question[k]));
        const columns = aqueth[`${name}_array`](...inputs);
        for (let n = 0; n < length; ++n) {
            const row = rows[n % rows.length];
            const values = results.map((result) => columns[result][n]);
            if (!row.good(values) || columns.refused[n] !== row.refused) row.complain(`element ${n} of many is ${values}`);
        }
    }
    return { asked, refused, wrong: wrong.length, first_wrong: wrong.slice(0, 5) };
}
