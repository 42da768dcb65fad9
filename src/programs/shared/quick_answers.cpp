// SPDX-License-Identifier: BSL-1.0
#include "quick_answers.hpp"

#include "strengths.hpp"

#include <aqueth/array.hpp>

#include <cmath>
#include <span>
#include <utility>

namespace program {

namespace {

using numbers = std::vector<double>;
using columns_by_option = std::map<std::string, column_of_numbers>;
using texts_by_option = std::map<std::string, std::string>;

/// The answers in the making, with the flags of all loops together.
class answers_of_loops {
public:
    explicit answers_of_loops(std::size_t size)
        : size_(size), valid_(std::make_unique<bool[]>(size)), all_(std::make_unique<bool[]>(size)) {
        std::fill_n(all_.get(), size, true);
    }

    /// Runs one loop into a new array.
    template <class Loop>
    numbers run(Loop const& loop) {
        numbers result(size_);
        loop(result, std::span<bool>(valid_.get(), size_));
        for (std::size_t i = 0; i < size_; ++i) all_[i] = all_[i] && valid_[i] && std::isfinite(result[i]);
        return result;
    }
    template <class Target, strength_basis Source>
    numbers converted(numbers const& strength) {
        return run([&](numbers& result, std::span<bool> valid) {
            arrays::to<Target, Source>(strength, result, valid);
        });
    }
    void put(std::string const& name, quick_column column) { answers_.columns[name] = std::move(column); }
    quick_answers take() {
        answers_.answered = std::move(all_);
        return std::move(answers_);
    }

private:
    std::size_t size_;
    std::unique_ptr<bool[]> valid_, all_;
    quick_answers answers_;
};

numbers times(numbers all, double factor) {
    for (double& each : all) each *= factor;
    return all;
}

numbers in_celsius(column_of_numbers const& column) {
    char const scale = temperature_scale(squeezed(column.unit));
    if (!scale) throw bad_input("no temperature");
    numbers result = column.numbers;
    for (double& each : result) each = temperature_of(each, scale).celsius();
    return result;
}

bool has_only(auto const& options, std::initializer_list<char const*> names) {
    return std::all_of(options.begin(), options.end(), [&](auto const& each) {
        return std::find(names.begin(), names.end(), each.first) != names.end();
    });
}

std::string or_standard(texts_by_option const& fixed, std::string const& name, char const* standard) {
    auto const found = fixed.find(name);
    return found == fixed.end() ? standard : found->second;
}

/// correct_reading: readings on a scale of % vol.
std::optional<quick_answers> correct_readings(columns_by_option const& columns,
                                              texts_by_option const& fixed) {
    bool const fits = has_only(columns, {"--reading", "--temperature"}) && columns.size() == 2 &&
                      has_only(fixed, {"--scale", "--glass", "--correction"});
    if (!fits) return {};
    column_of_numbers const& reading = columns.at("--reading");
    notation const written = text::read_notation(reading.unit);
    notation const scale = text::read_notation(or_standard(fixed, "--scale", reading.unit.c_str()));
    bool const same = written.kind == scale.kind && (!written.referenced || same_reference(written, scale));
    if (scale.kind != basis::volume || !same) return {};
    auto const glass =
        read_expansion({"--glass", or_standard(fixed, "--glass", "soda-lime"), fixed.contains("--glass")});
    certificate const certified({"--correction", or_standard(fixed, "--correction", ""), true});
    numbers const celsius = in_celsius(columns.at("--temperature"));

    answers_of_loops loops(celsius.size());
    with_reference(scale.reference, [&](auto tag) {
        using scale_type = basic_volume_fraction<decltype(tag)>;
        hydrometer<scale_type> const meter(glass);
        numbers shown = reading.numbers;
        for (double& each : shown) each = 0.01 * (each + certified.correction(each));
        numbers strength = loops.run([&](numbers& result, std::span<bool> valid) {
            arrays::strength(meter, shown, celsius, result, valid);
        });
        numbers w = loops.converted<mass_fraction, scale_type>(strength);
        loops.put("density_kg_m3", loops.run([&](numbers& result, std::span<bool> valid) {
            arrays::density(w, celsius, result, valid);
        }));
        loops.put("us_proof", loops.converted<us_proof, mass_fraction>(w));
        loops.put("strength_percent_vol_20C",
                  times(loops.converted<volume_fraction, mass_fraction>(w), 100.0));
        loops.put("strength_percent_mass", times(std::move(w), 100.0));
        loops.put("true_strength", times(std::move(strength), 100.0));
        loops.put("true_strength_unit", scale_type::unit);
    });
    loops.put("scale", name_of(scale));
    if (fixed.contains("--glass")) loops.put("glass", fixed.at("--glass"));
    if (fixed.contains("--correction")) loops.put("correction", fixed.at("--correction"));
    loops.put("reading", reading.numbers);
    loops.put("reading_unit", unit_as_written(scale));
    std::vector<char const*> formulations;
    for (double const each : celsius)
        formulations.push_back(name_of(density_formulation_at(aqueth::celsius(each))));
    loops.put("density_formulation", std::move(formulations));
    loops.put("temperature_C", celsius);
    return loops.take();
}

/// The mass fractions behind strengths in any basis but specific gravity.
std::optional<numbers> compositions(answers_of_loops& loops, notation const& n, numbers const& written) {
    bool const is_fraction = n.kind == basis::volume || n.kind == basis::mass || n.kind == basis::moles;
    numbers const held = times(written, is_fraction ? n.factor / 100.0 : n.factor);
    if (n.referenced && (n.kind == basis::mass || n.kind == basis::moles)) return {};  // the task refuses it
    switch (n.kind) {
    case basis::volume: {
        numbers w;
        with_reference(n.reference, [&](auto tag) {
            w = loops.converted<mass_fraction, basic_volume_fraction<decltype(tag)>>(held);
        });
        return w;
    }
    case basis::concentration: {
        numbers w;
        with_reference(n.reference, [&](auto tag) {
            w = loops.converted<mass_fraction, basic_mass_concentration<decltype(tag)>>(held);
        });
        return w;
    }
    case basis::mass: return loops.converted<mass_fraction, mass_fraction>(held);
    case basis::moles: return loops.converted<mass_fraction, mole_fraction>(held);
    case basis::proof: return loops.converted<mass_fraction, us_proof>(held);
    case basis::density:
        return loops.run([&](numbers& result, std::span<bool> valid) {
            arrays::mass_fraction_from_density(held, n.reference, result, valid);
        });
    case basis::gravity: break;
    }
    return {};
}

/// convert_strength: the bases that arrays know.
std::optional<quick_answers> convert_strengths(columns_by_option const& columns,
                                               texts_by_option const& fixed) {
    bool const fits = has_only(columns, {"--strength", "--temperature"}) && columns.contains("--strength") &&
                      has_only(fixed, {"--temperature"});
    if (!fits) return {};
    column_of_numbers const& strength = columns.at("--strength");
    answers_of_loops loops(strength.numbers.size());
    auto const w = compositions(loops, text::read_notation(strength.unit), strength.numbers);
    if (!w) return {};
    if (columns.contains("--temperature")) {
        numbers const celsius = in_celsius(columns.at("--temperature"));
        loops.put("density_kg_m3", loops.run([&](numbers& result, std::span<bool> valid) {
            arrays::density(*w, celsius, result, valid);
        }));
        loops.put("density_temperature_C", celsius);
    } else {
        units::temperature const t = text::read_temperature(or_standard(fixed, "--temperature", "20 C"));
        loops.put("density_kg_m3", loops.run([&](numbers& result, std::span<bool> valid) {
            arrays::density(*w, t, result, valid);
        }));
        loops.put("density_temperature_C", numbers(w->size(), t.celsius()));
    }
    auto const percent = [&]<class Basis>(std::type_identity<Basis>) {
        return times(loops.converted<Basis, mass_fraction>(*w), 100.0);
    };
    loops.put("percent_vol_20C", percent(std::type_identity<volume_fraction>()));
    loops.put("L_per_hL_20C", percent(std::type_identity<volume_fraction>()));
    loops.put("percent_vol_15C", percent(std::type_identity<basic_volume_fraction<at_15_celsius>>()));
    loops.put("percent_vol_15.56C", percent(std::type_identity<basic_volume_fraction<at_15_56_celsius>>()));
    loops.put("percent_vol_60F", percent(std::type_identity<basic_volume_fraction<at_60_fahrenheit>>()));
    loops.put("us_proof", loops.converted<us_proof, mass_fraction>(*w));
    loops.put("percent_mass", times(*w, 100.0));
    loops.put("mole_fraction", loops.converted<mole_fraction, mass_fraction>(*w));
    loops.put("g_per_100mL_20C", loops.converted<mass_concentration, mass_fraction>(*w));
    return loops.take();
}

}  // namespace

std::optional<quick_answers> answer_quickly(std::string const& task, columns_by_option const& columns,
                                            texts_by_option const& fixed) {
    try {
        if (task == "correct_reading") return correct_readings(columns, fixed);
        if (task == "convert_strength") return convert_strengths(columns, fixed);
    } catch (bad_input const&) {  // the task itself says what is wrong, row by row
    } catch (text_error const&) {
    } catch (refusal const&) {
    }
    return {};
}

}  // namespace program
