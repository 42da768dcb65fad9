#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# Checks the sentences of the pages and of the programs (texts and comments): at most 35 words, no "What", "Who" or
# "That" as the subject, and none of the words below. Strings that hold gnuplot commands are left out. From the root:
#   cmake/check_words.sh [<file>...]
set -euo pipefail

files=("$@")
if ((${#files[@]} == 0)); then
    mapfile -t files < <(git ls-files '*.md' 'src/programs/*.cpp' 'src/programs/*.hpp')
fi
perl -CSD -Mutf8 -0777 -ne '
    my $text = $_;
    if ($ARGV =~ /\.md$/) {
        $text =~ s/^(```|~~~).*?^\1//gms;            # code
        $text =~ s/^[ \t]*(\||#|@|<).*$//gm;         # tables, headings, commands of Doxygen, HTML
        $text =~ s/^[ \t]*([-*]|\d+\.) /\n\n/gm;     # every item of a list begins a paragraph
        $text =~ s/\]\([^)]*\)|`[^`]*`/ X /g;        # addresses and code count as one word
    } else {
        my @parts = $text =~ m{///<?[ \t]*(?!@)(.*)}g; # comments, then strings: neighbours are joined
        $text =~ s/"\s*\n\s*"//g;
        $text = join("\n\n", grep { !/linewidth/ } $text =~ /"((?:[^"\\\n]|\\.)*)"/g) . "\n\n" . join("\n\n", @parts);
        $text =~ s/\\n/\n\n/g;
    }
    for my $sentence (split /(?:(?<=[.!?:;])|(?<=[.!?]\)))\s+(?=[\p{Lu}`*@([])|\n\s*\n/, $text) {
        my $words = () = $sentence =~ /[\p{L}\p{N}][^\s]*/g;
        (my $line = $sentence) =~ s/\s+/ /g;
        my $why = $words > 35 ? "$words words"
            : $line =~ /^ ?(What|Who|That)\b[^?]*\b(is|are|was|were|has|have|stands?|lies?|says?|asks?|needs?|leaves?|adds?)\b[^?]*$/
            ? "subject \"$1\""
            : $line =~ /\b(shall|hardly|nobody|whoever|whatever|somebody|but for|comes out at|weigh in|alcoholmeter\w*)\b/i
            ? "word \"$1\"" : next;
        print "$ARGV: $why: $line\n";
    }
' "${files[@]}" | { ! grep . >&2; }
