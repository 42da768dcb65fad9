// SPDX-License-Identifier: BSL-1.0
// The installed package in Node. usage: node in_node.mjs <vectors.tsv> <functions.tsv> <codes.tsv>
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import * as aqueth from "aqueth";
import { ask_all, signatures } from "./vectors.mjs";

const [vectors, functions, codes] = process.argv.slice(2).map((path) => readFileSync(path, "utf8"));
const known = signatures(functions, codes);
const found = ask_all(aqueth, known, vectors);
console.log(`Node ${process.versions.node}: ${found.asked} questions, ${found.refused} of them refused, ${found.wrong} answered wrongly`);
assert.deepEqual(found.first_wrong, []);
assert.ok(found.asked > 1000 && found.refused > 100);
for (const name of known.functions.keys()) assert.ok(vectors.includes(`\n${name}\t`), `${name} has no vector`);

// Pure water and pure ethanol at 20 °C, as OIML R 22 prints them.
assert.ok(Math.abs(aqueth.density_kg_m3(0, 20) - 998.2) < 0.01);
assert.ok(Math.abs(aqueth.density_kg_m3(1, 20) - 789.24) < 0.01);

// A refusal has fields, and its sentence names quantity, value and range.
assert.throws(() => aqueth.density_kg_m3(0.5, 95), (why) => {
    assert.ok(why instanceof aqueth.Refusal && why instanceof RangeError);
    const { name, message, quantity, argument, limit, reason, value, lower, upper } = why;
    assert.deepEqual({ name, message, quantity, argument, limit, reason, value, lower, upper, function: why.function }, {
        name: "Refusal", message: "temperature 95 is outside -20 to 81.75716 (liquid, up to its boiling point at 101.325 kPa)", quantity: "temperature", argument: "temperature",
        limit: "liquid_below_boiling_point", reason: "liquid, up to its boiling point at 101.325 kPa", value: 95, lower: -20, upper: 81.757158, function: "density_kg_m3" });
    return true;
});
assert.throws(() => aqueth.mass_of_volume_kg(-1, 0.4, 20), /^Refusal: volume -1 is not a number of at least 0$/);

// What is no number is never taken for one: null would be 0, and a text its number.
for (const bad of [null, undefined, "0.4", [0.4], true, 1n]) assert.throws(() => aqueth.density_kg_m3(bad, 20), TypeError);
assert.throws(() => aqueth.convert_strength(0.4, "proof", "mass_fraction"), /from must be one of mass_fraction, .*us_proof.*, not proof/);
assert.throws(() => aqueth.convert_strength(0.4, "toString", "mass_fraction"), TypeError);

// Columns: one number serves all, results go where they are wanted, and lengths must agree.
const w = Float64Array.of(0.2, 2, 0.4);
const fresh = aqueth.density_kg_m3_array(w, 20);
assert.deepEqual([...fresh.refused], [0, 1, 0]);
assert.equal(fresh.kg_m3[2], aqueth.density_kg_m3(0.4, 20));
const into = { kg_m3: w };
assert.equal(aqueth.density_kg_m3_array(w, 20, into).kg_m3, w); // over the argument itself
assert.deepEqual([...w], [...fresh.kg_m3]);
assert.deepEqual([...aqueth.density_kg_m3_array(Float32Array.of(0.5), 20, { kg_m3: new Float32Array(1) }).kg_m3], [Math.fround(aqueth.density_kg_m3(0.5, 20))]);
assert.equal(aqueth.density_kg_m3_array(new Float64Array(0), 20).kg_m3.length, 0);
for (const call of [
    () => aqueth.density_kg_m3_array(0.4, 20),
    () => aqueth.density_kg_m3_array([0.4], 20),
    () => aqueth.density_kg_m3_array(new Float64Array(2), new Float64Array(3)),
    () => aqueth.density_kg_m3_array(w, 20, { kg_m3: new Float64Array(2) }),
    () => aqueth.density_kg_m3_array(w, 20, { kg_m3: [] }),
    () => aqueth.density_kg_m3_array(w, 20, { kg: w }),
]) assert.throws(call, TypeError);

// Views of one buffer: a result at another place in an argument would be read as an argument. More than one block.
{
    const length = 3000, buffer = new ArrayBuffer(8 * 3 * length);
    const at = (offset, Type = Float64Array) => new Type(buffer, offset, length);
    const whole = new Float64Array(buffer).fill(0.4);
    const overlapping = { name: "TypeError", message: /^density_kg_m3_array: into\.\w+ overlaps mass_fraction partly/ };
    for (const [argument, result] of [[at(0), at(8)], [at(8), at(0)], [at(0), at(8 * (length - 1))], [at(0), at(0, Float32Array)]])
        assert.throws(() => aqueth.density_kg_m3_array(argument, 20, { kg_m3: result }), overlapping);
    assert.throws(() => aqueth.density_kg_m3_array(at(0), 20, { refused: at(0, Uint8Array) }), overlapping);
    assert.throws(
        () => aqueth.bubble_point_at_kpa_array(at(0), 101.325, { celsius: at(8 * length), vapour_mole_fraction: at(8 * length) }),
        TypeError,
    );
    assert.ok(whole.every((x) => x === 0.4)); // refused before anything was written
    const { kg_m3 } = aqueth.density_kg_m3_array(at(0), 20, { kg_m3: at(8 * length) }); // beside it
    assert.ok(kg_m3.every((x) => x === kg_m3[0]) && kg_m3[0] > 900);
    aqueth.density_kg_m3_array(at(0), at(0), { kg_m3: at(0) }); // in its place
    assert.equal(whole[length - 1], aqueth.density_kg_m3(0.4, 0.4));
}
