#!/bin/bash
# SPDX-License-Identifier: BSL-1.0
# rows_of_readings.sh <count>: a CSV file of that many invented readings, ten of them bad, on standard output.
# Readings are 40.0 to 94.9 % vol at 10.0 to 30.9 °C. Of a million rows, these are bad: no number, another unit,
# % of what, out of range (twice), too cold, no temperature, no reading, no such mixture, two readings of a comma.
awk -v count="${1:?usage: rows_of_readings.sh <count>}" 'BEGIN {
    split("strong|40 kg|40 %|101|-3|50|50||100|\"1,234\"", readings, "|")
    split("20|20|20|20|20|-30||20|10|20", temperatures, "|")
    print "jar,reading [%vol],temperature [C]"
    for (i = 1; i <= count; ++i) {
        bad = count >= 20 && i % int(count / 10) == 7 ? int(i / int(count / 10)) + 1 : 0
        if (bad >= 1 && bad <= 10) print i "," readings[bad] "," temperatures[bad]
        else printf "%d,%.1f,%.1f\n", i, 40 + (i * 7 % 550) / 10, 10 + (i * 13 % 210) / 10
    }
}'
