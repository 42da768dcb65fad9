/* SPDX-License-Identifier: BSL-1.0 */
/* The same dilution in C. */
#include <aqueth/c.h>

#include <stdio.h>

int main(void) {
    double strong, wanted, kg, added, product_kg, product_fraction, product_celsius, contraction, litres;
    aqueth_refusal why;
    char text[200];
    const int by_volume = AQUETH_STRENGTH_SCALE_VOLUME_FRACTION_AT_20_CELSIUS;
    const int by_mass = AQUETH_STRENGTH_SCALE_MASS_FRACTION;
    why.size = sizeof why;
    if (aqueth_convert_strength(0.80, by_volume, by_mass, &strong, &why) != AQUETH_OK) return 1;
    if (aqueth_convert_strength(0.42, by_volume, by_mass, &wanted, &why) != AQUETH_OK) return 1;
    if (aqueth_mass_of_volume_kg(3.50, strong, 20.0, &kg, &why) != AQUETH_OK) return 1;
    if (aqueth_dilute(kg, strong, 20.0, wanted, 0.0, 15.0, 20.0, &added, &product_kg, &product_fraction, &product_celsius,
                      &contraction, &why) != AQUETH_OK)
        return 1;
    if (aqueth_volume_litres(product_kg, product_fraction, product_celsius, 20.0, &litres, &why) != AQUETH_OK) return 1;
    printf("add %.4f kg of water: %.4f L\n", added, litres);
    /* What cannot be answered comes back with the reason. */
    if (aqueth_density_kg_m3(0.40, 99.0, &kg, &why) != AQUETH_REFUSED) return 1;
    aqueth_refusal_text(&why, text, sizeof text);
    puts(text);
    return why.argument == AQUETH_ARGUMENT_TEMPERATURE ? 0 : 1;
}
