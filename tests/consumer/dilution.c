/* SPDX-License-Identifier: BSL-1.0 */
/* The same dilution in C. */
/* [body] */
#include <aqueth/c.h>

#include <stdio.h>

int main(void) {
    enum {
        by_volume = AQUETH_STRENGTH_SCALE_VOLUME_FRACTION_AT_20_CELSIUS,
        by_mass = AQUETH_STRENGTH_SCALE_MASS_FRACTION
    };
    double strong, wanted, kg, water_kg, product_kg, strength, celsius, contraction, litres;
    char text[200];
    aqueth_refusal why;
    why.size = sizeof why;

    if (aqueth_convert_strength(0.80, by_volume, by_mass, &strong, &why) != AQUETH_OK ||
        aqueth_convert_strength(0.42, by_volume, by_mass, &wanted, &why) != AQUETH_OK ||
        aqueth_mass_of_volume_kg(3.50, strong, 20.0, &kg, &why) != AQUETH_OK ||
        aqueth_dilute(kg, strong, 20.0, wanted, 0.0, 15.0, 20.0, /* water of 15 °C, product at 20 °C */
                      &water_kg, &product_kg, &strength, &celsius, &contraction, &why) != AQUETH_OK ||
        aqueth_volume_litres(product_kg, strength, celsius, 20.0, &litres, &why) != AQUETH_OK) {
        aqueth_refusal_text(&why, text, sizeof text);
        puts(text);
        return 1;
    }
    printf("add %.4f kg of water: %.4f L\n", water_kg, litres);

    /* A refused argument comes back with its code and its range. */
    if (aqueth_density_kg_m3(0.40, 99.0, &kg, &why) == AQUETH_REFUSED) {
        aqueth_refusal_text(&why, text, sizeof text);
        puts(text);
    }
    return why.argument == AQUETH_ARGUMENT_TEMPERATURE ? 0 : 1;
}
/* [body] */
