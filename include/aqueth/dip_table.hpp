// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/error.hpp>
#include <aqueth/number_table.hpp>
#include <aqueth/units.hpp>

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace aqueth::inline AQUETH_ABI {

/// The columns of a dip table, for messages and for help.
inline constexpr char const* dip_table_columns =
    "a dip table has a column depth_mm (or _cm, _m, _in) and a column volume_l (or _ml, _hl, _m3, _gal)";

/// The dip table of a tank: depths of the liquid and the volumes behind them. It is linear between rows;
/// beyond them it has no answer. Its own doubt and the expansion of the tank are not counted.
class [[nodiscard]] dip_table {
public:
    /// One line of the table.
    struct row {
        units::length depth;   ///< of the liquid on the dipstick
        units::volume volume;  ///< in the tank at that depth
    };

    /// Reads a table of two columns, whose names end in their units; other columns are passed over.
    /// @param text a CSV text: depth_mm (or _cm, _m, _in) and volume_l (or _ml, _hl, _m3, _gal)
    /// @return the table: at least two rows, depths rising, volumes not falling
    /// @throws text_error with line and column if the text is no such table
    static dip_table read(std::string_view text) {
        number_table const table(text);
        auto const depth = find(table, "depth", depths);
        auto const volume = find(table, "volume", volumes);
        std::vector<row> rows;
        for (number_table::line const& each : table.rows()) {
            double const metres = table.number(each, depth.first) * depth.second;
            double const cubic_metres = table.number(each, volume.first) * volume.second;
            if (!(metres >= 0.0 && metres <= 100.0))
                number_table::fail(each.number, table.names()[depth.first], "a depth is from 0 to 100 m");
            if (!(cubic_metres >= 0.0 && cubic_metres <= 1e6))
                number_table::fail(each.number, table.names()[volume.first],
                                   "a volume is from 0 to 1000000 m3");
            if (!rows.empty() && !(metres > rows.back().depth.value()))
                number_table::fail(each.number, table.names()[depth.first],
                                   "each depth must be above the one before");
            if (!rows.empty() && cubic_metres < rows.back().volume.value())
                number_table::fail(each.number, table.names()[volume.first],
                                   "no volume can be below the one before");
            rows.push_back({metres * metre, cubic_metres * cubic_metre});
        }
        if (rows.size() < 2) number_table::fail(table.names_line(), "", "a dip table has at least two rows");
        return dip_table(std::move(rows));
    }

    /// @return the rows, from the lowest depth up
    std::vector<row> const& rows() const noexcept { return rows_; }

    /// @param depth depth of the liquid, within the table
    /// @return volume in the tank, linear between rows
    /// @throws refusal if the depth is outside the table or not finite
    units::volume volume(units::length depth) const {
        auto const [low, high] = around(depth);
        return low.volume + in(depth - low.depth, high.depth - low.depth) * (high.volume - low.volume);
    }

    /// @param depth depth of the liquid, within the table
    /// @return volume that a millimetre of depth is worth there
    /// @throws refusal if the depth is outside the table or not finite
    units::volume volume_of_a_millimetre(units::length depth) const {
        auto const [low, high] = around(depth);
        return (high.volume - low.volume) * in(millimetre, high.depth - low.depth);
    }

private:
    static constexpr char const* property = "dip table";
    static constexpr auto millimetre = units::length::from_value(1e-3);

    explicit dip_table(std::vector<row> checked) : rows_(std::move(checked)) {}

    struct ending {
        std::string_view name;
        double si;
    };
    static constexpr ending depths[] = {{"mm", 1e-3}, {"cm", 1e-2}, {"m", 1.0}, {"in", 0.0254}};
    static constexpr ending volumes[] = {
        {"ml", 1e-6}, {"l", 1e-3}, {"hl", 0.1}, {"m3", 1.0}, {"gal", us_gallon.value()}};

    /// the column of a quantity and its unit in the unit of the SI
    template <std::size_t Count>
    static std::pair<std::size_t, double> find(number_table const& table, std::string const& quantity,
                                               ending const (&endings)[Count]) {
        std::optional<std::pair<std::size_t, double>> found;
        for (std::size_t k = 0; k < table.names().size(); ++k) {
            std::string const name = number_table::lower(table.names()[k]);
            if (!name.starts_with(quantity)) continue;
            for (ending const& e : endings) {
                if (name != quantity + '_' + std::string(e.name)) continue;
                if (found)
                    number_table::fail(table.names_line(), table.names()[k],
                                       "a second column of its kind; " + std::string(dip_table_columns));
                found = {k, e.si};
            }
        }
        if (!found)
            number_table::fail(table.names_line(), "",
                               "no column of " + quantity + " with a known unit; " + dip_table_columns);
        return *found;
    }

    std::pair<row, row> around(units::length depth) const {
        require_range(property, argument::depth_of_the_liquid, in(depth, millimetre), "mm",
                      in(rows_.front().depth, millimetre), in(rows_.back().depth, millimetre),
                      "the table of the tank");
        auto const above = std::upper_bound(rows_.begin() + 1, rows_.end() - 1, depth,
                                            [](units::length d, row const& r) { return d < r.depth; });
        return {*(above - 1), *above};
    }

    std::vector<row> rows_;
};

}  // namespace aqueth::inline AQUETH_ABI
