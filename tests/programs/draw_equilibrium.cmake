# SPDX-License-Identifier: BSL-1.0
# Each case draws into a folder of its own, which is gone afterwards.
set(in_folder "d=$(mktemp -d) && trap 'rm -r $d' EXIT && cd $d &&")
set(tables ${PROJECT_SOURCE_DIR}/tables)

answers(draw_equilibrium.picture
    "${in_folder} aqueth draw_equilibrium --output a.svg --altitude '650 m' && ls && tail -n 2 a.svg"
    "^Wrote a[.]svg: equilibrium of ethanol and water under 93[.]76 kPa[.]\n.*Caution.*\na[.]svg\n.*</svg>\n\n*$")
# J. S. Carey and W. K. Lewis (1932), 15 points; A. H. Beebe and others (1942), three pressures.
answers(draw_equilibrium.published_points
    "${in_folder} aqueth draw_equilibrium --output a.svg --points ${tables}/carey_lewis_1932.csv \\
        --points ${tables}/lai_2014.csv && cat a.svg"
    [[points +15 from carey_lewis_1932[.]csv
.*16 from lai_2014[.]csv
.*<svg .*as strong as the liquid.*measured: carey lewis 1932.*azeotrope, 89[.][2-7] % mol]])
answers(draw_equilibrium.other_pressures_left_out
    "${in_folder} aqueth draw_equilibrium --output a.svg --pressure '190 mmHg' --points ${tables}/beebe_1942.csv"
    "from beebe_1942[.]csv; [0-9]+ at another pressure left out")
answers(draw_equilibrium.own_points
    "${in_folder} printf '0.1,0.44,\\n0.5,0.66,79.9\\n' >\"it's mine.csv\"
aqueth draw_equilibrium --output a.svg --points \"it's mine.csv\" --in '%vol' && cat a.svg"
    "points +2 from it's mine[.]csv\n.*ethanol in the liquid, % vol.*it's mine")
answers(draw_equilibrium.no_azeotrope
    "${in_folder} aqueth draw_equilibrium --output a.svg --pressure '8 kPa' && grep -c azeotrope a.svg || true"
    "none at this pressure.*\n0\n$")
answers(draw_equilibrium.replaced
    "${in_folder} echo old >a.svg
aqueth draw_equilibrium --output a.svg --replace >/dev/null && ls && grep -c old a.svg || true"
    "^a[.]svg\n0\n$")
answers(draw_equilibrium.readable_by_others
    "${in_folder} umask 022; aqueth draw_equilibrium --output a.svg > /dev/null && stat -c %a a.svg"
    "^644\n$")
answers(draw_equilibrium.json
    "${in_folder} aqueth draw_equilibrium --output a.svg --points ${tables}/lai_2014.csv --json"
    "\"written\": \"a.svg\",.*\"drawn\": 16")
answers(draw_equilibrium.locale "${in_folder} LC_ALL=de_DE.UTF-8 aqueth draw_equilibrium --output a.svg && cat a.svg"
    "</svg>")

# A file that is there stays as it is, whatever goes wrong.
answers(draw_equilibrium.nothing_lost
    "${in_folder} exec 2>/dev/null; echo old >a.svg
aqueth draw_equilibrium --output a.svg
aqueth draw_equilibrium --output a.svg --replace --pressure '900 kPa'
PATH=$(dirname $(command -v aqueth)) aqueth draw_equilibrium --output a.svg --replace
echo $? * $(cat a.svg)"
    "^1 a[.]svg old\n$")
# A picture to which no answer belongs is not put in place, and nothing is left beside.
foreach(output full closed)
  set(to_full ">/dev/full")
  set(to_closed ">&-")
  add_case(draw_equilibrium.nothing_without_an_answer.${output}
      "${in_folder} aqueth draw_equilibrium --output a.svg ${to_${output}}; status=$?; ls; exit $status" 1
      "^$" "standard output cannot be written: ")
  add_case(draw_equilibrium.nothing_replaced_without_an_answer.${output}
      "${in_folder} echo old >a.svg
aqueth draw_equilibrium --output a.svg --replace ${to_${output}}; status=$?; ls | grep -v '^a.svg$'; grep -v old a.svg; exit $status" 1
      "^$" "standard output cannot be written: ")
