# SPDX-License-Identifier: BSL-1.0
# Turns tests/vectors/vectors.tsv into rows of a table in C++.
function numbers(text, words, count, k, line) {
    count = split(text, words, " ")
    line = ""
    for (k = 1; k <= count; ++k) {
        gsub(/^-?nan$/, "none", words[k])
        gsub(/inf$/, "infinite", words[k])
        line = line (k > 1 ? ", " : "") words[k]
    }
    return "{" line "}"
}
BEGIN { FS = "\t" }
/^#/ || $1 == "function" { next }
{ printf "{\"%s\", %s, %s, %s, %s},\n", $1, numbers($2), $3 == "ok" ? "true" : "false", numbers($4), numbers($5) }
