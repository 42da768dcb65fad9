#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# docs/paste_code.sh [--check] [<folder of outputs>]
# Pastes code and outputs into the README and the pages of docs/, so that they can be read where they lie. The block
# below a line of this form is replaced, or added if there is none:
#   <!-- code: dilution.cpp body -->   the lines between two "// [body]" of that file of src/examples, docs/snippets or
#                                      tests/consumer or a folder of a binding; in CMake "# [body]", in C
#                                      "/* [body] */", in SQL "-- [body]"; `all` is the whole file
#   <!-- output: dilution.txt -->      that file of the folder: what the target docs captured, build/main/docs/generated
# Without the folder only code is pasted. With --check no page is changed: it fails if one is stale.
# Not pasted are long lists, and figures that depend on compiler or machine. They are on a line that ends with
# <!-- @verbinclude file.txt -->: Doxygen reads this command instead of the line (the filter in Doxyfile.in).
set -euo pipefail

check=0
if [[ ${1-} == --check ]]; then
    check=1
    shift
fi
outputs=
if (($# > 0)); then
    outputs=$(realpath "$1")
fi
cd "$(dirname "${BASH_SOURCE[0]}")/.."

# pasted <page>: the page with its blocks filled.
pasted() {
    OUTPUTS=$outputs perl -0777 -e '
        my ($page) = @ARGV;
        sub text_of { open(my $file, "<", $_[0]) or die "$page: $_[0]: $!\n"; return <$file>; }
        sub code {
            my ($name, $part) = @_;
            my ($source) = grep { -e } map { "$_/$name" } qw(src/examples docs/snippets tests/consumer src/sqlite src/firmware src/programs src/programs/logs)
                or die "$page: no $name in src/examples, docs/snippets, tests/consumer or a folder of a binding\n";
            return text_of($source) if $part eq "all";
            my $line = qr{^[ ]*(?://|#|--|/\*) \[\Q$part\E\](?: \*/)?$}m;
            my @found = text_of($source) =~ m{$line\n(.*?)$line}sg;
            @found == 1 or die "$page: $source needs one pair of lines \"// [$part]\"\n";
            my ($indent) = sort { length $a <=> length $b } $found[0] =~ /^( *)(?=[^ \n])/mg;
            return $found[0] =~ s/^$indent//mgr;
        }
        sub language_of {
            my %languages = (c => "c", csv => "text", cmake => "cmake", sh => "sh", sql => "sql", toml => "text", txt => "text");
            return $_[0] =~ m{(^|/)CMakeLists.txt$} ? "cmake" : $_[0] =~ /\.(\w+)$/ && $languages{$1} || "cpp";
        }
        sub block {
            my ($language, $text) = @_;
            $text =~ /^```/m and die "$page: a pasted text has a line that begins with ```\n";
            $text =~ s/\n*\z/\n/;
            return "```$language\n$text```\n";
        }
        my $text = text_of($page);
        my $fence = qr/```\w+\n(?:(?!```).*\n)*```\n/;
        my $markers = () = $text =~ /<!--\s*(code|output)\b/g;
        my $filled = 0;
        $text =~ s{^(<!-- code: (\S+) (\S+) -->\n)(?:$fence)?}{++$filled; $1 . block(language_of($2), code($2, $3))}gme;
        $text =~ s{^(<!-- output: (\S+) -->\n)((?:$fence)?)}
                  {++$filled; $1 . ($ENV{OUTPUTS} ? block("text", text_of("$ENV{OUTPUTS}/$2")) : $3)}gme;
        $filled == $markers or die "$page: a line for code or output is not of the form that docs/paste_code.sh knows\n";
        $text =~ /^(\@(?:snippet|include|verbinclude).*)$/m and die "$page: only Doxygen shows this: $1\n";
        print $text;
    ' "$1"
}

stale=0
new=$(mktemp)
trap 'rm -f "$new"' EXIT
for page in README.md docs/*.md docs/*/*.md; do
    pasted "$page" >"$new"
    cmp --quiet "$new" "$page" && continue
    if ((check)); then
        diff --unified=1 --label "$page" --label "$page, pasted anew" "$page" "$new" >&2 || true
        stale=1
    else
        cat "$new" >"$page"
        echo "pasted into $page"
    fi
done
if ((stale)); then
    echo "stale pages; to paste anew: docs/paste_code.sh${outputs:+ build/main/docs/generated}" >&2
    exit 1
fi
