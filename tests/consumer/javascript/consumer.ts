// SPDX-License-Identifier: BSL-1.0
// What the declarations allow and refuse; tsc checks it.
import { Refusal, density_kg_m3, density_kg_m3_array, dilute, convert_strength, version, type strength_scale } from "aqueth";

const scale: strength_scale = "volume_fraction_at_20_celsius";
const strength: number = convert_strength(0.45, scale, "us_proof");
const { added_kg, product_kg } = dilute(10, 0.6, 20, 0.4, 0, 15, 20);
const { kg_m3, refused } = density_kg_m3_array(new Float64Array(3), 20);
const bytes: Uint8Array = refused;
const text: string = version;

try {
    density_kg_m3(2, 20);
} catch (error) {
    if (error instanceof Refusal && error.argument === "mass_fraction") console.log(error.quantity, error.lower, error.upper);
}
console.log(strength, added_kg + product_kg, kg_m3[0], bytes, text);

// @ts-expect-error: no such scale
convert_strength(0.45, "proof", "mass_fraction");
// @ts-expect-error: a text is no number
density_kg_m3("0.4", 20);
// @ts-expect-error: an argument is missing
density_kg_m3(0.4);
// @ts-expect-error: columns are typed arrays
density_kg_m3_array([0.4], 20);
// @ts-expect-error: no such result
dilute(10, 0.6, 20, 0.4, 0, 15, 20).water_kg;
// @ts-expect-error: no such code
if (new Error() instanceof Refusal && ({} as Refusal).argument === "weight") console.log();