endforeach()
# Two at once, and a file that appears while gnuplot draws: one of them is there, whole, and the other says so.
answers(draw_equilibrium.two_at_once
    "${in_folder} for k in 1 2 3 4; do
rm -f a.svg
aqueth draw_equilibrium --output a.svg >one 2>&1 & aqueth draw_equilibrium --output a.svg >two 2>&1; wait
cat one two | grep -cE 'Wrote|exists already'; grep -h exists one two; done; ls"
    "^(2\n[^\n]*--output 'a[.]svg': the file exists already; --replace overwrites it\n)+a[.]svg\none\ntwo\n$")
set(with_gnuplot_that "${in_folder} mkdir bin && printf '#!/bin/sh\\n%s\\n'")
set(is_run ">bin/gnuplot && chmod +x bin/gnuplot && PATH=$d/bin:$PATH")
add_case(draw_equilibrium.appears_meanwhile
    "${with_gnuplot_that} 'echo other >a.svg; echo \"<svg></svg>\"' ${is_run}
aqueth draw_equilibrium --output a.svg; status=$?; ls a.svg.* 2>/dev/null; grep -v other a.svg; exit $status" 2
    "^$" "--output 'a[.]svg': the file exists already; --replace")
# Signals: while gnuplot draws, and while the answer waits for a reader whose pipe is full.
foreach(signal INT TERM HUP)
  answers(draw_equilibrium.ended_by_${signal}.while_drawing
      "${with_gnuplot_that} 'kill -${signal} $PPID; sleep 3; echo late >late' ${is_run}
exec 2>/dev/null
(aqueth draw_equilibrium --output a.svg); [ $? -gt 128 ] && echo ended; ls; sleep 3; ls"
      "^ended\nbin\nbin\n$")
  foreach(replace "" "--replace")
    set(name "with${replace}")
    string(REPLACE "--" "_" name "${name}")
    answers(draw_equilibrium.ended_by_${signal}.${name}
        "${in_folder} exec 2>/dev/null
{ head -c 65536 /dev/zero; bash -c 'echo $$ >pid; exec aqueth draw_equilibrium --output a.svg ${replace}'; } | {
until ls | grep -q svg; do sleep 0.01; done; sleep 0.1
kill -${signal} $(cat pid); while kill -0 $(cat pid); do sleep 0.01; done; ls; }" "^pid\n$")
  endforeach()
endforeach()
answers(draw_equilibrium.ignores_what_nohup_ignores
    "${with_gnuplot_that} 'kill -HUP $PPID; sleep 0.1; echo \"<svg></svg>\"' ${is_run}
trap '' HUP; aqueth draw_equilibrium --output a.svg >/dev/null; cat a.svg" "^<svg></svg>\n$")
answers(draw_equilibrium.keeps_permissions
    "${in_folder} umask 022; echo old >a.svg; chmod 604 a.svg
aqueth draw_equilibrium --output a.svg --replace >/dev/null; stat -c %a a.svg; grep -c old a.svg || true" "^604\n0\n$")
# Names that are not UTF-8 (iconv ends with 1 on such a text).
answers(draw_equilibrium.name_in_latin_1
    "${in_folder} f=$(printf 'm\\xfcller<&>.csv'); echo 0.1,0.44,86 >\"$f\"; o=$(printf '\\xfc.svg')
aqueth draw_equilibrium --output \"$o\" --points \"$f\" --json && iconv -f UTF-8 -t UTF-8 \"$o\" >/dev/null"
    "\"written\": \"�[.]svg\",.*\"name\": \"m�ller<&>\"")
answers(draw_equilibrium.name_in_latin_1_in_text
    "${in_folder} f=$(printf 'm\\xfcller.csv'); echo 0.1,0.44,86 >\"$f\"
aqueth draw_equilibrium --output a.svg --points \"$f\" | iconv -f UTF-8 -t UTF-8; grep -c \"m�ller\" a.svg"
    "points +1 from m�ller[.]csv\n.*\n[1-9]\n$")
# Short of memory: one line and status 1, whatever is being destroyed at the time.
if(NOT "${CMAKE_CXX_FLAGS_DEBUG}" MATCHES "-fsanitize")  # which wants more of the address space than any limit
  add_case(draw_equilibrium.short_of_memory
      "${in_folder} ulimit -v 30000; aqueth draw_equilibrium --output a.svg; status=$?; ls; exit $status" 1 "^$"
      "^aqueth draw_equilibrium: (gnuplot failed: |not enough memory for this answer|gnuplot cannot be run)")
endif()
# The points that equilibrium_table prints are those of the curve; kelvins are not drawn as °C.
answers(draw_equilibrium.table_of_the_model
    "${in_folder} aqueth equilibrium_table --csv >own.csv && aqueth draw_equilibrium --output a.svg --points own.csv"
    "points +21 from own[.]csv; not used: columns relative_volatility, vapour_uncertainty_percent_vol_20C, vapour_uncertainty_percent_mol\n")
refuses(draw_equilibrium.kelvins
    "${in_folder} printf 'x,y,t\\n0.1,0.44,86\\n0.2,0.53,356.2\\n' >k.csv; aqueth draw_equilibrium --output a.svg --points k.csv"
    "--points 'k[.]csv': line 3, column t: 356[.]2 is outside 0[.]01 to 120 °C; are these kelvins[?]")
refuses(draw_equilibrium.below_absolute_zero
    "${in_folder} printf 'x,temperature_c\\n0.1,-300\\n' >k.csv; aqueth draw_equilibrium --output a.svg --points k.csv"
    "line 2, column temperature_c: -300 is outside")
answers(draw_equilibrium.us_units
    "${in_folder} aqueth draw_equilibrium --output a.svg --pressure '29.92 inHg' --us && cat a.svg"
    "under 29[.]92 inHg[.]\n.*azeotrope +19[0-9][.][0-9] US proof.* at 172[.][0-9]+ °F.*ethanol in the liquid, US proof.*temperature, °F")
refuses(draw_equilibrium.there_already "${in_folder} touch a.svg && aqueth draw_equilibrium --output a.svg"
    "--output 'a[.]svg': the file exists already; --replace")
refuses(draw_equilibrium.dangling_link "${in_folder} ln -s nowhere a.svg && aqueth draw_equilibrium --output a.svg"
    "the file exists already")
refuses(draw_equilibrium.other_format "aqueth draw_equilibrium --output a.jpg" "must end in [.]svg or [.]png")
refuses(draw_equilibrium.empty_name "aqueth draw_equilibrium --output ''" "must end in [.]svg")
refuses(draw_equilibrium.folder "${in_folder} mkdir a.svg && aqueth draw_equilibrium --output a.svg --replace"
    "this is a folder, not a file")
refuses(draw_equilibrium.nowhere "aqueth draw_equilibrium --output /nonexistent/a.svg"
    "cannot be written: No such file")
refuses(draw_equilibrium.no_output "aqueth draw_equilibrium --pressure '1 bar'" "--output is required")
refuses(draw_equilibrium.wild_pressure "aqueth draw_equilibrium --output /nonexistent/a.svg --pressure '300 kPa'"
    "--pressure '300 kPa': pressure 300 kPa is outside")
refuses(draw_equilibrium.no_points "aqueth draw_equilibrium --output a.svg --points /nonexistent/x.csv"
    "cannot be read")
refuses(draw_equilibrium.points_of_other_pressures
    "aqueth draw_equilibrium --output /nonexistent/a.svg --pressure '50 kPa' --points ${tables}/lai_2014.csv"
    "the file has no point at 50 kPa; 16 at other pressures")
refuses(draw_equilibrium.unknown_fraction "aqueth draw_equilibrium --output /nonexistent/a.svg --in sg"
    "expected %mol, %mass, %vol or proof")
refuses(draw_equilibrium.other_reference "aqueth draw_equilibrium --output /nonexistent/a.svg --in '%vol at 60 F'"
    "expected %mol")
add_case(draw_equilibrium.no_gnuplot
    "PATH=$(dirname $(command -v aqueth)); aqueth draw_equilibrium --output /nonexistent/a.svg" 1
    "^$" "gnuplot cannot be run: .*Debian: gnuplot-nox")
