# SPDX-License-Identifier: BSL-1.0
set(in_tank "d=$(mktemp -d) && trap 'rm -r $d' EXIT && cd $d && printf 'depth_mm,volume_l\\n0,2.5\\n400,120.0\\n500,150.4\\n' >tank.csv && aqueth gauge_tank --table tank.csv")
set(spirit "--strength '62 %vol' --temperature '17 C'")

# 120.0 L and 32 hundredths of 30.4 L
answers(gauge_tank.between_rows "${in_tank} --dip '432 mm' ${spirit}"
    "^The tank holds 129[.]7 L at 17 °C; pure alcohol 80[.][0-9]+ L at 20 °C[.]\n.*one millimetre +of depth is 304[.]0 mL here.*A tank of\nstainless steel grows")
answers(gauge_tank.on_a_row "${in_tank} --dip '40 cm' ${spirit} --json"
    "\"depth_mm\": 400[.]0,.*\"volume_L\": (120[.]0|119[.]9999999[0-9]*|120[.]0000000[0-9]*),")
answers(gauge_tank.us "${in_tank} --dip '432 mm' --strength '124 proof' --temperature '62 F'" "^The tank holds 34[.][0-9]+ US gal at 62 °F; pure alcohol .* proof gal")
# seven tenths between 50 and 110 US gallons: 92 of 3.785411784 L
answers(gauge_tank.in_inches "aqueth gauge_tank --table <(printf 'depth_in,volume_gal\\n10,50\\n20,110\\n') --dip '17 in' ${spirit}" "^The tank holds 348[.]3 L at 17 °C")
refuses(gauge_tank.beyond "${in_tank} --dip '501 mm' ${spirit}"
    "--dip '501 mm': depth of the liquid 501 mm is outside 0 to 500 mm .*the table of the tank")
refuses(gauge_tank.below "${in_tank} --dip '-1 mm' ${spirit}" "--dip '-1 mm': depth of the liquid -1 mm is outside 0 to 500 mm")
refuses(gauge_tank.no_file "aqueth gauge_tank --table /nonexistent/t.csv --dip '1 mm' ${spirit}" "--table '/nonexistent/t.csv': cannot be read")
refuses(gauge_tank.no_column "aqueth gauge_tank --table <(printf 'level,volume_l\\n1,2\\n3,4\\n') --dip '1 mm' ${spirit}"
    "no column of depth with a known unit; a dip table has a column depth_mm")
refuses(gauge_tank.falling "aqueth gauge_tank --table <(printf 'depth_mm,volume_l\\n5,2\\n3,4\\n') --dip '4 mm' ${spirit}"
    "line 3, column depth_mm: each depth must be above the one before")
refuses(gauge_tank.one_row "aqueth gauge_tank --table <(printf 'depth_mm,volume_l\\n5,2\\n') --dip '5 mm' ${spirit}" "at least two rows")
refuses(gauge_tank.no_length "${in_tank} --dip '5 L' ${spirit}" "--dip '5 L'")
refuses(gauge_tank.boiling "${in_tank} --dip '400 mm' --strength '62 %vol' --temperature '95 C'" "--temperature '95 C'")

# Strength and temperature of a reading are carried on.
answers(gauge_tank.from_a_reading "cd $(mktemp -d) && printf 'depth_mm,volume_l\\n400,120.0\\n500,150.4\\n' >dip.csv && \
    aqueth correct_reading --reading '62 %vol' --temperature '17 C' --json | aqueth gauge_tank --table dip.csv --dip '432 mm' --from -"
    "^The tank holds 129[.]7 L at 17 .*--strength '[0-9.]+ %vol' from -")

answers(gauge_tank.one_inch "aqueth gauge_tank --table <(printf 'depth_in,volume_gal\\n10,30\\n20,60\\n') --dip '15 in' --strength '100 proof' --temperature '60 F'"
    "one inch +of depth is 3[.]0000 US gal here")
