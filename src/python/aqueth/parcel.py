# SPDX-License-Identifier: BSL-1.0
"""Strengths and parcels: the numbers that belong together, as in C++."""
from __future__ import annotations

import dataclasses

from . import _core
from .codes import StrengthScale

_MASS = StrengthScale.mass_fraction
_ABV = StrengthScale.volume_fraction_at_20_celsius


@dataclasses.dataclass(frozen=True)
class Strength:
    """A strength that knows its scale: `Strength(0.40)` is 40 % vol at 20 °C.

    Raises Refusal for a number that the scale does not have.
    """

    value: float
    scale: StrengthScale = _ABV

    def __post_init__(self) -> None:
        self.on(_MASS)

    def on(self, scale: StrengthScale) -> float:
        """The number of this strength on another scale."""
        return _core.convert_strength(self.value, self.scale, scale)

    @property
    def mass_fraction(self) -> float:
        """Mass fraction of ethanol."""
        return self.on(_MASS)


@dataclasses.dataclass(frozen=True)
class Parcel:
    """A mass of a mixture at a temperature. Operations give new parcels, and raise Refusal as the functions do."""

    mass_kg: float
    mass_fraction: float
    celsius: float

    def __post_init__(self) -> None:
        self.volume_litres()

    @classmethod
    def by_volume(cls, litres: float, strength: Strength, celsius: float) -> Parcel:
        """A parcel from its volume at its temperature."""
        w = strength.mass_fraction
        return cls(_core.mass_of_volume_kg(litres, w, celsius), w, celsius)

    def volume_litres(self, at_celsius: float | None = None) -> float:
        """Volume at a temperature, its own unless another is given."""
        at = self.celsius if at_celsius is None else at_celsius
        return _core.volume_litres(self.mass_kg, self.mass_fraction, self.celsius, at)

    def pure_alcohol_litres(self, reference_celsius: float = 20.0) -> float:
        """Volume that the ethanol has on its own at a reference temperature."""
        return _core.pure_alcohol_litres(self.mass_kg, self.mass_fraction, self.celsius, reference_celsius)

    def strength(self, scale: StrengthScale = _ABV) -> Strength:
        """Strength on a scale."""
        return Strength(_core.convert_strength(self.mass_fraction, _MASS, scale), scale)

    def mixed_with(self, other: Parcel) -> Parcel:
        """Both parcels mixed without loss of heat."""
        mixed = _core.mix(self.mass_kg, self.mass_fraction, self.celsius, other.mass_kg, other.mass_fraction, other.celsius)
        return Parcel(mixed.product_kg, mixed.product_mass_fraction, mixed.product_celsius)

    def diluted_to(self, target: Strength, diluent: Strength = Strength(0.0), diluent_celsius: float | None = None,
                   product_celsius: float | None = None) -> tuple[Parcel, Parcel]:
        """What to add for a weaker strength, and the product. Temperatures are this parcel's unless given."""
        w = diluent.mass_fraction
        t = self.celsius if diluent_celsius is None else diluent_celsius
        product_t = self.celsius if product_celsius is None else product_celsius
        found = _core.dilute(self.mass_kg, self.mass_fraction, self.celsius, target.mass_fraction, w, t, product_t)
        return (Parcel(found.added_kg, w, t),
                Parcel(found.product_kg, found.product_mass_fraction, found.product_celsius))
