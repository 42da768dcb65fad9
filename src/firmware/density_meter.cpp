// SPDX-License-Identifier: BSL-1.0
// A density meter that shows a strength: the whole firmware, apart from the start of the board (board/).
// SCALAR is float or double.
#include "density_meter.hpp"

// The registers of cell and display. Here they are memory; on a board they are addresses of its data sheet.
extern "C" {
SCALAR volatile cell_kg_m3 = 0;
SCALAR volatile cell_celsius = 0;
SCALAR volatile display_percent_vol = 0;
bool volatile display_out_of_range = false;
}

int main() {
    for (;;) {
        auto const strength = meter::chosen_percent_vol<SCALAR>(cell_kg_m3, cell_celsius);
        display_out_of_range = !strength.status.ok;
        display_percent_vol = strength.value;
    }
}
