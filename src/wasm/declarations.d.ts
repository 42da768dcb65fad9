// SPDX-License-Identifier: BSL-1.0
// The declarations that are written by hand: generate.py puts them into aqueth.d.ts.

/** Version of the library. */
export const version: string;

/** An argument that is out of range, or a question that has no answer. */
export class Refusal extends RangeError {
    private constructor();
    /** the function that refused */
    readonly function: string;
    /** what was refused */
    readonly argument: argument;
    /** what was refused, in words: "mass fraction" */
    readonly quantity: string;
    /** what sets the range */
    readonly limit: limit;
    /** what sets the range, in words: "OIML R 22"; empty where the definition does */
    readonly reason: string;
    /** the refused value */
    readonly value: number;
    /** least accepted value */
    readonly lower: number;
    /** greatest accepted value; Infinity where there is none */
    readonly upper: number;
}

/** An argument of the functions for many: a column, or one number that serves all elements. */
export type Column = number | Float64Array | Float32Array;

/**
 * The results of the functions for many. A result may have the place of an argument. A result that overlaps a part of an
 * argument, or another result, is a TypeError: views of one buffer at different offsets can overlap.
 */
export type Columns<Names extends string> = { [name in Names]: Float64Array | Float32Array } & {
    /** 1 for an element that was refused, else 0 */
    refused: Uint8Array;
};

