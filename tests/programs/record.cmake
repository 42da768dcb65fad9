# SPDX-License-Identifier: BSL-1.0
# The day's record: what a person files.
set(reading "aqueth correct_reading --reading '81.5 %vol' --temperature '28 C' --glass borosilicate")
answers(record "rm -f day1.md; ${reading} --record day1.md && cat day1.md; rm day1.md"
    "^True strength 79[.].*# Record\n\n## correct_reading, 20[0-9-]+ [0-9:]+ [+-][0-9]+\n\n[|] [|] [|]\n[|] --- [|] --- [|]\n[|] question [|] How strong.*\n[|] input --reading [|] 81[.]5 %vol [|]\n[|] input --temperature [|] 28 C [|]\n[|] instrument --glass [|] borosilicate [|]\n[|] caution [|] spirit and its vapour catch fire[.] Keep flames and sparks away; let in fresh air[.] [|]\n[|] source [|] OIML R 22.*accuracy: .*\n[|] computed by [|] aqueth ${PROJECT_VERSION} [|]\n[|] place [|] *[|]\n[|] signature [|] *[|]\n\n```text\nTrue strength 79")
answers(record.appends "echo 'My own words' >day2.md; ${reading} --record day2.md >/dev/null && ${reading} --record day2.md >/dev/null && head -n 1 day2.md && grep -c '^## correct_reading' day2.md; rm day2.md"
    "^My own words\n2\n$")
answers(record.page_beside_json "rm -f day3.md; ${reading} --json --record day3.md | grep -c True; grep -c '^True strength' day3.md; rm day3.md" "^0\n1\n$")
answers(record.doubts "rm -f day4.md; aqueth learn_still --run '25 L, 11 %vol, 100 mL, 1.8 L, 88 %vol' --reflux 3 --record day4.md >/dev/null; grep doubt day4.md; rm day4.md"
    "[|] doubt [|] assumed +no vapour condenses")
answers(record.marks_are_text "rm -f day5.md; aqueth dilute_spirit --amount '2 L' --strength '70 %vol' --temperature '20 C' --target ' 43 %vol' --record day5.md >/dev/null; grep -c -- '--target' day5.md; rm day5.md" "^1\n$")
# Written only when the answer was.
answers(record.no_answer_no_record "rm -f day6.md; aqueth correct_reading --reading '81.5 %vol' --temperature '99 C' --record day6.md 2>/dev/null; ls day6.md 2>/dev/null || echo none" "^none\n$")
answers(record.answer_not_written "rm -f day7.md; ${reading} --record day7.md 2>/dev/null >/dev/full; ls day7.md 2>/dev/null || echo none" "^none\n$")
refuses(record.name "${reading} --record day.txt" "--record 'day.txt': expected a file whose name ends in .md")
refuses(record.folder "mkdir -p day8.md; ${reading} --record day8.md; s=$?; rmdir day8.md; exit $s" "cannot be written: Is a directory")
refuses(record.nowhere "${reading} --record nowhere/day.md" "cannot be written: No such file")
refuses(record.device "ln -sf /dev/null day9.md; ${reading} --record day9.md; s=$?; rm day9.md; exit $s" "it is no ordinary file")
