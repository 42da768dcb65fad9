# SPDX-License-Identifier: BSL-1.0
# Made by src/python/generate.py from src/c/functions.tsv and codes.tsv. Not to be edited.
from typing import Any, Generic, NamedTuple, TypeVar, Union, overload

import numpy as np
from numpy.typing import ArrayLike, NDArray

from .codes import AzeotropeSide, Medium, StrengthScale, Sugar, Sweetener

__version__: str
_reasons: dict[str, np.ufunc]
_results: dict[str, Any]
_ufuncs: dict[str, np.ufunc]
_Number = TypeVar("_Number")
_Array = NDArray[np.float64]
_Out = Union[_Array, tuple[_Array, ...], None]

def _refusal_text(argument: int, limit: int, value: float, lower: float, upper: float, /) -> str: ...

@overload  # type: ignore[misc]
def density_kg_m3(mass_fraction: float, celsius: float) -> float:
    """Density of a mixture, OIML R 22 to 40 °C, above it to the boiling point."""

@overload
def density_kg_m3(mass_fraction: ArrayLike, celsius: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Density of a mixture, OIML R 22 to 40 °C, above it to the boiling point."""

@overload  # type: ignore[misc]
def mass_fraction_from_density(kg_m3: float, celsius: float) -> float:
    """Mass fraction of ethanol from the density at a temperature, OIML R 22 to 40 °C."""

@overload
def mass_fraction_from_density(kg_m3: ArrayLike, celsius: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Mass fraction of ethanol from the density at a temperature, OIML R 22 to 40 °C."""

@overload  # type: ignore[misc]
def thermal_expansion_per_kelvin(mass_fraction: float, celsius: float) -> float:
    """Cubic expansion coefficient of a mixture, OIML R 22 to 40 °C."""

@overload
def thermal_expansion_per_kelvin(mass_fraction: ArrayLike, celsius: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Cubic expansion coefficient of a mixture, OIML R 22 to 40 °C."""

@overload  # type: ignore[misc]
def molar_volume_cm3_mol(mass_fraction: float, celsius: float) -> float:
    """Molar volume of a mixture, OIML R 22 to 40 °C."""

@overload
def molar_volume_cm3_mol(mass_fraction: ArrayLike, celsius: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Molar volume of a mixture, OIML R 22 to 40 °C."""

@overload  # type: ignore[misc]
def excess_molar_volume_cm3_mol(mass_fraction: float, celsius: float) -> float:
    """Change of volume on mixing one mole of mixture, OIML R 22 to 40 °C."""

@overload
def excess_molar_volume_cm3_mol(mass_fraction: ArrayLike, celsius: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Change of volume on mixing one mole of mixture, OIML R 22 to 40 °C."""

@overload  # type: ignore[misc]
def water_density_cipm_2001_kg_m3(celsius: float) -> float:
    """Density of water, CIPM-2001."""

@overload
def water_density_cipm_2001_kg_m3(celsius: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Density of water, CIPM-2001."""

@overload  # type: ignore[misc]
def freezing_celsius(mass_fraction: float) -> float:
    """Freezing point of a mixture, CRC Handbook."""

@overload
def freezing_celsius(mass_fraction: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Freezing point of a mixture, CRC Handbook."""

@overload  # type: ignore[misc]
def convert_strength(strength: float, from_: StrengthScale, to: StrengthScale) -> float:
    """A strength on another scale: by mass, by moles, by volume at a reference temperature, proof, concentration."""

@overload
def convert_strength(strength: ArrayLike, from_: StrengthScale, to: StrengthScale, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """A strength on another scale: by mass, by moles, by volume at a reference temperature, proof, concentration."""

@overload  # type: ignore[misc]
def specific_gravity_of(mass_fraction: float, liquid_celsius: float, water_celsius: float, weighed_in: Medium) -> float:
    """Specific gravity t1/t2 of a mixture, in vacuo or as weighed in air."""

@overload
def specific_gravity_of(mass_fraction: ArrayLike, liquid_celsius: ArrayLike, water_celsius: ArrayLike, weighed_in: Medium, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Specific gravity t1/t2 of a mixture, in vacuo or as weighed in air."""

@overload  # type: ignore[misc]
def mass_fraction_from_specific_gravity(specific_gravity: float, liquid_celsius: float, water_celsius: float, weighed_in: Medium) -> float:
    """Mass fraction from the specific gravity t1/t2."""

@overload
def mass_fraction_from_specific_gravity(specific_gravity: ArrayLike, liquid_celsius: ArrayLike, water_celsius: ArrayLike, weighed_in: Medium, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Mass fraction from the specific gravity t1/t2."""

@overload  # type: ignore[misc]
def balance_indication_kg(mass_kg: float, kg_m3: float) -> float:
    """What an ordinary balance shows for a mass in air, OIML D 28."""

@overload
def balance_indication_kg(mass_kg: ArrayLike, kg_m3: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """What an ordinary balance shows for a mass in air, OIML D 28."""

@overload  # type: ignore[misc]
def mass_from_balance_kg(indication_kg: float, kg_m3: float) -> float:
    """Mass from the indication of an ordinary balance, OIML D 28."""

@overload
def mass_from_balance_kg(indication_kg: ArrayLike, kg_m3: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Mass from the indication of an ordinary balance, OIML D 28."""

@overload  # type: ignore[misc]
def density_in_air_kg_m3(kg_m3: float) -> float:
    """Apparent density, mass per volume as weighed in air, OIML D 28."""

@overload
def density_in_air_kg_m3(kg_m3: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Apparent density, mass per volume as weighed in air, OIML D 28."""

@overload  # type: ignore[misc]
def strength_from_reading(reading: float, celsius: float, scale: StrengthScale, glass_per_kelvin: float) -> float:
    """True strength, on the scale of the instrument, from what a hydrometer for spirit shows at a temperature."""

@overload
def strength_from_reading(reading: ArrayLike, celsius: ArrayLike, scale: StrengthScale, glass_per_kelvin: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """True strength, on the scale of the instrument, from what a hydrometer for spirit shows at a temperature."""

@overload  # type: ignore[misc]
def reading_of_strength(mass_fraction: float, celsius: float, scale: StrengthScale, glass_per_kelvin: float) -> float:
    """What a hydrometer for spirit shows in a mixture at a temperature."""

@overload
def reading_of_strength(mass_fraction: ArrayLike, celsius: ArrayLike, scale: StrengthScale, glass_per_kelvin: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """What a hydrometer for spirit shows in a mixture at a temperature."""

@overload  # type: ignore[misc]
def density_from_reading_kg_m3(reading_kg_m3: float, celsius: float, reference_celsius: float, glass_per_kelvin: float) -> float:
    """Density from what a density hydrometer shows at a temperature."""

@overload
def density_from_reading_kg_m3(reading_kg_m3: ArrayLike, celsius: ArrayLike, reference_celsius: ArrayLike, glass_per_kelvin: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Density from what a density hydrometer shows at a temperature."""

@overload  # type: ignore[misc]
def mass_of_volume_kg(litres: float, mass_fraction: float, celsius: float) -> float:
    """Mass of a volume of a mixture."""

@overload
def mass_of_volume_kg(litres: ArrayLike, mass_fraction: ArrayLike, celsius: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Mass of a volume of a mixture."""

@overload  # type: ignore[misc]
def volume_litres(mass_kg: float, mass_fraction: float, celsius: float, at_celsius: float) -> float:
    """Volume of a mass of a mixture at a temperature."""

@overload
def volume_litres(mass_kg: ArrayLike, mass_fraction: ArrayLike, celsius: ArrayLike, at_celsius: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Volume of a mass of a mixture at a temperature."""

@overload  # type: ignore[misc]
def pure_alcohol_litres(mass_kg: float, mass_fraction: float, celsius: float, reference_celsius: float) -> float:
    """Volume that the ethanol of a mixture has on its own at a reference temperature."""

@overload
def pure_alcohol_litres(mass_kg: ArrayLike, mass_fraction: ArrayLike, celsius: ArrayLike, reference_celsius: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Volume that the ethanol of a mixture has on its own at a reference temperature."""

class MixResult(NamedTuple, Generic[_Number]):
    product_kg: _Number
    product_mass_fraction: _Number
    product_celsius: _Number
    contraction_litres: _Number

@overload  # type: ignore[misc]
def mix(a_kg: float, a_mass_fraction: float, a_celsius: float, b_kg: float, b_mass_fraction: float, b_celsius: float) -> MixResult[float]:
    """Two liquids mixed without loss of heat."""

@overload
def mix(a_kg: ArrayLike, a_mass_fraction: ArrayLike, a_celsius: ArrayLike, b_kg: ArrayLike, b_mass_fraction: ArrayLike, b_celsius: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> MixResult[_Array]:
    """Two liquids mixed without loss of heat."""

class DiluteResult(NamedTuple, Generic[_Number]):
    added_kg: _Number
    product_kg: _Number
    product_mass_fraction: _Number
    product_celsius: _Number
    contraction_litres: _Number

@overload  # type: ignore[misc]
def dilute(spirit_kg: float, spirit_mass_fraction: float, spirit_celsius: float, target_mass_fraction: float, diluent_mass_fraction: float, diluent_celsius: float, product_celsius: float) -> DiluteResult[float]:
    """Water or weaker spirit to add to a spirit for a strength."""

@overload
def dilute(spirit_kg: ArrayLike, spirit_mass_fraction: ArrayLike, spirit_celsius: ArrayLike, target_mass_fraction: ArrayLike, diluent_mass_fraction: ArrayLike, diluent_celsius: ArrayLike, product_celsius: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> DiluteResult[_Array]:
    """Water or weaker spirit to add to a spirit for a strength."""

class FortifyResult(NamedTuple, Generic[_Number]):
    added_kg: _Number
    product_kg: _Number
    product_mass_fraction: _Number
    product_celsius: _Number
    contraction_litres: _Number

@overload  # type: ignore[misc]
def fortify(weak_kg: float, weak_mass_fraction: float, weak_celsius: float, target_mass_fraction: float, stock_mass_fraction: float, stock_celsius: float, product_celsius: float) -> FortifyResult[float]:
    """Stronger spirit to add to a spirit for a strength."""

@overload
def fortify(weak_kg: ArrayLike, weak_mass_fraction: ArrayLike, weak_celsius: ArrayLike, target_mass_fraction: ArrayLike, stock_mass_fraction: ArrayLike, stock_celsius: ArrayLike, product_celsius: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> FortifyResult[_Array]:
    """Stronger spirit to add to a spirit for a strength."""

class MakeUpByVolumeResult(NamedTuple, Generic[_Number]):
    spirit_kg: _Number
    diluent_kg: _Number

@overload  # type: ignore[misc]
def make_up_by_volume(litres: float, product_celsius: float, target_mass_fraction: float, stock_mass_fraction: float, stock_celsius: float, diluent_mass_fraction: float, diluent_celsius: float) -> MakeUpByVolumeResult[float]:
    """Stock and water for a volume of a strength."""

@overload
def make_up_by_volume(litres: ArrayLike, product_celsius: ArrayLike, target_mass_fraction: ArrayLike, stock_mass_fraction: ArrayLike, stock_celsius: ArrayLike, diluent_mass_fraction: ArrayLike, diluent_celsius: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> MakeUpByVolumeResult[_Array]:
    """Stock and water for a volume of a strength."""

class MakeUpByMassResult(NamedTuple, Generic[_Number]):
    spirit_kg: _Number
    diluent_kg: _Number

@overload  # type: ignore[misc]
def make_up_by_mass(mass_kg: float, product_celsius: float, target_mass_fraction: float, stock_mass_fraction: float, stock_celsius: float, diluent_mass_fraction: float, diluent_celsius: float) -> MakeUpByMassResult[float]:
    """Stock and water for a mass of a strength."""

@overload
def make_up_by_mass(mass_kg: ArrayLike, product_celsius: ArrayLike, target_mass_fraction: ArrayLike, stock_mass_fraction: ArrayLike, stock_celsius: ArrayLike, diluent_mass_fraction: ArrayLike, diluent_celsius: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> MakeUpByMassResult[_Array]:
    """Stock and water for a mass of a strength."""

@overload  # type: ignore[misc]
def fill_litres(label_litres: float, mass_fraction: float, filling_celsius: float, reference_celsius: float) -> float:
    """Volume to fill at a temperature so that a bottle holds its label volume at the reference temperature."""

@overload
def fill_litres(label_litres: ArrayLike, mass_fraction: ArrayLike, filling_celsius: ArrayLike, reference_celsius: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Volume to fill at a temperature so that a bottle holds its label volume at the reference temperature."""

class FillBottlesResult(NamedTuple, Generic[_Number]):
    count: _Number  # type: ignore[assignment]
    fill_litres: _Number
    fill_mass_kg: _Number
    remainder_kg: _Number

@overload  # type: ignore[misc]
def fill_bottles(mass_kg: float, mass_fraction: float, celsius: float, label_litres: float, reference_celsius: float) -> FillBottlesResult[float]:
    """Bottles that a spirit fills, and what is left."""

@overload
def fill_bottles(mass_kg: ArrayLike, mass_fraction: ArrayLike, celsius: ArrayLike, label_litres: ArrayLike, reference_celsius: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> FillBottlesResult[_Array]:
    """Bottles that a spirit fills, and what is left."""

class BubblePointAtCelsiusResult(NamedTuple, Generic[_Number]):
    celsius: _Number
    kpa: _Number
    liquid_mole_fraction: _Number
    vapour_mole_fraction: _Number
    relative_volatility: _Number

@overload  # type: ignore[misc]
def bubble_point_at_celsius(mole_fraction: float, celsius: float) -> BubblePointAtCelsiusResult[float]:
    """Boiling liquid and its vapour at a temperature."""

@overload
def bubble_point_at_celsius(mole_fraction: ArrayLike, celsius: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> BubblePointAtCelsiusResult[_Array]:
    """Boiling liquid and its vapour at a temperature."""

class BubblePointAtKpaResult(NamedTuple, Generic[_Number]):
    celsius: _Number
    kpa: _Number
    liquid_mole_fraction: _Number
    vapour_mole_fraction: _Number
    relative_volatility: _Number

@overload  # type: ignore[misc]
def bubble_point_at_kpa(mole_fraction: float, kpa: float) -> BubblePointAtKpaResult[float]:
    """Boiling liquid and its vapour at a pressure."""

@overload
def bubble_point_at_kpa(mole_fraction: ArrayLike, kpa: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> BubblePointAtKpaResult[_Array]:
    """Boiling liquid and its vapour at a pressure."""

class DewPointAtCelsiusResult(NamedTuple, Generic[_Number]):
    celsius: _Number
    kpa: _Number
    liquid_mole_fraction: _Number
    vapour_mole_fraction: _Number
    relative_volatility: _Number

@overload  # type: ignore[misc]
def dew_point_at_celsius(mole_fraction: float, celsius: float) -> DewPointAtCelsiusResult[float]:
    """Vapour and the first liquid to condense from it at a temperature."""

@overload
def dew_point_at_celsius(mole_fraction: ArrayLike, celsius: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> DewPointAtCelsiusResult[_Array]:
    """Vapour and the first liquid to condense from it at a temperature."""

class DewPointAtKpaResult(NamedTuple, Generic[_Number]):
    celsius: _Number
    kpa: _Number
    liquid_mole_fraction: _Number
    vapour_mole_fraction: _Number
    relative_volatility: _Number

@overload  # type: ignore[misc]
def dew_point_at_kpa(mole_fraction: float, kpa: float) -> DewPointAtKpaResult[float]:
    """Vapour and the first liquid to condense from it at a pressure."""

@overload
def dew_point_at_kpa(mole_fraction: ArrayLike, kpa: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> DewPointAtKpaResult[_Array]:
    """Vapour and the first liquid to condense from it at a pressure."""

class AzeotropeAtCelsiusResult(NamedTuple, Generic[_Number]):
    celsius: _Number
    kpa: _Number
    liquid_mole_fraction: _Number
    vapour_mole_fraction: _Number
    relative_volatility: _Number

@overload  # type: ignore[misc]
def azeotrope_at_celsius(celsius: float) -> AzeotropeAtCelsiusResult[float]:
    """Azeotrope at a temperature."""

@overload
def azeotrope_at_celsius(celsius: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> AzeotropeAtCelsiusResult[_Array]:
    """Azeotrope at a temperature."""

class AzeotropeAtKpaResult(NamedTuple, Generic[_Number]):
    celsius: _Number
    kpa: _Number
    liquid_mole_fraction: _Number
    vapour_mole_fraction: _Number
    relative_volatility: _Number

@overload  # type: ignore[misc]
def azeotrope_at_kpa(kpa: float) -> AzeotropeAtKpaResult[float]:
    """Azeotrope at a pressure."""

@overload
def azeotrope_at_kpa(kpa: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> AzeotropeAtKpaResult[_Array]:
    """Azeotrope at a pressure."""

class CoexistenceResult(NamedTuple, Generic[_Number]):
    celsius: _Number
    kpa: _Number
    liquid_mole_fraction: _Number
    vapour_mole_fraction: _Number
    relative_volatility: _Number

@overload  # type: ignore[misc]
def coexistence(celsius: float, kpa: float, side: AzeotropeSide) -> CoexistenceResult[float]:
    """Liquid and vapour that coexist at a temperature and a pressure, on one side of the azeotrope."""

@overload
def coexistence(celsius: ArrayLike, kpa: ArrayLike, side: AzeotropeSide, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> CoexistenceResult[_Array]:
    """Liquid and vapour that coexist at a temperature and a pressure, on one side of the azeotrope."""

class IsothermalFlashResult(NamedTuple, Generic[_Number]):
    vapour_fraction: _Number
    liquid_mole_fraction: _Number
    vapour_mole_fraction: _Number

@overload  # type: ignore[misc]
def isothermal_flash(mole_fraction: float, celsius: float, kpa: float) -> IsothermalFlashResult[float]:
    """How a mixture parts into liquid and vapour; a mole fraction is not a number where there is none."""

@overload
def isothermal_flash(mole_fraction: ArrayLike, celsius: ArrayLike, kpa: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> IsothermalFlashResult[_Array]:
    """How a mixture parts into liquid and vapour; a mole fraction is not a number where there is none."""

class ActivityCoefficientsOfResult(NamedTuple, Generic[_Number]):
    ethanol: _Number
    water: _Number

@overload  # type: ignore[misc]
def activity_coefficients_of(mole_fraction: float, celsius: float) -> ActivityCoefficientsOfResult[float]:
    """Activity coefficients in the liquid."""

@overload
def activity_coefficients_of(mole_fraction: ArrayLike, celsius: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> ActivityCoefficientsOfResult[_Array]:
    """Activity coefficients in the liquid."""

@overload  # type: ignore[misc]
def excess_enthalpy_j_mol(mass_fraction: float, celsius: float) -> float:
    """Heat of mixing, excess enthalpy."""

@overload
def excess_enthalpy_j_mol(mass_fraction: ArrayLike, celsius: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Heat of mixing, excess enthalpy."""

@overload  # type: ignore[misc]
def specific_heat_capacity_j_kg_k(mass_fraction: float, celsius: float) -> float:
    """Specific heat capacity of a liquid mixture."""

@overload
def specific_heat_capacity_j_kg_k(mass_fraction: ArrayLike, celsius: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Specific heat capacity of a liquid mixture."""

@overload  # type: ignore[misc]
def enthalpy_of_liquid_j_kg(mass_fraction: float, celsius: float) -> float:
    """Specific enthalpy of a liquid mixture, pure liquids zero at 0 °C."""

@overload
def enthalpy_of_liquid_j_kg(mass_fraction: ArrayLike, celsius: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Specific enthalpy of a liquid mixture, pure liquids zero at 0 °C."""

@overload  # type: ignore[misc]
def enthalpy_of_vapour_j_kg(mass_fraction: float, celsius: float, kpa: float) -> float:
    """Specific enthalpy of a vapour, pure liquids zero at 0 °C."""

@overload
def enthalpy_of_vapour_j_kg(mass_fraction: ArrayLike, celsius: ArrayLike, kpa: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Specific enthalpy of a vapour, pure liquids zero at 0 °C."""

@overload  # type: ignore[misc]
def liquid_celsius_from_enthalpy(mass_fraction: float, j_kg: float) -> float:
    """Temperature of a liquid mixture from its specific enthalpy."""

@overload
def liquid_celsius_from_enthalpy(mass_fraction: ArrayLike, j_kg: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Temperature of a liquid mixture from its specific enthalpy."""

@overload  # type: ignore[misc]
def weight_per_volume_kg_m3(us_proof: float) -> float:
    """Weight per volume in air at 60 °F."""

@overload
def weight_per_volume_kg_m3(us_proof: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Weight per volume in air at 60 °F."""

@overload  # type: ignore[misc]
def wine_gallons_per_pound(us_proof: float) -> float:
    """US gallons at 60 °F in a pound weighed in air."""

@overload
def wine_gallons_per_pound(us_proof: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """US gallons at 60 °F in a pound weighed in air."""

@overload  # type: ignore[misc]
def proof_gallons_per_pound(us_proof: float) -> float:
    """Proof gallons in a pound weighed in air."""

@overload
def proof_gallons_per_pound(us_proof: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Proof gallons in a pound weighed in air."""

@overload  # type: ignore[misc]
def volume_factor_to_60_fahrenheit(us_proof: float, celsius: float) -> float:
    """Factor from a volume at a temperature to the volume at 60 °F."""

@overload
def volume_factor_to_60_fahrenheit(us_proof: ArrayLike, celsius: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Factor from a volume at a temperature to the volume at 60 °F."""

@overload  # type: ignore[misc]
def air_pressure_kpa(altitude_metres: float) -> float:
    """Air pressure at an altitude, ICAO standard atmosphere."""

@overload
def air_pressure_kpa(altitude_metres: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Air pressure at an altitude, ICAO standard atmosphere."""

@overload  # type: ignore[misc]
def sucrose_density_kg_m3(plato: float, celsius: float) -> float:
    """Density of a sugar solution."""

@overload
def sucrose_density_kg_m3(plato: ArrayLike, celsius: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Density of a sugar solution."""

@overload  # type: ignore[misc]
def specific_gravity_from_plato(plato: float) -> float:
    """Specific gravity 20/20 °C of an extract."""

@overload
def specific_gravity_from_plato(plato: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Specific gravity 20/20 °C of an extract."""

@overload  # type: ignore[misc]
def plato_from_specific_gravity(specific_gravity: float) -> float:
    """Extract from the specific gravity 20/20 °C."""

@overload
def plato_from_specific_gravity(specific_gravity: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Extract from the specific gravity 20/20 °C."""

@overload  # type: ignore[misc]
def wash_density_kg_m3(ethanol_mass_fraction: float, plato: float, celsius: float) -> float:
    """Density of a wash of ethanol, water and extract."""

@overload
def wash_density_kg_m3(ethanol_mass_fraction: ArrayLike, plato: ArrayLike, celsius: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Density of a wash of ethanol, water and extract."""

@overload  # type: ignore[misc]
def real_extract_plato(original_plato: float, apparent_plato: float) -> float:
    """Real extract from original and apparent extract, Balling."""

@overload
def real_extract_plato(original_plato: ArrayLike, apparent_plato: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Real extract from original and apparent extract, Balling."""

@overload  # type: ignore[misc]
def apparent_attenuation(original_plato: float, now_plato: float) -> float:
    """Apparent attenuation."""

@overload
def apparent_attenuation(original_plato: ArrayLike, now_plato: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Apparent attenuation."""

@overload  # type: ignore[misc]
def mass_fraction_by_balling(original_plato: float, real_plato: float) -> float:
    """Alcohol by mass of a fermented wash, Balling."""

@overload
def mass_fraction_by_balling(original_plato: ArrayLike, real_plato: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Alcohol by mass of a fermented wash, Balling."""

@overload  # type: ignore[misc]
def volume_fraction_by_gravity_fall(original_gravity: float, final_gravity: float) -> float:
    """Alcohol by volume from the fall of the gravity."""

@overload
def volume_fraction_by_gravity_fall(original_gravity: ArrayLike, final_gravity: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Alcohol by volume from the fall of the gravity."""

class FermentedWashFromGravityResult(NamedTuple, Generic[_Number]):
    volume_fraction: _Number
    ethanol_mass_fraction: _Number
    plato: _Number

@overload  # type: ignore[misc]
def fermented_wash_from_gravity(original_gravity: float, final_gravity: float) -> FermentedWashFromGravityResult[float]:
    """Strength and extract of a wash from its gravities."""

@overload
def fermented_wash_from_gravity(original_gravity: ArrayLike, final_gravity: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> FermentedWashFromGravityResult[_Array]:
    """Strength and extract of a wash from its gravities."""

class SugarNeededResult(NamedTuple, Generic[_Number]):
    least_kg: _Number
    practical_kg: _Number
    carbon_dioxide_kg: _Number
    original_plato: _Number
    specific_gravity: _Number
    water_kg: _Number

@overload  # type: ignore[misc]
def sugar_needed(litres: float, volume_fraction: float, kind: Sugar, yield_: float) -> SugarNeededResult[float]:
    """Sugar and water for a wash of a wanted strength and volume."""

@overload
def sugar_needed(litres: ArrayLike, volume_fraction: ArrayLike, kind: Sugar, yield_: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> SugarNeededResult[_Array]:
    """Sugar and water for a wash of a wanted strength and volume."""

@overload  # type: ignore[misc]
def sweet_density_kg_m3(ethanol_mass_fraction: float, sugar_mass_fraction: float, kind: Sweetener, celsius: float) -> float:
    """Density of ethanol, water and sugar by added volumes; checked by analyses of wines (to 14 % vol, 22 g/L) and beers (5 % vol, 66 g/L) only."""

@overload
def sweet_density_kg_m3(ethanol_mass_fraction: ArrayLike, sugar_mass_fraction: ArrayLike, kind: Sweetener, celsius: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Density of ethanol, water and sugar by added volumes; checked by analyses of wines (to 14 % vol, 22 g/L) and beers (5 % vol, 66 g/L) only."""

class SweetCompositionFromStrengthResult(NamedTuple, Generic[_Number]):
    ethanol_mass_fraction: _Number
    sugar_mass_fraction: _Number

@overload  # type: ignore[misc]
def sweet_composition_from_strength(volume_fraction: float, g_per_litre: float, kind: Sweetener) -> SweetCompositionFromStrengthResult[float]:
    """Mass fractions of ethanol and sugar in a sweetened spirit of a strength."""

@overload
def sweet_composition_from_strength(volume_fraction: ArrayLike, g_per_litre: ArrayLike, kind: Sweetener, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> SweetCompositionFromStrengthResult[_Array]:
    """Mass fractions of ethanol and sugar in a sweetened spirit of a strength."""

@overload  # type: ignore[misc]
def strength_behind_sugar(kg_m3: float, celsius: float, g_per_litre: float, kind: Sweetener) -> float:
    """Strength of a sweetened spirit from its density and its sugar."""

@overload
def strength_behind_sugar(kg_m3: ArrayLike, celsius: ArrayLike, g_per_litre: ArrayLike, kind: Sweetener, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Strength of a sweetened spirit from its density and its sugar."""

@overload  # type: ignore[misc]
def sugar_behind_density_g_per_litre(kg_m3: float, volume_fraction: float, kind: Sweetener) -> float:
    """Sugar of a sweetened spirit from its density at 20 °C and its strength."""

@overload
def sugar_behind_density_g_per_litre(kg_m3: ArrayLike, volume_fraction: ArrayLike, kind: Sweetener, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Sugar of a sweetened spirit from its density at 20 °C and its strength."""

@overload  # type: ignore[misc]
def strength_doubt_from_sugar(volume_fraction: float, g_per_litre: float, kind: Sweetener, celsius: float) -> float:
    """Doubt of a strength read from a density, for 1 % in the volume of the sugar."""

@overload
def strength_doubt_from_sugar(volume_fraction: ArrayLike, g_per_litre: ArrayLike, kind: Sweetener, celsius: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Doubt of a strength read from a density, for 1 % in the volume of the sugar."""

@overload  # type: ignore[misc]
def tabarie_extract_g_per_litre(kg_m3: float, volume_fraction: float) -> float:
    """Dry extract by the relation of Tabarie, from density at 20 °C and strength."""

@overload
def tabarie_extract_g_per_litre(kg_m3: ArrayLike, volume_fraction: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Dry extract by the relation of Tabarie, from density at 20 °C and strength."""

class SweetenResult(NamedTuple, Generic[_Number]):
    water_kg: _Number
    sugar_kg: _Number
    litres: _Number
    contraction_litres: _Number
    sugar_litres: _Number

@overload  # type: ignore[misc]
def sweeten(spirit_kg: float, spirit_mass_fraction: float, spirit_celsius: float, volume_fraction: float, g_per_litre: float, kind: Sweetener) -> SweetenResult[float]:
    """Water and sugar for a liqueur of a strength and a sugar concentration at 20 °C."""

@overload
def sweeten(spirit_kg: ArrayLike, spirit_mass_fraction: ArrayLike, spirit_celsius: ArrayLike, volume_fraction: ArrayLike, g_per_litre: ArrayLike, kind: Sweetener, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> SweetenResult[_Array]:
    """Water and sugar for a liqueur of a strength and a sugar concentration at 20 °C."""

@overload  # type: ignore[misc]
def strength_of_distilled_sample(sample_litres: float, sample_celsius: float, distillate_litres: float, mass_fraction: float, distillate_celsius: float, lost: float) -> float:
    """Strength from a sample that was distilled and made up with water."""

@overload
def strength_of_distilled_sample(sample_litres: ArrayLike, sample_celsius: ArrayLike, distillate_litres: ArrayLike, mass_fraction: ArrayLike, distillate_celsius: ArrayLike, lost: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Strength from a sample that was distilled and made up with water."""

@overload  # type: ignore[misc]
def refractive_index_from_brix(brix: float) -> float:
    """Refractive index at which a refractometer shows degrees Brix, 20 °C, 589 nm."""

@overload
def refractive_index_from_brix(brix: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Refractive index at which a refractometer shows degrees Brix, 20 °C, 589 nm."""

@overload  # type: ignore[misc]
def brix_from_refractive_index(refractive_index: float) -> float:
    """Degrees Brix that a refractometer shows."""

@overload
def brix_from_refractive_index(refractive_index: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Degrees Brix that a refractometer shows."""

@overload  # type: ignore[misc]
def refractive_index(ethanol_mass_fraction: float, sugar_mass_fraction: float, kind: Sweetener) -> float:
    """Refractive index of ethanol, water and sugar at 20 °C, 589 nm."""

@overload
def refractive_index(ethanol_mass_fraction: ArrayLike, sugar_mass_fraction: ArrayLike, kind: Sweetener, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> _Array:
    """Refractive index of ethanol, water and sugar at 20 °C, 589 nm."""

class WashFromDensityAndIndexResult(NamedTuple, Generic[_Number]):
    volume_fraction: _Number
    ethanol_mass_fraction: _Number
    plato: _Number

@overload  # type: ignore[misc]
def wash_from_density_and_index(kg_m3: float, refractive_index: float) -> WashFromDensityAndIndexResult[float]:
    """Alcohol and extract of a wash from density and refractive index at 20 °C."""

@overload
def wash_from_density_and_index(kg_m3: ArrayLike, refractive_index: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> WashFromDensityAndIndexResult[_Array]:
    """Alcohol and extract of a wash from density and refractive index at 20 °C."""

class WashFromOriginalGravityAndBrixResult(NamedTuple, Generic[_Number]):
    volume_fraction: _Number
    ethanol_mass_fraction: _Number
    plato: _Number

@overload  # type: ignore[misc]
def wash_from_original_gravity_and_brix(original_gravity: float, brix: float) -> WashFromOriginalGravityAndBrixResult[float]:
    """Alcohol and extract of a wash from its original gravity and a refractometer."""

@overload
def wash_from_original_gravity_and_brix(original_gravity: ArrayLike, brix: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> WashFromOriginalGravityAndBrixResult[_Array]:
    """Alcohol and extract of a wash from its original gravity and a refractometer."""

class MethanolFromDensityAndIndexResult(NamedTuple, Generic[_Number]):
    share: _Number
    alcohol_mass_fraction: _Number
    share_per_index: _Number

@overload  # type: ignore[misc]
def methanol_from_density_and_index(kg_m3: float, refractive_index: float) -> MethanolFromDensityAndIndexResult[float]:
    """Methanol put in place of ethanol in an unsweetened spirit; finds substitution, not legal limits."""

@overload
def methanol_from_density_and_index(kg_m3: ArrayLike, refractive_index: ArrayLike, *, out: _Out = ..., where: ArrayLike = ..., dtype: Any = ..., casting: str = ..., order: str = ...) -> MethanolFromDensityAndIndexResult[_Array]:
    """Methanol put in place of ethanol in an unsweetened spirit; finds substitution, not legal limits."""
