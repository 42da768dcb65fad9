# SPDX-License-Identifier: BSL-1.0
# Each case draws into a folder of its own, which is gone afterwards.
set(in_folder "d=$(mktemp -d) && trap 'rm -r $d' EXIT && cd $d &&")
set(tables ${PROJECT_SOURCE_DIR}/tables)

answers(draw_equilibrium.picture
    "${in_folder} draw_equilibrium --output a.svg --altitude '650 m' && ls && tail -n 2 a.svg"
    "^Wrote a[.]svg: equilibrium of ethanol and water under 93[.]757 kPa[.]\n.*Caution.*\na[.]svg\n.*</svg>\n\n*$")
# J. S. Carey and W. K. Lewis (1932), 15 points; A. H. Beebe and others (1942), three pressures.
answers(draw_equilibrium.published_points
    "${in_folder} draw_equilibrium --output a.svg --points ${tables}/carey_lewis_1932.csv \\
        --points ${tables}/lai_2014.csv && cat a.svg"
    [[points +15 of carey lewis 1932
.*16 of lai 2014
.*<svg .*as strong as the liquid.*carey lewis 1932.*azeotrope, 89[.][2-7] % mol]])
answers(draw_equilibrium.other_pressures_left_out
    "${in_folder} draw_equilibrium --output a.svg --pressure '190 mmHg' --points ${tables}/beebe_1942.csv"
    "of beebe 1942; [0-9]+ of another pressure left out")
answers(draw_equilibrium.own_points
    "${in_folder} printf '0.1,0.44\\n0.5,0.66,79.9\\n' >\"it's mine.csv\"
draw_equilibrium --output a.svg --points \"it's mine.csv\" --in '%vol' && cat a.svg"
    "points +2 of it's mine.*ethanol in the liquid, % vol.*it's mine")
answers(draw_equilibrium.no_azeotrope
    "${in_folder} draw_equilibrium --output a.svg --pressure '8 kPa' && grep -c azeotrope a.svg || true"
    "none at this pressure.*\n0\n$")
answers(draw_equilibrium.replaced
    "${in_folder} echo old >a.svg
draw_equilibrium --output a.svg --replace >/dev/null && ls && grep -c old a.svg || true"
    "^a[.]svg\n0\n$")
answers(draw_equilibrium.readable_by_others
    "${in_folder} umask 022; draw_equilibrium --output a.svg > /dev/null && stat -c %a a.svg"
    "^644\n$")
answers(draw_equilibrium.json
    "${in_folder} draw_equilibrium --output a.svg --points ${tables}/lai_2014.csv --json"
    "\"written\": \"a.svg\",.*\"drawn\": 16")
answers(draw_equilibrium.locale "${in_folder} LC_ALL=de_DE.UTF-8 draw_equilibrium --output a.svg && cat a.svg"
    "</svg>")

# A file that is there stays as it is, whatever goes wrong.
answers(draw_equilibrium.nothing_lost
    "${in_folder} exec 2>/dev/null; echo old >a.svg
draw_equilibrium --output a.svg
draw_equilibrium --output a.svg --replace --pressure '900 kPa'
PATH=$(dirname $(command -v draw_equilibrium)) draw_equilibrium --output a.svg --replace
echo $? * $(cat a.svg)"
    "^1 a[.]svg old\n$")
# A picture to which no answer belongs is not put in place, and nothing is left beside.
foreach(output full closed)
  set(to_full ">/dev/full")
  set(to_closed ">&-")
  add_case(draw_equilibrium.nothing_without_an_answer.${output}
      "${in_folder} draw_equilibrium --output a.svg ${to_${output}}; status=$?; ls; exit $status" 1
      "^$" "standard output cannot be written: ")
  add_case(draw_equilibrium.nothing_replaced_without_an_answer.${output}
      "${in_folder} echo old >a.svg
draw_equilibrium --output a.svg --replace ${to_${output}}; status=$?; ls | grep -v '^a.svg$'; grep -v old a.svg; exit $status" 1
      "^$" "standard output cannot be written: ")
endforeach()
refuses(draw_equilibrium.there_already "${in_folder} touch a.svg && draw_equilibrium --output a.svg"
    "--output 'a[.]svg': is there already; --replace")
refuses(draw_equilibrium.dangling_link "${in_folder} ln -s nowhere a.svg && draw_equilibrium --output a.svg"
    "is there already")
refuses(draw_equilibrium.other_format "draw_equilibrium --output a.png" "ends in [.]svg")
refuses(draw_equilibrium.empty_name "draw_equilibrium --output ''" "ends in [.]svg")
refuses(draw_equilibrium.folder "${in_folder} mkdir a.svg && draw_equilibrium --output a.svg --replace"
    "is a folder")
refuses(draw_equilibrium.nowhere "draw_equilibrium --output /nonexistent/a.svg"
    "cannot be written: No such file")
refuses(draw_equilibrium.no_output "draw_equilibrium --pressure '1 bar'" "--output is required")
refuses(draw_equilibrium.wild_pressure "draw_equilibrium --output /nonexistent/a.svg --pressure '300 kPa'"
    "--pressure '300 kPa': pressure 300 kPa is outside")
refuses(draw_equilibrium.no_points "draw_equilibrium --output a.svg --points /nonexistent/x.csv"
    "cannot be read")
refuses(draw_equilibrium.points_of_other_pressures
    "draw_equilibrium --output /nonexistent/a.svg --pressure '50 kPa' --points ${tables}/lai_2014.csv"
    "no point in it for 50 kPa; 16 of other pressures")
refuses(draw_equilibrium.unknown_fraction "draw_equilibrium --output /nonexistent/a.svg --in proof"
    "expected %mol, %mass or %vol")
refuses(draw_equilibrium.other_reference "draw_equilibrium --output /nonexistent/a.svg --in '%vol at 60 F'"
    "expected %mol")
add_case(draw_equilibrium.no_gnuplot
    "PATH=$(dirname $(command -v draw_equilibrium)); draw_equilibrium --output /nonexistent/a.svg" 1
    "^$" "gnuplot cannot be run: .*Debian: gnuplot-nox")
